"""The mounting positions of a shock side by side; one of them is the one it is in."""

from __future__ import annotations

from functools import partial
from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.leverage import LeverageViewModel
from workbench.viewmodels.leverage_mountings import HEADS, Mountings, MountingShown

NAME_WIDTH = 150
_TOP = Qt.AlignmentFlag.AlignTop


class MountingRows(QWidget):
    """A row a mounting: its figures, and the two ways of saying that the shock is in it."""

    def __init__(self, view_model: LeverageViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view_model = view_model
        self._shown = Mountings()
        self._table: QWidget | None = None
        self._remark = Words("", "note", name="leverage_mountings_said")
        self._new = Button("Survey another mounting", "plain", name="leverage_new")
        self._new.clicked.connect(view_model.begin_new)
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE_8)
        self._rows.addWidget(Words("Mountings", "strong"))
        self._rows.addWidget(self._remark)
        self._rows.addWidget(self._new, 0, Qt.AlignmentFlag.AlignLeft)

    def show_mountings(self, shown: Mountings, *, has_draft: bool) -> None:
        """Show all mountings; while a survey is being typed no other one is begun."""
        self.setVisible(bool(shown.rows))
        self._new.setVisible(not has_draft)
        self._remark.set_words(shown.remark)
        if shown.rows == self._shown.rows and self._table is not None:
            return
        self._shown = shown
        if self._table is not None:
            self._table.hide()
            self._table.deleteLater()
        self._table = self._build(shown)
        self._rows.insertWidget(1, self._table)

    def _build(self, shown: Mountings) -> QWidget:
        table = QWidget()
        grid = QGridLayout(table)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_16)
        grid.setVerticalSpacing(SPACE_4)
        for column, head in enumerate(HEADS):
            grid.addWidget(Words(head, "mute"), 0, column)
            grid.setColumnStretch(column, 1)
        for place, one in enumerate(shown.rows, start=1):
            self._add(grid, place, one)
        return table

    def _add(self, grid: QGridLayout, place: int, one: MountingShown) -> None:
        """Two lines a mounting: its figures, and what can be said of it."""
        line = 2 * place - 1
        name = Button(one.name, "link", name=f"leverage_mounting_{place}")
        name.setMaximumWidth(NAME_WIDTH)
        name.setToolTip(escape(one.name))
        name.setAccessibleName(f"Look at the survey of {one.name}, {one.note}")
        name.clicked.connect(partial(self._view_model.look_at, one.survey_id))
        grid.addWidget(name, line, 0, _TOP | Qt.AlignmentFlag.AlignLeft)
        for column, text in enumerate(one.cells, start=1):
            words = Words(text, "strong" if one.is_in_use else "text", name=f"leverage_cell_{place}_{column}")
            words.setMinimumHeight(name.sizeHint().height())
            grid.addWidget(words, line, column, _TOP)
        grid.addWidget(self._keys(place, one), line + 1, 1, 1, len(HEADS) - 1)

    def _keys(self, place: int, one: MountingShown) -> QWidget:
        keys = Flow(gap=SPACE_8)
        if one.is_in_use:
            here = Words("The shock is in this one", "strong", name=f"leverage_in_use_{place}")
            here.setMinimumHeight(24)
            keys.addWidget(here)
        for words, deed, key in (
            (one.move_verb, self._view_model.move_mounting, "move"),
            (one.state_verb, self._view_model.state_mounting, "state"),
        ):
            if words:
                kind = "link" if key == "state" and one.move_verb else "plain"
                button = Button(words, kind, name=f"leverage_{key}_{place}")
                button.setAccessibleName(f"{words}: {one.name}")
                button.clicked.connect(partial(deed, one.survey_id))
                keys.addWidget(button)
        return keys
