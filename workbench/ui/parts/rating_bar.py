"""Rows of keys for a rating: liking one to nine, a direction, better or worse. It can be cleared."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button, rove
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8

_CLEARING = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
LIKING = tuple((value, str(value)) for value in range(1, 10))
DIRECTION_WORDS = ("much too little", "too little", "right", "too much", "much too much")
COMPARED_WORDS = ("worse", "the same", "better")


class KeyBar(QWidget):
    """Keys side by side, each with a value and a word; ``picked(object)`` with the value, or None when cleared.

    With the focus inside: number keys pick by place, arrows move, Space or Enter picks, Delete clears. Pressing the
    chosen key again clears it too; Enter on it is left to the page, as "next".
    """

    picked = Signal(object)

    def __init__(
        self,
        keys: Sequence[tuple[int, str]],
        *,
        question: str = "",
        ends: tuple[str, str] = ("", ""),
        are_words: bool = True,
        name: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._values = tuple(value for value, _ in keys)
        self._question = question
        self._value: int | None = None
        if name:
            self.setObjectName(name)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(SPACE_4)
        self.question = Words("", "mute")
        self.question.set_words(question)
        stack.addWidget(self.question)
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        row = QHBoxLayout()
        row.setSpacing(SPACE_8)
        self._keys = [self._make_key(index, value, word, are_words) for index, (value, word) in enumerate(keys)]
        for key in self._keys:
            row.addWidget(key, 1)
        stack.addLayout(row)
        stack.addLayout(_ends_row(ends))
        self._group.idClicked.connect(self._clicked)
        self.set_value(None)

    def value(self) -> int | None:
        """The value chosen, or None."""
        return self._value

    def set_value(self, value: int | None) -> None:
        """Show a value, or none."""
        self._value = value
        for own, button in zip(self._values, self._keys, strict=True):
            button.mark(own == value)
        self.setAccessibleName(self._name_of(self._spoken(value)))
        if not self._keys:
            return
        place = self._values.index(value) if value in self._values else 0
        rove(self._keys, place, go=any(key.hasFocus() for key in self._keys) and value is not None)
        self.setFocusProxy(self._keys[place])

    def set_question(self, question: str) -> None:
        """Ask something else."""
        self._question = question
        self.question.set_words(question)
        for key in self._keys:
            key.setAccessibleName(self._name_of(key.words()))
        self.set_value(self._value)

    def set_words(self, words: Sequence[str]) -> None:
        """Put other words on the keys."""
        for key, word in zip(self._keys, words, strict=True):
            key.set_text(word)
            key.setAccessibleName(self._name_of(word))
        self.set_value(self._value)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        digit = event.text()
        move = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(key)
        if key in _CLEARING:
            self._pick(None)
        elif move is not None:
            self._move(move)
        elif digit.isascii() and digit.isdigit() and 1 <= int(digit) <= len(self._values):
            if not event.isAutoRepeat():
                self._pick(self._values[int(digit) - 1])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._focused_value() not in (None, self._value):
            self._pick(self._focused_value())
        else:
            super().keyPressEvent(event)

    def _make_key(self, index: int, value: int, word: str, are_words: bool) -> Button:
        button = Button(word, "key", size="text" if are_words else "title", wrap=are_words)
        button.setCheckable(True)
        if self.objectName():
            button.setObjectName(f"{self.objectName()}_{value}")
        self._group.addButton(button, index)
        button.setAccessibleName(self._name_of(word))
        return button

    def _name_of(self, word: str) -> str:
        return f"{self._question}: {word}" if self._question else word

    def _spoken(self, value: int | None) -> str:
        return self._keys[self._values.index(value)].words() if value in self._values else "not rated"

    def _focused_value(self) -> int | None:
        focused = (own for own, key in zip(self._values, self._keys, strict=True) if key.hasFocus())
        return next(focused, None)

    def _move(self, step: int) -> None:
        focused = self._focused_value()
        here = self._values.index(focused) if focused is not None else 0
        rove(self._keys, min(max(here + step, 0), len(self._keys) - 1), go=True)

    def _clicked(self, index: int) -> None:
        value = self._values[index]
        self._pick(None if value == self._value else value)

    def _pick(self, value: int | None) -> None:
        is_new = value != self._value
        self.set_value(value)
        if is_new:
            self.picked.emit(value)


class RatingBar(KeyBar):
    """Liking from 1 to 9."""

    def __init__(
        self,
        question: str = "",
        ends: tuple[str, str] = ("1: could not be worse", "9: could not be better"),
        *,
        name: str = "liking",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(LIKING, question=question, ends=ends, are_words=False, name=name, parent=parent)


class DirectionBar(KeyBar):
    """Which way it is off, from -2 to +2, in the rider's own words."""

    def __init__(
        self,
        question: str = "",
        words: Sequence[str] = DIRECTION_WORDS,
        *,
        name: str = "direction",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(tuple(zip(range(-2, 3), words, strict=True)), question=question, name=name, parent=parent)


class ComparedBar(KeyBar):
    """Against the run before: worse, the same, better; -1, 0, +1."""

    def __init__(
        self,
        question: str = "",
        words: Sequence[str] = COMPARED_WORDS,
        *,
        name: str = "compared",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(tuple(zip(range(-1, 2), words, strict=True)), question=question, name=name, parent=parent)


def _ends_row(ends: tuple[str, str]) -> QHBoxLayout:
    """What the first and the last key mean."""
    row = QHBoxLayout()
    low, high = (Words("", "note") for _ in range(2))
    low.set_words(ends[0])
    high.set_words(ends[1])
    row.addWidget(low)
    row.addStretch(1)
    row.addWidget(high)
    return row
