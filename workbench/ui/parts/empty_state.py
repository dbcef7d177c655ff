"""An empty screen: one sentence that says what belongs here, and one button that does it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_16, SPACE_40


class EmptyState(QWidget):
    """One sentence and one verb; ``action_requested`` when the verb is pressed. An empty verb has no button."""

    action_requested = Signal()

    def __init__(self, sentence: str, verb: str = "", *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, SPACE_40, 0, SPACE_40)
        stack.setSpacing(SPACE_16)
        self.sentence = Words(sentence)
        self.button = Button(verb, "verb", name=f"{name}_button" if name else "")
        stack.addWidget(self.sentence)
        stack.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        stack.addStretch()
        self.button.setVisible(bool(verb))
        self.button.clicked.connect(self._pressed)
        if name:
            self.setObjectName(name)
        self.setAccessibleName(sentence)

    def set_words(self, sentence: str, verb: str = "") -> None:
        """Say something else."""
        self.sentence.setText(sentence)
        self.setAccessibleName(sentence)
        self.button.set_text(verb)
        self.button.setVisible(bool(verb))

    def _pressed(self) -> None:
        self.action_requested.emit()
