"""Entries of the coil's sheets: a line with its name above it and its problem below, and lines of travel and force."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.field_base import EntryLine, set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.coil_sheets import CoilSheet
from workbench.viewmodels.coil_typed import CoilField


class FieldBox(QWidget):
    """One entry, typed through to the view-model letter by letter."""

    def __init__(self, name: str, on_typed: Callable[[str, str], None]) -> None:
        super().__init__()
        self.line = EntryLine()
        self.line.setObjectName(f"coil_{name}")
        self.line.textEdited.connect(partial(on_typed, name))
        self._label = Words("", "mute")
        self._label.setBuddy(self.line)
        self._said = Words("", "note", name=f"coil_{name}_said")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        for widget in (self._label, self.line, self._said):
            rows.addWidget(widget)
        rows.addStretch(1)

    def show_field(self, field: CoilField) -> None:
        """Show what was typed, and below it what is wrong or good to know."""
        label = f"{field.label}, {field.unit}" if field.unit else field.label
        self._label.setText(label)
        self.line.setAccessibleName(label)
        if self.line.text() != field.text:
            self.line.setText(field.text)
        self._say(field.problem or field.help, is_problem=bool(field.problem))

    def refuse(self, text: str) -> None:
        """Say what is wrong, and take the focus."""
        self._say(text, is_problem=True)
        self.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _say(self, text: str, *, is_problem: bool) -> None:
        self._said.set_role("problem" if is_problem else "note")
        self._said.set_words(text)
        self.line.setAccessibleDescription(text)
        set_refused(self.line, is_problem)


class FieldGrid(QWidget):
    """Entries side by side; they stay in place while what they show changes."""

    def __init__(self, on_typed: Callable[[str, str], None], *, columns: int) -> None:
        super().__init__()
        self._on_typed, self._columns = on_typed, columns
        self.boxes: dict[str, FieldBox] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_16)
        for column in range(columns):
            self._grid.setColumnStretch(column, 1)

    def show_fields(self, fields: tuple[CoilField, ...]) -> None:
        """Show entries; those of another kind of description go out of sight."""
        for name, box in self.boxes.items():
            box.setVisible(any(one.name == name for one in fields))
        for place, field in enumerate(fields):
            if field.name not in self.boxes:
                self.boxes[field.name] = FieldBox(field.name, self._on_typed)
            box = self.boxes[field.name]
            self._grid.addWidget(box, place // self._columns, place % self._columns, Qt.AlignmentFlag.AlignTop)
            box.show_field(field)
            box.setVisible(True)  # at once: the layout would show it only later, and nothing hidden takes the focus
        self.setVisible(bool(fields))


class PairLines(QWidget):
    """Lines of travel and force; a free one is always there."""

    def __init__(self, on_typed: Callable[[int, int, str], None]) -> None:
        super().__init__()
        self._on_typed = on_typed
        self._heads = (Words("", "mute"), Words("", "mute"))
        self.lines: list[tuple[EntryLine, EntryLine]] = []
        self._said: list[Words] = []
        self._numbers: list[Words] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_4)
        for column, head in enumerate(self._heads):
            self._grid.addWidget(head, 0, column + 1)
            self._grid.setColumnStretch(column + 1, 1)

    def show_sheet(self, sheet: CoilSheet) -> None:
        """Show the lines as typed, with what is wrong in each."""
        self.setVisible(bool(sheet.pairs))
        for head, words in zip(self._heads, sheet.heads, strict=True):
            head.setText(words)
        while len(self.lines) < len(sheet.pairs):
            self._add()
        for place, entries in enumerate(self.lines):
            is_there = place < len(sheet.pairs)
            problem = sheet.pair_problems[place] if is_there else ""
            self._numbers[place].setVisible(is_there)
            self._said[place].set_words(problem)
            for column, entry in enumerate(entries):
                entry.setVisible(is_there)
                entry.setAccessibleName(f"Line {place + 1}: {sheet.heads[column]}")
                text = sheet.pairs[place][column] if is_there else ""
                if entry.text() != text:
                    entry.setText(text)
                set_refused(entry, bool(problem))
                entry.setAccessibleDescription(problem)

    def refuse(self, place: int, text: str) -> None:
        """Say what is wrong in a line, and go there."""
        self._said[place].set_words(text)
        self.lines[place][0].setFocus(Qt.FocusReason.OtherFocusReason)

    def _add(self) -> None:
        place = len(self.lines)
        entries = (EntryLine(), EntryLine())
        number, said = Words(str(place + 1), "mute"), Words("", "problem", name=f"coil_line_{place + 1}_said")
        self._grid.addWidget(number, 2 * place + 1, 0)
        self._grid.addWidget(said, 2 * place + 2, 1, 1, 2)
        for column, entry in enumerate(entries):
            what = ("travel", "force")[column]
            entry.setObjectName(f"coil_{what}_{place + 1}")
            entry.textEdited.connect(partial(self._on_typed, place, column))
            self._grid.addWidget(entry, 2 * place + 1, column + 1)
        self.lines.append(entries)
        self._said.append(said)
        self._numbers.append(number)
