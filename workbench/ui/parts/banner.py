"""The notice at the top of a sheet: what was done, and a way back."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16

STAYS_MS = 15_000


class Banner(QFrame):
    """A sentence with at most one action; ``action_requested`` when it is pressed, ``closed`` when it goes.

    It goes by itself after a while, but not while the focus is inside.
    """

    action_requested = Signal()
    closed = Signal()

    def __init__(self, *, name: str = "banner", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setProperty("role", "notice")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE_16, SPACE_4, SPACE_4, SPACE_4)
        row.setSpacing(SPACE_8)
        self.words = Words("", "strong", name=f"{name}_words")
        self.words.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        self.action = Button("Undo", "plain", name=f"{name}_action")
        self.close_button = Button("Close", "link", name=f"{name}_close")
        self.close_button.setAccessibleName("Close this notice")
        row.addWidget(self.words, 1)
        row.addWidget(self.action)
        row.addWidget(self.close_button)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._time_over)
        self.action.clicked.connect(self._act)
        self.close_button.clicked.connect(self.dismiss)
        self.hide()

    def say(self, text: str, action: str = "", *, stays_ms: int = STAYS_MS) -> None:
        """Show a sentence and, if named, one action. Zero milliseconds: it stays until closed."""
        self.words.setText(text)
        self.action.set_text(action)
        self.action.setVisible(bool(action))
        self.setAccessibleName(f"Notice: {text}")
        self.show()
        self._timer.stop()
        if stays_ms:
            self._timer.start(stays_ms)

    def dismiss(self) -> None:
        """Take the notice away."""
        if self.isHidden():
            return
        self._timer.stop()
        self.hide()
        self.closed.emit()

    def remaining_ms(self) -> int:
        """How long it will stay; -1 when it stays until closed or is not shown."""
        return self._timer.remainingTime()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.dismiss()
        else:
            super().keyPressEvent(event)

    def _time_over(self) -> None:
        if self.action.hasFocus() or self.close_button.hasFocus():
            self._timer.start(STAYS_MS)
        else:
            self.dismiss()

    def _act(self) -> None:
        self.dismiss()
        self.action_requested.emit()
