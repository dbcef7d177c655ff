"""The change picked: twenty dots to count, what lowers certainty, and what the other answers say."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_24
from workbench.ui.plots.dots import DotsPlot
from workbench.viewmodels.review_data import Effects, Picked

PICK = (
    "Pick a change, in the table or by one of its runs, to see its dots, its other answers and what lowers certainty."
)


class CloserView(QWidget):
    """Hidden but for one line while no change is picked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hint = Words(PICK, "note", name="review_hint")
        self._title = Words("", "strong", name="closer_title")
        self._verdict = Words("", "text", name="closer_verdict")
        self.dots = DotsPlot()
        self._dots_said = Words("", "strong", name="closer_dots")
        self._next = Words("", "note", name="closer_next")
        self._cautions = Words("", "note", name="review_cautions")
        self._lines = Words("", "text", name="closer_joint")
        self._joint = Words("", "strong", name="closer_joint_said")
        self._whole = QWidget()
        left, right = QVBoxLayout(), QVBoxLayout()
        for column, widgets in (
            (left, (Words("Each dot is one chance in 20", "note"), self.dots, self._dots_said, self._next)),
            (right, (Words("Answer by answer", "note"), self._lines, self._joint, self._cautions)),
        ):
            column.setSpacing(SPACE_4)
            for widget in widgets:
                column.addWidget(widget)
            column.addStretch(1)
        both = QHBoxLayout()
        both.setSpacing(SPACE_24)
        both.addLayout(left, 1)
        both.addLayout(right, 1)
        whole = QVBoxLayout(self._whole)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(SPACE_8)
        for head in (self._title, self._verdict):
            whole.addWidget(head)
        whole.addLayout(both)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self._hint)
        rows.addWidget(self._whole)

    def show_picked(self, picked: Picked, effects: Effects) -> None:
        """Show the change picked."""
        self._hint.setVisible(not picked.title)
        self._whole.setVisible(bool(picked.title))
        if not picked.title:
            return
        self._title.setText(picked.title)
        self._verdict.setText(picked.verdict)
        self.dots.show_dots(picked.dots, effects.felt, effects.axis, f"{picked.verdict} {picked.dots_said}")
        self._dots_said.setText(picked.dots_said)
        self._next.setText(picked.next_said)
        self._cautions.set_words(f"What lowers certainty here: {picked.cautions}." if picked.cautions else "")
        self._lines.set_words("\n".join(picked.joint))
        self._joint.setText(picked.joint_said)
