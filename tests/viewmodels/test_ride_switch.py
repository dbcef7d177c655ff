"""Switching between named setups within a session: from dry to wet and back."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.fit_unit import fit_unit
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings, ride_records
from workbench.actions.setups import keep_setup, name_setup
from workbench.model.setting import Item
from workbench.model.warmth import Pressure
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_switch import ALREADY, ONE, REST_ALREADY


@pytest.fixture
def bike(desk):
    """A bike on its dry setup, with a wet one that differs in two knobs and a stiff one in one."""
    bike = a_counted_bike(desk)
    dry = a_baseline(desk, bike)
    for name, moves in (("wet", {0: 2.0, 1: 9.0}), ("stiff", {0: 2.0})):
        wanted = {(Item.ADJUSTER.value, knobs(desk, bike)[place]): at for place, at in moves.items()}
        made = desk.do("Set", change_settings(bike.id, dry.rider_id, wanted, say_confounded=True), bike_id=bike.id)
        desk.do("Name", name_setup(made.id, name), bike_id=bike.id)
        back = {key: desk.ask(ride_records(bike.id)).values[dry.id][key] for key in wanted}
        desk.do("Back", change_settings(bike.id, dry.rider_id, back, say_confounded=True), bike_id=bike.id)
    desk.do("Name", name_setup(dry.id, "dry"), bike_id=bike.id)
    return bike


def knobs(desk, bike):
    return [one.id for one in desk.ask(bike_parts(bike.id)).adjusters]


def named(desk, bike, name):
    return next(one for one in desk.ask(ride_records(bike.id)).setups if one.name == name)


def riding(desk, bike, runs=1):
    session = a_session(desk, bike)
    for _ in range(runs):
        a_run(desk, session, liking=6)
    return shown(RideViewModel, desk, bike.id)


def test_the_named_setups_are_offered_without_the_one_on_the_bike(desk, bike):
    view_model, _ = riding(desk, bike)
    switch = view_model.state.session.switch
    assert [words for _, words in switch.setups] == ["Setup no. 3 “stiff”", "Setup no. 2 “wet”"]


def test_a_setup_picked_says_what_to_set_and_as_how_many_changes_it_counts(desk, bike):
    view_model, _ = riding(desk, bike)
    view_model.pick_switch(named(desk, bike, "stiff").id)
    look = view_model.state.session.switch
    assert look.lines == ("Fork: low-speed compression: fully closed, then open 2 clicks",)
    assert (look.counts, look.is_care, look.can_set) == (ONE, False, True)
    view_model.pick_switch(named(desk, bike, "wet").id)
    look = view_model.state.session.switch
    assert len(look.lines) == 2
    assert (look.counts.startswith("2 changes at once"), look.is_care) == (True, True)


def test_one_change_by_a_switch_is_judged_like_any_other(desk, bike):
    view_model, heard = riding(desk, bike)
    view_model.pick_switch(named(desk, bike, "stiff").id)
    assert view_model.switch_setup()
    assert heard.labels == ["Switch to setup no. 3 “stiff”"]
    records = desk.ask(ride_records(bike.id))
    assert records.current.id == named(desk, bike, "stiff").id
    view_model.set_run("liking", 7)
    assert view_model.keep_run()
    assert not desk.ask(ride_records(bike.id)).open_session.runs[-1].is_confounded


def test_two_changes_by_a_switch_mark_the_run_after_it(desk, bike):
    view_model, _ = riding(desk, bike)
    view_model.pick_switch(named(desk, bike, "wet").id)
    assert view_model.switch_setup()
    assert view_model.state.session.changed
    view_model.set_run("liking", 7)
    assert view_model.keep_run()
    run = desk.ask(ride_records(bike.id)).open_session.runs[-1]
    assert (run.setup_id, run.is_confounded) == (named(desk, bike, "wet").id, True)


def test_the_whole_switch_is_one_step_back(desk, bike):
    view_model, _ = riding(desk, bike)
    view_model.pick_switch(named(desk, bike, "wet").id)
    view_model.switch_setup()
    desk.undo()
    assert desk.ask(ride_records(bike.id)).current.name == "dry"
    assert view_model.state.session.changed == ""


def test_before_the_first_run_a_switch_is_no_change_between_runs(desk, bike):
    view_model, _ = riding(desk, bike, runs=0)
    view_model.pick_switch(named(desk, bike, "wet").id)
    look = view_model.state.session.switch
    assert (look.counts, look.is_care) == ("", False)


def test_nothing_is_set_by_looking(desk, bike):
    view_model, _ = riding(desk, bike)
    label = desk.undo_label()
    view_model.pick_switch(named(desk, bike, "wet").id)
    assert desk.undo_label() == label


def test_a_setup_that_stands_already_under_another_number_has_nothing_to_set(desk, bike):
    dry = named(desk, bike, "dry")
    same = desk.ask(ride_records(bike.id)).values[dry.id]
    desk.do("Keep", keep_setup(bike.id, dry.rider_id, same, "baseline", name="dry again"), bike_id=bike.id)
    view_model, _ = riding(desk, bike)
    view_model.pick_switch(dry.id)
    look = view_model.state.session.switch
    assert (look.setup_id, look.lines, look.can_set) == (dry.id, (ALREADY,), False)
    assert not view_model.switch_setup()


def a_cold_setup(desk, bike):
    """Setup "cold", 500 kPa at 5 degrees in the fork; the bike stands on "warm", the same air at 25."""
    dry = named(desk, bike, "dry")
    key = (Item.PRESSURE.value, desk.ask(bike_parts(bike.id)).unit("front").id)
    for name, kpa, at_c in (("cold", 500.0, 5.0), ("warm", 543.2, 25.0)):
        pump(desk, bike, kpa, at_c)
        values = {**desk.ask(ride_records(bike.id)).values[dry.id], key: Pressure(kpa, at_c)}
        desk.do("Keep", keep_setup(bike.id, dry.rider_id, values, "change", name=name), bike_id=bike.id)


def pump(desk, bike, kpa, at_c):
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    set_it = set_item(bike.id, Item.PRESSURE, fork.id, kpa, "set_to", temperature_c=at_c)
    desk.do("Pump", set_it, bike_id=bike.id)


def looked_at(desk, bike, name):
    view_model = shown(RideViewModel, desk, bike.id)[0]
    view_model.pick_switch(named(desk, bike, name).id)
    return view_model.state.session.switch


def test_the_same_air_on_a_warmer_day_stands_already_and_is_not_let_out(desk, bike):
    a_cold_setup(desk, bike)
    a_run(desk, a_session(desk, bike, temperature_c=25.0), liking=6)
    look = looked_at(desk, bike, "cold")
    assert (look.lines, look.can_set) == ((ALREADY,), False)


def test_a_pressure_counts_as_it_will_be_logged_at_the_warmth_of_the_session(desk, bike):
    a_cold_setup(desk, bike)
    a_run(desk, a_session(desk, bike, temperature_c=25.0), liking=6)
    pump(desk, bike, 600.0, 25.0)
    assert looked_at(desk, bike, "cold").counts == ONE  # 500 kPa at 25 degrees is less air than was ridden


def test_a_setup_of_a_fork_taken_off_is_not_said_to_stand_on_the_bike(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    desk.do("Fit", fit_unit(bike.id, "front", "air", travel_mm=140.0), bike_id=bike.id)
    a_baseline(desk, bike)
    view_model, _ = riding(desk, bike)
    look = view_model.state.session.switch
    assert [words for _, words in look.setups] == ["Setup no. 1"]
    assert (look.lines, look.can_set) == ((REST_ALREADY,), False)
    assert look.left_out
