"""Curves over one axis: the one that counts strong, others quiet, each named where it ends."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.lines import Line, Lines

ROOM_FOR_NAMES = 0.16  # of the width, at the right
LONGEST_NAME = 12


class LinesPlot(Plot):
    """Draws what a `Lines` says."""

    def __init__(self, name: str, *, height: int = 200, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._lines: Lines | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setFixedHeight(height)

    def show_lines(self, lines: Lines) -> None:
        """Show curves and points."""
        if lines != self._lines:
            self._lines = lines
            self._draw()

    def shown(self) -> Lines | None:
        """What is on screen."""
        return self._lines

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        lines = self._lines
        if lines is None:
            return
        self.setLabel("left", lines.y_label)
        self.setLabel("bottom", lines.x_label)
        for line in sorted(lines.lines, key=lambda one: one.is_strong):
            self._items += self._curve(line)
        if lines.points:
            self._items.append(self._dots(lines))
        for item in self._items:
            self.addItem(item)
        self._fit(lines)
        self._items += self._names(lines)
        self.say(lines.said)

    def _curve(self, line: Line) -> list[pg.GraphicsObject]:
        if not line.is_strong:
            pen = pg.mkPen(self.colour("mute"), width=1.5, style=Qt.PenStyle.DashLine)
            return [pg.PlotDataItem(line.x, line.y, pen=pen)]
        drawn = []
        if line.low:
            low = pg.PlotDataItem(line.x, line.low, pen=pg.mkPen(None))
            high = pg.PlotDataItem(line.x, line.high, pen=pg.mkPen(None))
            drawn = [low, high, pg.FillBetweenItem(low, high, brush=pg.mkBrush(self.colour("data_1", 50)))]
        return [*drawn, pg.PlotDataItem(line.x, line.y, pen=pg.mkPen(self.colour("data_1"), width=2))]

    def _dots(self, lines: Lines) -> pg.ScatterPlotItem:
        spots = []
        for place, at in enumerate(lines.points):
            is_odd = place == lines.odd
            pen = pg.mkPen(self.colour("care" if is_odd else "data_2"), width=2)
            spots.append(
                {"pos": at, "size": 13 if is_odd else 9, "symbol": "x" if is_odd else "o", "pen": pen, "brush": None}
            )
        return pg.ScatterPlotItem(spots, useCache=False)

    def _fit(self, lines: Lines) -> None:
        across = [x for line in lines.lines for x in line.x] + [x for x, _ in lines.points]
        up = [y for line in lines.lines for y in (*line.y, *line.low, *line.high)] + [y for _, y in lines.points]
        if not across:
            return
        right, low, high = max(across), min(up), max(up)
        named = any(line.name for line in lines.lines)
        self.setXRange(0, right * (1 + ROOM_FOR_NAMES) if named else right, padding=0.03)
        room = max(0.08 * (high - low), 1e-6)
        self.setYRange(0 if lines.from_zero else low - room, high + room, padding=0.02)

    def _names(self, lines: Lines) -> list[pg.GraphicsObject]:
        """Name each curve at its end; where two would meet, the lower one gives way."""
        named = sorted((line for line in lines.lines if line.name), key=lambda one: -one.y[-1])
        (_, _), (bottom, top) = self.viewRange()
        least = (top - bottom) * self.fontMetrics().height() / max(self.height() - 60, 60)
        items, above = [], float("inf")
        for line in named:
            at = min(line.y[-1], above - least)
            above = at
            label = self.words(_short(line.name), token="ink" if line.is_strong else "mute", anchor=(0.0, 0.5))
            label.setPos(line.x[-1], at)
            self.addItem(label)
            items.append(label)
        return items


def _short(name: str) -> str:
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 1]}…"
