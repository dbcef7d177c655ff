"""Two riders on one bike: numbers are the bike's, everything else is each rider's own."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from workbench.actions.baseline import baseline_records
from workbench.actions.job import job_records
from workbench.actions.people import add_person, main_rider
from workbench.actions.ride import end_session, ride_records
from workbench.actions.setups import setup_on_bike, setups_of
from workbench.model.bike import Station, StationState
from workbench.model.job import job_marks


@pytest.fixture
def shared(desk):
    """A bike with a setup and a rated session of its first rider; a second rider is the main one now."""
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    second = desk.do("Add", add_person("A. Lindqvist", mass_kg=62.0), station="garage")
    desk.do("Main rider", main_rider(bike.id, second.id), bike_id=bike.id)
    return bike, first, second


def states(desk, bike, **more):
    return {mark.station: mark.state for mark in job_marks(desk.ask(job_records(bike.id, **more)))}


def test_the_job_of_the_second_rider_begins_at_sag(desk, shared):
    bike, first, _ = shared
    marks = states(desk, bike)
    assert marks[Station.SAG] == StationState.NOW
    assert marks[Station.BASELINE] == StationState.DUE
    assert marks[Station.REVIEW] == StationState.BLOCKED
    assert states(desk, bike, rider_id=first.rider_id)[Station.REVIEW] == StationState.DONE


def test_the_second_riders_baseline_takes_the_next_number_of_the_bike_and_no_steps_of_the_firsts(desk, shared):
    bike, first, second = shared
    records = desk.ask(baseline_records(bike.id))
    assert (records.setups, records.number, records.steps) == ((), 2, ())
    own = a_baseline(desk, bike)
    assert (own.number, own.rider_id) == (2, second.id)
    assert desk.ask(setups_of(bike.id, first.rider_id)) == (first,)
    assert len(desk.ask(setups_of(bike.id))) == 2


def test_a_setup_that_stands_on_the_bike_is_each_riders_own_though_the_values_are_alike(desk, shared):
    bike, first, second = shared
    own = a_baseline(desk, bike)
    assert desk.ask(setup_on_bike(bike.id, second.id)) == own
    assert desk.ask(setup_on_bike(bike.id, first.rider_id)) == first


def test_ratings_of_two_riders_are_never_read_together(desk, shared):
    bike, first, second = shared
    a_baseline(desk, bike)
    a_run(desk, a_session(desk, bike, course="Ridge"), liking=9)
    liked = {
        rider: [run.liking for one in desk.ask(ride_records(bike.id, rider)).sessions for run in one.runs]
        for rider in (first.rider_id, second.id)
    }
    assert liked == {first.rider_id: [5], second.id: [9]}
