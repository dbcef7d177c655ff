"""Attributes looked at: every score a dot, a row an attribute; nothing is joined or judged."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.review_data import Looked

ROW_PX = 30
AXIS_PX = 44
SIDES = {"before": (0.17, "o", "data_1"), "after": (-0.17, "s", "data_2"), "all": (0.0, "o", "mute")}


class LookedPlot(Plot):
    """Circles before, squares after; repeats stand beside each other, to be counted."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_looked_plot", parent)
        self._looked = Looked()
        self._items: list[pg.GraphicsObject] = []
        self.getPlotItem().invertY(True)
        self.setLabel("bottom", "1 poor to 9 very good")
        self.getAxis("bottom").setTicks([[(value, str(value)) for value in range(1, 10)]])

    def show_looked(self, looked: Looked) -> None:
        """Show the attributes."""
        if looked != self._looked:
            self._looked = looked
            self._draw()

    def shown(self) -> Looked:
        """What is on screen."""
        return self._looked

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        rows = self._looked.rows
        spots = []
        for place, row in enumerate(rows):
            line = pg.InfiniteLine(place, angle=0, pen=pg.mkPen(self.colour("line", 70)))
            self._items.append(line)
            for dot in row.dots:
                shift, symbol, token = SIDES[dot.side]
                for one in range(dot.count):
                    beside = 0.13 * (one - 0.5 * (dot.count - 1))
                    spots.append(
                        {
                            "pos": (dot.score + beside, place - shift),
                            "symbol": symbol,
                            "size": 9,
                            "pen": pg.mkPen(self.colour(token), width=2),
                            "brush": pg.mkBrush(self.colour(token) if dot.side == "after" else self.colour("card")),
                        }
                    )
        marks = pg.ScatterPlotItem(useCache=False)
        marks.setData(spots)
        self._items.append(marks)
        for item in self._items:
            self.addItem(item)
        self.widen_left([row.title for row in rows])
        self.getAxis("left").setTicks([[(place, row.title) for place, row in enumerate(rows)]])
        self.setXRange(0.6, 9.4, padding=0)
        self.setYRange(-0.5, max(len(rows), 1) - 0.5, padding=0)
        self.setFixedHeight(AXIS_PX + ROW_PX * max(len(rows), 1))
        self.say(" ".join(f"{row.said}." for row in rows))
