"""A bike's own sheet: facts by section, each kept when its field is left."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from workbench.ui.garage.section import SectionView
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_16
from workbench.viewmodels.base import Problem
from workbench.viewmodels.garage import GarageState, GarageViewModel

NEXT = {
    "checkin": "On to the check-in",
    "adjusters": "On to the adjusters",
    "sag": "On to sag",
    "baseline": "On to the baseline",
    "ride": "On to the ride",
    "review": "On to the review",
    "card": "On to the card",
}


class GaragePage(Page):
    """The sheet of the bike on the bench."""

    def __init__(self, view_model: GarageViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._garage = view_model
        self._sections: dict[str, SectionView] = {}
        self._shown_bike = ""
        self._sheet = Sheet(name="garage_sheet")
        self._missing = Words("", "text", name="garage_missing")
        self._riders = _RiderBar(view_model)
        self._next = Button("On to the adjusters", "verb", name="garage_next")
        self._next.clicked.connect(self._go_on)
        self._sheet.body.addWidget(self._riders)
        self._sheet.add_keys(self._next, self._missing)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        self._name_next()
        self._next.setFocus(Qt.FocusReason.OtherFocusReason)

    def _go_on(self) -> None:
        self.station_requested.emit(self._garage.next_station())

    def _to_spring(self, unit_id: str) -> None:
        self._garage.show_spring(unit_id)
        self.station_requested.emit("spring")

    def _name_next(self) -> None:
        self._next.set_text(NEXT[self._garage.next_station()])

    def _render(self, state: GarageState) -> None:
        self._sheet.set_title("Bike, rider and parts", state.layout)
        self._name_next()
        self._missing.set_words(state.missing)
        self._riders.show_riders(state)
        keys = [section.key for section in state.sections]
        if keys != list(self._sections) or state.bike_id != self._shown_bike:
            self._rebuild(state)
        for section in state.sections:
            self._sections[section.key].show_section(section)

    def _rebuild(self, state: GarageState) -> None:
        for view in self._sections.values():
            view.hide()
            view.deleteLater()
        self._shown_bike = state.bike_id
        self._sections = {}
        for section in state.sections:
            view = SectionView(section.key, state.reasons)
            view.fact_committed.connect(self._garage.set_fact)
            view.text_kept.connect(self._garage.keep_text)
            view.hardware_renewed.connect(self._garage.new_hardware)
            view.spring_requested.connect(self._to_spring)
            self._sections[section.key] = view
            self._sheet.body.addWidget(view)

    def _show_problem(self, problem: Problem) -> None:
        section, _, field = problem.field.partition("/")
        view = self._sections.get(section)
        if view is not None and view.has_field(field):
            view.set_problem(field, problem.text)
        else:
            self.problem_raised.emit(problem.text)


class _RiderBar(QWidget):
    """Who rides the bike: choose among known people or add somebody."""

    def __init__(self, view_model: GarageViewModel) -> None:
        super().__init__()
        self._garage = view_model
        self._choice = ListBox(())
        self._choice.setObjectName("main_rider")
        self._choice.setAccessibleName("Main rider")
        self._choice.activated.connect(self._choose)
        self._new = QLineEdit()
        self._new.setObjectName("new_rider")
        self._new.setAccessibleName("Name of a new rider")
        self._new.setPlaceholderText("Name of a new rider")
        self._new.returnPressed.connect(self._add)
        add = Button("Add rider", "plain", name="add_rider")
        add.clicked.connect(self._add)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        self._choice.setMinimumWidth(200)
        self._new.setMinimumWidth(200)
        row.addWidget(Words("Main rider", "mute"))
        row.addWidget(self._choice)
        row.addStretch(1)
        row.addWidget(self._new)
        row.addWidget(add)

    def show_riders(self, state: GarageState) -> None:
        """Show the riders, the main one chosen."""
        people = state.riders + state.others
        self._choice.clear()
        for person_id, name in people:
            self._choice.addItem(one_line(name), person_id)
        self._choice.setCurrentIndex(0 if state.riders else -1)
        self._choice.setVisible(bool(people))

    def _choose(self, place: int) -> None:
        self._garage.choose_rider(str(self._choice.itemData(place)))

    def _add(self) -> None:
        if self._garage.add_new_rider(self._new.text()):
            self._new.clear()
