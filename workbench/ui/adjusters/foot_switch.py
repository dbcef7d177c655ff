"""Which further key counts: pressed once to be learned, as a foot switch or a presenter sends it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.buttons import Button

_TAKEN = (
    Qt.Key.Key_Tab,
    Qt.Key.Key_Backtab,
    Qt.Key.Key_Escape,
    Qt.Key.Key_Shift,
    Qt.Key.Key_Control,
    Qt.Key.Key_Alt,
    Qt.Key.Key_Meta,
    Qt.Key.Key_Return,
    Qt.Key.Key_Enter,
    Qt.Key.Key_Minus,
    Qt.Key.Key_Backspace,
)  # these go on, leave, keep or take one away
WAITING = "Press the switch now"


class FootSwitch(Button):
    """Learns one key; pressed again while it waits it forgets the key."""

    key_learned = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Foot switch ...", "link", name="count_foot_switch")
        if parent is not None:
            self.setParent(parent)
        self._key = 0
        self._is_waiting = False
        self.clicked.connect(self._turn)

    def show_key(self, key: int) -> None:
        """Show which key counts."""
        self._key = key
        if not self._is_waiting:
            self._name()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        is_plain = event.key() not in _TAKEN and not event.text().isdigit()
        if not self._is_waiting or not is_plain or event.isAutoRepeat():
            super().keyPressEvent(event)
            return
        event.accept()
        self._learn(0 if event.key() == Qt.Key.Key_Space else event.key())  # Space counts anyway

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._is_waiting = False
        self._name()

    def _turn(self) -> None:
        if self._is_waiting:
            self._learn(0)
            return
        self._is_waiting = True
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self._name()

    def _learn(self, key: int) -> None:
        self._is_waiting = False
        self._key = key
        self._name()
        self.key_learned.emit(key)

    def _name(self) -> None:
        if self._is_waiting:
            self.set_text(WAITING)
        else:
            self.set_text(f"Foot switch: {QKeySequence(self._key).toString()}" if self._key else "Foot switch ...")
