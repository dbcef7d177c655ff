"""The job as a line of numbered marks: each station with its word and its state, by shape and by word."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QFontMetricsF, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from workbench.ui.parts.buttons import draw_focus, rove
from workbench.ui.parts.theme import SPACE_4, announcer, current

STATES = ("now", "due", "done", "skipped", "blocked")


@dataclass(frozen=True, slots=True)
class Mark:
    """One station on the line: its key, its word, one of `STATES`, why it is so, and whether its sheet lies open."""

    key: str
    word: str
    state: str = "due"
    reason: str = ""
    is_open: bool = False


class _MarkButton(QAbstractButton):
    """One mark with its word and state below it."""

    def __init__(self, number: int, mark: Mark, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.number = number
        self.setObjectName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.take(mark)

    def take(self, mark: Mark) -> None:
        """Show another state."""
        self.mark = mark
        self.setText(mark.word)
        said = f"{self.number} {mark.word}: {mark.state}{', open' if mark.is_open else ''}"
        self.setAccessibleName(said)
        self.setAccessibleDescription(mark.reason)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(96, line_height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        side = mark_side()
        centre = QPointF(self.width() / 2, side / 2 + SPACE_4)
        self._draw_line(painter, centre, side)
        draw_mark(painter, centre, side, self.number, self.mark.state)
        self._draw_words(painter, centre.y() + side / 2 + SPACE_4)
        if self.mark.is_open:
            self._draw_open(painter)
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()))

    def _draw_open(self, painter: QPainter) -> None:
        """Underline the station whose sheet lies open."""
        half = min(self.width() / 2 - 8, 44.0)
        foot, middle = self.height() - 2.0, self.width() / 2
        painter.setPen(QPen(current().colour("ink"), 3))
        painter.drawLine(QPointF(middle - half, foot), QPointF(middle + half, foot))

    def _draw_line(self, painter: QPainter, centre: QPointF, side: float) -> None:
        painter.setPen(QPen(current().colour("line"), 1))
        gap = side / 2 + SPACE_4
        if self.number > 1:
            painter.drawLine(QPointF(0, centre.y()), QPointF(centre.x() - gap, centre.y()))
        if not self.property("is_last"):
            painter.drawLine(QPointF(centre.x() + gap, centre.y()), QPointF(self.width(), centre.y()))

    def _draw_words(self, painter: QPainter, top: float) -> None:
        theme = current()
        state, is_now = self.mark.state, self.mark.state == "now"
        word_font, state_font = theme.font("text", bold=is_now or self.mark.is_open), theme.font("note")
        token = "accent" if is_now else "mute" if state in ("blocked", "skipped") and not self.mark.is_open else "ink"
        top += _centred(painter, self.mark.word, word_font, token, QRectF(2, top, self.width() - 4, 200))
        _centred(painter, state, state_font, "mute", QRectF(2, top, self.width() - 4, 200))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End):
            event.ignore()
        else:
            super().keyPressEvent(event)


def _centred(painter: QPainter, words: str, font: QFont, token: str, area: QRectF) -> float:
    """Draw words centred, in at most one line; give its height."""
    metrics = QFontMetricsF(font)
    painter.setFont(font)
    painter.setPen(current().colour(token))
    cut = metrics.elidedText(words, Qt.TextElideMode.ElideRight, area.width())
    line = QRectF(area.left(), area.top(), area.width(), metrics.height())
    painter.drawText(line, Qt.AlignmentFlag.AlignHCenter | Qt.TextFlag.TextSingleLine, cut)
    return metrics.height()


def mark_side() -> float:
    """How large a mark is in this theme."""
    return 34.0 if current().bench else 24.0


def line_height() -> int:
    """How high the line is in this theme."""
    theme = current()
    words = QFontMetricsF(theme.font("text", bold=True)).height() + QFontMetricsF(theme.font("note")).height()
    return int(mark_side() + words + 4 * SPACE_4)


def draw_mark(painter: QPainter, centre: QPointF, side: float, number: int, state: str) -> None:
    """Draw one mark: each state has a shape of its own.

    Now is a filled square, due an open ring, done a filled disc with a tick, skipped a dashed ring with a bar,
    blocked a ring with a cross.
    """
    theme = current()
    half = side / 2
    box = QRectF(centre.x() - half, centre.y() - half, side, side)
    ink = theme.colour({"now": "accent", "done": "ink", "due": "mute"}.get(state, "mute"))
    style = Qt.PenStyle.DashLine if state == "skipped" else Qt.PenStyle.SolidLine
    painter.setPen(QPen(ink, 2, style))
    painter.setBrush(ink if state in ("now", "done") else Qt.BrushStyle.NoBrush)
    if state == "now":
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawRect(box)
    else:
        painter.drawEllipse(box.adjusted(1, 1, -1, -1))
    if state == "done":
        painter.setPen(QPen(theme.colour("card"), 2))
        steps = [QPointF(-0.22, 0.02), QPointF(-0.06, 0.18), QPointF(0.24, -0.18)]
        painter.drawPolyline([centre + step * side for step in steps])
    elif state == "blocked":
        painter.setPen(QPen(ink, 2))
        for reach in (QPointF(side * 0.17, side * 0.17), QPointF(side * 0.17, -side * 0.17)):
            painter.drawLine(centre - reach, centre + reach)
    elif state == "skipped":
        painter.setPen(QPen(ink, 2))
        painter.drawLine(centre - QPointF(side * 0.2, 0), centre + QPointF(side * 0.2, 0))
    else:
        painter.setPen(theme.colour("on_accent" if state == "now" else "mute"))
        painter.setFont(theme.font("note", bold=True))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(number))


class JobLine(QWidget):
    """The stations in order; ``station_requested(key)`` when a mark is pressed.

    Left and right move along the line, Enter or Space opens. When there is no room for the words, the marks go
    into two lines; a word that still does not fit is cut on screen and whole for a screen reader.
    """

    station_requested = Signal(str)

    def __init__(self, *, name: str = "job_line", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setAccessibleName("The job, station by station")
        self._buttons: list[_MarkButton] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        announcer.changed.connect(self._restyle)

    def set_marks(self, marks: Sequence[Mark]) -> None:
        """Show stations and their states."""
        if [mark.key for mark in marks] != [button.mark.key for button in self._buttons]:
            self._build(marks)
        for button, mark in zip(self._buttons, marks, strict=True):
            button.take(mark)
        if not any(button.hasFocus() for button in self._buttons):
            rove(self._buttons, next((place for place, mark in enumerate(marks) if mark.state == "now"), 0))
        self._restyle()

    def marks(self) -> tuple[Mark, ...]:
        """The marks shown."""
        return tuple(button.mark for button in self._buttons)

    def heightForWidth(self, width: int) -> int:
        return line_height() * self._lines(width)

    def sizeHint(self) -> QSize:
        width = int(max(self._word_width(), 80) * max(1, len(self._buttons)))
        return QSize(width, self.heightForWidth(self.width()))

    def minimumSizeHint(self) -> QSize:
        return QSize(4 * 64, line_height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place()
        self.updateGeometry()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        here = next((i for i, button in enumerate(self._buttons) if button.hasFocus()), None)
        last = len(self._buttons) - 1
        goals = {
            Qt.Key.Key_Left: (here or 0) - 1,
            Qt.Key.Key_Right: (here if here is not None else -1) + 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }
        goal = goals.get(Qt.Key(event.key()))
        if goal is None or not self._buttons:
            super().keyPressEvent(event)
            return
        rove(self._buttons, min(max(goal, 0), last), go=True)

    def _build(self, marks: Sequence[Mark]) -> None:
        for button in self._buttons:
            button.hide()
            button.deleteLater()
        self._buttons = []
        for number, mark in enumerate(marks, 1):
            button = _MarkButton(number, mark, f"{self.objectName()}_{mark.key}", self)
            button.setProperty("is_last", number == len(marks))
            button.clicked.connect(self._pressed)
            button.show()
            self._buttons.append(button)

    def _pressed(self) -> None:
        button = self.sender()
        if isinstance(button, _MarkButton):
            self.station_requested.emit(button.mark.key)

    def _word_width(self) -> float:
        metrics = QFontMetricsF(current().font("text", bold=True))
        return max((metrics.horizontalAdvance(b.mark.word[:80]) + 8 for b in self._buttons), default=0.0)

    def _lines(self, width: int) -> int:
        count = len(self._buttons)
        if count < 4:
            return 1
        return 1 if width >= count * min(self._word_width(), 150.0) else 2

    def _place(self) -> None:
        count = len(self._buttons)
        if not count:
            return
        in_line = -(-count // self._lines(self.width()))
        for index, button in enumerate(self._buttons):
            row, column = divmod(index, in_line)
            left, right = column * self.width() // in_line, (column + 1) * self.width() // in_line
            button.setGeometry(QRect(left, row * line_height(), right - left, line_height()))

    def _restyle(self, _theme: object = None) -> None:
        self._place()
        self.updateGeometry()
        self.update()
