"""Counts what the hand turns: one key adds one, the number stands there huge, the eyes stay on the knob."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button, draw_focus
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rating_bar import KeyBar
from workbench.ui.parts.theme import BENCH_SIZES, GAP, SPACE_8, SPACE_16, announcer, current

MODES = ("clicks", "turns", "positions")
MOST = 400
QUARTERS = ("", "¼", "½", "¾")
_ADDING = (Qt.Key.Key_Space, Qt.Key.Key_Plus, Qt.Key.Key_Equal)
_TAKING = (Qt.Key.Key_Minus, Qt.Key.Key_Backspace, Qt.Key.Key_Underscore)


def count_words(count: int | None, mode: str, names: Sequence[str] = ()) -> tuple[str, str]:
    """Give a count as a large word and a small one: 7 clicks, 1 ¼ turns, or the name of the position."""
    if count is None:
        return "–", ""
    if mode == "positions":
        return (names[count], "") if 0 <= count < len(names) else ("–", "")
    if mode == "clicks":
        return str(count), "click" if count == 1 else "clicks"
    whole, quarters = divmod(count, 4)
    large = GAP.join(part for part in (str(whole) if whole or not quarters else "", QUARTERS[quarters]) if part)
    return large, "turn" if count == 4 else "turns"


class _Face(QWidget):
    """The huge number."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.large, self.small = "0", "clicks"
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        announcer.changed.connect(self._restyle)

    def show_words(self, large: str, small: str) -> None:
        """Show another number."""
        self.large, self.small = large, small
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(280, int(current().sizes.number * 3.2))

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = current()
        painter = QPainter(self)
        font = theme.font("number", bold=True)
        font.setPixelSize(int(theme.sizes.number * 2.6))
        room = self.width() - 2.0 * SPACE_16
        if QFontMetricsF(font).horizontalAdvance(self.large) > room:
            font = theme.font("number", bold=True)
        metrics = QFontMetricsF(font)
        small = QFontMetricsF(theme.font("title"))
        cut = metrics.elidedText(self.large, Qt.TextElideMode.ElideRight, room)
        width = metrics.horizontalAdvance(cut)
        base = (self.height() + metrics.capHeight()) / 2
        left = max(float(SPACE_16), (self.width() - width - small.horizontalAdvance(self.small) - SPACE_8) / 2)
        painter.setFont(font)
        painter.setPen(theme.colour("ink"))
        painter.drawText(QRectF(left, base - metrics.ascent(), width + 4, metrics.height()), 0, cut)
        painter.setFont(theme.font("title"))
        painter.setPen(theme.colour("mute"))
        top = base - small.ascent()
        painter.drawText(QRectF(left + width + SPACE_8, top, self.width(), small.height()), 0, self.small)

    def _restyle(self, _theme: object = None) -> None:
        self.updateGeometry()
        self.update()


class CountingTool(QWidget):
    """Counts clicks, turns in quarter steps, or picks a named position (closed first).

    With the focus: Space, + or the keypad adds one; - or Backspace takes one away; digits write the number (turns:
    whole turns), and Backspace takes back a digit while writing; Enter is done. A key held down counts once.
    Signals: ``count_changed(int)`` and ``done()``.
    """

    count_changed = Signal(int)
    done = Signal()

    def __init__(
        self,
        mode: str = "clicks",
        names: Sequence[str] = (),
        *,
        label: str = "Count",
        name: str = "counting",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        if mode not in MODES:
            raise ValueError(f"mode is one of {MODES}")
        self.mode, self.names, self.label = mode, tuple(names), label
        self._count: int | None = None if mode == "positions" else 0
        self.foot_key = 0  # a further key that adds one, as a foot switch sends it
        self._written = ""
        self._most = len(self.names) - 1 if mode == "positions" else MOST
        self.setObjectName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.face = _Face()
        self.less = Button("− 1" if mode == "clicks" else "− ¼", "key", size="title", name=f"{name}_less")
        self.more = Button("+ 1" if mode == "clicks" else "+ ¼", "verb", size="number", name=f"{name}_more")
        self.finish = Button("Done", "key", name=f"{name}_done")
        self.hint = Words("Space or + adds one, − takes one away, Enter is done.", "note", name=f"{name}_hint")
        self.positions: KeyBar | None = None
        self._lay_out(name)
        self.finish.clicked.connect(self._finished)
        self._show()

    def count(self) -> int | None:
        """The count: clicks, quarter turns, or the index of the position; None while no position is picked."""
        return self._count

    def set_count(self, count: int | None) -> None:
        """Show a count without a signal."""
        self._count = count
        self._written = ""
        self._show()

    def words(self) -> str:
        """The count as it is read."""
        return " ".join(part for part in count_words(self._count, self.mode, self.names) if part)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if self.foot_key and event.key() == self.foot_key and self.positions is None:
            event.accept()
            if not event.isAutoRepeat():
                self._step(1)
            return
        is_digit = event.text().isascii() and event.text().isdigit()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if not event.isAutoRepeat():
                self._finished()
        elif self.positions is not None or not (is_digit or key in _ADDING or key in _TAKING):
            super().keyPressEvent(event)
        elif event.isAutoRepeat():
            event.accept()
        elif is_digit:
            self._write(event.text())
        elif key in _ADDING:
            self._step(1)
        elif key == Qt.Key.Key_Backspace and self._written:
            self._take_back()
        else:
            self._step(-1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        super().mousePressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.hasFocus():
            draw_focus(QPainter(self), QRectF(self.face.geometry()))

    def _lay_out(self, name: str) -> None:
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, SPACE_8, 0, SPACE_8)
        stack.setSpacing(SPACE_8)
        stack.addWidget(self.face)
        if self.mode == "positions":
            self.positions = KeyBar(tuple(enumerate(self.names)), question=self.label, name=f"{name}_position")
            self.positions.picked.connect(self._picked)
            self.hint.setText("Closed comes first. Pick the position, then Enter.")
            stack.addWidget(self.positions)
            stack.addWidget(self.finish, 0, Qt.AlignmentFlag.AlignLeft)
            self.setFocusProxy(self.positions)
        else:
            row = QHBoxLayout()
            row.setSpacing(SPACE_8)
            row.addWidget(self.less, 1)
            row.addWidget(self.more, 3)
            row.addWidget(self.finish, 1)
            stack.addLayout(row)
            for button, told, slot in (
                (self.less, "Take one away", self._less_pressed),
                (self.more, "Add one", self._more_pressed),
            ):
                button.setAccessibleName(f"{self.label}: {told}")
                button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
                button.clicked.connect(slot)
        for button in (self.less, self.more, self.finish):
            button.set_least_height(BENCH_SIZES.key)  # this tool is for the bench wherever it is used
        stack.addWidget(self.hint)

    def _more_pressed(self) -> None:
        self._step(1)

    def _less_pressed(self) -> None:
        self._step(-1)

    def _step(self, by: int) -> None:
        self._written = ""
        self._change((self._count or 0) + by)

    def _write(self, digit: str) -> None:
        self._written = (self._written + digit)[-3:]
        self._change(int(self._written) * (4 if self.mode == "turns" else 1))

    def _take_back(self) -> None:
        self._written = self._written[:-1]
        self._change(int(self._written or "0") * (4 if self.mode == "turns" else 1))

    def _picked(self, value: object) -> None:
        if isinstance(value, int):
            self._change(value)
        else:
            self.set_count(None)

    def _change(self, count: int) -> None:
        count = min(max(count, 0), self._most)
        is_new = count != self._count
        self._count = count
        self._show()
        if is_new:
            self.count_changed.emit(count)

    def _show(self) -> None:
        self.face.show_words(*count_words(self._count, self.mode, self.names))
        self.setAccessibleName(f"{self.label}: {self.words() or 'no position'}")
        if self.positions is not None:
            self.positions.set_value(self._count)

    def _finished(self) -> None:
        self._written = ""
        self.done.emit()
