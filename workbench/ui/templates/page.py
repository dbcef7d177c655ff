"""The sheet of templates: a list, and below it what can be done with the one picked."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.form import Form, FormRow
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.base import Problem
from workbench.viewmodels.templates import TemplatesState, TemplatesViewModel

HEADS = ("Name", "Parts", "Ridden as", "Kept since")
SAMPLES = ("Shop hire 150 (template)", "", "Cross-country m", "28 Sep 2031 m")


class TemplatesPage(Page):
    """Everything bikes are started from."""

    def __init__(self, view_model: TemplatesViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._templates = view_model
        self._sheet = Sheet(
            "Templates", "Parts kept to start bikes from. They are in no list of bikes.", name="templates"
        )
        self._empty = Words("", name="templates_empty")
        self._table = Table(HEADS, SAMPLES, name="templates_table", label="Templates")
        self._table.row_picked.connect(view_model.pick)
        self._form = Form(name="template")
        self._form.row_committed.connect(self._rename)
        self._begin = Button("Start a bike from it", "verb", name="template_begin")
        self._begin.clicked.connect(view_model.begin)
        self._open = Button("Open its sheet", "plain", name="template_open")
        self._open.clicked.connect(view_model.open)
        self._delete = Button("Delete", "plain", name="template_delete")
        self._delete.clicked.connect(self._do_delete)
        self._close = Button("Back to the garage", "link", name="templates_close")
        self._close.clicked.connect(self._leave)
        self._below = self._below_part()
        for part in (self._empty, self._table, self._below):
            self._sheet.body.addWidget(part)
        self._sheet.body.addWidget(self._close, 0, Qt.AlignmentFlag.AlignLeft)
        self._sheet.body.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Begin at the list."""
        (self._table if self._templates.state.rows else self._close).setFocus(Qt.FocusReason.OtherFocusReason)

    def _below_part(self) -> QWidget:
        part = QWidget()
        keys = Flow(gap=SPACE_16)
        for key in (self._begin, self._open, self._delete):
            keys.addWidget(key)
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (Rule(), self._form, keys):
            rows.addWidget(widget)
        return part

    def _render(self, state: TemplatesState) -> None:
        self._empty.set_words(state.empty)
        rows = tuple(
            TableRow(one.bike_id, (one_line(one.name), one_line(one.parts), one.ridden, one.since))
            for one in state.rows
        )
        self._table.show_rows(rows, state.picked)
        self._table.setVisible(bool(rows))
        self._below.setVisible(bool(state.picked))
        self._form.set_rows((FormRow("name", "Name", value=state.name),))
        name = one_line(state.name)
        for key, words in (
            (self._begin, "Start a bike from"),
            (self._open, "Open the sheet of"),
            (self._delete, "Delete"),
        ):
            key.setAccessibleName(f"{words} {name}")

    def _rename(self, _field: str, name: object) -> None:
        self._templates.rename(str(name))

    def _do_delete(self) -> None:
        self._templates.delete()
        self.start()

    def _leave(self) -> None:
        self.station_requested.emit("garage")

    def _show_problem(self, problem: Problem) -> None:
        if problem.field == "name":
            self._form.set_problem("name", problem.text)
        else:
            self.problem_raised.emit(problem.text)
