"""The chambers of an air spring, where their sizes were entered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from workbench.model.unit import Unit

if TYPE_CHECKING:
    from workbench.physics.air import AirChamber


def chamber_of(unit: Unit, spacers: int | None, negative_kpa: float | None = None) -> AirChamber | None:
    """Give the chambers of a unit with so many spacers; None where something of them is not known.

    A negative chamber with a valve of its own needs its pressure, and of a negative coil no sizes are on record.
    """
    if unit.area_mm2 is None or unit.positive_mm3 is None or unit.negative_mm3 is None or unit.travel_mm is None:
        return None
    if unit.negative == "coil" or (unit.negative == "separate" and negative_kpa is None):
        return None
    from workbench.physics.air import AirChamber

    spacer_mm3 = (spacers or 0) * (unit.spacer_volume_mm3 or 0.0)
    return AirChamber(unit.area_mm2, unit.positive_mm3, unit.negative_mm3, unit.travel_mm, spacer_mm3)


def own_kpa(unit: Unit, negative_kpa: float | None) -> float | None:
    """Give the pressure of a separately filled negative chamber; None where it fills itself."""
    return negative_kpa if unit.negative == "separate" else None
