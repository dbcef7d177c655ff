"""Attributes of a run, end by end: a digit rates and goes on to the next."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QScrollArea, QWidget

from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, current
from workbench.viewmodels.ride_scores import VALUES, ScoreCell, ScoreRow

NONE = "\u2013"
SCORES = ((("0", NONE)), *((str(value), str(value)) for value in VALUES))
_CLEARING = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_0)


def bring_in_sight(part: QWidget) -> None:
    """Scroll so that a part just unfolded is seen."""
    above = part.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        layout = above.layout()
        if layout is not None:
            layout.activate()
        above = above.parentWidget()
    if above is not None:
        QTimer.singleShot(0, part, lambda: above.ensureWidgetVisible(part, 0, SPACE_8))


class ScoreBox(ListBox):
    """One attribute at one end: a list for the mouse, a digit for the keys; ``scored(key, score or None)``."""

    scored = Signal(str, object)

    def __init__(self, cell: ScoreCell, parent: QWidget | None = None) -> None:
        super().__init__(SCORES, parent)
        self.key = cell.key
        self.setObjectName(f"run_score_{cell.key.replace('/', '_')}")
        self.setMinimumContentsLength(2)
        self._title = cell.title
        self.show_score(cell.score)
        self.activated.connect(self._picked)

    def show_score(self, score: int | None) -> None:
        """Show a score, or none."""
        self.setCurrentIndex(max(self.findData(str(score or 0)), 0))
        self.setAccessibleName(f"{self._title}: {score if score else 'not rated'}")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A digit rates and goes on; Enter is left to the entry, which keeps the run."""
        digit = event.text()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            event.ignore()
        elif digit.isascii() and digit.isdigit() and int(digit) in VALUES:
            if not event.isAutoRepeat():
                self.scored.emit(self.key, int(digit))
                self.focusNextChild()
        elif event.key() in _CLEARING:
            self.scored.emit(self.key, None)
        else:
            super().keyPressEvent(event)

    def _picked(self, place: int) -> None:
        self.scored.emit(self.key, int(str(self.itemData(place))) or None)


class ScoreGrid(QWidget):
    """A row an end, a column an attribute; ``scored(key, score or None)``."""

    scored = Signal(str, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("run_scores")
        self._boxes: dict[str, ScoreBox] = {}
        self._parts: list[QWidget] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_8)
        self._grid.setVerticalSpacing(SPACE_4)

    def show_scores(self, rows: tuple[ScoreRow, ...]) -> None:
        """Show the scores given."""
        keys = [cell.key for row in rows for cell in row.cells]
        if list(self._boxes) != keys:
            self._build(rows)
        for row in rows:
            for cell in row.cells:
                self._boxes[cell.key].show_score(cell.score)

    def focus_first(self) -> None:
        """Put the focus on the first attribute not rated yet."""
        boxes = list(self._boxes.values())
        unrated = next((box for box in boxes if box.currentIndex() == 0), boxes[0] if boxes else None)
        if unrated is not None:
            unrated.setFocus(Qt.FocusReason.OtherFocusReason)

    def _build(self, rows: tuple[ScoreRow, ...]) -> None:
        for old in self._parts:
            self._grid.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._parts, self._boxes = [], {}
        self._put(Words("1 poor to 9 very good", "note"), 0, 0, columns=1 + len(rows[0].cells) if rows else 1)
        for column, cell in enumerate(rows[0].cells if rows else (), start=1):
            title = Words(cell.title.rpartition(",")[0], "note")
            title.setAlignment(Qt.AlignmentFlag.AlignBottom)
            self._put(title, 1, column)
            self._grid.setColumnStretch(column, 1)
        for place, row in enumerate(rows, start=2):
            self._put(Words(row.title, "mute"), place, 0)
            for column, cell in enumerate(row.cells, start=1):
                box = ScoreBox(cell)
                box.setMinimumHeight(current().sizes.target)
                box.scored.connect(self.scored)
                self._boxes[cell.key] = box
                self._put(box, place, column)

    def _put(self, widget: QWidget, row: int, column: int, *, columns: int = 1) -> None:
        self._parts.append(widget)
        self._grid.addWidget(widget, row, column, 1, columns)
