"""Service by hours: intervals, what is ridden, and a service recorded."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.actions.garage import start_generation
from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Bike
from workbench.model.checkin import is_open
from workbench.model.errors import InputError
from workbench.model.parts import BikeParts
from workbench.model.ride import Course, Run, Session
from workbench.model.sag import SagMeasurement
from workbench.model.service import CheckIn, CheckItem, RidingHours, ServicePart
from workbench.model.wear import (
    BREAK_IN_HOURS,
    HOUR_SOURCES,
    LATEST,
    WEAR_PARTS,
    Hours,
    Wear,
    WearPart,
    hours_at,
    needs_sag_again,
    wear_of,
    wear_parts_of,
)

MOST_HOURS = 100_000.0
MOST_MONTHS = 240


class Ridden:
    """What is known of a bike's riding hours, read once."""

    def __init__(self, reader: Reader, bike_id: str) -> None:
        self.readings = reader.find(RidingHours, bike_id=bike_id, order_by=("at",))
        sessions = reader.find(Session, bike_id=bike_id)
        courses = {one.id: one.typical_s for one in reader.find(Course, id=tuple({s.course_id for s in sessions}))}
        self._typical = {one.id: courses.get(one.course_id) for one in sessions}
        self._runs = reader.find(Run, session_id=tuple(self._typical)) if sessions else ()

    def at(self, moment: str) -> Hours:
        """Give the hours ridden by a moment."""
        return hours_at(moment, self.readings, self._runs, self._typical)


def read_wear(
    reader: Reader, parts: BikeParts, now: str = LATEST, ridden: Ridden | None = None
) -> tuple[tuple[Wear, ...], Hours]:
    """Read how every part stands in its interval, and the hours ridden so far."""
    hours = (ridden or Ridden(reader, parts.bike.id)).at(now)
    kept = {(one.part, _end(parts, one)): one for one in reader.find(ServicePart, bike_id=parts.bike.id)}
    wear = tuple(
        wear_of(one, kept.get((one.part, one.end)) or _fresh(parts, one), hours, now) for one in wear_parts_of(parts)
    )
    return wear, hours


def due_now(reader: Reader, parts: BikeParts, now: str = LATEST, ridden: Ridden | None = None) -> tuple[Wear, ...]:
    """Read what falls due."""
    if not reader.find(ServicePart, bike_id=parts.bike.id, limit=1):
        return ()
    return tuple(one for one in read_wear(reader, parts, now, ridden)[0] if one.state == "due")


def ends_to_measure_again(
    parts: BikeParts, sag: tuple[SagMeasurement, ...], ridden: Ridden, now: str = LATEST
) -> tuple[str, ...]:
    """Say which ends were new or serviced and are ridden in by now, with their sag measured before that."""
    if not ridden.readings:
        return ()
    now_hours = ridden.at(now).hours
    came_new = ridden.readings[0].hours < BREAK_IN_HOURS
    ends = []
    for unit in parts.units:
        generation = parts.generation(unit.id)
        own = [one for one in sag if one.unit_id == unit.id]
        if generation is None or not own:
            continue
        is_first = generation.number == 1 and generation.reason == "new"
        started = 0.0 if is_first else ridden.at(generation.started_at).hours
        measured = {one.id: ridden.at(one.measured_at).hours for one in own}
        if needs_sag_again(generation, own, now_hours, started, measured, is_new=is_first and came_new):
            ends.append(unit.end)
    return tuple(ends)


def tell_hours(bike_id: str, hours: float, source: str = "stated") -> Callable[[Gate], RidingHours]:
    """Give the deed that notes the hours ridden so far, as told today."""
    told = _checked("hours", hours, MOST_HOURS)
    if source not in HOUR_SOURCES:
        raise InputError("source", source, ", ".join(HOUR_SOURCES))

    def deed(gate: Gate) -> RidingHours:
        kept = RidingHours(new_id(), bike_id, gate.now, told, source)
        gate.put(kept)
        return kept

    return deed


def set_interval(
    bike_id: str, part: str, end: str, *, hours: float | None, months: int | None
) -> Callable[[Gate], ServicePart]:
    """Give the deed that enters a part's interval as the maker's manual has it."""
    if hours is not None:
        _checked("hours", hours, MOST_HOURS, low=1.0)
    if months is not None:
        _checked("months", months, MOST_MONTHS, low=1.0)

    def deed(gate: Gate) -> ServicePart:
        kept = replace(_kept(gate, bike_id, part, end), interval_hours=hours, interval_months=months, origin="maker")
        gate.put(kept)
        return kept

    return deed


def set_last_service(bike_id: str, part: str, end: str, hours: float | None) -> Callable[[Gate], ServicePart]:
    """Give the deed that says at which hours a part was serviced last, elsewhere and before today."""
    if hours is not None:
        _checked("hours", hours, MOST_HOURS)

    def deed(gate: Gate) -> ServicePart:
        kept = replace(_kept(gate, bike_id, part, end), last_hours=hours, last_at=None)
        gate.put(kept)
        return kept

    return deed


def record_service(bike_id: str, part: str, end: str, note: str = "") -> Callable[[Gate], ServicePart]:
    """Give the deed that records a service done now.

    What was opened is no longer what was counted: it begins new hardware, so counts and sag fall due. Open items
    that spoke of this service are closed.
    """

    def deed(gate: Gate) -> ServicePart:
        about = _wear_part(part, end)
        parts = read_parts(gate, bike_id)
        hours = Ridden(gate, bike_id).at(gate.now)
        kept = replace(_kept(gate, bike_id, part, end), last_hours=hours.hours, last_at=gate.now)
        gate.put(kept)
        unit = parts.unit(end)
        if about.reason and unit is not None:
            start_generation(unit.id, about.reason, note or about.title)(gate)
        _close_items(gate, bike_id, f"service/{part}/{end}")
        return kept

    return deed


def _close_items(gate: Gate, bike_id: str, code: str) -> None:
    checkins = tuple(one.id for one in gate.find(CheckIn, bike_id=bike_id))
    for item in gate.find(CheckItem, checkin_id=checkins, code=code) if checkins else ():
        if is_open(item):
            gate.put(replace(item, closed_at=gate.now, closed_how="serviced"))


def _kept(gate: Gate, bike_id: str, part: str, end: str) -> ServicePart:
    gate.need(Bike, bike_id)
    parts = read_parts(gate, bike_id)
    for one in gate.find(ServicePart, bike_id=bike_id, part=part):
        if _end(parts, one) == end:
            return one
    return _fresh(parts, _wear_part(part, end))


def _fresh(parts: BikeParts, about: WearPart) -> ServicePart:
    unit = parts.unit(about.end)
    return ServicePart(
        new_id(), parts.bike.id, about.part, unit.id if unit else None, about.hours, about.months, None, None
    )


def _end(parts: BikeParts, kept: ServicePart) -> str:
    return next((unit.end for unit in parts.units if unit.id == kept.unit_id), "frame")


def _wear_part(part: str, end: str) -> WearPart:
    found = next((one for one in WEAR_PARTS if (one.part, one.end) == (part, end)), None)
    if found is None:
        raise InputError("part", part, ", ".join(one.title for one in WEAR_PARTS))
    return found


def _checked(name: str, value: float, most: float, low: float = 0.0) -> float:
    if not low <= value <= most:  # also refuses what is no number
        raise InputError(name, value, f"{low:g} to {most:g}")
    return value
