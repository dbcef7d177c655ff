"""Ratings over the runs, with every change marked."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.base import Plot
from workbench.viewmodels.review_data import Period, RunPoint, Timeline

SYMBOLS = {"baseline": "o", "open": "t1", "closed": "t", "other": "s"}
BAND_TOP, SESSION_TOP = 10.5, 11.5  # where a band's words and, above, a session's words begin


class TimelinePlot(Plot):
    """One mark a run on the whole scale; a band a period; ``run_picked`` when a mark is clicked."""

    run_picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_timeline", parent)
        self._timeline = Timeline()
        self._strong: frozenset[str] = frozenset()
        self._marks = pg.ScatterPlotItem(useCache=False)
        self._marks.sigClicked.connect(self._clicked)
        self._bands: list[pg.GraphicsObject] = []
        self.addItem(self._marks)
        self.setYRange(0.6, 11.5, padding=0)
        self.getAxis("left").setTicks([[(value, str(value)) for value in range(1, 10)]])
        self.setFixedHeight(236)
        self.setLabel("left", "liking")

    def show_timeline(self, timeline: Timeline, strong_setups: frozenset[str]) -> None:
        """Show the runs; those on the named setups stand out."""
        if (timeline, strong_setups) == (self._timeline, self._strong):
            return
        self._timeline, self._strong = timeline, strong_setups
        self._draw()

    def shown(self) -> Timeline:
        """What is on screen."""
        return self._timeline

    def _draw(self) -> None:
        for item in self._bands:
            self.removeItem(item)
        self._bands = []
        for place, period in enumerate(self._timeline.periods):
            band = pg.LinearRegionItem((period.first - 0.5, period.last + 0.5), movable=False)
            pattern = Qt.BrushStyle.BDiagPattern if period.is_confounded else Qt.BrushStyle.SolidPattern
            brush = pg.mkBrush(self.colour("line", 70 if period.is_confounded else 26 if place % 2 else 0))
            brush.setStyle(pattern)
            band.setBrush(brush)
            for line in band.lines:
                line.setPen(pg.mkPen(self.colour("line", 120)))
            band.setZValue(-10)
            is_wide = period.last > period.first or len(self._timeline.periods) < 12
            label = self.words(_band_words(period, is_wide=is_wide))
            label.setPos(period.first - 0.45, BAND_TOP)
            self._bands += [band, label]
        for begins, said in self._timeline.sessions:
            words = self.words(said, token="ink")
            words.setPos(begins - 0.45, SESSION_TOP)
            self._bands.append(words)
        for item in self._bands:
            self.addItem(item)
        self._marks.setData([self._spot(point) for point in self._timeline.points])
        places = [point.place for point in self._timeline.points] or [1.0]
        self.setXRange(min(places) - 0.7, max(places) + 0.7, padding=0)
        self.getAxis("bottom").setTicks([[(p.place, p.said.split(",")[0][4:]) for p in self._timeline.points]])
        self.say(self._timeline.said)

    def _spot(self, point: RunPoint) -> dict[str, object]:
        is_strong = not self._strong or point.setup_id in self._strong
        token = "mute" if point.is_set_aside else "data_1" if point.mark == "baseline" else "data_2"
        alpha = 90 if point.is_warmup or not is_strong else 255
        filled = point.mark != "baseline" and not point.is_warmup
        return {
            "pos": (point.place, point.liking),
            "symbol": "x" if point.is_set_aside else SYMBOLS[point.mark],
            "size": 15 if is_strong and self._strong else 12,
            "pen": pg.mkPen(self.colour(token, alpha), width=2),
            "brush": pg.mkBrush(self.colour(token, alpha) if filled else self.colour("card")),
            "data": point.run_id,
        }

    def _clicked(self, _item: object, spots: list[pg.SpotItem]) -> None:
        if len(spots):
            self.run_picked.emit(str(spots[0].data()))


def _band_words(period: Period, *, is_wide: bool) -> str:
    """Say which setup a band is; a narrow one has room for the number only."""
    words = period.label if is_wide else period.label.removeprefix("no. ")
    return f"{words}, 2 changes" if period.is_confounded and is_wide else words
