"""How far the job is, read from a library; a station passed over and taken up again."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, check_there_and_back
from workbench.actions.card import hand_over
from workbench.actions.job import job_records, skip_station, unskip_station
from workbench.actions.ride import change_settings, end_session, ride_records
from workbench.actions.setups import setup_on_bike
from workbench.model.bike import Station, StationState
from workbench.model.errors import InputError
from workbench.model.job import job_marks, next_due


def states(desk, bike):
    return {mark.station: (mark.state, mark.why) for mark in job_marks(desk.ask(job_records(bike.id)))}


def test_the_job_moves_on_station_by_station(desk):
    bike = a_counted_bike(desk)
    assert states(desk, bike)[Station.SAG] == (StationState.NOW, "front due")
    for station in (Station.RIDE, Station.REVIEW, Station.CARD):
        assert states(desk, bike)[station][0] == StationState.BLOCKED
    desk.do("Skip", skip_station(bike.id, Station.SAG, "Done elsewhere"), bike_id=bike.id)
    assert states(desk, bike)[Station.BASELINE] == (StationState.NOW, "no setup yet")
    setup = a_baseline(desk, bike)
    assert states(desk, bike)[Station.RIDE] == (StationState.NOW, "no runs yet")
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    assert states(desk, bike)[Station.RIDE] == (StationState.NOW, "session open, 1 run")
    desk.do("End", end_session(session.id), bike_id=bike.id)
    assert states(desk, bike)[Station.CARD] == (StationState.NOW, "setup 1 has no card yet")
    desk.do("Hand over", hand_over(setup.id), bike_id=bike.id)
    marks = job_marks(desk.ask(job_records(bike.id)))
    assert next_due(marks) == "done"


def test_a_new_bike_is_looked_over_first_and_nobody_is_sent_back_to_that_once_work_went_on(desk):
    assert states(desk, a_bike(desk))[Station.CHECKIN] == (StationState.NOW, "not looked over yet")
    counted = a_counted_bike(desk, name="Counted")
    assert states(desk, counted)[Station.CHECKIN] == (StationState.SKIPPED, "no check-in, work went on")


def test_a_skip_carries_its_reason_and_goes_away_when_taken_up(desk):
    bike = a_bike(desk)
    check_there_and_back(desk, "Skip", skip_station(bike.id, Station.ADJUSTERS, "Not on this bike"), bike_id=bike.id)
    assert states(desk, bike)[Station.ADJUSTERS] == (StationState.SKIPPED, "Not on this bike")
    check_there_and_back(desk, "Take up", unskip_station(bike.id, Station.ADJUSTERS), bike_id=bike.id)
    assert states(desk, bike)[Station.ADJUSTERS][0] == StationState.DUE


def test_skipping_again_replaces_the_reason(desk):
    bike = a_bike(desk)
    for reason in ("No time today", "Customer declines"):
        desk.do("Skip", skip_station(bike.id, Station.SAG, reason), bike_id=bike.id)
    assert states(desk, bike)[Station.SAG][1] == "Customer declines"
    desk.do("Take up", unskip_station(bike.id, Station.SAG), bike_id=bike.id)
    assert states(desk, bike)[Station.SAG][0] == StationState.DUE


@pytest.mark.parametrize("reason", ["", " \u200b", "x" * 10_000])
def test_a_skip_needs_a_reason_that_can_be_read(desk, reason):
    bike = a_bike(desk)
    with pytest.raises(InputError, match="Reason"):
        desk.do("Skip", skip_station(bike.id, Station.SAG, reason), bike_id=bike.id)


def test_an_entry_under_way_makes_its_station_due(desk):
    bike = a_counted_bike(desk)
    marks = {mark.station: mark for mark in job_marks(desk.ask(job_records(bike.id, (Station.BASELINE,))))}
    assert marks[Station.BASELINE].why == "entry under way"


def test_the_card_is_due_for_the_setup_that_stands_on_the_bike_not_for_the_newest(desk):
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    records = desk.ask(ride_records(bike.id))
    rebound = records.parts.adjusters[1]
    for position in (9.0, 6.0):
        wanted = {("adjuster", rebound.id): position}
        change = change_settings(bike.id, records.parts.riders[0].id, wanted, session_id=session.id)
        desk.do("Change", change, bike_id=bike.id)
    assert desk.ask(setup_on_bike(bike.id)) == first
    assert states(desk, bike)[Station.CARD][1] == "setup 1 has no card yet"
    desk.do("Hand over", hand_over(first.id), bike_id=bike.id)
    assert states(desk, bike)[Station.CARD][0] == StationState.DONE
