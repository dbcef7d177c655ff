"""What was asked beside the one response named: dots to count, the same in words, and no verdict."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.ui.plots.looked import LookedPlot
from workbench.viewmodels.review_data import Looked

SIDES = "Circle: before the change picked. Square: after it."


class LookedView(QWidget):
    """Hidden where nothing else was asked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = Words("", "strong", name="looked_title")
        self._said = Words("", "note", name="looked_said")
        self.plot = LookedPlot()
        self._sides = Words(SIDES, "note", name="looked_sides")
        self._list = Words("", "note", name="looked_list")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (self._title, self._said, self.plot, self._sides, self._list):
            rows.addWidget(widget)

    def show_looked(self, looked: Looked) -> None:
        """Show the attributes of the runs, or of the two sides of the change picked."""
        self.setVisible(bool(looked.title))
        self._title.setText(looked.title)
        self._said.setText(looked.said)
        self.plot.show_looked(looked)
        self.plot.setVisible(bool(looked.rows))
        has_sides = any(dot.side != "all" for row in looked.rows for dot in row.dots)
        self._sides.setVisible(has_sides)
        self._list.set_words("\n".join(row.said for row in looked.rows))
