"""A row that goes on in the next line when it is full."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget


class Flow(QWidget):
    """Places widgets side by side at their own size, centred in their row, wrapping to new rows.

    A widget rather than a layout: items of a layout are no QObjects, and those kept by a layout written in Python
    can be freed under it.
    """

    def __init__(self, parent: QWidget | None = None, *, gap: int = 8) -> None:
        super().__init__(parent)
        self._widgets: list[QWidget] = []
        self._gap = gap
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def addWidget(self, widget: QWidget) -> None:
        """Put a widget at the end, as a layout would; one that was hidden on purpose stays hidden."""
        self.insert_widget(len(self._widgets), widget)

    def insert_widget(self, index: int, widget: QWidget) -> None:
        """Put a widget before the one at an index."""
        is_hidden = widget.isHidden() and widget.testAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide)
        widget.setParent(self)
        self._widgets.insert(index, widget)
        widget.setVisible(not is_hidden)
        self.updateGeometry()

    def widgets(self) -> list[QWidget]:
        """Give the widgets in order, hidden ones too."""
        return list(self._widgets)

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._place(self.width(), dry=False)
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place(event.size().width(), dry=False)

    def heightForWidth(self, width: int) -> int:
        return self._place(width, dry=True)

    def sizeHint(self) -> QSize:
        hints = [widget.sizeHint() for widget in self._shown()]
        width = sum(hint.width() for hint in hints) + self._gap * max(0, len(hints) - 1)
        return QSize(width, max((hint.height() for hint in hints), default=0))

    def minimumSizeHint(self) -> QSize:
        least = [_least(widget) for widget in self._shown()]
        return QSize(max((s.width() for s in least), default=0), max((s.height() for s in least), default=0))

    def _shown(self) -> list[QWidget]:
        return [widget for widget in self._widgets if not widget.isHidden()]

    def _place(self, width: int, *, dry: bool) -> int:
        """Set every widget's place and give the height used."""
        top = 0
        for row in self._rows(width):
            height = max(hint.height() for _, hint in row)
            left = 0
            for widget, hint in row:
                if not dry:
                    widget.setGeometry(QRect(QPoint(left, top + (height - hint.height()) // 2), hint))
                left += hint.width() + self._gap
            top += height + self._gap
        return max(0, top - self._gap)

    def _rows(self, width: int) -> list[list[tuple[QWidget, QSize]]]:
        """Fill rows with widgets and the sizes they get."""
        rows: list[list[tuple[QWidget, QSize]]] = []
        left = 0
        for widget in self._shown():
            hint = widget.sizeHint().expandedTo(_least(widget)).boundedTo(widget.maximumSize())
            hint.setWidth(max(min(hint.width(), width), _least(widget).width()))
            if not rows or left + hint.width() > width:
                rows.append([])
                left = 0
            rows[-1].append((widget, hint))
            left += hint.width() + self._gap
        return rows


def _least(widget: QWidget) -> QSize:
    return widget.minimumSizeHint().expandedTo(widget.minimumSize())
