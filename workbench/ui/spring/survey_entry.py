"""The entries of a leverage survey: how the shock is read, the pairs, and what they hold for."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.field_base import EntryLine, set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.leverage import LeverageState, LeverageViewModel

WAYS = (("stroke", "Stroke"), ("length", "Eye to eye"))


class SurveyEntry(QWidget):
    """Lines of pairs; a line that cannot be is outlined."""

    def __init__(self, view_model: LeverageViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view_model = view_model
        self._lines: list[tuple[EntryLine, EntryLine]] = []
        self._numbers: list[Words] = []
        self._heads = (Words("", "mute"), Words("", "mute"))
        self._way = ChoiceField(WAYS, label="The shock is read by", name="leverage_way")
        self._way.value_committed.connect(self._way_chosen)
        self._extended_label, self._extended = self._line("Extended, eye to eye", "leverage_extended")
        self._extended.textEdited.connect(view_model.set_extended)
        self._mounting_label, self._mounting = self._line("Mounting position", "leverage_mounting")
        self._mounting.setPlaceholderText("if there are several")
        self._mounting.textEdited.connect(view_model.set_mounting)
        self._exact_label, self._exact = self._line("Wheel read to within", "leverage_exact")
        self._exact.textEdited.connect(view_model.set_exact_to)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(SPACE_8)
        self._grid.setVerticalSpacing(SPACE_4)
        for column, head in enumerate(self._heads):
            self._grid.addWidget(head, 0, column + 1)
        self._lay_out()

    def start(self) -> None:
        """Put the caret into the first pair."""
        if self._lines:
            self._lines[0][0].setFocus(Qt.FocusReason.OtherFocusReason)

    def go_to(self, field: str) -> None:
        """Put the caret where the problem is."""
        if field == "mounting":
            self._mounting.setFocus(Qt.FocusReason.OtherFocusReason)
        place = field.removeprefix("line_")
        if place.isdigit() and int(place) < len(self._lines):
            self._lines[int(place)][1].setFocus(Qt.FocusReason.OtherFocusReason)

    def show_state(self, state: LeverageState) -> None:
        """Show what was typed; an entry that says the same is left alone."""
        self._way.set_value("length" if state.by_length else "stroke")
        for column, words in enumerate(state.heads):
            self._heads[column].setText(words)
        while len(self._lines) < len(state.pairs):
            self._add_line()
        for place, line in enumerate(self._lines):
            is_shown = place < len(state.pairs)
            self._numbers[place].setVisible(is_shown)
            for column, entry in enumerate(line):
                entry.setVisible(is_shown)
                entry.setAccessibleName(f"Line {place + 1}: {state.heads[column]}")
                _show(entry, state.pairs[place][column] if is_shown else "")
                set_refused(entry, place == state.wrong_line)
                entry.setAccessibleDescription(state.said if place == state.wrong_line else "")
        for entry, text in (
            (self._extended, state.extended),
            (self._mounting, state.mounting),
            (self._exact, state.exact_to),
        ):
            _show(entry, text)
        self._extended.setPlaceholderText(state.extended_hint)
        self._exact.setPlaceholderText(state.exact_hint)
        for widget in (self._extended_label, self._extended):
            widget.setVisible(state.by_length)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._way)
        for widget in (self._extended_label, self._extended):
            rows.addWidget(widget)
        rows.addLayout(self._grid)
        about = QGridLayout()
        about.setHorizontalSpacing(SPACE_16)
        about.setVerticalSpacing(SPACE_4)
        for column, (label, entry) in enumerate(
            ((self._mounting_label, self._mounting), (self._exact_label, self._exact))
        ):
            about.addWidget(label, 0, column)
            about.addWidget(entry, 1, column)
        rows.addLayout(about)
        rows.addStretch(1)

    def _line(self, label: str, name: str) -> tuple[Words, EntryLine]:
        entry = EntryLine(self)
        entry.setObjectName(name)
        entry.setAccessibleName(label)
        words = Words(label, "mute")
        words.setBuddy(entry)
        return words, entry

    def _add_line(self) -> None:
        place = len(self._lines)
        entries = (EntryLine(), EntryLine())
        number = Words(str(place + 1), "mute")
        self._grid.addWidget(number, place + 1, 0)
        for column, entry in enumerate(entries):
            words = ("stroke", "wheel")[column]
            entry.setObjectName(f"leverage_{words}_{place + 1}")
            entry.textEdited.connect(partial(self._view_model.set_pair, place, column))
            self._grid.addWidget(entry, place + 1, column + 1)
        self._lines.append(entries)
        self._numbers.append(number)

    def _way_chosen(self, value: object) -> None:
        self._view_model.read_by(str(value))


def _show(entry: EntryLine, text: str) -> None:
    if entry.text() != text:
        entry.setText(text)
