"""The coil's part of the spring sheet: which of its sheets lies open, and that sheet."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.choice_field import Segments
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.spring.coil_at_hand import AtHandView
from workbench.ui.spring.coil_find import FindView
from workbench.viewmodels.base import Problem
from workbench.viewmodels.coil import CoilState, CoilViewModel
from workbench.viewmodels.coil_entries import AT_HAND, CURVE, VIEWS


class CoilPart(Page):
    """Keys for the coil's sheets, and below them the open one; each is built when it is first opened."""

    def __init__(self, view_model: CoilViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._coil = view_model
        self._views = Segments(VIEWS, label="Show", name="coil_view")
        self._views.group.idClicked.connect(self._picked)
        self._made: dict[str, AtHandView | FindView] = {}
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE_16)
        self._rows.addWidget(self._views)
        self.listen()

    def start(self) -> None:
        """Put the caret into the first entry of the open sheet, or the focus on the keys."""
        open_now = self._made.get(self._coil.state.view)
        if open_now is not None:
            open_now.take_focus()
        else:
            self._views.setFocus()

    def _render(self, state: CoilState) -> None:
        self._views.choose(state.view)
        sheet = state.sheet
        if sheet is not None and state.view not in self._made:
            made = AtHandView(self._coil, sheet) if state.view == AT_HAND else FindView(self._coil, state.view, sheet)
            self._made[state.view] = made
            self._rows.addWidget(made)
        for view, shown in self._made.items():
            shown.setVisible(view == state.view and sheet is not None)
            if view == state.view and sheet is not None:
                shown.show_sheet(sheet)

    def is_curve(self) -> bool:
        """Whether the curve is asked for, which the spring sheet draws itself."""
        return self._coil.state.view == CURVE

    def _show_problem(self, problem: Problem) -> None:
        open_now = self._made.get(self._coil.state.view)
        if open_now is None or not open_now.say(problem.field, problem.text):
            super()._show_problem(problem)

    def _picked(self, index: int) -> None:
        self._coil.pick_view(VIEWS[index][0])
