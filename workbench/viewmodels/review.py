"""The review: ratings over the runs with every change marked, what each change did, and the way back to any setup."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from workbench.actions.desk import Desk
from workbench.actions.ride import RideRecords, SessionRecords, ride_records
from workbench.actions.ride_evidence import run_records
from workbench.actions.setups import steps_to_setup, take_all_steps, take_step
from workbench.model.errors import NotEnoughData, WorkbenchError
from workbench.model.ride import Run
from workbench.model.setting import Item, changes_between
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.review_data import EffectRow, Effects, Period, RunPoint, Timeline
from workbench.viewmodels.review_export import effects_csv, runs_csv
from workbench.viewmodels.review_response import ResponseState, resolve_response
from workbench.viewmodels.review_sessions import Sides, resolve_sides
from workbench.viewmodels.shown import Units, how_many, short_date
from workbench.viewmodels.step_lines import StepLine, not_restored, step_lines

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

ALL = "all"
GAP = 1.0  # empty places between two sessions on the timeline


@dataclass(frozen=True, slots=True)
class ReviewState:
    """The review sheet."""

    blocked: str = ""
    sessions: tuple[tuple[str, str], ...] = ()
    session: str = ALL
    timeline: Timeline = field(default_factory=Timeline)
    effects: Effects = field(default_factory=Effects)
    picked: str = ""  # key of the change whose runs are shown strongly
    along: ResponseState = field(default_factory=ResponseState)
    sides: Sides = field(default_factory=Sides)
    setups: tuple[tuple[str, str], ...] = ()
    setup_id: str = ""
    setup_said: str = ""
    steps: tuple[StepLine, ...] = ()
    steps_done: str = ""
    summary: str = ""


def resolve(records: RideRecords, chosen: str, picked: str, units: Units) -> ReviewState:
    """Lay out the sessions chosen."""
    sessions = tuple(one for one in records.sessions if chosen in (ALL, one.session.id))
    effects = effects_of(records, sessions, units)
    return ReviewState(
        sessions=(
            (ALL, "All sessions"),
            *((one.session.id, _session_words(one)) for one in reversed(records.sessions)),
        ),
        session=chosen,
        timeline=timeline_of(records, sessions),
        effects=effects,
        picked=picked if any(row.key == picked for row in effects.rows) else "",
        summary=_summary(effects, sessions),
    )


def timeline_of(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> Timeline:
    """Place every rated run; a period is a stretch on one setup within a session."""
    points: list[RunPoint] = []
    periods: list[Period] = []
    starts = []
    place = 1.0
    for session in sessions:
        starts.append((place, _session_words(session)))
        first_setup = session.runs[0].setup_id if session.runs else ""
        for run in session.runs:
            setup = records.setup(run.setup_id)
            if periods and periods[-1].setup_id == run.setup_id and periods[-1].last == place - 1:
                last = periods.pop()
                periods.append(Period(last.first, place, last.setup_id, last.label, last.is_confounded))
            else:
                periods.append(Period(place, place, run.setup_id, f"no. {setup.number}", run.is_confounded))
            if run.liking is not None:
                points.append(_point(records, run, place, first_setup))
            place += 1
        place += GAP
    said = f"Liking of {how_many(len(points), 'run')} in the order ridden"
    return Timeline(tuple(points), tuple(periods), tuple(starts), said)


def _point(records: RideRecords, run: Run, place: float, first_setup: str) -> RunPoint:
    words = [f"run {run.number}", f"setup no. {records.setup(run.setup_id).number}", f"liking {run.liking}"]
    if run.is_warmup:
        words.append("warm-up")
    if run.is_set_aside:
        words.append(f"set aside: {run.set_aside_reason}")
    return RunPoint(
        run.id,
        run.setup_id,
        place,
        float(run.liking or 0),
        _mark(records, run, first_setup),
        ", ".join(words),
        run.is_warmup,
        run.is_set_aside,
        run.is_blind,
    )


def _mark(records: RideRecords, run: Run, first_setup: str) -> str:
    """Say how a run differs from the first setup of its session: nothing, clicks more open or closed, or other."""
    changes = changes_between(records.values[first_setup], records.values[run.setup_id])
    if not changes:
        return "baseline"
    if len(changes) == 1 and changes[0].item == Item.ADJUSTER and None not in (changes[0].before, changes[0].after):
        return "open" if (changes[0].after or 0) > (changes[0].before or 0) else "closed"
    return "other"


def effects_of(records: RideRecords, sessions: tuple[SessionRecords, ...], units: Units) -> Effects:
    """Judge every change ridden, in the order ridden; what earlier sessions tell of the rider's scatter is used."""
    runs = tuple(run_records(records, sessions))
    chosen = {one.session.id for one in sessions}
    riders = {one.session.rider_id for one in sessions}
    begun = min((one.session.started_at for one in sessions), default="")
    earlier = tuple(
        one
        for one in records.sessions
        if one.session.id not in chosen and one.session.rider_id in riders and one.session.started_at < begun
    )
    past = _scatter(tuple(run_records(records, earlier))) if earlier and len(riders) == 1 else None
    rows = tuple(_effect_row(records, one, units) for one in _judge(runs, past[0] if past else None))
    steady = _steady_words(_scatter(runs))
    if not rows:
        return Effects(said="No change has been ridden and rated on both sides yet", steady=steady)
    return Effects(rows, said=f"{how_many(len(rows), 'change')} judged", steady=steady)


@lru_cache(maxsize=8)
def _judge(runs: tuple[RunRecord, ...], past_sd: float | None) -> tuple[ChangeVerdict, ...]:
    """Judge once per set of runs: reading the sheet again costs nothing."""
    from workbench.evidence.effects import judge_changes

    return tuple(judge_changes(list(runs), past_sd=past_sd))


@lru_cache(maxsize=8)
def _scatter(runs: tuple[RunRecord, ...]) -> tuple[float, float, float] | None:
    """Give the rider's run-to-run scatter with its interval; None without a repeat."""
    from workbench.evidence.effects import noise_sd

    try:
        return noise_sd(runs)
    except NotEnoughData:
        return None


def _steady_words(scatter: tuple[float, float, float] | None) -> str:
    if scatter is None:
        return "No setting was ridden twice, so it is not known how much the ratings scatter from run to run."
    sd, low, high = scatter
    return (
        f"Ridden again unchanged, a rating scatters by about {sd:.1f} points ({low:.1f} to {high:.1f}):"
        " smaller differences take repeats to tell."
    )


def _effect_row(records: RideRecords, one: ChangeVerdict, units: Units) -> EffectRow:
    from workbench.evidence.verdicts import Verdict
    from workbench.evidence.words import caution_words, sentence

    by_number = {setup.number: setup for setup in records.setups}
    before, after = by_number[int(str(one.before))], by_number[int(str(one.after))]
    change = changes_text(records.parts, records.values[before.id], records.values[after.id], units)
    return EffectRow(
        key=f"{before.number}-{after.number}",
        before_id=before.id,
        after_id=after.id,
        change=f"no. {before.number} to {after.number}: {change}",
        effect=one.effect,
        low=one.low,
        high=one.high,
        effect_text=_signed(one.effect),
        interval_text=f"{_signed(one.low)} to {_signed(one.high)}",
        chance_text=f"{min(19, max(1, round(20 * one.chance_helped)))} in 20",
        verdict=sentence(one, before_words=f"no. {before.number}", after_words=f"no. {after.number}"),
        cautions="; ".join(caution_words(one)),
        runs_text=f"{one.runs_before} and {one.runs_after}",
        is_settled=one.verdict is not Verdict.CANNOT_TELL,
    )


def _signed(value: float) -> str:
    """Say a difference with its sign; what rounds to nothing has none."""
    rounded = round(value, 1)
    return f"{rounded:+.1f}".replace("-", "\u2212") if rounded else "0.0"


def _session_words(session: SessionRecords) -> str:
    return f"{short_date(session.session.started_at)}, {session.course.name}, {how_many(len(session.runs), 'run')}"


def _summary(effects: Effects, sessions: tuple[SessionRecords, ...]) -> str:
    runs = sum(len(session.runs) for session in sessions)
    lead = f"{how_many(runs, 'run')} in {how_many(len(sessions), 'session')}."
    if any(session.session.ended_at is None for session in sessions):
        lead += " The session is still open: this is how it looks so far."
    if not effects.rows:
        return f"{lead} {effects.said}. Two runs on each side of a change are the cheapest start."
    settled = [row.verdict for row in effects.rows if row.is_settled]
    left = len(effects.rows) - len(settled)
    tail = (
        f" {left} of {len(effects.rows)} changes cannot be told yet: see what each still needs below." if left else ""
    )
    return " ".join([lead, *settled[:4]]) + tail


class ReviewViewModel(ViewModel[ReviewState]):
    """The review and the deeds that bring a setup back."""

    station = "review"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._session = ALL
        self._picked = ""
        self._setup_id = ""
        self._adjuster_id = ""
        super().__init__(desk, bench)

    def read(self) -> ReviewState:
        """Read what was ridden."""
        if not self.bike_id:
            return ReviewState(blocked="Pick a bike first.")
        records = self._desk.ask(ride_records(self.bike_id, self._bench.rider_id))
        if not any(session.runs for session in records.sessions):
            return ReviewState(blocked="There is nothing to review before the first run is kept.")
        known = {session.session.id for session in records.sessions}
        state = resolve(records, self._session if self._session in known else ALL, self._picked, self._bench.units)
        return self._with_setup(records, state)

    def _with_setup(self, records: RideRecords, state: ReviewState) -> ReviewState:
        setup = next((one for one in records.setups if one.id == self._setup_id), records.setups[-1])
        steps = self._desk.ask(steps_to_setup(setup.id))
        return replace(
            state,
            along=resolve_response(records, self._adjuster_id),
            sides=resolve_sides(records, self._bench.units),
            setups=tuple((one.id, f"no. {one.number} {one.name}".strip()) for one in records.setups),
            setup_id=setup.id,
            setup_said=_ridden(records, setup.id),
            steps=step_lines(steps, self._bench.units),
            steps_done=not_restored(records.values[setup.id])
            or ("" if steps else f"Setup no. {setup.number} is on the bike."),
        )

    def runs_csv(self) -> str:
        """Give the runs of the sessions shown as a table."""
        records = self._desk.ask(ride_records(self.bike_id))
        chosen = self.state.session
        return runs_csv(records, tuple(one for one in records.sessions if chosen in (ALL, one.session.id)))

    def effects_csv(self) -> str:
        """Give the changes shown as a table."""
        return effects_csv(self.state.effects)

    def pick_session(self, session_id: str) -> None:
        """Look at one session, or all."""
        self._session = session_id
        self.refresh()

    def pick_change(self, key: str) -> None:
        """Show the runs of one change strongly; the same again shows all alike."""
        self._picked = "" if key == self._picked else key
        row = next((row for row in self.state.effects.rows if row.key == key), None)
        if row is not None:
            self._setup_id = row.after_id
        self.refresh()

    def pick_adjuster(self, adjuster_id: str) -> None:
        """Look along another adjuster."""
        self._adjuster_id = adjuster_id
        self.refresh()

    def pick_setup(self, setup_id: str) -> None:
        """List the steps to a setup."""
        self._setup_id = setup_id
        self.refresh()

    def take_step(self, key: str) -> None:
        """Log one step back as done."""
        for step in self._desk.ask(steps_to_setup(self.state.setup_id)):
            if f"{step.item}/{step.subject_id}" == key:
                self.act(f"Set {step.title.lower()}"[:60], take_step(self.bike_id, step))

    def take_all(self) -> None:
        """Log every step back as done."""
        try:
            steps = self._desk.ask(steps_to_setup(self.state.setup_id))
        except WorkbenchError as error:
            self.refuse(error)
            return
        if steps:
            words = next(words for key, words in self.state.setups if key == self.state.setup_id)
            self.act(f"Restore setup {words}"[:60], take_all_steps(self.bike_id, steps))


def _ridden(records: RideRecords, setup_id: str) -> str:
    ratings = [
        run.liking
        for session in records.sessions
        for run in session.runs
        if run.setup_id == setup_id and run.liking is not None and not run.is_set_aside
    ]
    if not ratings:
        return "not rated yet"
    return f"rated {', '.join(str(rating) for rating in ratings[:12])}"
