"""Counting through the desk: every click is kept, every stage is a deed of its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.actions.adjusters import (
    AdjusterRecords,
    adjuster_records,
    close_to_count,
    keep_as_found,
    keep_range,
    skip_adjuster,
)
from workbench.actions.desk import Desk, Draft, Gate, Touched
from workbench.model.adjuster import Adjuster, steps_text
from workbench.model.counting import next_to_count
from workbench.model.errors import WorkbenchError
from workbench.viewmodels.adjusters_count import (
    PUSHES,
    CountDraft,
    Stage,
    as_found_of,
    begun,
    clamped,
    full_title,
    lower_title,
    problem,
    push_of,
    range_words,
    stage_of,
    steps_out,
)
from workbench.viewmodels.adjusters_drafts import AdjusterDrafts
from workbench.viewmodels.adjusters_sheet import AdjustersState, Choices, resolve
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench

LABEL_LIMIT = 60
FOOT_KEY = "counting/foot_key"


class CountingViewModel(ViewModel[AdjustersState]):
    """The counting of one adjuster after the other."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._choices = Choices()
        self._drafts = AdjusterDrafts(desk)
        self._of_bike = ""
        self._known: frozenset[str] = frozenset()  # the drafts seen at the last reading
        self._read: tuple[tuple[str, str | None], AdjusterRecords | None] | None = None
        super().__init__(desk, bench)

    def read(self) -> AdjustersState:
        """Read the bike on the bench and the counts under way."""
        records = self._records()
        if records is None:
            return AdjustersState()
        kept = self._drafts.counts(self.bike_id)
        self._follow(records, kept)
        counts = {one.subject or "": CountDraft.from_json(one.body) for one in kept}
        state = resolve(records, counts, self._drafts.typed(self.bike_id), self._choices, self._bench.units)
        if state.count is None:
            return state
        kept_key = self._desk.setting(FOOT_KEY, "")
        return replace(state, count=replace(state.count, foot_key=int(kept_key) if kept_key.isdecimal() else 0))

    def count(self, adjuster_id: str) -> None:
        """Open the counting sheet of an adjuster, where it was left."""
        self._choose(counting=adjuster_id, editing="", last_kept="")

    def clicked(self, steps: int = 1) -> None:
        """Count one step more, or take steps back."""
        if (state := self.state.count) is not None:
            self.set_count((state.count or 0) + steps)

    def set_count(self, count: int) -> None:
        """Set the count of this stage; for named positions, the one picked."""
        counting = self._counting()
        if counting is None:
            return
        _, adjuster, draft, stage = counting
        name = "counted_in" if stage == Stage.CLOSE else "counted_out"
        self._keep(adjuster.id, replace(draft, **{name: clamped(count, adjuster)}))

    def set_push(self, felt: str | None) -> None:
        """Keep what the push test showed: closed against open."""
        counting = self._counting()
        if counting is not None and felt in PUSHES:
            self._keep(counting[1].id, replace(counting[2], push=PUSHES.index(felt)))

    def set_foot_key(self, key: int) -> None:
        """Say which further key counts one, as a foot switch or a presenter sends it; 0 forgets it."""
        self._desk.set_setting(FOOT_KEY, str(key) if key else None)
        self.refresh()

    def keep_as_found(self, *, is_known: bool = True, was_closed: bool = False) -> bool:
        """Keep where the adjuster was found and that it stands closed now, before anything is opened.

        ``was_closed`` says that there was nothing to count; ``is_known`` false that it cannot be told.
        """
        counting = self._counting()
        if counting is None or counting[3] != Stage.CLOSE:
            return False
        records, adjuster, draft, stage = counting
        self._choices = replace(self._choices, last_kept="")
        title = lower_title(records.parts, adjuster)
        line = records.latest(adjuster.id)
        if line is not None and line.how == "opened":
            return self._done(f"Closed {title}", close_to_count(self.bike_id, adjuster.id))
        if is_known and self._stopped_by(problem(draft, stage, adjuster, None, was_closed=was_closed)):
            return False
        if not self._keep(adjuster.id, draft):
            return False
        found = draft.counted_in if is_known else None
        words = steps_text(adjuster, found) if found is not None else "not known"
        closes = adjuster.counting != "positions"
        deed = keep_as_found(self.bike_id, adjuster.id, found, closes=closes)
        return self._done(f"Keep as found {words}, {title}", deed)

    def keep_range(self) -> bool:
        """Keep the counted range and go on with the next adjuster."""
        counting = self._counting()
        if counting is None or counting[3] != Stage.OPEN:
            return False
        records, adjuster, draft, stage = counting
        if self._stopped_by(problem(draft, stage, adjuster, as_found_of(records, adjuster.id))):
            return False
        counted = steps_out(adjuster, draft)
        key = self._draft_id(adjuster.id)
        deed = keep_range(self.bike_id, adjuster.id, counted, draft_id=key, push_felt=push_of(draft))
        words = range_words(adjuster, counted)
        count = self.act(self._label(f"Keep range {words}, {lower_title(records.parts, adjuster)}"), deed)
        if count is None:
            return False
        title = full_title(records.parts, adjuster)
        self._go_on(adjuster.id, f"{title}: range {range_words(adjuster, count.steps)} kept.")
        return True

    def skip(self, reason: str, adjuster_id: str = "") -> bool:
        """Pass an adjuster over, with the reason; without an id the one being counted."""
        records = self._records()
        adjuster = records.parts.adjuster(adjuster_id or self._choices.counting) if records else None
        if records is None or adjuster is None:
            return False
        if not reason.strip():
            self.refused.emit(Problem("Say why it is passed over: choose a reason or type one.", "reason"))
            return False
        deed = skip_adjuster(self.bike_id, adjuster.id, reason, draft_id=self._draft_id(adjuster.id))
        if not self._done(f"Pass over {lower_title(records.parts, adjuster)}", deed):
            return False
        if self._choices.counting == adjuster.id:
            self._go_on(adjuster.id, f"{full_title(records.parts, adjuster)}: passed over.")
        return True

    def leave(self) -> None:
        """Go back to the list; what was counted so far stays."""
        self._choose(counting="", last_kept="")

    def discard(self) -> None:
        """Throw the count under way away; what is on record stays."""
        counting = self._counting()
        if counting is None:
            return
        records, adjuster, *_ = counting
        draft_id = self._draft_id(adjuster.id)
        self._choose(counting="", last_kept="")
        if draft_id is not None:
            self.discard_draft(self._label(f"Count of {lower_title(records.parts, adjuster)} discarded"), draft_id)

    def hear(self, touched: Touched) -> None:
        """Forget the records read when a deed touched any of them; a click touches only its draft."""
        if touched.tables:
            self._read = None
        super().hear(touched)

    def _records(self) -> AdjusterRecords | None:
        """Give the bike's records, read once between two deeds, so that clicks can come as fast as they are made."""
        key = (self.bike_id, self._bench.rider_id)
        if self._read is None or self._read[0] != key:
            self._read = (key, self._read_records())
        return self._read[1]

    def _read_records(self) -> AdjusterRecords | None:
        if not self.bike_id:
            return None
        try:
            return self._desk.ask(adjuster_records(self.bike_id, self._bench.rider_id))
        except WorkbenchError:  # the bike went away with an undone step
            return None

    def _counting(self) -> tuple[AdjusterRecords, Adjuster, CountDraft, Stage] | None:
        records = self._records()
        adjuster = records.parts.adjuster(self._choices.counting) if records else None
        if records is None or adjuster is None:
            return None
        kept = self._drafts.count_of(self.bike_id, adjuster.id)
        draft = CountDraft.from_json(kept.body) if kept else begun(records, adjuster.id)
        return records, adjuster, draft, stage_of(draft, adjuster, records.latest(adjuster.id))

    def _draft_id(self, adjuster_id: str) -> str | None:
        kept = self._drafts.count_of(self.bike_id, adjuster_id)
        return kept.id if kept else None

    def _follow(self, records: AdjusterRecords, kept: tuple[Draft, ...]) -> None:
        """Open the count that was under way when the bike was put down, or that an undo or a take-back returned."""
        if self._of_bike != self.bike_id:
            self._of_bike, self._known, self._choices = self.bike_id, frozenset(), Choices()
        returned = [one for one in kept if one.id not in self._known and records.parts.adjuster(one.subject or "")]
        is_busy = any(one.subject == self._choices.counting for one in kept)
        if returned and not is_busy:
            self._choices = replace(self._choices, counting=returned[0].subject or "", last_kept="")
        self._known = frozenset(one.id for one in kept)

    def _keep(self, adjuster_id: str, draft: CountDraft) -> bool:
        try:
            self._drafts.keep_count(self.bike_id, adjuster_id, draft)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        return True

    def _choose(self, **chosen: str) -> None:
        self._choices = replace(self._choices, **chosen)
        self.refresh()

    def _go_on(self, adjuster_id: str, said: str) -> None:
        records = self._records()
        ahead = next_to_count(records.parts, records.skipped or {}, after=adjuster_id) if records else None
        self._choose(counting=ahead.id if ahead else "", last_kept=said if ahead else "")

    def _stopped_by(self, found: Problem | None) -> bool:
        if found is not None:
            self.refused.emit(found)
        return found is not None

    def _done(self, label: str, deed: Callable[[Gate], Any]) -> bool:
        """Do a deed and tell whether it was done."""

        def work(gate: Gate) -> bool:
            deed(gate)
            return True

        return self.act(self._label(label), work) is True

    def _label(self, text: str) -> str:
        return text if len(text) <= LABEL_LIMIT else f"{text[: LABEL_LIMIT - 1]}…"
