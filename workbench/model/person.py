"""People: who rides, who works at the bench, and the units each reads."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody who rides, works at the bench, or both."""

    id: str
    name: str
    rides: bool = True
    works_here: bool = False
    is_child: bool = False
    mass_kg: float | None = None  # ready to ride: kit, pack and water included
    pressure_unit: str = "psi"
    length_unit: str = "mm"
    mass_unit: str = "kg"
    rate_unit: str = "lbf/in"
    temperature_unit: str = "degC"
    note: str = ""
    created_at: str = ""
    archived_at: str | None = None
