"""Fields for words: one line, or a note of several."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from workbench.model.facts import NOTE_LIMIT, TEXT_LIMIT, clean_text
from workbench.ui.parts.field_base import EntryLine, FieldBase, wants_own_undo
from workbench.ui.parts.theme import announcer, current


def too_long(text: str, limit: int) -> str:
    """Say that a text is too long; it is never cut behind somebody's back."""
    return f"Up to {limit} characters: this has {len(text)}. Shorten it." if len(text) > limit else ""


class TextField(FieldBase):
    """One line of plain text."""

    def __init__(
        self,
        *,
        label: str = "",
        limit: int = TEXT_LIMIT,
        placeholder: str = "",
        name: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(label=label, name=name, parent=parent)
        self._limit = limit
        self._value = ""
        self.line = EntryLine()
        self.line.setPlaceholderText(placeholder)
        self._take_editor(self.line)
        self.line.editingFinished.connect(self.commit)
        self.line.left.connect(self._try_again)
        self.line.reverted.connect(self.revert)
        self.line.textEdited.connect(self._edited)

    def value(self) -> str:
        """The committed text."""
        return self._value

    def set_value(self, value: str | None) -> None:
        """Show a text, unless somebody is typing here."""
        self._value = value or ""
        if not self.is_editing() and self.line.text() != self._value:
            self.line.setText(self._value)
            self.line.setCursorPosition(0)

    def is_editing(self) -> bool:
        return self.line.isModified()

    def refuse(self, text: str) -> None:
        super().refuse(text)
        self.line.setModified(True)

    def revert(self) -> None:
        """Forget the typing."""
        self._is_refused = False
        self.line.setText(self._value)
        self.set_problem("")

    def commit(self) -> bool:
        if not self.line.isModified():
            return not self._problem
        text = clean_text(self.line.text().replace("\n", " ").replace("\t", " "))
        if said := too_long(text, self._limit):
            self.set_problem(said)
            return False
        is_new = self._is_news(text != self._value)
        self._value = text
        self.line.setText(text)
        if is_new:
            self.set_problem("")
            self.value_committed.emit(text)
        return not self._problem

    def _try_again(self) -> None:
        if self._is_refused:
            self.commit()

    def _edited(self, _text: str) -> None:
        self.set_problem("")


class _NoteEdit(QPlainTextEdit):
    left = Signal()

    def event(self, event: QEvent) -> bool:
        modified = self.document().isModified()
        if event.type() == QEvent.Type.ShortcutOverride and not wants_own_undo(event, is_modified=modified):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if not wants_own_undo(event, is_modified=self.document().isModified()):
            event.ignore()
        elif control and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.left.emit()


class NoteField(FieldBase):
    """A note of several lines; Tab moves on, Ctrl+Enter commits."""

    def __init__(
        self, *, label: str = "", limit: int = NOTE_LIMIT, lines: int = 3, name: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(label=label, name=name, parent=parent)
        self._limit = limit
        self._lines = lines
        self._value = ""
        self.edit = _NoteEdit()
        self.edit.setTabChangesFocus(True)
        self._take_editor(self.edit)
        self.edit.left.connect(self.commit)
        announcer.changed.connect(self._restyle)
        self._restyle()

    def value(self) -> str:
        """The committed note."""
        return self._value

    def set_value(self, value: str | None) -> None:
        """Show a note, unless somebody is typing here."""
        self._value = value or ""
        if not self.is_editing() and self.edit.toPlainText() != self._value:
            self._show()

    def is_editing(self) -> bool:
        return self.edit.document().isModified()

    def refuse(self, text: str) -> None:
        super().refuse(text)
        self.edit.document().setModified(True)

    def commit(self) -> bool:
        if not self.is_editing():
            return not self._problem
        text = clean_text(self.edit.toPlainText())
        if said := too_long(text, self._limit):
            self.set_problem(said)
            return False
        is_new = self._is_news(text != self._value)
        self._value = text
        if text == self.edit.toPlainText():
            self.edit.document().setModified(False)
        else:
            self._show()
        if is_new:
            self.set_problem("")
            self.value_committed.emit(text)
        return not self._problem

    def _show(self) -> None:
        self.edit.setPlainText(self._value)
        self.edit.document().setModified(False)

    def _restyle(self, _theme: object = None) -> None:
        self.edit.setFixedHeight(int(current().sizes.text * 1.5 * self._lines) + 20)
