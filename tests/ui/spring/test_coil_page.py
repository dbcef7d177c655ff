"""The coil's part of the spring sheet, by mouse and keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QLineEdit

from tests.ui.driver import Driver
from tests.viewmodels.test_coil import READINGS, coil_bike
from workbench.actions.coil import coil_records
from workbench.model.setting import Item
from workbench.ui.plots.coil import CoilForcePlot, CoilRatePlot
from workbench.ui.spring.page import SpringPage
from workbench.viewmodels.spring import SpringViewModel

Key = Qt.Key


@pytest.fixture
def sheet(qtbot, desk):
    return Driver(qtbot, desk, SpringPage, SpringViewModel, coil_bike(desk).bike_id)


def plain(sheet) -> str:
    return sheet.words().replace("\u2009", " ")


def parts_of(sheet):
    return sheet.desk.ask(coil_records(sheet.bench.bike_id)).spring.sag.parts


def press_readings(sheet):
    sheet.press("coil_view_pressed")
    for place, (travel, force) in enumerate(READINGS, 1):
        sheet.type_into(f"coil_travel_{place}", travel)
        sheet.type_into(f"coil_force_{place}", force)


def test_the_numbers_of_a_measured_coil_stand_on_the_sheet(sheet):
    sheet.press("coil_view_at_hand")
    words = plain(sheet)
    for shown in ("Load 1734 N", "550 lbf/in", "29.6 %", "525 lbf/in", "31.1 %", "would need 4.75 mm. Refused"):
        assert shown in words
    assert sheet.find("coil_exact").text().replace("\u2009", " ") == "542 lbf/in 95 N/mm"


def test_a_spring_that_binds_is_added_and_has_no_key_to_fit_it(sheet):
    sheet.press("coil_view_at_hand")
    sheet.press("coil_list_own")
    sheet.type_into("coil_rate", "550")
    sheet.type_into("coil_stroke_mm", "57")
    sheet.press("coil_add")
    assert "coil bind: has 57 mm, needs 58.5 mm. Do not fit" in plain(sheet)
    assert not sheet.is_shown("coil_fit_1")
    assert sheet.find("coil_rate", QLineEdit).text() == ""


def test_fitting_the_nearest_spring_is_one_step_on_the_way_back(sheet):
    sheet.press("coil_view_at_hand")
    sheet.type_into("coil_preload_turns", "1")
    assert sheet.find("coil_preload_mm", QLineEdit).text() == "1.5"
    sheet.press("coil_fit_1")
    shock = parts_of(sheet).unit("rear")
    assert parts_of(sheet).value(Item.PRELOAD, shock.id) == pytest.approx(1.5)
    assert "on the bike" in plain(sheet)
    sheet.desk.undo()
    assert parts_of(sheet).value(Item.PRELOAD, shock.id) == 1.0
    assert sheet.find("coil_preload_mm", QLineEdit).text() == "1"


def test_readings_are_typed_and_the_rate_is_taken_over_by_the_verb(sheet):
    press_readings(sheet)
    assert len(sheet.page.findChild(CoilForcePlot, "coil_pressed_plot").shown().points) == 4
    assert "Nine times in ten between 455 and 458 lbf/in." in plain(sheet)
    sheet.press("coil_pressed_keep")
    assert sheet.kept[-1].replace("\u2009", " ") == "Add 457 lbf/in to the springs at hand"
    assert "measured by pressing it" in plain(sheet)


def test_keys_alone_reckon_a_rate_from_the_wire(sheet):
    sheet.press("coil_view_wire")
    sheet.page.start()
    assert sheet.focused() == "coil_wire_mm"
    for text in ("12", "60", "10"):
        sheet.bot.keyClicks(sheet.page.focusWidget(), text)
        sheet.keys(Key.Key_Tab)
    sheet.tab_to("coil_wire_fit")
    sheet.keys(Key.Key_Return)
    shock = parts_of(sheet).unit("rear")
    assert parts_of(sheet).line(Item.SPRING_RATE, shock.id).how == "wire"


def test_a_missing_size_takes_the_caret_and_says_so_and_nothing_typed_is_lost(sheet):
    sheet.press("coil_view_wire")
    sheet.type_into("coil_wire_mm", "12")
    sheet.press("coil_wire_keep")
    assert sheet.focused() == "coil_diameter_mm"
    assert "Still to enter" in sheet.find("coil_diameter_mm_said").text()
    assert sheet.find("coil_wire_mm", QLineEdit).text() == "12"


def test_a_second_opening_shows_the_typed_list_where_it_was_left(qtbot, sheet):
    press_readings(sheet)
    again = Driver(qtbot, sheet.desk, SpringPage, SpringViewModel, sheet.bench.bike_id)
    assert again.find("coil_force_1", QLineEdit).text() == "2405"
    again.press("coil_pressed_discard")
    assert again.find("coil_force_1", QLineEdit).text() == ""


def test_a_dual_spring_shows_its_force_and_its_rate(sheet):
    sheet.press("coil_view_table")
    sheet.press("coil_table_choice_two")
    for name, text in (("stopped_rate", "80 N/mm"), ("stop_mm", "10"), ("other_rate", "120 N/mm"), ("both_mm", "62")):
        sheet.type_into(f"coil_{name}", text)
    assert sheet.page.findChild(CoilRatePlot).shown().rate_n_per_mm == pytest.approx((48.0, 120.0))
    assert "40.8 %" in plain(sheet)


def test_the_curve_and_its_margin_come_back(sheet):
    sheet.press("coil_view_wire")
    assert not sheet.is_shown("spring_plot")
    sheet.press("coil_view_curve")
    assert sheet.is_shown("spring_plot")
    assert sheet.is_shown("spring_rate_n_per_mm")


def test_without_a_sag_the_coil_can_still_be_reckoned_with(qtbot, desk):
    sheet = Driver(qtbot, desk, SpringPage, SpringViewModel, coil_bike(desk, has_sag=False).bike_id)
    assert "Measure sag first" in plain(sheet)
    sheet.press("coil_view_wire")
    assert isinstance(sheet.find("coil_wire_keep"), QAbstractButton)
    assert not sheet.is_shown("spring_blocked")
