"""Read how far the job is on a bike; pass a station over."""

from __future__ import annotations

from collections.abc import Callable

from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.actions.setups import values_of
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Skip
from workbench.model.facts import check_field, field_of
from workbench.model.job import JobRecords
from workbench.model.ride import Run, Session
from workbench.model.sag import SagMeasurement
from workbench.model.service import CardIssue
from workbench.model.setting import Setup, matching_setup
from workbench.model.steps import values_now


def job_records(bike_id: str, drafts: tuple[str, ...] = ()) -> Callable[[Reader], JobRecords]:
    """Give the query for everything the state of the job is judged from."""

    def query(reader: Reader) -> JobRecords:
        sessions = reader.find(Session, bike_id=bike_id)
        setups = reader.find(Setup, bike_id=bike_id, order_by=("number",))
        parts = read_parts(reader, bike_id)
        return JobRecords(
            parts=parts,
            sag=reader.find(SagMeasurement, bike_id=bike_id),
            setups=setups,
            current=matching_setup(setups, values_of(reader, setups), values_now(parts)),
            sessions=sessions,
            runs=reader.find(Run, session_id=tuple(session.id for session in sessions)),
            cards=reader.find(CardIssue, bike_id=bike_id),
            skips={skip.station: skip.reason for skip in reader.find(Skip, bike_id=bike_id)},
            drafts=drafts,
        )

    return query


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
