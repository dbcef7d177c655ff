"""The clicks that go back to their places after measuring."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.step_lines import StepLine


class PutBackView(QWidget):
    """A list of steps; hidden while there is nothing to put back."""

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__()
        self.setObjectName("put_back")
        self._view_model = view_model
        self.steps = StepList(name="put_back_steps")
        self.steps.step_ticked.connect(self._ticked)
        self.note = CareNote(name="put_back_note")
        self.all = Button("All of these are back", "plain", name="put_back_all")
        self.all.clicked.connect(view_model.take_all_steps)
        self.setFocusProxy(self.steps)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Words("Put clicks back", "strong"))
        rows.addWidget(self.note)
        rows.addWidget(self.steps)
        rows.addWidget(self.all, 0, Qt.AlignmentFlag.AlignLeft)

    def show_steps(self, lines: tuple[StepLine, ...], note: str) -> None:
        """Show what is left to put back."""
        self.steps.set_steps([Step(line.key, line.text, remark=line.remark) for line in lines])
        self.note.set_text(note)
        self.all.setVisible(len(lines) > 1)
        self.setVisible(bool(lines))

    def _ticked(self, key: str, _done: bool) -> None:
        self._view_model.take_step(key)
