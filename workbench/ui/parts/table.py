"""A table of plain words as high as its rows: a row is picked by mouse or arrow keys, the sheet scrolls."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QBrush, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QScrollArea, QTableWidget, QTableWidgetItem, QWidget

from workbench.ui.parts.labels import lay_out
from workbench.ui.parts.theme import announcer, current

PADDING = 12  # px beside and between the words of a row

LEAST_SHARE = 120  # px: a column without a sample is no narrower while there is room


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row: its key, its words, and whether it only counts for the record."""

    key: str
    cells: tuple[str, ...]
    is_mute: bool = False


def make_plain(table: QTableWidget, heads: tuple[str, ...], name: str, label: str) -> None:
    """Make a table one of plain words: whole rows are picked, nothing is edited, cut or scrolled."""
    table.setObjectName(name)
    table.setAccessibleName(label)
    table.setHorizontalHeaderLabels(list(heads))
    table.verticalHeader().hide()
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setShowGrid(False)
    table.setAlternatingRowColors(True)
    table.setTextElideMode(Qt.TextElideMode.ElideNone)
    table.setTabKeyNavigation(False)
    table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    table.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    header = table.horizontalHeader()
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom)
    header.setSectionsClickable(False)
    header.setHighlightSections(False)
    header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)


class Table(QTableWidget):
    """``heads`` name the columns, ``samples`` say how wide each gets; an empty sample takes what is left over.

    ``row_picked`` with the key when another row is picked.
    """

    row_picked = Signal(str)

    def __init__(
        self,
        heads: tuple[str, ...],
        samples: tuple[str, ...],
        *,
        name: str,
        label: str,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(0, len(heads), parent)
        make_plain(self, heads, name, label)
        self._heads, self._samples = heads, samples
        self._rows: tuple[TableRow, ...] = ()
        self._is_filling = False
        self.currentCellChanged.connect(self._moved)
        announcer.changed.connect(self._fit)

    def show_rows(self, rows: tuple[TableRow, ...], picked: str = "") -> None:
        """Show rows, one of them picked."""
        self._is_filling = True
        if rows != self._rows:
            self._rows = rows
            self.setRowCount(len(rows))
            for place, row in enumerate(rows):
                self._fill(place, row)
            self._fit()
        place = next((place for place, row in enumerate(rows) if row.key == picked), -1)
        if place < 0:
            self.setCurrentCell(-1, -1)
            self.clearSelection()
        elif place != self.currentRow() or not self.selectedItems():
            self.setCurrentCell(place, 0)
            self.selectRow(place)
        self._is_filling = False

    def _fill(self, place: int, row: TableRow) -> None:
        for column, text in enumerate(row.cells):
            item = QTableWidgetItem(text)
            item.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
            if row.is_mute:
                item.setForeground(QBrush(current().colour("mute")))
            self.setItem(place, column, item)

    def _fit(self, _theme: object = None) -> None:
        for column, width in enumerate(self._widths(self.viewport().width())):
            self.setColumnWidth(column, width)
        for place, row in enumerate(self._rows):
            self.setRowHeight(place, self._height_of(row))
        rows = sum(self.rowHeight(row) for row in range(self.rowCount()))
        self.setFixedHeight(max(self.horizontalHeader().height() + rows + 2 * self.frameWidth(), 60))

    def _widths(self, room: int) -> list[int]:
        """Give each column its room: as wide as its sample, the rest shared; where that is too much, all give way."""
        metrics = QFontMetrics(current().font())
        asked = [metrics.horizontalAdvance(sample) + 2 * PADDING + 10 if sample else 0 for sample in self._samples]
        spread = asked.count(0)
        share = max((room - sum(asked)) // spread, LEAST_SHARE) if spread else 0
        widths = [width or share for width in asked]
        return [width * room // sum(widths) for width in widths] if sum(widths) > room > 0 else widths

    def _height_of(self, row: TableRow) -> int:
        heights = [
            lay_out(text, current().font(), self.columnWidth(column) - 2 * PADDING - 4).boundingRect().height()
            for column, text in enumerate(row.cells)
        ]
        return max(round(max(heights, default=0)) + PADDING, current().sizes.target)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap anew when the width changes."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _moved(self, place: int, _column: int, _before: int, _column_before: int) -> None:
        if self._is_filling or not 0 <= place < len(self._rows):
            return
        self._keep_in_sight(place)
        self.row_picked.emit(self._rows[place].key)

    def show_picked(self) -> None:
        """Scroll the sheet to the row picked, for instance after something below the table took room."""
        if self.currentRow() >= 0:
            self._keep_in_sight(self.currentRow())

    def _keep_in_sight(self, place: int) -> None:
        """Let the sheet follow the arrow keys."""
        above = self.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        if above is not None and (inside := above.widget()) is not None:
            middle = self.visualRect(self.model().index(place, 0)).center()
            at = self.viewport().mapTo(inside, middle)
            above.ensureVisible(at.x(), at.y(), 0, self.rowHeight(place))
