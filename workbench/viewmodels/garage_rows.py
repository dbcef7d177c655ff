"""What the bike's sheet shows beside its facts: riders, valves, hardware and what falls due on it, pictures."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.garage_parts import MoreParts
from workbench.model.adjuster import adjuster_words
from workbench.model.job import sag_left
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.unit import GENERATION_REASONS, VALVES, Unit
from workbench.model.valves import GAS, GAS_CARE, order_words, purposes_of
from workbench.viewmodels.garage_fit import unit_words
from workbench.viewmodels.shown import Units, short_date


@dataclass(frozen=True, slots=True)
class RiderRow:
    """One rider of the bike."""

    person_id: str
    name: str
    says: str
    is_on_bench: bool
    is_main: bool
    other_bikes: str = ""


@dataclass(frozen=True, slots=True)
class ValveRow:
    """One valve of a unit."""

    purpose: str
    words: str
    place: str
    is_care: bool = False


MOVES_TRAVEL = ("travel", "chip", "mount", "wheel", "exchange")
TRAVEL_CARE = (
    "Before it is ridden: let all the air out or take the spring off, press it to full travel, and see that tyre,"
    " frame, crown and cables stay clear."
)


@dataclass(frozen=True, slots=True)
class UnitParts:
    """Valves and hardware of one unit."""

    valves: tuple[ValveRow, ...] = ()
    order: str = ""
    has_gas: bool = False
    gas_care: str = ""
    travel_care: str = ""
    hardware: tuple[str, ...] = ()  # newest first
    due: str = ""
    generation_id: str = ""
    note: str = ""  # of the newest hardware


@dataclass(frozen=True, slots=True)
class PhotoRow:
    """One picture of the bike."""

    photo_id: str
    sha256: str
    name: str
    date: str


def rider_rows(
    parts: BikeParts, chosen: Person | None, bikes: dict[str, tuple[str, ...]], open_for: str | None
) -> tuple[RiderRow, ...]:
    """List the riders, the main one first; whose session is open is said at their name."""
    rows = []
    for place, person in enumerate(parts.riders):
        said = ["main rider"] if place == 0 else []
        said += ["on the bench"] if chosen is not None and person.id == chosen.id else []
        said += ["session open"] if person.id == open_for else []
        others = [name for name in bikes.get(person.id, ()) if name != parts.bike.name]
        also = f"also rides {', '.join(others)}" if others else ""
        is_chosen = chosen is not None and person.id == chosen.id
        rows.append(RiderRow(person.id, person.name, ", ".join(said), is_chosen, place == 0, also))
    return tuple(rows)


def unit_parts(parts: BikeParts, more: MoreParts, unit: Unit, units: Units) -> UnitParts:
    """Say what a unit's valves are for and which hardware it has had."""
    purposes = purposes_of(unit, more.valves)
    places = {valve.purpose: valve.place for valve in more.valves if valve.unit_id == unit.id}
    numbered = len([one for one in purposes if one != GAS]) > 1
    rows = tuple(
        ValveRow(
            one,
            f"{number}. {VALVES[one]}" if numbered and one != GAS else VALVES[one],
            places.get(one, ""),
            one == GAS,
        )
        for number, one in enumerate(purposes, 1)
    )
    mine = sorted((one for one in parts.generations if one.unit_id == unit.id), key=lambda one: -one.number)
    return UnitParts(
        valves=rows,
        order=order_words(unit),
        has_gas=GAS in purposes,
        gas_care=GAS_CARE if GAS in purposes else "",
        travel_care=TRAVEL_CARE if mine and mine[0].reason in MOVES_TRAVEL else "",
        hardware=tuple(
            f"No. {one.number}, {short_date(one.started_at)}: {GENERATION_REASONS.get(one.reason, one.reason)}"
            + (f". {one.note}" if one.note else "")
            for one in mine
        )
        + tuple(
            f"Before, until {short_date(one.removed_at or '')}: {unit_words(one, units)}"
            for one in parts.former
            if one.end == unit.end
        ),
        due=due_text(parts, more, unit),
        generation_id=mine[0].id if mine else "",
        note=mine[0].note if mine else "",
    )


def due_text(parts: BikeParts, more: MoreParts, unit: Unit) -> str:
    """Say what is still to do on the hardware a unit has now."""
    left = [adjuster_words(one) for one in parts.adjusters_of(unit.id) if parts.range_of(one.id) is None]
    found = [f"count {', '.join(left)}"] if left else []
    if unit.end in sag_left(parts, more.sag):
        found.append(f"measure {unit.end} sag")
    return f"Due on this hardware: {'; '.join(found)}." if found else ""


def photo_rows(more: MoreParts) -> tuple[PhotoRow, ...]:
    """List the pictures, the oldest first."""
    return tuple(
        PhotoRow(one.id, one.sha256, one.name or "Picture", short_date(one.taken_at) if one.taken_at else "")
        for one in more.photos
    )
