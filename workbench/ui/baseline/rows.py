"""The settings of a baseline being written: the front end beside the rear one, one line each."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.field_base import set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import UnitLine
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, SPACE_40, current
from workbench.viewmodels.baseline import BaselineRow

ENDS = {"front": "Front", "rear": "Rear"}
NARROW = 760


class _Row:
    """The widgets of one setting."""

    def __init__(self, row: BaselineRow, place: int) -> None:
        self.title = Words(row.title, "text")
        self.line = UnitLine()
        self.line.setObjectName(f"baseline_value_{place}")
        self.line.setProperty("key", row.key)
        self.title.setBuddy(self.line)
        self.said = Words("", "note")
        self.words = QWidget()
        stack = QVBoxLayout(self.words)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(0)
        stack.addWidget(self.title)
        stack.addWidget(self.said)

    def show_row(self, row: BaselineRow) -> None:
        """Show the value, what it means and where it comes from, or what is wrong."""
        self.line.set_label(row.title)
        self.line.set_unit(row.unit.removesuffix(" from closed"))
        self.line.setFixedWidth(round(124 * current().sizes.text / 14))
        if self.line.text() != row.text:
            self.line.setText(row.text)
            self.line.setModified(False)
        said = f"{row.said} ({row.origin})" if row.said else row.origin
        self.said.set_role("problem" if row.problem else "note")
        self.said.setText(row.problem or said)
        self.line.setAccessibleDescription(row.problem or said)
        set_refused(self.line, bool(row.problem))


class BaselineRows(QWidget):
    """All settings; ``value_typed(key, text)`` at every entry."""

    value_typed = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: dict[str, _Row] = {}
        self._columns: list[QWidget] = []
        self._across = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._across.setContentsMargins(0, 0, 0, 0)
        self._across.setSpacing(SPACE_40)

    def show_rows(self, rows: tuple[BaselineRow, ...]) -> None:
        """Show the settings; a line being typed in keeps its caret."""
        if [row.key for row in rows] != list(self._rows):
            self._build(rows)
        for row in rows:
            self._rows[row.key].show_row(row)

    def focus_row(self, key: str) -> None:
        """Put the caret where something is wrong."""
        if key in self._rows:
            self._rows[key].line.setFocus(Qt.FocusReason.OtherFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One end below the other where there is no room for both."""
        super().resizeEvent(event)
        is_narrow = event.size().width() < NARROW * current().sizes.text / 14
        self._across.setDirection(QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight)

    def _build(self, rows: tuple[BaselineRow, ...]) -> None:
        for old in self._columns:
            self._across.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._rows = {row.key: _Row(row, place) for place, row in enumerate(rows)}
        ends = [(words, [row for row in rows if row.end == end]) for end, words in ENDS.items()]
        self._columns = [self._column(words, own) for words, own in ends if own]
        for column in self._columns:
            self._across.addWidget(column, 1, Qt.AlignmentFlag.AlignTop)
        for made in self._rows.values():
            made.line.textEdited.connect(self._typed)

    def _column(self, words: str, rows: list[BaselineRow]) -> QWidget:
        column = QWidget()
        grid = QGridLayout(column)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_16)
        grid.setVerticalSpacing(SPACE_8)
        grid.setColumnStretch(0, 1)
        grid.addWidget(Words(words, "strong"), 0, 0, 1, 2)
        grid.addWidget(Rule(), 1, 0, 1, 2)
        grid.setRowMinimumHeight(2, SPACE_4)
        for place, row in enumerate(rows, start=3):
            made = self._rows[row.key]
            grid.addWidget(made.words, place, 0, Qt.AlignmentFlag.AlignVCenter)
            grid.addWidget(made.line, place, 1, Qt.AlignmentFlag.AlignVCenter)
        return column

    def _typed(self, text: str) -> None:
        self.value_typed.emit(str(self.sender().property("key")), text)
