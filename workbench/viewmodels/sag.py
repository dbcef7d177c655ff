"""Sag: both ends at a glance, and the guided measuring of one."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from workbench.actions.sag import discard_sag, keep_sag, note_as_found, open_fully
from workbench.actions.setups import take_step
from workbench.model.adjuster import adjuster_title
from workbench.model.errors import InputError
from workbench.model.sag_rules import maker_band, practice_band
from workbench.viewmodels.base import Problem
from workbench.viewmodels.sag_at_hand import SagAtHand
from workbench.viewmodels.sag_draft import (
    STAGE_WORDS,
    TYPED,
    Stage,
    next_stage,
    settle,
    stage_before,
    stage_to_go_on,
)
from workbench.viewmodels.sag_entry import aimed_at, next_round, read_place, with_entry, with_reading, without_reading
from workbench.viewmodels.sag_guide import adjusters_shown
from workbench.viewmodels.sag_open import advice_of, begin, steps_of, subject_of
from workbench.viewmodels.sag_preload import LENGTH, TURNS, turns_problem, with_turns
from workbench.viewmodels.sag_problems import problem
from workbench.viewmodels.sag_springs import SPRINGS
from workbench.viewmodels.sag_words import keep_label

OTHER_END = {"front": "rear", "rear": "front"}


class SagViewModel(SagAtHand):
    """The sag sheet and its deeds."""

    # Moving about

    def start(self, end: str) -> None:
        """Take up one end: go on with its entry, or begin one."""
        found = self._unit(end)
        if found is None:
            return
        records, unit = found
        if self._entries.draft(unit) is None:
            self._entries.keep(unit, begin(records, unit))
        self._entries.open_end(self.bike_id, end)

    def show_put_back(self, end: str) -> None:
        """Show the put-back list of one end."""
        found = self._unit(end)
        if found is None:
            return
        draft = self._entries.draft(found[1])
        if draft is not None:
            self._entries.keep(found[1], replace(draft, stage=int(Stage.PUT_BACK)))
        self._entries.open_end(self.bike_id, end)

    def both_ends(self) -> None:
        """Go back to both ends; the entries stay."""
        self._entries.open_end(self.bike_id, "")

    def show_spring(self, end: str) -> None:
        """Say which end the spring sheet opens at."""
        self._desk.set_setting(f"spring/end/{self.bike_id}", end)

    def switch_end(self) -> None:
        """Take up the other end; this one's entry stays."""
        opened = self._now_open(needs_draft=False)
        if opened is not None:
            self.start(OTHER_END[opened.unit.end])

    def next(self) -> bool:
        """Go to the next stage, or say what keeps this one from being done."""
        opened = self._now_open()
        if opened is None:
            return False
        draft, wrong = settle(opened.draft, opened.stage, self._bench.units)
        typed = draft.text("reading")
        if wrong is None and opened.stage == Stage.MEASURE and typed is not None and typed.text.strip():
            draft, wrong = with_reading(draft, opened.unit, self._bench.units, self._desk.now())
        wrong = (
            wrong
            or turns_problem(draft, opened.stage, self._bench.units)
            or problem(draft, opened.stage, subject_of(opened), self._bench.units)
        )
        if wrong is not None:
            self._change(opened, draft)
            self.refused.emit(wrong)
            return False
        draft = self._attached_again(opened, draft)
        self._change(opened, replace(draft, stage=int(next_stage(draft, opened.stage))))
        return True

    def back(self) -> None:
        """Go to the stage before, or to both ends."""
        opened = self._now_open()
        if opened is None or opened.stage == Stage.PREPARE:
            self.both_ends()
        else:
            self.go_to_stage(stage_before(opened.draft, opened.stage))

    def go_to_stage(self, stage: int) -> None:
        """Open any stage; nothing entered is lost."""
        opened = self._now_open()
        if opened is not None:
            draft, _ = settle(opened.draft, opened.stage, self._bench.units)
            self._change(opened, replace(draft, stage=int(Stage(stage))))

    # What the two big buttons do

    def stage_words(self) -> tuple[str, ...]:
        """Name the stages."""
        return tuple(STAGE_WORDS[stage] for stage in Stage)

    def press_verb(self) -> None:
        """Do what the verb of the stage says."""
        opened = self._now_open(needs_draft=False)
        guide = self.state.guide
        if opened is None or guide is None:
            return
        if opened.stage == Stage.ADVICE:
            is_more = guide.advice is not None and guide.advice.chosen is not None
            self.another_round() if is_more else self.keep()
        elif opened.stage != Stage.PUT_BACK:
            self.next()
        elif opened.draft_id is not None:
            self.go_to_stage(stage_to_go_on(opened.draft))
        elif any(end.is_due and not end.blocked and end.end != guide.end for end in self.state.ends):
            self.switch_end()
        else:
            self.both_ends()

    def press_second(self) -> None:
        """Do what the second button of the stage says."""
        opened = self._now_open(needs_draft=False)
        guide = self.state.guide
        if opened is None or guide is None:
            return
        if opened.stage != Stage.ADVICE:
            self.both_ends()
        elif guide.advice is not None and guide.advice.chosen is not None:
            self.keep()
        else:
            self.another_round()

    # Entering

    def set_text(self, name: str, text: str) -> None:
        """Keep what stands typed in a field, letter by letter."""
        opened = self._now_open()
        if opened is not None and name in TYPED:
            unit = self._bench.units.unit(TYPED[name][0])
            draft = opened.draft.with_text(TURNS, None) if name == LENGTH else opened.draft
            self._change(opened, draft.with_text(name, text or None, unit))

    def set_field(self, name: str, value: Any) -> None:
        """Take one entry."""
        opened = self._now_open()
        if opened is not None:
            self._change(opened, with_entry(opened.draft, name, value))

    def set_turns(self, text: str) -> None:
        """Take preload typed in turns of the collar as the length it is; other text stays as typed."""
        opened = self._now_open()
        if opened is not None:
            self._change(opened, with_turns(opened.draft, text, opened.unit, self._bench.units))

    def set_springs(self, _name: str, text: str) -> None:
        """Keep the list of springs at hand as typed."""
        opened = self._now_open()
        if opened is not None:
            unit = self._bench.units.unit("spring_rate")
            self._change(opened, opened.draft.with_text(SPRINGS, text or None, unit))

    def aim(self, origin: str) -> None:
        """Take the maker's band or the usual one as the target."""
        opened = self._now_open()
        if opened is None:
            return
        bike, unit = opened.records.parts.bike, opened.unit
        band = maker_band(unit) if origin == "maker" else practice_band(bike, unit)
        if band is None:
            self._say("The maker's sag is not stated yet. Enter it with the unit in the garage.")
        else:
            self._change(opened, aimed_at(opened.draft, band))

    def add_reading(self, text: str) -> bool:
        """Take one reading, or say why it cannot be one."""
        opened = self._now_open()
        if opened is None:
            return False
        units = self._bench.units
        typed = opened.draft.with_text("reading", text or None, units.unit("length"))
        draft, wrong = with_reading(typed, opened.unit, units, self._desk.now())
        self._change(opened, draft)
        if wrong is not None:
            self.refused.emit(wrong)
        return wrong is None

    def enter_reading(self, text: str) -> bool:
        """Take one reading; Enter in an empty field goes on once there are readings."""
        opened = self._now_open()
        if opened is not None and not text.strip() and opened.draft.readings_mm:
            self.next()
            return False
        return self.add_reading(text)

    def remove_reading(self, index: int) -> None:
        """Take one reading of this round away."""
        opened = self._now_open()
        if opened is not None:
            self._change(opened, without_reading(opened.draft, index))

    def another_round(self, option: int | None = None) -> bool:
        """Set what was advised and measure again; the readings so far stay as a round."""
        opened = self._now_open()
        advice = advice_of(opened, self._bench.units) if opened else None
        if opened is None or advice is None:
            return False
        chosen = option if option is not None else advice.chosen
        if chosen is None or not 0 <= chosen < len(advice.options):
            self._change(opened, next_round(opened.draft, None))
            return True
        picked = advice.options[chosen]
        if picked.is_refused:
            self._say(f"{picked.title}: {picked.detail}.", "options")
            return False
        if advice.large_move and not opened.draft.move_confirmed:
            self._say("A large move at once: tick that you will go there in steps.", "move_confirmed")
            return False
        self._change(opened, next_round(opened.draft, picked))
        return True

    # Deeds

    def note_place(self, adjuster_id: str, text: str) -> bool:
        """Record where an adjuster stood; empty text says that nobody knows."""
        opened = self._now_open()
        adjuster = opened.records.parts.adjuster(adjuster_id) if opened else None
        if adjuster is None:
            return False
        try:
            position = read_place(adjuster, text, self._bench.units)
        except InputError as error:
            self.refuse(error, f"place_{adjuster_id}")
            return False
        label = f"Note {adjuster_title(adjuster).lower()[:36]} as found"
        self.act(label, note_as_found(self.bike_id, adjuster_id, position))
        return True

    def open_adjusters(self) -> None:
        """Say that all adjusters on record of this unit now stand fully open."""
        opened = self._now_open()
        if opened is None:
            return
        waiting = tuple(one.adjuster_id for one in adjusters_shown(opened.records, opened.unit) if one.can_open)
        if waiting:
            self.act(f"{opened.unit.end.capitalize()} adjusters fully open", open_fully(self.bike_id, waiting))

    def keep(self) -> bool:
        """Keep the measuring: all rounds, the spring as it stands, the target."""
        opened = self._now_open()
        if opened is None or opened.records.rider is None:
            return False
        wrong = problem(opened.draft, Stage.ADVICE, subject_of(opened), self._bench.units)
        band = opened.draft.band()
        if wrong is not None or band is None:
            self.refused.emit(wrong or Problem("The target band is missing.", "target_low"))
            return False
        label = keep_label(opened.draft, opened.unit, self._bench.units)
        rounds, rider = opened.draft.all_rounds(), opened.records.rider
        deed = keep_sag(self.bike_id, rider.id, opened.unit.id, rounds, band, draft_id=opened.draft_id)
        return self.act(label, deed) is not None

    def discard(self) -> None:
        """Put this entry aside; what was pumped on the way stays on record, and so does what stands open."""
        opened = self._now_open()
        if opened is None or opened.draft_id is None:
            return
        now = opened.draft.this_round()
        is_set = now.pressure_kpa is not None or now.rate_n_per_mm is not None
        self.both_ends()
        deed = discard_sag(opened.draft_id, self.bike_id, opened.unit.id, now if is_set else None)
        self.act(f"Discard {opened.unit.end} sag entry", deed)

    def take_step(self, index: int) -> None:
        """Tick one adjuster as put back."""
        opened = self._now_open(needs_draft=False)
        if opened is None or opened.records.rider is None:
            return
        steps = steps_of(opened.records, opened.unit, self._entries.put_back())
        if 0 <= index < len(steps):
            self.act(f"Put back {steps[index].title.lower()}"[:60], take_step(self.bike_id, steps[index]))
