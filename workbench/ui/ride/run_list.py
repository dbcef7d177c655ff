"""The runs of the session, the newest on top."""

from __future__ import annotations

from functools import partial

from PySide6.QtWidgets import QGridLayout, QMenu, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_run import SET_ASIDE_REASONS
from workbench.viewmodels.ride_session import RunRow


class RunList(QWidget):
    """One line a run: number, what was said, what was changed before it, and the way to set it aside."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._shown: tuple[RunRow, ...] = ()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_4)
        self._grid.setColumnStretch(2, 1)

    def show_runs(self, rows: tuple[RunRow, ...]) -> None:
        """Show the runs."""
        if rows == self._shown:
            return
        self._shown = rows
        while item := self._grid.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for place, row in enumerate(rows):
            role = "mute" if row.is_set_aside else "text"
            cells = (Words(row.number, "strong"), Words(row.said, role), Words(row.change, "note"), self._button(row))
            for column, widget in enumerate(cells):
                self._grid.addWidget(widget, place, column)

    def _button(self, row: RunRow) -> Button:
        if row.is_set_aside:
            again = Button("Count again", "link", name=f"run_{row.number}_count")
            again.setAccessibleName(f"Count run {row.number} again")
            again.clicked.connect(partial(self._ride.set_aside, row.run_id, ""))
            return again
        aside = Button("Set aside", "link", name=f"run_{row.number}_aside")
        aside.setAccessibleName(f"Set run {row.number} aside")
        menu = QMenu(aside)
        for reason in SET_ASIDE_REASONS:
            menu.addAction(reason).triggered.connect(partial(self._set_aside, row.run_id, reason))
        aside.setMenu(menu)
        return aside

    def _set_aside(self, run_id: str, reason: str, _checked: bool = False) -> None:
        self._ride.set_aside(run_id, reason)
