"""What is seen while no bike lies on the bench."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.drawings.view import DrawingView
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_16, SPACE_24, SPACE_40
from workbench.viewmodels.window import WindowState, WindowViewModel

NARROW = 600  # px: with less, the words take the room of the drawing


class Welcome(QWidget):
    """Says what to do first."""

    demo_requested = Signal()

    def __init__(self, view_model: WindowViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("welcome")
        self._title = Words("", "title", name="welcome_title")
        self._text = Words("", "text", name="welcome_text")
        self._add = Button("Add the first bike", "verb", name="welcome_add")
        self._add.clicked.connect(view_model.new_bike)
        self._demo = Button("Explore a sample garage", "plain", name="welcome_demo")
        self._demo.clicked.connect(self.demo_requested)
        self._drawing = DrawingView("rider", name="welcome_drawing")
        rows = QVBoxLayout()
        rows.setSpacing(SPACE_16)
        rows.addStretch(1)
        for widget in (self._title, self._text):
            rows.addWidget(widget)
        for button in (self._add, self._demo):
            rows.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addStretch(2)
        across = QHBoxLayout(self)
        across.setContentsMargins(SPACE_40, SPACE_24, SPACE_40, SPACE_24)
        across.setSpacing(SPACE_40)
        across.addLayout(rows, 5)
        across.addWidget(self._drawing, 2)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._drawing.setVisible(event.size().width() >= NARROW)

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        self._add.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_state(self, state: WindowState) -> None:
        """Say what fits an empty garage, or one with no bike chosen."""
        if state.garage_is_empty:
            self._title.setText("The garage is empty")
            self._text.setText("Add a bike to begin: a name is enough. Everything you enter is kept at once.")
        else:
            self._title.setText("Pick a bike")
            self._text.setText("Choose a bike on the left, or add another one.")
        self._add.set_text("Add the first bike" if state.garage_is_empty else "Add a bike")
        self._demo.setVisible(state.garage_is_empty)
