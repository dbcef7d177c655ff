"""Clicks counted on one hardware say nothing on another, and a recount rewrites nothing."""

from __future__ import annotations

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, check_there_and_back
from workbench.actions.adjusters import keep_as_found, keep_range
from workbench.actions.card import card_of
from workbench.actions.garage import remove_adjuster, start_generation
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.put_back import put_back
from workbench.actions.ride import change_settings, ride_records
from workbench.actions.ride_evidence import knob_runs
from workbench.actions.sag import sag_records
from workbench.actions.setups import setup_on_bike, steps_to_setup
from workbench.model.parts import BikeParts
from workbench.model.setting import Item, changes_between, free_changes
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.shown import Units


def parts_of(desk, bike) -> BikeParts:
    return desk.ask(bike_parts(bike.id))


def service(desk, bike, end="front"):
    fork = parts_of(desk, bike).unit(end)
    check_there_and_back(desk, "Service", start_generation(fork.id, "service"), bike_id=bike.id)


def recount(desk, bike, place, *, found, steps):
    adjuster = parts_of(desk, bike).adjusters[place]
    desk.do("As found", keep_as_found(bike.id, adjuster.id, found), bike_id=bike.id)
    desk.do("Range", keep_range(bike.id, adjuster.id, steps), bike_id=bike.id)
    return adjuster


def set_to(desk, bike, adjuster, position):
    desk.do("Set", set_item(bike.id, Item.ADJUSTER, adjuster.id, position, "set_to"), bike_id=bike.id)


def test_after_a_service_no_place_of_that_unit_is_known_and_no_setup_stands(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    service(desk, bike)
    parts = parts_of(desk, bike)
    values = [parts.value(Item.ADJUSTER, one.id) for one in parts.adjusters]
    assert values[:2] == [None, None]
    assert values[2:] == [4.0, 7.0]
    assert desk.ask(setup_on_bike(bike.id)) is None
    recorded = desk.ask(sag_records(bike.id)).recorded
    assert recorded == {one.id for one in parts.adjusters[2:]}, "where the others stand is asked before they are opened"


def test_a_knob_left_open_for_sag_is_still_open_after_the_hardware_is_declared_new(desk):
    bike = a_counted_bike(desk)
    service(desk, bike)
    parts = parts_of(desk, bike)
    assert [parts.line(Item.ADJUSTER, one.id).how for one in parts.adjusters] == ["opened"] * 4
    assert parts.value(Item.ADJUSTER, parts.adjusters[0].id) is None


def test_clicks_of_a_setup_are_not_restored_on_other_hardware_but_all_else_is(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    service(desk, bike)
    for place, found in ((0, 2), (1, 3)):
        recount(desk, bike, place, found=found, steps=14)
    fork = parts_of(desk, bike).unit("front")
    desk.do("Drop", set_item(bike.id, Item.PRESSURE, fork.id, 400.0, "set_to"), bike_id=bike.id)
    steps = desk.ask(steps_to_setup(setup.id))
    assert [step.title for step in steps] == ["Fork: air pressure"]
    places = {step.subject_id: step.value for step in desk.ask(put_back(bike.id))}
    assert list(places.values()) == [2.0, 3.0], "back to where they were found, not to the old setup's clicks"


def test_the_same_number_of_clicks_on_other_hardware_is_not_the_same_setup(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    service(desk, bike)
    old = {place: (5.0, 6.0)[place] for place in (0, 1)}
    for place, position in old.items():
        set_to(desk, bike, recount(desk, bike, place, found=1, steps=14), position)
    assert desk.ask(setup_on_bike(bike.id)) is None
    again = a_baseline(desk, bike)
    values = desk.ask(ride_records(bike.id)).values
    changes = changes_between(values[setup.id], values[again.id])
    adjusters = [change for change in changes if change.item == Item.ADJUSTER]
    assert [(change.before, change.after) for change in adjusters] == [(None, None)] * 2
    assert free_changes(changes) >= 2
    said = changes_text(parts_of(desk, bike), values[setup.id], values[again.id], Units())
    assert "Fork: low-speed rebound: counted on other hardware, not compared" in said


def test_a_card_counts_from_open_by_the_count_its_setup_was_taken_under(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    recount(desk, bike, 1, found=6, steps=20)
    card = desk.ask(card_of(setup.id, desk.now(), None))
    line = next(one for one in card.sections[0].lines if one.label == "Low-speed rebound")
    assert (line.left, line.remark) == ("6 clicks from closed", "11 clicks from open")
    service(desk, bike)
    card = desk.ask(card_of(setup.id, desk.now(), None))
    line = next(one for one in card.sections[0].lines if one.label == "Low-speed rebound")
    assert (line.left, line.remark) == ("6 clicks from closed", "counted on earlier hardware: not to be set now")
    assert "Fork: low-speed rebound" not in [one.label for one in card.strip]


def test_a_recount_with_a_detent_less_keeps_the_runs_ridden_at_the_open_end(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    rebound = parts_of(desk, bike).adjusters[1]
    recount(desk, bike, 1, found=6, steps=6)
    desk.do("Back", set_item(bike.id, Item.ADJUSTER, rebound.id, 5.0, "set_to"), bike_id=bike.id)
    recount(desk, bike, 1, found=5, steps=5)
    set_to(desk, bike, rebound, 5.0)
    runs = next(one for one in knob_runs(desk.ask(ride_records(bike.id))) if one.key == rebound.id)
    assert [trial.position for trial in runs.trials] == [5]
    assert setup.number == 1


def test_runs_on_other_hardware_are_no_trials(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    a_run(desk, a_session(desk, bike), liking=5)
    service(desk, bike, "rear")
    for place, position in ((2, 4.0), (3, 7.0)):
        set_to(desk, bike, recount(desk, bike, place, found=1, steps=13), position)
    assert all(one.trials == () for one in knob_runs(desk.ask(ride_records(bike.id))))


def test_an_adjuster_taken_off_the_list_does_not_make_its_setups_unknown(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    compression, rebound = parts_of(desk, bike).adjusters[:2]
    desk.do("Remove", remove_adjuster(compression.id), bike_id=bike.id)
    assert desk.ask(setup_on_bike(bike.id)) == setup
    runs = next(one for one in knob_runs(desk.ask(ride_records(bike.id))) if one.key == rebound.id)
    assert len(runs.trials) == 1
    wanted = {(Item.ADJUSTER.value, rebound.id): 9.0}
    deed = change_settings(bike.id, setup.rider_id, wanted, session_id=session.id)
    assert not desk.do("One change", deed, bike_id=bike.id).is_confounded


def test_two_setups_on_the_same_earlier_hardware_are_compared_as_they_were_then(desk):
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike)
    rebound = parts_of(desk, bike).adjusters[1]
    wanted = {(Item.ADJUSTER.value, rebound.id): 9.0}
    second = desk.do("Set", change_settings(bike.id, first.rider_id, wanted), bike_id=bike.id)
    service(desk, bike)
    values = desk.ask(ride_records(bike.id)).values
    said = changes_text(parts_of(desk, bike), values[first.id], values[second.id], Units())
    assert said == "Fork: low-speed rebound 3 clicks out"
