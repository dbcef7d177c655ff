"""Ratings along one adjuster, from closed to open."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.bands import region, ribbon
from workbench.ui.plots.reading import ReadPlot, Stop
from workbench.viewmodels.review_response import Response


class ResponsePlot(ReadPlot):
    """Dots for runs, larger for repeats; the curve with its band between the outermost positions ridden."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_response", parent)
        self._response = Response()
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "liking")
        self.getAxis("left").setTicks([[(value, str(value)) for value in range(1, 10)]])
        self.setYRange(0.5, 9.6, padding=0)
        self.setFixedHeight(230)

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
        if told.ridden is not None:
            for low, high in ((-0.6, told.ridden[0] - 0.5), (told.ridden[1] + 0.5, told.steps + 0.6)):
                if high > low:
                    self._items.append(region(low, high, self.colour("line", 60), hatched=True))
        self._add_curve()
        if told.now is not None:
            self._items.append(pg.InfiniteLine(told.now, pen=pg.mkPen(self.colour("accent"), width=1)))
        dots = pg.ScatterPlotItem(useCache=False)
        dots.setData(self._spots())
        self._items.append(dots)
        for item in self._items:
            self.addItem(item)
        self.set_stops([Stop(one.position, one.liking, one.said, str(one.position)) for one in told.places])
        self.widen_left(("9",))
        step = max(1, told.steps // 24)
        self.getAxis("bottom").setTicks([[(place, told.names[place]) for place in range(0, told.steps + 1, step)]])
        self.setLabel("bottom", "; ".join(word for word in (told.axis, "hatched: not ridden") if word))
        self.setXRange(-0.6, told.steps + 0.6, padding=0)
        self.say(f"{told.title}: {told.said}")

    def _add_curve(self) -> None:
        curve = self._response.curve
        if not curve.positions:
            return
        self._items += ribbon(curve.positions, curve.low, curve.high, self.colour("data_1", 45))
        thin = pg.mkPen(self.colour("data_1", 70), width=1)
        for one in curve.curves:
            self._items.append(pg.PlotDataItem(curve.positions, one, pen=thin))
        pen = pg.mkPen(self.colour("data_1"), width=2)
        self._items.append(pg.PlotDataItem(curve.positions, curve.middle, pen=pen))

    def _spots(self) -> list[dict[str, object]]:
        return [
            {
                "pos": (dot.position, dot.liking),
                "size": 9 + 4 * (dot.count - 1),
                "pen": pg.mkPen(self.colour("data_2", 255 if dot.is_strong else 90), width=2),
                "brush": pg.mkBrush(self.colour("data_2", 150 if dot.is_strong else 40)),
            }
            for dot in self._response.dots
        ]
