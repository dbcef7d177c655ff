"""The review: ratings over the runs with every change marked, what each change did, and the way back to any setup."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from workbench.actions.desk import Desk, Touched
from workbench.actions.ride import RideRecords, SessionRecords, ride_records
from workbench.actions.setups import steps_to_setup, take_all_steps, take_step
from workbench.model.errors import WorkbenchError
from workbench.model.setting import Item, changes_between
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.review_basis import basis_of
from workbench.viewmodels.review_blind import BlindResult, blind_of, hidden_words, with_result, without_concealed
from workbench.viewmodels.review_data import Effects, LapPoint, Looked, Picked, RunPoint, Suited, Timeline
from workbench.viewmodels.review_effects import effects_of
from workbench.viewmodels.review_export import effects_csv, runs_csv
from workbench.viewmodels.review_looked import resolve_looked
from workbench.viewmodels.review_looks import looks_words, note_look
from workbench.viewmodels.review_picked import resolve_picked, with_joint_notes
from workbench.viewmodels.review_response import ResponseState, resolve_response
from workbench.viewmodels.review_runs import RunWords, runs_in_words, said_of
from workbench.viewmodels.review_sessions import Sides, resolve_sides
from workbench.viewmodels.review_suits import resolve_suited
from workbench.viewmodels.review_summary import read_out, short_summary
from workbench.viewmodels.review_timeline import session_words, timeline_of
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import StepLine, not_restored, step_lines

ALL = "all"
MOST_UNASKED = 80  # runs judged together without being asked to; with more, the last session comes first


@dataclass(frozen=True, slots=True)
class Choices:
    """What is looked at: sessions, a change, an adjuster, a setup to go back to, the trend."""

    session: str = ""  # until one is picked: all, or the last one where there are very many runs
    picked: str = ""
    run_id: str = ""
    adjuster_id: str = ""
    setup_id: str = ""
    with_trend: bool = False


@dataclass(frozen=True, slots=True)
class ReviewState:
    """The review sheet."""

    blocked: str = ""
    sessions: tuple[tuple[str, str], ...] = ()
    session: str = ALL
    timeline: Timeline = field(default_factory=Timeline)
    runs: tuple[RunWords, ...] = ()
    run_id: str = ""  # the run looked at
    run_said: str = ""
    with_trend: bool = False
    effects: Effects = field(default_factory=Effects)
    picked: str = ""  # key of the change whose runs are shown strongly
    strong: frozenset[str] = frozenset()  # its setups
    closer: Picked = field(default_factory=Picked)
    looked: Looked = field(default_factory=Looked)
    suited: Suited = field(default_factory=Suited)
    along: ResponseState = field(default_factory=ResponseState)
    sides: Sides = field(default_factory=Sides)
    setups: tuple[tuple[str, str], ...] = ()
    setup_id: str = ""
    setup_said: str = ""
    steps: tuple[StepLine, ...] = ()
    steps_done: str = ""
    summary: str = ""
    read_out: str = ""
    blind: BlindResult | None = None


def resolve(records: RideRecords, choices: Choices, units: Units, looks: str) -> ReviewState:
    """Lay out the sessions chosen."""
    basis = basis_of(records, _shown(records, choices))
    effects = with_joint_notes(records, basis, effects_of(records, basis, units))
    row = next((row for row in effects.rows if row.key == choices.picked), None)
    runs = runs_in_words(records, basis.sessions, units)
    strong = frozenset({row.before_id, row.after_id}) if row else frozenset[str]()
    closer = resolve_picked(records, basis, effects, row.key if row else "")
    suited = resolve_suited(records, basis)
    along = resolve_response(records, choices.adjuster_id, strong)
    told = along.told if len(basis.sessions) == len(records.sessions) else ()  # of all sessions, so with all alone
    return ReviewState(
        sessions=(
            (ALL, "All sessions"),
            *((one.session.id, session_words(one)) for one in reversed(records.sessions)),
        ),
        session=choices.session,
        timeline=timeline_of(records, basis, runs, with_trend=choices.with_trend),
        runs=runs,
        run_id=choices.run_id if any(one.run_id == choices.run_id for one in runs) else "",
        run_said=said_of(runs, choices.run_id),
        with_trend=choices.with_trend,
        effects=effects,
        picked=row.key if row else "",
        strong=strong,
        closer=closer,
        looked=resolve_looked(records, basis, row),
        suited=suited,
        along=along,
        sides=resolve_sides(records, units),
        summary=short_summary(effects, basis, looks, told),
        read_out=read_out(records, basis, effects, closer, suited, told, looks, units),
    )


class ReviewViewModel(ViewModel[ReviewState]):
    """The review and the deeds that bring a setup back."""

    station = "review"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._choices = Choices()
        self._just_told: RideRecords | None = None
        super().__init__(desk, bench)

    def read(self) -> ReviewState:
        """Read what was ridden."""
        if not self.bike_id:
            return ReviewState(blocked="Pick a bike first.")
        told = self._told()
        records, hidden = without_concealed(told), hidden_words(told)
        if not any(session.runs for session in records.sessions):
            return ReviewState(blocked=hidden or "There is nothing to review before the first run is kept.")
        chosen = self._chosen(records)
        state = resolve(records, chosen, self._bench.units, looks_words(self._desk, _shown(records, chosen)))
        summary = f"{hidden} {state.summary} {self._left_out(records, chosen)}".strip()
        timeline = replace(state.timeline, said=f"{state.timeline.said}. {summary}")
        state = replace(state, summary=summary, timeline=timeline)
        return self._with_setup(records, state)

    def hear(self, touched: Touched) -> None:
        """Take note of a deed; a look just noted is none."""
        if touched.tables != {"setting"}:
            super().hear(touched)

    def refresh(self) -> None:
        """Read again; a look before the planned end is noted."""
        if self._is_shown and self.bike_id:
            self._just_told = self._told()
            records = self._records()
            note_look(self._desk, _shown(records, self._chosen(records)))
        try:
            super().refresh()
        finally:
            self._just_told = None

    def _records(self) -> RideRecords:
        return without_concealed(self._told())

    def _told(self) -> RideRecords:
        """Give what was ridden; while the sheet is read again it is asked for once."""
        return self._just_told or self._desk.ask(ride_records(self.bike_id, self._bench.rider_id))

    def _chosen(self, records: RideRecords) -> Choices:
        known = {ALL, *(session.session.id for session in records.sessions)}
        if self._choices.session in known:
            return self._choices
        ridden = [one for one in records.sessions if one.runs]
        is_much = sum(len(one.runs) for one in ridden) > MOST_UNASKED
        return replace(self._choices, session=ridden[-1].session.id if is_much else ALL)

    def _left_out(self, records: RideRecords, chosen: Choices) -> str:
        """Say that there is more where nobody picked the session shown."""
        if chosen.session in (ALL, self._choices.session):
            return ""
        return f"The last of {len(records.sessions)} sessions is shown; “All sessions” reads them together."

    def _with_setup(self, records: RideRecords, state: ReviewState) -> ReviewState:
        setup = next((one for one in records.setups if one.id == self._choices.setup_id), records.setups[-1])
        steps = self._desk.ask(steps_to_setup(setup.id))
        blind = blind_of(records, state.session, self._bench.units)
        return replace(
            state,
            blind=blind,
            read_out=with_result(state.read_out, blind),
            setups=tuple((one.id, f"no. {one.number} {one.name}".strip()) for one in records.setups),
            setup_id=setup.id,
            setup_said=_ridden(records, setup.id),
            steps=step_lines(steps, self._bench.units),
            steps_done=not_restored(records.values[setup.id])
            or ("" if steps else f"Setup no. {setup.number} is on the bike."),
        )

    def runs_csv(self) -> str:
        """Give the runs of the sessions shown as a table."""
        records = self._records()
        return runs_csv(records, _shown(records, self._chosen(records)))

    def effects_csv(self) -> str:
        """Give the changes shown as a table."""
        return effects_csv(self.state.effects)

    def pick_session(self, session_id: str) -> None:
        """Look at one session, or all."""
        self._choose(session=session_id)

    def pick_change(self, key: str) -> None:
        """Show the runs of one change strongly; the same again shows all alike."""
        row = next((row for row in self.state.effects.rows if row.key == key), None)
        if row is None or key == self._choices.picked:
            self._choose(picked="")
            return
        adjuster_id = self._adjuster_of(row.before_id, row.after_id) or self._choices.adjuster_id
        self._choose(picked=key, setup_id=row.after_id, adjuster_id=adjuster_id)

    def pick_run(self, run_id: str) -> None:
        """Say all of a run, and show the change by which it came about, as far as it was judged.

        The same run again is let go.
        """
        if run_id == self._choices.run_id:
            self._choose(run_id="", picked="")
            return
        timeline = self.state.timeline
        points: tuple[RunPoint | LapPoint, ...] = (*timeline.points, *timeline.laps)
        setup_id = next((one.setup_id for one in points if one.run_id == run_id), "")
        row = next((row for row in self.state.effects.rows if row.after_id == setup_id), None)
        row = row or next((row for row in self.state.effects.rows if row.before_id == setup_id), None)
        self._choices = replace(self._choices, run_id=run_id)
        if row is not None and row.key != self._choices.picked:
            self.pick_change(row.key)
        else:
            self.refresh()

    def pick_adjuster(self, adjuster_id: str) -> None:
        """Look along another adjuster."""
        self._choose(adjuster_id=adjuster_id)

    def pick_setup(self, setup_id: str) -> None:
        """List the steps to a setup."""
        self._choose(setup_id=setup_id)

    def pick_suited(self) -> None:
        """List the steps to the setup that suits."""
        if self.state.suited.setup_id:
            self._choose(setup_id=self.state.suited.setup_id)

    def show_trend(self, shown: bool) -> None:
        """Take the trend out of the picture, or leave the ratings as given."""
        self._choose(with_trend=shown)

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

    def _choose(self, **chosen: str | bool) -> None:
        self._choices = replace(self._choices, **chosen)  # type: ignore[arg-type]
        self.refresh()

    def _adjuster_of(self, before_id: str, after_id: str) -> str:
        """Give the adjuster in which two setups differ, if it is one."""
        values = self._records().values
        moved = [
            one.subject_id for one in changes_between(values[before_id], values[after_id]) if one.item == Item.ADJUSTER
        ]
        return moved[0] if len(moved) == 1 else ""


def _shown(records: RideRecords, choices: Choices) -> tuple[SessionRecords, ...]:
    return tuple(one for one in records.sessions if choices.session in (ALL, one.session.id))


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
