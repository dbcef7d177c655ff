"""Force over travel of a coil, with the readings it goes through, and the rate of each of its pieces."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.coil_sheets import CoilPlot as CoilLines


class CoilPlot(Plot):
    """Something of a coil over its travel, drawn anew when the spring is another."""

    UP, HEIGHT = "", 0  # what the axis says, and px

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._plot: CoilLines | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", self.UP)
        self.setLabel("bottom", "travel, mm")
        self.setFixedHeight(self.HEIGHT)

    def show_plot(self, plot: CoilLines, words: str) -> None:
        """Show a spring."""
        self.say(self._words(plot, words))
        if plot != self._plot:
            self._plot = plot
            self._draw()

    def shown(self) -> CoilLines | None:
        """What is on screen."""
        return self._plot

    def _words(self, plot: CoilLines, words: str) -> str:
        raise NotImplementedError

    def _items_of(self, plot: CoilLines) -> list[pg.GraphicsObject]:
        """Give what is drawn of a spring, and make room for it."""
        raise NotImplementedError

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = [] if self._plot is None else self._items_of(self._plot)
        for item in self._items:
            self.addItem(item)


class CoilForcePlot(CoilPlot):
    """Readings as rings, the line through them, and where the rider sits."""

    UP, HEIGHT = "force, N", 210

    def _words(self, plot: CoilLines, words: str) -> str:
        return words or f"{len(plot.points)} readings"

    def _items_of(self, plot: CoilLines) -> list[pg.GraphicsObject]:
        items: list[pg.GraphicsObject] = []
        if plot.travel_mm:
            pen = pg.mkPen(self.colour("data_1"), width=2)
            items.append(pg.PlotDataItem(plot.travel_mm, plot.force_n, pen=pen))
        if plot.points:
            travels, forces = zip(*plot.points, strict=True)
            pen = pg.mkPen(self.colour("data_2"), width=2)
            dots = pg.ScatterPlotItem(travels, forces, size=9, pen=pen, brush=pg.mkBrush(None), useCache=False)
            items.append(dots)
        if plot.at is not None:
            brush = pg.mkBrush(self.colour("accent"))
            items.append(pg.ScatterPlotItem([plot.at[0]], [plot.at[1]], size=12, brush=brush, useCache=False))
            label = self.words("the rider's load", token="ink", anchor=(1.0, 1.0))
            label.setPos(*plot.at)
            items.append(label)
        across = [*plot.travel_mm, *(one for one, _ in plot.points)] or [1.0]
        up = [*plot.force_n, *(one for _, one in plot.points)] or [1.0]
        self.setXRange(0, max(across) or 1.0, padding=0.04)
        self.setYRange(0, max(up) or 1.0, padding=0.12)
        return items


class CoilRatePlot(CoilPlot):
    """The rate over travel, one step a piece."""

    UP, HEIGHT = "rate, N/mm", 150

    def _words(self, plot: CoilLines, words: str) -> str:
        return f"Rate over travel. {words}"

    def _items_of(self, plot: CoilLines) -> list[pg.GraphicsObject]:
        if not plot.rate_n_per_mm:
            return []
        across = [at for at in plot.travel_mm for _ in (0, 1)][1:-1]
        up = [rate for rate in plot.rate_n_per_mm for _ in (0, 1)]
        items: list[pg.GraphicsObject] = [pg.PlotDataItem(across, up, pen=pg.mkPen(self.colour("data_1"), width=2))]
        if plot.at is not None:
            pen = pg.mkPen(self.colour("accent"), width=1)
            items.append(pg.InfiniteLine(plot.at[0], angle=90, pen=pen))
        self.setXRange(0, plot.travel_mm[-1], padding=0.04)
        self.setYRange(0, max(up), padding=0.15)
        return items
