"""The valves of a unit: which chamber each fills, in which order, and which one is nobody's to touch."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.model.unit import Unit, Valve

GAS = "damper_gas"
GAS_CARE = (
    "A damper's gas charge is not air to set: it stands under far more pressure than a suspension pump should meet."
    " Do not touch it unless the maker makes it a rider's setting; leave it to a qualified mechanic."
)


def purposes_of(unit: Unit, kept: Sequence[Valve] = ()) -> tuple[str, ...]:
    """List what the unit's valves are for, in the order they are filled; the damper's gas charge comes last."""
    found: list[str] = []
    if unit.spring != "coil":
        found.append("main")
        if unit.has_second_positive:
            found.insert(0 if unit.fill_order == "second_first" else 1, "second")
        if unit.negative == "separate":
            found.append("negative")
    if any(valve.unit_id == unit.id and valve.purpose == GAS for valve in kept):
        found.append(GAS)
    return tuple(found)


def order_words(unit: Unit) -> str:
    """Say in which order the chambers of a unit are filled; empty where there is only one."""
    if unit.spring == "coil" or not unit.has_second_positive:
        return ""
    first, then = ("second", "main") if unit.fill_order == "second_first" else ("main", "second")
    known = "" if unit.fill_order else " Check the order in the maker's manual."
    return f"Fill the {first} chamber, then the {then} one; the second always stands above the main one.{known}"
