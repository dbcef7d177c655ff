"""A pen that draws on a plan of fixed size, fitted into a widget; lines keep their weight, words their size."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, hypot, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from workbench.ui.parts.labels import fit_lines, one_line
from workbench.ui.parts.theme import current

PLAN_WIDTH, PLAN_HEIGHT = 280.0, 300.0
LINE, STRONG = 1.5, 2.5
MOST_LINES = 3
Point = tuple[float, float]


class Ink:
    """Draws in plan coordinates (280 by 300, y downwards). Colours are names of the palette's tokens."""

    def __init__(self, painter: QPainter, area: QRectF) -> None:
        self.painter = painter
        self.area = area
        self._scale = min(area.width() / PLAN_WIDTH, area.height() / PLAN_HEIGHT)
        self._left = area.left() + (area.width() - PLAN_WIDTH * self._scale) / 2
        self._top = area.top() + (area.height() - PLAN_HEIGHT * self._scale) / 2
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)

    def at(self, point: Point) -> QPointF:
        """Give a plan point in widget coordinates."""
        return QPointF(self._left + point[0] * self._scale, self._top + point[1] * self._scale)

    def line(self, *points: Point, token: str = "ink", weight: float = LINE, dashed: bool = False) -> None:
        """Draw a line through points."""
        self._pen(token, weight, dashed)
        self.painter.drawPolyline(QPolygonF([self.at(point) for point in points]))

    def shape(self, *points: Point, token: str = "ink", fill: str = "card", weight: float = LINE) -> None:
        """Draw a closed outline, filled."""
        self._pen(token, weight)
        self._fill(fill)
        self.painter.drawPolygon(QPolygonF([self.at(point) for point in points]))

    def box(
        self, left: float, top: float, width: float, height: float, *, token: str = "ink", fill: str = "card"
    ) -> None:
        """Draw a rectangle, filled."""
        right, bottom = left + width, top + height
        self.shape((left, top), (right, top), (right, bottom), (left, bottom), token=token, fill=fill)

    def ring(self, centre: Point, radius: float, *, token: str = "ink", fill: str = "", weight: float = LINE) -> None:
        """Draw a circle."""
        self._pen(token, weight)
        self._fill(fill)
        self.painter.drawEllipse(self.at(centre), radius * self._scale, radius * self._scale)

    def curve(self, start: Point, *parts: Sequence[Point], token: str = "ink", weight: float = LINE) -> None:
        """Draw a curve; each part is two control points and an end."""
        path = QPainterPath(self.at(start))
        for first, second, end in parts:
            path.cubicTo(self.at(first), self.at(second), self.at(end))
        self._pen(token, weight)
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        self.painter.drawPath(path)

    def arc(self, centre: Point, radius: float, start: float, sweep: float, *, token: str = "ink") -> Point:
        """Draw an arc (degrees, clockwise from the right, as y points down) and give its end."""
        points = []
        for step in range(33):
            angle = (start + sweep * step / 32) * pi / 180
            points.append((centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)))
        self.line(*points, token=token, weight=STRONG)
        return points[-1]

    def arrow(self, start: Point, end: Point, *, token: str = "ink", weight: float = LINE, both: bool = False) -> None:
        """Draw an arrow with an open head."""
        self.line(start, end, token=token, weight=weight)
        self.head(end, (end[0] - start[0], end[1] - start[1]), token=token, weight=weight)
        if both:
            self.head(start, (start[0] - end[0], start[1] - end[1]), token=token, weight=weight)

    def head(self, tip: Point, along: Point, *, token: str = "ink", weight: float = LINE, size: float = 8.0) -> None:
        """Draw an arrow head at a tip, pointing along a direction."""
        if hypot(*along) == 0:
            return
        angle = atan2(along[1], along[0])
        wings = [(tip[0] - size * cos(angle + turn), tip[1] - size * sin(angle + turn)) for turn in (pi / 7, -pi / 7)]
        self.line(wings[0], tip, wings[1], token=token, weight=weight)

    def ground(self, y: float, left: float = 10, right: float = 270) -> None:
        """Draw the ground, hatched below."""
        self.line((left, y), (right, y))
        for x in range(int(left) + 8, int(right), 14):
            self.line((x, y), (x - 6, y + 6), token="line", weight=1)

    def words(
        self, at: Point, text: str, *, side: str = "right", token: str = "mute", size: str = "note", bold: bool = False
    ) -> None:
        """Write beside a point: side "right", "left", "above" or "below" of it, or "middle"; wrapped at its edge."""
        font = current().font(size, bold=bold)
        spot = self.at(at)
        beside = {"right": self.area.right() - spot.x() - 4, "left": spot.x() - self.area.left() - 4}
        over = 2 * min(spot.x() - self.area.left(), self.area.right() - spot.x())
        lines = fit_lines(one_line(text), font, max(beside.get(side, over), 24.0) + 1, MOST_LINES)
        metrics = QFontMetricsF(font)
        height = metrics.height()
        first = {"above": spot.y() - len(lines) * height - 3, "below": spot.y() + 3}
        top = first.get(side, spot.y() - len(lines) * height / 2)
        self.painter.setFont(font)
        self.painter.setPen(current().colour(token))
        for row, line in enumerate(lines):
            width = metrics.horizontalAdvance(line)
            left = {"right": spot.x() + 4, "left": spot.x() - width - 4}.get(side, spot.x() - width / 2)
            self.painter.drawText(QRectF(left, top + row * height, width + 2, height), Qt.TextFlag.TextSingleLine, line)

    def distance(self, top: Point, bottom: Point, text: str) -> None:
        """Draw the distance to measure, upright, with its value to the left: the one thing to look at."""
        self.arrow(top, bottom, token="accent", weight=LINE, both=True)
        middle = (top[0] - 4, (top[1] + bottom[1]) / 2)
        self.words(middle, text, side="left", token="accent", size="text", bold=True)

    def _pen(self, token: str, weight: float, dashed: bool = False) -> None:
        style = Qt.PenStyle.DashLine if dashed else Qt.PenStyle.SolidLine
        pen = QPen(current().colour(token), weight, style, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
        self.painter.setPen(pen)

    def _fill(self, token: str) -> None:
        if token:
            self.painter.setBrush(current().colour(token))
        else:
            self.painter.setBrush(Qt.BrushStyle.NoBrush)
