"""Who rides the bike: each rider with what can be done, and below them the way to one more."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QStringListModel
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words, isolate, one_line
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.garage_deeds import GarageState
from workbench.viewmodels.garage_rows import RiderRow

NOBODY_YET = "Somebody known ..."


class _Rider(QWidget):
    """One rider of the bike."""

    def __init__(self, view_model: GarageViewModel, row: RiderRow, place: int, *, is_alone: bool) -> None:
        super().__init__()
        words = Words(isolate(one_line(row.name)), "strong", elide=True)
        said = Words(", ".join(part for part in (row.says, one_line(row.other_bikes)) if part), "note", elide=True)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(SPACE_8)
        line.addWidget(words)
        line.addWidget(said, 1)
        keys = (
            ("Put on the bench", "rider_bench", view_model.choose_rider, not row.is_on_bench),
            ("Make main", "rider_main", view_model.make_main, not row.is_main),
            ("Take off", "rider_off", view_model.take_off, not is_alone),
        )
        for text, name, deed, is_offered in keys:
            if is_offered:
                key = Button(text, "plain", name=f"{name}_{place}")
                key.setAccessibleName(f"{row.name}: {text.lower()}")
                key.clicked.connect(partial(deed, row.person_id))
                line.addWidget(key)


class RidersView(QWidget):
    """The riders of the bike on the bench."""

    def __init__(self, view_model: GarageViewModel) -> None:
        super().__init__()
        self._garage = view_model
        self._shown: tuple[RiderRow, ...] = ()
        self._rows: list[_Rider] = []
        self._holder = QVBoxLayout()
        self._holder.setSpacing(SPACE_4)
        self._offered: tuple[tuple[str, str], ...] = ()
        self._names = QStringListModel([NOBODY_YET], self)  # thousands of names at once, not one by one
        self._others = ListBox(())
        self._others.setModel(self._names)
        self._others.setObjectName("known_rider")
        self._others.setAccessibleName("Let somebody known ride this bike")
        self._others.activated.connect(self._add_known)
        self._new = QLineEdit()
        self._new.setObjectName("new_rider")
        self._new.setAccessibleName("Name of a new rider")
        self._new.setPlaceholderText("Name of a new rider")
        self._new.returnPressed.connect(self._add)
        add = Button("Add rider", "plain", name="add_rider")
        add.clicked.connect(self._add)
        more = QHBoxLayout()
        more.setSpacing(SPACE_16)
        more.addWidget(self._new, 1)
        more.addWidget(add)
        more.addWidget(self._others, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(SPACE_8)
        whole.addWidget(Words("Riders", "mute"))
        whole.addLayout(self._holder)
        whole.addLayout(more)

    def show_riders(self, state: GarageState) -> None:
        """Show the riders, the main one first."""
        if state.rider_rows != self._shown:
            self._shown = state.rider_rows
            for old in self._rows:
                old.hide()
                old.deleteLater()
            is_alone = len(state.rider_rows) == 1
            self._rows = [
                _Rider(self._garage, row, place, is_alone=is_alone) for place, row in enumerate(state.rider_rows, 1)
            ]
            for row in self._rows:
                self._holder.addWidget(row)
        if state.others != self._offered:
            self._offered = state.others
            self._names.setStringList([NOBODY_YET, *(one_line(name) for _, name in state.others)])
        self._others.setCurrentIndex(0)
        self._others.setVisible(bool(state.others))

    def _add_known(self, place: int) -> None:
        if place > 0:
            self._garage.choose_rider(self._offered[place - 1][0])

    def _add(self) -> None:
        if self._garage.add_new_rider(self._new.text()):
            self._new.clear()
