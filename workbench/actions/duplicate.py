"""Start a bike from another one: its parts and what was counted on them, never what was ridden or measured."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.actions.garage import ListedBike, NewBike, listed_bikes, seat_rider
from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Bike, BikeRider
from workbench.model.errors import LibraryError
from workbench.model.facts import check_field, field_of
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.ride import Session
from workbench.model.sag import SagMeasurement
from workbench.model.service import CheckIn
from workbench.model.setting import Setup
from workbench.model.unit import Generation, Spring, Unit, Valve

TAKEN_OVER = "Taken over from another bike: count again before relying on it."


def duplicate_bike(
    bike_id: str, name: str, *, copy_id: str | None = None, with_riders: bool = True, as_template: bool = False
) -> Callable[[Gate], Bike]:
    """Give the deed that adds a bike like another one: facts, units, adjusters and their ranges.

    Serial numbers, runs, setups, sag, pictures and what stands on the bike now stay with the first one.
    """
    checked = check_field(field_of(Bike, "name"), name)

    def deed(gate: Gate) -> Bike:
        parts = read_parts(gate, bike_id)
        bike = replace(
            parts.bike,
            id=copy_id or new_id(),
            name=checked,
            created_at=gate.now,
            template_at=gate.now if as_template else None,
            archived_at=None,
        )
        gate.put(bike)
        gate.put(*(replace(tyre, id=new_id(), bike_id=bike.id) for tyre in parts.tyres))
        if with_riders:
            _copy_riders(gate, bike_id, bike.id)
        for unit in parts.units:
            _copy_unit(gate, parts, unit, bike.id, with_ranges=not as_template)
        return bike

    return deed


def start_from(
    template_id: str, new: NewBike, *, like: Person | None = None, draft_id: str | None = None, bike_id: str
) -> Callable[[Gate], Bike]:
    """Give the deed that adds a bike with the parts of a template, and its own name, discipline and rider."""
    copy = duplicate_bike(template_id, new.name, copy_id=bike_id, with_riders=False)

    def deed(gate: Gate) -> Bike:
        bike = replace(copy(gate), discipline=new.discipline)
        gate.put(bike)
        seat_rider(gate, bike.id, new, like)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return bike

    return deed


def templates() -> Callable[[Reader], tuple[ListedBike, ...]]:
    """Give the query for the bikes kept to start others from, by name."""
    return lambda reader: tuple(
        sorted(listed_bikes(reader, template=True), key=lambda one: (one.name.casefold(), one.id))
    )


def delete_template(bike_id: str) -> Callable[[Gate], None]:
    """Give the deed that deletes a template with its parts; undo has it again. One that was worked on stays."""

    def deed(gate: Gate) -> None:
        bike = gate.need(Bike, bike_id)
        if bike.template_at is None:
            raise LibraryError(f"{bike.name} is a bike, not a template. Put it away instead; nothing was deleted.")
        if any(gate.find(kind, bike_id=bike_id, limit=1) for kind in (Setup, Session, SagMeasurement, CheckIn)):
            raise LibraryError(f"{bike.name} was worked on: there are records of it. It was not deleted.")
        gate.delete(Bike, bike_id)

    return deed


def _copy_riders(gate: Gate, bike_id: str, copy_id: str) -> None:
    links = gate.find(BikeRider, bike_id=bike_id)
    gate.put(*(replace(link, id=new_id(), bike_id=copy_id) for link in links))


def _copy_unit(gate: Gate, parts: BikeParts, unit: Unit, copy_id: str, *, with_ranges: bool) -> None:
    copy = replace(unit, id=new_id(), bike_id=copy_id, serial="")
    generation = Generation(new_id(), copy.id, 1, "new", gate.now)
    gate.put(copy, generation)
    gate.put(*(replace(one, id=new_id(), unit_id=copy.id) for one in gate.find(Valve, unit_id=unit.id)))
    gate.put(*(replace(one, id=new_id(), unit_id=copy.id) for one in gate.find(Spring, unit_id=unit.id)))
    adjusters = parts.adjusters_of(unit.id)
    keys = {one.id: new_id() for one in adjusters}
    for one in adjusters:
        gate.put(replace(one, id=keys[one.id], unit_id=copy.id, depends_on=keys.get(one.depends_on or "")))
    for one in adjusters:
        count = parts.range_of(one.id)
        if with_ranges and count is not None:
            taken = replace(count, id=new_id(), adjuster_id=keys[one.id], generation_id=generation.id)
            gate.put(replace(taken, as_found=None, push_felt=None, counted_at=gate.now, note=TAKEN_OVER))
