"""Lap times written to the runs of a session afterwards."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from workbench.actions.ride import SessionRecords, ride_records
from workbench.library.gate import Gate, Reader
from workbench.model.errors import InputError
from workbench.model.responses import check_lap
from workbench.model.ride import Run


def timed_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], tuple[SessionRecords, ...]]:
    """Give the query for the sessions with runs that can be timed, the newest first.

    Of a blind test not revealed yet there are only the numbers of its runs and their lap times, so that gates are set
    by somebody who cannot know which run they favour.
    """

    def query(reader: Reader) -> tuple[SessionRecords, ...]:
        sessions = ride_records(bike_id, rider_id)(reader).sessions
        told = (replace(one, runs=_numbers(reader, one)) if one.is_concealed else one for one in reversed(sessions))
        return tuple(one for one in told if one.runs)

    return query


def _numbers(reader: Reader, session: SessionRecords) -> tuple[Run, ...]:
    runs = reader.find(Run, session_id=session.session.id, order_by=("number",))
    return tuple(replace(run, setup_id="", liking=None, note="", guess="") for run in runs)


def write_laps(session_id: str, laps: Mapping[str, float]) -> Callable[[Gate], int]:
    """Give the deed that writes lap times [s] to runs of a session, by run; it says to how many."""
    for lap_s in laps.values():
        check_lap(lap_s)

    def deed(gate: Gate) -> int:
        for run_id, lap_s in laps.items():
            run = gate.need(Run, run_id)
            if run.session_id != session_id:
                raise InputError("Run", run.number, "a run of the session picked")
            gate.put(replace(run, lap_s=lap_s))
        return len(laps)

    return deed
