"""The one shape of a station's page: draw the state, hand everything else to the view-model."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QWidget

from workbench.ui.parts.field_base import commit_focused
from workbench.viewmodels.base import Problem, ViewModel


class Page(QWidget):
    """A page over one view-model. A subclass builds its widgets, then calls ``listen()``, and gives ``_render``.

    ``_render(state)`` is the only place that sets widget values.
    """

    problem_raised = Signal(str)  # a refusal with no field to stand at: the window shows it in the banner
    kept = Signal(str)  # the label of a deed just done: the window shows it with Undo
    discarded = Signal(str, str)  # what was discarded and its draft's key: the window offers to take it back
    station_requested = Signal(str)  # go to another station
    help_wanted = Signal(str, str)  # a page of the help, and the heading to open it at
    garage_replaced = Signal()  # nothing on the other pages holds any more

    def __init__(self, view_model: ViewModel[Any], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view_model = view_model
        self._is_drawn = False  # since it came into sight

    @property
    def view_model(self) -> ViewModel[Any]:
        """The view-model this page draws."""
        return self._view_model

    def listen(self) -> None:
        """Start following the view-model; call once at the end of ``__init__``."""
        self._view_model.state_changed.connect(self._redraw)
        self._view_model.refused.connect(self._show_problem)
        self._view_model.kept.connect(self.kept)
        self._view_model.discarded.connect(self.discarded)

    def start(self) -> None:
        """Put the focus on the next thing to do; called when the page is opened."""

    def commit_focus(self) -> None:
        """Let the field in focus keep what was typed, before anything else is done."""
        commit_focused()

    def _render(self, state: Any) -> None:
        raise NotImplementedError

    def _redraw(self, state: Any) -> None:
        """Draw, and if what had the focus is gone, go to the next thing to do instead of leaving the page."""
        had_focus = self._has_focus()
        self._is_drawn = True
        self._render(state)
        if had_focus and not self._has_focus():
            self.start()

    def _has_focus(self) -> bool:
        focus: QWidget | None = QApplication.focusWidget()
        return focus is not None and self.isAncestorOf(focus)

    def _show_problem(self, problem: Problem) -> None:
        """Say a refusal; pages with fields override this to say it at the field."""
        self.problem_raised.emit(problem.text)

    def showEvent(self, event: QShowEvent) -> None:
        """Read again when coming into sight."""
        super().showEvent(event)
        self._is_drawn = False
        self._view_model.show()
        if not self._is_drawn:  # nothing has changed while it was out of sight
            self._render(self._view_model.state)

    def hideEvent(self, event: QHideEvent) -> None:
        """Stop reading when out of sight."""
        super().hideEvent(event)
        self._view_model.hide()
