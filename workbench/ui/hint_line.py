"""The hint above a sheet for the first time at its station, and the key that puts it away."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16


class HintLine(QWidget):
    """A quiet sentence with *Got it*; it takes its own room and covers nothing. Empty words hide it."""

    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("hint")
        self.words = Words("", "mute", name="hint_words")
        self.words.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        self.got_it = Button("Got it", "link", name="hint_got_it")
        self.got_it.setAccessibleName("Got it: put this hint away")
        self.got_it.clicked.connect(self.put_away)
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE_4, 0, 0, 0)
        row.setSpacing(SPACE_16)
        row.addWidget(self.words, 1)
        row.addWidget(self.got_it, 0, Qt.AlignmentFlag.AlignVCenter)
        self.hide()

    def show_hint(self, text: str) -> None:
        """Show a hint, or none."""
        self.words.setText(text)
        self.setAccessibleName(f"Hint: {text}" if text else "")
        self.got_it.setAccessibleDescription(text)
        self.setVisible(bool(text))
