"""A row that goes on in the next line when it is full."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Places widgets side by side at their own size, wrapping to new lines."""

    def __init__(self, parent: QWidget | None = None, *, gap: int = 8) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._place(QRect(0, 0, width, 0), dry=True)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._place(rect, dry=False)

    def sizeHint(self) -> QSize:
        shown = [item.sizeHint() for item in self._items if not item.isEmpty()]
        width = sum(size.width() for size in shown) + self._gap * max(0, len(shown) - 1)
        return QSize(width, max((size.height() for size in shown), default=0))

    def minimumSize(self) -> QSize:
        shown = [item.minimumSize() for item in self._items if not item.isEmpty()]
        return QSize(max((s.width() for s in shown), default=0), max((s.height() for s in shown), default=0))

    def _place(self, rect: QRect, *, dry: bool) -> int:
        """Set every item's place, centred in its row, and give the height used."""
        top = rect.y()
        for row in self._rows(rect.width()):
            height = max(hint.height() for _, hint in row)
            left = rect.x()
            for item, hint in row:
                if not dry:
                    item.setGeometry(QRect(QPoint(left, top + (height - hint.height()) // 2), hint))
                left += hint.width() + self._gap
            top += height + self._gap
        return max(0, top - self._gap - rect.y())

    def _rows(self, width: int) -> list[list[tuple[QLayoutItem, QSize]]]:
        """Fill rows with items and the sizes they get."""
        rows: list[list[tuple[QLayoutItem, QSize]]] = []
        left = 0
        for item in self._items:
            if item.isEmpty():
                continue
            hint = item.sizeHint()
            hint.setWidth(max(min(hint.width(), width), item.minimumSize().width()))
            if not rows or left + hint.width() > width:
                rows.append([])
                left = 0
            rows[-1].append((item, hint))
            left += hint.width() + self._gap
        return rows
