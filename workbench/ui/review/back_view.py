"""The way back to any setup: what it was rated, and the steps from the bike as it stands."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.review import ReviewState, ReviewViewModel


class BackView(QWidget):
    """Pick a setup, tick its steps."""

    def __init__(self, view_model: ReviewViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._review = view_model
        self._setups = choice_list("review_setup", "Setup to go back to")
        self._setups.activated.connect(self._pick)
        self._said = Words("", "mute", name="review_setup_said")
        self._steps = StepList(name="review_steps")
        self._steps.step_ticked.connect(self._tick)
        self._done = Words("", "strong", name="review_done")
        self._all = Button("All of these are set", "verb", name="review_all")
        self._all.clicked.connect(view_model.take_all)
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(Words("Back to setup", "strong"))
        head.addWidget(self._setups)
        head.addWidget(self._said, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(head)
        rows.addWidget(self._done)
        rows.addWidget(self._steps)
        rows.addWidget(self._all, 0, Qt.AlignmentFlag.AlignLeft)

    def show_state(self, state: ReviewState) -> None:
        """Show the steps that are left."""
        fill(self._setups, state.setups, state.setup_id)
        self._said.setText(state.setup_said)
        self._done.set_words(state.steps_done)
        self._steps.set_steps([Step(line.key, line.text, remark=line.remark) for line in state.steps])
        self._steps.setVisible(bool(state.steps))
        self._all.setVisible(bool(state.steps))

    def focus_steps(self) -> None:
        """Put the focus on the first thing to do here."""
        target = self._setups if self._steps.isHidden() else self._steps
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def _pick(self, place: int) -> None:
        self._review.pick_setup(str(self._setups.itemData(place)))

    def _tick(self, key: str, _done: bool) -> None:
        self._review.take_step(key)


def choice_list(name: str, words: str) -> ListBox:
    """Give an empty list to choose from."""
    made = ListBox(())
    made.setObjectName(name)
    made.setAccessibleName(words)
    return made


def fill(box: ListBox, pairs: tuple[tuple[str, str], ...], chosen: str) -> None:
    """Fill a list and show what is chosen."""
    box.clear()
    for key, words in pairs:
        box.addItem(" ".join(words.split()), key)
    box.setCurrentIndex(max(box.findData(chosen), 0))
