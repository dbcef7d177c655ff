"""Keep a session that was written down: its runs, the setups between them, and what is on the bike now, by one deed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID, uuid5

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.ride import keep_run
from workbench.actions.setups import Values, find_setups, read_values, values_of, write_setup
from workbench.exchange.session_text import ToldRun, ToldSession
from workbench.library.gate import Gate, Reader
from workbench.model.errors import InputError
from workbench.model.parts import BikeParts
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import (
    PRESSURE_ITEMS,
    Item,
    Setup,
    changes_between,
    free_changes,
    matching_setup,
    without_removed,
)
from workbench.model.steps import values_now
from workbench.model.warmth import with_warmth

_OURS = UUID("0b9d0c62-6a0e-4b77-8a53-3f1a8c2f4d11")  # of nothing but these keys
NOT_SURE = "Typed in later, the start was not looked at"


@dataclass(frozen=True, slots=True)
class Start:
    """Which setup the bike stood on at the first run, and whether that is sure."""

    setup_id: str
    is_sure: bool = True


def session_key(bike_id: str, text: str) -> str:
    """Give the key of a session written down: the same text on the same bike is the same session."""
    told = "\n".join(" ".join(line.split()) for line in text.splitlines() if line.strip())
    return str(uuid5(_OURS, f"{bike_id}\n{told}"))


def kept_already(key: str) -> Callable[[Reader], Session | None]:
    """Give the query for the session of this key, if it has been kept."""
    return lambda reader: reader.get(Session, key)


def keep_told(
    bike_id: str, rider_id: str, told: ToldSession, start: Start, *, key: str, draft_id: str | None = None
) -> Callable[[Gate], Session]:
    """Give the deed that keeps a whole session written down, and closes its draft."""

    def deed(gate: Gate) -> Session:
        if gate.get(Session, key) is not None:
            raise InputError("Session", "this text", "a session that is not kept yet")
        if told.not_understood or not told.runs or not told.course:
            raise InputError("Session", "this text", "a course, and runs that are all understood")
        course = _course(gate, told.course)
        session = _session(gate, bike_id, rider_id, told, start, key, course)
        gate.put(session)
        parts = read_parts(gate, bike_id)
        was_there = values_now(parts)
        began = read_values(gate, start.setup_id)
        is_last = _is_last(gate, session) and _stood_there(began, was_there)
        ended = _keep_runs(gate, parts, session, told, start)
        if is_last:
            _log_end(gate, parts, was_there, ended, told.temperature_c)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return session

    return deed


def moves_the_bike(bike_id: str, start_id: str, date: str) -> Callable[[Reader], bool]:
    """Give the query whether the session is the bike's last one, so that it stands on the last run's setup now."""

    def query(reader: Reader) -> bool:
        began = read_values(reader, start_id)
        later = [one for one in reader.find(Session, bike_id=bike_id) if date and one.started_at > date]
        return not later and _stood_there(began, values_now(read_parts(reader, bike_id)))

    return query


def _session(
    gate: Gate, bike_id: str, rider_id: str, told: ToldSession, start: Start, key: str, course: Course
) -> Session:
    began = told.date or gate.now
    return Session(
        id=key,
        bike_id=bike_id,
        rider_id=rider_id,
        course_id=course.id,
        started_at=began,
        surface=told.surface,
        temperature_c=told.temperature_c,
        start_setup_id=start.setup_id,
        verified_at=began if start.is_sure else None,
        not_verified_reason="" if start.is_sure else NOT_SURE,
        ended_at=_minutes_after(began, len(told.runs)),
        person_id=gate.person_id,
        note=told.note,
    )


def _course(gate: Gate, name: str) -> Course:
    same = [one for one in gate.find(Course) if one.name.casefold() == name.casefold() and one.archived_at is None]
    if same:
        return same[0]
    course = Course(new_id(), name)
    gate.put(course)
    return course


def _keep_runs(gate: Gate, parts: BikeParts, session: Session, told: ToldSession, start: Start) -> Values:
    """Keep the runs with the setup each was ridden on, and give where everything stood at the end."""
    now, setup_id = read_values(gate, start.setup_id), start.setup_id
    for run in told.runs:
        before, now = now, {**now, **_warm(run.changes, told.temperature_c)}
        if run.changes:
            setup_id = _setup_for(gate, parts, session.rider_id, before, now, setup_id).id
        keep_run(_run(session, run, setup_id, is_sure=start.is_sure))(gate)
    return now


def _warm(changes: Mapping[tuple[str, str], float], temperature_c: float | None) -> Values:
    return {
        key: with_warmth(value, temperature_c) if key[0] in PRESSURE_ITEMS else value for key, value in changes.items()
    }


def _setup_for(gate: Gate, parts: BikeParts, rider_id: str, before: Values, now: Values, parent_id: str) -> Setup:
    setups = find_setups(gate, parts.bike.id, rider_id)
    known = matching_setup(setups, values_of(gate, setups), now)
    free = free_changes(changes_between(without_removed(before, now), now))
    return known or write_setup(gate, parts, rider_id, now, "change", parent_id=parent_id, is_confounded=free > 1)


def _run(session: Session, told: ToldRun, setup_id: str, *, is_sure: bool) -> Run:
    reason = told.set_aside or ("" if is_sure else NOT_SURE)
    return Run(
        id="",
        session_id=session.id,
        number=0,
        setup_id=setup_id,
        ridden_at=_minutes_after(session.started_at, told.number),
        typed_at="",
        is_warmup=told.is_warmup,
        is_set_aside=bool(reason),
        set_aside_reason=reason,
        liking=told.liking,
        direction=told.direction,
        direction_of=told.direction_of,
        compared=told.compared,
        travel_front_mm=told.travel_front_mm,
        travel_rear_mm=told.travel_rear_mm,
        bottom_outs_front=told.bottom_outs_front,
        bottom_outs_rear=told.bottom_outs_rear,
        lap_s=told.lap_s,
        note=told.note,
    )


def _minutes_after(moment: str, minutes: int) -> str:
    """A time that keeps the order of what has none of its own."""
    return (datetime.fromisoformat(moment) + timedelta(minutes=minutes)).isoformat()


def _is_last(gate: Gate, session: Session) -> bool:
    others = gate.find(Session, bike_id=session.bike_id)
    return not any(one.started_at > session.started_at for one in others if one.id != session.id)


def _stood_there(began: Values, now: Values) -> bool:
    wanted = {key: value for key, value in without_removed(began, now).items() if value is not None}
    return not changes_between(wanted, {key: now.get(key) for key in wanted})


def _log_end(gate: Gate, parts: BikeParts, before: Values, ended: Values, temperature_c: float | None) -> None:
    """Log what the last run left otherwise than it stood."""
    for (item, subject_id), value in sorted(ended.items()):
        if value is None or before.get((item, subject_id)) == value or (item, subject_id) not in before:
            continue
        count = parts.range_of(subject_id) if item == Item.ADJUSTER else None
        log_line(
            gate,
            parts.bike.id,
            item,
            subject_id,
            value,
            "set_to",
            range_id=count.id if count else None,
            temperature_c=temperature_c if item in PRESSURE_ITEMS else None,
        )
