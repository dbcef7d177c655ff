"""The leverage survey's sheet: mountings side by side, pairs read at the bench, and the curve as they are typed."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.lines import LinesPlot
from workbench.ui.spring.mounting_rows import MountingRows
from workbench.ui.spring.survey_entry import SurveyEntry
from workbench.viewmodels.base import Problem
from workbench.viewmodels.leverage import LeverageState, LeverageViewModel

HOW = (
    "Let the air out or take the spring off, set the shock at full extension and both readings to zero. Press in steps"
    " of about a tenth of the stroke, any order, and read the shaft and the axle each time."
)

CARE = (
    "Vent slowly, cycling all the while, and only at the valves the maker gives to the rider. If the shock pulls itself"
    " short, stop: do not unscrew anything. A helper or a stand holds the bike; keep hands out of the linkage."
)


class LeveragePage(Page):
    """Survey the leverage of the bike on the bench, and say which mounting the shock is in."""

    def __init__(self, view_model: LeverageViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._leverage = view_model
        self._sheet = Sheet("Leverage survey", HOW, name="leverage_sheet")
        self._blocked = EmptyState("", "", name="leverage_blocked")
        self._mountings = MountingRows(view_model)
        self._rule = Rule()
        self._entry = SurveyEntry(view_model)
        self._ratio = LinesPlot("leverage_plot", height=230)
        self._travel = LinesPlot("leverage_points", height=210)
        self._said = Words("", "text", name="leverage_said")
        self._keep = Button("Keep this survey", "verb", name="leverage_keep")
        self._keep.clicked.connect(view_model.keep)
        self._discard = Button("Discard", "plain", name="leverage_discard")
        self._discard.clicked.connect(view_model.discard)
        self._delete = Button("Delete this survey", "link", name="leverage_delete")
        self._delete.clicked.connect(self._delete_looked_at)
        self._looked = Words("", "note", name="leverage_looked")
        self._care = CareNote(CARE, name="leverage_care")
        self._whole = self._build()
        for part in (self._blocked, self._care, self._whole):
            self._sheet.body.addWidget(part)
        self._strip = self._sheet.add_keys(self._keep, self._discard, self._delete, self._looked)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the caret into the first pair."""
        self._entry.start()

    def _build(self) -> QWidget:
        whole = QWidget()
        right = QVBoxLayout()
        right.setSpacing(SPACE_8)
        for part in (self._said, self._ratio, self._travel):
            right.addWidget(part)
        right.addStretch(1)
        columns = QHBoxLayout()
        columns.setSpacing(SPACE_16)
        columns.addWidget(self._entry, 2)
        columns.addLayout(right, 3)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(self._mountings)
        rows.addWidget(self._rule)
        rows.addLayout(columns)
        return whole

    def _render(self, state: LeverageState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        for part in (self._care, self._whole, self._strip):
            part.setVisible(not state.blocked)
        if state.blocked:
            self._blocked.set_words(state.blocked)
            return
        self._mountings.show_mountings(state.mountings, has_draft=state.has_draft)
        self._rule.setVisible(bool(state.mountings.rows))
        self._entry.show_state(state)
        for plot, lines in ((self._ratio, state.ratio), (self._travel, state.travel)):
            plot.setVisible(lines is not None)
            if lines is not None:
                plot.show_lines(lines)
        self._said.set_role("problem" if state.is_wrong else "text")
        self._said.setText(state.said)
        self._keep.setVisible(state.can_keep)
        self._discard.setVisible(state.has_draft)
        self._delete.setVisible(bool(state.looked_at))
        self._looked.set_words(state.looked_words)

    def _delete_looked_at(self) -> None:
        self._leverage.delete(self._leverage.state.looked_at)

    def _show_problem(self, problem: Problem) -> None:
        self._said.set_role("problem")
        self._said.setText(problem.text)
        self._entry.go_to(problem.field)
