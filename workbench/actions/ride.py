"""Riding: courses, sessions, runs, and the one change between them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from workbench.actions.checkin import refuse_if_stopped
from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.people import refuse_beside_another
from workbench.actions.setups import Values, find_setups, read_values, values_of, write_setup
from workbench.library.gate import Gate, Reader
from workbench.model.blind import is_concealed
from workbench.model.errors import InputError
from workbench.model.facts import check_field, field_of
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.responses import check_rating
from workbench.model.ride import BlindPlan, Course, Overrule, Run, RunRating, RunSymptom, Session
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
from workbench.model.symptoms import check_symptom
from workbench.model.warmth import with_warmth

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class SessionRecords:
    """One session with its course and its runs in order; a blind test gives its runs only once it is revealed."""

    session: Session
    course: Course
    runs: tuple[Run, ...]
    ratings: tuple[RunRating, ...] = ()
    symptoms: tuple[RunSymptom, ...] = ()
    plan: BlindPlan | None = None  # of a blind test

    @property
    def is_concealed(self) -> bool:
        """Whether this is a blind test whose runs nobody is to see yet."""
        return is_concealed(self.plan)


@dataclass(frozen=True, slots=True)
class RideRecords:
    """Everything one rider rode on one bike: the parts, setups with their values, sessions oldest first."""

    parts: BikeParts
    rider: Person | None
    setups: tuple[Setup, ...]
    values: dict[str, Values]  # setup id -> what it sets
    sessions: tuple[SessionRecords, ...]
    current: Setup | None  # the setup that stands on the bike now, if one does

    @property
    def open_session(self) -> SessionRecords | None:
        """The session under way."""
        return next((one for one in reversed(self.sessions) if one.session.ended_at is None), None)

    def setup(self, setup_id: str) -> Setup:
        """Give one setup."""
        return next(setup for setup in self.setups if setup.id == setup_id)


def courses() -> Callable[[Reader], tuple[Course, ...]]:
    """Give the query for all courses by name."""

    def query(reader: Reader) -> tuple[Course, ...]:
        found = [course for course in reader.find(Course) if course.archived_at is None]
        return tuple(sorted(found, key=lambda course: (course.name.casefold(), course.id)))

    return query


def ride_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], RideRecords]:
    """Give the query for everything ridden on a bike by one rider, the main one by default.

    Ratings of two riders say nothing about one another, so they are never read together.
    """

    def query(reader: Reader) -> RideRecords:
        parts = read_parts(reader, bike_id)
        rider = parts.rider(rider_id)
        whose: dict[str, Any] = {"bike_id": bike_id} | ({"rider_id": rider.id} if rider else {})
        found = reader.find(Session, order_by=("started_at",), **whose)
        sessions = tuple(_session_records(reader, found))
        ridden = {run.setup_id for session in sessions for run in session.runs}
        every = find_setups(reader, bike_id, None)
        setups = tuple(one for one in every if rider is None or one.rider_id == rider.id or one.id in ridden)
        values = values_of(reader, setups)
        return RideRecords(
            parts=parts,
            rider=rider,
            setups=setups,
            values=values,
            sessions=sessions,
            current=matching_setup(setups, values, values_now(parts)),
        )

    return query


def _session_records(reader: Reader, sessions: tuple[Session, ...]) -> Iterator[SessionRecords]:
    """Read what belongs to some sessions, each table once; the runs of a blind test only once it is revealed."""
    blind = tuple(one.id for one in sessions if one.is_blind)
    plans = {plan.session_id: plan for plan in reader.find(BlindPlan, session_id=blind)} if blind else {}
    told = tuple(one.id for one in sessions if not is_concealed(plans.get(one.id)))
    runs = _grouped(reader.find(Run, session_id=told, order_by=("number",)), {one: one for one in told}, "session_id")
    whose = {run.id: session_id for session_id, some in runs.items() for run in some}
    ratings = _grouped(reader.find(RunRating, run_id=tuple(whose)), whose, "run_id")
    symptoms = _grouped(reader.find(RunSymptom, run_id=tuple(whose)), whose, "run_id")
    courses = {one.id: one for one in reader.find(Course, id=tuple({one.course_id for one in sessions}))}
    for one in sessions:
        course = courses.get(one.course_id) or reader.need(Course, one.course_id)
        yield SessionRecords(
            session=one,
            course=course,
            runs=tuple(runs.get(one.id, ())),
            ratings=tuple(ratings.get(one.id, ())),
            symptoms=tuple(symptoms.get(one.id, ())),
            plan=plans.get(one.id),
        )


def _grouped(records: tuple[T, ...], whose: Mapping[str, str], name: str) -> dict[str, list[T]]:
    """Give records by the session they belong to, found through the field of that name."""
    found: dict[str, list[T]] = {}
    for record in records:
        found.setdefault(whose[getattr(record, name)], []).append(record)
    return found


def add_course(name: str, *, has_heavy_hit: bool = False, typical_s: float | None = None) -> Callable[[Gate], Course]:
    """Give the deed that adds a course."""
    checked = check_field(field_of(Course, "name"), name)
    seconds = check_field(field_of(Course, "typical_s"), typical_s)

    def deed(gate: Gate) -> Course:
        course = Course(new_id(), checked, has_heavy_hit, seconds)
        gate.put(course)
        return course

    return deed


def start_session(session: Session, *, draft_id: str | None = None) -> Callable[[Gate], Session]:
    """Give the deed that starts a session on the setup that stands on the bike; id and time are filled in."""

    def deed(gate: Gate) -> Session:
        refuse_if_stopped(gate, session.bike_id)
        refuse_beside_another(gate, session.bike_id, session.rider_id)
        started = replace(session, id=new_id(), started_at=gate.now, person_id=gate.person_id)
        gate.put(started)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return started

    return deed


def end_session(session_id: str) -> Callable[[Gate], None]:
    """Give the deed that ends a session."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Session, session_id), ended_at=gate.now))

    return deed


def reopen_session(session_id: str) -> Callable[[Gate], None]:
    """Give the deed that opens a session again, for runs typed in later."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Session, session_id), ended_at=None))

    return deed


def change_settings(
    bike_id: str,
    rider_id: str,
    wanted: Values,
    *,
    session_id: str | None = None,
    say_confounded: bool = False,
    overrule: Overrule | None = None,
) -> Callable[[Gate], Setup]:
    """Give the deed that sets something else: the log of the bike, and the setup this makes.

    A state that was ridden before keeps its setup, so that going back is seen as going back. More than one free
    change since the last counted run is refused unless it is said out loud.
    """

    def deed(gate: Gate) -> Setup:
        parts = read_parts(gate, bike_id)
        setups = find_setups(gate, bike_id, rider_id)
        values = values_of(gate, find_setups(gate, bike_id, None))
        before = values_now(parts)
        session = gate.get(Session, session_id) if session_id else None
        warmth = session.temperature_c if session is not None else None
        after = {**before, **set_at(wanted, warmth)}
        last_ridden = _last_ridden(gate, session_id, values) or before
        free = free_changes(changes_between(without_removed(last_ridden, after), after))
        if free > 1 and not say_confounded:
            raise InputError(
                "Change",
                f"{free} things at once",
                "one change between two runs",
                "Ride first, or say that both are meant: the runs are then marked as two changes in one.",
            )
        for (item, subject_id), value in wanted.items():
            count = parts.range_of(subject_id) if item == Item.ADJUSTER else None
            range_id = count.id if count else None
            temperature_c = warmth if item in PRESSURE_ITEMS else None
            log_line(gate, bike_id, item, subject_id, value, "set_to", range_id=range_id, temperature_c=temperature_c)
        if overrule is not None:
            gate.put(replace(overrule, id=new_id(), at=gate.now))
        known = matching_setup(setups, values, after)
        current = matching_setup(setups, values, before)
        return known or write_setup(
            gate,
            parts,
            rider_id,
            after,
            "change",
            parent_id=current.id if current else None,
            is_confounded=free > 1,
        )

    return deed


def set_at(wanted: Values, temperature_c: float | None) -> Values:
    """Give pressures the temperature they are set at."""
    return {
        key: with_warmth(value, temperature_c) if key[0] in PRESSURE_ITEMS else value for key, value in wanted.items()
    }


def _last_ridden(gate: Gate, session_id: str | None, values: dict[str, Values]) -> Values | None:
    runs = gate.find(Run, session_id=session_id, order_by=("-number",)) if session_id else ()
    counted = [run for run in runs if not run.is_set_aside]
    return values.get(counted[0].setup_id) if counted else None


def keep_run(
    run: Run,
    *,
    ratings: tuple[tuple[str, int, str], ...] = (),
    symptoms: tuple[tuple[str, str], ...] = (),
    draft_id: str | None = None,
) -> Callable[[Gate], Run]:
    """Give the deed that keeps a run: number, times, and whether two things changed since the one before.

    ``ratings`` are (attribute, score, end), ``symptoms`` are (symptom, end).
    """
    _check_scale("Liking", run.liking, 1, 9)
    _check_scale("Direction", run.direction, -2, 2)
    _check_scale("Compared", run.compared, -1, 1)
    for attribute, score, end in ratings:
        check_rating(attribute, score, end)
    for symptom, end in symptoms:
        check_symptom(symptom, end)

    def deed(gate: Gate) -> Run:
        before = gate.find(Run, session_id=run.session_id, order_by=("-number",))
        kept = replace(
            run,
            id=new_id(),
            number=before[0].number + 1 if before else 1,
            ridden_at=run.ridden_at or gate.now,
            typed_at=gate.now,
            is_confounded=run.is_confounded or _is_confounded(gate, run, before),
            person_id=gate.person_id,
        )
        gate.put(kept)
        for attribute, score, end in ratings:
            gate.put(RunRating(new_id(), kept.id, attribute, score, end))
        for symptom, end in symptoms:
            gate.put(RunSymptom(new_id(), kept.id, symptom, end))
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return kept

    return deed


def _is_confounded(gate: Gate, run: Run, before: tuple[Run, ...]) -> bool:
    counted = [one for one in before if not one.is_set_aside]
    if not counted or counted[0].setup_id == run.setup_id:
        return False
    old, new = read_values(gate, counted[0].setup_id), read_values(gate, run.setup_id)
    return free_changes(changes_between(old, new)) > 1


def _check_scale(field: str, value: int | None, low: int, high: int) -> None:
    if value is not None and not low <= value <= high:
        raise InputError(field, value, f"{low} to {high}")


def edit_run(run_id: str, **values: object) -> Callable[[Gate], None]:
    """Give the deed that changes what was noted of a run."""

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(Run, run_id), **values))  # type: ignore[arg-type]

    return deed


def set_run_aside(run_id: str, reason: str) -> Callable[[Gate], None]:
    """Give the deed that takes a run out of the count; it stays on record. An empty reason counts it again."""
    lever = {} if reason else {"lever": ""}  # a run that counts stood as its setup says
    return edit_run(run_id, is_set_aside=bool(reason), set_aside_reason=reason, **lever)
