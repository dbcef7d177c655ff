"""Planning a blind test on the ride's sheet: the deeds up to the moment its order is drawn."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.actions.blind import begin_blind
from workbench.actions.desk import Desk
from workbench.actions.ride import RideRecords, add_course, ride_records
from workbench.model.errors import WorkbenchError
from workbench.model.steps import Step
from workbench.viewmodels import ride_blind_plan, ride_start
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.ride_blind_plan import PlanDraft, PlanState
from workbench.viewmodels.ride_start import StartDraft, StartState
from workbench.viewmodels.ride_state import RideState
from workbench.viewmodels.step_lines import step_lines
from workbench.viewmodels.typed_drafts import draft_as_meant, typed_in

SEED_BITS = 53  # as many as every reader of JSON keeps
NEEDS_VERIFYING = (
    "A blind test compares runs that differ in one thing only: set the steps that are left, and verify the rest."
)


def real_seed() -> int:
    """Give a seed nobody can foresee."""
    return secrets.randbits(SEED_BITS)


class BlindPlanning(ViewModel[RideState]):
    """What the ride's sheet can do about a blind test before it begins."""

    def __init__(self, desk: Desk, bench: Bench, seeds: Callable[[], int] = real_seed) -> None:
        self.seeds = seeds
        super().__init__(desk, bench)

    def read_plan(self, records: RideRecords) -> PlanState | None:
        """Give the plan being made, if one is."""
        draft = self._plan_draft()
        return ride_blind_plan.resolve_plan(records, draft, self._bench.units) if draft else None

    def for_plan(self, records: RideRecords, start: StartState) -> StartState:
        """Give the start of a session as it is when a blind test is planned: all of A but what is under test."""
        draft, steps = self._plan_draft(), self.plan_steps(records)
        if draft is None or steps is None:
            return start
        number = ride_blind_plan.setup_a(records, draft).number
        text = f"Setup no. {number} but for what is tested: the helper sets that before every run"
        return replace(start, setup_text=text, steps=step_lines(steps, self._bench.units))

    def plan_steps(self, records: RideRecords) -> tuple[Step, ...] | None:
        """List what is to be set before a planned blind test; None if none is planned."""
        draft = self._plan_draft()
        return None if draft is None else ride_blind_plan.steps_before(records, draft, self._bench.units)

    def _plan_draft(self) -> PlanDraft | None:
        kept = self._desk.open_draft(ride_blind_plan.DRAFT, bike_id=self.bike_id)
        if kept is None:
            return None
        draft = PlanDraft.from_json(kept.body)
        return draft_as_meant(draft, ride_blind_plan.quantities_of(draft), self._bench.units)

    def plan_blind(self) -> None:
        """Begin to plan a blind test."""
        self._keep_draft(ride_blind_plan.DRAFT, PlanDraft().to_json())

    def set_plan(self, name: str, value: Any) -> None:
        """Keep one entry of the plan as typed."""
        draft = self._plan_draft()
        if draft is None or getattr(draft, name) == value:
            return
        draft = replace(draft, **{name: value})
        draft = replace(draft, typed_in=typed_in(self._bench.units))
        if name == "item":
            draft = replace(draft, value="")
        if name == "a_id":
            draft = replace(draft, b_id=ride_blind_plan.CHANGE)
        self._keep_draft(ride_blind_plan.DRAFT, draft.to_json())

    def drop_plan(self) -> None:
        """Ride an open session instead."""
        kept = self._desk.open_draft(ride_blind_plan.DRAFT, bike_id=self.bike_id)
        if kept is not None:
            self.discard_draft("Plan of a blind test discarded", kept.id)

    def begin_blind(self) -> bool:
        """Draw the order and begin; what is missing is said at its field."""
        start, records, draft = self.state.start, self._records(), self._plan_draft()
        if start is None or draft is None:
            return False
        wrong = ride_blind_plan.problem(draft, records, self._bench.units) or self._start_problem(start)
        if wrong is not None:
            self.refused.emit(wrong)
            return False
        return self.act("Begin the blind test", self._beginning(records, start.draft, draft)) is not None

    def _start_problem(self, start: StartState) -> Problem | None:
        wrong = ride_start.problem(start.draft, self._bench.units, has_steps=bool(start.steps))
        is_unverified = bool(start.steps or start.draft.not_verified or not start.draft.verified)
        if wrong is None or wrong.field in ("verified", "not_verified"):
            return Problem(NEEDS_VERIFYING, "verified") if is_unverified else wrong
        return wrong

    def _beginning(self, records: RideRecords, start: StartDraft, plan: PlanDraft) -> Callable[[Any], Any]:
        units, now, seed = self._bench.units, self._desk.now(), self.seeds()
        wanted = ride_blind_plan.wanted(records, plan, units)
        rider_id = records.rider.id if records.rider else ""
        kinds = (ride_blind_plan.DRAFT, ride_start.DRAFT)
        kept = [self._desk.open_draft(kind, bike_id=self.bike_id) for kind in kinds]

        def deed(gate: Any) -> Any:
            course_id = start.course_id
            if not course_id:
                course_id = add_course(start.new_course, has_heavy_hit=start.has_heavy_hit)(gate).id
            return begin_blind(
                ride_start.session_of(start, records, course_id, rider_id, units, now),
                ride_blind_plan.setup_a(records, plan).id,
                pairs=ride_blind_plan.read_pairs(plan),
                seed=seed,
                b_id="" if wanted else plan.b_id,
                wanted=wanted,
                draft_ids=tuple(one.id for one in kept if one is not None),
            )(gate)

        return deed

    def _records(self) -> RideRecords:
        return self._desk.ask(ride_records(self.bike_id, self._bench.rider_id))

    def _keep_draft(self, kind: str, body: str, subject: str | None = None) -> None:
        try:
            self._desk.keep_draft(kind, body, bike_id=self.bike_id, subject=subject)
        except WorkbenchError as error:
            self.refuse(error)
