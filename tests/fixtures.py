"""A real library in a folder of the test's own, and a bike in it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TypeVar

from workbench.actions.adjusters import keep_as_found, keep_range, log_found
from workbench.actions.baseline import baseline_records
from workbench.actions.desk import Desk, Gate
from workbench.actions.garage import NewBike, add_bike
from workbench.actions.parts import bike_parts
from workbench.actions.ride import add_course, keep_run, ride_records, start_session
from workbench.actions.setups import keep_setup, steps_to_setup, take_all_steps
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike
from workbench.model.ride import Run, Session
from workbench.model.setting import Item, Setup

T = TypeVar("T")


class Clock:
    """A clock that moves on by a second at every look."""

    def __init__(self, begins: datetime = datetime(2031, 5, 14, 9, 0, tzinfo=UTC)) -> None:
        self._moment = begins

    def __call__(self) -> str:
        self._moment += timedelta(seconds=1)
        return self._moment.isoformat()


@contextmanager
def make_desk(folder: Path, *, now: Callable[[], str] | None = None) -> Iterator[Desk]:
    """A desk over a library in the folder; opened again it holds what was kept before."""
    library = open_library(folder / "bench.trailbench", schema, now=now or Clock())
    try:
        yield Desk(library)
    finally:
        library.close()


def a_bike(
    desk: Desk,
    *,
    name: str = "Larch 150",
    layout: str = "air_air",
    rider: str = "M. Anders",
    mass_kg: float | None = 84.5,
    fork_travel_mm: float | None = 150.0,
    shock_stroke_mm: float | None = 60.0,
    rear_travel_mm: float | None = 145.0,
) -> Bike:
    """Add an invented bike with a rider, units, adjusters and tyres."""
    is_hardtail = layout == "hardtail"
    new = NewBike(
        name,
        layout=layout,
        rider_name=rider,
        rider_mass_kg=mass_kg,
        fork_travel_mm=fork_travel_mm,
        shock_stroke_mm=None if is_hardtail else shock_stroke_mm,
        rear_travel_mm=None if is_hardtail else rear_travel_mm,
    )
    return desk.do(f"Add {name}", add_bike(new), bike_id=None, station="garage")


RECORD_TYPES = tuple(table.info["spec"].record_type for table in schema.sorted_tables if "spec" in table.info)
RANGES = (14, 17, 12, 13)  # counted steps of a bike's adjusters, in counting order
FOUND = (5, 6, 4, 7)


def everything(desk: Desk) -> dict[type, tuple[object, ...]]:
    """All records of the library, by type."""
    return desk.ask(lambda reader: {one: reader.find(one) for one in RECORD_TYPES})


def check_there_and_back(desk: Desk, label: str, deed: Callable[[Gate], T], *, bike_id: str | None = None) -> T:
    """Do a deed, undo it and do it again: the records are as before, and as after."""
    before = everything(desk)
    result = desk.do(label, deed, bike_id=bike_id, station="")
    after = everything(desk)
    assert after != before, f"{label} changed nothing"
    assert desk.undo().label == label
    assert everything(desk) == before
    assert desk.redo().label == label
    assert everything(desk) == after
    return result


def a_counted_bike(desk: Desk, **about: object) -> Bike:
    """A bike whose adjusters are counted and whose springs and tyres were looked at."""
    bike = a_bike(desk, **about)
    parts = desk.ask(bike_parts(bike.id))
    for adjuster, steps, found in zip(parts.adjusters, RANGES, FOUND, strict=False):
        desk.do("As found", keep_as_found(bike.id, adjuster.id, found), bike_id=bike.id)
        desk.do("Range", keep_range(bike.id, adjuster.id, steps), bike_id=bike.id)
    for unit, kpa in zip(parts.units, (520.0, 1240.0), strict=False):
        if unit.spring == "coil":
            desk.do("Found", log_found(bike.id, Item.SPRING_RATE, unit.id, 80.0), bike_id=bike.id)
        else:
            desk.do("Found", log_found(bike.id, Item.PRESSURE, unit.id, kpa), bike_id=bike.id)
    for tyre in parts.tyres:
        desk.do("Found", log_found(bike.id, Item.TYRE_PRESSURE, tyre.id, 160.0), bike_id=bike.id)
    return bike


def a_baseline(desk: Desk, bike: Bike) -> Setup:
    """Keep setup no. 1 as proposed and set all of it."""
    records = desk.ask(baseline_records(bike.id))
    values = {(one.item, one.subject_id): one.value for one in records.proposed}
    keep = keep_setup(bike.id, records.parts.riders[0].id, values, "baseline")
    setup = desk.do("Keep setup no. 1", keep, bike_id=bike.id, station="baseline")
    steps = desk.ask(steps_to_setup(setup.id))
    desk.do("Set all", take_all_steps(bike.id, steps), bike_id=bike.id, station="baseline")
    return setup


def a_session(desk: Desk, bike: Bike, *, course: str = "Quarry loop", temperature_c: float | None = None) -> Session:
    """Start a verified session on the setup that stands on the bike."""
    records = desk.ask(ride_records(bike.id))
    on = desk.do("Add a course", add_course(course, has_heavy_hit=True), station="ride")
    told = Session(
        "",
        bike.id,
        records.parts.riders[0].id,
        on.id,
        "",
        start_setup_id=records.current.id,
        temperature_c=temperature_c,
    )
    return desk.do("Start", start_session(replace(told, verified_at=desk.now())), bike_id=bike.id, station="ride")


def a_run(desk: Desk, session: Session, **said: object) -> Run:
    """Keep one run on the setup that stands on the bike."""
    current = desk.ask(ride_records(session.bike_id)).current
    run = Run("", session.id, 0, current.id, "", "", **said)
    return desk.do("Keep run", keep_run(run), bike_id=session.bike_id, station="ride")
