"""People: added, seated on bikes, put away."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, check_there_and_back
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person, add_rider, archive_person, main_rider, people, person
from workbench.model.errors import InputError


def riders(desk, bike):
    return [one.name for one in desk.ask(bike_parts(bike.id)).riders]


def test_a_person_added_can_be_found_and_read(desk):
    added = check_there_and_back(desk, "Add", add_person("  Ø. Åsen ", mass_kg=71.5))
    assert added.name == "Ø. Åsen"
    assert desk.ask(person(added.id)) == added
    assert desk.ask(people()) == (added,)
    assert desk.ask(person("nobody")) is None


def test_the_second_rider_is_not_the_main_one_until_chosen(desk):
    bike = a_bike(desk)
    other = desk.do("Add", add_person("J. Okoye"))
    check_there_and_back(desk, "Add rider", add_rider(bike.id, other.id), bike_id=bike.id)
    assert riders(desk, bike) == ["M. Anders", "J. Okoye"]
    check_there_and_back(desk, "Main rider", main_rider(bike.id, other.id), bike_id=bike.id)
    assert riders(desk, bike) == ["J. Okoye", "M. Anders"]


def test_somebody_who_rides_the_bike_already_is_not_added_twice(desk):
    bike = a_bike(desk)
    rider = desk.ask(bike_parts(bike.id)).riders[0]
    desk.do("Add rider", add_rider(bike.id, rider.id), bike_id=bike.id)
    assert riders(desk, bike) == ["M. Anders"]


def test_a_stranger_can_be_made_main_rider_at_once(desk):
    bike = a_bike(desk)
    other = desk.do("Add", add_person("J. Okoye"))
    check_there_and_back(desk, "Main rider", main_rider(bike.id, other.id), bike_id=bike.id)
    assert riders(desk, bike) == ["J. Okoye", "M. Anders"]


def test_a_person_put_away_keeps_the_bikes(desk):
    bike = a_bike(desk)
    rider = desk.ask(bike_parts(bike.id)).riders[0]
    check_there_and_back(desk, "Put away", archive_person(rider.id))
    assert desk.ask(people()) == ()
    assert [one.id for one in desk.ask(people(archived=True))] == [rider.id]
    assert riders(desk, bike) == ["M. Anders"]


@pytest.mark.parametrize("mass", [float("nan"), float("-inf"), -70.0, 4000.0])
def test_no_person_weighs_that(mass):
    with pytest.raises(InputError, match="Mass ready to ride"):
        add_person("M. Anders", mass_kg=mass)
