"""Riding: sessions, runs, and one change between two of them."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, check_there_and_back, everything, make_desk
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.ride import (
    add_course,
    change_settings,
    courses,
    end_session,
    keep_run,
    reopen_session,
    ride_records,
    set_run_aside,
)
from workbench.actions.ride_overrules import overrules_in
from workbench.actions.setups import steps_to_setup, take_all_steps
from workbench.model.errors import InputError
from workbench.model.ride import Overrule, Run, RunRating, RunSymptom
from workbench.model.setting import Item


class Outing:
    """A bike with a baseline, in an open session."""

    def __init__(self, desk) -> None:
        self.desk = desk
        self.bike = a_counted_bike(desk)
        self.baseline = a_baseline(desk, self.bike)
        self.session = a_session(desk, self.bike)
        parts = self.records().parts
        self.compression, self.rebound = parts.adjusters[:2]
        self.fork, self.shock = parts.units

    def records(self):
        return self.desk.ask(ride_records(self.bike.id))

    def change(self, wanted, **more):
        rider = self.records().parts.riders[0]
        deed = change_settings(self.bike.id, rider.id, wanted, session_id=self.session.id, **more)
        return self.desk.do("Change", deed, bike_id=self.bike.id, station="ride")

    def run(self, liking=5, **said):
        return a_run(self.desk, self.session, liking=liking, **said)

    def click(self, adjuster, position, **more):
        return self.change({(Item.ADJUSTER, adjuster.id): float(position)}, **more)


@pytest.fixture
def outing(desk):
    return Outing(desk)


def test_a_run_is_kept_on_the_setup_that_stands_on_the_bike(desk, outing):
    run = Run("", outing.session.id, 0, outing.baseline.id, "", "", liking=6, direction=-1, travel_front_mm=141.0)
    kept = check_there_and_back(desk, "Keep run", keep_run(run), bike_id=outing.bike.id)
    assert (kept.number, kept.setup_id, kept.liking, kept.is_confounded) == (1, outing.baseline.id, 6, False)
    assert kept.ridden_at
    assert kept.typed_at
    assert outing.run().number == 2


def test_ratings_and_symptoms_of_a_run_belong_to_it_and_its_draft_is_closed(desk, outing):
    draft = desk.keep_draft("run", "{}", bike_id=outing.bike.id, subject=outing.session.id)
    run = Run("", outing.session.id, 0, outing.baseline.id, "", "", liking=6)
    deed = keep_run(run, ratings=(("grip", 7, "front"),), symptoms=(("dives", "front"),), draft_id=draft.id)
    kept = check_there_and_back(desk, "Keep run", deed, bike_id=outing.bike.id)
    records = everything(desk)
    assert [(one.run_id, one.attribute, one.score) for one in records[RunRating]] == [(kept.id, "grip", 7)]
    assert [(one.run_id, one.symptom) for one in records[RunSymptom]] == [(kept.id, "dives")]
    assert desk.open_draft("run", bike_id=outing.bike.id, subject=outing.session.id) is None


@pytest.mark.parametrize("wrong", [{"liking": 0}, {"liking": 10}, {"direction": 3}, {"compared": -2}], ids=str)
def test_a_rating_off_its_scale_is_refused(outing, wrong):
    with pytest.raises(InputError):
        keep_run(Run("", outing.session.id, 0, outing.baseline.id, "", "", **wrong))


def test_a_change_logs_the_bike_and_makes_the_next_setup(desk, outing):
    outing.run()
    rider = outing.records().parts.riders[0]
    wanted = {(Item.ADJUSTER, outing.rebound.id): 9.0}
    deed = change_settings(outing.bike.id, rider.id, wanted, session_id=outing.session.id)
    setup = check_there_and_back(desk, "Change", deed, bike_id=outing.bike.id)
    assert (setup.number, setup.origin, setup.parent_id) == (2, "change", outing.baseline.id)
    records = outing.records()
    assert records.current == setup
    assert records.parts.value(Item.ADJUSTER, outing.rebound.id) == 9.0
    before, after = records.values[outing.baseline.id], records.values[setup.id]
    assert {key for key in after if after[key] != before[key]} == set(wanted)


def test_going_back_to_a_ridden_setup_reuses_its_number(outing):
    outing.run()
    away = outing.click(outing.rebound, 9)
    outing.run()
    back = outing.click(outing.rebound, 6)
    assert back == outing.baseline
    outing.run()
    assert outing.click(outing.rebound, 9) == away
    assert [setup.number for setup in outing.records().setups] == [1, 2]


def test_a_second_free_change_before_the_next_run_is_refused_and_leaves_nothing(desk, outing):
    outing.run()
    outing.click(outing.rebound, 9)
    before = everything(desk)
    with pytest.raises(InputError, match="2 things at once"):
        outing.click(outing.compression, 2)
    assert everything(desk) == before


def test_a_second_change_said_out_loud_is_kept_and_marks_setup_and_run(outing):
    outing.run()
    outing.click(outing.rebound, 9)
    both = outing.click(outing.compression, 2, say_confounded=True)
    assert both.is_confounded
    assert outing.run().is_confounded
    assert not outing.run().is_confounded, "ridden again as it stands, nothing was changed"


def test_the_same_adjuster_moved_twice_is_one_change(outing):
    outing.run()
    outing.click(outing.rebound, 9)
    assert outing.click(outing.rebound, 11).is_confounded is False


def test_a_change_taken_back_before_riding_makes_room_for_another(outing):
    outing.run()
    outing.click(outing.rebound, 9)
    outing.click(outing.rebound, 6)
    assert outing.click(outing.compression, 2).is_confounded is False


def test_a_spacer_with_its_pressure_correction_counts_as_one(outing):
    outing.run()
    wanted = {(Item.SPACERS, outing.fork.id): 2.0, (Item.PRESSURE, outing.fork.id): 500.0}
    assert outing.change(wanted).is_confounded is False
    assert outing.run().is_confounded is False


def test_spacers_at_one_end_and_pressure_at_the_other_are_two(outing):
    outing.run()
    with pytest.raises(InputError, match="2 things at once"):
        outing.change({(Item.SPACERS, outing.fork.id): 2.0, (Item.PRESSURE, outing.shock.id): 1100.0})


def test_a_pressure_the_gauge_cannot_tell_apart_is_no_change(outing):
    outing.run()
    now = outing.records().parts.value(Item.PRESSURE, outing.fork.id)
    assert outing.change({(Item.PRESSURE, outing.fork.id): now + 2.0}) == outing.baseline
    assert outing.change({(Item.PRESSURE, outing.fork.id): now + 7.0}).number == 2


def test_a_run_set_aside_does_not_count_as_ridden(desk, outing):
    outing.run()
    outing.click(outing.rebound, 9)
    run = outing.run()
    check_there_and_back(desk, "Aside", set_run_aside(run.id, "Lever was wrong"), bike_id=outing.bike.id)
    with pytest.raises(InputError):
        outing.click(outing.compression, 2)
    desk.do("Count", set_run_aside(run.id, ""), bike_id=outing.bike.id)
    assert outing.click(outing.compression, 2).number == 3


def test_a_bike_that_was_meddled_with_stands_on_no_setup_until_restored(desk, outing):
    meddle = set_item(outing.bike.id, Item.ADJUSTER, outing.rebound.id, 1.0, "set_to")
    desk.do("Meddle", meddle, bike_id=outing.bike.id)
    assert outing.records().current is None
    steps = desk.ask(steps_to_setup(outing.baseline.id))
    desk.do("Restore", take_all_steps(outing.bike.id, steps), bike_id=outing.bike.id)
    assert outing.records().current == outing.baseline


def test_going_elsewhere_than_proposed_is_remembered(desk, outing):
    outing.run()
    overrule = Overrule("", outing.session.id, outing.rebound.id, 13, 9, "")
    outing.click(outing.rebound, 9, overrule=overrule)
    assert desk.ask(overrules_in(outing.session.id)) == 1


def test_a_session_ends_and_can_be_opened_again(desk, outing):
    check_there_and_back(desk, "End", end_session(outing.session.id), bike_id=outing.bike.id)
    assert outing.records().open_session is None
    check_there_and_back(desk, "Reopen", reopen_session(outing.session.id), bike_id=outing.bike.id)
    assert outing.records().open_session.session.id == outing.session.id


def test_a_course_needs_a_name_somebody_can_read(desk):
    for name in ("", "\u202e", "x" * 10_000):
        with pytest.raises(InputError, match="Name"):
            add_course(name)
    course = check_there_and_back(desk, "Add", add_course("Quarry <b>loop</b>", typical_s=118))
    assert desk.ask(courses()) == (course,)


def test_a_colder_day_alone_makes_no_other_setup(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        parts = desk.ask(bike_parts(bike.id))
        fork = parts.unit("front").id
        desk.do("Warm", set_item(bike.id, Item.PRESSURE, fork, 551.6, "set_to", temperature_c=22.0))
        setup = a_baseline(desk, bike)
        desk.do("Cold", set_item(bike.id, Item.PRESSURE, fork, 496.4, "as_attached", temperature_c=-3.0))
        assert desk.ask(ride_records(bike.id)).current == setup
        desk.do("Less", set_item(bike.id, Item.PRESSURE, fork, 440.0, "set_to", temperature_c=-3.0))
        assert desk.ask(ride_records(bike.id)).current is None
