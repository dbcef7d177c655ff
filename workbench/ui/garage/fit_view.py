"""Another fork or shock for the bike: the keys that ask for it, and the panel that is filled in."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.form import Form, FormRow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.base import Problem
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.garage_fit import FitRow


class FitView(QWidget):
    """A key for each end; the panel opens below the keys."""

    def __init__(self, view_model: GarageViewModel) -> None:
        super().__init__()
        self.setObjectName("fit")
        self._garage = view_model
        self._rows: dict[str, FitRow] = {}
        self._end = ""
        self._bike_id = ""
        self._keys = {end: Button("", "plain", name=f"fit_{end}") for end in ("front", "rear")}
        keys = Flow(gap=SPACE_16)
        for end, key in self._keys.items():
            key.clicked.connect(partial(self.open, end))
            keys.addWidget(key)
        self._title = Words("", "strong", name="fit_title")
        self._note = Words("", "note")
        self._form = Form(columns=3, name="fit_form")
        self._care = CareNote(name="fit_care")
        self._said = Words("", "problem", name="fit_said")
        self._take = Button("It hangs on the bike now", "plain", name="fit_take")
        self._take.clicked.connect(self._fit)
        self._leave = Button("Leave it as it is", "link", name="fit_leave")
        self._leave.clicked.connect(self._close)
        self._panel = self._panel_part()
        self._panel.hide()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, SPACE_16)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Rule())
        rows.addWidget(Words("Fork and shock", "strong"))
        rows.addWidget(keys)
        rows.addWidget(self._panel)

    def show_rows(self, rows: tuple[FitRow, ...], bike_id: str) -> None:
        """Show what can be fitted; what was asked about another bike is asked no more."""
        if bike_id != self._bike_id:
            self._bike_id = bike_id
            self._panel.hide()
        self._rows = {row.end: row for row in rows}
        self.setVisible(bool(rows))
        for row in rows:
            self._keys[row.end].set_text(row.verb)

    def open(self, end: str) -> None:
        """Ask what is to hang at an end."""
        row = self._rows[end]
        self._end = end
        self._title.set_words(row.title)
        self._note.set_words(row.note)
        self._care.set_text(row.care)
        self._said.set_words("")
        length = FormRow("travel", row.length_label, "length", unit=row.length_unit, help="Can follow later.")
        self._form.set_rows(
            (
                FormRow("kind", "What hangs there", "choice", choices=row.choices, value=row.kind),
                length,
                FormRow("name", "Name", help="As you would call it on a job sheet."),
            )
        )
        self._panel.show()
        self._form.field("kind").setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say what cannot be; false when it is about something else."""
        if not problem.field.startswith("fit_"):
            return False
        name = problem.field.removeprefix("fit_")
        if name in ("travel", "name"):
            self._form.set_problem(name, problem.text)
        else:
            self._said.set_words(problem.text)
        return True

    def _panel_part(self) -> QWidget:
        panel = QWidget()
        keys = QHBoxLayout()
        keys.setSpacing(SPACE_16)
        keys.addWidget(self._take)
        keys.addWidget(self._leave)
        keys.addStretch(1)
        rows = QVBoxLayout(panel)
        rows.setContentsMargins(0, SPACE_8, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (self._title, self._note, self._form, self._care, self._said):
            rows.addWidget(widget)
        rows.addLayout(keys)
        return panel

    def _fit(self) -> None:
        self._said.set_words("")
        if not self._form.commit_all():
            return
        travel = self._form.field("travel")
        length = travel.value() if isinstance(travel, QuantityField) else None
        kind, name = str(self._form.field("kind").value()), str(self._form.field("name").value() or "")
        if self._garage.fit(self._end, kind, length, name):
            self._close()

    def _close(self) -> None:
        self._panel.hide()
        self._keys[self._end].setFocus(Qt.FocusReason.OtherFocusReason)
