"""Start a session: where, on what ground, and that the bike stands as its setup says."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField, FlagField, ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, SPACE_24
from workbench.ui.ride.setup_pick import SetupPick
from workbench.ui.ride.start_check import StartCheck
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideState, RideViewModel
from workbench.viewmodels.ride_start import StartState

NEW_COURSE = ""
JUDGED_BY = "Judged by, named before riding"


class StartView(QWidget):
    """Course, ground, verification, and the verb."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._courses = ListBox(())
        self._courses.setObjectName("ride_course")
        self._courses.setAccessibleName("Course")
        self._courses.activated.connect(self._pick_course)
        self._new = TypedLine("new_course", "Name of the course", prefix="ride")
        self._hit = FlagField(label="Has one heavy hit", name="ride_heavy_hit")
        self._hit.value_committed.connect(self._set_hit)
        self._temperature = TypedLine("temperature", "Air temperature", prefix="ride")
        self._planned = TypedLine("planned", "Runs planned", prefix="ride")
        self._response: ChoiceField | None = None
        self._response_part = QWidget()
        self._judged = QHBoxLayout(self._response_part)
        self._surface: ChoiceField | None = None
        self._surface_cell = QVBoxLayout()
        self._setup = SetupPick(view_model)
        self._steps = StepList(name="ride_steps")
        self._steps.step_ticked.connect(self._tick)
        self._all = Button("All of these are set", "plain", name="ride_all_set")
        self._all.clicked.connect(view_model.take_all_steps)
        self._check = StartCheck(view_model)
        self._start = Button("Start session", "verb", name="ride_start")
        self._start.clicked.connect(view_model.start_session)
        self._reopen = Button("", "link", name="ride_reopen")
        self._reopen.clicked.connect(view_model.reopen)
        self._blind = Button("Blind test ...", "link", name="ride_blind")
        self._blind.clicked.connect(view_model.plan_blind)
        self.keys = (self._start, self._blind, self._reopen)  # the sheet places them, where they stay in sight
        self._lines = (self._new, self._temperature, self._planned)
        for line in self._lines:
            line.typed.connect(view_model.set_start)
        self._build()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_16)
        grid.addWidget(_cell("Course", self._courses), 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._new, 0, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(_cell("\u00a0", self._hit), 0, 2, Qt.AlignmentFlag.AlignTop)
        grid.addLayout(self._surface_cell, 1, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._temperature, 1, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._planned, 1, 2, Qt.AlignmentFlag.AlignTop)
        for column in range(3):
            grid.setColumnStretch(column, 1)
        self._judged.setContentsMargins(0, 0, 0, 0)
        self._judged.setSpacing(SPACE_16)
        self._judged.addWidget(Words(JUDGED_BY, "mute"))
        told = QHBoxLayout()
        told.addWidget(self._setup, 1)
        told.addWidget(self._response_part)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addLayout(grid)
        rows.addLayout(told)
        rows.addWidget(self._steps)
        rows.addWidget(self._all, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._check)

    def show_state(self, state: RideState) -> None:
        """Show what was entered."""
        start = state.start
        if start is None:
            return
        self._show_courses(start)
        self._show_surface(start)
        self._show_response(start)
        draft = start.draft
        self._new.show_text(draft.new_course)
        self._new.setVisible(not draft.course_id)
        self._hit.setVisible(not draft.course_id)
        self._hit.set_value(draft.has_heavy_hit)
        self._temperature.set_unit(start.temperature_unit.replace("deg", "°"))
        self._temperature.show_text(draft.temperature)
        self._planned.show_text(draft.planned)
        self._setup.show_start(start, can_switch=state.plan is None)
        self._steps.set_steps([Step(line.key, line.text, remark=line.remark) for line in start.steps])
        self._steps.setVisible(bool(start.steps))
        self._all.setVisible(len(start.steps) > 1)
        self._reopen.set_text(f"Open again: {state.last_session_text}")
        is_open = state.plan is None  # a blind test says itself how many runs, and from a verified start only
        self._reopen.setVisible(bool(state.last_session) and is_open)
        self._planned.setVisible(is_open)
        self._check.show_start(start, takes_reasons=is_open)

    def focus_first(self) -> None:
        """Put the caret where typing begins."""
        target = self._new.line if self._new.isVisible() else self._courses
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        places = {
            "new_course": self._new,
            "temperature": self._temperature,
            "planned": self._planned,
        }
        if self._check.show_problem(problem) or self._setup.show_problem(problem):
            return True
        line = places.get(problem.field)
        if line is not None:
            line.set_problem(problem.text)
        return line is not None

    def _show_courses(self, start: StartState) -> None:
        self._courses.clear()
        for course_id, name in start.courses:
            self._courses.addItem(" ".join(name.split()), course_id)
        self._courses.addItem("A new course", NEW_COURSE)
        self._courses.setCurrentIndex(max(self._courses.findData(start.draft.course_id), 0))

    def _show_surface(self, start: StartState) -> None:
        if self._surface is None:
            self._surface = ChoiceField(start.surfaces, label="Ground", name="ride_surface")
            self._surface.value_committed.connect(self._set_surface)
            self._surface_cell.addWidget(_cell("Ground", self._surface))
        self._surface.set_value(start.draft.surface)

    def _show_response(self, start: StartState) -> None:
        if self._response is None:
            self._response = ChoiceField(start.responses, label=JUDGED_BY, name="ride_response")
            self._response.value_committed.connect(self._set_response)
            self._judged.addWidget(self._response)
        self._response.set_value(start.draft.response)

    def _set_response(self, key: object) -> None:
        self._ride.set_start("response", str(key))

    def _pick_course(self, place: int) -> None:
        self._ride.set_start("course_id", str(self._courses.itemData(place)))

    def _set_surface(self, key: object) -> None:
        self._ride.set_start("surface", str(key))

    def _set_hit(self, value: object) -> None:
        self._ride.set_start("has_heavy_hit", bool(value))

    def _tick(self, key: str, _done: bool) -> None:
        self._ride.take_step(key)


def _cell(label: str, field: QWidget) -> QWidget:
    cell = QWidget()
    rows = QVBoxLayout(cell)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(SPACE_4)
    words = Words(label, "mute")
    words.setBuddy(field)
    rows.addWidget(words)
    rows.addWidget(field)
    rows.setSpacing(SPACE_8 // 2)
    return cell
