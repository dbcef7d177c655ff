"""A session as text at the left, what was understood of each line at the right."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent, QTextCursor
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPlainTextEdit, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.field_base import set_refused, wants_own_undo
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, SPACE_24
from workbench.viewmodels.base import Problem
from workbench.viewmodels.session_notes import EXAMPLE, NoteLine, NotesState, SessionNotesViewModel

LEAST_HEIGHT = 260


class TextLines(QPlainTextEdit):
    """Plain lines; Tab goes on, and undo keys are the workbench's while nothing is typed."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("notes_text")
        self.setAccessibleName("The session, a line a run")
        self.setTabChangesFocus(True)
        self.setPlaceholderText(EXAMPLE)
        self.setMinimumHeight(LEAST_HEIGHT)

    def event(self, event: QEvent) -> bool:
        is_modified = self.document().isModified()
        if event.type() == QEvent.Type.ShortcutOverride and not wants_own_undo(event, is_modified=is_modified):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if wants_own_undo(event, is_modified=self.document().isModified()):
            super().keyPressEvent(event)
        else:
            event.ignore()

    def go_to_line(self, number: int) -> None:
        """Put the caret at the end of a line."""
        block = self.document().findBlockByNumber(max(number - 1, 0))
        cursor = QTextCursor(block)
        cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock)
        self.setTextCursor(cursor)
        self.setFocus(Qt.FocusReason.OtherFocusReason)


class SessionNotesPage(Page):
    """The sheet for a session as text."""

    def __init__(self, view_model: SessionNotesViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._notes = view_model
        self._sheet = Sheet(
            "A session from notes",
            "Type or paste it, a line a run. What is understood stands beside it; nothing is kept until you say so.",
            name="notes_sheet",
        )
        self._blocked = EmptyState("", "Go to the baseline", name="notes_blocked")
        self._text = TextLines()
        self._lines = QGridLayout()
        self._shown: tuple[NoteLine, ...] = ()
        self._start = ListBox(())
        self._start.setObjectName("notes_start")
        self._start.setAccessibleName("Before the first run the bike stood on")
        self._start.setMinimumContentsLength(32)
        self._starts: tuple[tuple[str, str], ...] = ()
        self._summary = Words("", "strong", name="notes_summary")
        self._after = Words("", "note", name="notes_after")
        self._said = Words("", "problem", name="notes_said")
        self._keep = Button("Keep this session", "verb", name="notes_keep")
        self._discard = Button("Put the text aside", "plain", name="notes_discard")
        self._work = QWidget()
        self._place()
        self._connect()
        self.listen()

    def _place(self) -> None:
        self._said.hide()
        start = QVBoxLayout()
        start.setSpacing(SPACE_4)
        words = Words("Before the first run the bike stood on", "mute")
        words.setBuddy(self._start)
        start.addWidget(words)
        start.addWidget(self._start, 0, Qt.AlignmentFlag.AlignLeft)
        understood = QVBoxLayout()
        understood.addLayout(self._lines)
        understood.addStretch(1)
        self._lines.setHorizontalSpacing(SPACE_8)
        self._lines.setVerticalSpacing(SPACE_8)
        self._lines.setColumnStretch(1, 1)
        across = QHBoxLayout()
        across.setSpacing(SPACE_24)
        across.addWidget(self._text, 1)
        across.addLayout(understood, 1)
        keys = Flow()
        keys.addWidget(self._keep)
        keys.addWidget(self._discard)
        rows = QVBoxLayout(self._work)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addLayout(start)
        rows.addLayout(across)
        for part in (self._said, self._summary, self._after, keys):
            rows.addWidget(part)
        self._sheet.body.addWidget(self._blocked)
        self._sheet.body.addWidget(self._work)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)

    def _connect(self) -> None:
        self._text.textChanged.connect(self._typed)
        self._start.activated.connect(self._start_picked)
        self._keep.clicked.connect(self._keep_it)
        self._discard.clicked.connect(self._put_aside)
        self._blocked.action_requested.connect(self._to_baseline)

    def start(self) -> None:
        """Begin in the text."""
        (self._blocked.button if self._work.isHidden() else self._text).setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: NotesState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._blocked.set_words(state.blocked, "Go to the baseline" if "baseline" in state.blocked else "")
        self._work.setVisible(not state.blocked)
        if self._text.toPlainText() != state.text and not self._text.document().isModified():
            self._set_text(state.text)
        if state.starts != self._starts:
            self._starts = state.starts
            self._start.clear()
            for key, word in state.starts:
                self._start.addItem(word, key)
        self._start.setCurrentIndex(next((at for at, (key, _) in enumerate(state.starts) if key == state.start), 0))
        self._render_lines(state.lines)
        self._summary.set_words(state.summary)
        self._after.set_words(state.after)
        self._keep.set_text(state.verb)
        self._discard.setVisible(state.has_draft)

    def _set_text(self, text: str) -> None:
        was_blocked = self._text.blockSignals(True)
        self._text.setPlainText(text)
        self._text.document().setModified(False)
        self._text.blockSignals(was_blocked)

    def _render_lines(self, lines: tuple[NoteLine, ...]) -> None:
        if lines == self._shown:
            return
        self._shown = lines
        while (item := self._lines.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        for place, line in enumerate(lines):
            self._lines.addWidget(Words(f"{line.number}", "mute"), place, 0, Qt.AlignmentFlag.AlignTop)
            self._lines.addWidget(Words(line.said, "problem" if line.is_unclear else "text"), place, 1)

    def _show_problem(self, problem: Problem) -> None:
        """Say a refusal under the text, and put the caret at its line."""
        self._said.set_words(problem.text)
        self._text.setAccessibleDescription(problem.text)
        set_refused(self._text, refused=True)
        _, line = self._notes.problem()
        self._text.go_to_line(line or self._text.blockCount())

    def _typed(self) -> None:
        self._said.set_words("")
        self._text.setAccessibleDescription("")
        set_refused(self._text, refused=False)
        self._notes.set_text(self._text.toPlainText())

    def _start_picked(self, place: int) -> None:
        self._notes.set_start(str(self._start.itemData(place)))

    def _keep_it(self) -> None:
        if self._notes.keep():
            self._set_text("")
            self.station_requested.emit("review")

    def _put_aside(self) -> None:
        self._notes.discard()
        self._set_text(self._notes.state.text)
        self._text.setFocus(Qt.FocusReason.OtherFocusReason)

    def _to_baseline(self) -> None:
        self.station_requested.emit("baseline")
