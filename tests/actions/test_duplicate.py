"""A bike started from another one; templates; two riders on one bike."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_session, check_there_and_back
from workbench.actions.adjusters import wait_for
from workbench.actions.duplicate import delete_template, duplicate_bike, start_from, templates
from workbench.actions.garage import NewBike, garage_rows
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person, add_rider, bikes_of, take_off_rider
from workbench.actions.ride import start_session
from workbench.actions.setups import keep_setup
from workbench.model.errors import InputError, LibraryError, WorkbenchError
from workbench.model.ride import Session
from workbench.model.setting import Setup


def test_a_duplicate_has_the_parts_and_ranges_and_nothing_that_was_ridden(desk):
    bike = a_counted_bike(desk)
    first, second = desk.ask(bike_parts(bike.id)).adjusters[:2]
    desk.do("Wait", wait_for(first.id, second.id), bike_id=bike.id)
    a_baseline(desk, bike)
    a_session(desk, bike)
    copy = check_there_and_back(desk, "Duplicate", duplicate_bike(bike.id, "Larch two"))
    old, new = desk.ask(bike_parts(bike.id)), desk.ask(bike_parts(copy.id))
    assert [unit.travel_mm for unit in new.units] == [unit.travel_mm for unit in old.units]
    steps = [[parts.range_of(one.id).steps for one in parts.adjusters] for parts in (old, new)]
    assert steps[0] == steps[1]
    assert all(parts_range.as_found is None for parts_range in new.ranges)
    assert new.adjusters[0].depends_on == new.adjusters[1].id
    assert new.now == ()
    assert [one.id for one in new.riders] == [one.id for one in old.riders]
    assert desk.ask(lambda reader: (reader.find(Setup, bike_id=copy.id), reader.find(Session, bike_id=copy.id))) == (
        (),
        (),
    )


def test_a_template_is_in_no_list_of_bikes_and_a_bike_started_from_it_is(desk):
    bike = a_counted_bike(desk)
    kept = desk.do("Keep", duplicate_bike(bike.id, "Shop 150", with_riders=False, as_template=True))
    assert [row.bike.id for row in desk.ask(garage_rows())] == [bike.id]
    assert [one.id for one in desk.ask(templates())] == [kept.id]
    assert desk.ask(bike_parts(kept.id)).ranges == ()
    begun = desk.do("Begin", duplicate_bike(kept.id, "Larch three"))
    assert begun.template_at is None
    assert begun.id in [row.bike.id for row in desk.ask(garage_rows())]


def test_a_duplicate_needs_a_name():
    with pytest.raises(InputError):
        duplicate_bike("any", "  ")


def test_nobody_starts_a_session_beside_anothers_on_the_same_bike(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    open_one = a_session(desk, bike)
    other = desk.do("Add", add_person("J. Okoye"))
    desk.do("Rides", add_rider(bike.id, other.id), bike_id=bike.id)
    with pytest.raises(WorkbenchError, match=r"session of M\. Anders is open"):
        desk.do("Start", start_session(replace(open_one, rider_id=other.id)), bike_id=bike.id)
    assert desk.ask(job_records(bike.id, rider_id=other.id)).parts.riders[0].id == other.id


def test_taking_the_main_rider_off_makes_the_next_one_the_main_one(desk):
    bike = a_counted_bike(desk)
    first = desk.ask(bike_parts(bike.id)).riders[0]
    other = desk.do("Add", add_person("J. Okoye"))
    desk.do("Rides", add_rider(bike.id, other.id), bike_id=bike.id)
    assert [one.id for one in desk.ask(bikes_of(other.id))] == [bike.id]
    check_there_and_back(desk, "Take off", take_off_rider(bike.id, first.id))
    assert [one.id for one in desk.ask(bike_parts(bike.id)).riders] == [other.id]
    assert desk.ask(bikes_of(first.id)) == ()


def test_a_bike_started_from_a_template_has_its_own_rider(desk):
    bike = a_counted_bike(desk)
    kept = desk.do("Keep", duplicate_bike(bike.id, "Shop 150", with_riders=False, as_template=True))
    new = NewBike("Heron", discipline="enduro", rider_name="S. Tamm", rider_mass_kg=70.0)
    begun = check_there_and_back(desk, "Begin", start_from(kept.id, new, bike_id="heron"))
    parts = desk.ask(bike_parts(begun.id))
    assert (parts.bike.name, parts.bike.discipline, parts.riders[0].name) == ("Heron", "enduro", "S. Tamm")
    assert [unit.travel_mm for unit in parts.units] == [150.0, 60.0]


def test_a_template_is_deleted_with_its_parts_and_a_bike_started_from_it_stays(desk):
    bike = a_counted_bike(desk)
    kept = desk.do("Keep", duplicate_bike(bike.id, "Shop 150", with_riders=False, as_template=True))
    begun = desk.do("Begin", duplicate_bike(kept.id, "Larch three"))
    check_there_and_back(desk, "Delete", delete_template(kept.id))
    assert desk.ask(templates()) == ()
    assert len(desk.ask(bike_parts(begun.id)).units) == 2


def test_a_bike_is_never_deleted_as_a_template(desk):
    bike = a_counted_bike(desk)
    with pytest.raises(LibraryError, match="is a bike, not a template"):
        desk.do("Delete", delete_template(bike.id))


def test_a_template_that_was_worked_on_is_not_deleted(desk):
    bike = a_counted_bike(desk)
    kept = desk.do("Keep", duplicate_bike(bike.id, "Shop 150", as_template=True))
    desk.do("Setup", keep_setup(kept.id, desk.ask(bike_parts(kept.id)).riders[0].id, {}, "baseline"))
    with pytest.raises(LibraryError, match="was worked on"):
        desk.do("Delete", delete_template(kept.id))
