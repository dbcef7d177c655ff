"""The garage: add a bike with its units, adjusters and tyres in one deed; put it away and take it out again."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass, replace
from typing import Any

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line, now_on
from workbench.actions.people import add_person
from workbench.library.gate import Gate, Reader
from workbench.model.adjuster import Adjuster
from workbench.model.bike import LAYOUTS, SPRING_OF, Bike, BikeRider, Tyre, ends_of
from workbench.model.errors import InputError
from workbench.model.facts import check_field, field_of
from workbench.model.person import Person
from workbench.model.put_back import MEASURING_HOWS, RENEWED
from workbench.model.setting import Item
from workbench.model.unit import Generation, Unit

_LISTED = ("template_at", "archived_at", "id", "name", "tags")
MOVES_MOUNTING = ("mount", "chip")  # reasons after which the mounting on record is no longer known


@dataclass(frozen=True, slots=True)
class NewBike:
    """What is asked for when a bike is added; the rest can follow later."""

    name: str
    layout: str = "air_air"
    discipline: str = "trail"
    rider_id: str | None = None
    rider_name: str = ""
    rider_mass_kg: float | None = None
    fork_travel_mm: float | None = None
    shock_stroke_mm: float | None = None
    rear_travel_mm: float | None = None
    is_ebike: bool = False
    is_dual_crown: bool = False
    is_inverted: bool = False
    damper_in_one_leg: bool = False
    has_second_positive: bool = False
    negative: str = "self"  # of the fork


@dataclass(frozen=True, slots=True)
class ListedBike:
    """What the garage list shows of a bike: of thousands, no more is read."""

    id: str
    name: str
    tags: str = ""


@dataclass(frozen=True, slots=True)
class GarageRow:
    """One bike as the garage list shows it."""

    bike: ListedBike
    riders: tuple[str, ...]


def garage_rows(
    *, archived: bool = False, template: bool = False, among: Collection[str] | None = None
) -> Callable[[Reader], tuple[GarageRow, ...]]:
    """Give the query for all bikes, or those among some, with their riders' names, by name; templates are apart."""

    def query(reader: Reader) -> tuple[GarageRow, ...]:
        bikes = listed_bikes(reader, archived=archived, template=template, among=among)
        riders = _riders_of(reader, None if among is None else tuple(bike.id for bike in bikes))
        return in_order(GarageRow(bike, tuple(riders.get(bike.id, ()))) for bike in bikes)

    return query


def listed_bikes(
    reader: Reader, *, archived: bool = False, template: bool = False, among: Collection[str] | None = None
) -> list[ListedBike]:
    """Read what lists show of all bikes, or those among some, in no order."""
    some: dict[str, Any] = {} if among is None else {"id": tuple(among)}
    return [
        ListedBike(*shown)
        for template_at, archived_at, *shown in reader.values(Bike, _LISTED, **some)
        if (template_at is not None) == template and (archived_at is not None) == archived
    ]


def bike_count() -> Callable[[Reader], int]:
    """Give the query for how many bikes there are, those put away included."""
    return lambda reader: reader.count(Bike)


def find_bike(bike_id: str | None) -> Callable[[Reader], Bike | None]:
    """Give the query for a bike, put away or not; None where there is none."""

    def query(reader: Reader) -> Bike | None:
        return None if bike_id is None else reader.get(Bike, bike_id)

    return query


def in_order(rows: Iterable[GarageRow]) -> tuple[GarageRow, ...]:
    """Give rows by the names of their bikes."""
    return tuple(sorted(rows, key=lambda row: (row.bike.name.casefold(), row.bike.id)))


def _riders_of(reader: Reader, bike_ids: tuple[str, ...] | None) -> dict[str, list[str]]:
    """Read the names of riders by bike, the main rider first; of all bikes where none are named."""
    of_bikes: dict[str, Any] = {} if bike_ids is None else {"bike_id": bike_ids}
    links = reader.values(BikeRider, ("is_main", "id", "bike_id", "person_id"), **of_bikes)
    of_people: dict[str, Any] = {} if bike_ids is None else {"id": tuple({link[3] for link in links})}
    names = dict(reader.values(Person, ("id", "name"), **of_people))
    riders: dict[str, list[str]] = {}
    for _, _, bike_id, person_id in sorted(links, key=lambda link: (-link[0], link[1])):
        riders.setdefault(bike_id, []).append(names.get(person_id, ""))
    return riders


def add_bike(
    new: NewBike, *, like: Person | None = None, draft_id: str | None = None, bike_id: str | None = None
) -> Callable[[Gate], Bike]:
    """Give the deed that adds a bike, its rider, units with usual adjusters, and tyres.

    Whoever wants the deed filed under the new bike gives its key.
    """
    name = check_field(field_of(Bike, "name"), new.name)
    if new.layout not in LAYOUTS:
        raise InputError("Layout", new.layout, ", ".join(LAYOUTS.values()))
    for value in (new.fork_travel_mm, new.shock_stroke_mm):
        check_field(field_of(Unit, "travel_mm"), value)
    check_field(field_of(Bike, "rear_travel_mm"), new.rear_travel_mm)

    def deed(gate: Gate) -> Bike:
        bike = Bike(
            id=bike_id or new_id(),
            name=name,
            layout=new.layout,
            discipline=new.discipline,
            rear_travel_mm=new.rear_travel_mm,
            is_ebike=new.is_ebike,
            created_at=gate.now,
        )
        gate.put(bike)
        seat_rider(gate, bike.id, new, like)
        front, rear = ends_of(new.layout)
        if front != "rigid":
            fork = add_unit(gate, bike.id, "fork", SPRING_OF[front], new.fork_travel_mm)
            gate.put(_built(fork, new))
        if rear != "rigid":
            add_unit(gate, bike.id, "shock", SPRING_OF[rear], new.shock_stroke_mm)
        for end in ("front", "rear"):
            gate.put(Tyre(new_id(), bike.id, end))
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return bike

    return deed


def _built(fork: Unit, new: NewBike) -> Unit:
    """Give a fork as it is built; chambers only where there is air."""
    has_air = fork.spring != "coil"
    return replace(
        fork,
        is_dual_crown=new.is_dual_crown,
        is_inverted=new.is_inverted,
        damper_in_one_leg=new.damper_in_one_leg,
        has_second_positive=new.has_second_positive and has_air,
        negative=new.negative if has_air else "self",
    )


def seat_rider(gate: Gate, bike_id: str, new: NewBike, like: Person | None) -> None:
    """Let the rider of a new bike ride it: somebody known, or somebody new."""
    rider_id = new.rider_id
    if rider_id is None and new.rider_name.strip():
        rider_id = add_person(new.rider_name, mass_kg=new.rider_mass_kg, like=like)(gate).id
    elif rider_id is not None and new.rider_mass_kg is not None:
        rider = gate.need(Person, rider_id)
        if rider.mass_kg != new.rider_mass_kg:
            gate.put(replace(rider, mass_kg=new.rider_mass_kg))
    if rider_id is not None:
        gate.put(BikeRider(new_id(), bike_id, rider_id, is_main=True))


def add_unit(
    gate: Gate,
    bike_id: str,
    kind: str,
    spring: str,
    travel_mm: float | None,
    *,
    number: int = 1,
    reason: str = "new",
) -> Unit:
    """Write a unit with its first hardware generation and the adjusters most units of its kind have."""
    unit = Unit(
        id=new_id(),
        bike_id=bike_id,
        end="front" if kind == "fork" else "rear",
        kind=kind,
        spring=spring,
        travel_mm=travel_mm,
    )
    gate.put(unit, Generation(new_id(), unit.id, number, reason, gate.now))
    for order, (adjusts, speed) in enumerate((("compression", "low"), ("rebound", "low"))):
        gate.put(Adjuster(new_id(), unit.id, adjusts, speed, counting_order=order))
    return unit


def add_adjuster(unit_id: str, kind: str = "compression", speed: str = "high") -> Callable[[Gate], Adjuster]:
    """Give the deed that adds an adjuster to a unit."""

    def deed(gate: Gate) -> Adjuster:
        order = max((one.counting_order for one in gate.find(Adjuster, unit_id=unit_id)), default=-1) + 1
        adjuster = Adjuster(new_id(), unit_id, kind, speed, counting_order=order)
        gate.put(adjuster)
        return adjuster

    return deed


def remove_adjuster(adjuster_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes an adjuster off the list; what was counted stays on record."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Adjuster, adjuster_id), archived_at=gate.now))

    return deed


def start_generation(unit_id: str, reason: str, note: str = "") -> Callable[[Gate], Generation]:
    """Give the deed that says the unit is not what it was: counts and sag fall due, and no place is known any more."""

    def deed(gate: Gate) -> Generation:
        unit = gate.need(Unit, unit_id)
        _forget_places(gate, unit)
        if reason in MOVES_MOUNTING and unit.mounting is not None:
            gate.put(replace(unit, mounting=None))  # where it is now has to be said anew
        number = max((one.number for one in gate.find(Generation, unit_id=unit_id)), default=0) + 1
        generation = Generation(new_id(), unit_id, number, reason, gate.now, note)
        gate.put(generation)
        return generation

    return deed


def _forget_places(gate: Gate, unit: Unit) -> None:
    """Log that what stood on the old hardware says nothing on the new; a knob left open or closed still is."""
    now = now_on(gate, unit.bike_id)
    adjusters = gate.find(Adjuster, unit_id=unit.id, archived_at=None, order_by=("counting_order",))
    for adjuster in adjusters:
        line = now.get((Item.ADJUSTER, adjuster.id))
        if line is None:
            continue
        log_line(gate, unit.bike_id, Item.ADJUSTER, adjuster.id, None, RENEWED)
        if line.how in MEASURING_HOWS:
            at_end = 0.0 if line.how == "closed" else None
            log_line(gate, unit.bike_id, Item.ADJUSTER, adjuster.id, at_end, line.how)


def archive_bike(bike_id: str) -> Callable[[Gate], None]:
    """Give the deed that puts a bike away; nothing of it is lost."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Bike, bike_id), archived_at=gate.now))

    return deed


def bring_back_bike(bike_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a bike out of the archive."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Bike, bike_id), archived_at=None))

    return deed
