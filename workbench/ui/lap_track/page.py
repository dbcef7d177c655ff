"""Lap times from a track: open the file, say where start and finish are, look at the laps, write them."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.lap_track.gate_fields import GateFields
from workbench.ui.lap_track.lap_list import LapList
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField, FlagField, ListBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.track import TrackPlot
from workbench.viewmodels.base import Problem
from workbench.viewmodels.lap_gates import TITLES
from workbench.viewmodels.lap_track import LapTrackState, LapTrackViewModel

FILES = "Recorded track (*.gpx)"
HOW_GATES = (
    "Click on the plan where a run starts, then where it finishes: the gate is laid across the track there, 20 m wide."
    " Or type when the track is there, or the two ends."
)
HOW_SURE = (
    "A receiver that is 4 m off is half a second off at a gate passed at 8 m/s: set gates where you are quick and the"
    " sky is open, and read no tenths."
)


class LapTrackPage(Page):
    """The sheet for lap times from a recorded track."""

    def __init__(self, view_model: LapTrackViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._laps = view_model
        self._sheet = Sheet(
            "Lap times from a track",
            "A recorded GPX track and two gates across it. Nothing is written until you say so.",
            name="lap_sheet",
        )
        self._blocked = EmptyState("", "Go to the ride", name="lap_blocked")
        self._sessions = ListBox(())
        self._sessions.setObjectName("lap_session")
        self._sessions.setAccessibleName("The session whose runs get the times")
        self._sessions.setMinimumContentsLength(34)
        self._open = Button("Open a track ...", "verb", name="lap_open")
        self._other = Button("Open another track ...", "plain", name="lap_open_other")
        self._file = Words("", "strong", name="lap_file")
        self._problem = Words("", "problem", name="lap_problem")
        self._setting = ChoiceField(TITLES, label="The next click sets", name="lap_setting")
        self._loop = FlagField(label="A loop: the finish is the start", name="lap_loop")
        self._plan = TrackPlot()
        self._fields = GateFields(view_model)
        self._gates_said = Words("", "note", name="lap_gates_said")
        self._rows = LapList()
        self._summary = Words("", "strong", name="lap_summary")
        self._caution = Words("", "care", name="lap_caution")
        self._said = Words("", "problem", name="lap_said")
        self._write = Button("Write the lap times", "verb", name="lap_write")
        self._close = Button("Put the track away", "plain", name="lap_close")
        self._back = Button("Back to the review", "link", name="lap_back")
        self._work, self._with_track = QWidget(), QWidget()
        self._place()
        self._connect()
        self.listen()

    def _place(self) -> None:
        session = QVBoxLayout()
        session.setSpacing(SPACE_8)
        asked = Words("The session whose runs get the times", "mute")
        asked.setBuddy(self._sessions)
        session.addWidget(asked)
        beside = QHBoxLayout()
        beside.setSpacing(SPACE_16)
        beside.addWidget(self._sessions)
        beside.addWidget(self._open)
        beside.addStretch(1)
        session.addLayout(beside)
        track = QVBoxLayout(self._with_track)
        track.setContentsMargins(0, 0, 0, 0)
        track.setSpacing(SPACE_16)
        for part in (Rule(), Words(HOW_GATES), self._gate_keys(), self._plan, self._fields):
            track.addWidget(part)
        for said in (self._gates_said, Words(HOW_SURE, "note", name="lap_how_sure"), Rule()):
            track.addWidget(said)
        for words in (self._summary, self._caution):
            track.addWidget(words)
        self._strip = self._sheet.add_keys(self._write, self._other, self._close)
        for below in (self._rows, self._said):
            track.addWidget(below)
        rows = QVBoxLayout(self._work)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addLayout(session)
        for part in (self._file, self._problem, self._with_track):
            rows.addWidget(part)
        self._sheet.body.addWidget(self._blocked)
        self._sheet.body.addWidget(self._work)
        self._sheet.body.addWidget(self._back, 0, Qt.AlignmentFlag.AlignLeft)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)

    def _gate_keys(self) -> QWidget:
        across = QWidget()
        row = QHBoxLayout(across)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        row.addWidget(Words("The next click sets", "mute"))
        row.addWidget(self._setting)
        row.addWidget(self._loop)
        row.addStretch(1)
        return across

    def _connect(self) -> None:
        self._blocked.action_requested.connect(partial(self.station_requested.emit, "ride"))
        self._back.clicked.connect(self._to_review)
        self._sessions.activated.connect(self._session_picked)
        for key in (self._open, self._other):
            key.clicked.connect(self._ask_which)
        self._setting.value_committed.connect(self._next_set)
        self._loop.value_committed.connect(self._loop_set)
        self._plan.spot_picked.connect(self._laps.pick_spot)
        self._rows.run_chosen.connect(self._laps.choose)
        self._write.clicked.connect(self._write_them)
        self._close.clicked.connect(self._laps.close_file)

    def start(self) -> None:
        """Begin at the file, or at the gates once one is open."""
        state = self._laps.state
        target: QWidget = self._blocked.button if state.blocked else self._setting if state.file_text else self._open
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def open_file(self, source: Path) -> None:
        """Read a track, as the file dialog does."""
        self._problem.set_words("")
        self._laps.open_file(source)

    def _render(self, state: LapTrackState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._blocked.set_words(state.blocked, "Go to the ride")
        self._work.setVisible(not state.blocked)
        self._sessions.clear()
        for key, words in state.sessions:
            self._sessions.addItem(" ".join(words.split()), key)
        self._sessions.setCurrentIndex(max(self._sessions.findData(state.session), 0))
        self._with_track.setVisible(bool(state.file_text))
        self._strip.setVisible(bool(state.file_text))
        self._open.setVisible(not state.file_text)
        self._file.set_words(state.file_text)
        self._setting.set_value(state.setting)
        self._setting.setEnabled(not state.gates.is_loop)
        self._loop.set_value(state.gates.is_loop)
        self._plan.show_plan(state.plan)
        self._fields.show_gates(state.gates)
        self._gates_said.set_words(state.gates_said)
        self._summary.set_words(state.summary)
        self._caution.set_words(state.caution)
        self._said.set_words("")
        self._write.set_text(state.verb)
        self._write.setVisible(bool(state.rows))
        self._rows.show_rows(state.rows)

    def _show_problem(self, problem: Problem) -> None:
        """Say a refusal where it belongs: at the file, at a gate, or under the laps."""
        if self._fields.show_problem(problem):
            return
        place = {"rows": self._said, "plan": self._problem, "file": self._problem}.get(problem.field)
        if place is None:
            self.problem_raised.emit(problem.text)
            return
        place.set_words(problem.text)
        self._sheet.scroll_area.ensureWidgetVisible(place)

    def _session_picked(self, place: int) -> None:
        self._laps.pick_session(str(self._sessions.itemData(place)))

    def _next_set(self, name: object) -> None:
        self._laps.set_next(str(name))

    def _loop_set(self, is_loop: object) -> None:
        self._laps.set_loop(bool(is_loop))

    def _ask_which(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, "Open a track", "", FILES)
        if path:
            self.open_file(Path(path))

    def _write_them(self) -> None:
        if self._laps.write():
            self.station_requested.emit("review")

    def _to_review(self) -> None:
        self.station_requested.emit("review")
