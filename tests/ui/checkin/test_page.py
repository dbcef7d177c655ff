"""The check-in's sheet driven by mouse and by keys."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog

from tests.fixtures import a_counted_bike
from tests.ui.driver import Driver, Key
from workbench.actions.checkin import checkin_records
from workbench.ui.checkin.page import CheckInPage
from workbench.viewmodels.checkin import CheckInViewModel


@pytest.fixture
def bike(desk):
    return a_counted_bike(desk)


@pytest.fixture
def driver(qtbot, desk, bike):
    return Driver(qtbot, desk, CheckInPage, CheckInViewModel, bike.id)


def open_titles(desk, bike):
    return [one.title for one in desk.ask(checkin_records(bike.id)).open_items]


def test_a_quick_intake_by_keys_alone(desk, bike, driver):
    assert driver.focused() == "checkin_begin"
    driver.keys(Key.Key_Return)
    assert driver.focused() == "checkin_bothers"
    driver.bot.keyClicks(driver.page.focusWidget(), "Knocks")
    driver.tab_to("check_frame_severity_1")
    driver.keys(Key.Key_1)
    driver.keys(Key.Key_Tab)
    assert driver.focused().startswith("check_headset_severity")
    driver.keys(Key.Key_3)
    driver.tab_to("check_headset_reason_Knocks")
    driver.keys(Key.Key_Return)
    driver.tab_to("check_headset_declined")
    driver.keys(Key.Key_Space)
    driver.tab_to("checkin_rest")
    driver.keys(Key.Key_Return)
    assert driver.focused() == "checkin_file"
    driver.keys(Key.Key_Return)
    assert driver.kept == ["File the check-in"]
    (item,) = desk.ask(checkin_records(bike.id)).open_items
    assert (item.title, item.item.reason, item.item.is_declined) == ("Headset", "Knocks", True)
    assert driver.focused() == "checkin_onward"


def test_do_not_ride_without_a_reason_is_said_at_its_line_and_then_overruled_by_mouse(desk, bike, driver):
    driver.press("checkin_begin")
    driver.press("check_wheels_severity_4")
    driver.press("checkin_file")
    assert "whoever reads this must know why" in driver.find("check_wheels_problem").text()
    driver.press("check_wheels_reason_Spoke broken")
    driver.press("checkin_file")
    assert "Do not ride: wheels and axles" in driver.words()
    driver.press("open_wheels_overrule")
    driver.type_into("overrule_by", "A. Weber")
    driver.press("overrule_keep")
    assert driver.find("overrule_said").text() == "Say why: it stands on the card."
    driver.type_into("overrule_reason", "Pushed home only")
    driver.press("overrule_keep")
    assert not driver.is_shown("overrule_keep")
    assert "A. Weber lets it be ridden nevertheless" in driver.words()
    driver.press("open_wheels_close")
    assert open_titles(desk, bike) == []


def test_what_can_throw_a_rider_offers_no_way_to_overrule_it(driver):
    driver.press("checkin_begin")
    driver.press("check_crown_severity_4")
    driver.press("check_crown_reason_Creaks")
    driver.press("checkin_file")
    assert not driver.is_shown("open_crown_overrule")
    assert "mended and looked at again, not overruled" in driver.words()


def test_hours_an_interval_and_a_service_are_entered_in_the_list(desk, bike, driver):
    driver.type_into("wear_hours_entry", "152")
    driver.press("wear_note_hours")
    assert desk.ask(checkin_records(bike.id)).hours.hours == 152.0
    driver.type_into("wear_lowers_front_last_entry", "100", then=Key.Key_Tab)
    assert driver.find("wear_lowers_front_state").text() == "Due: 52 of 50\u2009h."
    driver.type_into("wear_lowers_front_interval_entry", "60", then=Key.Key_Tab)
    assert driver.find("wear_lowers_front_state").text() == "Soon: 52 of 60\u2009h."
    driver.press("wear_lowers_front_serviced")
    assert driver.find("wear_lowers_front_state").text().startswith("Not due: 0 of 60\u2009h")


def test_hours_that_cannot_be_read_stay_as_typed_with_a_sentence(driver):
    driver.type_into("wear_lowers_front_interval_entry", "abc", then=Key.Key_Tab)
    assert driver.find("wear_lowers_front_interval_entry").text() == "abc"
    assert driver.find("wear_lowers_front_interval_said").text()


def test_a_line_being_typed_in_keeps_its_caret_while_it_is_kept_at_every_letter(driver):
    driver.press("checkin_begin")
    driver.type_into("checkin_bothers", "Knocks")
    line = driver.find("checkin_bothers")
    line.setCursorPosition(2)
    driver.bot.keyClicks(line, "x")
    assert (line.text(), line.cursorPosition()) == ("Knxocks", 3)
    assert driver.model.state.bothers == "Knxocks"


def test_an_intake_under_way_goes_on_at_the_first_line_left_when_the_program_starts_again(qtbot, desk, bike, driver):
    driver.press("checkin_begin")
    driver.press("check_frame_severity_1")
    again = CheckInPage(CheckInViewModel(desk, driver.bench))
    qtbot.addWidget(again)
    again.start()
    again.show()
    assert again.focusWidget().objectName() == "check_headset_severity_1"


def test_zero_says_the_rest_is_fine_but_is_a_digit_where_text_is_typed(driver):
    driver.press("checkin_begin")
    driver.bot.keyClicks(driver.find("checkin_bothers"), "10 psi")
    assert driver.model.state.bothers == "10 psi"
    assert driver.model.state.left == len(driver.model.state.rows)
    driver.tab_to("check_frame_severity_1")
    driver.keys(Key.Key_0)
    assert driver.model.state.left == 0
    assert driver.focused() == "checkin_file"


def test_a_picture_is_put_to_a_find_by_keys_and_shown_on_the_hand_over_list(driver, tmp_path, monkeypatch):
    image = QImage(640, 480, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    path = tmp_path / "crown.png"
    image.save(str(path))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    driver.press("checkin_begin")
    driver.press("check_headset_severity_3")
    driver.tab_to("check_headset_picture_add")
    driver.keys(Key.Key_Space)
    print_of = driver.find("check_headset_picture")
    assert (print_of.pixmap().width(), print_of.accessibleName()) == (160, "Picture: Headset")
    assert driver.find("check_headset_picture_add").words() == "Another picture ..."
    driver.press("checkin_file")
    on_list = driver.find("open_headset_picture")
    assert on_list.grab().toImage().pixelColor(80, 60).name() == "#336699"
    driver.press("open_headset_picture_off")
    assert not driver.is_shown("open_headset_picture")
