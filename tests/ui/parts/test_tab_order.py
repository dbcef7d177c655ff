"""Tab goes through a window as it is read."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QGridLayout,
    QLayoutItem,
    QLineEdit,
    QVBoxLayout,
    QWidget,
    QWidgetItem,
)
from shiboken6 import Shiboken

from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.tab_order import go_on, in_reading_order


class Sheet(QWidget):
    """Fields made in another order than they are laid out."""

    def __init__(self) -> None:
        super().__init__()
        self.last, self.second, self.first = (_line(name) for name in ("last", "second", "first"))
        self.choice = ChoiceField({"a": "One", "b": "Two"}, label="Which", name="choice")
        self.flow = Flow()
        self.flow.addWidget(self.last)
        grid = QGridLayout()
        grid.addWidget(self.second, 0, 1)
        grid.addWidget(self.first, 0, 0)
        rows = QVBoxLayout(self)
        rows.addLayout(grid)
        rows.addWidget(self.choice)
        rows.addWidget(self.flow)

    def focusNextPrevChild(self, forward: bool) -> bool:
        return go_on(self, forward=forward)


def _line(name: str) -> QLineEdit:
    line = QLineEdit()
    line.setObjectName(name)
    return line


@pytest.fixture
def sheet(qtbot):
    made = Sheet()
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    made.activateWindow()
    made.first.setFocus()
    return made


def walk(key, steps, modifier=Qt.KeyboardModifier.NoModifier):
    names = []
    for _ in range(steps):
        QTest.keyClick(QApplication.focusWidget(), key, modifier)
        names.append(QApplication.focusWidget().objectName())
    return names


def test_tab_follows_the_layout_and_begins_again(sheet):
    assert walk(Qt.Key.Key_Tab, 4) == ["second", "choice_a", "last", "first"]


def test_shift_tab_goes_the_same_way_back(sheet):
    back = walk(Qt.Key.Key_Backtab, 4, Qt.KeyboardModifier.ShiftModifier)
    assert back == ["last", "choice_a", "second", "first"]


def test_what_is_hidden_or_off_is_passed_over(sheet):
    sheet.choice.hide()
    sheet.second.setEnabled(False)
    assert walk(Qt.Key.Key_Tab, 2) == ["last", "first"]


def test_a_key_that_is_not_the_one_chosen_leads_on_from_where_it_stands(sheet):
    other = next(widget for widget in in_reading_order(sheet) if widget.objectName() == "choice_b")
    other.setFocus()
    assert walk(Qt.Key.Key_Tab, 1) == ["last"]


def test_no_item_of_a_layout_is_remembered_beyond_its_life(sheet):
    """Once remembered and deleted, another object at its place in memory would be taken for it, and the program end."""

    def items():
        return [one for one in Shiboken.getAllValidWrappers() if type(one) in (QLayoutItem, QWidgetItem)]

    before = len(items())
    assert len(in_reading_order(sheet)) > 3
    assert len(items()) == before
