"""The review's sheet: what suits so far, the runs, what each change did, and back to any setup."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.effects import EffectsPlot
from workbench.ui.review.back_view import BackView, choice_list, fill
from workbench.ui.review.blind_view import BlindResultView
from workbench.ui.review.closer_view import CloserView
from workbench.ui.review.effect_table import EffectTable
from workbench.ui.review.export import ExportButton
from workbench.ui.review.looked_view import LookedView
from workbench.ui.review.read_out import ReadOut
from workbench.ui.review.response_view import ResponseView
from workbench.ui.review.runs_view import RunsView
from workbench.ui.review.sides_table import SidesTable
from workbench.ui.review.suited_view import SuitedView
from workbench.viewmodels.review import ReviewState, ReviewViewModel
from workbench.viewmodels.window import LAP_TRACK

HOW_CHANGES = "Point at a change to read it, or use the arrow keys. A click or Enter picks it."

NARROW = 700  # px


class ReviewPage(Page):
    """What helped, and the way back."""

    def __init__(self, view_model: ReviewViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._review = view_model
        self._sheet = Sheet("Review", name="review_sheet")
        self._sheet.widest = 1400  # thirty runs side by side
        self._blocked = EmptyState("", "Go to the ride", name="review_blocked")
        self._blocked.action_requested.connect(self._to_ride)
        self._sessions = choice_list("review_session", "Sessions shown")
        self._sessions.activated.connect(self._pick_session)
        self._summary = Words("", "text", name="review_summary")
        self._read_out = ReadOut()
        self._read_out.said.connect(self.problem_raised)
        self._suited = SuitedView()
        self._suited.wanted.connect(self._put_on_bike)
        self._blind = BlindResultView()
        self._runs = RunsView()
        self._runs.trend_asked.connect(view_model.show_trend)
        self._runs.run_picked.connect(view_model.pick_run)
        self._effects = EffectsPlot()
        self._table = EffectTable()
        for chooser in (self._table, self._effects):
            chooser.change_picked.connect(view_model.pick_change)
        self._table.rows_fitted.connect(self._align)
        self._changes = QWidget()
        self._closer = CloserView()
        self._looked = LookedView()
        self._along = ResponseView()
        self._along.adjuster_picked.connect(view_model.pick_adjuster)
        self._back = BackView(view_model)
        self._sides_title = Words("Sessions side by side", "strong")
        self._sides = SidesTable()
        self._sides_said = Words("", "note", name="review_sides_said")
        self._export = self._export_button()
        self._track = Button("Lap times from a track ...", "link", name="review_lap_track")
        self._track.clicked.connect(partial(self.station_requested.emit, LAP_TRACK))
        self._whole = self._build()
        for part in (self._blocked, self._whole):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the sessions."""
        self._sessions.setFocus(Qt.FocusReason.OtherFocusReason)

    def _export_button(self) -> ExportButton:
        made = ExportButton(
            (
                ("Runs picture", self._runs.timeline),
                ("Lap times picture", self._runs.laps),
                ("Changes picture", self._effects),
                ("Blind test picture", self._blind.plot),
                ("Dots picture", self._closer.dots),
                ("Looked at picture", self._looked.plot),
                ("Adjuster picture", self._along.plot),
                ("Ruler picture", self._along.ruler),
            ),
            (("Runs table", self._review.runs_csv), ("Changes table", self._review.effects_csv)),
        )
        made.said.connect(self.problem_raised)
        return made

    def _build(self) -> QWidget:
        whole = QWidget()
        self._sessions.setMinimumWidth(240)
        self._sessions.setMaximumWidth(480)
        top = QHBoxLayout()
        top.addWidget(self._sessions, 1)
        top.addStretch(1)
        for key in (self._track, self._export):
            top.addWidget(key)
        heading = QHBoxLayout()
        heading.setSpacing(SPACE_16)
        heading.addWidget(Words("The changes", "strong"))
        heading.addWidget(Words(HOW_CHANGES, "note"), 1)
        told = QHBoxLayout()
        told.setSpacing(0)
        told.addWidget(self._table, 7, Qt.AlignmentFlag.AlignTop)
        told.addWidget(self._effects, 3, Qt.AlignmentFlag.AlignTop)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(top)
        for widget in (self._summary, self._read_out, Rule(), self._blind, self._suited, Rule(), self._runs):
            rows.addWidget(widget)
        changes = QVBoxLayout(self._changes)
        changes.setContentsMargins(0, SPACE_8, 0, 0)
        changes.setSpacing(SPACE_8)
        changes.addLayout(heading)
        changes.addLayout(told)
        rows.addWidget(self._changes)
        for below in (self._closer, self._looked, Rule(), self._along, Rule(), self._back):
            rows.addWidget(below)
        for last in (self._sides_title, self._sides, self._sides_said):
            rows.addWidget(last)
        return whole

    def _render(self, state: ReviewState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._whole.setVisible(not state.blocked)
        if state.blocked:
            self._blocked.set_words(state.blocked, "Go to the ride")
            return
        fill(self._sessions, state.sessions, state.session)
        self._summary.setText(state.summary)
        self._read_out.show_words(state.read_out)
        self._suited.show_suited(state.suited)
        self._blind.show_result(state.blind)
        self._runs.show_runs(state)
        self._table.show_effects(state.effects, state.picked)
        self._effects.show_effects(state.effects, state.picked)
        for part in (self._changes, self._closer):
            part.setVisible(bool(state.effects.rows))
        self._make_room()
        self._closer.show_picked(state.closer, state.effects)
        self._looked.show_looked(state.looked)
        self._along.show_response(state.along)
        self._back.show_state(state)
        self._sides.show_sides(state.sides)
        for side in (self._sides_title, self._sides):
            side.setVisible(bool(state.sides.heads))
        self._sides_said.set_words(" ".join(state.sides.cautions))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        """On a narrow sheet the table, which says the same, has the room of the picture."""
        self._effects.setVisible(self.width() >= NARROW)

    def _align(self) -> None:
        """Every change's line stands beside its words."""
        self._effects.stand_beside(self._table.head_height(), self._table.row_heights())

    def _put_on_bike(self) -> None:
        self._review.pick_suited()
        self._back.focus_steps()

    def _pick_session(self, place: int) -> None:
        self._review.pick_session(str(self._sessions.itemData(place)))

    def _to_ride(self) -> None:
        self.station_requested.emit("ride")
