"""Who gets the room of the window: the sheet, the garage list, the title block, the hint."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from workbench.ui.head import Head
from workbench.ui.hint_line import HintLine
from workbench.viewmodels.window import NEW_BIKE, WindowState

SMALLEST = (640, 400)  # px: 1280 x 800 at 200 %
LOW, NARROW = 620, 960  # px: on a small or much enlarged screen the title block and the garage list make room
ROOMY = 900  # px: a lower window in bench mode leaves the title block's room to the work


class Room:
    """Shows and hides the parts of a window by its size, the look and what lies open."""

    def __init__(
        self,
        window: QWidget,
        *,
        side: QWidget,
        head: Head,
        sheet: QWidget,
        title_block: QWidget,
        hint: HintLine,
        state: Callable[[], WindowState],
        is_bench: Callable[[], bool],
    ) -> None:
        self._window, self._side, self._head = window, side, head
        self._sheet, self._title_block, self._hint = sheet, title_block, hint
        self._state, self._is_bench = state, is_bench
        self._was_narrow = False

    def is_close(self) -> bool:
        """Whether the sheet has the window to itself: in bench mode, and in a narrow window."""
        return self._is_bench() or self._is_narrow()

    def make(self) -> None:
        """Where the sheet has the window to itself, the garage shows only while a bike is being picked."""
        state, is_close = self._state(), self.is_close()
        self._was_narrow = self._is_narrow()
        self._side.setVisible(not is_close or (state.bike_id is None and state.station != NEW_BIKE))
        self._head.offer_garage(is_close)
        self.fit()

    def fit(self) -> None:
        """Leave the room of title block and hint to the work in a low window, that of the sheet to the list."""
        state, height = self._state(), self._window.height()
        self._title_block.setVisible(height >= (ROOMY if self._is_bench() else LOW))
        picks = self._is_narrow() and self._side.isVisibleTo(self._window) and state.bike_id is not None
        self._sheet.setVisible(not picks)
        has_room = not self.is_close() and height >= LOW
        self._hint.show_hint(state.hint if has_room and not state.stop else "")  # what to take care of comes first

    def resized(self) -> None:
        """Take another size into account; within it a garage list brought back stays."""
        if self._was_narrow != self._is_narrow():
            self.make()
        self.fit()

    def _is_narrow(self) -> bool:
        return self._window.width() < NARROW
