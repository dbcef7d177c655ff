"""Parts several plots draw alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter

SYMBOLS = {"baseline": "o", "open": "t1", "closed": "t", "other": "s"}


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the horizontal axis and how it is shaded."""

    low: float
    high: float
    colour: QColor
    hatched: bool = False


class Stretches(pg.GraphicsObject):  # type: ignore[misc]
    """Bands over stretches of the horizontal axis, each with a line at both ends: one item, however many there are."""

    def __init__(self, stretches: Sequence[Stretch], edge: QColor) -> None:
        super().__init__()
        self._stretches = tuple(stretches)
        self._edge = pg.mkPen(edge)
        self.setZValue(-10)

    def boundingRect(self) -> QRectF:
        """All of the height in sight; a line may reach half its width beyond the ends."""
        seen = QRectF(self.viewRect())
        low = min((one.low for one in self._stretches), default=0.0)
        high = max((one.high for one in self._stretches), default=0.0)
        beyond = self.pixelLength(pg.Point(1, 0)) or 0.0
        return QRectF(low - beyond, seen.top(), high - low + 2 * beyond, seen.height())

    def dataBounds(self, *_args: object, **_more: object) -> None:
        """Bands lie behind what is shown and claim no room of their own."""

    def viewRangeChanged(self, *_args: object) -> None:
        """Reach over the height that is in sight now."""
        self.prepareGeometryChange()

    def paint(self, painter: QPainter, *_args: object) -> None:
        """Fill the stretches, then draw their ends."""
        top, bottom = self.viewRect().top(), self.viewRect().bottom()
        painter.setPen(Qt.PenStyle.NoPen)
        for one in self._stretches:
            painter.setBrush(shading(one.colour, hatched=one.hatched))
            painter.drawRect(QRectF(one.low, top, one.high - one.low, bottom - top))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(self._edge)
        for one in self._stretches:
            for end in (one.low, one.high):
                painter.drawLine(QPointF(end, top), QPointF(end, bottom))


def shading(colour: QColor, *, hatched: bool = False) -> QBrush:
    """Give the brush of a band."""
    return QBrush(colour, Qt.BrushStyle.BDiagPattern if hatched else Qt.BrushStyle.SolidPattern)


def region(low: float, high: float, colour: QColor, *, hatched: bool = False) -> Any:
    """Give a band over a stretch of the horizontal axis, behind everything."""
    band = pg.LinearRegionItem((low, high), movable=False)
    band.setBrush(shading(colour, hatched=hatched))
    for line in band.lines:
        line.setPen(pg.mkPen(None))
    band.setZValue(-10)
    return band


def ribbon(
    places: Sequence[float], low: Sequence[float], high: Sequence[float], colour: QColor
) -> list[pg.GraphicsObject]:
    """Give the band between two lines."""
    under = pg.PlotDataItem(list(places), list(low), pen=pg.mkPen(None))
    over = pg.PlotDataItem(list(places), list(high), pen=pg.mkPen(None))
    filled = pg.FillBetweenItem(under, over, brush=pg.mkBrush(colour))
    filled.setZValue(-8)
    return [under, over, filled]


def dashed(colour: QColor, width: int = 2) -> Any:
    """Give a pen for what was estimated."""
    return pg.mkPen(colour, width=width, style=Qt.PenStyle.DashLine)
