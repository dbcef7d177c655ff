"""The few questions the window asks, and the pages its help menu shows."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QDialog, QGridLayout, QHBoxLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from workbench.resource import resource
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16, SPACE_24

KEY_LINES = (
    ("Space", "One click more while counting"),
    ("Backspace", "One click less while counting"),
    ("0 to 9", "The count itself, or the liking of a run"),
    ("Tab, Shift+Tab", "Next and previous field"),
    ("Enter", "The next step"),
    ("Menu key, Shift+F10", "In the list of bikes: what can be done with the bike"),
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
            button = Button(f"{place}.  {words}" if place < 10 else words, "plain", name=f"answer_{place}")
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
        take = Button("Use this", "plain", name="question_take")
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


def reason_question(parent: QWidget) -> Question:
    """Make the question why a station is passed over."""
    return Question("Why skip this station?", [(words, words) for words in REASONS], "Another reason", parent)


def person_question(people: tuple[tuple[str, str], ...], parent: QWidget) -> Question:
    """Make the question who is at the bench."""
    return Question("Who is at the bench?", people[:9], "Name of somebody new", parent)


def ask_reason(parent: QWidget) -> str:
    """Ask why a station is passed over; empty when it is not."""
    question = reason_question(parent)
    question.exec()
    question.deleteLater()
    return question.picked or question.typed


def ask_person(people: tuple[tuple[str, str], ...], person_id: str | None, parent: QWidget) -> tuple[str, str]:
    """Ask who is at the bench: the key of somebody known, or the name of somebody new."""
    question = person_question(people, parent)
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
    close.setDefault(True)
    whole = QVBoxLayout(dialog)
    whole.setContentsMargins(0, 0, 0, 0)
    whole.setSpacing(0)
    foot = QHBoxLayout()
    foot.setContentsMargins(SPACE_24, SPACE_8, SPACE_24, SPACE_16)
    foot.addStretch(1)
    foot.addWidget(close)
    whole.addWidget(scroll, 1)
    whole.addLayout(foot)
    return dialog, rows


def keys_paper(actions: Iterable[QAction], parent: QWidget) -> QDialog:
    """Make the keyboard map."""
    dialog, rows = paper("Keys", "keys", parent)
    dialog.resize(560, 720)
    pairs = [(one.shortcut().toString(), _plain(one.text())) for one in actions if not one.shortcut().isEmpty()]
    grid = QGridLayout()
    grid.setHorizontalSpacing(SPACE_24)
    grid.setVerticalSpacing(SPACE_8)
    grid.setColumnStretch(1, 1)
    for place, (keys, deed) in enumerate((*pairs, *KEY_LINES)):
        grid.addWidget(Words(keys, "strong"), place, 0)
        grid.addWidget(Words(deed), place, 1)
    rows.addLayout(grid)
    rows.addStretch(1)
    return dialog


def _plain(text: str) -> str:
    """Say what a menu line does, without its mnemonic and without the deed it would undo just now."""
    return text.replace("&", "").split(" “")[0].removesuffix(" ...")


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
