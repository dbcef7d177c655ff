"""The same changes in numbers and words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from workbench.viewmodels.review_data import EffectRow, Effects

HEADS = ("", "Change", "Difference", "9 in 10 within", "Chance it helped", "Runs", "What it says")


class EffectTable(QTableWidget):
    """One row a change; ``change_picked`` with its key."""

    change_picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(0, len(HEADS), parent)
        self.setObjectName("review_table")
        self.setAccessibleName("Changes, their differences and what they say")
        self.setHorizontalHeaderLabels(list(HEADS))
        self.verticalHeader().hide()
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setWordWrap(True)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        header = self.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column in range(len(HEADS)):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(6, QHeaderView.ResizeMode.Stretch)
        self._rows: tuple[EffectRow, ...] = ()
        self.cellClicked.connect(self._clicked)
        self.cellActivated.connect(self._clicked)

    def show_effects(self, effects: Effects, picked: str) -> None:
        """Show the changes."""
        if effects.rows != self._rows:
            self._rows = effects.rows
            self.setRowCount(len(self._rows))
            for place, row in enumerate(self._rows):
                self._fill(place, row)
            self._fit()
        place = next((place for place, row in enumerate(self._rows) if row.key == picked), -1)
        if place >= 0:
            self.selectRow(place)
        else:
            self.clearSelection()

    def _fill(self, place: int, row: EffectRow) -> None:
        cells = (
            str(place + 1),
            row.change,
            row.effect_text,
            row.interval_text,
            row.chance_text,
            row.runs_text,
            row.verdict,
        )
        for column, text in enumerate(cells):
            item = QTableWidgetItem(text)
            item.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
            self.setItem(place, column, item)

    def _fit(self) -> None:
        self.resizeRowsToContents()
        height = self.horizontalHeader().height() + sum(self.rowHeight(row) for row in range(self.rowCount())) + 4
        self.setFixedHeight(max(height, 60))

    def resizeEvent(self, event: object) -> None:
        """Wrap anew when the width changes."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self._fit()

    def _clicked(self, place: int, _column: int) -> None:
        self.change_picked.emit(self._rows[place].key)
