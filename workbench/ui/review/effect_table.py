"""The same changes in numbers and words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from workbench.ui.parts.labels import lay_out
from workbench.ui.parts.table import make_plain
from workbench.ui.parts.theme import announcer, current
from workbench.viewmodels.review_data import EffectRow, Effects

HEADS = ("Change, and what\nthe runs say of it", "Difference\n9 in 10 within", "Chance\nit helped", "Runs")
PADDING = 12  # px beside and between the words of a row
WORDS = 0  # the column with the words


class EffectTable(QTableWidget):
    """One row a change; ``change_picked`` with its key, ``rows_fitted`` when the rows have other heights."""

    change_picked = Signal(str)
    rows_fitted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(0, len(HEADS), parent)
        make_plain(self, HEADS, "review_table", "Changes, their differences and what they say")
        self.setWordWrap(True)
        self.horizontalHeader().setSectionResizeMode(WORDS, QHeaderView.ResizeMode.Stretch)
        self._rows: tuple[EffectRow, ...] = ()
        self.cellClicked.connect(self._clicked)
        self.cellActivated.connect(self._clicked)
        announcer.changed.connect(self._fit)

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

    def head_height(self) -> int:
        """How high the head is, with the frame above it."""
        return self.horizontalHeader().height() + self.frameWidth()

    def row_heights(self) -> list[int]:
        """How high each row is."""
        return [self.rowHeight(row) for row in range(self.rowCount())]

    def _fill(self, place: int, row: EffectRow) -> None:
        for column, text in enumerate(_cells(row)):
            item = QTableWidgetItem(text)
            item.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
            self.setItem(place, column, item)

    def _fit(self, _theme: object = None) -> None:
        metrics = QFontMetrics(current().font())
        for column, head in enumerate(HEADS):
            if column != WORDS:
                lines = [*head.split("\n"), *(line for row in self._rows for line in _cells(row)[column].split("\n"))]
                self.setColumnWidth(column, max(metrics.horizontalAdvance(line) for line in lines) + 2 * PADDING)
        figures = sum(self.columnWidth(column) for column in range(len(HEADS)) if column != WORDS)
        width = self.viewport().width() - figures - 2 * PADDING
        for place, row in enumerate(self._rows):
            height = lay_out(_words(row), current().font(), width).boundingRect().height()
            height = max(height, metrics.lineSpacing() * (1 + _figures(row).count("\n")))
            self.setRowHeight(place, max(round(height) + PADDING, current().sizes.target))
        self.setFixedHeight(max(self.head_height() + sum(self.row_heights()) + self.frameWidth(), 60))
        self.rows_fitted.emit()

    def resizeEvent(self, event: object) -> None:
        """Wrap anew when the width changes."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self._fit()

    def _clicked(self, place: int, _column: int) -> None:
        self.change_picked.emit(self._rows[place].key)


def _cells(row: EffectRow) -> tuple[str, ...]:
    return _words(row), _figures(row), row.chance_text, row.runs_text


def _figures(row: EffectRow) -> str:
    return "\n".join(figure for figure in (row.effect_text, row.clock_text, row.interval_text) if figure)


def _words(row: EffectRow) -> str:
    return "\n".join(words for words in (row.change, row.verdict, row.joint_note) if words)
