"""The one base of all plots: our colours and font, no menus of its own, nothing that moves by itself."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFontMetrics, QImage, QPainter
from PySide6.QtWidgets import QWidget

from workbench.ui.parts.theme import announcer, current

PRINT_SCALE = 2  # pixels a point in a written picture


class Plot(pg.PlotWidget):  # type: ignore[misc]
    """A plot that is told what to show. Subclasses give ``_draw()``, which is called again when the theme changes."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent, enableMenu=False)
        menu = self.getPlotItem().ctrlMenu  # made in any case: ours to take along, never to show
        menu.setParent(self, menu.windowFlags())
        self.setObjectName(name)
        self.hideButtons()
        self.setMouseEnabled(x=False, y=False)
        for widget in (self, self.viewport()):
            widget.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        announcer.changed.connect(self._restyle)
        self._style_axes()

    def say(self, words: str) -> None:
        """Name the plot for screen readers: the sentence it shows."""
        self.setAccessibleName(words)

    def colour(self, token: str, alpha: int = 255) -> QColor:
        """Give a colour of the theme."""
        colour = QColor(current().colour(token))
        colour.setAlpha(alpha)
        return colour

    def words(self, text: str, *, token: str = "mute", anchor: tuple[float, float] = (0.0, 0.0)) -> Any:
        """Make a plain-text label."""
        item = pg.TextItem(anchor=anchor, color=self.colour(token))
        item.setPlainText(text)
        item.setFont(current().font("note"))
        return item

    def widen_left(self, texts: Sequence[str]) -> None:
        """Make room for the words at the left and the axis's name; alike for pictures that stand above each other."""
        metrics = QFontMetrics(current().font("note"))
        widest = max((metrics.horizontalAdvance(text) for text in texts), default=0)
        self.getAxis("left").setWidth(widest + 2 * metrics.height() + 8)

    def write(self, path: Path) -> bool:
        """Write the picture as PNG or, by the ending of the name, as SVG; false if it cannot be written."""
        area = self.viewport().rect()
        if path.suffix.casefold() == ".svg":
            return self._write_svg(path)
        image = QImage(area.size() * PRINT_SCALE, QImage.Format.Format_RGB32)
        image.fill(self.colour("card"))
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.render(painter)
        painter.end()
        return image.save(str(path))

    def _write_svg(self, path: Path) -> bool:
        from PySide6.QtSvg import QSvgGenerator

        area = self.viewport().rect()
        generator = QSvgGenerator()
        generator.setFileName(str(path))
        generator.setSize(area.size())
        generator.setViewBox(area)
        generator.setResolution(self.logicalDpiX())  # else axes and data come apart
        generator.setTitle(self.accessibleName())
        painter = QPainter()
        if not painter.begin(generator):
            return False
        self.render(painter)
        return painter.end()

    def _draw(self) -> None:
        raise NotImplementedError

    def _restyle(self, _theme: object = None) -> None:
        self._style_axes()
        self._draw()

    def _style_axes(self) -> None:
        self.setBackground(self.colour("card"))
        for side in ("left", "bottom"):
            axis = self.getAxis(side)
            axis.enableAutoSIPrefix(False)
            axis.setPen(pg.mkPen(self.colour("line")))
            axis.setTextPen(pg.mkPen(self.colour("mute")))
            axis.setTickFont(current().font("note"))
