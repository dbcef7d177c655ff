"""A sheet that leads through stages: where you are, the stage itself, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QSizePolicy, QStackedWidget, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.field_base import commit_focused
from workbench.ui.parts.flow import FlowLayout
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_16


class Pages(QStackedWidget):
    """A stack as high as the page that shows, not as the highest."""

    def show_page(self, index: int) -> None:
        """Show one page; the others ask for no room."""
        for place in range(self.count()):
            page = self.widget(place)
            if page is None:
                continue
            rule = QSizePolicy.Policy.Preferred if place == index else QSizePolicy.Policy.Ignored
            policy = page.sizePolicy()
            policy.setVerticalPolicy(rule)
            page.setSizePolicy(policy)
        self.setCurrentIndex(index)
        self.updateGeometry()

    def hasHeightForWidth(self) -> bool:
        page = self.currentWidget()
        return page is not None and page.hasHeightForWidth()

    def heightForWidth(self, width: int) -> int:
        page = self.currentWidget()
        return page.heightForWidth(width) if page is not None else -1


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
        row = FlowLayout(gap=SPACE_16)
        for button in (self.verb, self.second, self.back):
            row.addWidget(button)
        self.body.addWidget(self.pages)
        self.body.addWidget(self.problem)
        self.body.addLayout(row)
        self.body.addStretch(1)
        self.problem.hide()
        self.second.hide()
        self.verb.clicked.connect(self._verb)
        self.second.clicked.connect(self._second)
        self.back.clicked.connect(self._back)

    def set_stages(self, stages: Sequence[tuple[str, QWidget]]) -> None:
        """Take the stages, each a name and a widget; called once."""
        self._names = tuple(stage for stage, _ in stages)
        for _, widget in stages:
            self.pages.addWidget(widget)
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
        return self.pages.currentIndex()

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
