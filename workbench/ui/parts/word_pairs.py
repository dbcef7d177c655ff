"""Two columns of words: what it is, and what stands there."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_24


class WordPairs(QWidget):
    """Pairs of a title and its text, the text in the role given; none takes no room."""

    def __init__(self, role: str = "text") -> None:
        super().__init__()
        self._role = role
        self._shown: tuple[tuple[str, str], ...] = ()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_24)
        self._grid.setVerticalSpacing(SPACE_4)
        self._grid.setColumnStretch(1, 1)

    def show_pairs(self, pairs: tuple[tuple[str, str], ...]) -> None:
        """Show other pairs; the same ones are left as they are."""
        self.setVisible(bool(pairs))
        if pairs == self._shown:
            return
        self._shown = pairs
        while item := self._grid.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for place, (title, text) in enumerate(pairs):
            self._grid.addWidget(Words(title, "mute"), place, 0, Qt.AlignmentFlag.AlignTop)
            self._grid.addWidget(Words(text, self._role), place, 1)
