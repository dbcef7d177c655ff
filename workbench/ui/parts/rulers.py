"""Two rulers: travel with the measured sag to scale, and an adjuster from closed to open, click by click."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.label_rows import nice_step
from workbench.ui.parts.labels import one_line
from workbench.ui.parts.ruler_base import EDGE, TICK, Label, RulerBase, words_in
from workbench.ui.parts.theme import current


@dataclass(frozen=True, slots=True)
class SagTick:
    """One mark on the travel: "measured" (thin), "centre" (bold) or "predicted" (hollow)."""

    at_mm: float
    label: str = ""
    kind: str = "measured"


@dataclass(frozen=True, slots=True)
class SagScale:
    """What a sag ruler shows. ``shown_per_mm`` and ``unit`` put the axis into another length unit."""

    travel_mm: float
    ticks: tuple[SagTick, ...] = ()
    target_low_mm: float | None = None
    target_high_mm: float | None = None
    target_words: str = ""
    caption: str = ""
    shown_per_mm: float = 1.0
    unit: str = "mm"


@dataclass(frozen=True, slots=True)
class Marker:
    """One position with its words: "now" (filled), "proposed" (hollow) or "other" (a plain stem)."""

    at: float
    words: str
    kind: str = "other"


@dataclass(frozen=True, slots=True)
class AdjusterScale:
    """What an adjuster ruler shows: steps from closed, and the positions on it. ``tested`` is the part tried."""

    steps: int
    markers: tuple[Marker, ...] = ()
    tested: tuple[int, int] | None = None
    closed_word: str = "closed"
    open_word: str = "open"
    names: tuple[str, ...] = ()
    unknown_words: str = "not counted yet"


class SagRuler(RulerBase):
    """Travel to scale with the target band and every measurement. The caller names it for screen readers."""

    def __init__(
        self, scale: SagScale | None = None, *, name: str = "sag_ruler", parent: QWidget | None = None
    ) -> None:
        self._scale = scale or SagScale(100.0)
        super().__init__(name=name, parent=parent)

    def set_scale(self, scale: SagScale) -> None:
        """Show other values."""
        self._scale = scale
        self._restyle()

    def labels(self) -> list[Label]:
        scale = self._scale
        shown = [Label(self._share(t.at_mm), t.label, t.kind != "measured") for t in scale.ticks if t.label]
        if scale.target_words and scale.target_low_mm is not None and scale.target_high_mm is not None:
            middle = self._share((scale.target_low_mm + scale.target_high_mm) / 2)
            shown.append(Label(middle, scale.target_words, False, "accent"))
        return shown

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_band(painter)
        self.draw_labels(painter)
        self.draw_axis(painter, self._axis_ticks())
        for tick in self._scale.ticks:
            self._draw_tick(painter, tick)
        theme = current()
        painter.setFont(theme.font("note"))
        painter.setPen(theme.colour("mute"))
        area = QRectF(0, self.axis() + 9 + self.row() - 2, self.width(), self.row())
        words_in(painter, area, self._scale.caption or f"travel, {self._scale.unit}", Qt.AlignmentFlag.AlignLeft)

    def _share(self, at_mm: float) -> float:
        return at_mm / self._scale.travel_mm if self._scale.travel_mm > 0 else 0.0

    def _axis_ticks(self) -> list[tuple[float, bool, str]]:
        scale = self._scale
        span = scale.travel_mm * scale.shown_per_mm
        big = nice_step(span, self.width() - 2 * EDGE, least_px=current().sizes.note * 3.2)
        small = nice_step(span, self.width() - 2 * EDGE, least_px=6)
        ticks = [(i * small / span, False, "") for i in range(int(span / small + 1e-9) + 1)] if span > 0 else []
        count = int(span / big + 1e-9) if span > 0 else 0
        ticks += [(i * big / span, True, f"{i * big:g}") for i in range(count + 1)]
        if span > 0 and count * big < span * (1 - 1e-9):
            crowded = (span - count * big) / span * (self.width() - 2 * EDGE) < current().sizes.note * 3
            ticks.append((1.0, True, "" if crowded else f"{span:.3g}"))
        return ticks

    def _draw_band(self, painter: QPainter) -> None:
        scale = self._scale
        if scale.target_low_mm is None or scale.target_high_mm is None:
            return
        left, right = self.x_of(self._share(scale.target_low_mm)), self.x_of(self._share(scale.target_high_mm))
        area = QRectF(left, self.axis() - TICK, max(right - left, 2.0), TICK)
        painter.fillRect(area, current().colour("band"))
        painter.setPen(QPen(current().colour("accent"), 1))
        painter.drawLine(area.topLeft(), area.bottomLeft())
        painter.drawLine(area.topRight(), area.bottomRight())

    def _draw_tick(self, painter: QPainter, tick: SagTick) -> None:
        theme, axis, x = current(), self.axis(), self.x_of(self._share(tick.at_mm))
        if tick.kind == "predicted":
            painter.setPen(QPen(theme.colour("ink"), 1.5))
            painter.setBrush(theme.colour("card"))
            painter.drawRect(QRectF(x - 3, axis - TICK + 2, 6, TICK - 3))
            return
        is_centre = tick.kind == "centre"
        painter.setPen(QPen(theme.colour("ink"), 3 if is_centre else 1.5))
        painter.drawLine(QPointF(x, axis - TICK * (1 if is_centre else 0.55)), QPointF(x, axis))


class AdjusterRuler(RulerBase):
    """An adjuster with closed at the left and open at the right. The caller names it for screen readers."""

    def __init__(
        self, scale: AdjusterScale | None = None, *, name: str = "adjuster_ruler", parent: QWidget | None = None
    ) -> None:
        self._scale = scale or AdjusterScale(0)
        super().__init__(name=name, parent=parent)

    def set_scale(self, scale: AdjusterScale) -> None:
        """Show other values."""
        self._scale = scale
        self._restyle()

    def labels(self) -> list[Label]:
        return [Label(self._share(m.at), m.words, m.kind != "other") for m in self._scale.markers if m.words]

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._scale.tested is not None:
            first, last = (self.x_of(self._share(place)) for place in self._scale.tested)
            painter.fillRect(QRectF(first, self.axis() - 8, last - first, 8), current().colour("band"))
        self.draw_labels(painter)
        self.draw_axis(painter, self._axis_ticks())
        for marker in self._scale.markers:
            self._draw_marker(painter, marker)
        theme = current()
        if self._scale.steps <= 0:
            painter.setFont(theme.font("text"))
            painter.setPen(theme.colour("mute"))
            over = QRectF(0, self.axis() - self.row() - 4, self.width(), self.row())
            words_in(painter, over, self._scale.unknown_words, Qt.AlignmentFlag.AlignHCenter)
        painter.setFont(theme.font("note", bold=True))
        painter.setPen(theme.colour("ink"))
        area = QRectF(0, self.axis() + 9 + self.row() - 2, self.width(), self.row())
        half = area.width() / 2 - 8
        words_in(
            painter,
            QRectF(area.left(), area.top(), half, area.height()),
            self._scale.closed_word,
            Qt.AlignmentFlag.AlignLeft,
        )
        words_in(
            painter,
            QRectF(area.right() - half, area.top(), half, area.height()),
            self._scale.open_word,
            Qt.AlignmentFlag.AlignRight,
        )

    def _share(self, at: float) -> float:
        return at / self._scale.steps if self._scale.steps > 0 else 0.0

    def _axis_ticks(self) -> list[tuple[float, bool, str]]:
        steps = self._scale.steps
        if steps <= 0:
            return []
        if self._scale.names:
            return [(self._share(i), True, self._name(i)) for i in range(steps + 1)]
        big = max(1, round(nice_step(steps, self.width() - 2 * EDGE, least_px=current().sizes.note * 2.6)))
        room = (self.width() - 2 * EDGE) / steps
        small = 1 if room >= 3 else big
        ticks = [(self._share(i), False, "") for i in range(0, steps + 1, small)]
        last = steps - steps % big
        ticks += [(self._share(i), True, str(i)) for i in range(0, steps + 1, big)]
        if last != steps:
            crowded = (steps - last) * room < current().sizes.note * 2.2
            ticks.append((1.0, True, "" if crowded else str(steps)))
        return ticks

    def _name(self, index: int) -> str:
        """The name of a position, cut to the room it has."""
        if index >= len(self._scale.names):
            return ""
        metrics = QFontMetricsF(current().font("note"))
        room = (self.width() - 2 * EDGE) / self._scale.steps - 10
        return metrics.elidedText(one_line(self._scale.names[index]), Qt.TextElideMode.ElideRight, room)

    def _draw_marker(self, painter: QPainter, marker: Marker) -> None:
        theme, axis, x = current(), self.axis(), self.x_of(self._share(marker.at))
        ink = theme.colour("ink")
        painter.setPen(QPen(theme.colour("line") if marker.kind == "other" else ink, 1.5))
        painter.drawLine(QPointF(x, axis - TICK), QPointF(x, axis))
        if marker.kind == "other":
            return
        painter.setBrush(ink if marker.kind == "now" else theme.colour("card"))
        painter.drawPolygon(QPolygonF([QPointF(x, axis), QPointF(x - 7, axis - 13), QPointF(x + 7, axis - 13)]))
