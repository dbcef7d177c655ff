"""The list of bikes: name, rider, and the next thing due, read only for rows in sight."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QElapsedTimer,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QRect,
    QSize,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QContextMenuEvent, QPainter, QTextOption
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from workbench.ui.parts.buttons import draw_focus
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, current
from workbench.viewmodels.window import ListRow

Index = QModelIndex | QPersistentModelIndex
ROW_ROLE = int(Qt.ItemDataRole.UserRole)
MOMENT_MS = 15
MOST_IN_SIGHT = 100  # rows; who scrolls past more is not told what was due on the first of them


class BikeModel(QAbstractListModel):
    """Rows of the garage list; what is due on a bike is read when its row has come into sight."""

    def __init__(
        self, due: Callable[[str], str], as_read: Callable[[str], str | None], view: QAbstractItemView
    ) -> None:
        super().__init__(view)
        self._view = view
        self._rows: tuple[ListRow, ...] = ()
        self._due, self._as_read = due, as_read
        self._awaited: dict[str, None] = {}  # bikes painted without what is due on them, in the order painted
        self._may_read = False  # the very first paint reads nothing, so that the window is seen sooner
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._read_some)

    def set_rows(self, rows: tuple[ListRow, ...]) -> None:
        """Show other rows. Of the same ones only what is due may differ, which moves no row: they are but painted."""
        if rows == self._rows:
            self._view.viewport().update()
            return
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def place(self, bike_id: str | None) -> int:
        """Give the row of a bike, or -1."""
        return next((place for place, row in enumerate(self._rows) if row.bike_id == bike_id), -1)

    def rowCount(self, parent: Index | None = None) -> int:
        """How many bikes are listed."""
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    def data(self, index: Index, role: int = ROW_ROLE) -> Any:
        """The row itself, or its text: for screen readers with what is due, for finding a row by letters without."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == ROW_ROLE:
            return row
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{row.name}, {row.rider}"
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{row.name}, {row.rider}, {self._due(row.bike_id)}"
        return None

    def due_to_paint(self, bike_id: str) -> str:
        """Say what is due on a bike. Of those not read yet one is read at once, the others after the painting."""
        known = self._as_read(bike_id)
        if known is None and self._may_read:
            self._may_read = False
            known = self._due(bike_id)
            self._soon.start()
        elif known is None:
            self._awaited.pop(bike_id, None)
            self._awaited[bike_id] = None
            self._soon.start()
        return known or ""

    def _read_some(self) -> None:
        """Read what is due on the bikes painted last, for a moment only; the ones before them come next."""
        if not self._view.isVisible():
            self._awaited.clear()
        while len(self._awaited) > MOST_IN_SIGHT:
            del self._awaited[next(iter(self._awaited))]
        begun = QElapsedTimer()
        begun.start()
        while self._awaited and begun.elapsed() < MOMENT_MS:
            place = self.place(self._awaited.popitem()[0])
            if place >= 0:
                self._due(self._rows[place].bike_id)
                self._view.update(self.index(place))
        self._may_read = not self._awaited
        if self._awaited:
            self._soon.start()


class BikeRow(QStyledItemDelegate):
    """Paints one bike as three short lines; the open one has a bar at its side."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Three lines and some air."""
        sizes = current().sizes
        return QSize(200, max(sizes.text + 2 * sizes.note + 2 * SPACE_8 + 18, sizes.target))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw the row."""
        row: ListRow = index.data(ROW_ROLE)
        model = index.model()
        due = model.due_to_paint(row.bike_id) if isinstance(model, BikeModel) else ""
        theme = current()
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        is_open = bool(state & QStyle.StateFlag.State_Selected)
        painter.save()
        if is_open:
            painter.fillRect(rect, theme.colour("card"))
            painter.fillRect(QRect(rect.left(), rect.top(), 3, rect.height()), theme.colour("ink"))
        if is_open and state & QStyle.StateFlag.State_HasFocus:
            draw_focus(painter, rect.toRectF())
        lines = (
            (row.name, theme.font("text", bold=True), "ink"),
            (row.rider, theme.font("note"), "mute"),
            (due, theme.font("note"), "ink"),
        )
        top = rect.top() + SPACE_8
        for text, font, colour in lines:
            painter.setFont(font)
            painter.setPen(theme.colour(colour))
            height = painter.fontMetrics().height()
            width = rect.width() - SPACE_16 - SPACE_8
            shown = painter.fontMetrics().elidedText(" ".join(text.split()), Qt.TextElideMode.ElideRight, width)
            option_text = QTextOption(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
            option_text.setWrapMode(QTextOption.WrapMode.NoWrap)
            painter.drawText(QRect(rect.left() + SPACE_16, top, width, height + SPACE_4).toRectF(), shown, option_text)
            top += height + 2
        painter.restore()


class BikeList(QListView):
    """The garage list; ``bike_picked`` when a row is clicked or entered.

    ``menu_requested`` with the bike and the place on screen at a right click, or at the menu key on the current row.
    """

    bike_picked = Signal(str)
    menu_requested = Signal(str, QPoint)

    def __init__(
        self, due: Callable[[str], str], as_read: Callable[[str], str | None], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setObjectName("bike_list")
        self.setAccessibleName("Bikes in the garage")
        self._model = BikeModel(due, as_read, self)
        self.setModel(self._model)
        self.setItemDelegate(BikeRow(self))
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QListView.Shape.NoFrame)
        self.clicked.connect(self._pick)
        self.activated.connect(self._pick)

    def show_rows(self, rows: tuple[ListRow, ...], open_bike: str | None) -> None:
        """Show the bikes and mark the one on the bench."""
        self._model.set_rows(rows)
        place = self._model.place(open_bike)
        if place >= 0:
            self.setCurrentIndex(self._model.index(place))
        else:
            self.clearSelection()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        by_mouse = event.reason() == QContextMenuEvent.Reason.Mouse
        index = self.indexAt(event.pos()) if by_mouse else self.currentIndex()
        row = index.data(ROW_ROLE)
        if row is not None:
            place = event.pos() if by_mouse else self.visualRect(index).center()
            self.menu_requested.emit(row.bike_id, self.viewport().mapToGlobal(place))

    def pick_first(self) -> None:
        """Open the first bike found, as Enter in the search field does."""
        if self._model.rowCount():
            self._pick(self._model.index(0))

    def _pick(self, index: QModelIndex) -> None:
        row = index.data(ROW_ROLE)
        if row is not None:
            self.bike_picked.emit(row.bike_id)
