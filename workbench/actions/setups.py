"""Setups: numbered, complete states of a bike, and the steps that bring it there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.library.gate import Gate, Reader
from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.facts import check_field, field_of
from workbench.model.parts import BikeParts
from workbench.model.setting import PRESSURE_ITEMS, Item, Setup, SetupValue, matching_setup, on_other_hardware
from workbench.model.steps import Step, steps_to, values_now
from workbench.model.unit import Generation, Unit
from workbench.model.warmth import Pressure, with_warmth

Values = dict[tuple[str, str], float | None]


def setups_of(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], tuple[Setup, ...]]:
    """Give the query for a bike's setups in number order, those of one rider if one is named."""

    def query(reader: Reader) -> tuple[Setup, ...]:
        return find_setups(reader, bike_id, rider_id)

    return query


def find_setups(reader: Reader, bike_id: str, rider_id: str | None) -> tuple[Setup, ...]:
    """Read a bike's setups in number order. Numbers count per bike, but a setup is one rider's."""
    whose: dict[str, Any] = {} if rider_id is None else {"rider_id": rider_id}
    return reader.find(Setup, bike_id=bike_id, order_by=("number",), **whose)


def next_number(reader: Reader, bike_id: str) -> int:
    """Give the number of the bike's next setup."""
    last = reader.find(Setup, bike_id=bike_id, order_by=("-number",), limit=1)
    return last[0].number + 1 if last else 1


def setup_values(setup_id: str) -> Callable[[Reader], Values]:
    """Give the query for what a setup sets."""

    def query(reader: Reader) -> Values:
        return read_values(reader, setup_id)

    return query


def read_values(reader: Reader, setup_id: str) -> Values:
    """Read what a setup sets."""
    return _by_setup(reader, (setup_id,))[setup_id]


def values_of(reader: Reader, setups: tuple[Setup, ...]) -> dict[str, Values]:
    """Read what each of some setups sets, by setup."""
    return _by_setup(reader, tuple(setup.id for setup in setups))


def _by_setup(reader: Reader, setup_ids: tuple[str, ...]) -> dict[str, Values]:
    """Read values by setup. What was set on hardware that is no longer there is a thing of its own."""
    found: dict[str, Values] = {setup_id: {} for setup_id in setup_ids}
    values = reader.find(SetupValue, setup_id=setup_ids)
    gone = _counted_on_other_hardware(reader, frozenset(one.range_id for one in values if one.range_id is not None))
    gone |= _of_former_units(reader, frozenset(one.subject_id for one in values))
    for one in values:
        subject_id = gone.get(one.subject_id) or gone.get(one.range_id or "", one.subject_id)
        found[one.setup_id][one.item, subject_id] = with_warmth(one.value, one.temperature_c)
    return found


def _counted_on_other_hardware(reader: Reader, range_ids: frozenset[str]) -> dict[str, str]:
    """Give the subject of positions by the range they were counted under, where that hardware is no longer there."""
    counts = reader.find(RangeCount, id=tuple(range_ids))
    units = {one.id: one.unit_id for one in reader.find(Adjuster, id=tuple({one.adjuster_id for one in counts}))}
    numbers, newest = {}, dict.fromkeys(units.values(), 0)
    for one in reader.find(Generation, unit_id=tuple(newest)):
        numbers[one.id] = one.number
        newest[one.unit_id] = max(newest[one.unit_id], one.number)
    return {
        count.id: on_other_hardware(count.adjuster_id, number)
        for count in counts
        if (number := numbers.get(count.generation_id or "", 0)) != newest[units[count.adjuster_id]]
    }


def _of_former_units(reader: Reader, subject_ids: frozenset[str]) -> dict[str, str]:
    """Give the subject of settings by the unit or adjuster they are about, where that unit was taken off its bike."""
    knobs = reader.find(Adjuster, id=tuple(subject_ids))
    of_units = {*subject_ids, *(one.unit_id for one in knobs)}
    removed = {unit.id for unit in reader.find(Unit, id=tuple(of_units)) if unit.removed_at is not None}
    about = [*removed & subject_ids, *(one.id for one in knobs if one.unit_id in removed)]
    return {subject_id: on_other_hardware(subject_id, 0) for subject_id in about}


def setup_on_bike(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], Setup | None]:
    """Give the query for the setup that stands on the bike now, if one does: of one rider if one is named."""

    def query(reader: Reader) -> Setup | None:
        setups = find_setups(reader, bike_id, rider_id)
        return matching_setup(setups, values_of(reader, setups), values_now(read_parts(reader, bike_id)))

    return query


def write_setup(
    gate: Gate,
    parts: BikeParts,
    rider_id: str,
    values: Values,
    origin: str,
    *,
    name: str = "",
    parent_id: str | None = None,
    is_confounded: bool = False,
    temperature_c: float | None = None,
    note: str = "",
) -> Setup:
    """Write a new numbered setup with its values."""
    setup = Setup(
        id=new_id(),
        bike_id=parts.bike.id,
        rider_id=rider_id,
        number=next_number(gate, parts.bike.id),
        origin=origin,
        made_at=gate.now,
        name=name,
        parent_id=parent_id,
        is_confounded=is_confounded,
        temperature_c=temperature_c,
        person_id=gate.person_id,
        note=note,
    )
    gate.put(setup)
    for (item, subject_id), value in sorted(values.items()):
        gate.put(_setup_value(parts, setup.id, item, subject_id, value))
    return setup


def _setup_value(parts: BikeParts, setup_id: str, item: str, subject_id: str, value: float | None) -> SetupValue:
    """Make one setting of a setup: a position knows its count, a pressure the temperature it was set at."""
    count = parts.range_of(subject_id) if item == Item.ADJUSTER else None
    return SetupValue(
        new_id(),
        setup_id,
        item,
        subject_id,
        None if value is None else float(value),
        "set_to",
        count.id if count else None,
        _temperature_c(parts, item, subject_id, value),
    )


def _temperature_c(parts: BikeParts, item: str, subject_id: str, value: float | None) -> float | None:
    """Give the temperature a pressure was set at: its own, or that of the log line with the same value."""
    if isinstance(value, Pressure):
        return value.temperature_c
    line = parts.line(item, subject_id) if item in PRESSURE_ITEMS else None
    return line.temperature_c if line is not None and line.value == value else None


def keep_setup(
    bike_id: str,
    rider_id: str,
    values: Values,
    origin: str,
    *,
    name: str = "",
    parent_id: str | None = None,
    is_confounded: bool = False,
    temperature_c: float | None = None,
    draft_id: str | None = None,
) -> Callable[[Gate], Setup]:
    """Give the deed that keeps a setup; the draft it was written in is closed with it."""

    def deed(gate: Gate) -> Setup:
        setup = write_setup(
            gate,
            read_parts(gate, bike_id),
            rider_id,
            values,
            origin,
            name=name,
            parent_id=parent_id,
            is_confounded=is_confounded,
            temperature_c=temperature_c,
        )
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return setup

    return deed


def name_setup(setup_id: str, name: str) -> Callable[[Gate], None]:
    """Give the deed that names a setup."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Setup, setup_id), name=check_field(field_of(Setup, "name"), name)))

    return deed


def steps_to_setup(setup_id: str) -> Callable[[Reader], tuple[Step, ...]]:
    """Give the query for the steps from the bike as it is to a setup."""

    def query(reader: Reader) -> tuple[Step, ...]:
        setup = reader.need(Setup, setup_id)
        return steps_to(read_parts(reader, setup.bike_id), read_values(reader, setup_id))

    return query


def take_step(bike_id: str, step: Step, *, temperature_c: float | None = None) -> Callable[[Gate], None]:
    """Give the deed that logs one step of a list as done."""

    def deed(gate: Gate) -> None:
        log_line(
            gate,
            bike_id,
            step.item,
            step.subject_id,
            step.value,
            "set_to",
            range_id=step.range_id,
            temperature_c=temperature_c,
        )

    return deed


def take_all_steps(
    bike_id: str, steps: tuple[Step, ...], *, temperature_c: float | None = None
) -> Callable[[Gate], None]:
    """Give the deed that logs a whole list as done."""

    def deed(gate: Gate) -> None:
        for step in steps:
            take_step(bike_id, step, temperature_c=temperature_c)(gate)

    return deed
