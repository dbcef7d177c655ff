"""The adjusters of the unit before measuring: counted or not, on record or not, open or not."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.text_field import TextField
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import AdjusterShown


class AdjusterRow(QWidget):
    """One adjuster; where its place is not on record, a field to record it."""

    place_kept = Signal()

    def __init__(self, view_model: SagViewModel, shown: AdjusterShown) -> None:
        super().__init__()
        self._view_model = view_model
        self._key = shown.adjuster_id
        self._title = Words("", "strong")
        self._title.setMinimumWidth(124)
        self._status = Words("", "mute")
        name = f"sag_place_{shown.place}"
        self.place = TextField(label="", limit=40, placeholder="", name=name)
        self.place.setFixedWidth(136)
        self.keep = Button("Keep as found", "plain", name=f"sag_keep_place_{shown.place}")
        self.keep.clicked.connect(self._keep)
        self.place.line.returnPressed.connect(self._keep)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_8)
        row.addWidget(self._title, 2)
        row.addWidget(self._status, 3)
        row.addWidget(self.place)
        row.addWidget(self.keep)

    def show_row(self, shown: AdjusterShown) -> None:
        """Show the adjuster as it stands."""
        self._title.setText(shown.title)
        self._status.setText(shown.status)
        self.place.line.setPlaceholderText(shown.place_hint)
        self.place.line.setAccessibleName(f"{shown.title}: {shown.place_hint}")
        self.keep.setAccessibleName(f"Keep {shown.title} as found")
        self.place.setVisible(shown.asks_place)
        self.keep.setVisible(shown.asks_place)

    def _keep(self) -> None:
        if self._view_model.note_place(self._key, self.place.line.text()):
            self.place_kept.emit()


class AdjusterRows(QWidget):
    """All adjusters of the unit, and what to do about them."""

    station_requested = Signal(str)
    moved_on = Signal()  # something here is done: the focus belongs to the next thing

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__()
        self._view_model = view_model
        self._rows: dict[str, AdjusterRow] = {}
        self.opened = Button("All stand fully open now", "plain", name="sag_all_open")
        self.opened.clicked.connect(self._open)
        self.count = Button("", "link", name="sag_count_link")
        self.count.clicked.connect(self._go)
        self._list = QVBoxLayout()
        self._list.setSpacing(4)
        keys = Flow(gap=SPACE_8)
        keys.addWidget(self.opened)
        keys.addWidget(self.count)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(self._list)
        rows.addWidget(keys)

    def show_rows(self, shown: tuple[AdjusterShown, ...], count_link: str) -> None:
        """Show the adjusters; rows of the same ones stay, so that typing stays."""
        if [one.adjuster_id for one in shown] != list(self._rows):
            for row in self._rows.values():
                row.hide()
                row.deleteLater()
            self._rows = {one.adjuster_id: AdjusterRow(self._view_model, one) for one in shown}
            for row in self._rows.values():
                row.place_kept.connect(self.moved_on)
                self._list.addWidget(row)
                row.show()
        for one in shown:
            self._rows[one.adjuster_id].show_row(one)
        self.opened.setVisible(any(one.can_open for one in shown))
        self.count.set_text(count_link)
        self.count.setVisible(bool(count_link))

    def first(self) -> QWidget | None:
        """Give the next thing to do here, if there is one."""
        places = [row.place for row in self._rows.values() if row.place.isVisibleTo(self)]
        return places[0] if places else self.opened if self.opened.isVisibleTo(self) else None

    def field(self, name: str) -> QWidget | None:
        """Give the field in which an adjuster's place is typed."""
        row = self._rows.get(name.removeprefix("place_"))
        return row.place if row is not None else None

    def _open(self) -> None:
        self._view_model.open_adjusters()
        self.moved_on.emit()

    def _go(self) -> None:
        self.station_requested.emit("adjusters")
