"""Setups: numbered, complete states of a bike, and the steps that bring it there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.library.gate import Gate, Reader
from workbench.model.facts import check_field, field_of
from workbench.model.parts import BikeParts
from workbench.model.setting import Item, Setup, SetupValue, matching_setup
from workbench.model.steps import Step, steps_to, values_now

Values = dict[tuple[str, str], float | None]


def setups_of(bike_id: str) -> Callable[[Reader], tuple[Setup, ...]]:
    """Give the query for a bike's setups in number order."""

    def query(reader: Reader) -> tuple[Setup, ...]:
        return reader.find(Setup, bike_id=bike_id, order_by=("number",))

    return query


def setup_values(setup_id: str) -> Callable[[Reader], Values]:
    """Give the query for what a setup sets."""

    def query(reader: Reader) -> Values:
        return read_values(reader, setup_id)

    return query


def read_values(reader: Reader, setup_id: str) -> Values:
    """Read what a setup sets."""
    return {(value.item, value.subject_id): value.value for value in reader.find(SetupValue, setup_id=setup_id)}


def values_of(reader: Reader, setups: tuple[Setup, ...]) -> dict[str, Values]:
    """Read what each of some setups sets, by setup."""
    found: dict[str, Values] = {setup.id: {} for setup in setups}
    for value in reader.find(SetupValue, setup_id=tuple(found)):
        found[value.setup_id][value.item, value.subject_id] = value.value
    return found


def setup_on_bike(bike_id: str) -> Callable[[Reader], Setup | None]:
    """Give the query for the setup that stands on the bike now, if one does."""

    def query(reader: Reader) -> Setup | None:
        setups = reader.find(Setup, bike_id=bike_id, order_by=("number",))
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
    last = gate.find(Setup, bike_id=parts.bike.id, order_by=("-number",), limit=1)
    setup = Setup(
        id=new_id(),
        bike_id=parts.bike.id,
        rider_id=rider_id,
        number=last[0].number + 1 if last else 1,
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
        count = parts.range_of(subject_id) if item == Item.ADJUSTER else None
        gate.put(SetupValue(new_id(), setup.id, item, subject_id, value, "set_to", count.id if count else None))
    return setup


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
