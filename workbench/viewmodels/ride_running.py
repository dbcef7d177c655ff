"""The deeds about runs: what is entered of one, keeping it, and putting kept ones right afterwards."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.actions.desk import Desk
from workbench.actions.ride import keep_run, set_run_aside
from workbench.actions.ride_marks import mark_runs
from workbench.viewmodels import ride_laps, ride_marks, ride_noticed, ride_run, ride_scores
from workbench.viewmodels.base import Problem
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.ride_blind_deeds import BlindDeeds
from workbench.viewmodels.ride_blind_planning import real_seed
from workbench.viewmodels.ride_run import RunDraft
from workbench.viewmodels.ride_session import Focus, drifts_of, setup_ridden, tested_adjuster
from workbench.viewmodels.typed_drafts import typed_in


class RunDeeds(BlindDeeds):
    """What the ride's sheet can do about runs."""

    def __init__(self, desk: Desk, bench: Bench, seeds: Callable[[], int] = real_seed) -> None:
        self._focus = Focus()
        super().__init__(desk, bench, seeds)

    def set_run(self, name: str, value: Any) -> None:
        """Keep one entry of the run as typed."""
        session = self.state.session
        if session is None or getattr(session.entry.draft, name) == value:
            return
        draft = replace(session.entry.draft, **{name: value}, typed_in=typed_in(self._bench.units))
        if not draft.ridden_at:
            draft = self._begun(draft)
        self._keep_draft(ride_run.DRAFT, draft.to_json(), self._session_id())

    def press_watch(self) -> None:
        """Start the stopwatch, or stop it and take its time. When it was started is kept, so it runs on by itself."""
        session = self.state.session
        if session is None:
            return
        begun = session.entry.draft.watch
        if begun:
            self.set_run("lap", ride_laps.watch_text(begun, self._desk.now()))
        self.set_run("watch", "" if begun else self._desk.now())

    def watch_time(self) -> str:
        """Say how long the stopwatch has been running; empty when it is not."""
        session = self.state.session
        return ride_laps.watch_text(session.entry.draft.watch, self._desk.now()) if session is not None else ""

    def rate(self, key: str, score: int | None) -> None:
        """Keep one attribute of the run, or take it back."""
        session = self.state.session
        if session is not None:
            self.set_run("scores", ride_scores.with_score(session.entry.draft.scores, key, score))

    def notice(self, key: str, end: str | None) -> None:
        """Note what was noticed at an end of the bike; None stands for the usual end, an empty one takes it back."""
        session = self.state.session
        if session is not None:
            parts = self._records().parts
            there = ride_noticed.first_end(key, parts) if end is None else end
            self.set_run("noticed", ride_noticed.with_noticed(session.entry.draft.noticed, parts, key, there))

    def work_on(self, adjuster_id: str) -> None:
        """Work on an adjuster the rider picked: the plan's next step is about it."""
        self._focus = Focus(adjuster_id, self._focus.put_aside - {adjuster_id})
        self.refresh()

    def _begun(self, draft: RunDraft) -> RunDraft:
        """Note when the run was ridden, on what, and what was under test: that holds whatever is set next."""
        records = self._records()
        tested = tested_adjuster(records, self._focus, None)
        return replace(
            draft,
            ridden_at=self._desk.now(),
            setup_id=records.current.id if records.current else "",
            tested_id=tested.id if tested else "",
        )

    def keep_run(self) -> bool:
        """Keep the run."""
        state = self.state.session
        if state is None:
            return False
        records = self._records()
        open_session = records.open_session
        draft, units = state.entry.draft, self._bench.units
        ridden = setup_ridden(records, draft)
        if not ridden or open_session is None:
            self.refused.emit(Problem("The bike stands as no setup says. Choose what was changed first.", ""))
            return False
        response = open_session.session.response
        as_meant = replace(draft, is_warmup=state.entry.is_warmup)
        wrong = ride_run.problem(as_meant, records.parts, units, response=response)
        if wrong is not None:
            self.refused.emit(wrong)
            return False
        kept = self._desk.open_draft(ride_run.DRAFT, bike_id=self.bike_id, subject=open_session.session.id)
        run = ride_run.run_of(
            draft,
            state.entry,
            records.parts,
            units,
            session_id=open_session.session.id,
            setup_id=ridden,
            tested=tested_adjuster(records, self._focus, draft),
            unverified=open_session.session.verified_at is None,
            drifts=drifts_of(records, open_session, draft, units),
        )
        label = f"Keep run {state.entry.number}" + (f", liking {run.liking}" if run.liking is not None else "")
        ratings = ride_scores.ratings_of(draft.scores)
        deed = keep_run(run, ratings=ratings, symptoms=draft.noticed, draft_id=kept.id if kept else None)
        return self.act(label, deed) is not None

    def discard_run(self) -> None:
        """Put the entries of the run aside."""
        kept = self._desk.open_draft(ride_run.DRAFT, bike_id=self.bike_id, subject=self._session_id())
        if kept is not None:
            self.discard_draft("Run entry discarded", kept.id)

    def set_aside(self, run_id: str, reason: str) -> None:
        """Take a run out of the count, or with no reason back in."""
        self.act("Set run aside" if reason else "Count the run again", set_run_aside(run_id, reason))

    def mark_runs(self, first: str, last: str, what: str) -> bool:
        """Put several runs right in one deed: set aside for a reason, ridden with a lever elsewhere, or counted."""
        session = self.state.session
        if session is None:
            return False
        mark = ride_marks.read_mark(session.runs, first, last, what)
        if isinstance(mark, Problem):
            self.refused.emit(mark)
            return False
        deed = mark_runs(mark.run_ids, reason=mark.reason, lever=mark.lever)
        return self.act(mark.label, deed) is not None

    def _session_id(self) -> str:
        session = self._records().open_session
        return session.session.id if session else ""
