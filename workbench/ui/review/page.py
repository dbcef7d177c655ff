"""The review's sheet: timeline, what each change did, and back to any setup."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.effects import EffectsPlot
from workbench.ui.plots.timeline import TimelinePlot
from workbench.ui.review.effect_table import EffectTable
from workbench.ui.review.export import ExportButton
from workbench.ui.review.response_view import ResponseView
from workbench.ui.review.sides_table import SidesTable
from workbench.viewmodels.review import ReviewState, ReviewViewModel

LEGEND = (
    "Circle: the session's first setup. Triangle up: more open, down: more closed. Square: anything else."
    " Pale: warm-up. Cross: set aside. Hatched: two changes at once."
)


class ReviewPage(Page):
    """What helped, and the way back."""

    def __init__(self, view_model: ReviewViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._review = view_model
        self._sheet = Sheet("Review", name="review_sheet")
        self._sheet.widest = 1400  # thirty runs side by side
        self._blocked = EmptyState("", "Go to the ride", name="review_blocked")
        self._blocked.action_requested.connect(self._to_ride)
        self._sessions = _list("review_session", "Sessions shown")
        self._sessions.activated.connect(self._pick_session)
        self._summary = Words("", "text", name="review_summary")
        self._timeline = TimelinePlot()
        self._legend = Words(LEGEND, "note", name="review_legend")
        self._steady = Words("", "note", name="review_steady")
        self._effects = EffectsPlot()
        self._table = EffectTable()
        self._table.change_picked.connect(view_model.pick_change)
        self._table.rows_fitted.connect(self._align)
        self._cautions = Words("", "note", name="review_cautions")
        self._sides_title = Words("Sessions side by side", "strong")
        self._sides = SidesTable()
        self._sides_said = Words("", "note", name="review_sides_said")
        self._along = ResponseView()
        self._along.adjuster_picked.connect(view_model.pick_adjuster)
        self._setups = _list("review_setup", "Setup to go back to")
        self._setups.activated.connect(self._pick_setup)
        self._setup_said = Words("", "mute", name="review_setup_said")
        self._steps = StepList(name="review_steps")
        self._steps.step_ticked.connect(self._tick)
        self._done = Words("", "strong", name="review_done")
        self._all = Button("All of these are set", "verb", name="review_all")
        self._all.clicked.connect(view_model.take_all)
        self._export = ExportButton(
            (
                ("Runs picture", self._timeline),
                ("Changes picture", self._effects),
                ("Adjuster picture", self._along.plot),
            ),
            (("Runs table", view_model.runs_csv), ("Changes table", view_model.effects_csv)),
        )
        self._export.said.connect(self.problem_raised)
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

    def _build(self) -> QWidget:
        whole = QWidget()
        self._sessions.setMinimumWidth(360)
        told = QHBoxLayout()
        told.setSpacing(0)
        told.addWidget(self._table, 7, Qt.AlignmentFlag.AlignTop)
        told.addWidget(self._effects, 3, Qt.AlignmentFlag.AlignTop)
        back = QHBoxLayout()
        back.setSpacing(SPACE_16)
        back.addWidget(Words("Back to setup", "strong"))
        back.addWidget(self._setups)
        back.addWidget(self._setup_said, 1)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        top = QHBoxLayout()
        top.addWidget(self._sessions)
        top.addStretch(1)
        top.addWidget(self._export)
        rows.addLayout(top)
        for widget in (self._summary, self._timeline, self._legend, self._steady):
            rows.addWidget(widget)
        rows.addSpacing(SPACE_8)
        rows.addLayout(told)
        for below in (self._cautions, Rule(), self._along, Rule()):
            rows.addWidget(below)
        rows.addLayout(back)
        rows.addWidget(self._done)
        rows.addWidget(self._steps)
        rows.addWidget(self._all, 0, Qt.AlignmentFlag.AlignLeft)
        for last in (self._sides_title, self._sides, self._sides_said):
            rows.addWidget(last)
        return whole

    def _render(self, state: ReviewState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._whole.setVisible(not state.blocked)
        if state.blocked:
            self._blocked.set_words(state.blocked, "Go to the ride")
            return
        _fill(self._sessions, state.sessions, state.session)
        _fill(self._setups, state.setups, state.setup_id)
        self._summary.setText(state.summary)
        row = next((row for row in state.effects.rows if row.key == state.picked), None)
        strong = frozenset({row.before_id, row.after_id}) if row else frozenset[str]()
        self._timeline.show_timeline(state.timeline, strong)
        self._steady.set_words(state.effects.steady)
        self._effects.show_effects(state.effects, state.picked)
        self._table.show_effects(state.effects, state.picked)
        self._along.show_response(state.along)
        self._sides.show_sides(state.sides)
        for part in (self._sides_title, self._sides):
            part.setVisible(bool(state.sides.heads))
        self._sides_said.set_words(" ".join(state.sides.cautions))
        has_effects = bool(state.effects.rows)
        self._effects.setVisible(has_effects)
        self._table.setVisible(has_effects)
        lowers = f"What lowers certainty here: {row.cautions}." if row and row.cautions else ""
        self._cautions.set_words(
            lowers or ("Pick a change to see its runs and what lowers certainty." if has_effects else "")
        )
        self._setup_said.setText(state.setup_said)
        self._done.set_words(state.steps_done)
        self._steps.set_steps([Step(line.key, line.text, remark=line.remark) for line in state.steps])
        self._steps.setVisible(bool(state.steps))
        self._all.setVisible(bool(state.steps))

    def _align(self) -> None:
        """Every change's line stands beside its words."""
        self._effects.stand_beside(self._table.head_height(), self._table.row_heights())

    def _pick_session(self, place: int) -> None:
        self._review.pick_session(str(self._sessions.itemData(place)))

    def _pick_setup(self, place: int) -> None:
        self._review.pick_setup(str(self._setups.itemData(place)))

    def _tick(self, key: str, _done: bool) -> None:
        self._review.take_step(key)

    def _to_ride(self) -> None:
        self.station_requested.emit("ride")


def _list(name: str, words: str) -> ListBox:
    made = ListBox(())
    made.setObjectName(name)
    made.setAccessibleName(words)
    return made


def _fill(box: ListBox, pairs: tuple[tuple[str, str], ...], chosen: str) -> None:
    box.clear()
    for key, words in pairs:
        box.addItem(" ".join(words.split()), key)
    box.setCurrentIndex(max(box.findData(chosen), 0))
