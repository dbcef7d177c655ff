"""A sheet that leads through stages: where you are, the stage itself, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.field_base import commit_focused
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_8, SPACE_16


class Pages(QWidget):
    """Pages of which one shows; as high as that one, not as the highest, which a stacked widget would be."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pages: list[QWidget] = []
        self._index = 0
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)

    def add_page(self, page: QWidget) -> None:
        """Take one more page; it stays hidden until asked for."""
        page.hide()
        self._pages.append(page)
        self._rows.addWidget(page)

    def show_page(self, index: int) -> None:
        """Show one page and hide the others."""
        self._index = index
        for place, page in enumerate(self._pages):
            page.setVisible(place == index)

    def index(self) -> int:
        """The number of the page that shows."""
        return self._index


class StageSheet(Sheet):
    """A sheet with a stack of stages under a step line, and Back, the verb and a second button at the end.

    The verb stays enabled: what is wrong is said when it is pressed. Signals: ``verb_pressed``, ``second_pressed``,
    ``back_pressed``.
    """

    verb_pressed = Signal()
    second_pressed = Signal()
    back_pressed = Signal()

    def __init__(self, title: str = "", *, name: str = "stages", parent: QWidget | None = None) -> None:
        super().__init__(title, "", name=name, parent=parent)
        self._names: tuple[str, ...] = ()
        self.pages = Pages()
        self.pages.setObjectName(f"{name}_pages")
        self.problem = Words("", "problem", name=f"{name}_problem")
        self.verb = Button("Next", "verb", name=f"{name}_verb")
        self.second = Button("", "plain", name=f"{name}_second")
        self.back = Button("Back", "link", name=f"{name}_back")
        self.keys = Flow(gap=SPACE_16)
        for button in (self.verb, self.second, self.back):
            self.keys.addWidget(button)
        self.body.addWidget(self.pages)
        self.body.addStretch(1)
        self.hold(self._make_foot())
        self.problem.hide()
        self.second.hide()
        self.verb.clicked.connect(self._verb)
        self.second.clicked.connect(self._second)
        self.back.clicked.connect(self._back)

    def _make_foot(self) -> QWidget:
        """The verb stays in sight while the stage scrolls."""
        foot = QWidget()
        rows = QVBoxLayout(foot)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self.problem)
        rows.addWidget(self.keys)
        return foot

    def set_stages(self, stages: Sequence[tuple[str, QWidget]]) -> None:
        """Take the stages, each a name and a widget; called once."""
        self._names = tuple(stage for stage, _ in stages)
        for _, widget in stages:
            self.pages.add_page(widget)
        if stages:
            self.show_stage(0)

    def show_stage(self, index: int, *, verb: str = "Next", second: str = "", can_go_back: bool | None = None) -> None:
        """Show one stage, what the verb and the second button say, and whether Back is offered."""
        self.pages.show_page(index)
        self.set_title(self.title.text(), f"Step {index + 1} of {len(self._names)}: {self._names[index]}")
        self.verb.set_text(verb)
        self.second.set_text(second)
        self.second.setVisible(bool(second))
        self.back.setVisible(index > 0 if can_go_back is None else can_go_back)

    def stage(self) -> int:
        """The index of the stage that shows."""
        return self.pages.index()

    def say_problem(self, text: str, field: QWidget | None = None) -> None:
        """Say what keeps the verb from being done, and put the focus on the field it is about."""
        self.problem.set_words(text)
        if field is not None and text:
            field.setFocus(Qt.FocusReason.OtherFocusReason)

    def _verb(self) -> None:
        if commit_focused():
            self.verb_pressed.emit()

    def _second(self) -> None:
        self.second_pressed.emit()

    def _back(self) -> None:
        self.back_pressed.emit()
