"""The adjusters' page driven by mouse and keys over a real library."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from tests.fixtures import a_bike, a_counted_bike, make_desk
from workbench.actions.adjusters import adjuster_records
from workbench.actions.edit import edit
from workbench.model.adjuster import Adjuster
from workbench.ui.adjusters.page import AdjustersPage
from workbench.ui.parts.theme import Theme, apply_theme
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.bench import Bench

Key = Qt.Key


class Driver:
    """A page on screen, found by names and driven like a person would."""

    def __init__(self, qtbot, desk, bike_id=None):
        self.bot, self.desk = qtbot, desk
        self.bench = Bench(desk)
        if bike_id is not None:
            self.bench.put_bike(bike_id)
        self.model = AdjustersViewModel(desk, self.bench)
        self.page = AdjustersPage(self.model)
        self.page.resize(940, 560)
        qtbot.addWidget(self.page)
        self.page.show()
        self.page.activateWindow()
        self.page.start()

    def find(self, name: str) -> QWidget:
        QApplication.processEvents()
        found = [one for one in self.page.findChildren(QWidget, name) if one.isVisibleTo(self.page)]
        assert len(found) == 1, f"{name}: {found}"
        return found[0]

    def is_shown(self, name: str) -> bool:
        QApplication.processEvents()
        return any(one.isVisibleTo(self.page) for one in self.page.findChildren(QWidget, name))

    def press(self, name: str) -> None:
        button = self.find(name)
        assert isinstance(button, QAbstractButton)
        self.bot.mouseClick(button, Qt.MouseButton.LeftButton)

    def keys(self, *keys: Qt.Key) -> None:
        for key in keys:
            focus = self.page.focusWidget()
            assert focus is not None
            self.bot.keyClick(focus, key)

    def type_into(self, name: str, text: str) -> None:
        field = self.find(f"{name}_entry")
        field.setFocus()
        field.selectAll()
        self.bot.keyClicks(field, text)
        self.bot.keyClick(field, Key.Key_Return)

    def adjusters(self):
        return self.desk.ask(adjuster_records(self.bench.bike_id)).parts.adjusters

    def records(self):
        return self.desk.ask(adjuster_records(self.bench.bike_id))

    def fact(self, place: int, **facts) -> str:
        adjuster_id = self.adjusters()[place].id
        for name, value in facts.items():
            self.desk.do("Fact", edit(Adjuster, adjuster_id, name, value), bike_id=self.bench.bike_id, station="")
        return adjuster_id

    def words(self) -> str:
        """All the words of the sheet in sight."""
        return "\n".join(
            one.text()
            for one in self.page.findChildren(QWidget)
            if one.isVisibleTo(self.page) and hasattr(one, "text") and isinstance(one.text(), str)
        )


@pytest.fixture
def driver(qtbot, qapp, tmp_path):
    apply_theme(qapp, Theme())
    with make_desk(tmp_path) as desk:
        yield Driver(qtbot, desk, a_bike(desk).id)


def test_one_pass_intake_by_keys(driver):
    rebound = driver.fact(1, chart_steps=7, chart_from="open")
    driver.press("count_fork_2")
    driver.keys(*[Key.Key_Space] * 6)
    assert driver.find("count_verb").words() == "Keep as found 6"
    driver.keys(Key.Key_Return)
    assert [(line.value, line.how) for line in driver.records().log] == [(6.0, "counted"), (0.0, "closed")]
    driver.keys(*[Key.Key_Plus] * 14, Key.Key_Minus, Key.Key_Return)
    count = driver.records().parts.range_of(rebound)
    assert (count.as_found, count.steps) == (6, 13)
    driver.press("count_back")
    assert "6 clicks from closed (maker: 7 from open)" in driver.words()
    assert "fully closed, then open 6" in driver.find("put_back_steps").steps()[0].text
    assert driver.find("ruler_fork_2").accessibleName().endswith("now fully open, for sag")


def test_the_whole_fork_can_be_counted_with_the_mouse_alone(driver):
    driver.press("adjusters_next")
    for stage, clicks in (("close", 2), ("open", 3), ("close", 1), ("open", 2)):
        for _ in range(clicks):
            driver.press(f"count_{stage}_tool_more")
        driver.press("count_verb")
    counts = [(one.as_found, one.steps) for one in driver.records().parts.ranges]
    assert counts == [(2, 3), (1, 2)]
    assert driver.find("count_title").text() == "Shock low-speed compression"


def test_digits_write_the_count_and_a_second_digit_goes_on(driver):
    driver.press("adjusters_next")
    driver.keys(Key.Key_1, Key.Key_2)
    assert driver.model.state.count.count == 12


def test_a_range_out_of_reach_is_said_and_the_count_has_the_focus(driver):
    driver.press("adjusters_next")
    driver.keys(Key.Key_6, Key.Key_Return, Key.Key_3)
    driver.press("count_verb")
    assert driver.find("count_problem").text().startswith("6 clicks in, but only 3 clicks out")
    assert driver.page.focusWidget() is driver.find("count_open_tool")
    driver.keys(Key.Key_1, Key.Key_3, Key.Key_Return)
    assert not driver.is_shown("count_problem")


def test_enter_pressed_twice_takes_nothing_for_fully_closed(driver):
    driver.press("adjusters_next")
    driver.keys(Key.Key_2, Key.Key_Return, Key.Key_9, Key.Key_Return, Key.Key_Return)
    assert len(driver.records().log) == 3
    assert "say that it was fully closed" in driver.find("count_problem").text()
    driver.press("count_second")
    assert [(line.value, line.how) for line in driver.records().log[3:]] == [(0.0, "counted"), (0.0, "closed")]


def test_a_page_made_anew_goes_on_where_the_count_was(driver, qtbot):
    driver.press("adjusters_next")
    driver.keys(*[Key.Key_Space] * 4, Key.Key_Return, *[Key.Key_Space] * 5)
    again = Driver(qtbot, driver.desk)
    assert again.find("count_title").text() == "Fork low-speed compression"
    assert again.find("count_open_tool").count() == 5
    again.keys(Key.Key_Space)
    assert again.find("count_open_tool").count() == 6


def test_which_way_closes_is_answered_beside_the_drawing(driver):
    driver.press("adjusters_next")
    driver.press("count_turn_anticlockwise")
    assert not driver.is_shown("count_turn")
    assert driver.find("count_drawing").values.closes == "anticlockwise"
    assert driver.adjusters()[0].closed_turn == "anticlockwise"


def test_passing_over_by_a_number_key(driver):
    driver.press("adjusters_next")
    driver.press("count_skip")
    assert not driver.is_shown("count_verb")
    driver.keys(Key.Key_2)
    assert driver.find("count_title").text() == "Fork low-speed rebound"
    assert driver.is_shown("count_verb")
    driver.press("count_back")
    assert "Knob missing or stuck" in driver.words()


def test_passing_over_for_a_reason_of_ones_own(driver):
    driver.press("adjusters_next")
    driver.press("count_skip")
    driver.type_into("skip_other", "Seized <b>solid</b>")
    assert list(driver.records().skipped.values()) == ["Seized <b>solid</b>"]


def test_discarding_goes_back_to_the_list_and_can_be_taken_back(driver):
    taken = []
    driver.model.discarded.connect(lambda label, key: taken.append(key))
    driver.press("adjusters_next")
    driver.keys(Key.Key_4)
    driver.press("count_discard")
    assert driver.is_shown("adjusters_next")
    driver.model.take_back_draft(taken[0])
    assert driver.find("count_close_tool").count() == 4


def test_a_pressure_typed_in_another_unit_is_kept(driver):
    driver.type_into("found_fork_pressure", "5.6 bar")
    fork = driver.records().parts.units[0]
    line = driver.records().parts.line("pressure", fork.id)
    assert (line.value, line.how) == (pytest.approx(560.0), "as_attached")
    driver.type_into("found_front_tyre_pressure", "about twenty")
    assert driver.model.state.groups[-1].items[0].typed == "about twenty"


def test_steps_put_back_leave_the_list(driver):
    driver.press("adjusters_next")
    driver.keys(Key.Key_2, Key.Key_Return, Key.Key_9, Key.Key_Return)
    driver.press("count_back")
    (row,) = driver.find("put_back_steps").findChildren(QAbstractButton)
    driver.bot.mouseClick(row, Qt.MouseButton.LeftButton)
    assert not driver.is_shown("put_back_steps")
    assert driver.records().parts.value("adjuster", driver.adjusters()[0].id) == 2.0


def test_after_the_last_count_sag_is_next(driver):
    asked = []
    driver.page.station_requested.connect(asked.append)
    driver.press("adjusters_next")
    for _ in range(4):
        driver.keys(Key.Key_2, Key.Key_Return, Key.Key_9, Key.Key_Return)
    assert driver.find("adjusters_next").words() == "Measure sag"
    assert driver.page.focusWidget() is driver.find("adjusters_next")
    driver.press("adjusters_next")
    assert asked == ["sag"]


def test_facts_open_in_the_row_and_a_refusal_stands_at_its_field(driver):
    driver.press("adjusters_next")
    driver.keys(Key.Key_2, Key.Key_Return, Key.Key_9, Key.Key_Return)
    driver.press("count_back")
    driver.press("open_facts_fork_1")
    driver.type_into("facts_fork_1_name", "Low <i>speed</i>")
    assert "Low <i>speed</i>" in driver.words()
    driver.press("facts_fork_1_counting_turns")
    assert "add it anew" in driver.find("facts_fork_1_counting_said").text()
    assert driver.adjusters()[0].counting == "clicks"
    driver.press("open_facts_fork_1")
    assert not driver.is_shown("facts_fork_1_name")


def test_an_adjuster_is_added_and_removed_in_place(driver):
    driver.press("add_adjuster_fork")
    assert driver.is_shown("facts_fork_3_name")
    driver.press("remove_fork_3")
    assert not driver.is_shown("adjuster_fork_3")
    driver.desk.undo()
    assert driver.is_shown("adjuster_fork_3")


def test_a_lever_is_picked_not_counted(driver):
    driver.fact(0, counting="positions", kind="lever", speed="", position_names="firm|middle|open")
    driver.press("adjusters_next")
    driver.press("count_verb")
    assert "Choose where it stands" in driver.find("count_problem").text()
    driver.keys(Key.Key_2)
    assert driver.find("count_verb").words() == "Keep as found: middle"
    driver.press("count_verb")
    driver.press("count_verb")
    count = driver.records().parts.ranges[0]
    assert (count.as_found, count.steps) == (1, 2)


def test_every_control_has_a_name_and_is_large_enough(driver):
    driver.fact(1, chart_steps=7, chart_from="open")
    for view in ("list", "count"):
        if view == "count":
            driver.press("adjusters_next")
        buttons = [one for one in driver.page.findChildren(QAbstractButton) if one.isVisibleTo(driver.page)]
        assert buttons
        for button in buttons:
            assert button.objectName(), button.text()
            assert button.accessibleName(), button.objectName()
            assert button.height() >= 44, (button.objectName(), button.height())


def test_a_foot_switch_is_learned_by_pressing_it_and_then_counts(driver):
    driver.press("count_fork_1")
    driver.press("count_foot_switch")
    assert driver.find("count_foot_switch").text() == "Press the switch now"
    driver.keys(Key.Key_F8)
    assert driver.find("count_foot_switch").text() == "Foot switch: F8"
    driver.keys(Key.Key_F8, Key.Key_F8, Key.Key_Space)
    assert driver.model.state.count.count == 3


def test_the_arrow_beside_the_count_turns_round_when_the_knob_is_to_be_opened(driver):
    driver.press("adjusters_next")
    assert not driver.find("count_drawing").values.opens
    driver.keys(Key.Key_Space)
    driver.press("count_verb")
    assert driver.find("count_drawing").values.opens


def test_with_all_counted_and_put_back_the_keyboard_begins_at_the_first_adjuster(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        driver = Driver(qtbot, desk, a_counted_bike(desk).id)
        driver.press("put_back_all")
        driver.page.list_sheet.verb.hide()  # as once the stations after this one are done
        driver.page.start()
        QApplication.processEvents()
        focused = driver.page.focusWidget()
        assert focused.isVisible()
        assert focused.objectName().startswith("count_")
