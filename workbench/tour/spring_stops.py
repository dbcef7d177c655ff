"""The stops of springs and sag: measured, reckoned, surveyed, carried over."""

from __future__ import annotations

from typing import Any

from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.model.unit import Unit
from workbench.viewmodels.window import CARRY, LEVERAGE, SPRING


def _bike(workbench: Workbench, name: str, station: str) -> Any:
    from workbench.tour.stops import bike

    return bike(workbench, name, station)


def sag(workbench: Workbench, steps: int) -> None:
    """The rear end of a bike whose front is measured: prepare, pressure, measure, advice, another round."""
    view_model = _bike(workbench, "Fell 130", Station.SAG)
    view_model.start("rear")
    if steps >= 1:
        view_model.next()
        view_model.set_text("pressure_kpa", "140")
        view_model.set_text("temperature_c", "20")
    if steps >= 2:
        view_model.next()
        view_model.add_reading("11.5")
        view_model.add_reading("12.0")
    if steps >= 3:
        view_model.next()


def sag_friction(workbench: Workbench) -> None:
    """The same end, settled from above and from below."""
    sag(workbench, steps=1)
    view_model = _bike(workbench, "Fell 130", Station.SAG)
    view_model.next()
    view_model.set_field("both_ways", True)
    for text in ("10.5", "13.5"):
        view_model.add_reading(text)


def sag_coil(workbench: Workbench) -> None:
    """A coil shock, measured once, with what the springs at hand would give; one of them would bind."""
    view_model = _bike(workbench, "Cinder 170", Station.SAG)
    view_model.start("rear")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    view_model.set_text("rate_n_per_mm", "450 lbf/in")
    view_model.set_text("preload_mm", "1")
    view_model.next()
    for text in ("23.5", "24"):
        view_model.add_reading(text)
    view_model.next()
    view_model.set_springs("springs", "500, 525x65, 550x70")


def spring(workbench: Workbench) -> None:
    """A pressure tried on paper beside the one measured."""
    view_model = _bike(workbench, "Larch 150", SPRING)
    view_model.try_value("pressure_kpa", 600)


def coil(workbench: Workbench, view: str) -> None:
    """The coil shock's sheets: springs to fit with the sag each would give, and a rate by pressing."""
    sag_coil(workbench)
    measured = _bike(workbench, "Cinder 170", Station.SAG)
    measured.keep()
    coil = _bike(workbench, "Cinder 170", SPRING).coil
    coil.pick_view(view)
    for line, pair in enumerate((("5", "420"), ("15", "1205"), ("25", "2010"), ("35", "2780"))):
        for column, text in enumerate(pair):
            if view == "pressed":
                coil.set_pair(line, column, text)


def progressive(workbench: Workbench) -> None:
    """The curve of a dual spring, fitted and measured, and another rate tried beside it."""
    coil = _bike(workbench, "Cinder 170", SPRING).coil
    coil.pick_end("rear")
    coil.pick_view("table")
    coil.choose("two")
    for name, text in (("stopped_rate", "800"), ("stop_mm", "10"), ("other_rate", "700"), ("both_mm", "68")):
        coil.set_text(name, text)
    coil.fit_result()
    measured = _bike(workbench, "Cinder 170", Station.SAG)
    measured.start("rear")
    measured.set_field("as_they_stand", True)
    measured.next()
    measured.set_text("preload_mm", "1")
    measured.next()
    for text in ("22", "22.5"):
        measured.add_reading(text)
    measured.keep()
    sheet = _bike(workbench, "Cinder 170", SPRING)
    sheet.coil.pick_view("curve")
    sheet.try_value("rate_n_per_mm", 85)


def carry(workbench: Workbench) -> None:
    """The same springs on a colder day, higher up."""
    view_model = _bike(workbench, "Larch 150", CARRY)
    view_model.set_text("here_c", "22")
    view_model.set_text("there_c", "-3")
    view_model.set_text("there_m", "1200")


def carry_spacers(workbench: Workbench) -> None:
    """A fork whose sizes are known, with one spacer more and a heavier pack, and the card told of it."""
    fork = workbench.desk.ask(bike_parts(_bike(workbench, "Larch 150", CARRY).bike_id)).unit("front")
    assert fork is not None
    sizes = {"area_mm2": 850.0, "positive_mm3": 205e3, "negative_mm3": 42e3, "spacer_volume_mm3": 1e4}
    for name, value in sizes.items():
        workbench.desk.do("Enter a size", edit(Unit, fork.id, name, value))
    view_model = _bike(workbench, "Larch 150", CARRY)
    for name, text in (("here_c", "20"), ("there_c", "20"), ("rider_kg", "86"), ("spacers_front", "2")):
        view_model.set_text(name, text)
    view_model.put_on_card(True)


def leverage(workbench: Workbench) -> None:
    """A survey being typed."""
    view_model = _bike(workbench, "Larch 150", LEVERAGE)
    pairs = ((6, 17.2), (12, 33.6), (18, 49.3), (24, 64.4), (30, 79.0), (42, 106.5), (54, 132.6), (60, 145.0))
    for line, pair in enumerate(pairs):
        for column, value in enumerate(pair):
            view_model.set_pair(line, column, str(value))


def mountings(workbench: Workbench) -> None:
    """Two mountings surveyed, one of them in use."""
    view_model = _bike(workbench, "Larch 150", LEVERAGE)
    for name, bend in (("low", 0.0080), ("high", 0.0045)):
        view_model.begin_new()
        for line, stroke in enumerate((6, 12, 18, 24, 30, 42, 54, 60)):
            view_model.set_pair(line, 0, str(stroke))
            view_model.set_pair(line, 1, f"{(2.42 + 60 * bend) * stroke - bend * stroke**2:.1f}")
        view_model.set_mounting(name)
        view_model.keep()
    view_model.state_mounting(view_model.state.mountings.rows[0].survey_id)


def put_back(workbench: Workbench) -> None:
    """What stands open after measuring the front."""
    _bike(workbench, "Fell 130", Station.SAG).show_put_back("front")
