"""Which setup to ride: the list to switch by, and a name for the one picked."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_start import StartState


class SetupPick(QWidget):
    """Picking one shows its steps from what is on the bike; naming one finds it again."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._shown = ""
        self._words = Words("", "strong", name="ride_setup")
        self._list = ListBox(())
        self._list.setObjectName("ride_setups")
        self._list.setAccessibleName("Setup to ride")
        self._list.setMinimumContentsLength(24)
        self._list.activated.connect(self._picked)
        self._fold = Button("Name it ...", "link", name="ride_name_setup")
        self._fold.clicked.connect(self._unfold)
        self._name = TypedLine("setup_name", "Name of this setup, such as wet roots", prefix="ride")
        self._name.line.returnPressed.connect(self._keep)
        self._keep_name = Button("Keep name", "plain", name="ride_keep_name")
        self._keep_name.clicked.connect(self._keep)
        self._naming = QWidget()
        naming = QHBoxLayout(self._naming)
        naming.setContentsMargins(0, 0, 0, 0)
        naming.setSpacing(SPACE_16)
        naming.addWidget(self._name, 1, Qt.AlignmentFlag.AlignTop)
        naming.addWidget(self._keep_name, 0, Qt.AlignmentFlag.AlignBottom)
        self._naming.hide()
        row = QHBoxLayout()
        row.setSpacing(SPACE_16)
        row.addWidget(self._words)
        row.addWidget(self._list)
        row.addWidget(self._fold)
        row.addStretch(1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(row)
        rows.addWidget(self._naming)

    def show_start(self, start: StartState, *, can_switch: bool) -> None:
        """Show the list; a planned blind test says itself what is ridden."""
        if [(self._list.itemData(at), self._list.itemText(at)) for at in range(self._list.count())] != [*start.setups]:
            self._list.clear()
            for setup_id, words in start.setups:
                self._list.addItem(" ".join(words.split()), setup_id)
        self._list.setCurrentIndex(max(self._list.findData(start.setup_id), 0))
        if start.setup_id != self._shown or not self._naming.isVisibleTo(self):
            self._shown = start.setup_id
            self._name.show_text(start.setup_name)
        lists = can_switch and len(start.setups) > 1
        self._words.setText("Setup to ride" if lists else start.setup_text)
        self._list.setVisible(lists)
        self._fold.setVisible(can_switch)
        if not can_switch:
            self._naming.hide()

    def show_problem(self, problem: Problem) -> bool:
        """Say why a name cannot be used; false when it is about something else."""
        if problem.field != "setup_name":
            return False
        self._name.set_problem(problem.text)
        return True

    def _picked(self, place: int) -> None:
        self._ride.set_start("setup_id", str(self._list.itemData(place)))

    def _unfold(self) -> None:
        self._naming.setVisible(self._naming.isHidden())
        if not self._naming.isHidden():
            self._name.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _keep(self) -> None:
        if self._ride.name_setup(self._name.line.text()):
            self._naming.hide()
            self._fold.setFocus(Qt.FocusReason.OtherFocusReason)
