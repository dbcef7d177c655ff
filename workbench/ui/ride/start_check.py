"""The check before the first run: six things to tick, one tick for all of them, or a reason why not."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import FlagField, TickBox
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.ride.tick_grid import TickGrid
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_start import NOT_VERIFIED_REASONS, StartState


class StartCheck(QWidget):
    """Ticks one by one or all at once; what is not ticked is asked about."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._boxes: dict[str, TickBox] = {}
        self._grid = TickGrid()
        self.verified = FlagField(label="Verified: all of the following is so", name="ride_verified")
        self.verified.value_committed.connect(self._set_verified)
        self.why_not = TypedLine("not_verified", "Or: why it is not verified", prefix="ride")
        self.why_not.typed.connect(view_model.set_start)
        self._reasons = Button("Pick a reason", "link", name="ride_reasons")
        menu = QMenu(self._reasons)
        for place, reason in enumerate(NOT_VERIFIED_REASONS, start=1):
            menu.addAction(f"&{place}  {reason}").triggered.connect(partial(self._pick, reason))
        self._reasons.setMenu(menu)
        self._care = CareNote("", name="ride_start_care")
        foot = QHBoxLayout()
        foot.setSpacing(SPACE_16)
        top = Qt.AlignmentFlag.AlignTop
        foot.addWidget(self.why_not, 1, top)
        foot.addWidget(self._reasons, 0, Qt.AlignmentFlag.AlignBottom)
        foot.addStretch(0)  # an empty row would hold the others narrow
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self.verified)
        rows.addWidget(self._grid)
        rows.addLayout(foot)
        rows.addWidget(self._care)

    def show_start(self, start: StartState, *, takes_reasons: bool) -> None:
        """Show what is ticked; a blind test begins from a verified start only, so it takes no reason."""
        for key, words in start.verify:
            if key not in self._boxes:
                box = TickBox(words, name=f"ride_check_{key}")
                box.clicked.connect(partial(self._ticked, key, box))
                self._boxes[key] = box
            self._boxes[key].setChecked(key in start.draft.checked)
        self._grid.set_boxes([self._boxes[key] for key, _ in start.verify])
        self.verified.set_value(start.draft.verified)
        self.why_not.show_text(start.draft.not_verified)
        self.why_not.setVisible(takes_reasons)
        self._reasons.setVisible(takes_reasons)
        self._care.set_text(start.care if takes_reasons else "")

    def show_problem(self, problem: Problem) -> bool:
        """Say what is missing at its field; false when it is about something else."""
        if problem.field not in ("verified", "not_verified"):
            return False
        if self.why_not.isHidden() or self._is_begun(problem):
            self.verified.set_problem(problem.text)
            self.verified.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.why_not.set_problem(problem.text)
        return True

    def _is_begun(self, problem: Problem) -> bool:
        """Tell whether the ticks are what the problem is about."""
        return problem.field == "verified" and any(box.isChecked() for box in self._boxes.values())

    def _ticked(self, key: str, box: TickBox, _checked: bool = False) -> None:
        self._ride.check_start(key, box.isChecked())
        self._forget_problems()

    def _set_verified(self, value: object) -> None:
        self._ride.set_start("verified", bool(value))
        self._forget_problems()

    def _pick(self, reason: str, _checked: bool = False) -> None:
        self._ride.set_start("not_verified", reason)
        self._forget_problems()

    def _forget_problems(self) -> None:
        self.why_not.set_problem("")
        self.verified.set_problem("")
