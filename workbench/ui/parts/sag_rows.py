"""Sag against its target band, one row a measurement, and the next one hollow with its interval."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.parts.labels import one_line
from workbench.ui.parts.ruler_base import words_in
from workbench.ui.parts.theme import announcer, current

GAP = 12.0
LEAST_SPAN = 0.08  # of travel; closer in, readings would seem further apart than anybody feels


@dataclass(frozen=True, slots=True)
class SagRow:
    """One row: words at both sides, the sag, single readings, and an interval. Fractions of travel.

    ``kind`` is "earlier" (quiet), "round", "now" (bold) or "predicted" (hollow).
    """

    label: str
    words: str
    at: float
    kind: str = "round"
    ticks: tuple[float, ...] = ()
    low: float | None = None
    high: float | None = None


class SagRows(QWidget):
    """Rows over one percent axis with the target band behind them. The caller names it for screen readers."""

    def __init__(self, *, name: str = "sag_rows", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._rows: tuple[SagRow, ...] = ()
        self._band = (0.0, 0.0)
        self._band_words = ""
        announcer.changed.connect(self._restyle)

    def set_rows(self, rows: Sequence[SagRow], low: float, high: float, band_words: str) -> None:
        """Show other rows."""
        self._rows, self._band, self._band_words = tuple(rows), (low, high), band_words
        self._restyle()

    def rows(self) -> tuple[SagRow, ...]:
        """What is on screen."""
        return self._rows

    def sizeHint(self) -> QSize:
        return QSize(560, int((len(self._rows) + 2) * self._row() + 12))

    def minimumSizeHint(self) -> QSize:
        return QSize(300, self.sizeHint().height())

    def span(self) -> tuple[float, float]:
        """The part of the travel that is drawn, in whole percent."""
        shown = [value for row in self._rows for value in (row.at, *row.ticks, row.low, row.high) if value is not None]
        low, high = min((*shown, self._band[0])), max((*shown, self._band[1]))
        room = max(0.01, (LEAST_SPAN - (high - low)) / 2)
        return max(0.0, floor(100 * (low - room)) / 100), min(1.0, ceil(100 * (high + room)) / 100)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area, row = self._area(), self._row()
        self._draw_band(painter, area)
        for place, one in enumerate(self._rows):
            self._draw_row(painter, one, area, area.top() + (place + 0.5) * row)
        self._draw_axis(painter, area)

    def _row(self) -> float:
        return QFontMetricsF(current().font("text", bold=True)).height() + 8

    def _area(self) -> QRectF:
        """Where the marks go: between the words at the left and at the right."""
        metrics = QFontMetricsF(current().font("text", bold=True))

        def room(words: Sequence[str]) -> float:
            widest = max((metrics.horizontalAdvance(one_line(text)[:80]) for text in words), default=0.0)
            return min(widest, 0.3 * self.width()) + GAP

        left = room([row.label for row in self._rows])
        right = room([row.words for row in self._rows])
        return QRectF(left, self._row(), max(self.width() - left - right, 60.0), len(self._rows) * self._row())

    def _x(self, area: QRectF, at: float) -> float:
        low, high = self.span()
        return area.left() + (min(max(at, low), high) - low) / (high - low) * area.width()

    def _draw_band(self, painter: QPainter, area: QRectF) -> None:
        theme = current()
        left, right = (self._x(area, end) for end in self._band)
        band = QRectF(left, area.top(), max(right - left, 2.0), area.height())
        painter.fillRect(band, theme.colour("band"))
        painter.setPen(QPen(theme.colour("accent"), 1))
        painter.drawLine(band.topLeft(), band.bottomLeft())
        painter.drawLine(band.topRight(), band.bottomRight())
        painter.setFont(theme.font("text"))
        width = QFontMetricsF(painter.font()).horizontalAdvance(self._band_words) + 4
        start = min(max(band.center().x() - width / 2, 0.0), max(self.width() - width, 0.0))
        painter.setPen(theme.colour("accent"))
        words_in(painter, QRectF(start, 2, width, self._row()), self._band_words, Qt.AlignmentFlag.AlignHCenter)

    def _draw_row(self, painter: QPainter, row: SagRow, area: QRectF, y: float) -> None:
        theme = current()
        ink = theme.colour("mute" if row.kind == "earlier" else "ink")
        painter.setPen(QPen(theme.colour("line"), 1, Qt.PenStyle.DotLine))
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
        painter.setPen(QPen(ink, 1.5))
        for tick in row.ticks:
            x = self._x(area, tick)
            painter.drawLine(QPointF(x, y - 5), QPointF(x, y + 5))
        self._draw_mark(painter, row, area, y, ink)
        painter.setFont(theme.font("text", bold=row.kind in ("now", "predicted")))
        painter.setPen(ink)
        top, height = y - self._row() / 2 + 3, self._row()
        words_in(painter, QRectF(0, top, area.left() - GAP, height), row.label, Qt.AlignmentFlag.AlignLeft)
        right = QRectF(area.right() + GAP, top, self.width() - area.right() - GAP, height)
        words_in(painter, right, row.words, Qt.AlignmentFlag.AlignLeft)

    def _draw_mark(self, painter: QPainter, row: SagRow, area: QRectF, y: float, ink: QColor) -> None:
        x = self._x(area, row.at)
        if row.low is not None and row.high is not None:
            ends = [self._x(area, end) for end in (row.low, row.high)]
            painter.setPen(QPen(ink, 1.5))
            painter.drawLine(QPointF(ends[0], y), QPointF(ends[1], y))
            for end in ends:
                painter.drawLine(QPointF(end, y - 4), QPointF(end, y + 4))
        size = 6.0 if row.kind == "now" else 5.0
        painter.setPen(QPen(ink, 2))
        painter.setBrush(current().colour("card") if row.kind == "predicted" else ink)
        painter.drawEllipse(QPointF(x, y), size, size)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _draw_axis(self, painter: QPainter, area: QRectF) -> None:
        theme = current()
        painter.setFont(theme.font("note"))
        low, high = (round(100 * end) for end in self.span())
        room = QFontMetricsF(theme.font("note")).horizontalAdvance("88\u2009%") + 12
        step = next(one for one in (1, 2, 5, 10, 20, 50) if (high - low) / one * room <= max(area.width(), 2 * room))
        for whole in range(low + -low % step, high + 1, step):
            x = self._x(area, whole / 100)
            painter.setPen(QPen(theme.colour("ink"), 1))
            painter.drawLine(QPointF(x, area.bottom()), QPointF(x, area.bottom() + 5))
            painter.setPen(theme.colour("mute"))
            words_in(
                painter,
                QRectF(x - 24, area.bottom() + 6, 48, self._row()),
                f"{whole}\u2009%",
                Qt.AlignmentFlag.AlignHCenter,
            )
        painter.setPen(QPen(theme.colour("ink"), 1))
        painter.drawLine(area.bottomLeft(), area.bottomRight())

    def _restyle(self, _theme: object = None) -> None:
        self.updateGeometry()
        self.update()
