"""Ratings over the runs, with every change marked."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import pyqtgraph as pg
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.bands import SYMBOLS, Stretch, Stretches, dashed, ribbon
from workbench.ui.plots.reading import ReadPlot, Stop
from workbench.viewmodels.review_data import LapPoint, Period, RunPoint, Timeline, TrendPoint

LONGEST_TICK = "0:00.0"  # of the lap times, which stand below the ratings
BAND_TOP, SESSION_TOP = 10.5, 11.5  # where a band's words and, above, a session's words begin

MOST_NUMBERS = 60  # runs numbered, or bands named, side by side
MOST_TITLES = 3  # sessions named side by side
T = TypeVar("T")


def thinned(items: Sequence[T], most: int) -> Sequence[T]:
    """Give all of some things, or of too many every second, third or so on, beginning with the first."""
    return items[:: max(1, -(-len(items) // most))]


class RunsPlot(ReadPlot):
    """Marks over the runs in riding order; ``run_picked`` when one is clicked, or Enter pressed on it."""

    run_picked = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._timeline = Timeline()
        self._strong: frozenset[str] = frozenset()
        self._marks = pg.ScatterPlotItem(useCache=False)
        self._marks.sigClicked.connect(self._clicked)
        self._behind: list[pg.GraphicsObject] = []
        self.addItem(self._marks)
        self.stop_picked.connect(self.run_picked)
        self._picked = ""

    def show_timeline(self, timeline: Timeline, strong_setups: frozenset[str], picked: str = "") -> None:
        """Show the runs; those on the named setups stand out, and the run picked has a line through it."""
        if (timeline, strong_setups, picked) == (self._timeline, self._strong, self._picked):
            return
        self._timeline, self._strong, self._picked = timeline, strong_setups, picked
        self._draw()

    def shown(self) -> Timeline:
        """What is on screen."""
        return self._timeline

    def _clear(self) -> None:
        for item in self._behind:
            self.removeItem(item)
        self._behind = []

    def _add_bands(self) -> None:
        stretches = []
        for place, period in enumerate(self._timeline.periods):
            colour = self.colour("line", 70 if period.is_confounded else 26 if place % 2 else 0)
            stretches.append(Stretch(period.first - 0.5, period.last + 0.5, colour, period.is_confounded))
        self._behind.append(Stretches(stretches, self.colour("line", 120)))

    def _show_points(self, points: Sequence[RunPoint | LapPoint], heights: Sequence[float]) -> None:
        """Set the marks, and let them be read."""
        placed = list(zip(points, heights, strict=True))
        self._marks.setData([self._spot(one, height) for one, height in placed])
        self.set_stops([Stop(one.place, height, one.read or one.said, one.run_id) for one, height in placed])

    def _add_picked(self, points: tuple[RunPoint, ...] | tuple[LapPoint, ...]) -> None:
        pen = pg.mkPen(self.colour("accent"), width=2)
        self._behind += [pg.InfiniteLine(one.place, pen=pen) for one in points if one.run_id == self._picked]

    def _add_trend(self) -> None:
        for line in self._timeline.trend:
            places = [point.place for point in line]
            low, high = ([self._height(getattr(point, end)) for point in line] for end in ("low", "high"))
            self._behind += ribbon(places, low, high, self.colour("data_3", 40))
            middle = [self._height(point.value) for point in line]
            self._behind.append(pg.PlotDataItem(places, middle, pen=dashed(self.colour("data_3"))))

    def _add_ways_back(self, points: tuple[RunPoint, ...] | tuple[LapPoint, ...]) -> None:
        """A thin line from where a mark would stand to the answer as given."""
        shifted = self._shifted()
        for point in points:
            if point.run_id in shifted:
                ends = [self._height(_given(point)), self._height(shifted[point.run_id].without)]
                pen = pg.mkPen(self.colour("line", 160), width=1)
                self._behind.append(pg.PlotDataItem([point.place, point.place], ends, pen=pen))

    def _shifted(self) -> dict[str, TrendPoint]:
        return {point.run_id: point for line in self._timeline.trend for point in line}

    def _height(self, value: float) -> float:
        return value

    def _spot(self, point: RunPoint | LapPoint, height: float) -> dict[str, object]:
        is_strong = not self._strong or point.setup_id in self._strong
        token = "mute" if point.is_set_aside else "data_1" if point.mark == "baseline" else "data_2"
        alpha = 90 if point.is_warmup or not is_strong else 255
        filled = point.mark != "baseline" and not point.is_warmup and not point.is_set_aside
        return {
            "pos": (point.place, height),
            "symbol": "x" if point.is_set_aside else SYMBOLS[point.mark],
            "size": 15 if is_strong and self._strong else 12,
            "pen": pg.mkPen(self.colour(token, alpha), width=2),
            "brush": pg.mkBrush(self.colour(token, alpha) if filled else self.colour("card")),
            "data": point.run_id,
        }

    def _set_reach(self) -> None:
        self.widen_left((LONGEST_TICK,))
        places = [period.first for period in self._timeline.periods] + [one.last for one in self._timeline.periods]
        self.setXRange(min(places, default=1.0) - 0.7, max(places, default=1.0) + 0.7, padding=0)

    def _number(self, points: Sequence[RunPoint | LapPoint]) -> None:
        """Put the numbers of the runs below them, as many as have room."""
        numbered = thinned(points, MOST_NUMBERS)
        self.getAxis("bottom").setTicks([[(point.place, point.said.split(",")[0][4:]) for point in numbered]])

    def _clicked(self, _item: object, spots: list[pg.SpotItem]) -> None:
        if len(spots):
            self.run_picked.emit(str(spots[0].data()))


class TimelinePlot(RunsPlot):
    """One mark a run on the whole scale; a band a period."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_timeline", parent)
        self.setYRange(0.6, SESSION_TOP, padding=0)
        self.getAxis("left").setTicks([[(value, str(value)) for value in range(1, 10)]])
        self.setFixedHeight(236)
        self.setLabel("left", "liking")

    def _draw(self) -> None:
        self._clear()
        told = self._timeline
        self._add_bands()
        for period in told.periods if len(told.periods) <= MOST_NUMBERS else ():
            label = self.words(_band_words(period, is_wide=period.last > period.first or len(told.periods) < 12))
            label.setPos(period.first - 0.45, BAND_TOP)
            self._behind.append(label)
        for begins, said in thinned(told.sessions, MOST_TITLES):
            words = self.words(said, token="ink")
            words.fill = pg.mkBrush(self.colour("card"))  # the edges of the bands do not run through it
            words.setPos(begins - 0.45, SESSION_TOP)
            self._behind.append(words)
        shifted = {} if told.trend_of_laps else self._shifted()
        if shifted:
            self._add_trend()
            self._add_ways_back(told.points)
        self._add_picked(told.points)
        for item in self._behind:
            self.addItem(item)
        heights = [shifted[one.run_id].without if one.run_id in shifted else one.liking for one in told.points]
        self._show_points(told.points, heights)
        self._set_reach()
        self._number(told.points)
        self.say(told.said)


def _given(point: RunPoint | LapPoint) -> float:
    return point.liking if isinstance(point, RunPoint) else point.lap_s


def _band_words(period: Period, *, is_wide: bool) -> str:
    """Say which setup a band is; a narrow one has room for the number only."""
    words = period.label if is_wide else period.label.removeprefix("no. ")
    return f"{words}, 2 changes" if period.is_confounded and is_wide else words
