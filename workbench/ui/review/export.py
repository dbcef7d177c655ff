"""Write what the review shows into files: pictures as PNG or SVG, tables as CSV."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSaveFile, Signal
from PySide6.QtWidgets import QFileDialog, QMenu, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.plots.base import Plot

PICTURE = "Picture (*.png *.svg)"
TABLE = "Table (*.csv)"


class ExportButton(Button):
    """A menu of what can be written; ``said`` with a sentence when it was, or could not be."""

    said = Signal(str)

    def __init__(
        self,
        plots: tuple[tuple[str, Plot], ...],
        tables: tuple[tuple[str, Callable[[], str]], ...],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__("Export ...", "link", name="review_export", parent=parent)
        self._plots, self._tables = dict(plots), dict(tables)
        menu = QMenu(self)
        for words in (*self._plots, *self._tables):
            menu.addAction(words).setData(words)
        menu.triggered.connect(self._ask)
        menu.aboutToShow.connect(self._offer)
        self.setMenu(menu)

    def _offer(self) -> None:
        """Offer the pictures that are there."""
        for action in self.menu().actions():
            plot = self._plots.get(str(action.data()))
            action.setEnabled(plot is None or not plot.isHidden())

    def _ask(self, action: object) -> None:
        words = str(action.data())  # type: ignore[attr-defined]
        is_picture = words in self._plots
        name = f"{words.casefold().replace(' ', '-')}.{'png' if is_picture else 'csv'}"
        path, _ = QFileDialog.getSaveFileName(self, f"Export: {words}", name, PICTURE if is_picture else TABLE)
        if path:
            self.write(words, Path(path))

    def write(self, words: str, path: Path) -> None:
        """Write one of the pictures or tables and say so."""
        plot = self._plots.get(words)
        done = plot.write(path) if plot is not None else _write_text(path, self._tables[words]())
        self.said.emit(f"Written to {path}" if done else f"{path} cannot be written. Choose another folder.")


def _write_text(path: Path, text: str) -> bool:
    """Write a text as a whole or not at all."""
    file = QSaveFile(str(path))
    if not file.open(QSaveFile.OpenModeFlag.WriteOnly):
        return False
    file.write(text.encode("utf-8"))
    return file.commit()
