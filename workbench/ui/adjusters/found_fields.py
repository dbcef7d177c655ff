"""Springs and tyres as found: one field each, kept when it is left."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_list import ItemRow

COLUMNS = 4


class FoundField(QWidget):
    """One field with its label above and its note below."""

    def __init__(self, view_model: AdjustersViewModel, row: ItemRow) -> None:
        super().__init__()
        self._view_model = view_model
        self.row = row
        self.field = QuantityField(
            row.quantity, row.unit, label=row.title, low=row.low, high=row.high, name=f"found_{row.key}"
        )
        self.field.value_committed.connect(self._committed)
        self.field.text_kept.connect(self._kept)
        self._note = Words("", "note")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        label = Words(row.label, "mute")
        label.setBuddy(self.field)
        for part in (label, self.field, self._note):
            rows.addWidget(part)
        rows.addStretch(1)

    def show_item(self, row: ItemRow) -> None:
        """Show the value, or again the text that could not be read."""
        self.row = row
        self.field.set_unit(row.unit)
        self.field.set_value(row.value)
        if row.typed and self.field.typed() != row.typed and not self.field.line.hasFocus():
            self.field.set_typed(row.typed)
        self._note.set_role("problem" if row.is_care else "note")
        self._note.set_words(row.note or row.help)

    def _committed(self, value: object) -> None:
        self._view_model.set_item(self.row.item, self.row.subject_id, value if value is None else float(str(value)))

    def _kept(self, text: str) -> None:
        self._view_model.keep_text(self.row.key, text)


class FoundFields(QWidget):
    """The fields of one unit side by side."""

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__()
        self._view_model = view_model
        self.fields: dict[str, FoundField] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        for column in range(COLUMNS):
            self._grid.setColumnStretch(column, 1)

    def show_items(self, rows: tuple[ItemRow, ...]) -> None:
        """Show the items; fields of the same ones stay, so that typing stays."""
        if [row.key for row in rows] != list(self.fields):
            for field in self.fields.values():
                field.hide()
                field.deleteLater()
            self.fields = {row.key: FoundField(self._view_model, row) for row in rows}
            for place, field in enumerate(self.fields.values()):
                self._grid.addWidget(field, place // COLUMNS, place % COLUMNS, Qt.AlignmentFlag.AlignTop)
        for row in rows:
            self.fields[row.key].show_item(row)
        self.setVisible(bool(rows))

    def set_problem(self, name: str, text: str) -> bool:
        """Say a problem at its field, if it is here."""
        found = self.fields.get(name)
        if found is None:
            return False
        found.field.set_problem(text)
        found.field.setFocus(Qt.FocusReason.OtherFocusReason)
        return True
