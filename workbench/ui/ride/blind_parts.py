"""The helper's screen and the one that is nobody's."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button, draw_focus
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_16, current
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_blind import BlindState

NOBODYS = (
    "Rider: look away, and stay out of earshot while the bike is set.\n"
    "Helper: take the screen when the rider does not see it."
)


class DoorPart(QWidget):
    """Nothing on it that either may not see; the helper takes the screen from here.

    The focus comes to rest on the part itself: one Enter too many of the rider's does not open the helper's screen.
    """

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._open = Button("Hand over to the helper", "verb", name="blind_to_helper")
        self._open.clicked.connect(view_model.show_helper)
        self._stop = Button("Stop early ...", "link", name="blind_stop")
        self._stop.clicked.connect(view_model.stop_early)
        self.keys = (self._open, self._stop)
        self.setObjectName("blind_door")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(f"The helper's turn. {NOBODYS}")
        rows = column(self)
        rows.setContentsMargins(SPACE_16, SPACE_16, SPACE_16, SPACE_16)
        rows.addWidget(Words("The helper's turn", "strong"))
        rows.addWidget(Words(NOBODYS))

    def show_state(self, state: BlindState) -> None:
        """There is nothing on it that changes."""

    def focus_first(self) -> None:
        """Rest where no key opens anything."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Nothing here can be entered."""
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """Frame the words; with the focus in its colour."""
        painter, area = QPainter(self), QRectF(self.rect())
        if self.hasFocus():
            draw_focus(painter, area)
        else:
            painter.setPen(QPen(current().colour("line"), 1))
            painter.drawRect(area.adjusted(0.5, 0.5, -0.5, -0.5))


class HelperPart(QWidget):
    """What to set for the next run, in which manner, ticked when it is done."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._setup = Words("", "title", name="blind_setup")
        self._motions = Words("", "text", name="blind_motions")
        self._steps = StepList(name="blind_steps")
        self._steps.step_ticked.connect(view_model.tick_blind)
        self._said = Words("", "problem", name="blind_steps_said")
        self._over = Button("Hand over to the rider", "verb", name="blind_to_rider")
        self._over.clicked.connect(view_model.to_rider)
        self._close = Button("Close the helper's screen", "link", name="blind_close")
        self._close.clicked.connect(view_model.to_door)
        self.keys = (self._over, self._close)
        rows = column(self)
        for widget in (self._setup, self._steps, self._said, self._motions):
            rows.addWidget(widget)

    def show_state(self, state: BlindState) -> None:
        """Show what is to be set; nothing once the screen is somebody else's."""
        ticked = state.draft.ticked
        self._setup.set_words(state.setup_text)
        self._motions.set_words(state.motions)
        self._steps.set_steps([Step(line.key, line.text, line.key in ticked) for line in state.steps])
        self._said.set_words("")

    def focus_first(self) -> None:
        """Put the focus on the first step, or on the way on once all is ticked."""
        target = self._over if self._steps.is_all_done() else self._steps
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        if problem.field != "blind_steps":
            return False
        self._said.set_words(problem.text)
        self._steps.setFocus(Qt.FocusReason.OtherFocusReason)
        return True


def column(part: QWidget) -> QVBoxLayout:
    """Give a part its rows."""
    rows = QVBoxLayout(part)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(SPACE_16)
    return rows
