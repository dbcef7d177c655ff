"""A run's lap time: typed, or taken with a watch that goes on while the window is closed."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.ui.ride.typed_line import TypedLine

LOOK_MS = 100
LEAST_WIDTH, WIDEST = 90, 240  # px
START, STOP = "Start the watch", "Stop the watch"


class LapLine(TypedLine):
    """``watch_pressed`` when the watch is to start or stop; ``elapsed`` says how long it has been running."""

    watch_pressed = Signal()

    def __init__(self, elapsed: Callable[[], str], *, prefix: str, parent: QWidget | None = None) -> None:
        super().__init__("lap", "Lap time", prefix=prefix, parent=parent)
        self._elapsed = elapsed
        self._watch = Button(START, "link", name=f"{prefix}_watch")
        self._watch.clicked.connect(self.watch_pressed)
        self._shown = Words("", "strong", name=f"{prefix}_watch_time")
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self._look)
        self.line.setMinimumWidth(LEAST_WIDTH)
        self.line.setMaximumWidth(WIDEST)
        rows = self.layout()
        assert isinstance(rows, QVBoxLayout)
        place = rows.indexOf(self.line)
        rows.removeWidget(self.line)
        row = QHBoxLayout()
        row.setSpacing(SPACE_8)
        for widget in (self.line, self._watch, self._shown):
            row.addWidget(widget)
        row.addStretch(1)
        rows.insertLayout(place, row)
        self._shown.hide()

    def show_watch(self, *, is_running: bool) -> None:
        """Show the watch running, or ready to start."""
        self._watch.set_text(STOP if is_running else START)
        if is_running:
            self._timer.start()
            self._look()
        else:
            self._timer.stop()
            self._shown.set_words("")

    def _look(self) -> None:
        if self.isVisible():
            self._shown.set_words(self._elapsed())
