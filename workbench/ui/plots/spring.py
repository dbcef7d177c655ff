"""Force over travel, with where the rider sits and how far it is known."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.spring_curves import SpringCurve

ROOM_FOR_NAMES = 0.2  # of the width, at the right
MOST_LOADS = 12  # of the rider's load: above, the curve is cut off


class SpringPlot(Plot):
    """The resting curve, the quick one, the band of what is possible, and beside it the curve as measured."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("spring_plot", parent)
        self._curve: SpringCurve | None = None
        self._kept: SpringCurve | None = None
        self._labels = ("", "")
        self._items: list[pg.GraphicsObject] = []
        self.setFixedHeight(300)

    def show_curve(self, curve: SpringCurve, kept: SpringCurve | None, force_label: str, travel_label: str) -> None:
        """Show a curve, and the one as measured while something is tried."""
        shown = (curve, kept, (force_label, travel_label))
        if shown == (self._curve, self._kept, self._labels):
            return
        self._curve, self._kept, self._labels = shown
        self._draw()

    def shown(self) -> SpringCurve | None:
        """What is on screen."""
        return self._curve

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        curve, kept = self._curve, self._kept
        if curve is None:
            return
        self.setLabel("left", self._labels[0])
        self.setLabel("bottom", self._labels[1])
        if curve.low:
            low = pg.PlotDataItem(curve.travel_mm, curve.low, pen=pg.mkPen(None))
            high = pg.PlotDataItem(curve.travel_mm, curve.high, pen=pg.mkPen(None))
            self._items += [low, high, pg.FillBetweenItem(low, high, brush=pg.mkBrush(self.colour("data_1", 50)))]
        if kept is not None:
            pen = pg.mkPen(self.colour("mute"), width=1, style=Qt.PenStyle.DashLine)
            self._items.append(pg.PlotDataItem(kept.travel_mm, kept.force, pen=pen))
            if kept.sag_mm is not None:
                ring = pg.mkPen(self.colour("mute"), width=2)
                at = ([kept.sag_mm], [kept.load])
                self._items.append(pg.ScatterPlotItem(*at, size=10, pen=ring, brush=None, useCache=False))
        if curve.quick != curve.force:
            pen = pg.mkPen(self.colour("data_2"), width=2, style=Qt.PenStyle.DotLine)
            self._items.append(pg.PlotDataItem(curve.travel_mm, curve.quick, pen=pen))
        pen = pg.mkPen(self.colour("data_1"), width=2)
        self._items.append(pg.PlotDataItem(curve.travel_mm, curve.force, pen=pen))
        self._items.append(
            pg.InfiniteLine(curve.load, angle=0, pen=pg.mkPen(self.colour("line"), style=Qt.PenStyle.DashLine))
        )
        if curve.sag_mm is not None:
            dot = pg.ScatterPlotItem(
                [curve.sag_mm], [curve.load], size=12, brush=pg.mkBrush(self.colour("accent")), useCache=False
            )
            label = self.words(f"sag {curve.sag_mm:.1f} mm", token="ink", anchor=(-0.06, 0.0))
            label.setPos(curve.sag_mm, curve.load)
            self._items += [dot, label]
        self._items += self._names(curve, kept)
        for item in self._items:
            self.addItem(item)
        top = _top(curve, kept)
        self.setXRange(0, curve.travel_mm[-1] * (1 + ROOM_FOR_NAMES), padding=0.02)
        self.setYRange(0, top, padding=0.04)
        self.say("Force over travel")

    def _names(self, curve: SpringCurve, kept: SpringCurve | None) -> list[pg.GraphicsObject]:
        """Name each curve where it ends; those that end too close together give way to the first."""
        is_alike = curve.quick == curve.force  # a coil pushes alike at rest and in a hit
        ends = [("tried" if is_alike and kept else "the spring" if is_alike else "at rest", curve.force[-1], "data_1")]
        if not is_alike:
            ends.append(("in a quick hit", curve.quick[-1], "data_2"))
        if kept is not None:
            ends.append(("as measured", kept.force[-1], "mute"))
        top = _top(curve, kept)
        named: list[tuple[float, pg.GraphicsObject]] = []
        for text, force, token in ends:
            at = min(force, top)
            if any(abs(at - other) < 0.07 * top for other, _ in named):
                at += 0.08 * top if force > named[0][0] else -0.08 * top
            label = self.words(text, token=token, anchor=(0.0, 0.5))
            label.setPos(curve.travel_mm[-1], at)
            named.append((at, label))
        return [label for _, label in named]


def _top(curve: SpringCurve, kept: SpringCurve | None) -> float:
    """Give the force the drawing goes up to: what is drawn, cut off far above the rider's load."""
    forces = (*curve.quick, *curve.high, *(kept.force if kept is not None else ()))
    return min(max(forces), MOST_LOADS * curve.load)
