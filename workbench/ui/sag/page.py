"""The sag page: both ends, or one end's measuring."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.sag.guide import Guide
from workbench.ui.sag.overview import Overview
from workbench.viewmodels.base import Problem
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_state import SagState


class SagPage(Page):
    """The sheet of the sag station."""

    def __init__(self, view_model: SagViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self.overview = Overview(view_model)
        self.guide = Guide(view_model)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.overview)
        whole.addWidget(self.guide)
        self.guide.hide()
        self.overview.station_requested.connect(self.station_requested)
        self.guide.station_requested.connect(self.station_requested)
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        if self.guide.isVisibleTo(self):
            self.guide.take_focus()
            return
        key = self.overview.first()
        if key is not None:
            key.setFocus()

    def _render(self, state: SagState) -> None:
        is_guided = state.guide is not None
        was_guided = self.guide.isVisibleTo(self)
        self.overview.setVisible(not is_guided)
        self.guide.setVisible(is_guided)
        if state.guide is not None:
            self.guide.show_guide(state.guide)
            return
        self.guide.leave()
        self.overview.show_state(state)
        if was_guided:
            self.start()

    def _show_problem(self, problem: Problem) -> None:
        if self.guide.isVisibleTo(self):
            self.guide.say(problem)
        else:
            self.problem_raised.emit(problem.text)
