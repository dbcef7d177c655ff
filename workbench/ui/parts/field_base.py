"""What all entry fields share: a value, a place for one sentence under it, and the rule that typing is never lost."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4

SOME = 120  # px: of something higher than the sheet this much in sight is enough


def wants_own_undo(event: QEvent, *, is_modified: bool) -> bool:
    """Whether an undo key belongs to the text; while nothing is typed it belongs to the workbench."""
    if not isinstance(event, QKeyEvent):
        return True
    standard = QKeySequence.StandardKey
    return is_modified or not (event.matches(standard.Undo) or event.matches(standard.Redo))


def set_refused(editor: QWidget, refused: bool) -> None:
    """Outline an editor whose text cannot be used."""
    if bool(editor.property("refused")) == refused:
        return
    editor.setProperty("refused", refused)
    editor.style().unpolish(editor)
    editor.style().polish(editor)
    editor.update()


def show_whole(widget: QWidget) -> None:
    """Let the sheet scroll until a widget, and what is said under it, is in sight; of a high one, its top."""
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        above = above.parentWidget()
    if above is None or (inside := above.widget()) is None:
        return
    # Not ensureWidgetVisible: of a picture it would show the first line only.
    top, high = widget.mapTo(inside, QPoint(0, 0)).y(), widget.height()
    if high + 2 * SPACE_4 <= above.viewport().height():
        above.ensureVisible(0, top + high // 2, 0, high // 2 + SPACE_4)
    elif widget.visibleRegion().boundingRect().height() < SOME:
        above.verticalScrollBar().setValue(top - SPACE_4)


class EntryLine(QLineEdit):
    """A line of typing that gives undo keys away while unmodified and forgets its typing on Escape."""

    reverted = Signal()
    left = Signal()  # with typing that was refused before: Qt says "finished" only after a letter more

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        stays = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
        if self.isModified() and event.reason() not in stays:
            self.left.emit()

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and not wants_own_undo(event, is_modified=self.isModified()):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not wants_own_undo(event, is_modified=self.isModified()):
            event.ignore()
        elif event.key() == Qt.Key.Key_Escape and self.isModified():
            self.reverted.emit()
        else:
            super().keyPressEvent(event)


class FieldBase(QWidget):
    """A field for one fact. Subclasses own the editor; this owns the sentence under it.

    ``value_committed(object)`` is sent when the field is left or Enter is pressed with a new, usable value.
    ``text_kept(str)`` is sent when the field is left with text that cannot be used; the text stays as typed. It is
    sent with an empty text once that is put right.
    """

    value_committed = Signal(object)
    text_kept = Signal(str)

    def __init__(self, *, label: str = "", name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.label = label
        self._about = ""
        self._problem = ""
        self._is_refused = False  # what stands here was read but could not be kept
        self.said = Words("", "note")
        self.said.hide()
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE_4)
        self._field_name = name

    def _take_editor(self, editor: QWidget) -> None:
        """Place the editor above the sentence and pass focus and names on to it."""
        self._rows.addWidget(editor)
        self._rows.addWidget(self.said)
        self.setFocusProxy(editor)
        self._name_editor()
        if self._field_name:
            self.setObjectName(self._field_name)
            editor.setObjectName(f"{self._field_name}_entry")
            self.said.setObjectName(f"{self._field_name}_said")

    def set_label(self, label: str) -> None:
        """Ask for something else."""
        self.label = label
        self._name_editor()

    def set_about(self, about: str) -> None:
        """Say what the fact is one of, so that a screen reader tells the travel of the fork from that of the shock."""
        self._about = about
        self._name_editor()

    def spoken(self) -> str:
        """The label as a screen reader says it."""
        return f"{self._about}: {self.label}" if self._about and self.label else self.label

    def _name_editor(self) -> None:
        editor = self.focusProxy()
        if editor is not None:
            editor.setAccessibleName(self.spoken())

    def problem(self) -> str:
        """The sentence about what is wrong, or nothing."""
        return self._problem

    def set_problem(self, text: str) -> None:
        """Say under the field what is wrong with it; an empty text takes it back."""
        self._problem = text
        self._say(text, "problem")
        if text and self.isVisible():
            QTimer.singleShot(0, self, self._show_said)  # once it has its room

    def _show_said(self) -> None:
        editor = self.focusProxy()
        if editor is not None and editor.hasFocus():
            show_whole(self)

    def refuse(self, text: str) -> None:
        """Say why a value that could be read cannot be kept; the typing stays, and leaving the field tries again."""
        self._is_refused = True
        self.set_problem(text)

    def _is_news(self, is_new: bool) -> bool:
        """Whether a value is to be sent: a new one, or one refused before."""
        was_refused, self._is_refused = self._is_refused, False
        return is_new or was_refused

    def _say(self, text: str, role: str = "note") -> None:
        self.said.set_role(role)
        self.said.set_words(text)
        editor = self.focusProxy()
        if editor is not None:
            editor.setAccessibleDescription(text)
            set_refused(editor, role == "problem" and bool(text))

    def is_editing(self) -> bool:
        """Whether there is typing that is not committed."""
        return False

    def commit(self) -> bool:
        """Take over what was typed; false when it cannot be used."""
        return not self._problem


def commit_focused() -> bool:
    """Commit the field that has the focus, if any; false when its text cannot be used."""
    widget: QWidget | None = QApplication.focusWidget()
    while widget is not None:
        if isinstance(widget, FieldBase):
            return widget.commit()
        widget = widget.parentWidget()
    return True
