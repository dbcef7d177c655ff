"""A real library in a folder of the test's own, and a bike in it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

from workbench.actions.desk import Desk
from workbench.actions.garage import NewBike, add_bike
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike


class Clock:
    """A clock that moves on by a second at every look."""

    def __init__(self) -> None:
        self._moment = datetime(2031, 5, 14, 9, 0, tzinfo=UTC)

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
