"""People: add, read, put away."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.actions.ids import new_id
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Bike, BikeRider
from workbench.model.errors import LibraryError
from workbench.model.facts import check_field, field_of
from workbench.model.person import Person
from workbench.model.ride import Session


def person(person_id: str) -> Callable[[Reader], Person | None]:
    """Give the query for one person."""

    def query(reader: Reader) -> Person | None:
        return reader.get(Person, person_id)

    return query


def people(*, archived: bool = False, only_here: bool = False) -> Callable[[Reader], tuple[Person, ...]]:
    """Give the query for everybody, or only those who work here, by name."""

    def query(reader: Reader) -> tuple[Person, ...]:
        found = reader.find(Person, works_here=True) if only_here else reader.find(Person)
        kept = [one for one in found if archived or one.archived_at is None]
        return tuple(sorted(kept, key=lambda one: (one.name.casefold(), one.id)))

    return query


def people_found(text: str = "", *, most: int) -> Callable[[Reader], tuple[tuple[Person, ...], int]]:
    """Give the query for the first people in whose names every word occurs, and for how many those are in all.

    They come by name, those put away last. Only as many as asked for are read as a whole.
    """
    words = text.casefold().split()

    def query(reader: Reader) -> tuple[tuple[Person, ...], int]:
        named = ((at, name.casefold(), key) for at, name, key in reader.values(Person, ("archived_at", "name", "id")))
        found = sorted((at is not None, name, key) for at, name, key in named if all(word in name for word in words))
        keys = tuple(key for _, _, key in found[:most])
        known = {one.id: one for one in reader.find(Person, id=keys)}
        return tuple(known[key] for key in keys), len(found)

    return query


def rider_names() -> Callable[[Reader], tuple[tuple[str, str], ...]]:
    """Give the query for everybody who rides and was not put away, key and name, by name."""

    def query(reader: Reader) -> tuple[tuple[str, str], ...]:
        found = reader.values(Person, ("id", "name"), rides=True, archived_at=None)
        return tuple(sorted(((key, name) for key, name in found), key=lambda one: (one[1].casefold(), one[0])))

    return query


def add_person(
    name: str,
    *,
    rides: bool = True,
    works_here: bool = False,
    mass_kg: float | None = None,
    like: Person | None = None,
) -> Callable[[Gate], Person]:
    """Give the deed that adds a person; units are taken over from somebody known."""
    checked = check_field(field_of(Person, "name"), name)
    mass = check_field(field_of(Person, "mass_kg"), mass_kg)

    def deed(gate: Gate) -> Person:
        start = like or Person(id="", name="")
        added = replace(
            start,
            id=new_id(),
            name=checked,
            rides=rides,
            works_here=works_here,
            mass_kg=mass,
            is_child=False,
            note="",
            created_at=gate.now,
            archived_at=None,
        )
        gate.put(added)
        return added

    return deed


def add_rider(bike_id: str, person_id: str) -> Callable[[Gate], None]:
    """Give the deed that lets a person ride a bike; the first one is the main rider."""

    def deed(gate: Gate) -> None:
        links = gate.find(BikeRider, bike_id=bike_id)
        if any(link.person_id == person_id for link in links):
            return
        gate.put(BikeRider(new_id(), bike_id, person_id, is_main=not links))

    return deed


def main_rider(bike_id: str, person_id: str) -> Callable[[Gate], None]:
    """Give the deed that makes one of a bike's riders the main one, adding them if need be."""

    def deed(gate: Gate) -> None:
        add_rider(bike_id, person_id)(gate)
        for link in gate.find(BikeRider, bike_id=bike_id):
            if link.is_main != (link.person_id == person_id):
                gate.put(replace(link, is_main=link.person_id == person_id))

    return deed


def archive_person(person_id: str) -> Callable[[Gate], None]:
    """Give the deed that puts a person away; their records stay."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Person, person_id), archived_at=gate.now))

    return deed


def bring_back_person(person_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a person out of the archive."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Person, person_id), archived_at=None))

    return deed


def take_off_rider(bike_id: str, person_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a rider off a bike; what they rode stays. The next one becomes the main rider."""

    def deed(gate: Gate) -> None:
        links = gate.find(BikeRider, bike_id=bike_id, order_by=("id",))
        for link in links:
            if link.person_id == person_id:
                gate.delete(BikeRider, link.id)
        left = [link for link in links if link.person_id != person_id]
        if left and not any(link.is_main for link in left):
            gate.put(replace(left[0], is_main=True))

    return deed


def bikes_of(person_id: str) -> Callable[[Reader], tuple[Bike, ...]]:
    """Give the query for the bikes somebody rides, by name."""

    def query(reader: Reader) -> tuple[Bike, ...]:
        keys = tuple(link.bike_id for link in reader.find(BikeRider, person_id=person_id))
        found = (bike for bike in reader.find(Bike, id=keys) if bike.template_at is None)
        return tuple(sorted(found, key=lambda bike: (bike.name.casefold(), bike.id)))

    return query


def bikes_by_rider(person_ids: tuple[str, ...]) -> Callable[[Reader], dict[str, tuple[tuple[str, str], ...]]]:
    """Give the query for the bikes some people ride, key and name, in one reading."""

    def query(reader: Reader) -> dict[str, tuple[tuple[str, str], ...]]:
        links = reader.values(BikeRider, ("person_id", "bike_id"), person_id=person_ids)
        bike_ids = tuple({bike_id for _, bike_id in links})
        names = dict(reader.values(Bike, ("id", "name"), id=bike_ids, template_at=None))
        found: dict[str, list[tuple[str, str]]] = {}
        for person_id, bike_id in links:
            if bike_id in names:
                found.setdefault(person_id, []).append((bike_id, names[bike_id]))
        return {who: tuple(sorted(some, key=lambda one: (one[1].casefold(), one[0]))) for who, some in found.items()}

    return query


def refuse_beside_another(gate: Gate, bike_id: str, rider_id: str) -> None:
    """Refuse a session while another rider's is open on the bike: the changes of one would be in the other's runs."""
    for other in gate.find(Session, bike_id=bike_id, ended_at=None):
        if other.rider_id != rider_id:
            name = gate.need(Person, other.rider_id).name
            raise LibraryError(
                f"A session of {name} is open on this bike. Choose {name} on the garage sheet and end it first."
            )


def open_session_rider(bike_id: str) -> Callable[[Reader], str | None]:
    """Give the query for whose session is open on a bike."""

    def query(reader: Reader) -> str | None:
        found = reader.find(Session, bike_id=bike_id, ended_at=None, limit=1)
        return found[0].rider_id if found else None

    return query
