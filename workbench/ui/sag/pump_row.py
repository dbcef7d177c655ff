"""Which pump, what it shows when attached a second time, and what that says about its hose."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import UnitLine
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.sag.entries import Labelled
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown


class PumpRow(QWidget):
    """The pump by name; a new one is named where it is picked."""

    def __init__(self, view_model: SagViewModel, again: QWidget) -> None:
        super().__init__()
        self._view_model = view_model
        self.pumps = ListBox(())
        self.pumps.setObjectName("sag_pump")
        self.pumps.setAccessibleName("Pump")
        self.pumps.activated.connect(self._picked)
        self.name = UnitLine()
        self.name.setObjectName("sag_pump_name")
        self.name.setAccessibleName("Name of the new pump")
        self.name.returnPressed.connect(self._add)
        self._add_key = Button("Add", "plain", name="sag_pump_add")
        self._add_key.clicked.connect(self._add)
        self._said = Words("", "problem", name="sag_pump_said")
        self._hose = Words("", "note", name="sag_hose")
        self._again = again
        for words in (self._said, self._hose):
            words.set_words("")
        row = QHBoxLayout()
        row.setSpacing(SPACE_16)
        row.addWidget(Labelled("Pump", self.pumps), 2)
        row.addWidget(Labelled("A new pump", self.name), 2)
        row.addWidget(self._add_key, 0, Qt.AlignmentFlag.AlignBottom)
        row.addWidget(again, 2)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(row)
        rows.addWidget(self._said)
        rows.addWidget(self._hose)

    def show_guide(self, guide: GuideShown) -> None:
        """Show the pumps there are and what the hose explains."""
        if [(self.pumps.itemData(at), self.pumps.itemText(at)) for at in range(self.pumps.count())] != [*guide.pumps]:
            self.pumps.clear()
            for key, words in guide.pumps:
                self.pumps.addItem(" ".join(words.split()), key)
        self.pumps.setCurrentIndex(max(self.pumps.findData(guide.draft.pump_id), 0))
        self._again.setVisible(bool(guide.draft.pump_id))
        self._hose.set_words(guide.hose)

    def say(self, text: str) -> None:
        """Say why a pump cannot be added."""
        self._said.set_words(text)
        if text:
            self.name.setFocus(Qt.FocusReason.OtherFocusReason)

    def _picked(self, place: int) -> None:
        self._view_model.set_field("pump_id", str(self.pumps.itemData(place)))

    def _add(self) -> None:
        self.say("")
        if self._view_model.add_pump(self.name.text()):
            self.name.clear()
            self.pumps.setFocus(Qt.FocusReason.OtherFocusReason)
