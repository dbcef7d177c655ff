"""The adjusters' sheet: counting, springs and tyres as found, the adjusters' own facts, and the way back."""

from __future__ import annotations

from typing import Any

from workbench.actions.adjusters import count_earlier, depend_on, log_found, say_push, wait_for
from workbench.actions.garage import add_adjuster, remove_adjuster
from workbench.actions.setups import take_all_steps, take_step
from workbench.model.adjuster import Adjuster
from workbench.model.counting import check_counting_fact
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.facts import field_of
from workbench.viewmodels.adjusters_count import lower_title
from workbench.viewmodels.adjusters_counting import CountingViewModel
from workbench.viewmodels.adjusters_edit import DEPENDS_HOW, DEPENDS_ON, DEPENDS_POSITION, PUSH
from workbench.viewmodels.adjusters_list import ItemRow
from workbench.viewmodels.adjusters_sheet import AdjustersState
from workbench.viewmodels.step_lines import step_key

__all__ = ["AdjustersState", "AdjustersViewModel"]


class AdjustersViewModel(CountingViewModel):
    """The adjusters' sheet and its deeds."""

    station = "adjusters"
    watched = frozenset(
        {"bike", "unit", "generation", "adjuster", "range_count", "on_bike", "skip", "tyre", "setup", "setup_value"}
    )

    def set_item(self, item: str, subject_id: str, value: float | None) -> bool:
        """Log a spring or tyre as found; leaving the field unchanged is no deed."""
        row = self._item(item, subject_id)
        if row is None:
            return False
        self.keep_text(row.key, "")
        if row.value == value:
            return True
        try:
            label = self._label(f"{row.title} {self._bench.units.text(value, row.quantity)} as found")
            deed = log_found(self.bike_id, item, subject_id, value)
            self._desk.do(label, deed, bike_id=self.bike_id, station=self.station)
        except WorkbenchError as error:
            self.refuse(error, row.key)
            return False
        return True

    def keep_text(self, key: str, text: str) -> None:
        """Keep text that could not be read, to show it again."""
        self._drafts.keep_text(self.bike_id, key, text)

    def open_facts(self, adjuster_id: str) -> None:
        """Open the facts of an adjuster in the list; the open one again closes them."""
        self._choose(editing="" if adjuster_id == self._choices.editing else adjuster_id)

    def edit(self, adjuster_id: str, name: str, value: Any) -> bool:
        """Change one fact of an adjuster."""
        records = self._records()
        adjuster = records.parts.adjuster(adjuster_id) if records else None
        if records is None or adjuster is None:
            return False
        if name == DEPENDS_ON:
            return self._edit_depends_on(adjuster, value or None)
        if name in (DEPENDS_HOW, DEPENDS_POSITION):
            return self._edit_depends_how(adjuster, name, str(value or ""))
        if name == PUSH:
            return self._edit_push(adjuster, str(value or "") or None)
        if getattr(adjuster, name) == value:
            return True
        is_counted = any(count.adjuster_id == adjuster_id for count in records.parts.ranges)
        try:
            check_counting_fact(adjuster, name, str(value), is_counted=is_counted)
        except InputError as error:
            self.refuse(error, name)
            return False
        label = f"{self._title(adjuster_id)}: {field_of(Adjuster, name).label.lower()}"
        return self.edit_fact(Adjuster, adjuster_id, name, value, self._label(label))

    def set_turn(self, closed_turn: str) -> None:
        """Say which way closes the adjuster being counted."""
        if (count := self.state.count) is not None:
            self.edit(count.adjuster_id, "closed_turn", closed_turn)

    def add(self, unit_id: str) -> None:
        """Add an adjuster to a unit and open its facts."""
        added = self.act("Add adjuster", add_adjuster(unit_id))
        if added is not None:
            self._choose(editing=added.id)

    def remove(self, adjuster_id: str) -> None:
        """Take an adjuster off the list; what was counted stays on record."""
        self._done(f"Remove {self._title(adjuster_id)}", remove_adjuster(adjuster_id))

    def move_up(self, adjuster_id: str) -> None:
        """Count an adjuster one place earlier."""
        self._done(f"Count {self._title(adjuster_id)} earlier", count_earlier(adjuster_id))

    def take_step(self, key: str) -> bool:
        """Log one step of the put-back list as done."""
        records = self._records()
        step = next((one for one in records.put_back if step_key(one) == key), None) if records else None
        if step is None:
            return False
        return self._done(f"Put back {self._title(step.subject_id)}", take_step(self.bike_id, step))

    def take_all_steps(self) -> bool:
        """Log the whole put-back list as done."""
        records = self._records()
        if records is None or not records.put_back:
            return False
        return self._done("Put all clicks back", take_all_steps(self.bike_id, records.put_back))

    def _edit_depends_on(self, adjuster: Adjuster, other_id: str | None) -> bool:
        if adjuster.depends_on == other_id:
            return True
        return self._done(f"{self._title(adjuster.id)}: what stands open meanwhile", wait_for(adjuster.id, other_id))

    def _edit_depends_how(self, adjuster: Adjuster, name: str, value: str) -> bool:
        how, position = adjuster.depends_how or "gates", adjuster.depends_position
        if name == DEPENDS_HOW:
            how = value
        else:
            position = int(value) if value else None
        if (how, position) == (adjuster.depends_how or "gates", adjuster.depends_position):
            return True
        return self._done(f"{self._title(adjuster.id)}: what the other one does", depend_on(adjuster.id, how, position))

    def _edit_push(self, adjuster: Adjuster, felt: str | None) -> bool:
        records = self._records()
        count = records.parts.range_of(adjuster.id) if records else None
        if count is None or count.push_felt == felt:
            return True
        return self._done(f"Push test, {self._title(adjuster.id)}", say_push(count.id, felt))

    def _item(self, item: str, subject_id: str) -> ItemRow | None:
        rows = (row for group in self.state.groups for row in group.items)
        return next((row for row in rows if (row.item, row.subject_id) == (item, subject_id)), None)

    def _title(self, adjuster_id: str) -> str:
        records = self._records()
        adjuster = records.parts.adjuster(adjuster_id) if records else None
        return lower_title(records.parts, adjuster) if records and adjuster else "adjuster"
