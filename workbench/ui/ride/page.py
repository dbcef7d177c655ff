"""The ride's sheet: start a session, then run after run."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.ride.blind_plan_view import BlindPlanView
from workbench.ui.ride.blind_view import BlindView
from workbench.ui.ride.next_view import NextView
from workbench.ui.ride.run_entry import RunEntryView
from workbench.ui.ride.run_list import RunList
from workbench.ui.ride.run_marks import RunMarks
from workbench.ui.ride.start_view import StartView
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideState, RideViewModel

REVEALED = "The blind test is revealed. It is not undone, because it has been seen."


class RidePage(Page):
    """Blocked, starting, riding, or riding blind."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._ride = view_model
        self._sheet = Sheet("Ride", name="ride_sheet")
        self._blocked = EmptyState("", "Go to the baseline", name="ride_blocked")
        self._blocked.action_requested.connect(self._to_baseline)
        self._start = StartView(view_model)
        self._plan = BlindPlanView(view_model)
        self._blind = BlindView(view_model)
        self._blind.revealed.connect(self._to_review)
        self._next = NextView(view_model, self)
        self._next.hide()  # until the sheet has it in its margin
        self._entry = RunEntryView(view_model)
        self._entry.noticed.picked.connect(self._next.go_there)
        self._runs = RunList(view_model)
        self._marks = RunMarks(view_model)
        self._setup = Words("", "mute", name="session_setup")
        self._end = Button("End session", "plain", name="session_end")
        self._end.clicked.connect(view_model.end_session)
        self._session = self._session_part()
        self._doing: tuple[str, ...] = ()
        for part in (self._blocked, self._plan, self._start, self._session, self._blind):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        self._sheet.add_keys(*self._plan.keys, *self._start.keys, *self._entry.keys, *self._blind.keys)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        state = self._ride.state
        if state.session is not None:
            self._entry.focus_first()
        elif state.blind is not None:
            self._blind.focus_first()
        elif state.plan is not None:
            self._plan.focus_first()
        elif state.start is not None:
            self._start.focus_first()

    def _session_part(self) -> QWidget:
        part = QWidget()
        foot = QHBoxLayout()
        foot.addWidget(self._setup, 1)
        foot.addWidget(self._end)
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        for widget in (self._entry, Rule(), self._runs, self._marks):
            rows.addWidget(widget)
        rows.addLayout(foot)
        return part

    def _render(self, state: RideState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._start.setVisible(state.start is not None)
        self._session.setVisible(state.session is not None)
        self._plan.setVisible(state.plan is not None)
        self._blind.setVisible(state.blind is not None)
        self._blind.show_state(state.blind)
        for key in self._plan.keys:
            key.setVisible(state.plan is not None)
        for key in self._start.keys:
            key.setVisible(state.start is not None and state.plan is None)
        for key in self._entry.keys:
            key.setVisible(state.session is not None)
        self._sheet.set_margin(self._next if state.session is not None else None)
        if state.blocked:
            self._sheet.set_title("Ride")
            self._blocked.set_words(state.blocked, "Go to the baseline")
        elif state.start is not None:
            self._sheet.set_title("Start a session", "One to three minutes of varied ground, ridden again and again.")
            self._start.show_state(state)
            if state.plan is not None:
                self._sheet.set_title("Plan a blind test", "The rider rates without knowing what is on the bike.")
                self._plan.show_plan(state.plan)
        elif state.blind is not None:
            self._sheet.set_title(state.blind.title, state.blind.subtitle)
        elif state.session is not None:
            self._sheet.set_title(state.session.title, state.session.subtitle)
            self._next.show_state(state.session)
            self._entry.show_entry(state.session.entry)
            self._entry.noticed.show_noticed(state.session.noticed)
            self._runs.show_runs(state.session.runs)
            self._marks.show_state(state.session)
            self._setup.setText(state.session.setup_text)
        self._follow(state)

    def _follow(self, state: RideState) -> None:
        """A new session, run or change takes the focus to where number keys rate."""
        session = state.session
        doing = ("ride", str(session.entry.number), session.changed) if session else _doing_blind(state)
        if self._doing not in ((), doing) and self.isVisible():
            self.start()
        self._doing = doing

    def _show_problem(self, problem: Problem) -> None:
        if problem.field == "by_hand":
            self._next.show_problem(problem.text)
            return
        parts = (self._blind, self._plan, self._start, self._entry, self._marks)
        if not any(part.show_problem(problem) for part in parts):
            self.problem_raised.emit(problem.text)

    def _to_baseline(self) -> None:
        self.station_requested.emit("baseline")

    def _to_review(self) -> None:
        self.problem_raised.emit(REVEALED)
        self.station_requested.emit("review")


def _doing_blind(state: RideState) -> tuple[str, ...]:
    """Tell one screen of a blind test from another; its plan from an open session's start."""
    if state.blind is not None:
        return ("blind", state.blind.side, str(state.blind.place))
    return ("start",) if state.plan is None else ("plan",)
