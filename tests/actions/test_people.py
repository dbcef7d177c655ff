"""People: added, seated on bikes, put away."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, check_there_and_back
from workbench.actions.parts import bike_parts
from workbench.actions.people import (
    add_person,
    add_rider,
    archive_person,
    bikes_by_rider,
    main_rider,
    people,
    people_found,
    person,
    rider_names,
)
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


def test_names_of_those_who_ride_are_read_alone_and_in_order(desk):
    for name, rides in (("zoe Lind", True), ("B. Halloran", False), ("A. Okoye", True), ("M. Anders", True)):
        desk.do("Add", add_person(name, rides=rides))
    gone = next(one for one in desk.ask(people()) if one.name == "M. Anders")
    desk.do("Put away", archive_person(gone.id))
    expected = tuple((one.id, one.name) for one in desk.ask(people()) if one.rides)
    assert desk.ask(rider_names()) == expected
    assert [name for _, name in expected] == ["A. Okoye", "zoe Lind"]


@pytest.mark.parametrize(
    ("text", "most", "listed", "found"),
    [
        ("", 9, ["A. Okoye", "ELIF ÖZ", "M. Anders", "Ada Away"], 4),
        ("", 2, ["A. Okoye", "ELIF ÖZ"], 4),
        ("öz elif", 9, ["ELIF ÖZ"], 1),
        ("a", 1, ["A. Okoye"], 3),
        ("nobody", 9, [], 0),
    ],
)
def test_people_are_found_by_every_word_of_a_name_those_put_away_last(desk, text, most, listed, found):
    for name in ("M. Anders", "ELIF ÖZ", "A. Okoye"):
        desk.do("Add", add_person(name))
    desk.do("Put away", archive_person(desk.do("Add", add_person("Ada Away")).id))
    shown, count = desk.ask(people_found(text, most=most))
    assert ([one.name for one in shown], count) == (listed, found)
    assert all(desk.ask(person(one.id)) == one for one in shown)


def test_bikes_are_told_of_the_riders_asked_for_only(desk):
    larch, tarn = a_bike(desk), a_bike(desk, name="Tarn", rider="J. Okoye")
    anders, okoye = (desk.ask(bike_parts(one.id)).riders[0] for one in (larch, tarn))
    desk.do("Add rider", add_rider(larch.id, okoye.id), bike_id=larch.id)
    both = {anders.id: ((larch.id, larch.name),), okoye.id: ((larch.id, larch.name), (tarn.id, tarn.name))}
    assert desk.ask(bikes_by_rider((anders.id, okoye.id))) == both
    assert desk.ask(bikes_by_rider((anders.id,))) == {anders.id: both[anders.id]}
    assert desk.ask(bikes_by_rider(())) == {}
