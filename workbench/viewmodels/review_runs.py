"""Every run in words: a line to read off a picture, a row of a table, and all that was noted of one run."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.model.responses import ATTRIBUTES, lap_text
from workbench.model.ride import ENDS, Run
from workbench.model.setting import Item
from workbench.model.tyres import tyre_read_kpa
from workbench.viewmodels import ride_noticed
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.ride_run import DIRECTION_WORDS
from workbench.viewmodels.shown import Units, short_date

COMPARED_WORDS = {-1: "worse than the run before", 0: "same as the run before", 1: "better than the run before"}


@dataclass(frozen=True, slots=True)
class RunWords:
    """One run: what stands in its row, and the sentence read off a picture."""

    run_id: str
    title: str  # its day and number
    setup: str
    change: str  # since the run before it; empty for none
    answers: str
    remarks: str
    whole: str  # with everything else that was noted
    is_aside: bool = False

    @property
    def read(self) -> str:
        """The line to read off a picture."""
        since = f" ({self.change})" if self.change else ""
        told = ", ".join(one for one in (self.answers, self.remarks) if one)
        return f"{self.title}, setup {self.setup}{since}: {told}"


def runs_in_words(records: RideRecords, sessions: tuple[SessionRecords, ...], units: Units) -> tuple[RunWords, ...]:
    """Say every run of some sessions, in the order ridden."""
    found = []
    for session in sessions:
        before: Run | None = None
        for run in session.runs:
            found.append(_run_words(records, session, run, before, units))
            before = run
    return tuple(found)


def _run_words(records: RideRecords, session: SessionRecords, run: Run, before: Run | None, units: Units) -> RunWords:
    change = ""
    if before is not None and before.setup_id != run.setup_id:
        change = changes_text(records.parts, records.values[before.setup_id], records.values[run.setup_id], units)
    title = f"{short_date(session.session.started_at)}, run {run.number}"
    setup = f"no. {records.setup(run.setup_id).number}"
    answers, remarks = ", ".join(_answers(records, run)) or "not rated", ", ".join(_remarks(run))
    more = _more(session, run, units)
    base = RunWords(run.id, title, setup, change, answers, remarks, "", run.is_set_aside)
    return RunWords(
        run.id, title, setup, change, answers, remarks, ". ".join([base.read, *more]) + ".", run.is_set_aside
    )


def _answers(records: RideRecords, run: Run) -> list[str]:
    said = [f"liking {run.liking}"] if run.liking is not None else []
    adjuster = records.parts.knob(run.direction_of) if run.direction_of else None  # also of a unit taken off since
    if run.direction is not None and adjuster is not None:
        words = DIRECTION_WORDS.get(adjuster.kind, DIRECTION_WORDS["compression"])
        title = records.parts.subject_title(Item.ADJUSTER, adjuster.id)
        said.append(f"{title} {words[run.direction + 2]}")
    if run.compared is not None:
        said.append(COMPARED_WORDS[run.compared])
    if run.lap_s is not None:
        said.append(f"lap {lap_text(run.lap_s)}")
    return said


def _remarks(run: Run) -> list[str]:
    said = ["blind"] if run.is_blind else []
    if run.is_warmup:
        said.append("warm-up")
    if run.is_confounded:
        said.append("two changes at once")
    if run.is_set_aside:
        said.append(f"set aside: {run.set_aside_reason}")
    return said


def _more(session: SessionRecords, run: Run, units: Units) -> list[str]:
    """Say what a run has beside its answers."""
    said = []
    travel = [
        f"{end} {units.text(used, 'length')}"
        for end, used in (("front", run.travel_front_mm), ("rear", run.travel_rear_mm))
        if used is not None
    ]
    if travel:
        said.append(f"Travel used: {', '.join(travel)}")
    hard = [
        f"{end} {count}"
        for end, count in (("front", run.bottom_outs_front), ("rear", run.bottom_outs_rear))
        if count is not None
    ]
    if hard:
        said.append(f"Hard contacts: {', '.join(hard)}")
    tyres = [
        f"{end} {units.text(read_kpa, 'pressure')}" for end in ENDS if (read_kpa := tyre_read_kpa(run, end)) is not None
    ]
    if tyres:
        said.append(f"Tyres read after it: {', '.join(tyres)}")
    given = {(one.attribute, one.end): one.score for one in session.ratings if one.run_id == run.id}
    scores = [
        f"{words.lower()} {end} {given[name, end]}".replace("  ", " ")
        for end in (*ENDS, "")
        for name, words in ATTRIBUTES.items()
        if (name, end) in given
    ]
    if scores:
        said.append(f"Attributes: {', '.join(scores)}")
    noticed = [(one.symptom, one.end) for one in session.symptoms if one.run_id == run.id]
    if noticed:
        said.append(f"Noticed: {ride_noticed.noticed_words(noticed)}")
    if run.note:
        said.append(f"Note: {run.note.strip().rstrip('.')}")
    return said


def said_of(runs: tuple[RunWords, ...], run_id: str) -> str:
    """Give all that was noted of one run; empty when it is not among those shown."""
    return next((one.whole for one in runs if one.run_id == run_id), "")
