"""What each change did: the difference with its interval, beside the band too small to feel."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.review_data import Effects

ROW = 34


class EffectsPlot(Plot):
    """One row a change, in the order ridden: a point and a line for 9 in 10."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_effects", parent)
        self._effects = Effects()
        self._picked = ""
        self._items: list[pg.GraphicsObject] = []
        self.getPlotItem().invertY(True)
        self.setLabel("bottom", "difference in liking, points")

    def show_effects(self, effects: Effects, picked: str) -> None:
        """Show the changes; the picked one stands out."""
        if (effects, picked) == (self._effects, self._picked):
            return
        self._effects, self._picked = effects, picked
        self._draw()

    def shown(self) -> Effects:
        """What is on screen."""
        return self._effects

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        rows, felt = self._effects.rows, self._effects.felt
        band = pg.LinearRegionItem((-felt, felt), movable=False, brush=pg.mkBrush(self.colour("line", 40)))
        for line in band.lines:
            line.setPen(pg.mkPen(None))
        band.setZValue(-10)
        zero = pg.InfiniteLine(0, pen=pg.mkPen(self.colour("line"), width=1))
        self._items = [band, zero]
        for place, row in enumerate(rows, start=1):
            is_strong = not self._picked or row.key == self._picked
            colour = self.colour("data_1", 255 if is_strong else 110)
            pen = pg.mkPen(colour, width=3 if row.key == self._picked else 2)
            self._items.append(pg.PlotDataItem([row.low, row.high], [place, place], pen=pen))
            dot = pg.ScatterPlotItem([row.effect], [place], size=11, pen=pen, brush=pg.mkBrush(colour), useCache=False)
            self._items.append(dot)
        for item in self._items:
            self.addItem(item)
        self.getAxis("left").setTicks([[(place, str(place)) for place in range(1, len(rows) + 1)]])
        reach = max([2.0, *(abs(value) for row in rows for value in (row.low, row.high))])
        self.setXRange(-reach, reach, padding=0.04)
        self.setYRange(0.4, len(rows) + 0.6, padding=0)
        self.setFixedHeight(max(len(rows), 1) * ROW + 64)
        self.say(" ".join(row.verdict for row in rows) or self._effects.said)
