"""Where work can hurt somebody: the warning sign and plain words, in the colour kept for it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, announcer, current


class CareSign(QWidget):
    """The warning triangle, drawn so that it needs no font."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        announcer.changed.connect(self._restyle)

    def sizeHint(self) -> QSize:
        side = current().sizes.text + 8
        return QSize(side, side)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_care_sign(painter, QPointF(self.width() / 2, self.height() / 2), self.height() - 3)

    def _restyle(self, _theme: object = None) -> None:
        self.updateGeometry()
        self.update()


def draw_care_sign(painter: QPainter, centre: QPointF, height: float) -> None:
    """Draw the warning triangle around a point."""
    colour = current().colour("care")
    half, x, y = height / 2, centre.x(), centre.y()
    painter.setPen(QPen(colour, 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(
        QPolygonF([QPointF(x, y - half + 1), QPointF(x + half, y + half - 1), QPointF(x - half, y + half - 1)])
    )
    painter.drawLine(QPointF(x, y - half * 0.28), QPointF(x, y + half * 0.24))
    painter.drawPoint(QPointF(x, y + half * 0.58))


class CareNote(QWidget):
    """The sign and a sentence. Empty words hide it."""

    def __init__(self, text: str = "", *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_8)
        self._words = Words("", "care")
        row.addWidget(CareSign(), 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._words, 1)
        if name:
            self.setObjectName(name)
            self._words.setObjectName(f"{name}_words")
        self.set_text(text)

    def set_text(self, text: str) -> None:
        """Show another sentence, or nothing."""
        self._words.setText(text)
        self.setAccessibleName(f"Take care: {text}" if text else "")
        self.setVisible(bool(text))

    def text(self) -> str:
        """The sentence."""
        return self._words.text()
