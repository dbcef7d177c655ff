"""Parts several plots draw alike."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor

SYMBOLS = {"baseline": "o", "open": "t1", "closed": "t", "other": "s"}


def region(low: float, high: float, colour: QColor, *, hatched: bool = False, edge: QColor | None = None) -> Any:
    """Give a band over a stretch of the horizontal axis, behind everything."""
    band = pg.LinearRegionItem((low, high), movable=False)
    brush = pg.mkBrush(colour)
    brush.setStyle(Qt.BrushStyle.BDiagPattern if hatched else Qt.BrushStyle.SolidPattern)
    band.setBrush(brush)
    for line in band.lines:
        line.setPen(pg.mkPen(edge) if edge is not None else pg.mkPen(None))
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
