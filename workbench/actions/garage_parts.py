"""What else belongs to a bike: its pictures, and what its valves are for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from workbench.actions.ids import new_id
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Photo
from workbench.model.facts import check_field, check_limits, clean_text, field_of
from workbench.model.sag import SagMeasurement
from workbench.model.service import CheckItem
from workbench.model.unit import Unit, Valve


@dataclass(frozen=True, slots=True)
class MoreParts:
    """Pictures and valves of a bike, and the sag measured on it."""

    photos: tuple[Photo, ...] = ()
    valves: tuple[Valve, ...] = ()
    sag: tuple[SagMeasurement, ...] = ()


def more_parts(bike_id: str) -> Callable[[Reader], MoreParts]:
    """Give the query for the bike's pictures, valves and sag."""

    def query(reader: Reader) -> MoreParts:
        units = tuple(unit.id for unit in reader.find(Unit, bike_id=bike_id))
        return MoreParts(
            reader.find(Photo, bike_id=bike_id, order_by=("taken_at", "id")),
            reader.find(Valve, unit_id=units),
            reader.find(SagMeasurement, bike_id=bike_id),
        )

    return query


def add_photo(bike_id: str, sha256: str, name: str) -> Callable[[Gate], Photo]:
    """Give the deed that hangs a picture, already kept as a file, on a bike. The same one twice is one."""

    def deed(gate: Gate) -> Photo:
        known = gate.find(Photo, bike_id=bike_id, sha256=sha256, limit=1)
        photo = known[0] if known else Photo(new_id(), bike_id, sha256, clean_text(name)[:200], gate.now)
        gate.put(photo)
        return photo

    return deed


def remove_photo(photo_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a picture off its bike; its file stays, so that undo has it again."""

    def deed(gate: Gate) -> None:
        for item in gate.find(CheckItem, photo_id=photo_id):
            gate.put(replace(item, photo_id=None))
        gate.delete(Photo, photo_id)

    return deed


def describe_valve(unit_id: str, purpose: str, place: str) -> Callable[[Gate], None]:
    """Give the deed that says where a valve is."""
    checked = check_field(field_of(Valve, "place"), place)

    def deed(gate: Gate) -> None:
        known = gate.find(Valve, unit_id=unit_id, purpose=purpose, limit=1)
        gate.put(replace(known[0] if known else Valve(new_id(), unit_id, purpose), place=checked))

    return deed


def limit_valve(unit_id: str, purpose: str, name: str, value: float | None) -> Callable[[Gate], None]:
    """Give the deed that states the lowest or highest pressure (``minimum_kpa``, ``maximum_kpa``) of a valve."""
    checked = check_field(field_of(Valve, name), value)

    def deed(gate: Gate) -> None:
        known = gate.find(Valve, unit_id=unit_id, purpose=purpose, limit=1)
        changed = replace(known[0] if known else Valve(new_id(), unit_id, purpose), **{name: checked})
        check_limits(changed, name)
        gate.put(changed)

    return deed


def remove_valve(unit_id: str, purpose: str) -> Callable[[Gate], None]:
    """Give the deed that says there is no such valve."""

    def deed(gate: Gate) -> None:
        for valve in gate.find(Valve, unit_id=unit_id, purpose=purpose):
            gate.delete(Valve, valve.id)

    return deed
