"""The facts of one adjuster, opened in its row."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.facts_form import FactsForm
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_edit import EditState
from workbench.viewmodels.adjusters_list import AdjusterRow
from workbench.viewmodels.typed_facts import typed_key


class FactsView(QWidget):
    """A form, and what else can be done with the adjuster."""

    def __init__(self, view_model: AdjustersViewModel, adjuster_id: str) -> None:
        super().__init__()
        self._view_model = view_model
        self._id = adjuster_id
        self.form: FactsForm | None = None
        self.up = Button("Count earlier", "plain")
        self.remove = Button("Remove this adjuster", "plain")
        self.up.clicked.connect(self._move_up)
        self.remove.clicked.connect(self._remove)
        keys = Flow(gap=SPACE_8)
        keys.addWidget(self.up)
        keys.addWidget(self.remove)
        self._stack = QVBoxLayout(self)
        self._stack.setContentsMargins(0, 0, 0, 0)
        self._stack.setSpacing(SPACE_16)
        self._stack.addWidget(keys)

    def show_facts(self, edit: EditState, row: AdjusterRow, said: str) -> None:
        """Show the facts; the form is made when first asked for. ``said`` names the adjuster for screen readers."""
        if self.form is None:
            self.form = FactsForm(f"facts_{row.key}", columns=2)
            self.form.row_committed.connect(self._committed)
            self.form.row_kept.connect(self._kept)
            self._stack.insertWidget(0, self.form)
        self.form.set_about(said)
        self.form.show_facts(edit.rows)
        self.up.setObjectName(f"earlier_{row.key}")
        self.remove.setObjectName(f"remove_{row.key}")
        self.up.setVisible(row.can_move_up)
        self.up.setAccessibleName(f"Count earlier: {said}")
        self.remove.setAccessibleName(f"Remove {said}")

    def set_problem(self, name: str, text: str) -> bool:
        """Say a problem at its field, if there is one."""
        if self.form is None:
            return False
        try:
            self.form.set_problem(name, text)
        except KeyError:
            return False
        return True

    def _committed(self, name: str, value: object) -> None:
        self._view_model.edit(self._id, name, value)

    def _kept(self, name: str, text: str) -> None:
        self._view_model.keep_text(typed_key(self._id, name), text)

    def _move_up(self) -> None:
        self._view_model.move_up(self._id)

    def _remove(self) -> None:
        self._view_model.remove(self._id)
