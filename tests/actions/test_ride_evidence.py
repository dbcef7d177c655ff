"""What the statistics get to read: only runs that may be compared, in the order ridden."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from tests.actions.test_ride import Outing
from workbench.actions.garage import start_generation
from workbench.actions.ride import ride_records, set_run_aside
from workbench.actions.ride_evidence import knob_runs, ridden, run_records, spring_runs
from workbench.model.setting import Item, changes_between, free_changes


@pytest.fixture
def outing(desk):
    return Outing(desk)


def knob(outing, adjuster):
    return next(one for one in knob_runs(outing.records()) if one.key == adjuster.id)


def ride_rebound(outing):
    outing.run(5, is_warmup=True)
    outing.run(5, direction=-1, direction_of=outing.rebound.id)
    outing.click(outing.rebound, 9)
    outing.run(7, direction=0, direction_of=outing.rebound.id, lap_s=118.2)


def test_runs_along_one_adjuster_are_its_trials(outing):
    ride_rebound(outing)
    found = knob(outing, outing.rebound)
    assert (found.range_clicks, found.current, found.end) == (17, 9, "front")
    assert [(one.position, one.liking, one.direction, one.warmup) for one in found.trials] == [
        (6, 5, None, True),
        (6, 5, -1, False),
        (9, 7, 0, False),
    ]
    assert found.trials[2].lap_s == 118.2


def test_runs_with_something_else_changed_are_no_trials_of_another_adjuster(outing):
    ride_rebound(outing)
    trials = knob(outing, outing.compression).trials
    assert [one.liking for one in trials] == [7], "the runs before the rebound was moved are another bike"


def test_runs_set_aside_are_left_out(desk, outing):
    ride_rebound(outing)
    last = outing.records().open_session.runs[-1]
    desk.do("Aside", set_run_aside(last.id, "Disturbed on the way"), bike_id=outing.bike.id)
    assert len(knob(outing, outing.rebound).trials) == 2
    records = outing.records()
    assert [one.response for one in run_records(records, records.sessions)] == [5, 5]


def test_a_spring_is_limited_where_neither_pressure_nor_spacers_can_go_further(desk, outing):
    def limited(**facts):
        fork = replace(outing.records().parts.unit("front"), **facts)
        desk.do("Facts", lambda gate: gate.put(fork), bike_id=outing.bike.id)
        return spring_runs(outing.records())[0].limited

    now = outing.records().parts.value(Item.PRESSURE, outing.fork.id)
    assert limited(minimum_kpa=None, maximum_kpa=None) is None
    assert limited(minimum_kpa=now - 40, maximum_kpa=now + 40) is None
    assert limited(minimum_kpa=now - 1) == "minimum"
    assert limited(minimum_kpa=None, maximum_kpa=now + 1) is None, "a spacer may still go in"
    assert limited(spacer_limit=0) == "maximum"


def test_other_hardware_ends_the_comparison(desk, outing):
    ride_rebound(outing)
    desk.do("Oil", start_generation(outing.fork.id, "oil"), bike_id=outing.bike.id)
    assert outing.rebound.id not in {one.key for one in knob_runs(outing.records())}, "its range is not counted yet"
    assert {one.end for one in knob_runs(outing.records())} == {"rear"}


def test_setups_are_told_apart_by_number_and_runs_without_the_response_left_out(outing):
    ride_rebound(outing)
    records = outing.records()
    likings = run_records(records, records.sessions)
    assert [(one.setting, one.response, one.warmup) for one in likings] == [(1, 5, True), (1, 5, False), (2, 7, False)]
    assert [one.response for one in run_records(records, records.sessions, "lap_s")] == [118.2]


def test_travel_used_speaks_only_of_the_present_spring(outing):
    outing.run(5, travel_front_mm=150.0, bottom_outs_front=2, travel_rear_mm=51.0)
    outing.change({("pressure", outing.fork.id): 600.0})
    outing.run(5, travel_front_mm=135.0, bottom_outs_front=0, travel_rear_mm=54.0)
    front, rear = spring_runs(outing.records())
    assert (front.end, front.travel_used) == ("front", (0.9,))
    assert rear.travel_used == (0.85, 0.9)


def test_a_rebound_far_off_makes_travel_used_say_little(outing):
    outing.run(5, direction=2, direction_of=outing.rebound.id)
    front, rear = spring_runs(outing.records())
    assert front.rebound_sane is False
    assert rear.rebound_sane is None
    outing.run(5, direction=1, direction_of=outing.rebound.id)
    assert spring_runs(outing.records())[0].rebound_sane is True


def test_sessions_are_days(desk, outing):
    from tests.fixtures import a_session
    from workbench.actions.ride import end_session

    outing.run(5)
    desk.do("End", end_session(outing.session.id), bike_id=outing.bike.id)
    outing.session = a_session(desk, outing.bike, course="Ridge")
    outing.run(6)
    records = desk.ask(ride_records(outing.bike.id))
    assert [one.day for one in run_records(records, records.sessions)] == [0, 1]
    assert [one.day for one in knob(outing, outing.rebound).trials] == [0, 1]


def flags(outing):
    records = outing.records()
    return [one.confounded for one in run_records(records, records.sessions)]


def test_two_changes_are_seen_between_the_rated_runs_whatever_lay_between_them(desk, outing):
    outing.run(5)
    outing.click(outing.rebound, 9)
    disturbed = outing.run(6)
    outing.click(outing.compression, 2)
    outing.run(7)
    assert flags(outing) == [False, False, False]
    desk.do("Aside", set_run_aside(disturbed.id, "Disturbed on the way"), bike_id=outing.bike.id)
    assert flags(outing) == [False, True], "without the run between them both things changed at once"
    desk.do("Count", set_run_aside(disturbed.id, ""), bike_id=outing.bike.id)
    assert flags(outing) == [False, False, False]


def test_a_warm_up_does_not_hide_that_two_things_were_changed(outing):
    outing.run(5)
    outing.click(outing.rebound, 9)
    outing.click(outing.compression, 2, say_confounded=True)
    outing.run(6, is_warmup=True)
    outing.run(7)
    assert flags(outing)[-1] is True


def test_better_or_worse_speaks_of_the_run_directly_before_or_of_none(desk, outing):
    first = outing.run(5)
    outing.run(None, compared=1)
    outing.run(6, compared=1)
    last = outing.run(7, compared=-1)
    records = outing.records()
    assert [one.compared for one in run_records(records, records.sessions)] == [None, 1, 1, -1]
    assert run_records(records, records.sessions)[1].response is None, "a comparison tells something by itself"
    assert [one.compared for one in knob(outing, outing.rebound).trials] == [None, 1, 1, -1]
    desk.do("Aside", set_run_aside(first.id, "Fell or stopped"), bike_id=outing.bike.id)
    assert [one.compared for one in knob(outing, outing.rebound).trials] == [None, 1, -1]
    assert last.compared == -1


def test_runs_on_two_setups_ridden_to_and_fro_are_judged_pair_by_pair(desk, outing):
    """Whether several things moved is found once for each pair of setups, and is the same as run by run."""
    outing.run(5)
    for turn in range(3):
        outing.click(outing.rebound, 9 - turn % 2)
        outing.run(6)
    records = outing.records()
    found = list(ridden(records, records.sessions))
    values = [records.values[one.run.setup_id] for one in found]
    several = [False, *(free_changes(changes_between(*pair)) > 1 for pair in pairwise(values))]
    assert [one.is_confounded for one in found] == [
        one.run.is_confounded or so for one, so in zip(found, several, strict=True)
    ]
