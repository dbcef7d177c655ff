"""The adjusters' page: the list, or the counting of one adjuster."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.adjusters.count_sheet import CountSheet
from workbench.ui.adjusters.list_sheet import ListSheet
from workbench.ui.page import Page
from workbench.viewmodels.adjusters import AdjustersState, AdjustersViewModel
from workbench.viewmodels.base import Problem


class AdjustersPage(Page):
    """Shows one of two sheets and says problems at their fields."""

    def __init__(self, view_model: AdjustersViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._adjusters = view_model
        self.list_sheet = ListSheet(view_model)
        self.count_sheet = CountSheet(view_model)
        self.list_sheet.station_requested.connect(self.station_requested)
        self._counted = ""
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.list_sheet)
        whole.addWidget(self.count_sheet)
        self.count_sheet.hide()
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        target = self.count_sheet if self._adjusters.state.count else self.list_sheet
        target.start()

    def _render(self, state: AdjustersState) -> None:
        self.list_sheet.setVisible(state.count is None)
        self.count_sheet.setVisible(state.count is not None)
        if state.count is not None:
            self.count_sheet.show_count(state.count, state.skip_reasons)
        else:
            self.list_sheet.show_list(state)
        counted = f"{state.count.adjuster_id} {state.count.stage}" if state.count else ""
        if counted != self._counted:
            self._counted = counted
            if self.isVisible():
                self.start()

    def _show_problem(self, problem: Problem) -> None:
        if self._adjusters.state.count is not None:
            said = self.count_sheet.say_at(problem.field, problem.text)
        else:
            said = self.list_sheet.set_problem(problem.field, problem.text)
        if not said:
            self.problem_raised.emit(problem.text)
