"""The sheet of people: a list, and below it the facts and bikes of the one picked."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from workbench.ui.facts_form import FactsForm
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words, isolate, one_line
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.base import Problem
from workbench.viewmodels.people import PeopleState, PeopleViewModel

HEADS = ("Name", "Does", "Ready to ride", "Bikes")
SAMPLES = ("B. Halloran Winterbourne", "rides, works here m", "Ready to ride", "")


class PeoplePage(Page):
    """Everybody the garage knows."""

    def __init__(self, view_model: PeopleViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._people = view_model
        self._sheet = Sheet("People", "Riders and who works here. Nobody is deleted: records need them.", name="people")
        self._table = Table(HEADS, SAMPLES, name="people_table", label="People")
        self._table.row_picked.connect(view_model.pick)
        self._find = QLineEdit()
        self._find.setObjectName("people_find")
        self._find.setAccessibleName("Find a name")
        self._find.setPlaceholderText("Find a name")
        self._find.textChanged.connect(view_model.find)
        self._found = Words("", "note", name="people_found")
        self._new = QLineEdit()
        self._new.setObjectName("new_person")
        self._new.setAccessibleName("Name of somebody new")
        self._new.setPlaceholderText("Name of somebody new")
        self._new.returnPressed.connect(self._add)
        self._said = Words("", "problem", name="new_person_said")
        self._said.hide()
        add = Button("Add", "verb", name="people_add")
        add.clicked.connect(self._add)
        line = QHBoxLayout()
        line.setSpacing(SPACE_16)
        line.addWidget(self._new, 1)
        line.addWidget(add)
        self._title = Words("", "strong", name="people_picked")
        self._form = FactsForm("facts_person")
        self._form.row_committed.connect(view_model.set_fact)
        self._bikes = Flow(gap=SPACE_8)
        self._bike_keys: list[Button] = []
        self._shown_bikes: tuple[tuple[str, str], ...] = ()
        self._away = Button("Put away", "plain", name="people_away")
        self._away.clicked.connect(view_model.put_away)
        body = self._sheet.body
        body.setSpacing(SPACE_16)
        body.addLayout(line)
        for part in (self._said, self._find, self._found, self._table, Rule(), self._title, self._bikes, self._form):
            body.addWidget(part)
        body.addWidget(self._away, 0, Qt.AlignmentFlag.AlignLeft)
        body.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Begin at the list."""
        (self._table if self._people.state.rows else self._new).setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: PeopleState) -> None:
        rows = tuple(
            TableRow(one.person_id, (one_line(one.name), one.does, one.mass, one_line(one.bikes)), one.is_away)
            for one in state.rows
        )
        self._find.setVisible(state.can_find)
        self._found.set_words(state.said)
        self._found.setVisible(bool(state.said))
        self._table.show_rows(rows, state.picked)
        self._table.setVisible(bool(rows))
        self._title.set_words(isolate(one_line(state.name)) if state.name else "")
        self._show_bikes(state)
        self._form.setVisible(bool(state.facts))
        if state.facts:
            self._form.show_facts(state.facts)
        self._away.setVisible(state.is_away or state.can_be_put_away)
        self._away.set_text("Bring back" if state.is_away else "Put away")

    def _show_bikes(self, state: PeopleState) -> None:
        if state.bikes != self._shown_bikes:
            self._shown_bikes = state.bikes
            old, self._bikes = self._bikes, Flow(gap=SPACE_8)
            for place, (key, name) in enumerate(state.bikes, 1):
                button = Button(one_line(name), "link", name=f"people_bike_{place}")
                button.setAccessibleName(f"Open {name}")
                button.clicked.connect(partial(self._people.open_bike, key))
                self._bikes.addWidget(button)
            self._sheet.body.replaceWidget(old, self._bikes)
            old.hide()
            old.deleteLater()
        self._bikes.setVisible(bool(state.bikes))

    def _add(self) -> None:
        self._said.set_words("")
        if self._people.add(self._new.text()):
            self._new.clear()

    def _show_problem(self, problem: Problem) -> None:
        if problem.field == "new_person":
            self._said.set_words(problem.text)
            self._new.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        try:
            self._form.set_problem(problem.field, problem.text)
        except KeyError:
            self.problem_raised.emit(problem.text)
