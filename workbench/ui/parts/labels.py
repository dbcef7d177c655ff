"""Words on the sheet: plain text only, wrapped anywhere if need be, or cut with an ellipsis."""

from __future__ import annotations

import re

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QResizeEvent, QTextLayout, QTextOption
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from workbench.ui.parts.theme import announcer, current

# Each role is a size, whether it is bold, and a colour.
ROLES = {
    "text": ("text", False, "ink"),
    "strong": ("text", True, "ink"),
    "title": ("title", True, "ink"),
    "number": ("number", True, "ink"),
    "mute": ("text", False, "mute"),
    "note": ("note", False, "mute"),
    "note_strong": ("note", True, "ink"),
    "accent": ("text", True, "accent"),
    "care": ("text", True, "care"),
    "problem": ("note", True, "care"),
}
WIDEST = 48  # in heights of the letters, about 85 characters: longer lines are hard to follow


BREAKS = re.compile(r"[ \t\n\r\f\v\x1c-\x1f\x85\u2028\u2029]+")


def isolate(text: str) -> str:
    """Wrap a name so that its direction cannot disturb the words around it."""
    return f"\u2068{text}\u2069"


def one_line(text: str) -> str:
    """Give the text with every line break turned into a space; the thin space before a unit stays thin."""
    return BREAKS.sub(" ", text).strip()


def lay_out(text: str, font: QFont, width: float) -> QTextLayout:
    """Lay plain text out in lines of at most the given width, breaking long words where there is no other way."""
    layout = QTextLayout(text.replace("\n", "\u2028"), font)
    option = QTextOption(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignAbsolute)
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    layout.beginLayout()
    top = 0.0
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(width, 1.0))
        line.setPosition(QPointF(0, top))
        top += line.height()
    layout.endLayout()
    return layout


def fit_lines(text: str, font: QFont, width: float, most: int) -> list[str]:
    """Break text into at most so many lines; what is left over is cut with an ellipsis in the last one."""
    layout = lay_out(text, font, width)
    starts = [layout.lineAt(index).textStart() for index in range(layout.lineCount())]
    lines = [text[start:end].strip() for start, end in zip(starts, [*starts[1:], None], strict=True)]
    if len(lines) > most:
        rest = one_line(text[starts[most - 1] :][:400])
        cut = QFontMetricsF(font).elidedText(f"{rest} …", Qt.TextElideMode.ElideRight, width)
        lines = [*lines[: most - 1], cut]
    return lines


class Words(QLabel):
    """A plain-text label in one of the roles of `ROLES`; ``elide`` keeps it to one line."""

    def __init__(
        self, text: str = "", role: str = "text", *, elide: bool = False, name: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.is_elided = elide
        self._role = role
        self._layout: QTextLayout | None = None
        self._layout_width = -1
        self._heights: dict[int, int] = {}  # by width: a layout asks for several in turn, again and again
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(not elide)
        self.setWordWrap(not elide)  # a QLabel otherwise takes the height for its width away at every new text
        if elide:
            policy.setVerticalPolicy(QSizePolicy.Policy.Fixed)
        self.setSizePolicy(policy)
        if name:
            self.setObjectName(name)
        announcer.changed.connect(self._restyle)
        self._restyle()
        self.setText(text)

    def setText(self, text: str) -> None:
        """Show other words; the whole text stays readable to a screen reader."""
        if text == self.text():  # else the whole sheet around would be laid out anew
            return
        self._forget()
        super().setText(text)
        self.updateGeometry()

    def set_words(self, text: str) -> None:
        """Show other words and hide the label when there are none."""
        self.setText(text)
        self.setVisible(bool(text))

    def set_role(self, role: str) -> None:
        """Take another role of `ROLES`."""
        self._role = role
        self._restyle()

    def is_cut(self) -> bool:
        """Whether some of the words do not fit."""
        return self.is_elided and self._advance() > self.contentsRect().width()

    def heightForWidth(self, width: int) -> int:
        margins = self.contentsMargins()
        if self.is_elided or not self.text():
            return self._line_height()
        inner = width - margins.left() - margins.right()
        if inner not in self._heights:
            self._heights[inner] = round(self._laid_out(inner).boundingRect().height() + 0.5)
        return self._heights[inner] + margins.top() + margins.bottom()

    def sizeHint(self) -> QSize:
        width = min(self._advance(), self._widest())
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        least = 40 if self.is_elided else 96
        return QSize(min(self._advance(), least), self._line_height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if not self.is_elided and event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setFont(self.font())
        painter.setPen(current().colour(ROLES[self._role][2] if self.isEnabled() else "mute"))
        area = self.contentsRect()
        if self.is_elided:
            cut = self.fontMetrics().elidedText(one_line(self.text()), Qt.TextElideMode.ElideRight, area.width())
            painter.drawText(area, self._flags(), cut)
            return
        layout = self._laid_out(area.width())
        free = max(0.0, area.height() - layout.boundingRect().height())
        centred = bool(self.alignment() & Qt.AlignmentFlag.AlignVCenter)
        layout.draw(painter, QPointF(area.left(), area.top() + (free / 2 if centred else 0)))

    def _flags(self) -> int:
        sideways = self.alignment() & Qt.AlignmentFlag.AlignHorizontal_Mask
        flags = sideways | Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignAbsolute
        return flags.value | Qt.TextFlag.TextSingleLine.value

    def _advance(self) -> int:
        margins = self.contentsMargins()
        lines = [one_line(self.text())] if self.is_elided else self.text().split("\n")
        widest = max(self.fontMetrics().horizontalAdvance(line[:400]) for line in lines)
        return widest + 2 + margins.left() + margins.right()

    def _line_height(self) -> int:
        margins = self.contentsMargins()
        return self.fontMetrics().height() + margins.top() + margins.bottom()

    def _widest(self) -> int:
        return WIDEST * self.font().pixelSize()

    def _laid_out(self, width: int) -> QTextLayout:
        width = min(width, self._widest())
        if self._layout is None or self._layout_width != width:
            self._layout = lay_out(self.text(), self.font(), width)
            self._layout_width = width
        return self._layout

    def _forget(self) -> None:
        self._layout = None
        self._heights.clear()

    def _restyle(self, _theme: object = None) -> None:
        size, bold, _ = ROLES[self._role]
        self.setFont(current().font(size, bold=bold))
        self._forget()
        self.updateGeometry()
        self.update()
