"""Fields for a choice: keys side by side for up to three, a list to open for more, a tick box for yes or no."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QPoint, QSize, Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QComboBox, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button, rove
from workbench.ui.parts.field_base import FieldBase
from workbench.ui.parts.flow import Flow

MOST_KEYS = 3
Choices = Mapping[str, str] | Sequence[tuple[str, str]]


def choice_pairs(choices: Choices) -> tuple[tuple[str, str], ...]:
    """Give choices as pairs of key and word."""
    return tuple(choices.items()) if isinstance(choices, Mapping) else tuple((key, word) for key, word in choices)


class Segments(QWidget):
    """Keys side by side of which at most one is chosen; arrow keys move, Space or Enter chooses."""

    def __init__(
        self, pairs: Sequence[tuple[str, str]], *, label: str = "", name: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.group = QButtonGroup(self)
        self.group.setExclusive(False)
        self.keys = tuple(key for key, _ in pairs)
        self._row = Flow(gap=4)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._row)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        for index, (key, word) in enumerate(pairs):
            button = Button(word, "option", name=f"{name}_{key}" if name else "")
            button.setCheckable(True)
            self.group.addButton(button, index)
            self._row.addWidget(button)
        self._buttons = [button for button in self.group.buttons() if isinstance(button, Button)]
        self.set_label(label)
        self.choose(None)

    def set_label(self, label: str) -> None:
        """Say what is chosen here, for screen readers."""
        for button in self._buttons:
            button.setAccessibleName(f"{label}: {button.words()}" if label else button.words())

    def chosen(self) -> str | None:
        """The key chosen now."""
        return next((key for i, key in enumerate(self.keys) if self.group.button(i).isChecked()), None)

    def choose(self, key: str | None) -> None:
        """Show one key chosen, or none, without a signal."""
        for own, button in zip(self.keys, self._buttons, strict=True):
            button.mark(own == key)
        place = self.keys.index(key) if key in self.keys else 0
        if self._buttons:
            rove(self._buttons, place)
            self.setFocusProxy(self._buttons[place])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}
        step = steps.get(Qt.Key(event.key()))
        here = next((place for place, button in enumerate(self._buttons) if button.hasFocus()), None)
        if here is not None and step is not None:
            rove(self._buttons, min(max(here + step, 0), len(self._buttons) - 1), go=True)
        elif here is not None and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._buttons[here].click()
        else:
            super().keyPressEvent(event)


class ListBox(QComboBox):
    """A list to open; the wheel scrolls the page instead of changing an unfocused value."""

    def __init__(self, pairs: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(10)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        for key, word in pairs:
            self.addItem(word, key)

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()


class ChoiceField(FieldBase):
    """One of several choices; the value is the key of the choice, or None."""

    def __init__(self, choices: Choices, *, label: str = "", name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label=label, name=name, parent=parent)
        self._pairs = choice_pairs(choices)
        self._value: str | None = None
        self._segments: Segments | None = None
        self._list: ListBox | None = None
        if len(self._pairs) <= MOST_KEYS:
            self._segments = Segments(self._pairs, label=label, name=name)
            self._take_editor(self._segments)
            self._segments.group.idClicked.connect(self._key_pressed)
        else:
            self._list = ListBox(self._pairs)
            self._take_editor(self._list)
            self._list.activated.connect(self._item_picked)
        self._render()

    def value(self) -> str | None:
        """The key of the choice, or None when nothing is chosen."""
        return self._value

    def _name_editor(self) -> None:
        if self._segments is not None:
            self._segments.set_label(self.spoken())
        elif self._list is not None:
            self._list.setAccessibleName(self.spoken())

    def set_value(self, value: str | None) -> None:
        """Show a choice."""
        self._value = value
        self._render()

    def _key_pressed(self, index: int) -> None:
        self._choose(self._pairs[index][0])

    def _item_picked(self, index: int) -> None:
        self._choose(self._pairs[index][0])

    def _choose(self, key: str) -> None:
        is_new = key != self._value
        self._value = key
        self.set_problem("")
        self._render()
        if is_new:
            self.value_committed.emit(key)

    def _render(self) -> None:
        if self._segments is not None:
            self._segments.choose(self._value)
        if self._list is not None:
            keys = [key for key, _ in self._pairs]
            self._list.setCurrentIndex(keys.index(self._value) if self._value in keys else -1)


class TickBox(QCheckBox):
    """A tick box that can be hit anywhere on its row."""

    def __init__(self, text: str = "", *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text.replace("&", "&&"), parent)
        self.setAccessibleName(text)
        if name:
            self.setObjectName(name)

    def is_cut(self) -> bool:
        """Whether some of the words do not fit."""
        return super().sizeHint().width() > self.width()

    def hitButton(self, pos: QPoint) -> bool:
        return self.rect().contains(pos)

    def minimumSizeHint(self) -> QSize:
        hint = super().minimumSizeHint()
        return QSize(min(hint.width(), 132), hint.height())


class FlagField(FieldBase):
    """Yes or no, as a tick box with its own words."""

    def __init__(self, *, label: str = "", name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label=label, name=name, parent=parent)
        self.box = TickBox(label)
        self._take_editor(self.box)
        self.box.clicked.connect(self._clicked)

    def value(self) -> bool:
        """Whether the box is ticked."""
        return self.box.isChecked()

    def set_value(self, value: bool | None) -> None:
        """Tick the box or not."""
        self.box.setChecked(bool(value))

    def _clicked(self, ticked: bool) -> None:
        self.set_problem("")
        self.value_committed.emit(ticked)
