"""The settings of a baseline being written, one line each."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.ui.parts.field_base import EntryLine, set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.baseline import BaselineRow


class _Row:
    """The widgets of one setting."""

    def __init__(self, row: BaselineRow, place: int) -> None:
        self.title = Words(row.title, "text")
        self.line = EntryLine()
        self.line.setObjectName(f"baseline_value_{place}")
        self.line.setProperty("key", row.key)
        self.line.setFixedWidth(112)
        self.title.setBuddy(self.line)
        self.unit = Words(row.unit, "mute")
        self.said = Words("", "note")

    def show_row(self, row: BaselineRow) -> None:
        """Show the value, what it means and where it comes from, or what is wrong."""
        self.line.setAccessibleName(f"{row.title}, {row.unit}")
        if self.line.text() != row.text:
            self.line.setText(row.text)
            self.line.setModified(False)
        said = f"{row.said} ({row.origin})" if row.said else row.origin
        self.said.set_role("problem" if row.problem else "note")
        self.said.setText(row.problem or said)
        self.line.setAccessibleDescription(row.problem)
        set_refused(self.line, bool(row.problem))


class BaselineRows(QWidget):
    """All settings; ``value_typed(key, text)`` at every entry."""

    value_typed = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: dict[str, _Row] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_8)
        self._grid.setColumnStretch(3, 1)

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

    def _build(self, rows: tuple[BaselineRow, ...]) -> None:
        for old in self._rows.values():
            widgets: tuple[QWidget, ...] = (old.title, old.line, old.unit, old.said)
            for widget in widgets:
                widget.hide()
                widget.deleteLater()
        self._rows = {}
        for place, row in enumerate(rows):
            made = _Row(row, place)
            made.line.textEdited.connect(self._typed)
            for column, part in enumerate((made.title, made.line, made.unit, made.said)):
                self._grid.addWidget(part, place, column, Qt.AlignmentFlag.AlignVCenter)
            self._rows[row.key] = made

    def _typed(self, text: str) -> None:
        self.value_typed.emit(str(self.sender().property("key")), text)
