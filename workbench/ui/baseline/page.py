"""The baseline's sheet: write setup no. 1, then set it step by step."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.baseline.rows import BaselineRows
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.parts.word_pairs import WordPairs
from workbench.viewmodels.base import Problem
from workbench.viewmodels.baseline import BaselineState, BaselineViewModel

CARE = (
    "Push on each end: it comes back at once, with one small overshoot at most. Then hop the bike level: both ends"
    " leave the ground together. A fast rear with a slow front can pitch a rider forward."
)


class BaselinePage(Page):
    """Setup no. 1 and the way to it."""

    def __init__(self, view_model: BaselineViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._baseline = view_model
        self._sheet = Sheet("Baseline", name="baseline_sheet")
        self._rows = BaselineRows()
        self._rows.value_typed.connect(view_model.set_value)
        self._keep = Button("", "verb", name="baseline_keep")
        self._keep.clicked.connect(self._keep_setup)
        self._discard = Button("Discard", "plain", name="baseline_discard")
        self._discard.clicked.connect(view_model.leave_writing)
        self._steps = StepList(name="baseline_steps")
        self._steps.step_ticked.connect(self._tick)
        self._done = Words("", "strong", name="baseline_done")
        self._all = Button("All of these are set", "plain", name="baseline_all")
        self._all.clicked.connect(self._take_all)
        self._ride = Button("On to the ride", "verb", name="baseline_ride")
        self._ride.clicked.connect(self._to_ride)
        self._anew = Button("Write another baseline", "link", name="baseline_anew")
        self._anew.clicked.connect(view_model.write_anew)
        self._fresh = Button("Write a new baseline", "verb", name="baseline_fresh")
        self._fresh.clicked.connect(view_model.write_anew)
        self._settings = WordPairs("strong")
        self._writing, self._setting = self._writing_part(), self._setting_part()
        for part in (self._writing, self._setting):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        self._sheet.add_keys(self._keep, self._ride, self._fresh, self._all, self._discard, self._anew)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        state = self._baseline.state
        on = self._fresh if state.is_outdated else self._ride
        target: QWidget = self._keep if state.is_writing else self._steps if state.steps else on
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def _writing_part(self) -> QWidget:
        part, rows = _column()
        rows.addWidget(self._rows)
        return part

    def _setting_part(self) -> QWidget:
        part, rows = _column()
        rows.addWidget(self._done)
        rows.addWidget(self._steps)
        rows.addWidget(CareNote(CARE, name="baseline_care"))
        rows.addWidget(Words("All settings", "strong"))
        rows.addWidget(self._settings)
        return part

    def _render(self, state: BaselineState) -> None:
        self._sheet.set_title(state.title, state.subtitle)
        self._writing.setVisible(state.is_writing)
        self._setting.setVisible(not state.is_writing)
        self._rows.show_rows(state.rows)
        self._keep.set_text(state.verb)
        self._keep.setVisible(state.is_writing)
        self._discard.setVisible(state.is_writing and (state.has_draft or state.has_setups))
        leads_on = not state.is_writing and not state.steps
        self._ride.setVisible(leads_on and not state.is_outdated)
        self._fresh.setVisible(leads_on and state.is_outdated)
        self._anew.setVisible(not state.is_writing and self._fresh.isHidden())
        self._steps.set_steps([Step(line.key, line.text, remark=line.remark) for line in state.steps])
        self._steps.setVisible(bool(state.steps))
        self._all.setVisible(not state.is_writing and len(state.steps) > 1)
        self._done.set_words(state.steps_done)
        self._settings.show_pairs(state.settings)

    def _keep_setup(self) -> None:
        self.commit_focus()
        self._baseline.keep()

    def _to_ride(self) -> None:
        self.station_requested.emit("ride")

    def _tick(self, key: str, _done: bool) -> None:
        self._baseline.take_step(key)
        self._go_on()

    def _take_all(self) -> None:
        self._baseline.take_all()
        self._go_on()

    def _go_on(self) -> None:
        """After the last step the focus goes to what comes next."""
        if not self._baseline.state.steps:
            self.start()

    def _show_problem(self, problem: Problem) -> None:
        if problem.field:
            self._rows.focus_row(problem.field)
            return
        self.problem_raised.emit(problem.text)


def _column() -> tuple[QWidget, QVBoxLayout]:
    part = QWidget()
    rows = QVBoxLayout(part)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(SPACE_16)
    return part, rows
