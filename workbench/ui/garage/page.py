"""A bike's own sheet: facts by section, each kept when its field is left."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.garage.fit_view import FitView
from workbench.ui.garage.photos import PhotosView
from workbench.ui.garage.riders import RidersView
from workbench.ui.garage.section import SectionView
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.viewmodels.base import Problem
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.garage_deeds import GarageState

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
        self._riders = RidersView(view_model)
        self._next = Button("On to the adjusters", "verb", name="garage_next")
        self._next.clicked.connect(self._go_on)
        self._fit = FitView(view_model)
        self._photos = PhotosView(view_model)
        self._duplicate = Button("Duplicate", "link", name="garage_duplicate")
        self._duplicate.setAccessibleName("Duplicate this bike: its parts, not its runs")
        self._duplicate.clicked.connect(self._copy)
        self._template = Button("Keep as a template", "link", name="garage_template")
        self._template.clicked.connect(self._keep_template)
        self._sheet.body.addWidget(self._riders)
        self._sheet.body.addWidget(self._fit)
        self._sheet.body.addWidget(self._photos)
        self._sheet.add_keys(self._next, self._duplicate, self._template, self._missing)
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
        self._fit.show_rows(state.fits, state.bike_id)
        self._photos.show_photos(state.photos)
        self._template.setVisible(not state.is_template)
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
            view.valve_placed.connect(self._garage.place_valve)
            view.gas_said.connect(self._say_gas)
            view.exchange_wanted.connect(self._exchange)
            view.hardware_noted.connect(self._garage.note_hardware)
            self._sections[section.key] = view
            self._sheet.body.insertWidget(self._sheet.body.indexOf(self._fit), view)

    def _exchange(self, kind: str) -> None:
        """Go to where another fork or shock is fitted."""
        self._fit.open("front" if kind == "fork" else "rear")
        QTimer.singleShot(0, self._fit, self._show_fit)  # the panel has to be laid out first

    def _show_fit(self) -> None:
        self._sheet.scroll_area.ensureWidgetVisible(self._fit, 0, 0)

    def _copy(self) -> None:
        self._garage.duplicate()

    def _keep_template(self) -> None:
        self._garage.duplicate(as_template=True)

    def _say_gas(self, unit_id: str, has_gas: bool) -> None:
        self._garage.say_gas(unit_id, has_gas=has_gas)

    def _show_problem(self, problem: Problem) -> None:
        if self._fit.show_problem(problem):
            return
        section, _, field = problem.field.partition("/")
        view = self._sections.get(section)
        if view is not None and view.has_field(field):
            view.set_problem(field, problem.text)
        else:
            self.problem_raised.emit(problem.text)
