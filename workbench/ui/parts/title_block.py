"""The block at the foot of a sheet, as on a drawing: what this is, whose, which, when and by whom."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from workbench.ui.parts.buttons import draw_focus
from workbench.ui.parts.labels import one_line
from workbench.ui.parts.theme import SPACE_8, SPACE_16, announcer, current

LEAST_CELL = 132


class _CellButton(QPushButton):
    """Lies over a cell and shows only that it can be pressed."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        area = QRectF(self.rect())
        if self.hasFocus():
            draw_focus(painter, area.adjusted(1, 1, 1, 1))
        elif self.underMouse():
            painter.fillRect(QRectF(1, area.height() - 3, area.width() - 1, 3), current().colour("ink"))


class TitleBlock(QWidget):
    """Cells of label and value in one line, or two when it is narrow.

    The cell with the label given as ``person_label`` can be pressed: ``person_requested``.
    """

    person_requested = Signal()

    def __init__(
        self, *, person_label: str = "At the bench", name: str = "title_block", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self._person_label = person_label
        self._cells: tuple[tuple[str, str], ...] = ()
        self.person = _CellButton(self)
        self.person.setObjectName(f"{name}_person")
        self.person.clicked.connect(self._person_pressed)
        self.person.hide()
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        announcer.changed.connect(self._restyle)

    def set_cells(self, cells: Sequence[tuple[str, str]]) -> None:
        """Show cells of (label, value)."""
        self._cells = tuple((label, one_line(value)) for label, value in cells)
        said = ", ".join(f"{label}: {value}" for label, value in self._cells)
        self.setAccessibleName(f"Title block. {said}")
        self._restyle()

    def cells(self) -> tuple[tuple[str, str], ...]:
        """The cells shown."""
        return self._cells

    def cell_rect(self, label: str) -> QRect:
        """Where the cell with a label is."""
        index = [own for own, _ in self._cells].index(label)
        return self._rects(self.width())[index]

    def heightForWidth(self, width: int) -> int:
        rects = self._rects(width)
        return rects[-1].bottom() + 2 if rects else self._row_height()

    def sizeHint(self) -> QSize:
        width = max(1, len(self._cells)) * LEAST_CELL
        return QSize(width, self.heightForWidth(self.width()))

    def minimumSizeHint(self) -> QSize:
        return QSize(2 * LEAST_CELL, self._row_height())

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.colour("card"))
        for (label, value), cell in zip(self._cells, self._rects(self.width()), strict=True):
            painter.setPen(QPen(theme.colour("line"), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            self._draw_edges(painter, QRectF(cell).adjusted(0.5, 0.5, 0.5, 0.5))
            is_person = label == self._person_label
            inner = cell.adjusted(SPACE_8 + 2, SPACE_8, -SPACE_8, -SPACE_8)
            self._draw_line(painter, inner, label, "note", False, "mute", top=True)
            self._draw_line(painter, inner, value or "–", "text", True, "ink", top=False)
            if is_person:
                self._draw_mark(painter, QRectF(cell))

    def _draw_edges(self, painter: QPainter, edge: QRectF) -> None:
        """Outline a cell; inside a sheet the outer edges are the sheet's own."""
        if not self.property("is_inset"):
            painter.drawRect(edge)
            return
        painter.drawLine(edge.topLeft(), edge.topRight())
        if edge.right() < self.width() - 2:
            painter.drawLine(edge.topRight(), edge.bottomRight())

    def _draw_mark(self, painter: QPainter, cell: QRectF) -> None:
        """A small open angle says that the cell can be pressed."""
        painter.setPen(QPen(current().colour("mute"), 1.5))
        tip = QPointF(cell.right() - SPACE_16, cell.top() + SPACE_16 + 2)
        painter.drawLine(tip - QPointF(4, 4), tip)
        painter.drawLine(tip, tip + QPointF(4, -4))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_person()
        self.updateGeometry()

    def _place_person(self) -> None:
        labels = [label for label, _ in self._cells]
        is_there = self._person_label in labels
        self.person.setVisible(is_there)
        if is_there:
            self.person.setGeometry(self.cell_rect(self._person_label))
            value = dict(self._cells)[self._person_label]
            self.person.setAccessibleName(f"{self._person_label}: {value or 'nobody'}. Change")

    def _person_pressed(self) -> None:
        self.person_requested.emit()

    def _draw_line(
        self, painter: QPainter, area: QRect, words: str, size: str, bold: bool, token: str, *, top: bool
    ) -> None:
        font = current().font(size, bold=bold)
        painter.setFont(font)
        painter.setPen(current().colour(token))
        cut = QFontMetrics(font).elidedText(words, Qt.TextElideMode.ElideRight, area.width())
        edge = Qt.AlignmentFlag.AlignTop if top else Qt.AlignmentFlag.AlignBottom
        painter.drawText(area, edge | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignAbsolute, cut)

    def _row_height(self) -> int:
        sizes = current().sizes
        return max(sizes.target + 12, int((sizes.note + sizes.text) * 1.35) + 2 * SPACE_8 + 4)

    def _rects(self, width: int) -> list[QRect]:
        """Give every cell a place: equal widths, in as many rows as needed."""
        count = len(self._cells)
        if not count:
            return []
        in_row = max(1, min(count, width // LEAST_CELL))
        rows = -(-count // in_row)
        in_row = -(-count // rows)
        height = self._row_height()
        rects = []
        for index in range(count):
            row, column = divmod(index, in_row)
            in_this = min(in_row, count - row * in_row)
            left, right = column * (width - 1) // in_this, (column + 1) * (width - 1) // in_this
            rects.append(QRect(left, row * height, right - left, height))
        return rects

    def _restyle(self, _theme: object = None) -> None:
        self._place_person()
        self.updateGeometry()
        self.update()
