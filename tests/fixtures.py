"""A real library in a temporary folder, and a bike to work on."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

from workbench.actions.desk import Desk
from workbench.actions.garage import NewBike, add_bike
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike


class Clock:
    """A clock that goes on one second at every look."""

    def __init__(self, start: str = "2031-05-14T09:00:00+00:00") -> None:
        self.moment = datetime.fromisoformat(start).astimezone(UTC)

    def __call__(self) -> str:
        self.moment += timedelta(seconds=1)
        return self.moment.isoformat()


def make_desk(folder: Path, *, now: Callable[[], str] | None = None) -> Desk:
    """Open a library in the folder, a new one if there is none."""
    return Desk(open_library(folder / "garage.trailbench", schema, now=now or Clock()))


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
    """Add a bike with its rider, units, adjusters and tyres."""
    new = NewBike(
        name=name,
        layout=layout,
        rider_name=rider,
        rider_mass_kg=mass_kg,
        fork_travel_mm=fork_travel_mm,
        shock_stroke_mm=shock_stroke_mm if layout != "hardtail" else None,
        rear_travel_mm=rear_travel_mm if layout != "hardtail" else None,
    )
    return desk.do(f"Add {name}", add_bike(new))
