"""Put several runs right at once: from, to, and what was found out about them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.ride.score_grid import bring_in_sight
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_session import SessionState


class RunMarks(QWidget):
    """Folded away until it is needed; one deed for all the runs named."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._fold = Button("Several runs at once ...", "link", name="run_marks")
        self._fold.clicked.connect(self._unfold)
        self._first = _list("mark_first", "From run")
        self._last = _list("mark_last", "To run")
        self._what = _list("mark_what", "What was found out")
        self._said = Words("", "problem", name="mark_said")
        self._take = Button("Mark these runs", "plain", name="mark_take")
        self._take.clicked.connect(self._mark)
        self._part = QWidget()
        runs = QHBoxLayout()
        runs.setSpacing(SPACE_8)
        for widget in (Words("Runs", "mute"), self._first, Words("to", "mute"), self._last):
            runs.addWidget(widget)
        runs.addStretch(1)
        what = QHBoxLayout()
        what.setSpacing(SPACE_16)
        what.addWidget(self._what, 1)
        what.addWidget(self._take)
        both = QVBoxLayout(self._part)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(SPACE_8)
        both.addLayout(runs)
        both.addLayout(what)
        self._part.hide()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._fold, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._part)
        rows.addWidget(self._said)

    def show_state(self, state: SessionState) -> None:
        """Offer the runs there are; the newest ones stand picked."""
        self.setVisible(bool(state.runs))
        numbers = [row.number for row in reversed(state.runs)]
        for box in (self._first, self._last):
            if [box.itemText(at) for at in range(box.count())] != numbers:
                box.clear()
                for number in numbers:
                    box.addItem(number, number)
                box.setCurrentIndex(len(numbers) - 1)
        if [self._what.itemData(at) for at in range(self._what.count())] != [key for key, _ in state.marks]:
            self._what.clear()
            for key, words in state.marks:
                self._what.addItem(words, key)

    def show_problem(self, problem: Problem) -> bool:
        """Say what cannot be meant; false when it is about something else."""
        if problem.field not in ("mark_first", "mark_last"):
            return False
        self._said.set_words(problem.text)
        return True

    def _unfold(self) -> None:
        self._part.setVisible(self._part.isHidden())
        if not self._part.isHidden():
            bring_in_sight(self)
            self._first.setFocus(Qt.FocusReason.OtherFocusReason)

    def _mark(self) -> None:
        self._said.set_words("")
        first, last, what = (str(box.currentData()) for box in (self._first, self._last, self._what))
        if self._ride.mark_runs(first, last, what):
            self._part.hide()
            self._fold.setFocus(Qt.FocusReason.OtherFocusReason)


def _list(name: str, label: str) -> ListBox:
    box = ListBox(())
    box.setObjectName(name)
    box.setAccessibleName(label)
    box.setMinimumContentsLength(3)
    return box
