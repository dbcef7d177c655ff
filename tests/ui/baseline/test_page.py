"""The baseline's sheet driven by keys and mouse."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QLineEdit

from tests.fixtures import a_baseline, a_counted_bike
from tests.ui.driver import Driver, Key
from workbench.actions.baseline import baseline_records
from workbench.actions.garage import start_generation
from workbench.actions.setups import setup_values, setups_of
from workbench.ui.baseline.page import BaselinePage
from workbench.viewmodels.baseline import BaselineViewModel


@pytest.fixture
def bike(desk):
    return a_counted_bike(desk)


@pytest.fixture
def driver(qtbot, desk, bike):
    return Driver(qtbot, desk, BaselinePage, BaselineViewModel, bike.id)


def line(driver, title):
    return next(one for one in driver.page.findChildren(QLineEdit) if one.accessibleName().startswith(title))


def type_into(driver, title, text):
    driver.type_into(line(driver, title).objectName(), text)


def test_a_baseline_is_kept_with_one_key_and_then_set_step_by_step(desk, bike, driver):
    assert driver.focused() == "baseline_keep"
    driver.keys(Key.Key_Space)
    assert [setup.number for setup in desk.ask(setups_of(bike.id))] == [1]
    assert driver.kept == ["Keep setup no. 1"]
    steps = driver.model.state.steps
    driver.page.start()
    driver.keys(Key.Key_Space)
    assert len(driver.model.state.steps) == len(steps) - 1
    driver.press("baseline_all")
    assert "The bike stands as this setup says." in driver.words()


def test_an_own_value_is_kept(desk, bike, driver):
    type_into(driver, "Fork: low-speed rebound", "8")
    assert "fully closed, then open 8 clicks (own choice)" in driver.words()
    driver.press("baseline_keep")
    (setup,) = desk.ask(setups_of(bike.id))
    assert 8.0 in desk.ask(setup_values(setup.id)).values()


def test_a_value_out_of_range_is_said_beside_it_and_takes_the_focus(desk, bike, driver):
    type_into(driver, "Fork: low-speed rebound", "40")
    driver.find("baseline_keep").setFocus()
    driver.press("baseline_keep")
    assert driver.page.focusWidget() is line(driver, "Fork: low-speed rebound")
    assert "From 0 (closed) to 17 (open)." in driver.words()
    assert desk.ask(setups_of(bike.id)) == ()
    assert line(driver, "Fork: low-speed rebound").text() == "40"


def test_what_is_discarded_goes_back_to_what_was_proposed(driver):
    type_into(driver, "Fork: low-speed rebound", "8")
    driver.press("baseline_discard")
    assert line(driver, "Fork: low-speed rebound").text() == "6"


def test_the_push_test_stands_beside_the_steps(driver):
    driver.press("baseline_keep")
    assert driver.is_shown("baseline_care")


def test_after_new_hardware_a_new_baseline_leads_on_instead_of_the_ride(qtbot, desk, bike):
    a_baseline(desk, bike)
    driver = Driver(qtbot, desk, BaselinePage, BaselineViewModel, bike.id)
    assert driver.is_shown("baseline_ride")
    fork = desk.ask(baseline_records(bike.id)).parts.unit("front")
    desk.do("Oil", start_generation(fork.id, "oil"), bike_id=bike.id)
    assert not driver.is_shown("baseline_ride")
    driver.press("baseline_fresh")
    assert driver.is_shown("baseline_keep")
