"""Bikes in memory, for rules that read them."""

from __future__ import annotations

from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.bike import Bike, Tyre
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.setting import OnBike, latest
from workbench.model.unit import Generation, Unit

FORK = Unit("fork", "bike", "front", "fork", travel_mm=150.0, minimum_kpa=300.0, maximum_kpa=900.0, spacer_limit=3)
SHOCK = Unit("shock", "bike", "rear", "shock", travel_mm=60.0)
COIL = Unit("shock", "bike", "rear", "shock", spring="coil", travel_mm=60.0, preload_limit_mm=3.0)
ADJUSTERS = (
    Adjuster("fc", "fork", "compression", "low"),
    Adjuster("fr", "fork", "rebound", "low", counting_order=1),
    Adjuster("sr", "shock", "rebound", "low"),
)
RIDER = Person("rider", "M. Anders", mass_kg=84.5)
RANGES = {"fc": 14, "fr": 17, "sr": 12}


def a_log(*lines: tuple[str, str, float | None, str]) -> tuple[OnBike, ...]:
    """Lines of the log: item, subject, value, how."""
    return tuple(OnBike(f"l{n}", "bike", "", n, *line) for n, line in enumerate(lines, 1))


def parts_of(
    *,
    units: tuple[Unit, ...] = (FORK, SHOCK),
    adjusters: tuple[Adjuster, ...] = ADJUSTERS,
    ranges: dict[str, int] = RANGES,
    log: tuple[OnBike, ...] = (),
    rider: Person | None = RIDER,
) -> BikeParts:
    """A whole bike; adjusters of units it does not have are left out."""
    there = {unit.id for unit in units}
    fitted = tuple(one for one in adjusters if one.unit_id in there)
    return BikeParts(
        bike=Bike("bike", "Larch 150"),
        riders=(rider,) if rider else (),
        units=units,
        generations=tuple(Generation(f"g-{unit.id}", unit.id, 1, "new", "") for unit in units),
        adjusters=fitted,
        tyres=(Tyre("ft", "bike", "front"), Tyre("rt", "bike", "rear")),
        ranges=tuple(
            RangeCount(f"r-{one.id}", one.id, f"g-{one.unit_id}", ranges[one.id], None, "")
            for one in fitted
            if one.id in ranges
        ),
        now=tuple(latest(log).values()),
    )
