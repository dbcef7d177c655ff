"""Coil springs at hand: read them, add and take away, and log which of them is on the bike."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.spring import SpringRecords, spring_records
from workbench.library.gate import Gate, Reader
from workbench.model.coil import curve_text
from workbench.model.errors import InputError
from workbench.model.facts import check_field, clean_text, field_of
from workbench.model.item_facts import ITEM_FIELDS, maker_limits
from workbench.model.sag_rules import coil_bind_short_mm
from workbench.model.setting import Item
from workbench.model.unit import SPRING_HOWS, Spring, Unit

LABEL_LIMIT = 60
ON_BIKE_HOWS = {"printed": "set_to", "pressed": "pressed", "wire": "wire"}  # how the log says it


@dataclass(frozen=True, slots=True)
class CoilRecords:
    """What is known of a bike's springs, and the coil springs at hand for each unit, softest first."""

    spring: SpringRecords
    at_hand: dict[str, tuple[Spring, ...]]


def coil_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], CoilRecords]:
    """Give the query for the coil springs of a bike."""

    def query(reader: Reader) -> CoilRecords:
        known = spring_records(bike_id, rider_id)(reader)
        keys, springs = [unit.id for unit in known.sag.parts.units], known.sag.springs
        return CoilRecords(known, {key: tuple(one for one in springs if one.unit_id == key) for key in keys})

    return query


def keep_spring(
    unit_id: str,
    rate_n_per_mm: float,
    *,
    stroke_mm: float | None = None,
    label: str = "",
    how: str = "printed",
    rows: Sequence[tuple[float, float]] = (),
    draft_id: str | None = None,
) -> Callable[[Gate], Spring]:
    """Give the deed that adds a spring to those at hand; ``rows`` are the pairs of a progressive one."""
    rate = float(check_field(ITEM_FIELDS[Item.SPRING_RATE], rate_n_per_mm))
    stroke = check_field(field_of(Unit, "spring_stroke_mm"), stroke_mm)
    name = clean_text(label)
    if len(name) > LABEL_LIMIT:
        raise InputError("Name", name, f"up to {LABEL_LIMIT} characters")
    _check_how(how)
    curve = curve_text(rows) if rows else None

    def deed(gate: Gate) -> Spring:
        gate.need(Unit, unit_id)
        spring = Spring(new_id(), unit_id, rate, stroke, name, None if how == "printed" else how, curve)
        gate.put(spring)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return spring

    return deed


def remove_spring(spring_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a spring from those at hand."""

    def deed(gate: Gate) -> None:
        gate.delete(Spring, spring_id)

    return deed


def fit_spring(
    bike_id: str,
    unit_id: str,
    rate_n_per_mm: float,
    *,
    preload_mm: float | None = None,
    stroke_mm: float | None = None,
    how: str = "printed",
    is_table: bool = False,
    draft_id: str | None = None,
) -> Callable[[Gate], None]:
    """Give the deed that says which spring is on the bike, and its preload if one is given; a spring that binds is not.

    The usable stroke noted with the unit becomes that of the spring, or unknown with it. ``is_table`` says that the
    rate stands for a spring at hand with a table of travel and force.
    """
    rate = float(check_field(ITEM_FIELDS[Item.SPRING_RATE], rate_n_per_mm))
    preload = check_field(ITEM_FIELDS[Item.PRELOAD], preload_mm)
    stroke = check_field(field_of(Unit, "spring_stroke_mm"), stroke_mm)
    _check_how(how)

    def deed(gate: Gate) -> None:
        unit = gate.need(Unit, unit_id)
        parts = read_parts(gate, bike_id)
        then_mm = preload if preload is not None else parts.value(Item.PRELOAD, unit_id) or 0.0
        _check_fit(unit, then_mm, stroke)
        log_line(gate, bike_id, Item.SPRING_RATE, unit_id, rate, "table" if is_table else ON_BIKE_HOWS[how])
        if preload is not None and parts.value(Item.PRELOAD, unit_id) != preload:
            log_line(gate, bike_id, Item.PRELOAD, unit_id, preload, "set_to")
        if unit.spring_stroke_mm != stroke:
            gate.put(replace(unit, spring_stroke_mm=stroke))
        if draft_id is not None:
            gate.remove_draft(draft_id)

    return deed


def _check_how(how: str) -> None:
    if how not in SPRING_HOWS:
        raise InputError("how", how, " or ".join(SPRING_HOWS))


def _check_fit(unit: Unit, preload_mm: float, stroke_mm: float | None) -> None:
    """Refuse more preload than the maker allows, and a spring that would go solid before the unit ends."""
    _, most = maker_limits(Item.PRELOAD, unit)
    if most is not None and preload_mm > most + 1e-9:
        raise InputError("Preload", f"{preload_mm:g} mm", f"0 to {most:g} mm, the maker's limit")
    short_mm = coil_bind_short_mm(stroke_mm, unit.travel_mm or 0.0, preload_mm)
    if short_mm > 0 and stroke_mm is not None:
        needed = f"at least {stroke_mm + short_mm:g} mm, stroke and preload together"
        raise InputError("Usable stroke", f"{stroke_mm:g} mm", needed, "Coil bind: do not fit this spring.")
