"""Force over travel of a coil, with the readings it goes through, and the rate of each of its pieces."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.coil_sheets import CoilPlot


class CoilForcePlot(Plot):
    """Readings as rings, the line through them, and where the rider sits."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._plot: CoilPlot | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "force, N")
        self.setLabel("bottom", "travel, mm")
        self.setFixedHeight(210)

    def show_plot(self, plot: CoilPlot, words: str) -> None:
        """Show a spring."""
        self.say(words or f"{len(plot.points)} readings")
        if plot != self._plot:
            self._plot = plot
            self._draw()

    def shown(self) -> CoilPlot | None:
        """What is on screen."""
        return self._plot

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        plot = self._plot
        if plot is None:
            return
        if plot.travel_mm:
            pen = pg.mkPen(self.colour("data_1"), width=2)
            self._items.append(pg.PlotDataItem(plot.travel_mm, plot.force_n, pen=pen))
        if plot.points:
            travels, forces = zip(*plot.points, strict=True)
            pen = pg.mkPen(self.colour("data_2"), width=2)
            dots = pg.ScatterPlotItem(travels, forces, size=9, pen=pen, brush=pg.mkBrush(None), useCache=False)
            self._items.append(dots)
        if plot.at is not None:
            brush = pg.mkBrush(self.colour("accent"))
            self._items.append(pg.ScatterPlotItem([plot.at[0]], [plot.at[1]], size=12, brush=brush, useCache=False))
            label = self.words("the rider's load", token="ink", anchor=(1.0, 1.0))
            label.setPos(*plot.at)
            self._items.append(label)
        for item in self._items:
            self.addItem(item)
        across = [*plot.travel_mm, *(one for one, _ in plot.points)] or [1.0]
        up = [*plot.force_n, *(one for _, one in plot.points)] or [1.0]
        self.setXRange(0, max(across) or 1.0, padding=0.04)
        self.setYRange(0, max(up) or 1.0, padding=0.12)


class CoilRatePlot(Plot):
    """The rate over travel, one step a piece."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._plot: CoilPlot | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "rate, N/mm")
        self.setLabel("bottom", "travel, mm")
        self.setFixedHeight(150)

    def show_plot(self, plot: CoilPlot, words: str) -> None:
        """Show a spring."""
        self.say(f"Rate over travel. {words}")
        if plot != self._plot:
            self._plot = plot
            self._draw()

    def shown(self) -> CoilPlot | None:
        """What is on screen."""
        return self._plot

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        plot = self._plot
        if plot is None or not plot.rate_n_per_mm:
            return
        across = [at for at in plot.travel_mm for _ in (0, 1)][1:-1]
        up = [rate for rate in plot.rate_n_per_mm for _ in (0, 1)]
        self._items = [pg.PlotDataItem(across, up, pen=pg.mkPen(self.colour("data_1"), width=2))]
        if plot.at is not None:
            pen = pg.mkPen(self.colour("accent"), width=1)
            self._items.append(pg.InfiniteLine(plot.at[0], angle=90, pen=pen))
        for item in self._items:
            self.addItem(item)
        self.setXRange(0, plot.travel_mm[-1], padding=0.04)
        self.setYRange(0, max(up), padding=0.15)
