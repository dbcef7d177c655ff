"""The list: the next count, clicks to put back, and each unit with its adjusters and spring."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout

from workbench.ui.adjusters.group_view import GroupView
from workbench.ui.adjusters.put_back_view import PutBackView
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.sheet import Sheet
from workbench.viewmodels.adjusters import AdjustersState, AdjustersViewModel


class ListSheet(Sheet):
    """All adjusters of the bike, springs and tyres as found."""

    station_requested = Signal(str)

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__("Adjusters", name="adjusters_sheet")
        self._view_model = view_model
        self._next_id = ""
        self._next_station = ""
        self._groups: dict[str, GroupView] = {}
        self._shown_bike = ""
        self.verb = Button("", "verb", name="adjusters_next")
        self.verb.clicked.connect(self._go)
        self.put_back = PutBackView(view_model)
        row = QHBoxLayout()
        row.addWidget(self.verb)
        row.addStretch(1)
        self.body.addLayout(row)
        self.body.addWidget(self.put_back)
        self.body.addStretch(1)

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        rows = [row for group in self._groups.values() for row in group.rows.values()]
        targets = (self.verb, self.put_back, *(row.count for row in rows))
        target = next((one for one in targets if one.isVisibleTo(self)), self.verb)
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_list(self, state: AdjustersState) -> None:
        """Show the bike's adjusters."""
        self._next_id, self._next_station = state.next_id, state.next_station
        self.set_title("Adjusters", state.progress)
        self.verb.set_text(state.next_text)
        self.verb.setVisible(bool(state.next_text))
        self.put_back.show_steps(state.put_back, state.put_back_note)
        keys = [group.key for group in state.groups]
        if keys != list(self._groups) or state.bike_id != self._shown_bike:
            self._rebuild(state)
        for group in state.groups:
            self._groups[group.key].show_group(group, state.edit)
        self._place_put_back(first=not state.next_id)

    def set_problem(self, name: str, text: str) -> bool:
        """Say a problem at its field; false when the list has no such field."""
        return any(view.set_problem(name, text) for view in self._groups.values())

    def group(self, key: str) -> GroupView:
        """Give the part of one unit, or of the tyres."""
        return self._groups[key]

    def _rebuild(self, state: AdjustersState) -> None:
        for view in self._groups.values():
            view.hide()
            view.deleteLater()
        self._shown_bike = state.bike_id
        self._groups = {group.key: GroupView(self._view_model, group.key) for group in state.groups}
        for view in self._groups.values():
            self.body.insertWidget(self.body.count() - 1, view)

    def _place_put_back(self, *, first: bool) -> None:
        """While there is more to count the list waits below; then it comes first."""
        place = 1 if first else self.body.count() - 2
        if self.body.indexOf(self.put_back) != place:
            self.body.removeWidget(self.put_back)
            self.body.insertWidget(place, self.put_back)

    def _go(self) -> None:
        if self._next_id:
            self._view_model.count(self._next_id)
        elif self._next_station:
            self.station_requested.emit(self._next_station)
