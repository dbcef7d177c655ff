"""Sessions side by side, a column each; what differs is set bold and marked."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from workbench.ui.parts.theme import current
from workbench.viewmodels.review_sessions import Sides


class SidesTable(QTableWidget):
    """A line a setting, as high as it needs."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("review_sides")
        self.setAccessibleName("Sessions side by side")
        self.verticalHeader().hide()
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setTabKeyNavigation(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._shown = Sides()

    def show_sides(self, sides: Sides) -> None:
        """Show the sessions."""
        if sides == self._shown:
            return
        self._shown = sides
        self.setColumnCount(len(sides.heads) + 1)
        self.setRowCount(len(sides.rows))
        self.setHorizontalHeaderLabels(["", *sides.heads])
        self.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        for place, row in enumerate(sides.rows):
            title = f"\u2260 {row.title}" if row.differs else row.title
            for column, text in enumerate((title, *row.cells)):
                item = QTableWidgetItem(text)
                item.setFont(current().font("text", bold=row.differs))
                self.setItem(place, column, item)
        self.resizeRowsToContents()
        rows = sum(self.rowHeight(place) for place in range(self.rowCount()))
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + rows + 6)
