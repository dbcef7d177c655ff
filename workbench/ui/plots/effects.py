"""What each change did: the difference with its interval, beside the band too small to feel."""

from __future__ import annotations

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.theme import current
from workbench.ui.plots.reading import ReadPlot, Stop
from workbench.viewmodels.review_data import Effects

ROW = 34
LABEL_UNDER = 8  # px
AXIS = 56  # px for the figures under the rows and what they count


class EffectsPlot(ReadPlot):
    """One row a change, in the order ridden: a point and a line for 9 in 10.

    ``stand_beside(head, heights)`` makes the rows as high as those of a table with a head.
    ``change_picked`` with the key of a change whose point is clicked.
    """

    change_picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_effects", parent)
        self._effects = Effects()
        self._picked = ""
        self._items: list[pg.GraphicsObject] = []
        self._head = 0
        self._heights: tuple[int, ...] = ()
        self._label = self.words("", token="ink", anchor=(0.5, 0.0))
        self._label.hide()
        self.addItem(self._label, ignoreBounds=True)
        self.stop_picked.connect(self.change_picked)
        self.getPlotItem().invertY(True)
        self.getPlotItem().hideAxis("left")
        self.getAxis("bottom").setHeight(AXIS)

    def show_effects(self, effects: Effects, picked: str) -> None:
        """Show the changes; the picked one stands out."""
        if (effects, picked) == (self._effects, self._picked):
            return
        self._effects, self._picked = effects, picked
        self._draw()

    def stand_beside(self, head: int, heights: Sequence[int]) -> None:
        """Give every change the height its row has in the table, below a head as high as the table's."""
        if (head, tuple(heights)) == (self._head, self._heights):
            return
        self._head, self._heights = head, tuple(heights)
        if len(self._heights) == len(self._effects.rows):  # else other changes are about to be shown
            self._draw()

    def shown(self) -> Effects:
        """What is on screen."""
        return self._effects

    def middles(self) -> list[float]:
        """Give the height of each change's line below the top of the first row, in pixels."""
        heights = self._row_heights()
        return [sum(heights[:place]) + height / 2 for place, height in enumerate(heights)]

    def told_in_row(self) -> str:
        """What stands in the row that is read; empty while none is."""
        return str(self._label.textItem.toPlainText()) if self._label.isVisible() else ""

    def _tell(self, stop: Stop | None) -> None:
        """The rows can be far apart, so what is read stands in its row."""
        super()._tell(stop)
        row = next((row for row in self._effects.rows if stop is not None and row.key == stop.key), None)
        self._label.setVisible(row is not None)
        if stop is None or row is None:
            return
        self._label.setColor(self.colour("ink"))
        self._label.setPlainText(f"{row.effect_text} ({row.interval_text})")
        self._label.setFont(current().font("note"))
        self._label.setPos(0, stop.y + LABEL_UNDER)

    def _clicked(self, _item: object, spots: list[pg.SpotItem]) -> None:
        if len(spots):
            self.change_picked.emit(str(spots[0].data()))

    def _row_heights(self) -> tuple[int, ...]:
        count = len(self._effects.rows)
        return self._heights if len(self._heights) == count else (ROW,) * count

    def _add_changes(self) -> None:
        """One item for all lines that look alike and one for all points: many single ones take long to add."""
        lines: dict[tuple[int, int], list[tuple[float, float, float]]] = {}
        spots = []
        for middle, row in zip(self.middles(), self._effects.rows, strict=True):
            look = (255 if not self._picked or row.key == self._picked else 110, 3 if row.key == self._picked else 2)
            lines.setdefault(look, []).append((row.low, row.high, middle))
            colour = self.colour("data_1", look[0])
            spots.append(
                {
                    "pos": (row.effect, middle),
                    "pen": pg.mkPen(colour, width=look[1]),
                    "brush": pg.mkBrush(colour),
                    "data": row.key,
                }
            )
        for (alpha, width), told in lines.items():
            across = [value for low, high, _ in told for value in (low, high)]
            down = [middle for _, _, middle in told for _ in (0, 1)]
            pen = pg.mkPen(self.colour("data_1", alpha), width=width)
            self._items.append(pg.PlotDataItem(across, down, pen=pen, connect="pairs"))
        dots = pg.ScatterPlotItem(size=11, useCache=False)
        dots.addPoints(spots)
        dots.sigClicked.connect(self._clicked)
        self._items.append(dots)

    def _draw(self) -> None:
        for item in self._items:
            self.removeItem(item)
        rows, felt = self._effects.rows, self._effects.felt
        band = pg.LinearRegionItem((-felt, felt), movable=False, brush=pg.mkBrush(self.colour("line", 40)))
        for line in band.lines:
            line.setPen(pg.mkPen(None))
        band.setZValue(-10)
        zero = pg.InfiniteLine(0, pen=pg.mkPen(self.colour("line"), width=1))
        self._items = [band, zero]
        self._add_changes()
        for item in self._items:
            self.addItem(item)
        middles = self.middles()
        self.set_stops([Stop(row.effect, at, row.read, row.key) for at, row in zip(middles, rows, strict=True)])
        self.setLabel("bottom", self._effects.axis)
        reach = max([self._effects.reach, *(abs(value) for row in rows for value in (row.low, row.high))])
        self.setXRange(-reach, reach, padding=0.04)
        whole = max(sum(self._row_heights()), ROW)
        self.setYRange(0, whole, padding=0)
        self.getPlotItem().layout.setContentsMargins(0, self._head, 0, 0)
        self.setFixedHeight(whole + self._head + AXIS)
        self.say(" ".join(row.verdict for row in rows) or self._effects.said)
