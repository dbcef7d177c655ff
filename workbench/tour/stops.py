"""Every screen of the tour: which library, its name, bench mode or not, and how to get there."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtWidgets import QApplication, QWidget

from workbench.actions.edit import edit
from workbench.actions.garage import garage_rows
from workbench.actions.parts import bike_parts
from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.model.unit import Unit
from workbench.ui.parts.sheet import Sheet
from workbench.viewmodels.window import BACKUPS, CARRY, HISTORY, LEVERAGE, SPRING

Go = Callable[[Workbench], QWidget | None]


def bike(workbench: Workbench, name: str, station: str) -> Any:
    """Put a sample bike on the bench and open a station; gives the station's view-model."""
    rows = workbench.desk.ask(garage_rows())
    workbench.bench.put_bike(next(row.bike.id for row in rows if row.bike.name == name))
    workbench.view_model.open_station(station)
    page = workbench.window.page(station)
    page.start()
    return page.view_model


def _welcome(workbench: Workbench) -> None:
    """An empty garage."""


def _new_bike(workbench: Workbench) -> None:
    workbench.view_model.new_bike()
    view_model = workbench.window.page("new_bike").view_model
    for name, text in (("name", "Heron 140"), ("rider", "M. Anders"), ("fork_travel", "140"), ("shock_stroke", "abc")):
        view_model.set_field(name, text)  # type: ignore[attr-defined]
    view_model.add()  # type: ignore[attr-defined]


def _open(workbench: Workbench, name: str, station: str) -> None:
    bike(workbench, name, station)


def _further_down(workbench: Workbench, name: str, station: str, part: str) -> None:
    """A long sheet, scrolled to one of its parts."""
    bike(workbench, name, station)
    for _ in range(8):
        QApplication.processEvents()  # laid out, so that the part has its place
    sheet = workbench.window.page(station).findChild(Sheet)
    assert isinstance(sheet, Sheet)
    shown, inside = sheet.findChild(QWidget, part), sheet.scroll_area.widget()
    assert isinstance(shown, QWidget)
    assert inside is not None
    sheet.scroll_area.verticalScrollBar().setValue(shown.mapTo(inside, shown.rect().topLeft()).y() - 16)


def _search(workbench: Workbench) -> None:
    bike(workbench, "Larch 150", Station.SAG)
    workbench.window.side.search.setText("carbon")


def _pick_bike(workbench: Workbench) -> None:
    """Bench mode with the garage list brought back."""
    bike(workbench, "Larch 150", Station.SAG)
    workbench.window.head.garage_requested.emit()


def _count_closed(workbench: Workbench) -> None:
    view_model = bike(workbench, "Cinder 170", Station.ADJUSTERS)
    view_model.count(_last_adjuster(workbench))
    for _ in range(6):
        view_model.clicked()


def _count_range(workbench: Workbench) -> None:
    _count_closed(workbench)
    view_model = bike(workbench, "Cinder 170", Station.ADJUSTERS)
    view_model.keep_as_found()
    view_model.set_count(13)


def _last_adjuster(workbench: Workbench) -> str:
    from workbench.actions.parts import bike_parts

    return workbench.desk.ask(bike_parts(workbench.bench.bike_id or "")).adjusters[-1].id


def _sag(workbench: Workbench, steps: int) -> None:
    """The rear end of a bike whose front is measured: prepare, pressure, measure, advice, another round."""
    view_model = bike(workbench, "Fell 130", Station.SAG)
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


def _sag_friction(workbench: Workbench) -> None:
    """The same end once more, settled from above and from below."""
    view_model = bike(workbench, "Fell 130", Station.SAG)
    view_model.start("rear")
    view_model.go_to_stage(3)
    view_model.set_field("both_ways", True)
    for text in ("10.5", "13"):
        view_model.add_reading(text)


def _sag_coil(workbench: Workbench) -> None:
    """A coil shock, measured once, with the stock springs that come near."""
    view_model = bike(workbench, "Cinder 170", Station.SAG)
    view_model.start("rear")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    view_model.set_text("rate_n_per_mm", "450 lbf/in")
    view_model.set_text("preload_mm", "1")
    view_model.next()
    for text in ("23.5", "24"):
        view_model.add_reading(text)
    view_model.next()


def _spring(workbench: Workbench) -> None:
    view_model = bike(workbench, "Larch 150", SPRING)
    view_model.try_value("pressure_kpa", 600)


def _coil(workbench: Workbench, view: str) -> None:
    """The coil shock's sheets: springs to fit with the sag each would give, and a rate by pressing."""
    _sag_coil(workbench)
    sag = bike(workbench, "Cinder 170", Station.SAG)
    sag.keep()
    coil = bike(workbench, "Cinder 170", SPRING).coil
    coil.pick_view(view)
    for line, pair in enumerate((("5", "420"), ("15", "1205"), ("25", "2010"), ("35", "2780"))):
        for column, text in enumerate(pair):
            if view == "pressed":
                coil.set_pair(line, column, text)


def _carry(workbench: Workbench) -> None:
    view_model = bike(workbench, "Larch 150", CARRY)
    view_model.set_text("here_c", "22")
    view_model.set_text("there_c", "-3")
    view_model.set_text("there_m", "1200")


def _carry_spacers(workbench: Workbench) -> None:
    """A fork whose sizes are known, with one spacer more and a heavier pack."""
    fork = workbench.desk.ask(bike_parts(bike(workbench, "Larch 150", CARRY).bike_id)).unit("front")
    assert fork is not None
    sizes = {"area_mm2": 850.0, "positive_mm3": 205e3, "negative_mm3": 42e3, "spacer_volume_mm3": 1e4}
    for name, value in sizes.items():
        workbench.desk.do("Enter a size", edit(Unit, fork.id, name, value))
    view_model = bike(workbench, "Larch 150", CARRY)
    for name, text in (("here_c", "20"), ("there_c", "20"), ("rider_kg", "86"), ("spacers_front", "2")):
        view_model.set_text(name, text)


def _leverage(workbench: Workbench) -> None:
    view_model = bike(workbench, "Larch 150", LEVERAGE)
    pairs = ((6, 17.2), (12, 33.6), (18, 49.3), (24, 64.4), (30, 79.0), (42, 106.5), (54, 132.6), (60, 145.0))
    for line, pair in enumerate(pairs):
        for column, value in enumerate(pair):
            view_model.set_pair(line, column, str(value))


def _mountings(workbench: Workbench) -> None:
    """Two mountings surveyed, one of them in use."""
    view_model = bike(workbench, "Larch 150", LEVERAGE)
    for name, bend in (("low", 0.0080), ("high", 0.0045)):
        view_model.begin_new()
        for line, stroke in enumerate((6, 12, 18, 24, 30, 42, 54, 60)):
            view_model.set_pair(line, 0, str(stroke))
            view_model.set_pair(line, 1, f"{(2.42 + 60 * bend) * stroke - bend * stroke**2:.1f}")
        view_model.set_mounting(name)
        view_model.keep()
    view_model.state_mounting(view_model.state.mountings.rows[0].survey_id)


def _put_back(workbench: Workbench) -> None:
    bike(workbench, "Fell 130", Station.SAG).show_put_back("front")


def _ride_start(workbench: Workbench) -> None:
    view_model = bike(workbench, "Tarn hardtail", Station.RIDE)
    view_model.set_start("verified", True)


def _riding(workbench: Workbench, runs: int) -> None:
    _ride_start(workbench)
    view_model = bike(workbench, "Tarn hardtail", Station.RIDE)
    courses = view_model.state.start.courses
    view_model.set_start("course_id", courses[0][0])
    view_model.start_session()
    for number in range(runs):
        view_model.set_run("liking", (5, 6, 5, 7, 6)[number % 5])
        view_model.set_run("direction", -1)
        view_model.keep_run()
        if number % 2:
            view_model.set_proposed()
    view_model.set_run("liking", 6)


def _review_picked(workbench: Workbench) -> None:
    view_model = bike(workbench, "Larch 150", Station.REVIEW)
    rows = view_model.state.effects.rows
    if rows:
        view_model.pick_change(rows[0].key)


def _backups(workbench: Workbench) -> None:
    """Two backups, and the question before one of them is restored."""
    view_model = bike(workbench, "Larch 150", BACKUPS)
    view_model.make()
    view_model.make()
    view_model.ask_restore()


def _history(workbench: Workbench) -> None:
    """The deeds on one bike, one of them picked."""
    view_model = bike(workbench, "Larch 150", HISTORY)
    view_model.set_bike(workbench.bench.bike_id)
    view_model.set_text("run")
    view_model.pick(view_model.state.rows[3].key)


def _trouble(workbench: Workbench) -> QWidget:
    from workbench.actions.desk import Backup
    from workbench.model.errors import LibraryDamaged
    from workbench.ui.backups.trouble import TroubleDialog
    from workbench.viewmodels.trouble import resolve

    made = [
        Backup(f"backup {day}", f"2031-05-{day}T16:30:00+00:00", "by itself", 1_204_224, 12 + day % 3)
        for day in range(14, 10, -1)
    ]
    path = "/home/mechanic/.local/share/trailbench/garage.trailbench"
    error = LibraryDamaged(f"{path} is damaged. Nothing was changed; restore a backup.")
    return _shown(TroubleDialog(resolve(error, tuple(made), is_file=True), workbench.window))


def _care(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import care_paper

    return _shown(care_paper(workbench.window))


def _keys(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import keys_paper

    return _shown(keys_paper(workbench.window.menu.values(), workbench.window))


def _help(workbench: Workbench) -> QWidget:
    from workbench.ui.help import help_paper

    return _shown(help_paper("sag", workbench.window))


def _about(workbench: Workbench) -> QWidget:
    from workbench.app import VERSION
    from workbench.ui.messages import about_paper

    return _shown(about_paper(VERSION, "/home/mechanic/.local/share/trailbench/garage.trailbench", workbench.window))


def _person(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import person_question

    state = workbench.view_model.state
    return _shown(person_question(state.people, workbench.window))


def _reason(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import reason_question

    return _shown(reason_question(workbench.window))


def _shown(dialog: QWidget) -> QWidget:
    dialog.show()
    return dialog


STOPS: tuple[tuple[str, str, bool, Go], ...] = (
    ("empty", "welcome", False, _welcome),
    ("sample", "new-bike", False, _new_bike),
    ("sample", "garage", False, partial(_open, name="Larch 150", station=Station.GARAGE)),
    (
        "sample",
        "garage-parts",
        False,
        partial(_further_down, name="Larch 150", station=Station.GARAGE, part="section_fork"),
    ),
    ("sample", "garage-search", False, _search),
    ("sample", "garage-bench", True, _pick_bike),
    ("sample", "garage-coil", False, partial(_open, name="Cinder 170", station=Station.GARAGE)),
    ("sample", "adjusters", False, partial(_open, name="Larch 150", station=Station.ADJUSTERS)),
    ("sample", "adjusters-closed", False, _count_closed),
    ("sample", "adjusters-range", False, _count_range),
    ("sample", "adjusters-range-bench", True, _count_range),
    ("sample", "sag", False, partial(_open, name="Larch 150", station=Station.SAG)),
    ("sample", "sag-prepare", False, partial(_sag, steps=0)),
    ("sample", "sag-pressure", False, partial(_sag, steps=1)),
    ("sample", "sag-measure", False, partial(_sag, steps=2)),
    ("sample", "sag-measure-bench", True, partial(_sag, steps=2)),
    ("sample", "sag-advice", False, partial(_sag, steps=3)),
    ("sample", "sag-friction", False, _sag_friction),
    ("sample", "sag-advice-coil", False, _sag_coil),
    ("sample", "sag-put-back", False, _put_back),
    ("sample", "spring", False, _spring),
    ("sample", "spring-coil", False, partial(_coil, view="at_hand")),
    ("sample", "spring-pressed", False, partial(_coil, view="pressed")),
    ("sample", "leverage", False, _leverage),
    ("sample", "leverage-mountings", False, _mountings),
    ("sample", "carry", False, _carry),
    ("sample", "carry-spacers", False, _carry_spacers),
    ("sample", "baseline-write-bench", True, partial(_open, name="Fell 130", station=Station.BASELINE)),
    ("sample", "baseline-write", False, partial(_open, name="Fell 130", station=Station.BASELINE)),
    ("sample", "baseline", False, partial(_open, name="Tarn hardtail", station=Station.BASELINE)),
    ("sample", "ride-blocked", False, partial(_open, name="Wren 24", station=Station.RIDE)),
    ("sample", "ride-start", False, _ride_start),
    ("sample", "ride-start-bench", True, _ride_start),
    ("sample", "ride", False, partial(_riding, runs=3)),
    ("sample", "ride-changed", False, partial(_riding, runs=4)),
    ("sample", "ride-bench", True, partial(_riding, runs=3)),
    ("sample", "review", False, partial(_open, name="Larch 150", station=Station.REVIEW)),
    (
        "sample",
        "review-changes",
        False,
        partial(_further_down, name="Larch 150", station=Station.REVIEW, part="review_table"),
    ),
    ("sample", "review-picked", False, _review_picked),
    ("sample", "backups", False, _backups),
    ("sample", "history", False, _history),
    ("sample", "trouble", False, _trouble),
    ("sample", "person", False, _person),
    ("sample", "reason", False, _reason),
    ("sample", "about", False, _about),
    ("sample", "help", False, _help),
    ("sample", "care", False, _care),
    ("sample", "keys", False, _keys),
    ("sample", "card", False, partial(_open, name="Larch 150", station=Station.CARD)),
)
