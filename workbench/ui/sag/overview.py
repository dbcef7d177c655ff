"""Both ends with the sag last kept."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rulers import SagRuler
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.ui.sag.ruler import show_ruler
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_ends import EndShown
from workbench.viewmodels.sag_state import SagState


class EndCard(QFrame):
    """One end: its sag on the ruler, what it aims at, and the key to measure it."""

    garage_requested = Signal()
    spring_requested = Signal()

    def __init__(self, end: str, view_model: SagViewModel) -> None:
        super().__init__()
        self._end = end
        self._view_model = view_model
        self.setObjectName(f"sag_{end}")
        self._title = Words("", "strong")
        self._status = Words("", "mute", name=f"sag_{end}_status")
        self._unit = Words("", "note")
        self._number = BigNumber(name=f"sag_{end}_number")
        self._at = Words("", "mute", name=f"sag_{end}_at")
        self._ruler = SagRuler(name=f"sag_{end}_ruler")
        self._notes = Words("", "note", name=f"sag_{end}_notes")
        self._blocked = Words("", "text", name=f"sag_{end}_blocked")
        self.next = Button("", "verb", name=f"sag_{end}_next")
        self.measure = Button("", "plain", name=f"sag_{end}_measure")
        self.garage = Button("State it in the garage", "plain", name=f"sag_{end}_garage")
        self.spring = Button("Spring curve", "plain", name=f"sag_{end}_spring")
        self.spring.setAccessibleName(f"Spring curve of the {end}")
        self.spring.clicked.connect(self._to_spring)
        for button in (self.next, self.measure):
            button.clicked.connect(self._start)
        self.garage.clicked.connect(self.garage_requested)
        self._lay_out()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(self._title)
        head.addWidget(self._unit)
        head.addStretch(1)
        head.addWidget(self._status)
        said = QVBoxLayout()
        said.setSpacing(0)
        for words in (self._number, self._at, self._blocked):
            said.addWidget(words)
        keys = Flow(gap=SPACE_16)
        for button in (self.spring, self.next, self.measure, self.garage):
            keys.addWidget(button)
        middle = QHBoxLayout()
        middle.setSpacing(SPACE_16)
        middle.addLayout(said, 1)
        middle.addWidget(keys)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addLayout(head)
        rows.addLayout(middle)
        rows.addWidget(self._ruler)
        rows.addWidget(self._notes)

    def show_end(self, shown: EndShown) -> None:
        """Show the end."""
        self._title.setText(shown.title)
        self._status.setText(shown.status)
        self._unit.setText(shown.unit_words)
        self._number.setVisible(bool(shown.number))
        self._number.set_number(shown.number, shown.number_unit, shown.percent)
        self._at.set_words(shown.spring_words if shown.number else "")
        self._ruler.setVisible(shown.ruler is not None)
        if shown.ruler is not None:
            show_ruler(self._ruler, shown.ruler)
        self._notes.set_words(shown.notes)
        self.spring.setVisible(shown.has_curve)
        self._blocked.set_words(shown.blocked or ("" if shown.number else "Not measured yet."))
        self.garage.setVisible(bool(shown.blocked))
        for button, wanted in ((self.next, shown.is_next), (self.measure, not shown.is_next)):
            button.set_text(shown.verb)
            button.setVisible(bool(shown.verb) and wanted)

    def _to_spring(self) -> None:
        self._view_model.show_spring(self._end)
        self.spring_requested.emit()

    def _start(self) -> None:
        self._view_model.start(self._end)


class Overview(Sheet):
    """The first page of the sag sheet."""

    station_requested = Signal(str)

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__("Sag", name="sag_overview")
        self._view_model = view_model
        self._cards: dict[str, EndCard] = {}
        self._blocked = Words("", "text", name="sag_blocked")
        self._garage = Button("Choose a rider in the garage", "verb", name="sag_choose_rider")
        self._put_back = CareNote(name="sag_put_back_due")
        self._back = Button("Put them back", "plain", name="sag_put_back_open")
        self._end_due = ""
        self._garage.clicked.connect(self._to_garage)
        self._back.clicked.connect(self._to_put_back)
        self.body.addWidget(self._blocked)
        self.body.addWidget(self._garage)
        due = QHBoxLayout()
        due.addWidget(self._put_back, 1)
        due.addWidget(self._back)
        due.addStretch(0)  # an empty row would hold the others narrow
        self.body.addLayout(due)
        self._ends = QVBoxLayout()
        self._ends.setSpacing(SPACE_16)
        self.body.addLayout(self._ends)
        self.body.addStretch(1)

    def show_state(self, state: SagState) -> None:
        """Show both ends."""
        self.set_title("Sag", state.rider_words)
        self._blocked.set_words(state.blocked)
        self._garage.setVisible(bool(state.blocked))
        self._put_back.set_text(state.put_back_words)
        self._back.setVisible(bool(state.put_back_words))
        self._end_due = state.put_back_end
        if [end.end for end in state.ends] != list(self._cards):
            self._rebuild(state)
        for end in state.ends:
            self._cards[end.end].show_end(end)

    def first(self) -> QWidget | None:
        """Give the key that is the next thing to do."""
        keys = [card.next for card in self._cards.values()] + [card.measure for card in self._cards.values()]
        return next((key for key in (self._garage, *keys) if key.isVisibleTo(self)), None)

    def _rebuild(self, state: SagState) -> None:
        for card in self._cards.values():
            card.hide()
            card.deleteLater()
        self._cards = {end.end: EndCard(end.end, self._view_model) for end in state.ends}
        for card in self._cards.values():
            card.garage_requested.connect(self._to_garage)
            card.spring_requested.connect(self._to_spring)
            self._ends.addWidget(card)
            card.show()

    def _to_garage(self) -> None:
        self.station_requested.emit("garage")

    def _to_spring(self) -> None:
        self.station_requested.emit("spring")

    def _to_put_back(self) -> None:
        self._view_model.show_put_back(self._end_due)
