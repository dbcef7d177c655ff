"""The laps found, each with the run it goes to."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_24
from workbench.viewmodels.lap_rows import LapRow

HEADS = ("Lap", "Began", "Time", "Goes to", "")


class LapList(QWidget):
    """A line a lap; ``run_chosen`` with the lap's place and the run. A line stays the same widget while laps move."""

    run_chosen = Signal(int, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines: list[tuple[Words, Words, Words, ListBox, Words]] = []
        self._rows = QGridLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setHorizontalSpacing(SPACE_24)
        self._rows.setVerticalSpacing(SPACE_8)
        self._rows.setColumnStretch(len(HEADS) - 1, 1)
        for column, head in enumerate(HEADS):
            self._rows.addWidget(Words(head, "mute"), 0, column)

    def show_rows(self, rows: tuple[LapRow, ...]) -> None:
        """Show the laps."""
        self.setVisible(bool(rows))
        for place in range(len(self._lines), len(rows)):
            self._lines.append(self._line(place))
        while len(self._lines) > len(rows):
            for cell in self._lines.pop():
                self._rows.removeWidget(cell)
                cell.hide()
                cell.deleteLater()
        for row, (number, begun, lap, box, said) in zip(rows, self._lines, strict=True):
            for words, text in ((number, f"{row.place + 1}"), (begun, row.begun), (lap, row.lap), (said, row.said)):
                words.setText(text)
            box.setAccessibleName(f"Lap {row.place + 1}, {row.lap}, goes to")
            box.clear()
            for key, run in row.choices:
                box.addItem(run, key)
            box.setCurrentIndex(max(box.findData(row.run_id), 0))

    def _line(self, place: int) -> tuple[Words, Words, Words, ListBox, Words]:
        box = ListBox(())
        box.setObjectName(f"lap_goes_{place + 1}")
        box.setMinimumContentsLength(18)
        box.activated.connect(partial(self._chosen, place, box))
        line = (Words(), Words(), Words("", "strong"), box, Words("", "note"))
        for column, cell in enumerate(line):
            self._rows.addWidget(cell, place + 1, column, Qt.AlignmentFlag.AlignVCenter)
            cell.show()
        return line

    def _chosen(self, place: int, box: ListBox, at: int) -> None:
        self.run_chosen.emit(place, str(box.itemData(at)))
