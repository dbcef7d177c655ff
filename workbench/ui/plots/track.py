"""A recorded track from above, with the gates across it."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.theme import current
from workbench.ui.plots.base import Plot
from workbench.viewmodels.lap_gates import Line, TrackPlan

HEIGHT = 300
RING = 18  # px; around a gate, which can be a few pixels long


class TrackPlot(Plot):
    """The way ridden to scale, north up; ``spot_picked`` with metres east and north where it is clicked."""

    spot_picked = Signal(float, float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("lap_plan", parent)
        self._plan = TrackPlan()
        self._items: list[pg.GraphicsObject] = []
        self.getPlotItem().hideAxis("left")
        self.setLabel("bottom", "metres; north is up")
        self.getPlotItem().getViewBox().setAspectLocked(True)
        self.setFixedHeight(HEIGHT)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.scene().sigMouseClicked.connect(self._clicked)

    def show_plan(self, plan: TrackPlan) -> None:
        """Show a track and its gates."""
        if plan != self._plan:
            is_other = plan.lines != self._plan.lines
            self._plan = plan
            self._draw()
            if is_other:
                self._fit()

    def shown(self) -> TrackPlan:
        """What is on screen."""
        return self._plan

    def pick(self, east_m: float, north_m: float) -> None:
        """Pick a spot, as a click on it does."""
        self.spot_picked.emit(east_m, north_m)

    def _clicked(self, event: object) -> None:
        view = self.getPlotItem().getViewBox()
        at = event.scenePos()  # type: ignore[attr-defined]
        if view.sceneBoundingRect().contains(at):
            spot = view.mapSceneToView(at)
            self.pick(spot.x(), spot.y())

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        self._items = []
        for line in self._plan.lines:
            self._items.append(
                pg.PlotDataItem(
                    [east for east, _ in line], [north for _, north in line], pen=pg.mkPen(self.colour("ink"), width=1)
                )
            )
        if self._plan.lines:
            self._items += self._named(self._plan.lines[0][0], "track begins", "mute", "o")
        for words, gate in self._plan.gates:
            self._items += self._gate(words, gate)
        for item in self._items:
            self.addItem(item)
        self.say(self._plan.said)

    def _gate(self, words: str, gate: Line) -> list[pg.GraphicsObject]:
        """A gate as a line, with a mark that is in sight however small the line is on the plan."""
        (x0, y0), (x1, y1) = gate
        token = "data_2" if words == "finish" else "data_1"
        line = pg.PlotDataItem([x0, x1], [y0, y1], pen=pg.mkPen(self.colour(token), width=4))
        symbol = "s" if words == "finish" else "d"
        return [line, *self._named((0.5 * (x0 + x1), 0.5 * (y0 + y1)), words, token, symbol)]

    def _named(self, at: tuple[float, float], words: str, token: str, symbol: str) -> list[pg.GraphicsObject]:
        pen = pg.mkPen(self.colour(token), width=2)
        mark = pg.ScatterPlotItem([at[0]], [at[1]], size=RING, symbol=symbol, pen=pen, brush=None, useCache=False)
        width = QFontMetrics(current().font("note")).horizontalAdvance(words)
        label = self.words(words, token="ink" if token != "mute" else "mute", anchor=(-RING / width, 0.5))
        label.setPos(*at)
        return [mark, label]

    def _fit(self) -> None:
        spots = [spot for line in self._plan.lines for spot in line]
        if spots:
            east, north = [spot[0] for spot in spots], [spot[1] for spot in spots]
            self.setRange(xRange=(min(east), max(east)), yRange=(min(north), max(north)), padding=0.12)
