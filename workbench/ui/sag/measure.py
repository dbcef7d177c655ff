"""The third stage: readings, one after the other, until two agree."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.rulers import SagRuler
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, SPACE_24
from workbench.ui.sag.entries import Stage
from workbench.ui.sag.ruler import show_ruler
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown, ReadingShown, RoundShown


class ReadingRow(QWidget):
    """One reading, and a key that takes it away."""

    remove_requested = Signal(int)

    def __init__(self, index: int) -> None:
        super().__init__()
        self._index = index
        self._number = Words("", "mute")
        self._text = Words("", "strong")
        self._remove = Button("Remove", "link", name=f"sag_remove_{index + 1}")
        self._remove.clicked.connect(self._pressed)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        row.addWidget(self._number)
        self._text.setMinimumWidth(96)
        row.addWidget(self._text)
        row.addWidget(self._remove)
        row.addStretch(1)

    def show_reading(self, reading: ReadingShown) -> None:
        """Show the reading."""
        self._number.setText(str(reading.number))
        self._text.setText(f"{reading.text} {reading.way}".strip())
        self._remove.setAccessibleName(f"Remove reading {reading.number}, {reading.text}")

    def _pressed(self) -> None:
        self.remove_requested.emit(self._index)


class Readings(QWidget):
    """The readings of the round under way."""

    remove_requested = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._rows: list[ReadingRow] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_24)
        self._grid.setVerticalSpacing(0)

    def show_readings(self, readings: tuple[ReadingShown, ...]) -> None:
        """Show the readings, three below one another, then a new column."""
        while len(self._rows) > len(readings):
            row = self._rows.pop()
            row.hide()
            row.deleteLater()
        while len(self._rows) < len(readings):
            row = ReadingRow(len(self._rows))
            row.remove_requested.connect(self.remove_requested)
            self._grid.addWidget(row, len(self._rows) % 3, len(self._rows) // 3)
            self._rows.append(row)
            row.show()
        for row, reading in zip(self._rows, readings, strict=True):
            row.show_reading(reading)


class MeasureStage(Stage):
    """Type, Enter, type, Enter."""

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__(view_model, name="sag_measure_stage")
        self._instruction = Words("", "text", name="sag_instruction")
        self.reading = QuantityField("length", label="Reading", big=True, name="sag_reading")
        self.reading.setMaximumWidth(248)
        self._label = Words("First reading", "mute")
        self._label.setBuddy(self.reading)
        self.add = Button("Add", "plain", name="sag_add_reading")
        self._readings = Readings()
        self.ways = FlagField(label="Settle from above and from below, to see the friction", name="sag_both_ways")
        self.ways.value_committed.connect(self._ways_chosen)
        self._agreement = Words("", "strong", name="sag_agreement")
        self._wheel = Words("", "note", name="sag_wheel")
        self._friction = Words("", "text", name="sag_friction")
        self._attend = CareNote(name="sag_friction_care")
        self._ruler = SagRuler(name="sag_measure_ruler")
        self._rounds = Words("", "note", name="sag_rounds")
        self.reading.line.textEdited.connect(self._typed)
        self.reading.line.reverted.connect(self._reverted)
        self.reading.line.returnPressed.connect(self._enter)
        self.add.set_least_height(self.reading.line.sizeHint().height())
        self.add.setAccessibleName("Add this reading")
        self.add.clicked.connect(self._add)
        self._readings.remove_requested.connect(self._remove)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(self._instruction)
        rows.addLayout(self._entry_row())
        told = (self._agreement, self._friction, self._attend, self._wheel, self._ruler, self._rounds)
        for below in (self.ways, *told):
            rows.addWidget(below)
        rows.addStretch(1)

    def _entry_row(self) -> QHBoxLayout:
        left = QGridLayout()
        left.setSpacing(SPACE_8)
        left.setVerticalSpacing(SPACE_4)
        left.addWidget(self._label, 0, 0, 1, 2)
        left.addWidget(self.reading, 1, 0)
        left.addWidget(self.add, 1, 1, Qt.AlignmentFlag.AlignTop)
        left.setRowStretch(2, 1)
        across = QHBoxLayout()
        across.setSpacing(SPACE_24)
        across.addLayout(left, 2)
        right = QVBoxLayout()
        right.addWidget(self._readings)
        right.addStretch(1)
        across.addLayout(right, 3)
        return across

    def show_guide(self, guide: GuideShown) -> None:
        self._instruction.setText(guide.instruction)
        self._label.setText(guide.entry_label)
        self.reading.set_label(guide.entry_label)
        self.reading.set_unit(guide.units.unit("length"))
        self._show_entry(guide)
        self._readings.show_readings(guide.readings)
        self._agreement.set_words(guide.agreement)
        self._friction.set_words(guide.friction.words)
        self._attend.set_text(guide.friction.care)
        self._wheel.set_words(guide.wheel_words)
        self.ways.set_value(guide.draft.both_ways)
        self._rounds.set_words(rounds_text(guide.rounds))
        show_ruler(self._ruler, guide.ruler)

    def _show_entry(self, guide: GuideShown) -> None:
        typed = guide.draft.text("reading")
        if typed is None:
            if self.reading.typed():
                self.reading.set_value(None)
                self.reading.revert()
        elif self.reading.typed() != typed.text and not self.reading.line.hasFocus():
            self.reading.set_typed(typed.text)

    def field(self, name: str) -> QWidget | None:
        return self.reading if name == "reading" else None

    def first(self) -> QWidget | None:
        return self.reading

    def _typed(self, text: str) -> None:
        self.view_model.set_text("reading", text)

    def _reverted(self) -> None:
        self.view_model.set_text("reading", "")

    def _ways_chosen(self, value: object) -> None:
        self.view_model.set_field("both_ways", bool(value))
        self.reading.setFocus()

    def _remove(self, index: int) -> None:
        self.view_model.remove_reading(index)
        self.reading.setFocus()

    def _enter(self) -> None:
        self.view_model.enter_reading(self.reading.typed())

    def _add(self) -> None:
        if self.view_model.add_reading(self.reading.typed()):
            self.reading.setFocus()


def rounds_text(rounds: tuple[RoundShown, ...]) -> str:
    """Say the rounds before this one in a line."""
    told = "; ".join(f"{one.setting}: {one.sag}" for one in rounds)
    return f"Earlier rounds: {told}" if told else ""
