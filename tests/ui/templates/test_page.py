"""The sheet of templates, driven by keys."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from tests.ui.driver import Driver, Key
from workbench.actions.duplicate import duplicate_bike, templates
from workbench.ui.templates.page import TemplatesPage
from workbench.viewmodels.templates import TemplatesViewModel


@pytest.fixture
def driver(qtbot, desk):
    bike = a_bike(desk)
    for name in ("Hire <b>120</b>", "Shop 150"):
        desk.do("Keep", duplicate_bike(bike.id, name, with_riders=False, as_template=True))
    return Driver(qtbot, desk, TemplatesPage, TemplatesViewModel)


def names(desk):
    return [one.name for one in desk.ask(templates())]


def test_one_is_picked_with_the_arrows_renamed_and_deleted_by_keys(desk, driver):
    assert driver.focused() == "templates_table"
    driver.keys(Key.Key_Down)
    assert driver.model.state.name == "Shop 150"
    driver.type_into("template_name_entry", "Workshop 150", then=Key.Key_Tab)
    assert names(desk) == ["Hire <b>120</b>", "Workshop 150"]
    driver.tab_to("template_delete")
    driver.keys(Key.Key_Space)
    assert names(desk) == ["Hire <b>120</b>"]
    assert driver.kept[-1] == "Delete template Workshop 150"
    assert driver.focused() == "templates_table"


def test_it_is_opened_and_a_bike_is_started_from_it(driver):
    driver.press("template_open")
    assert (driver.bench.bike_id, driver.bench.station) == (driver.model.state.picked, "garage")
    driver.press("template_begin")
    assert driver.bench.station == "new_bike"


def test_the_last_one_deleted_leaves_words_and_a_way_back(driver):
    driver.press("template_delete")
    driver.press("template_delete")
    assert "Keep as a template" in driver.find("templates_empty").text()
    driver.press("templates_close")
    assert driver.asked_for == ["garage"]
