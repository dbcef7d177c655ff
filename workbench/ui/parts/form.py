"""A form drawn from row specs: label, field, help, and the sentence when something is wrong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.choice_field import ChoiceField, FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.text_field import NoteField, TextField
from workbench.ui.parts.theme import SPACE_4, SPACE_16, SPACE_24

COLUMN_WIDTH = 264
AnyField = TextField | NoteField | ChoiceField | FlagField | QuantityField


@dataclass(frozen=True, slots=True)
class FormRow:
    """One row of a form.

    ``kind`` is "text", "note", "choice", "flag", "count" or "quantity"; a quantity of `model.units` may also
    stand there itself. Values and limits are in internal units; ``unit`` is the one shown.
    """

    name: str
    label: str
    kind: str = "text"
    quantity: str = ""
    unit: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    value: Any = None
    help: str = ""
    problem: str = ""
    low: float | None = None
    high: float | None = None
    typed: str = ""  # text of a quantity that could not be read, shown again as it was left


class _Committed(QObject):
    """Hears one field and passes its value on together with the name of its row."""

    def __init__(self, form: Form, name: str) -> None:
        super().__init__(form)
        self._form, self._name = form, name

    def value_committed(self, value: object) -> None:
        self._form.row_committed.emit(self._name, value)

    def text_kept(self, text: str) -> None:
        self._form.row_kept.emit(self._name, text)


class Form(QWidget):
    """Rows of fields in one or more columns; ``row_committed(name, value)`` when a fact is entered.

    ``row_kept(name, text)`` when a field was left with text that cannot be used.
    """

    row_committed = Signal(str, object)
    row_kept = Signal(str, str)

    def __init__(
        self, rows: Sequence[FormRow] = (), *, columns: int = 1, name: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._columns = columns
        self._about = ""
        self._rows: tuple[FormRow, ...] = ()
        self._fields: dict[str, AnyField] = {}
        self._cells: list[tuple[QWidget, bool, Words | None]] = []  # cell, whether it is wide, what fills up above it
        self._placed = 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_24)
        self._grid.setVerticalSpacing(SPACE_16)
        if name:
            self.setObjectName(name)
        self.set_rows(rows)

    def set_rows(self, rows: Sequence[FormRow]) -> None:
        """Show rows; fields of the same rows stay, so that typing and focus are not lost."""
        rows = tuple(rows)
        if [_shape(row) for row in rows] != [_shape(row) for row in self._rows]:
            self._build(rows)
        self._rows = rows
        for row in rows:
            field = self._fields[row.name]
            if isinstance(field, QuantityField):
                field.set_unit(row.unit)
                field.set_limits(row.low, row.high)
            field.set_value(row.value)
            if isinstance(field, QuantityField) and row.typed:
                field.show_typed(row.typed)
            if row.problem or not field.is_editing():
                field.set_problem(row.problem)

    def set_about(self, about: str) -> None:
        """Say what the facts are facts of; screen readers say it before each label."""
        self._about = about
        for field in self._fields.values():
            field.set_about(about)

    def field(self, name: str) -> AnyField:
        """Give the field of a row."""
        return self._fields[name]

    def set_problem(self, name: str, text: str) -> None:
        """Say under a row what is wrong with it, and go there."""
        field = self._fields[name]
        if text:
            field.refuse(text)
            field.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            field.set_problem("")

    def commit_all(self) -> bool:
        """Commit every field; at the first that cannot be used the focus stops and the answer is false."""
        bad = [field for field in self._fields.values() if not field.commit()]
        if bad:
            bad[0].setFocus(Qt.FocusReason.OtherFocusReason)
        return not bad

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place(self._columns_for(event.size().width()))

    def _columns_for(self, width: int) -> int:
        return max(1, min(self._columns, (width + SPACE_24) // (COLUMN_WIDTH + SPACE_24)))

    def _build(self, rows: tuple[FormRow, ...]) -> None:
        for cell, _, _ in self._cells:
            cell.hide()
            cell.deleteLater()
        self._cells, self._fields, self._placed = [], {}, 0
        for row in rows:
            field = _make_field(row, f"{self.objectName()}_{row.name}" if self.objectName() else row.name)
            ear = _Committed(self, row.name)
            field.value_committed.connect(ear.value_committed)
            field.text_kept.connect(ear.text_kept)
            field.set_about(self._about)
            self._fields[row.name] = field
            filler = Words("\u00a0", "mute") if row.kind == "flag" else None  # a tick box carries its own label
            self._cells.append((_cell(row, field, filler or Words(row.label, "mute")), row.kind == "note", filler))
        self._place(self._columns_for(self.width()))

    def _place(self, columns: int) -> None:
        """Fill the grid row by row; a note takes a row of its own."""
        if columns == self._placed:
            return
        self._placed = columns
        line, column = 0, 0
        lines: dict[int, list[Words | None]] = {}
        for cell, is_wide, filler in self._cells:
            if is_wide and column:
                line, column = line + 1, 0
            span = columns if is_wide else 1
            self._grid.addWidget(cell, line, column, 1, span, Qt.AlignmentFlag.AlignTop)
            lines.setdefault(line, []).append(filler)
            column += span
            if column >= columns:
                line, column = line + 1, 0
        for fillers in lines.values():  # level with fields beside them; tick boxes among themselves need no filling up
            for words in fillers:
                if words is not None:
                    words.setVisible(None in fillers)
        for index in range(self._columns):
            self._grid.setColumnStretch(index, 1 if index < columns else 0)


def _shape(row: FormRow) -> tuple[object, ...]:
    return (row.name, row.label, row.kind, row.quantity, row.choices, row.help)


def _make_field(row: FormRow, name: str) -> AnyField:
    if row.kind == "text":
        return TextField(label=row.label, name=name)
    if row.kind == "note":
        return NoteField(label=row.label, name=name)
    if row.kind == "flag":
        return FlagField(label=row.label, name=name)
    if row.kind == "choice":
        return ChoiceField(row.choices, label=row.label, name=name)
    quantity = row.quantity if row.kind == "quantity" else row.kind
    return QuantityField(quantity, row.unit, label=row.label, low=row.low, high=row.high, name=name)


def _cell(row: FormRow, field: AnyField, label: Words) -> QWidget:
    """Stack label, field and help."""
    cell = QWidget()
    stack = QVBoxLayout(cell)
    stack.setContentsMargins(0, 0, 0, 0)
    stack.setSpacing(SPACE_4)
    label.setBuddy(field)
    stack.addWidget(label)
    stack.addWidget(field)
    if row.help:
        stack.addWidget(Words(row.help, "note"))
    return cell
