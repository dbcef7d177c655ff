"""A plot that is read off: by the pointer, and by arrow keys once it has the focus. Both say the same line."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.buttons import draw_focus
from workbench.ui.plots.base import Plot

REACH_PX = 28.0  # so near the pointer has to come to a point
STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


@dataclass(frozen=True, slots=True)
class Stop:
    """One point that can be read: where it is on the plot, what is said of it, and its key."""

    x: float
    y: float
    said: str
    key: str = ""


class ReadPlot(Plot):
    """``read`` with the line of the point under the pointer or the mark, empty when there is none.

    ``stop_picked`` with a point's key when Enter or Space is pressed on it. A subclass gives its points with
    ``set_stops`` in the order in which the arrow keys go through them.
    """

    read = Signal(str)
    stop_picked = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._stops: tuple[Stop, ...] = ()
        self._at: int | None = None
        self._mark = pg.PlotDataItem([], [], pen=None, symbol="o", symbolSize=24, symbolBrush=None)
        self._mark.setZValue(20)
        self.addItem(self._mark, ignoreBounds=True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.scene().sigMouseMoved.connect(self._moved)

    def set_stops(self, stops: Sequence[Stop]) -> None:
        """Take the points that can be read; the mark stays at a point that is still there."""
        key = self._stops[self._at].key if self._at is not None else None
        self._stops = tuple(stops)
        self._at = next((at for at, stop in enumerate(self._stops) if stop.key == key), None)
        self._show_mark()

    def stops(self) -> tuple[Stop, ...]:
        """The points that can be read."""
        return self._stops

    def stop_near(self, x: float, y: float) -> Stop | None:
        """Give the point near a place of the scene, in pixels; None when none is near."""
        view = self.getPlotItem().getViewBox()

        def away(stop: Stop) -> float:
            at = view.mapViewToScene(QPointF(stop.x, stop.y))
            return math.hypot(at.x() - x, at.y() - y)

        nearest = min(self._stops, key=away, default=None)
        return nearest if nearest is not None and away(nearest) <= REACH_PX else None

    def _tell(self, stop: Stop | None) -> None:
        """Say what is read; a subclass may show it in the picture too."""
        self.read.emit(stop.said if stop is not None else "")

    def _moved(self, at: QPointF) -> None:
        self._tell(self.stop_near(at.x(), at.y()) or self._marked())

    def _marked(self) -> Stop | None:
        return self._stops[self._at] if self._at is not None and self.hasFocus() else None

    def leaveEvent(self, event: QEvent) -> None:
        """Out of the picture only the mark is read."""
        super().leaveEvent(event)
        self._tell(self._marked())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from point to point; Enter or Space picks."""
        last = len(self._stops) - 1
        key = Qt.Key(event.key())
        if last < 0:
            super().keyPressEvent(event)
        elif key in STEPS:
            here = self._at if self._at is not None else -1 if STEPS[key] > 0 else last + 1
            self._go(min(max(here + STEPS[key], 0), last))
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self._go(0 if key == Qt.Key.Key_Home else last)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space) and self._at is not None:
            self.stop_picked.emit(self._stops[self._at].key)
        else:
            super().keyPressEvent(event)

    def _go(self, place: int) -> None:
        self._at = place
        self._show_mark()
        self.setAccessibleDescription(self._stops[place].said)
        self._tell(self._stops[place])

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the mark; by keyboard it begins at the first point."""
        super().focusInEvent(event)
        by_key = event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        if self._at is None and self._stops and by_key:
            self._at = 0
        self._show_mark()
        self._tell(self._marked())
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Without the focus there is no mark."""
        super().focusOutEvent(event)
        self._show_mark()
        self._tell(None)
        self.viewport().update()

    def drawForeground(self, painter: QPainter, rect: QRectF) -> None:
        """Frame the picture while it has the focus."""
        super().drawForeground(painter, rect)
        if self.hasFocus():
            painter.save()
            painter.resetTransform()
            draw_focus(painter, QRectF(self.viewport().rect()))
            painter.restore()

    def _show_mark(self) -> None:
        if self._at is None or not self.hasFocus():
            self._mark.setData([], [])
            return
        stop = self._stops[self._at]
        self._mark.setData([stop.x], [stop.y])
        self._mark.setSymbolPen(pg.mkPen(self.colour("accent"), width=2))
