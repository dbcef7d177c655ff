"""The number being worked on: bold and large, its unit in mute beside it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.parts.labels import one_line
from workbench.ui.parts.theme import SPACE_8, announcer, current

SHORT = 8  # letters: a remark no longer than this always has its room


class BigNumber(QWidget):
    """One value with its unit and an optional remark, on one baseline; shrinks nothing, cuts the remark first."""

    def __init__(
        self, number: str = "", unit: str = "", remark: str = "", *, name: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._number, self._unit, self._remark = number, unit, remark
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        if name:
            self.setObjectName(name)
        announcer.changed.connect(self._restyle)
        self.set_number(number, unit, remark)

    def set_number(self, number: str, unit: str = "", remark: str = "") -> None:
        """Show another value; no number shows a dash."""
        self._number, self._unit, self._remark = number or "–", unit, remark
        self.setAccessibleName(" ".join(part for part in (number or "no value", unit, remark) if part))
        self._restyle()

    def text(self) -> str:
        """All that is shown, as one line."""
        return self.accessibleName()

    def sizeHint(self) -> QSize:
        number, unit, remark = self._widths()
        return QSize(int(number + unit + remark) + 4, int(self._metrics("number", True).height()))

    def minimumSizeHint(self) -> QSize:
        number, unit, remark = self._widths()
        return QSize(
            min(int(number + unit + (remark if len(self._remark) <= SHORT else 0)) + 4, 320), self.sizeHint().height()
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = current()
        painter = QPainter(self)
        base = self._metrics("number", True).ascent()
        left = 0.0
        for words, token, size, bold, gap in (
            (self._number, "ink", "number", True, 0),
            (self._unit, "mute", "text", False, SPACE_8),
            (self._remark, "mute", "text", False, 2 * SPACE_8),
        ):
            if not words or left >= self.width():
                continue
            metrics = self._metrics(size, bold)
            painter.setFont(theme.font(size, bold=bold))
            painter.setPen(theme.colour(token))
            left += gap
            room = max(0.0, self.width() - left)
            cut = metrics.elidedText(one_line(words), Qt.TextElideMode.ElideRight, room)
            area = QRectF(left, base - metrics.ascent(), room, metrics.height())
            flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignAbsolute | Qt.TextFlag.TextSingleLine
            painter.drawText(area, flags, cut)
            left += metrics.horizontalAdvance(cut)

    def _widths(self) -> tuple[float, float, float]:
        small = self._metrics("text", False)
        number = self._metrics("number", True).horizontalAdvance(self._number[:60])
        unit = small.horizontalAdvance(self._unit[:60]) + SPACE_8 if self._unit else 0.0
        remark = small.horizontalAdvance(self._remark[:200]) + 2 * SPACE_8 if self._remark else 0.0
        return number, unit, remark

    def _metrics(self, size: str, bold: bool) -> QFontMetricsF:
        return QFontMetricsF(current().font(size, bold=bold))

    def _restyle(self, _theme: object = None) -> None:
        self.updateGeometry()
        self.update()
