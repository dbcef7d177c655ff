"""A pressure to start from, offered only where there is evidence for one, and with where it comes from."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from typing import TYPE_CHECKING

from workbench.actions.sag import SagRecords
from workbench.model.errors import WorkbenchError
from workbench.model.maker_table import read_table
from workbench.model.sag_rules import Band
from workbench.model.unit import Unit
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_sizes import chamber_of

if TYPE_CHECKING:
    from workbench.physics.start import StartPressure

# Share of the rider's weight on an end, standing, and how far off that may be: common practice, no source.
LOAD_SHARE = {"front": 0.42, "rear": 0.58}
LOAD_SHARE_SD = 0.15
GRAVITY_M_S2 = 9.80665


def start_words(records: SagRecords, unit: Unit, band: Band | None, units: Units) -> str:
    """Say a pressure to start from and its origin; empty where nothing supports one."""
    found = _start(records, unit, band)
    if found is None:
        return ""
    within = ""
    if found.low_kpa is not None and found.high_kpa is not None:
        within = f" ({units.text(found.low_kpa, 'pressure')} to {units.text(found.high_kpa, 'pressure')})"
    return f"To start from: about {units.text(found.pressure_kpa, 'pressure')}{within}, from {found.origin}."


def _start(records: SagRecords, unit: Unit, band: Band | None) -> StartPressure | None:
    mass_kg = records.rider.mass_kg if records.rider else None
    if mass_kg is None or unit.spring == "coil":
        return None
    earlier = records.elsewhere.get(unit.id, ())
    chamber = chamber_of(unit, None)
    if not (unit.maker_table.strip() or earlier or chamber):
        return None  # and nothing heavy is imported
    from workbench.physics.start import start_from_garage, start_from_sizes, start_from_table

    ways: list[Callable[[], StartPressure]] = [
        lambda: start_from_table(mass_kg, read_table(unit.maker_table)),
        lambda: start_from_garage(mass_kg, earlier),
    ]
    if chamber is not None and band is not None:
        sized, load_n = chamber, _load_n(records, unit, mass_kg)
        ways.append(lambda: start_from_sizes(sized, load_n=load_n, load_share_sd=LOAD_SHARE_SD, target=band.middle))
    for way in ways:
        with suppress(WorkbenchError):  # this way has nothing to say; the next one may
            return way()
    return None


def _load_n(records: SagRecords, unit: Unit, mass_kg: float) -> float:
    load = mass_kg * GRAVITY_M_S2 * LOAD_SHARE[unit.end]
    wheel_mm = records.parts.bike.rear_travel_mm
    if unit.kind == "shock" and wheel_mm and unit.travel_mm:
        return load * wheel_mm / unit.travel_mm
    return load
