"""One stage of a count: what to do, the counting tool, and what else to know."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.model.adjuster import PUSH_TESTS
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.counting_tool import CountingTool
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_count import CountState


class CountPanel(QWidget):
    """Draws one stage; ``done`` when Enter is pressed in the counting tool."""

    done = Signal()

    def __init__(self, view_model: AdjustersViewModel, *, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self._name = name
        self._view_model = view_model
        self._kind: tuple[object, ...] = ()
        self.tool: CountingTool | None = None
        self.last_kept = Words("", "note_strong", name=f"{name}_last_kept")
        self.instruction = Words("", "text", name=f"{name}_instruction")
        self.as_found = Words("", "strong", name=f"{name}_as_found")
        self.care = CareNote(name=f"{name}_care")
        self.notes = Words("", "note", name=f"{name}_notes")
        self.push = ChoiceField(PUSH_TESTS, label="Push test, closed against open", name=f"{name}_push")
        self.push.value_committed.connect(self._push_said)
        self._push_label = Words("Push test, closed against open", "mute")
        self._holder = QVBoxLayout()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for part in (self.last_kept, self.instruction, self.care, self.as_found):
            rows.addWidget(part)
        rows.addLayout(self._holder)
        rows.addWidget(self.notes)
        rows.addWidget(self._push_label)
        rows.addWidget(self.push)
        rows.addStretch(1)

    def show_count(self, state: CountState) -> None:
        """Show the stage."""
        self.last_kept.set_words(state.last_kept)
        self.instruction.set_words(state.instruction)
        self.care.set_text(state.care)
        self.as_found.set_words(f"As found: {state.as_found_text}" if state.as_found_text else "")
        self.notes.set_words("\n".join(state.notes))
        self.push.setVisible(state.asks_push)
        self._push_label.setVisible(state.asks_push)
        self.push.set_value(state.push)
        kind = (state.adjuster_id, state.counting, state.picks, state.counts)
        if kind != self._kind:
            self._kind = kind
            self._replace_tool(state)
        if self.tool is not None and self.tool.count() != state.count:
            self.tool.set_count(state.count)
        if self.tool is not None:
            self.tool.foot_key = state.foot_key

    def _push_said(self, felt: object) -> None:
        self._view_model.set_push(str(felt))

    def _replace_tool(self, state: CountState) -> None:
        if self.tool is not None:
            self.tool.hide()
            self.tool.deleteLater()
            self.tool = None
        if not state.counts:
            return
        self.tool = CountingTool(state.counting, state.picks, label=state.title, name=f"{self._name}_tool")
        self.tool.finish.hide()  # the sheet's own verb says what is kept
        self.tool.more.kind = "key"  # so that the accent stays with the verb
        self.tool.count_changed.connect(self._view_model.set_count)
        self.tool.done.connect(self.done)
        self._holder.addWidget(self.tool)
        self.tool.show()  # now, not when events come round: the focus goes to it at once
