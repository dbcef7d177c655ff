"""Tick boxes in two columns, or in one where their words would not fit side by side."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from workbench.ui.parts.choice_field import TickBox
from workbench.ui.parts.theme import SPACE_4, SPACE_16


class TickGrid(QWidget):
    """Boxes read down the first column, then down the second."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._boxes: list[TickBox] = []
        self._columns = 2
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_4)

    def set_boxes(self, boxes: list[TickBox]) -> None:
        """Take the boxes to show, in reading order."""
        if boxes == self._boxes:
            return
        self._boxes = boxes
        for box in boxes:
            box.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)  # so that it never widens the sheet
        self._place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        columns = 2 if self._fits(event.size().width()) else 1
        if columns != self._columns:
            self._columns = columns
            self._place()

    def _fits(self, width: int) -> bool:
        widest = max((box.sizeHint().width() for box in self._boxes), default=0)
        return 2 * widest + SPACE_16 <= width

    def _place(self) -> None:
        rows = -(-len(self._boxes) // self._columns)
        for place, box in enumerate(self._boxes):
            self._grid.addWidget(box, place % rows, place // rows)
        for column in range(2):
            self._grid.setColumnStretch(column, 1 if column < self._columns else 0)
