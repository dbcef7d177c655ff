"""A form over the facts of one record, as a view-model lays them out."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.ui.parts.form import Form, FormRow
from workbench.viewmodels.fact_rows import FactRow


class FactsForm(Form):
    """A form that draws fact rows."""

    def __init__(self, name: str, *, columns: int = 3, parent: QWidget | None = None) -> None:
        super().__init__(columns=columns, name=name, parent=parent)

    def show_facts(self, rows: tuple[FactRow, ...]) -> None:
        """Show facts; a field being edited keeps its text."""
        self.set_rows([_form_row(row) for row in rows])


def _form_row(row: FactRow) -> FormRow:
    return FormRow(
        row.name,
        row.label,
        row.kind,
        row.quantity,
        row.unit,
        row.choices,
        row.value,
        row.help,
        low=row.low,
        high=row.high,
        typed=row.typed,
    )
