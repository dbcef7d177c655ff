"""The sheet of people, driven by mouse and keys."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from tests.ui.driver import Driver, Key
from workbench.actions.people import people
from workbench.ui.people.page import PeoplePage
from workbench.viewmodels.people import PeopleViewModel


@pytest.fixture
def driver(qtbot, desk):
    a_bike(desk, name="Larch", rider="M. Anders")
    return Driver(qtbot, desk, PeoplePage, PeopleViewModel)


def test_somebody_new_is_added_changed_put_away_and_brought_back(desk, driver):
    driver.type_into("new_person", "J. <b>Okoye", then=Key.Key_Return)
    assert "J. <b>Okoye" in driver.words()
    driver.type_into("facts_person_mass_kg_entry", "70", then=Key.Key_Tab)
    driver.press("people_away")
    assert [one.name for one in desk.ask(people())] == ["M. Anders"]
    assert [row.is_away for row in driver.model.state.rows] == [False, True]
    driver.press("people_away")
    assert {(one.name, one.mass_kg) for one in desk.ask(people())} == {("M. Anders", 84.5), ("J. <b>Okoye", 70.0)}


def test_a_name_of_nothing_is_refused_at_the_field(driver):
    driver.press("people_add")
    assert driver.find("new_person_said").text()
    assert driver.focused() == "new_person"


def test_a_riders_bike_goes_on_the_bench_as_theirs(driver):
    first = driver.model.state.rows[0]
    driver.model.pick(first.person_id)
    driver.press("people_bike_1")
    assert (driver.bench.bike_id, driver.bench.rider_id) == (driver.model.state.bikes[0][0], first.person_id)


def test_who_is_at_the_bench_is_not_put_away(desk, driver):
    first = driver.model.state.rows[0]
    driver.bench.seat(first.person_id)
    driver.model.pick(first.person_id)
    assert not driver.is_shown("people_away")
