"""The leverage ratio over wheel travel."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.leverage import RatioCurve


class RatioPlot(Plot):
    """The fitted ratio with its 90 % band."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("leverage_plot", parent)
        self._curve: RatioCurve | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "leverage ratio")
        self.setLabel("bottom", "wheel travel, mm")
        self.setFixedHeight(210)

    def show_curve(self, curve: RatioCurve, said: str) -> None:
        """Show a curve."""
        self.say(said)
        if curve != self._curve:
            self._curve = curve
            self._draw()

    def shown(self) -> RatioCurve | None:
        """What is on screen."""
        return self._curve

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        curve = self._curve
        if curve is None:
            return
        low = pg.PlotDataItem(curve.wheel_mm, curve.low, pen=pg.mkPen(None))
        high = pg.PlotDataItem(curve.wheel_mm, curve.high, pen=pg.mkPen(None))
        band = pg.FillBetweenItem(low, high, brush=pg.mkBrush(self.colour("data_1", 50)))
        line = pg.PlotDataItem(curve.wheel_mm, curve.ratio, pen=pg.mkPen(self.colour("data_1"), width=2))
        self._items = [low, high, band, line]
        for item in self._items:
            self.addItem(item)
        self.setXRange(0, curve.wheel_mm[-1], padding=0.02)
        self.setYRange(min(curve.low) - 0.2, max(curve.high) + 0.2, padding=0)


class TravelPlot(Plot):
    """Wheel travel over shock stroke: the points read and the fit through them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("leverage_points", parent)
        self._curve: RatioCurve | None = None
        self._items: list[pg.GraphicsObject] = []
        self.setLabel("left", "wheel travel, mm")
        self.setLabel("bottom", "shock stroke, mm")
        self.setFixedHeight(200)

    def show_curve(self, curve: RatioCurve) -> None:
        """Show points and fit."""
        if curve != self._curve:
            self._curve = curve
            self.say(f"{len(curve.points)} points read and the fit through them")
            self._draw()

    def shown(self) -> RatioCurve | None:
        """What is on screen."""
        return self._curve

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        curve = self._curve
        if curve is None:
            return
        line = pg.PlotDataItem(curve.stroke_mm, curve.wheel_mm, pen=pg.mkPen(self.colour("data_1"), width=2))
        strokes, wheels = zip(*curve.points, strict=True)
        pen = pg.mkPen(self.colour("data_2"), width=2)
        dots = pg.ScatterPlotItem(strokes, wheels, size=9, pen=pen, brush=pg.mkBrush(None), useCache=False)
        self._items = [line, dots]
        for item in self._items:
            self.addItem(item)
        self.setXRange(0, curve.stroke_mm[-1], padding=0.03)
        self.setYRange(0, curve.wheel_mm[-1], padding=0.03)
