"""A difference as dots to count, each one chance in twenty."""

from __future__ import annotations

from collections import Counter

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.bands import region
from workbench.ui.plots.base import Plot

BINS = 30  # piles over the width
SIZE_PX = 12
ROW_PX = 15


class DotsPlot(Plot):
    """Dots piled where the difference may lie: filled to the right of nothing, hollow to its left."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_dots", parent)
        self._shown: tuple[tuple[float, ...], float, str] = ((), 0.0, "")
        self._items: list[pg.GraphicsObject] = []
        self.getPlotItem().hideAxis("left")

    def show_dots(self, dots: tuple[float, ...], felt: float, axis: str, said: str) -> None:
        """Show the dots of one change; the band is a difference too small to tell."""
        self.say(said)
        if (dots, felt, axis) != self._shown:
            self._shown = (dots, felt, axis)
            self._draw()

    def shown(self) -> tuple[float, ...]:
        """What is on screen."""
        return self._shown[0]

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        dots, felt, axis = self._shown
        self._items = []
        if not dots:
            return
        reach = 1.1 * max(2.0 * felt, *(abs(dot) for dot in dots))
        width = 2.0 * reach / BINS
        piles: Counter[int] = Counter()
        spots = []
        for dot in dots:
            pile = int(dot // width)  # no pile lies across nothing, so that a dot's side is its own
            piles[pile] += 1
            better = dot > 0
            colour = self.colour("data_1" if better else "data_2")
            spots.append(
                {
                    "pos": ((pile + 0.5) * width, piles[pile] - 0.5),
                    "size": SIZE_PX,
                    "pen": pg.mkPen(colour, width=2),
                    "brush": pg.mkBrush(colour if better else self.colour("card")),
                }
            )
        marks = pg.ScatterPlotItem(useCache=False)
        marks.setData(spots)
        zero = pg.InfiniteLine(0, pen=pg.mkPen(self.colour("line"), width=1))
        self._items = [region(-felt, felt, self.colour("line", 40)), zero, marks]
        for item in self._items:
            self.addItem(item)
        most = max(piles.values())
        self.setLabel("bottom", axis)
        self.setXRange(-reach, reach, padding=0)
        self.setYRange(0, most, padding=0.02)
        self.setFixedHeight(56 + max(most, 4) * ROW_PX)
