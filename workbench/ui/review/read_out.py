"""The whole review in sentences, to read out or to take along."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8

COPIED = "The summary is on the clipboard."


class ReadOut(QWidget):
    """Folded until asked for; ``said`` once it was copied."""

    said = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fold = Button("All of it in words ...", "link", name="review_words")
        self._fold.clicked.connect(self._unfold)
        self._copy = Button("Copy the words", "link", name="review_copy")
        self._copy.clicked.connect(self._take)
        self._words = Words("", "text", name="review_read_out")
        self._words.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self._words.hide()
        keys = Flow(gap=SPACE_8)
        for key in (self._fold, self._copy):
            keys.addWidget(key)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(keys)
        rows.addWidget(self._words)

    def show_words(self, text: str) -> None:
        """Take other words."""
        self._words.setText(text)
        self._words.setAccessibleName(text)

    def _unfold(self) -> None:
        self._words.setVisible(self._words.isHidden())

    def _take(self) -> None:
        QGuiApplication.clipboard().setText(self._words.text())
        self.said.emit(COPIED)
