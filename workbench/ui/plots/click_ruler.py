"""The ruler of one adjuster, closed at the left: where the liking may peak, in dots to count."""

from __future__ import annotations

from collections import Counter

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.bands import region
from workbench.ui.plots.base import Plot
from workbench.viewmodels.review_response import Response

ROW_PX = 11
UNDER = 3.4  # rows below the ruler's line, for the interval and the plateau


class ClickRulerPlot(Plot):
    """Twenty dots piled on whole clicks; below the line the interval and what is about as good."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_ruler", parent)
        self._response = Response()
        self._items: list[pg.GraphicsObject] = []
        self.getPlotItem().hideAxis("bottom")
        self.getAxis("left").setPen(pg.mkPen(None))
        self.getAxis("left").setTicks([[]])

    def show_response(self, response: Response) -> None:
        """Show one adjuster; hidden while no place is named."""
        self.setVisible(bool(response.peaks))
        if response != self._response:
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
        if not told.peaks:
            return
        self._add_ruler(told)
        piles = Counter(told.peaks)
        spots = [(place, row + 0.7) for place, count in piles.items() for row in range(count)]
        pen = pg.mkPen(self.colour("data_1"), width=1)
        places, rows = zip(*spots, strict=True)
        brush = pg.mkBrush(self.colour("data_1"))
        self._items.append(pg.ScatterPlotItem(places, rows, size=9, pen=pen, brush=brush, useCache=False))
        self._add_interval(told)
        for item in self._items:
            self.addItem(item)
        self.widen_left(("9",))
        most = max(piles.values())
        self.setXRange(-0.6, told.steps + 0.6, padding=0)
        self.setYRange(-UNDER, most + 0.8, padding=0)
        self.setFixedHeight(round(ROW_PX * (most + 1 + UNDER)) + 24)
        self.say(f"{told.title}, ruler from closed to open: {told.said}")

    def _add_ruler(self, told: Response) -> None:
        line = pg.mkPen(self.colour("line"), width=1)
        self._items.append(pg.PlotDataItem([0, told.steps], [0, 0], pen=line))
        for place in range(told.steps + 1):
            long = place % 5 == 0 or place == told.steps
            self._items.append(pg.PlotDataItem([place, place], [0, -0.7 if long else -0.35], pen=line))
        if told.ridden is not None:
            for low, high in ((-0.6, told.ridden[0] - 0.5), (told.ridden[1] + 0.5, told.steps + 0.6)):
                if high > low:
                    self._items.append(region(low, high, self.colour("line", 60), hatched=True))
        if told.now is not None:
            self._items.append(pg.InfiniteLine(told.now, pen=pg.mkPen(self.colour("accent"), width=1)))

    def _add_interval(self, told: Response) -> None:
        if told.low is not None and told.high is not None:
            pen = pg.mkPen(self.colour("data_1"), width=2)
            ends = ([told.low, told.low, told.high, told.high], [-1.1, -1.5, -1.5, -1.1])
            self._items.append(pg.PlotDataItem(*ends, pen=pen))
        if told.good_low is not None and told.good_high is not None:
            pen = pg.mkPen(self.colour("ink"), width=4)
            self._items.append(pg.PlotDataItem([told.good_low, told.good_high], [-2.3, -2.3], pen=pen))
