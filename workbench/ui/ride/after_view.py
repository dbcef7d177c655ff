"""Asked of a rider who leads: what they are after, and the adjusters that bear on it."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_next import NextLook

NOT_SAID = "Not said yet"


class AfterView(QWidget):
    """One question, one list, and a link an adjuster."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._shown: NextLook | None = None
        self._ask = Words("", "strong", name="next_ask")
        self._goals = ListBox(())
        self._goals.setObjectName("next_goals")
        self._goals.setAccessibleName("What are you after?")
        self._goals.activated.connect(self._picked)
        self._links: list[Button] = []
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE_8)
        self._rows.addWidget(self._ask)
        self._rows.addWidget(self._goals)
        self.hide()

    def show_look(self, look: NextLook) -> None:
        """Show the question once the plan follows the rider."""
        if look == self._shown:
            return
        self._shown = look
        self.setVisible(bool(look.ask))
        self._ask.set_words(look.ask)
        self._goals.clear()
        for key, words in (("", NOT_SAID), *look.goals):
            self._goals.addItem(words, key)
        self._goals.setCurrentIndex(max(self._goals.findData(look.goal), 0))
        for link in self._links:
            self._rows.removeWidget(link)
            link.hide()
            link.deleteLater()
        self._links = []
        for place, (adjuster_id, words) in enumerate(look.offers, start=1):
            link = Button(words, "link", name=f"next_offer_{place}")
            link.clicked.connect(partial(self._work, adjuster_id))
            self._rows.addWidget(link, 0, Qt.AlignmentFlag.AlignLeft)
            self._links.append(link)

    def _picked(self, place: int) -> None:
        if goal := str(self._goals.itemData(place)):
            self._ride.say_after(goal)

    def _work(self, adjuster_id: str, _checked: bool = False) -> None:
        self._ride.work_on(adjuster_id)
