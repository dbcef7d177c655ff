"""A labelled line whose text is kept as typed, with one sentence under it when it cannot be used."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.field_base import set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import UnitLine
from workbench.ui.parts.theme import SPACE_4


class TypedLine(QWidget):
    """``typed(name, text)`` at every entry."""

    typed = Signal(str, str)

    def __init__(self, name: str, label: str, *, prefix: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._name = name
        self.line = UnitLine()
        self.line.setObjectName(f"{prefix}_{name}")
        self.line.set_label(label)
        self.line.textEdited.connect(self._typed)
        self._label = Words(label, "mute")
        self._label.setBuddy(self.line)
        self._said = Words("", "problem")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        for widget in (self._label, self.line, self._said):
            rows.addWidget(widget)
        self._said.hide()

    def show_text(self, text: str) -> None:
        """Show what was typed; the caret stays where it is."""
        if self.line.text() != text:
            self.line.setText(text)

    def set_unit(self, unit: str) -> None:
        """Say at the end of the line what a bare number is read in."""
        self.line.set_unit(unit)

    def set_problem(self, text: str) -> None:
        """Say what is wrong and go there; an empty text takes it back."""
        self._said.set_words(text)
        self.line.setAccessibleDescription(text)
        set_refused(self.line, bool(text))
        if text:
            self.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _typed(self, text: str) -> None:
        self.set_problem("")
        self.typed.emit(self._name, text)
