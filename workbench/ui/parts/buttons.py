"""Push buttons that paint themselves: the verb, plain, link and key looks, cut with an ellipsis when narrow."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QPushButton, QSizePolicy, QWidget

from workbench.ui.parts.labels import fit_lines, one_line
from workbench.ui.parts.theme import SPACE_8, SPACE_16, announcer, current

KINDS = ("verb", "plain", "link", "key", "option")


def draw_focus(painter: QPainter, area: QRectF, token: str = "accent") -> None:
    """Draw the focus ring: two pixels, just inside the area."""
    painter.setPen(QPen(current().colour(token), 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.SquareCap))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(area.adjusted(1, 1, -1, -1))


def rove(buttons: Sequence[QAbstractButton], index: int, *, go: bool = False) -> None:
    """Make a row of buttons one stop for Tab, at the given place; ``go`` moves the focus there."""
    for place, button in enumerate(buttons):
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus if place == index else Qt.FocusPolicy.ClickFocus)
    if go:
        buttons[index].setFocus(Qt.FocusReason.TabFocusReason)


class Button(QPushButton):
    """A push button of one kind.

    "verb" is the next step, "plain" any other, "link" a quiet one, "key" a big one for the bench, "option" one of
    a few choices. Keys and options may be checkable. ``size`` is one of the type sizes; ``wrap`` allows two lines.
    """

    def __init__(
        self,
        text: str,
        kind: str = "plain",
        *,
        size: str = "text",
        wrap: bool = False,
        name: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._size, self._wrap, self._least_height = size, wrap, 0
        if kind not in KINDS:
            raise ValueError(f"kind is one of {KINDS}")
        self.kind = kind
        self.set_text(text)
        if name:
            self.setObjectName(name)
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        announcer.changed.connect(self._restyle)
        self._restyle()

    def set_text(self, text: str) -> None:
        """Show words as they are; an ampersand in a name is an ampersand."""
        self.setText(text.replace("&", "&&"))
        self.setAccessibleName(text)
        self.updateGeometry()

    def set_least_height(self, height: int) -> None:
        """Be at least this high in any theme."""
        self._least_height = height
        self.updateGeometry()

    def words(self) -> str:
        """The words on the button."""
        return self.text().replace("&&", "&")

    def is_cut(self) -> bool:
        """Whether some of the words do not fit."""
        room = self.width() - 2 * self._padding()
        if self._wrap:
            return fit_lines(one_line(self.words()), self.font(), room, most=2)[-1].endswith("…")
        return self.fontMetrics().horizontalAdvance(one_line(self.words())) > room

    def _padding(self) -> int:
        return 4 if self.kind in ("link", "key", "option") else SPACE_8

    def sizeHint(self) -> QSize:
        sizes = current().sizes
        height = max(self._least_height, sizes.key if self.kind in ("verb", "key") else sizes.target)
        padding = SPACE_8 if self.kind == "link" else SPACE_16 + SPACE_8
        widest = QFontMetrics(current().font(self._size, bold=self.kind != "plain"))  # so that choosing moves nothing
        width = widest.horizontalAdvance(self.words()[:200]) + 2 * padding + 2
        if self._wrap:
            height, width = max(height, 2 * widest.height() + 2 * SPACE_8), min(width, 120)
        return QSize(max(height, width), height)

    def minimumSizeHint(self) -> QSize:
        hint = self.sizeHint()
        return QSize(min(hint.width(), hint.height() if self._wrap or self.kind == "key" else 132), hint.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        area = QRectF(self.rect())
        if self.hasFocus():
            draw_focus(painter, area)
        words_in = self._draw_body(painter, area.adjusted(3, 3, -3, -3) if self.hasFocus() else area)
        painter.setPen(words_in)
        painter.setFont(self.font())
        inner = self.rect().adjusted(self._padding(), 0, -self._padding(), 0)
        if self._wrap:
            lines = fit_lines(one_line(self.words()), self.font(), inner.width(), most=2)
            painter.drawText(inner, Qt.AlignmentFlag.AlignCenter, "\n".join(lines))
            return
        cut = self.fontMetrics().elidedText(one_line(self.words()), Qt.TextElideMode.ElideRight, inner.width())
        painter.drawText(inner, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextSingleLine, cut)
        if self.kind == "link" and not self.isChecked():
            self._underline(painter, inner.center().x() + 0.5, self.fontMetrics().horizontalAdvance(cut))

    def _underline(self, painter: QPainter, middle: float, width: int) -> None:
        """A line under a quiet button: the accent is kept for the next step."""
        below = self.rect().center().y() + self.fontMetrics().height() / 2 + 1.5
        painter.setPen(QPen(current().colour("line"), 1))
        painter.drawLine(QPointF(middle - width / 2, below), QPointF(middle + width / 2, below))

    def _draw_body(self, painter: QPainter, area: QRectF) -> QColor:
        """Fill and outline the button; give the colour its words take."""
        theme = current()
        pressed = self.isDown()
        edge = area.adjusted(0.5, 0.5, -0.5, -0.5)
        if not self.isEnabled():
            painter.setPen(QPen(theme.colour("line"), 1, Qt.PenStyle.DashLine))
            painter.drawRect(edge)
            return theme.colour("mute")
        if self.kind == "verb":
            fill = theme.colour("accent")
            painter.fillRect(area, fill.darker(115) if pressed else fill.lighter(106) if self.underMouse() else fill)
            return theme.colour("on_accent")
        if self.isChecked():
            return self._draw_checked(painter, area)
        if self.kind == "link":
            if pressed or self.underMouse():
                painter.fillRect(area, theme.colour("band"))
            return theme.colour("ink")
        painter.fillRect(area, theme.colour("band" if pressed else "card"))
        painter.setPen(QPen(theme.colour("ink" if self.underMouse() else "line"), 1))
        painter.drawRect(edge)
        return theme.colour("ink")

    def _draw_checked(self, painter: QPainter, area: QRectF) -> QColor:
        """A chosen key is filled and carries a bar under its word, so that it reads in grey too."""
        theme = current()
        painter.fillRect(area, theme.colour("ink"))
        bar = QRectF(area.center().x() - 9, area.bottom() - 8, 18, 3)
        painter.fillRect(bar, theme.colour("card"))
        return theme.colour("card")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
        elif self.isCheckable() or event.isAutoRepeat():
            event.ignore()  # the row of keys decides
        else:
            self.click()

    def nextCheckState(self) -> None:
        super().nextCheckState()
        self._restyle()

    def _restyle(self, _theme: object = None) -> None:
        bold = self.kind == "verb" or self.kind == "link" or self.isChecked()
        self.setFont(current().font(self._size, bold=bold))
        self.updateGeometry()
        self.update()

    def mark(self, chosen: bool) -> None:
        """Show the key chosen or not, without a signal."""
        was_blocked = self.blockSignals(True)
        self.setChecked(chosen)
        self.blockSignals(was_blocked)
        self._restyle()
