"""One unit: its spring as found and its adjusters; or the tyres."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.adjusters.found_fields import FoundFields
from workbench.ui.adjusters.row_view import RowView
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words, isolate
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_edit import EditState
from workbench.viewmodels.adjusters_list import Group


class GroupView(QWidget):
    """Title, fields as found, and a row for each adjuster."""

    def __init__(self, view_model: AdjustersViewModel, key: str) -> None:
        super().__init__()
        self.setObjectName(f"group_{key}")
        self._view_model = view_model
        self._unit_id = ""
        self.rows: dict[str, RowView] = {}
        self._title = Words("", "strong")
        self._name = Words("", "mute", elide=True)
        self.add = Button("Add adjuster", "link", name=f"add_adjuster_{key}")
        self.add.clicked.connect(self._add)
        self.fields = FoundFields(view_model)
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(self._title)
        head.addWidget(self._name)
        head.addStretch(1)
        head.addWidget(self.add)
        self._list = QVBoxLayout()
        self._list.setSpacing(SPACE_16)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(SPACE_8)
        stack.addWidget(Rule())
        stack.addLayout(head)
        stack.addWidget(self.fields)
        stack.addLayout(self._list)

    def show_group(self, group: Group, edit: EditState | None) -> None:
        """Show the unit."""
        self._unit_id = group.unit_id
        self._title.setText(group.title)
        self._name.set_words(isolate(group.name) if group.name else "")
        self.add.setVisible(bool(group.unit_id))
        self.add.setAccessibleName(f"Add an adjuster to the {group.title.lower()}")
        self.fields.show_items(group.items)
        ids = [row.adjuster_id for row in group.rows]
        if ids != list(self.rows):
            self._arrange(ids)
        for row in group.rows:
            own_edit = edit if edit and edit.adjuster_id == row.adjuster_id else None
            self.rows[row.adjuster_id].show_row(row, own_edit, group.title)

    def set_problem(self, name: str, text: str) -> bool:
        """Say a problem at its field, if it is here."""
        return self.fields.set_problem(name, text) or any(row.set_problem(name, text) for row in self.rows.values())

    def _arrange(self, ids: list[str]) -> None:
        """Keep the rows that stay, so that fields in them keep their typing."""
        for key in set(self.rows) - set(ids):
            gone = self.rows.pop(key)
            gone.hide()
            gone.deleteLater()
        self.rows = {key: self.rows.get(key) or RowView(self._view_model, key) for key in ids}
        for place, row in enumerate(self.rows.values()):
            self._list.insertWidget(place, row)

    def _add(self) -> None:
        self._view_model.add(self._unit_id)
