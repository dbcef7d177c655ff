"""A blind test in the whole window: two people at one screen, and no word anywhere of what is on the bike."""

from __future__ import annotations

import gc
import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QAbstractItemView, QApplication, QComboBox, QTableWidget, QWidget

from tests.fixtures import Clock, a_baseline, a_counted_bike, everything
from workbench.app import Workbench
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.job import STATIONS
from workbench.model.ride import BlindPlan, Run
from workbench.ui.parts.step_list import StepList
from workbench.viewmodels.window_state import SHEETS

Key = Qt.Key
A_FIRST, B_FIRST = 20, 0  # seeds whose orders begin with one and the other
BETRAYS = re.compile(r"(?i:no\. ?\d|setup \d|rebound|click|from closed|then open|fully)|\b[AB]\b")
FINGERPRINT = re.compile(r"Fingerprint [0-9a-f ]+")
OTHER = ("new_bike", "backups", "bundle")  # they show nothing of the bike on the bench


@pytest.fixture
def window_with(qapp, tmp_path):
    opened = []

    def make(seed: int) -> Workbench:
        folder = tmp_path / str(seed)
        folder.mkdir()
        workbench = Workbench(open_library(folder / "bench.trailbench", schema, now=Clock()))
        bike = a_counted_bike(workbench.desk)
        a_baseline(workbench.desk, bike)
        workbench.window.resize(1280, 800)
        workbench.window.show()
        workbench.window.activateWindow()
        workbench.bench.put_bike(bike.id)
        workbench.view_model.open_station("ride")
        workbench.window.page("ride").view_model.seeds = lambda: seed
        opened.append(workbench)
        return workbench

    yield make
    while opened:
        opened.pop().close()
        gc.collect()


class Two:
    """The rider and the helper at one window: mouse and keys, no calls."""

    def __init__(self, qtbot, workbench: Workbench) -> None:
        self.bot, self.workbench, self.window = qtbot, workbench, workbench.window

    def find(self, name: str) -> QWidget:
        QApplication.processEvents()
        found = [one for one in self.window.findChildren(QWidget, name) if one.isVisible()]
        assert len(found) == 1, f"{name}: {found}"
        return found[0]

    def click(self, name: str) -> None:
        self.bot.mouseClick(self.find(name), Qt.MouseButton.LeftButton)

    def type(self, name: str, text: str) -> None:
        line = self.find(name)
        self.click(name)
        self.bot.keyClick(line, Key.Key_A, Qt.KeyboardModifier.ControlModifier)
        self.bot.keyClicks(line, text)

    def press(self, *keys: Qt.Key) -> None:
        for key in keys:
            QApplication.processEvents()
            focus = self.window.focusWidget()
            assert focus is not None
            self.bot.keyClick(focus, key)

    def choose(self, name: str, text: str) -> None:
        box = self.find(name)
        assert isinstance(box, QComboBox)
        place = next(place for place in range(box.count()) if text in box.itemText(place))
        box.setFocus()
        self.bot.keyClick(box, Key.Key_Home)
        for _ in range(place):
            self.bot.keyClick(box, Key.Key_Down)
        box.activated.emit(box.currentIndex())

    def plan(self, pairs: int, rebound: str) -> None:
        self.click("ride_blind")
        self.choose("blind_item", rebound)
        self.type("blind_value", "10")
        self.type("blind_pairs", str(pairs))
        self.type("ride_new_course", "Quarry loop")
        self.find("ride_verified_entry").setFocus()
        self.press(Key.Key_Space)
        self.click("blind_begin")

    def helper_sets(self) -> str:
        """The helper's turn, by mouse; gives what was to be set."""
        self.click("blind_to_helper")
        steps = self.find("blind_steps")
        assert isinstance(steps, StepList)
        told = steps.steps()[0].text
        for row in steps.findChildren(QWidget):
            if row.isVisible():
                self.bot.mouseClick(row, Qt.MouseButton.LeftButton)
        self.click("blind_to_rider")
        return told

    def rider_rates(self, liking: int) -> None:
        """The rider's turn, by keys alone."""
        self.press(Key(Key.Key_0 + liking), Key.Key_Return)


def told_by(window: QWidget) -> list[str]:
    """Every word in sight or spoken: texts, names, hints, lines of lists and menus."""
    QApplication.processEvents()
    told: list[str] = [window.windowTitle()]
    for widget in [window, *window.findChildren(QWidget)]:
        if not widget.isVisible():
            continue
        told += [widget.accessibleName(), widget.accessibleDescription(), widget.toolTip(), widget.whatsThis()]
        if hasattr(widget, "text") and callable(widget.text) and isinstance(text := widget.text(), str):
            told.append(text)
        if isinstance(widget, QComboBox):
            told += [widget.itemText(place) for place in range(widget.count())]
        elif isinstance(widget, QAbstractItemView) and (model := widget.model()) is not None:
            columns = widget.columnCount() if isinstance(widget, QTableWidget) else 1
            cells = (model.index(row, column) for row in range(model.rowCount()) for column in range(columns))
            told += [str(cell.data() or "") for cell in cells]
    told += [action.text() for action in window.findChildren(QAction) if action.isVisible()]
    return [FINGERPRINT.sub("", text) for text in told if text]


def betraying(texts: list[str]) -> list[str]:
    return [text for text in texts if BETRAYS.search(text)]


def test_two_people_do_a_test_of_three_pairs_at_one_screen(qtbot, window_with):
    workbench = window_with(A_FIRST)
    two = Two(qtbot, workbench)
    bike_id = workbench.bench.bike_id
    assert bike_id is not None
    two.plan(3, "low-speed rebound")
    likings = {"6 clicks": iter((5, 6, 5)), "10 clicks": iter((7, 7, 8))}
    rated = []
    for number in range(6):
        assert not betraying(_riders_words(told_by(workbench.window))), "the screen that is nobody's"
        said = two.helper_sets()
        clicks = next(words for words in likings if words in said)
        assert not betraying(_riders_words(told_by(workbench.window))), f"the rider's screen of run {number + 1}"
        rated.append(next(likings[clicks]))
        two.rider_rates(rated[-1])
    assert not [text for text in told_by(workbench.window) if "liking" in text.casefold()], "no rating is told yet"
    (plan,) = everything(workbench.desk)[BlindPlan]
    for pair in range(3):
        two.click(f"blind_guess_{pair + 1}_{plan.order[2 * pair : 2 * pair + 2].index('B')}")
    two.click("blind_reveal")
    words = "\n".join(told_by(workbench.window))
    assert "The blind test is revealed" in words
    assert "Guesses right: 3 of 3. Chance alone gives this in 1 of 8 such tests." in words
    assert "far apart in 1 of 4 such tests" in words
    assert "fits the order revealed" in words
    runs = sorted(everything(workbench.desk)[Run], key=lambda run: run.number)
    assert [run.liking for run in runs] == rated
    assert all(run.is_blind for run in runs)
    two.window.activateWindow()
    workbench.view_model.undo()
    assert "has been seen" in two.find("banner_words").text()


def _riders_words(texts: list[str]) -> list[str]:
    """What is told but for the words that are always there: the menus' own, and the guess that speaks of B."""
    return [text for text in texts if not text.startswith(("&Go", "&Bike"))]


@pytest.mark.parametrize("stage", ["nobody's", "rider's"])
def test_no_sheet_of_the_window_differs_by_what_is_on_the_bike(qtbot, window_with, stage):
    told = {}
    for seed in (A_FIRST, B_FIRST):
        workbench = window_with(seed)
        two = Two(qtbot, workbench)
        two.plan(1, "low-speed rebound")
        two.helper_sets()
        if stage == "nobody's":
            two.rider_rates(7)
        order = everything(workbench.desk)[BlindPlan][0].order
        told[order] = {}
        for station in (*map(str, STATIONS), *(sheet for sheet in SHEETS if sheet not in OTHER)):
            workbench.view_model.open_station(station)
            told[order][station] = told_by(workbench.window)
        workbench.view_model.open_station("ride")
        assert not betraying(_riders_words(told_by(workbench.window)))
    assert set(told) == {"AB", "BA"}
    for station, texts in told["AB"].items():
        assert texts == told["BA"][station], station


def test_what_is_looked_for_would_be_found(qtbot, window_with):
    """The helper's screen does betray what is on the bike, and the search sees it."""
    workbench = window_with(A_FIRST)
    two = Two(qtbot, workbench)
    two.plan(1, "low-speed rebound")
    two.click("blind_to_helper")
    found = betraying(_riders_words(told_by(workbench.window)))
    assert any("no. 1" in text for text in found)
    assert any("6 clicks" in text for text in found)


def test_undo_in_the_window_tells_nothing_either(qtbot, window_with):
    workbench = window_with(B_FIRST)
    two = Two(qtbot, workbench)
    two.plan(3, "low-speed rebound")
    two.helper_sets()
    two.rider_rates(7)
    two.helper_sets()
    workbench.view_model.undo()
    words = told_by(workbench.window)
    assert not betraying(_riders_words(words))
    assert not [text for text in words if "liking" in text.casefold() and "Redo" in text]
    workbench.view_model.redo()
    assert not betraying(_riders_words(told_by(workbench.window)))
