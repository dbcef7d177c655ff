"""The few questions the window asks, and the pages its help menu shows."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from workbench.resource import resource
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16, SPACE_24

KEY_LINES = (
    "Space   one click more while counting; Backspace one less",
    "0 to 9   the count itself, or the liking of a run",
    "Tab, Shift+Tab   next and previous field",
    "Enter   the next step",
)
REASONS = ("Not on this bike", "Done elsewhere", "No time today", "Customer declines")


class Question(QDialog):
    """A sentence, answers as buttons with number keys, and a line for any other answer."""

    def __init__(self, title: str, answers: Iterable[tuple[str, str]], other: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setObjectName("question")
        self.picked = ""
        self.typed = ""
        rows = QVBoxLayout(self)
        rows.setContentsMargins(SPACE_24, SPACE_24, SPACE_24, SPACE_24)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Words(title, "title"))
        for place, (key, words) in enumerate(answers, start=1):
            button = Button(f"{place}   {words}" if place < 10 else words, "plain", name=f"answer_{place}")
            if place < 10:
                button.setShortcut(str(place))
            button.setProperty("key", key)
            button.clicked.connect(self._picked)
            rows.addWidget(button)
        self.line = QLineEdit()
        self.line.setObjectName("question_other")
        self.line.setAccessibleName(other)
        self.line.setPlaceholderText(other)
        self.line.returnPressed.connect(self._typed)
        take = Button("Take this", "plain", name="question_take")
        take.clicked.connect(self._typed)
        row = QHBoxLayout()
        row.setSpacing(SPACE_8)
        row.addWidget(self.line, 1)
        row.addWidget(take)
        rows.addSpacing(SPACE_8)
        rows.addLayout(row)
        self.setMinimumWidth(420)

    def _picked(self) -> None:
        self.picked = str(self.sender().property("key"))
        self.accept()

    def _typed(self) -> None:
        self.typed = self.line.text().strip()
        if self.typed:
            self.accept()


def ask_reason(parent: QWidget) -> str:
    """Ask why a station is passed over; empty when it is not."""
    question = Question("Why skip this station?", [(words, words) for words in REASONS], "Another reason", parent)
    question.exec()
    question.deleteLater()
    return question.picked or question.typed


def ask_person(people: tuple[tuple[str, str], ...], person_id: str | None, parent: QWidget) -> tuple[str, str]:
    """Ask who is at the bench: the key of somebody known, or the name of somebody new."""
    question = Question("Who is at the bench?", people[:9], "Name of somebody new", parent)
    question.exec()
    question.deleteLater()
    return question.picked, question.typed


def paper(title: str, name: str, parent: QWidget) -> tuple[QDialog, QVBoxLayout]:
    """Make an empty page with its title, and give the rows its words go into."""
    dialog = QDialog(parent)
    dialog.setWindowTitle(title)
    dialog.setObjectName(name)
    dialog.resize(640, 560)
    body = QWidget()
    rows = QVBoxLayout(body)
    rows.setContentsMargins(SPACE_24, SPACE_24, SPACE_24, SPACE_24)
    rows.setSpacing(SPACE_16)
    rows.addWidget(Words(title, "title"))
    scroll = QScrollArea()
    scroll.setObjectName(f"{name}_text")
    scroll.setAccessibleName(title)
    scroll.setWidgetResizable(True)
    scroll.setFrameShape(QScrollArea.Shape.NoFrame)
    scroll.setWidget(body)
    close = Button("Close", "plain", name=f"{name}_close")
    close.clicked.connect(dialog.accept)
    whole = QVBoxLayout(dialog)
    whole.addWidget(scroll, 1)
    whole.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
    return dialog, rows


def keys_paper(actions: Iterable[QAction], parent: QWidget) -> QDialog:
    """Make the keyboard map."""
    dialog, rows = paper("Keys", "keys", parent)
    for action in actions:
        keys = action.shortcut().toString()
        if keys:
            rows.addWidget(Words(f"{keys}   {action.text().replace('&', '')}"))
    for line in KEY_LINES:
        rows.addWidget(Words(line))
    rows.addStretch(1)
    return dialog


def care_paper(parent: QWidget) -> QDialog:
    """Make the page on what to take care of."""
    dialog, rows = paper("Care", "care", parent)
    for line in resource("help/care.txt").read_text(encoding="utf-8").split("\n\n"):
        rows.addWidget(Words(" ".join(line.split())))
    rows.addStretch(1)
    return dialog


def show(dialog: QDialog) -> None:
    """Show a page until it is closed."""
    dialog.exec()
    dialog.deleteLater()
