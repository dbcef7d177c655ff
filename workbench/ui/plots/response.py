"""Ratings along one adjuster, from closed to open."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.review_response import Response


class ResponsePlot(Plot):
    """Dots for runs, larger for repeats; a band where the liking most likely peaks; a bar for what is as good."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_response", parent)
        self._response = Response()
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "liking")
        self.setLabel("bottom", "from closed")
        self.getAxis("left").setTicks([[(value, str(value)) for value in range(1, 10)]])
        self.setYRange(0.2, 9.6, padding=0)
        self.setFixedHeight(210)

    def show_response(self, response: Response) -> None:
        """Show one adjuster."""
        if response == self._response:
            return
        self._response = response
        self._draw()

    def shown(self) -> Response:
        """What is on screen."""
        return self._response

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        told = self._response
        if told.low is not None and told.high is not None:
            band = pg.LinearRegionItem(
                (told.low - 0.5, told.high + 0.5), movable=False, brush=pg.mkBrush(self.colour("data_1", 45))
            )
            for line in band.lines:
                line.setPen(pg.mkPen(None))
            band.setZValue(-10)
            self._items.append(band)
        if told.good_low is not None and told.good_high is not None:
            bar = pg.PlotDataItem(
                [told.good_low, told.good_high], [0.6, 0.6], pen=pg.mkPen(self.colour("ink"), width=4)
            )
            self._items.append(bar)
        if told.now is not None:
            self._items.append(pg.InfiniteLine(told.now, pen=pg.mkPen(self.colour("accent"), width=1)))
        spots = [
            {
                "pos": (dot.position, dot.liking),
                "size": 9 + 4 * (dot.count - 1),
                "pen": pg.mkPen(self.colour("data_2"), width=2),
                "brush": pg.mkBrush(self.colour("data_2", 150)),
            }
            for dot in told.dots
        ]
        dots = pg.ScatterPlotItem(useCache=False)
        dots.setData(spots)
        self._items.append(dots)
        for item in self._items:
            self.addItem(item)
        step = max(1, told.steps // 24)
        self.getAxis("bottom").setTicks([[(place, str(place)) for place in range(0, told.steps + 1, step)]])
        self.setXRange(-0.6, told.steps + 0.6, padding=0)
        self.say(f"{told.title}: {told.said}")
