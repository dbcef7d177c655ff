"""Read how far the job is on a bike; pass a station over."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Any

from workbench.actions.checkin import read_open, services_due
from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.actions.setups import Values, values_of
from workbench.actions.wear import Ridden, ends_to_measure_again
from workbench.library.gate import Gate, Reader
from workbench.model.adjuster import RangeCount
from workbench.model.bike import Bike, Skip, Station
from workbench.model.blind import is_concealed
from workbench.model.facts import check_field, field_of
from workbench.model.job import JobRecords
from workbench.model.parts import BikeParts, settable_items
from workbench.model.ride import BlindPlan, Run, Session
from workbench.model.sag import SagMeasurement
from workbench.model.service import CardIssue, CheckIn
from workbench.model.setting import Setup, adjuster_of, matching_setup
from workbench.model.steps import values_now
from workbench.model.wear import LATEST


def job_records(
    bike_id: str, drafts: tuple[str, ...] = (), *, rider_id: str | None = None, now: str = LATEST
) -> Callable[[Reader], JobRecords]:
    """Give the query for everything the state of the job is judged from, for one rider, the main one by default."""

    def query(reader: Reader) -> JobRecords:
        parts = read_parts(reader, bike_id)
        rider = parts.rider(rider_id)
        whose: dict[str, Any] = {"bike_id": bike_id} | ({"rider_id": rider.id} if rider else {})
        sessions = reader.find(Session, **whose)
        setups = reader.find(Setup, order_by=("number",), **whose)
        values = values_of(reader, setups)
        concealed = {plan.session_id for plan in _plans(reader, sessions) if is_concealed(plan)}
        told = tuple(session.id for session in sessions if session.id not in concealed)
        sag = reader.find(SagMeasurement, **whose)
        still_open = read_open(reader, bike_id)
        hours = Ridden(reader, bike_id)
        first = () if rider is None else (rider,)
        return JobRecords(
            parts=replace(parts, riders=(*first, *(one for one in parts.riders if one is not rider))),
            sag=sag,
            setups=setups,
            current=matching_setup(setups, values, values_now(parts)),
            in_no_setup=_in_no_setup(parts, values.values()),
            sessions=sessions,
            runs=reader.find(Run, session_id=told),
            cards=reader.find(CardIssue, **whose),
            skips={skip.station: skip.reason for skip in reader.find(Skip, bike_id=bike_id)},
            drafts=drafts,
            was_checked=bool(reader.find(CheckIn, bike_id=bike_id, limit=1)),
            open_items=still_open,
            services=services_due(reader, parts, still_open, now, hours),
            sag_again=ends_to_measure_again(parts, sag, hours, now),
            is_concealed=bool(concealed),
        )

    return query


def _in_no_setup(parts: BikeParts, values: Iterable[Values]) -> tuple[str, ...]:
    """List which of fork and shock were fitted on a bike that was there, with no setup that sets anything of them."""
    told = {adjuster_of(subject_id) for setup in values for _, subject_id in setup}
    can_be_set = {subject_id for _, subject_id in settable_items(parts)}
    found = []
    for unit in parts.units:
        came_later = any(one.unit_id == unit.id and one.reason == "exchange" for one in parts.generations)
        own = can_be_set & {unit.id, *(one.id for one in parts.adjusters_of(unit.id))}
        if came_later and own and not own & told:
            found.append(unit.kind)
    return tuple(found)


def _plans(reader: Reader, sessions: tuple[Session, ...]) -> tuple[BlindPlan, ...]:
    blind = tuple(session.id for session in sessions if session.is_blind)
    return reader.find(BlindPlan, session_id=blind) if blind else ()


def was_done_once(station: str) -> Callable[[Reader], bool]:
    """Give the query for whether there are records of a station having been worked at, on any bike.

    The garage has been once there is a second bike, the review once a second session was begun.
    """
    record_type, more_than = _TRACES[Station(station)]
    return lambda reader: reader.count(record_type) > more_than


_TRACES: dict[Station, tuple[type, int]] = {
    Station.GARAGE: (Bike, 1),
    Station.CHECKIN: (CheckIn, 0),
    Station.ADJUSTERS: (RangeCount, 0),
    Station.SAG: (SagMeasurement, 0),
    Station.BASELINE: (Setup, 0),
    Station.RIDE: (Run, 0),
    Station.REVIEW: (Session, 1),
    Station.CARD: (CardIssue, 0),
}


def skip_station(bike_id: str, station: str, reason: str) -> Callable[[Gate], None]:
    """Give the deed that passes a station over, with the reason; an earlier reason is replaced."""

    def deed(gate: Gate) -> None:
        checked = check_field(field_of(Skip, "reason"), reason)
        for earlier in gate.find(Skip, bike_id=bike_id, station=station):
            gate.delete(Skip, earlier.id)
        gate.put(Skip(new_id(), bike_id, station, checked, gate.now, gate.person_id))

    return deed


def unskip_station(bike_id: str, station: str) -> Callable[[Gate], None]:
    """Give the deed that takes a skipped station up again."""

    def deed(gate: Gate) -> None:
        for skip in gate.find(Skip, bike_id=bike_id, station=station):
            gate.delete(Skip, skip.id)

    return deed
