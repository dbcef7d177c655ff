"""The line under a picture: what is read off it, and how to read while nothing is."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.plots.reading import ReadPlot


class ReadLine(Words):
    """One line, so that nothing below moves while it changes."""

    def __init__(self, how: str, plots: Sequence[ReadPlot], *, name: str, parent: QWidget | None = None) -> None:
        super().__init__(how, "note", elide=True, name=name, parent=parent)
        self._how = how
        for plot in plots:
            plot.read.connect(self._say)

    def _say(self, text: str) -> None:
        self.set_role("note_strong" if text else "note")
        self.setText(text or self._how)
