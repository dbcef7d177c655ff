"""What the rulers share: the axis, labels stacked above it, and a height that follows them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QRegion, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.parts.label_rows import place_labels
from workbench.ui.parts.labels import one_line
from workbench.ui.parts.theme import announcer, current

EDGE = 14.0
TICK = 26.0
LONGEST_LABEL = 0.55


@dataclass(frozen=True, slots=True)
class Label:
    """Words over a place of the axis; ``share`` runs from 0 to 1."""

    share: float
    words: str
    bold: bool = False
    token: str = "ink"


class RulerBase(QWidget):
    """What both rulers share: the axis, rows of labels above it, and a height that follows them."""

    def __init__(self, *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        if name:
            self.setObjectName(name)
        announcer.changed.connect(self._restyle)

    def labels(self) -> list[Label]:
        """The labels above the axis."""
        raise NotImplementedError

    def heightForWidth(self, width: int) -> int:
        rows = 1 + max((row for _, row, _ in self._placed(width)), default=-1)
        return int(rows * self.row() + TICK + 2 * self.row() + 10)

    def sizeHint(self) -> QSize:
        return QSize(560, self.heightForWidth(self.width()))

    def minimumSizeHint(self) -> QSize:
        return QSize(220, int(TICK + 3 * self.row()))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.updateGeometry()

    def label_rects(self) -> list[QRectF]:
        """Where the labels are, in the order of `labels`."""
        row, base = self.row(), self.axis() - TICK
        return [
            QRectF(left, base - (line + 1) * row, self._label_width(words), row)
            for left, line, words in self._placed(self.width())
        ]

    def row(self) -> float:
        return QFontMetricsF(current().font("text", bold=True)).height() + 2

    def axis(self) -> float:
        return self.height() - 2 * self.row() - 2

    def x_of(self, share: float) -> float:
        return EDGE + min(max(share, 0.0), 1.0) * (self.width() - 2 * EDGE)

    def _label_width(self, words: str) -> float:
        metrics = QFontMetricsF(current().font("text", bold=True))
        return min(metrics.horizontalAdvance(one_line(words)[:200]) + 4, self.width() * LONGEST_LABEL)

    def _placed(self, width: int) -> list[tuple[float, int, str]]:
        shown = self.labels()
        inner = width - 2 * EDGE
        centres = [EDGE + min(max(label.share, 0.0), 1.0) * inner for label in shown]
        spots = place_labels(centres, [self._label_width(label.words) for label in shown], span=float(width))
        return [(left, row, label.words) for (left, row), label in zip(spots, shown, strict=True)]

    def draw_labels(self, painter: QPainter) -> None:
        """Draw the words, and a stem from each to the axis that passes behind the words below it."""
        theme = current()
        rects, shown = self.label_rects(), self.labels()
        self._draw_stems(painter, rects, [self.x_of(label.share) for label in shown])
        for rect, label in zip(rects, shown, strict=True):
            painter.setFont(theme.font("text", bold=label.bold))
            painter.setPen(theme.colour(label.token))
            words_in(painter, rect, label.words, Qt.AlignmentFlag.AlignHCenter)

    def _draw_stems(self, painter: QPainter, rects: Sequence[QRectF], places: Sequence[float]) -> None:
        painter.save()
        free = QRegion(self.rect())
        for rect in rects:
            free = free.subtracted(QRegion(rect.toAlignedRect()))
        painter.setClipRegion(free)
        painter.setPen(QPen(current().colour("line"), 1))
        for rect, x in zip(rects, places, strict=True):
            painter.drawLine(QPointF(x, rect.bottom()), QPointF(x, self.axis() - TICK))
        painter.restore()

    def draw_axis(self, painter: QPainter, ticks: Sequence[tuple[float, bool, str]]) -> None:
        """Draw the axis with ticks of (place, long, words)."""
        theme = current()
        axis = self.axis()
        painter.setPen(QPen(theme.colour("ink"), 1))
        painter.drawLine(QPointF(self.x_of(0), axis), QPointF(self.x_of(1), axis))
        painter.setFont(theme.font("note"))
        for share, is_long, words in ticks:
            x = self.x_of(share)
            painter.setPen(QPen(theme.colour("ink" if is_long else "line"), 1))
            painter.drawLine(QPointF(x, axis), QPointF(x, axis + (7 if is_long else 4)))
            if words:
                painter.setPen(theme.colour("mute"))
                width = QFontMetricsF(painter.font()).horizontalAdvance(words) + 2
                left = min(max(x - width / 2, 0.0), self.width() - width)
                words_in(painter, QRectF(left, axis + 9, width, self.row()), words, Qt.AlignmentFlag.AlignHCenter)

    def _restyle(self, _theme: object = None) -> None:
        self.updateGeometry()
        self.update()


def words_in(painter: QPainter, area: QRectF, words: str, side: Qt.AlignmentFlag) -> None:
    cut = QFontMetricsF(painter.font()).elidedText(one_line(words), Qt.TextElideMode.ElideRight, area.width() + 1)
    flags = side | Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignAbsolute | Qt.TextFlag.TextSingleLine
    painter.drawText(area.adjusted(0, 0, 1, 0), flags, cut)
