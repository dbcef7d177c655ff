"""Carry a setup to another day, on a sheet of its own."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import TickBox
from workbench.ui.parts.field_base import EntryLine, set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, SPACE_24
from workbench.viewmodels.carry import CarryInput, CarryRow, CarryState, CarryViewModel

LEAVE = (
    "Use the spring's own temperature after it has stood there a while. A can that is hot from riding shows more:"
    " that is normal, let nothing out. Oil is thicker in the cold: expect slower rebound, and change no click for it."
)


COLUMNS = 3  # of entries


class _Entry(QWidget):
    """One entry of the weather and the rider."""

    def __init__(self, entry: CarryInput, view_model: CarryViewModel) -> None:
        super().__init__()
        self._view_model = view_model
        self._name = entry.name
        self.line = EntryLine()
        self.line.setObjectName(f"carry_{entry.name}")
        self.line.textEdited.connect(self._typed)
        self._label = Words("", "mute")
        self._label.setBuddy(self.line)
        self._said = Words("", "problem")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        for widget in (self._label, self.line, self._said):
            rows.addWidget(widget)

    def show_entry(self, entry: CarryInput) -> None:
        """Show what was typed."""
        label = f"{entry.label}, {entry.unit}" if entry.unit else entry.label
        self._label.setText(label)
        self.line.setAccessibleName(label)
        if self.line.text() != entry.text:
            self.line.setText(entry.text)
        self._said.set_words(entry.problem)
        set_refused(self.line, bool(entry.problem))

    def _typed(self, text: str) -> None:
        self._view_model.set_text(self._name, text)


class _Row(QWidget):
    """What to do about one spring or tyre."""

    def __init__(self, row: CarryRow) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_4)
        set_here = "Fit" if row.is_coil else "Set here"
        heads = ("", "On the bike", set_here, "" if row.is_coil else "Shows there", "If left alone")
        texts = (row.title, row.now, row.set_here, "" if row.is_coil else row.shows_there, row.if_left)
        for column, (head, text) in enumerate(zip(heads, texts, strict=True)):
            grid.addWidget(Words(head, "note"), 0, column)
            grid.addWidget(Words(text, "strong" if column in (0, 2) else "text"), 1, column)
            grid.setColumnStretch(column, 3 if column == 0 else 2)
        grid.addWidget(Words(row.reasons, "note"), 2, 0, 1, len(heads))
        if row.care:
            grid.addWidget(CareNote(row.care), 3, 0, 1, len(heads))
        if row.ways:
            grid.addWidget(_Ways(row), 4, 0, 1, len(heads))
        grid.addWidget(Rule(), 5, 0, 1, len(heads))


class _Ways(QWidget):
    """Other spacers with their pressure, beside the ways that give up the sag; as the setup was made."""

    def __init__(self, row: CarryRow) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(SPACE_16, SPACE_4, 0, SPACE_4)
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_4)
        heads = ("For the setup's rider and warmth", "Pressure", "Sag", "End force in a hit")
        for column, head in enumerate(heads):
            grid.addWidget(Words(head, "note"), 0, column)
            grid.setColumnStretch(column, 4 if column == 0 else 2)
        for line, way in enumerate(row.ways, start=1):
            for column, text in enumerate((way.title, way.pressure, way.sag, way.end_force)):
                words = Words(text, "strong" if way.is_advised else "text")
                words.setObjectName(f"carry_way_{line}_{column}")
                grid.addWidget(words, 2 * line, column)
            if way.care:
                grid.addWidget(Words(way.care, "problem"), 2 * line + 1, 0, 1, len(heads))


class CarryPage(Page):
    """The carry-over sheet."""

    def __init__(self, view_model: CarryViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._carry = view_model
        self._sheet = Sheet("Carry it over", "The same setup on another day, at another place.", name="carry_sheet")
        self._entries: dict[str, _Entry] = {}
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(SPACE_24)
        self._grid.setVerticalSpacing(SPACE_16)
        for column in range(COLUMNS):
            self._grid.setColumnStretch(column, 1)
        self._hint = Words("", "text", name="carry_hint")
        self._note = Words("", "note", name="carry_note")
        self._rows = QVBoxLayout()
        self._rows.setSpacing(SPACE_8)
        self._shown: tuple[CarryRow, ...] = ()
        self._on_card = TickBox("Say on the card what to set for that day", name="carry_on_card")
        self._on_card.clicked.connect(view_model.put_on_card)
        self._discard = Button("Discard", "link", name="carry_discard")
        self._discard.clicked.connect(view_model.discard)
        foot = QHBoxLayout()
        foot.setSpacing(SPACE_24)
        foot.addWidget(self._on_card)
        foot.addWidget(self._discard)
        foot.addStretch(1)
        self._sheet.body.addLayout(self._grid)
        self._sheet.body.addWidget(self._hint)
        self._sheet.body.addLayout(foot)
        self._sheet.body.addLayout(self._rows)
        self._sheet.body.addWidget(self._note)
        self._sheet.body.addWidget(CareNote(LEAVE, name="carry_care"))
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the caret on the temperature at the ride."""
        entry = self._entries.get("there_c")
        if entry is not None:
            entry.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: CarryState) -> None:
        for name, entry in self._entries.items():
            entry.setVisible(any(one.name == name for one in state.inputs))
        for place, given in enumerate(state.inputs):
            if given.name not in self._entries:
                self._entries[given.name] = _Entry(given, self._carry)
            self._grid.addWidget(
                self._entries[given.name], place // COLUMNS, place % COLUMNS, Qt.AlignmentFlag.AlignTop
            )
            self._entries[given.name].show_entry(given)
        self._hint.set_words(state.hint)
        self._note.set_words(state.note)
        self._on_card.setVisible(bool(state.rows))
        self._on_card.setChecked(state.is_on_card)
        self._discard.setVisible(state.has_draft)
        if state.rows != self._shown:
            self._shown = state.rows
            while item := self._rows.takeAt(0):
                widget = item.widget()
                if widget is not None:
                    widget.hide()
                    widget.deleteLater()
            for row in state.rows:
                self._rows.addWidget(_Row(row))
