"""Beside the count: the knob, and the way it closes."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.drawings import DrawingValues, DrawingView
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_count import CountState

TURNS = {"clockwise": "Clockwise", "anticlockwise": "Anticlockwise"}


class KnobSide(QWidget):
    """The margin of the counting sheet."""

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__()
        self._view_model = view_model
        self.drawing = DrawingView("knob", name="count_drawing")
        self.turn = ChoiceField(TURNS, label="Which way closes it?", name="count_turn")
        self.turn.value_committed.connect(self._turn_chosen)
        self._asks = QWidget()
        asks = QVBoxLayout(self._asks)
        asks.setContentsMargins(0, 0, 0, 0)
        asks.setSpacing(SPACE_4)
        asks.addWidget(Words("Which way closes it?", "mute"))
        asks.addWidget(self.turn)
        self._rows = rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        for part in (self.drawing, self._asks):
            rows.addWidget(part)
        rows.addStretch(1)

    def add_below(self, widget: QWidget) -> None:
        """Put something else beside the count, below the knob."""
        self._rows.insertWidget(self._rows.count() - 1, widget, 0, Qt.AlignmentFlag.AlignLeft)

    def show_count(self, state: CountState) -> None:
        """Show the knob of the adjuster being counted."""
        self.drawing.show_drawing(
            "knob", DrawingValues(closes=state.closes, opens=state.opens, note=state.drawing_note)
        )
        self._asks.setVisible(state.asks_turn)
        self.turn.set_value(None)

    def _turn_chosen(self, value: object) -> None:
        self._view_model.set_turn(str(value))
