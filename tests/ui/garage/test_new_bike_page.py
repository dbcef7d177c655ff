"""The sheet for a new bike on screen."""

from __future__ import annotations

import pytest

from tests.ui.driver import Driver, Key
from workbench.actions.garage import find_bike, garage_rows
from workbench.actions.parts import bike_parts
from workbench.ui.garage.new_bike_page import NewBikePage
from workbench.viewmodels.new_bike import NewBikeViewModel


def new_bike(qtbot, desk):
    return Driver(qtbot, desk, NewBikePage, NewBikeViewModel)


@pytest.fixture
def driver(qtbot, desk):
    return new_bike(qtbot, desk)


def only_bike(desk):
    (row,) = desk.ask(garage_rows())
    return desk.ask(find_bike(row.bike.id))


def test_a_bike_is_added_with_the_keyboard_alone(desk, driver):
    texts = {
        "new_bike_name": "Heron 140",
        "new_bike_rider": "M. Anders",
        "new_bike_rider_mass": "84,5",
        "new_bike_fork_travel": "140",
        "new_bike_shock_stroke": "55",
    }
    for name, text in texts.items():
        driver.tab_to(name)
        driver.bot.keyClicks(driver.page.focusWidget(), text)
    driver.keys(Key.Key_Return)
    parts = desk.ask(bike_parts(only_bike(desk).id))
    assert (parts.bike.name, parts.riders[0].mass_kg) == ("Heron 140", 84.5)
    assert [unit.travel_mm for unit in parts.units] == [140.0, 55.0]


def test_a_hardtail_asks_for_no_shock(desk, driver):
    driver.type_into("new_bike_name", "Tarn")
    assert driver.is_shown("new_bike_shock_stroke")
    driver.model.set_field("layout", "hardtail")
    assert not driver.is_shown("new_bike_shock_stroke")
    driver.press("new_bike_add")
    assert only_bike(desk).layout == "hardtail"


def test_a_bike_without_a_name_is_refused_at_the_field(desk, driver):
    driver.type_into("new_bike_fork_travel", "140")
    driver.press("new_bike_add")
    assert driver.focused() == "new_bike_name"
    assert desk.ask(garage_rows()) == ()
    assert driver.find("new_bike_fork_travel").text() == "140"


def test_ten_thousand_characters_are_refused_at_the_field_and_stay(qtbot, desk, driver):
    line = driver.find("new_bike_name")
    line.setFocus()
    line.insert("x" * 10_000)
    driver.model.set_field("name", line.text())
    driver.press("new_bike_add")
    assert driver.focused() == "new_bike_name"
    assert "This has 10000" in driver.words()
    assert new_bike(qtbot, desk).find("new_bike_name").text() == "x" * 10_000


def test_what_was_typed_is_there_when_the_page_is_built_anew(qtbot, desk, driver):
    driver.type_into("new_bike_name", "Heron")
    driver.type_into("new_bike_shock_stroke", "abc")
    again = new_bike(qtbot, desk)
    assert (again.find("new_bike_name").text(), again.find("new_bike_shock_stroke").text()) == ("Heron", "abc")


def test_discarding_empties_the_sheet(driver):
    driver.type_into("new_bike_name", "Heron")
    driver.press("new_bike_discard")
    assert driver.find("new_bike_name").text() == ""
