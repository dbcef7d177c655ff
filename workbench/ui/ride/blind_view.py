"""A blind test under way: one part for whoever holds the screen."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.ride.blind_parts import DoorPart, HelperPart, column
from workbench.ui.ride.blind_rider import GuessPart, RiderPart
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_blind import BlindState, Side


class BlindView(QWidget):
    """Nobody's, the helper's, the rider's, and the guess; ``revealed`` when there is a result to see."""

    revealed = Signal()

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        guess = GuessPart(view_model)
        guess.reveal_button.clicked.connect(self._reveal)
        self._parts: dict[Side, DoorPart | HelperPart | RiderPart | GuessPart] = {
            Side.DOOR: DoorPart(view_model),
            Side.HELPER: HelperPart(view_model),
            Side.RIDER: RiderPart(view_model),
            Side.GUESS: guess,
        }
        self._side = Side.DOOR
        self._sealed = Words("", "note", name="blind_sealed")
        self.keys = tuple(key for part in self._parts.values() for key in part.keys)
        rows = column(self)
        for part in self._parts.values():
            rows.addWidget(part)
        rows.addWidget(self._sealed)

    def show_state(self, state: BlindState | None) -> None:
        """Show the part of whoever holds the screen; without a test none of them."""
        for side, part in self._parts.items():
            is_open = state is not None and side is state.side
            part.setVisible(is_open)
            for key in part.keys:
                key.setVisible(is_open)
        if state is None:
            return
        self._side = state.side
        self._parts[Side.HELPER].show_state(state)  # empties itself once the screen is somebody else's
        self._parts[state.side].show_state(state)
        self._sealed.setText(state.sealed)

    def focus_first(self) -> None:
        """Put the focus on the next thing to do."""
        self._parts[self._side].focus_first()

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        return self._parts[self._side].show_problem(problem)

    def _reveal(self) -> None:
        if self._ride.reveal():
            self.revealed.emit()
