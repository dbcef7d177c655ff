"""Switching to another setup within a session: pick it, set what is listed, say that it is set."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_switch import SwitchLook

CLOSED, OPEN = "Switch to another setup ...", "Stay on this setup"


class SwitchView(QWidget):
    """Folded away until it is asked for; there only where there is another setup."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._fold = Button(CLOSED, "link", name="switch_fold")
        self._fold.clicked.connect(self._turn)
        self._list = ListBox(())
        self._list.setObjectName("switch_setups")
        self._list.setAccessibleName("Setup to switch to")
        self._list.activated.connect(self._picked)
        self._steps = Words("", "text", name="switch_steps")
        self._left_out = Words("", "note", name="switch_left_out")
        self._counts = Words("", "note", name="switch_counts")
        self._care = CareNote("", name="switch_care")
        self._set = Button("It is set", "plain", name="switch_set")
        self._set.clicked.connect(self._do)
        self._panel = QWidget()
        panel = QVBoxLayout(self._panel)
        panel.setContentsMargins(0, 0, 0, 0)
        panel.setSpacing(SPACE_8)
        for widget in (self._list, self._steps, self._left_out, self._counts, self._care):
            panel.addWidget(widget)
        panel.addWidget(self._set, 0, Qt.AlignmentFlag.AlignLeft)
        self._panel.hide()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._fold, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._panel)

    def show_look(self, look: SwitchLook) -> None:
        """Show the list, and what the setup picked means."""
        self.setVisible(bool(look.setups))
        if [(self._list.itemData(at), self._list.itemText(at)) for at in range(self._list.count())] != [*look.setups]:
            self._list.clear()
            for setup_id, words in look.setups:
                self._list.addItem(one_line(words), setup_id)
        self._list.setCurrentIndex(max(self._list.findData(look.setup_id), 0))
        self._steps.set_words("\n".join(look.lines))
        self._left_out.set_words(look.left_out)
        self._counts.set_words("" if look.is_care else look.counts)
        self._care.set_text(look.counts if look.is_care else "")
        self._set.setVisible(look.can_set)

    def _turn(self) -> None:
        self._show(self._panel.isHidden())
        target = self._fold if self._panel.isHidden() else self._list
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show(self, on: bool) -> None:
        self._panel.setVisible(on)
        self._fold.set_text(OPEN if on else CLOSED)

    def _picked(self, place: int) -> None:
        self._ride.pick_switch(str(self._list.itemData(place)))

    def _do(self) -> None:
        if self._ride.switch_setup():
            self._show(False)
