"""Riding: start a session, keep runs, change one thing between them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from workbench.actions.ride import (
    RideRecords,
    SessionRecords,
    add_course,
    change_settings,
    courses,
    end_session,
    reopen_session,
    start_session,
)
from workbench.actions.ride_overrules import goal_in, overrules_in, say_after
from workbench.actions.setups import Values, steps_to_setup, take_all_steps, take_step
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.goals import GOALS
from workbench.model.ride import Overrule
from workbench.model.setting import Item, Setup, changes_between
from workbench.model.steps import Step
from workbench.viewmodels import ride_next, ride_run, ride_start
from workbench.viewmodels.base import Problem
from workbench.viewmodels.change_words import change_text
from workbench.viewmodels.ride_run import RunDraft
from workbench.viewmodels.ride_running import RunDeeds
from workbench.viewmodels.ride_session import Focus, SessionState, resolve_session
from workbench.viewmodels.ride_start import StartDraft
from workbench.viewmodels.ride_state import RideState
from workbench.viewmodels.ride_switch import switch_label, wanted_of
from workbench.viewmodels.shown import short_time
from workbench.viewmodels.typed_drafts import draft_as_meant, typed_in

__all__ = ["RideState", "RideViewModel"]


class RideViewModel(RunDeeds):
    """The ride sheet and its deeds."""

    station = "ride"
    _switch_to = ""  # the setup looked at within a session

    # Reading

    def read(self) -> RideState:
        """Read what was ridden, and propose what comes next."""
        if not self.bike_id:
            return RideState(blocked="Pick a bike first.")
        records = self._records()
        if not records.setups:
            return RideState(blocked="Riding needs a baseline to compare with. Write setup no. 1 first.")
        if not records.parts.riders:
            return RideState(blocked="Choose a rider on the garage sheet first.")
        session = records.open_session
        if session is not None and session.is_concealed:
            return RideState(blind=self.read_blind(session))
        if session is not None:
            return RideState(session=self._session_state(records, session))
        draft = self._desk.open_draft(ride_start.DRAFT, bike_id=self.bike_id)
        start = ride_start.resolve_start(
            records,
            self._desk.ask(courses()),
            draft_as_meant(StartDraft.from_json(draft.body), ride_start.QUANTITIES, self._bench.units)
            if draft
            else self._first_start(records),
            self._bench.units,
            has_draft=draft is not None,
        )
        last = next((one for one in reversed(records.sessions) if not one.session.is_blind), None)
        return RideState(
            start=self.for_plan(records, start),
            plan=self.read_plan(records),
            last_session=last.session.id if last else "",
            last_session_text=f"{last.course.name}, {short_time(last.session.started_at)}" if last else "",
        )

    def _first_start(self, records: RideRecords) -> StartDraft:
        """Begin with what the last session had."""
        if not records.sessions:
            return StartDraft()
        last = records.sessions[-1]
        return StartDraft(course_id=last.course.id, surface=last.session.surface)

    def _session_state(self, records: RideRecords, session: SessionRecords) -> SessionState:
        draft = self._desk.open_draft(ride_run.DRAFT, bike_id=self.bike_id, subject=session.session.id)
        return resolve_session(
            records,
            session,
            draft_as_meant(RunDraft.from_json(draft.body), ride_run.QUANTITIES, self._bench.units) if draft else None,
            self._bench.units,
            focus=self._focus,
            overrules=self._desk.ask(overrules_in(session.session.id)),
            goal=self._desk.ask(goal_in(session.session.id)),
            switch_to=self._switch_to,
        )

    # Starting

    def set_start(self, name: str, value: Any) -> None:
        """Keep one entry of the start as typed."""
        start = self.state.start
        if start is None or getattr(start.draft, name) == value:
            return
        draft = replace(start.draft, **{name: value}, typed_in=typed_in(self._bench.units))
        if name == "new_course" and value:
            draft = replace(draft, course_id="")
        if name == "course_id" and value:
            draft = replace(draft, new_course="")
        if name == "verified":
            checked = tuple(ride_start.VERIFY) if value else ()
            draft = replace(draft, checked=checked, verified_at=self._desk.now() if value else "")
        if name == "setup_id":
            draft = replace(draft, verified=False, checked=(), verified_at="")  # that was about another setup
        self._keep_draft(ride_start.DRAFT, draft.to_json(), None)

    def check_start(self, key: str, done: bool) -> None:
        """Tick one thing of the check before riding, or take the tick back."""
        start = self.state.start
        if start is not None:
            draft = ride_start.with_check(start.draft, key, done, self._desk.now())
            self._keep_draft(ride_start.DRAFT, draft.to_json(), None)

    def name_setup(self, name: str) -> bool:
        """Name the setup picked to ride, so that it is found again; an empty name takes it back."""
        start = self.state.start
        if start is None or start.setup_name == name.strip():
            return False
        label = f"Name {start.setup_text.partition(' “')[0].lower()} {name.strip()}"[:60]
        done = self.edit_fact(Setup, start.setup_id, "name", name, label, field="setup_name")
        if done:
            self.kept.emit(label)
        return done

    def take_step(self, key: str) -> None:
        """Log one step of the start as done."""
        for step in self._start_steps():
            if f"{step.item}/{step.subject_id}" == key:
                self.act(f"Set {step.title.lower()}"[:60], take_step(self.bike_id, step, temperature_c=self._start_c()))

    def _start_steps(self) -> tuple[Step, ...]:
        """List what is to be set before the first run."""
        records = self._records()
        planned = self.plan_steps(records)
        if planned is not None:
            return planned
        return self._desk.ask(steps_to_setup(self._setup_picked(records).id))

    def _setup_picked(self, records: RideRecords) -> Setup:
        start = self.state.start
        return ride_start.setup_to_ride(records, start.draft.setup_id if start else "")

    def _start_c(self) -> float | None:
        """Give the temperature entered for the start, as far as it can be read."""
        start = self.state.start
        try:
            return ride_start.read_temperature(start.draft, self._bench.units) if start else None
        except InputError:
            return None

    def take_all_steps(self) -> None:
        """Log every step of the start as done."""
        steps = self._start_steps()
        if steps:
            self.act(f"Set {len(steps)} settings", take_all_steps(self.bike_id, steps, temperature_c=self._start_c()))

    def start_session(self) -> bool:
        """Start the session; what is missing is said at its field."""
        start = self.state.start
        if start is None:
            return False
        wrong = ride_start.problem(start.draft, self._bench.units, has_steps=bool(start.steps))
        if wrong is not None:
            self.refused.emit(wrong)
            return False
        records, draft = self._records(), start.draft
        if (rider := records.rider) is None:
            return False
        kept = self._desk.open_draft(ride_start.DRAFT, bike_id=self.bike_id)
        units, now = self._bench.units, self._desk.now()

        def deed(gate: Any) -> Any:
            course_id = draft.course_id
            if not course_id:
                course_id = add_course(draft.new_course, has_heavy_hit=draft.has_heavy_hit)(gate).id
            session = ride_start.session_of(draft, records, course_id, rider.id, units, now)
            return start_session(session, draft_id=kept.id if kept else None)(gate)

        self._focus = Focus()
        return self.act("Start session", deed) is not None

    def reopen(self) -> None:
        """Open the last session again, for runs typed in later."""
        if self.state.last_session:
            self.act("Open the session again", reopen_session(self.state.last_session))

    # Changing

    def set_proposed(self) -> None:
        """Log the proposed position as set."""
        look = self.state.session.next if self.state.session else None
        if look is None or not look.verb:
            return
        self._change({(Item.ADJUSTER.value, look.adjuster_id): float(look.position)}, working_on=look.adjuster_id)

    def change_by_hand(self, key: str, text: str, *, both_meant: bool = False) -> bool:
        """Log a change the rider chose instead."""
        state = self.state.session
        if state is None:
            return False
        records, units = self._records(), self._bench.units
        try:
            item, value = ride_next.read_choice(records.parts, key, text, units)
        except InputError as error:
            self.refused.emit(Problem(str(error), "by_hand"))
            return False
        if said := ride_next.stands_already(records, item, value, units):
            self.refused.emit(Problem(said, "by_hand"))
            return False
        overrule = None
        if state.next.verb and item == (Item.ADJUSTER, state.next.adjuster_id) and value != state.next.position:
            overrule = Overrule("", self._session_id(), item[1], state.next.position, round(value), "")
        working_on = item[1] if item[0] == Item.ADJUSTER else None
        return self._change({item: value}, working_on=working_on, both_meant=both_meant, overrule=overrule)

    def pick_switch(self, setup_id: str) -> None:
        """Look at what another setup would change; nothing is set by it."""
        self._switch_to = setup_id
        self.refresh()

    def switch_setup(self) -> bool:
        """Log the setup picked as set; several changes at once are meant, and their runs are marked."""
        look = self.state.session.switch if self.state.session else None
        if look is None or not look.can_set:
            return False
        records = self._records()
        label = switch_label(records.setup(look.setup_id))
        self._switch_to = ""
        return self._change(wanted_of(records, look.setup_id), working_on=None, both_meant=True, label=label)

    def put_aside(self) -> None:
        """Work on another adjuster instead of the proposed one."""
        look = self.state.session.next if self.state.session else None
        if look is not None and look.adjuster_id:
            self._focus = Focus(None, self._focus.put_aside | {look.adjuster_id})
            self.refresh()

    def say_after(self, goal: str) -> None:
        """Note what the rider is after, once they lead; the adjusters that bear on it are offered."""
        self.act(f"After {GOALS.get(goal, goal).lower()}"[:60], say_after(self._session_id(), goal))

    def _change(
        self,
        wanted: Values,
        *,
        working_on: str | None,
        both_meant: bool = False,
        overrule: Overrule | None = None,
        label: str = "",
    ) -> bool:
        records = self._records()
        session = records.open_session
        if session is None:
            return False
        before = {key: records.parts.value(*key) for key in wanted}
        changes = changes_between(before, wanted)
        words = label or "; ".join(change_text(records.parts, one, self._bench.units) for one in changes)
        deed = change_settings(
            self.bike_id,
            session.session.rider_id,
            wanted,
            session_id=session.session.id,
            say_confounded=both_meant,
            overrule=overrule,
        )
        try:
            self._desk.do(words[:60] or "Set as it stands", deed, bike_id=self.bike_id, station=self.station)
        except WorkbenchError as error:
            self.refuse(error, "by_hand")
            return False
        if working_on is not None:
            self._focus = replace(self._focus, working_on=working_on)
        self.kept.emit(words[:60] or "Set as it stands")
        self.refresh()
        return True

    def end_session(self) -> None:
        """End the session; it can be opened again."""
        self.act("End session", end_session(self._session_id()))
