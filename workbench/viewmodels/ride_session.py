"""The session under way: its runs, what was changed, what comes next. Pure: records and choices in, a state out."""

from __future__ import annotations

from dataclasses import dataclass, field

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.model.adjuster import Adjuster
from workbench.model.responses import lap_text
from workbench.model.ride import ENDS, Run
from workbench.model.setting import Item, changes_between
from workbench.model.tyres import tyre_read_kpa
from workbench.viewmodels import ride_marks, ride_next, ride_noticed, ride_run
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.ride_next import Choice, NextLook
from workbench.viewmodels.ride_noticed import NoticedLook
from workbench.viewmodels.ride_run import RunDraft, RunEntry
from workbench.viewmodels.ride_switch import SwitchLook, resolve_switch
from workbench.viewmodels.shown import Units, how_many, short_time
from workbench.viewmodels.tyre_words import TyreDrift, drift_words, tyre_drifts


@dataclass(frozen=True, slots=True)
class Focus:
    """What the rider works on: the adjuster moved last by choice, and those put aside for now."""

    working_on: str | None = None
    put_aside: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class RunRow:
    """One run of the session, for the list."""

    run_id: str
    number: str
    change: str
    said: str
    is_set_aside: bool


@dataclass(frozen=True, slots=True)
class SessionState:
    """The session under way."""

    title: str
    subtitle: str
    setup_text: str
    next: NextLook
    entry: RunEntry
    choices: tuple[Choice, ...]
    runs: tuple[RunRow, ...]
    changed: str = ""  # what changed since the last run: roll-out check due
    is_on_setup: bool = True
    marks: tuple[tuple[str, str], ...] = ()  # what may be found out about several runs at once
    noticed: NoticedLook = field(default_factory=NoticedLook)
    switch: SwitchLook = field(default_factory=SwitchLook)


def resolve_session(
    records: RideRecords,
    session: SessionRecords,
    draft: RunDraft | None,
    units: Units,
    *,
    focus: Focus,
    overrules: int,
    goal: str = "",
    switch_to: str = "",
) -> SessionState:
    """Lay the session out; ``draft`` is the run being entered, if one is."""
    setup = records.current
    number = len(session.runs) + 1
    worked = worked_on(records, focus)
    step = ride_next.propose(records, working_on=worked, put_aside=focus.put_aside)
    tested = _tested_in(records, draft) or records.parts.adjuster(worked or step.adjuster_key or "")
    planned = f" of {session.session.planned_runs} planned" if session.session.planned_runs else ""
    return SessionState(
        title=f"Session on {session.course.name}",
        subtitle=f"{short_time(session.session.started_at)}, {how_many(len(session.runs), 'run')}{planned}",
        setup_text=f"Setup no. {setup.number} is on the bike" if setup else "The bike stands as no setup says",
        next=ride_next.look_of(step, records, overrules=overrules, goal=goal),
        entry=ride_run.resolve_entry(
            draft or RunDraft(),
            records.parts,
            number,
            tested,
            units,
            has_draft=draft is not None,
            response=session.session.response,
            drifts=drifts_of(records, session, draft, units) if draft is not None else (),
        ),
        choices=ride_next.choices(records.parts, units),
        runs=run_rows(records, session, units),
        changed=changed_since_last_run(records, session, units),
        is_on_setup=setup is not None,
        marks=ride_marks.mark_choices(records.parts) if session.runs else (),
        noticed=ride_noticed.resolve_noticed(draft.noticed if draft else (), records.parts, session),
        switch=resolve_switch(records, session, switch_to, units),
    )


def worked_on(records: RideRecords, focus: Focus) -> str | None:
    """Give the adjuster moved last, so that it is finished before another is begun."""
    if focus.working_on is not None:
        return focus.working_on
    runs = [run for session in records.sessions for run in session.runs]
    for earlier, later in zip(reversed(runs[:-1]), reversed(runs[1:]), strict=True):
        changes = changes_between(records.values[earlier.setup_id], records.values[later.setup_id])
        # What came with another fork or shock was not moved, and what went with one is asked about no more.
        moved = [one for one in changes if one.item == Item.ADJUSTER and None not in (one.before, one.after)]
        adjusters = [one.subject_id for one in moved if records.parts.adjuster(one.subject_id) is not None]
        if adjusters:
            return adjusters[0]
    return None


def tested_adjuster(records: RideRecords, focus: Focus, draft: RunDraft | None) -> Adjuster | None:
    """Give the adjuster the direction question is about: the entry's own, else the one moved last or first proposed."""
    if (tested := _tested_in(records, draft)) is not None:
        return tested
    key = worked_on(records, focus)
    if key is None:
        key = ride_next.propose(records, working_on=None, put_aside=focus.put_aside).adjuster_key
    return records.parts.adjuster(key) if key else None


def setup_ridden(records: RideRecords, draft: RunDraft) -> str:
    """Give the setup the run was ridden on: as noted at its first entry, else the one that stands on the bike."""
    if any(setup.id == draft.setup_id for setup in records.setups):
        return draft.setup_id
    return records.current.id if records.current else ""


def drifts_of(records: RideRecords, session: SessionRecords, draft: RunDraft, units: Units) -> tuple[TyreDrift, ...]:
    """List the tyres that read otherwise than the setup of the run being entered says."""
    values = records.values.get(setup_ridden(records, draft), {})
    return tyre_drifts(records.parts, values, ride_run.tyres_read(draft, units), session.session.temperature_c)


def _tested_in(records: RideRecords, draft: RunDraft | None) -> Adjuster | None:
    return records.parts.adjuster(draft.tested_id) if draft is not None and draft.tested_id else None


def changed_since_last_run(records: RideRecords, session: SessionRecords, units: Units) -> str:
    """Say what stands otherwise than in the last counted run; empty when nothing does."""
    counted = [run for run in session.runs if not run.is_set_aside]
    if not counted or records.current is None or counted[-1].setup_id == records.current.id:
        return ""
    before, after = records.values[counted[-1].setup_id], records.values[records.current.id]
    return changes_text(records.parts, before, after, units)


def run_rows(records: RideRecords, session: SessionRecords, units: Units) -> tuple[RunRow, ...]:
    """List the runs, the newest first, each with what was changed before it."""
    rows, before = [], None
    for run in session.runs:
        change = ""
        if before is not None and before.setup_id != run.setup_id:
            change = changes_text(records.parts, records.values[before.setup_id], records.values[run.setup_id], units)
        noticed = [(one.symptom, one.end) for one in session.symptoms if one.run_id == run.id]
        said = _said(run, noticed, _drift_said(records, session, run, units))
        rows.append(RunRow(run.id, str(run.number), change, said, run.is_set_aside))
        before = run
    return tuple(reversed(rows))


def _drift_said(records: RideRecords, session: SessionRecords, run: Run, units: Units) -> list[str]:
    read = {end: tyre_read_kpa(run, end) for end in ENDS}
    drifts = tyre_drifts(records.parts, records.values[run.setup_id], read, session.session.temperature_c)
    return [drift_words(one, units) for one in drifts]


def _said(run: Run, noticed: list[tuple[str, str]], drifted: list[str]) -> str:
    words = [f"liking {run.liking}"] if run.liking is not None else []
    if run.lap_s is not None:
        words.append(f"lap {lap_text(run.lap_s)}")
    if noticed:
        words.append(f"noticed: {ride_noticed.noticed_words(noticed)}")
    words.extend(drifted)
    if run.is_warmup:
        words.append("warm-up")
    if run.is_confounded:
        words.append("two changes at once: cannot be separated")
    if run.is_set_aside:
        words.append(f"set aside: {run.set_aside_reason}")
    return ", ".join(words) or "not rated"
