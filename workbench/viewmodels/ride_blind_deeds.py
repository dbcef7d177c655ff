"""The deeds of a blind test: hand the screen to and fro, keep runs, guess, reveal."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.actions.blind import BlindRecords, blind_records, keep_blind_run, reveal
from workbench.actions.desk import Desk
from workbench.actions.ride import SessionRecords
from workbench.model.blind import pairs_of
from workbench.model.errors import InputError, WorkbenchError
from workbench.viewmodels import ride_blind, ride_laps
from workbench.viewmodels.base import Problem
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.ride_blind import BlindRunDraft, BlindState, GuessDraft, Side
from workbench.viewmodels.ride_blind_planning import BlindPlanning, real_seed
from workbench.viewmodels.ride_scores import ratings_of, with_score

NOBODY = ("", -1)


class BlindDeeds(BlindPlanning):
    """What the ride's sheet can do about blind tests."""

    def __init__(self, desk: Desk, bench: Bench, seeds: Callable[[], int] = real_seed) -> None:
        self._helper_at = NOBODY  # the test and place at which the helper holds the screen; forgotten when hidden
        self._bike_seen = ""
        super().__init__(desk, bench, seeds)

    def hide(self) -> None:
        """Out of sight the screen is nobody's: whoever comes back finds nothing on it."""
        super().hide()
        self._helper_at = NOBODY
        self._is_stale = True

    def refresh(self) -> None:
        """Read again; once another bike was on the bench, the screen is nobody's."""
        if self.bike_id != self._bike_seen:
            self._bike_seen, self._helper_at = self.bike_id, NOBODY
        super().refresh()

    # Riding

    def read_blind(self, session: SessionRecords) -> BlindState:
        """Give the test as whoever holds the screen may see it."""
        records = self._desk.ask(blind_records(session.session.id))
        return ride_blind.resolve_blind(
            records,
            session.course.name,
            self._run_draft(records),
            self._guess_draft(session.session.id),
            self._bench.units,
            helper_sees=self._helper_at == (session.session.id, records.place),
        )

    def show_helper(self) -> None:
        """The helper has the screen, and the rider looks away."""
        if (records := self._test()) is not None:
            self._helper_at = (records.session.id, records.place)
            self._set_run(records, is_riders=False)
            self.refresh()

    def tick_blind(self, key: str, done: bool) -> None:
        """Note one step of the helper's as done, or not."""
        if (records := self._test()) is not None:
            ticked = [one for one in self._run_draft(records).ticked if one != key]
            self._set_run(records, ticked=(*ticked, key) if done else tuple(ticked))

    def to_rider(self) -> bool:
        """Hand the screen over to the rider, once all is set."""
        state, records = self.state.blind, self._test()
        if records is None or state is None or state.side is not Side.HELPER:
            return False
        if {line.key for line in state.steps} - set(state.draft.ticked):
            self.refused.emit(Problem("Tick what is set before the rider gets the screen.", "blind_steps"))
            return False
        self._helper_at = NOBODY
        self._set_run(records, is_riders=True)
        return True

    def to_door(self) -> None:
        """Take the screen away from the one who holds it."""
        self._helper_at = NOBODY
        if (records := self._test()) is not None:
            self._set_run(records, is_riders=False)
            self.refresh()

    def rate_blind(self, name: str, value: Any) -> None:
        """Keep one answer of the rider's."""
        records = self._test()
        if records is None or getattr(self._run_draft(records), name) == value:
            return
        ridden_at = self._run_draft(records).ridden_at or self._desk.now()
        self._set_run(records, **{name: value, "ridden_at": ridden_at})

    def press_blind_watch(self) -> None:
        """Start the stopwatch, or stop it and take its time."""
        if (records := self._test()) is None:
            return
        begun = self._run_draft(records).watch
        if begun:
            self.rate_blind("lap", ride_laps.watch_text(begun, self._desk.now()))
        self.rate_blind("watch", "" if begun else self._desk.now())

    def blind_watch_time(self) -> str:
        """Say how long the stopwatch has been running; empty when it is not."""
        blind = self.state.blind
        return ride_laps.watch_text(blind.draft.watch, self._desk.now()) if blind is not None else ""

    def score_blind(self, key: str, score: int | None) -> None:
        """Keep one attribute of the run, or take it back."""
        if (records := self._test()) is not None:
            scores = self._run_draft(records).scores
            self.rate_blind("scores", with_score(scores, key, score))

    def keep_blind(self, *, spoilt: str = "") -> bool:
        """Keep the run, or with a reason set it aside, to be ridden again."""
        state, records = self.state.blind, self._test()
        if records is None or state is None or state.side is not Side.RIDER:
            return False
        draft = self._run_draft(records)
        wrong = None if spoilt else ride_blind.problem(draft, state.response, self._bench.units)
        if wrong is not None:
            self.refused.emit(wrong)
            return False
        try:
            run = ride_blind.run_of(draft, self._bench.units, spoilt=spoilt)
        except InputError as error:
            self.refuse(error, "blind_note")
            return False
        kept = self._desk.open_draft(ride_blind.RUN_DRAFT, bike_id=self.bike_id, subject=records.session.id)
        deed = keep_blind_run(
            records.session.id,
            run,
            ratings=() if spoilt else ratings_of(draft.scores),
            draft_id=kept.id if kept else None,
        )
        label = f"Set blind run {state.place + 1} aside" if spoilt else f"Keep blind run {state.place + 1}"
        return self.act(label, deed) is not None

    # Guessing and the reveal

    def stop_early(self) -> None:
        """Ride no more: guess what was ridden, then reveal."""
        self._guess(is_stopping=True)

    def go_on(self) -> None:
        """Ride on after all."""
        self._guess(is_stopping=False)

    def guess(self, pair: int, which: int | None) -> None:
        """Keep the guess which run of a pair had B."""
        if (records := self._test()) is not None:
            draft = self._guess_draft(records.session.id).with_guess(pair, -1 if which is None else which)
            self._keep_draft(ride_blind.GUESS_DRAFT, draft.to_json(), records.session.id)

    def reveal(self) -> bool:
        """Reveal what was ridden. It is not undone, so no notice offers that."""
        records = self._test()
        if records is None or self.state.blind is None or self.state.blind.side is not Side.GUESS:
            return False
        session_id = records.session.id
        guess, run = self._guess_draft(session_id), self._run_draft(records)
        pairs = range(len(pairs_of(records.runs)))
        missing = next((pair for pair in pairs if guess.guess(pair) < 0), None)
        if missing is not None:
            self.refused.emit(Problem(f"Guess pair {missing + 1} too, however unsure.", f"guess_{missing}"))
            return False
        kinds = (ride_blind.RUN_DRAFT, ride_blind.GUESS_DRAFT)
        kept = [one for one in self._desk.drafts(self.bike_id) if one.kind in kinds]  # those of an undone test as well
        deed = reveal(
            session_id,
            guesses={pair: guess.guess(pair) for pair in pairs},
            was_set=len(run.ticked) == len(records.changes),
            draft_ids=tuple(one.id for one in kept),
        )
        try:
            self._desk.do("Reveal the blind test", deed, bike_id=self.bike_id, station=self.station)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        return True

    def _guess(self, *, is_stopping: bool) -> None:
        self._helper_at = NOBODY
        if (records := self._test()) is not None:
            draft = replace(self._guess_draft(records.session.id), is_stopping=is_stopping)
            self._keep_draft(ride_blind.GUESS_DRAFT, draft.to_json(), records.session.id)

    # What is kept

    def _test(self) -> BlindRecords | None:
        blind = self.state.blind
        return None if blind is None else self._desk.ask(blind_records(blind.session_id))

    def _run_draft(self, records: BlindRecords) -> BlindRunDraft:
        """Give what was entered of the run due; nothing when that was for a run undone or kept since."""
        kept = self._desk.open_draft(ride_blind.RUN_DRAFT, bike_id=self.bike_id, subject=records.session.id)
        draft = BlindRunDraft.from_json(kept.body) if kept else BlindRunDraft()
        return draft if draft.place == records.place else BlindRunDraft(place=records.place)

    def _guess_draft(self, session_id: str) -> GuessDraft:
        kept = self._desk.open_draft(ride_blind.GUESS_DRAFT, bike_id=self.bike_id, subject=session_id)
        return GuessDraft.from_json(kept.body) if kept else GuessDraft()

    def _set_run(self, records: BlindRecords, **values: Any) -> None:
        draft = self._run_draft(records)
        changed = replace(draft, **values)
        if changed != draft:
            self._keep_draft(ride_blind.RUN_DRAFT, changed.to_json(), records.session.id)
