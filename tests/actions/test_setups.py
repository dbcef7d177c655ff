"""Setups: numbered per bike, written whole, reached by steps."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, check_there_and_back, everything, make_desk
from workbench.actions.baseline import baseline_records
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.setups import (
    keep_setup,
    name_setup,
    setup_values,
    setups_of,
    steps_to_setup,
    take_all_steps,
    take_step,
)
from workbench.model.errors import InputError
from workbench.model.setting import Item, SetupValue


def proposed(desk, bike):
    return {(one.item, one.subject_id): one.value for one in desk.ask(baseline_records(bike.id)).proposed}


def keep(desk, bike, values, **more):
    rider = desk.ask(bike_parts(bike.id)).riders[0]
    return check_there_and_back(
        desk, "Keep setup", keep_setup(bike.id, rider.id, values, "baseline", **more), bike_id=bike.id
    )


def test_a_baseline_is_kept_whole_and_its_entry_closed_with_it(desk):
    bike = a_counted_bike(desk)
    draft = desk.keep_draft("baseline", "{}", bike_id=bike.id)
    values = proposed(desk, bike)
    setup = keep(desk, bike, values, draft_id=draft.id)
    assert setup.number == 1
    assert desk.ask(setup_values(setup.id)) == values
    assert desk.open_draft("baseline", bike_id=bike.id) is None


def test_numbers_count_per_bike(desk):
    first, second = a_counted_bike(desk), a_counted_bike(desk, name="Fell 130", rider="A. Lindqvist")
    for bike, number in ((first, 1), (first, 2), (second, 1), (first, 3)):
        assert keep(desk, bike, proposed(desk, bike)).number == number
    assert [setup.number for setup in desk.ask(setups_of(first.id))] == [1, 2, 3]


def test_a_setup_keeps_the_count_its_positions_were_taken_under(desk):
    bike = a_counted_bike(desk)
    setup = keep(desk, bike, proposed(desk, bike))
    parts = desk.ask(bike_parts(bike.id))
    kept = desk.ask(lambda reader: reader.find(SetupValue, setup_id=setup.id))
    ranges = {one.subject_id: one.range_id for one in kept if one.item == Item.ADJUSTER}
    assert ranges == {one.id: parts.range_of(one.id).id for one in parts.adjusters}


def test_every_step_taken_shortens_the_list_until_the_bike_stands_as_the_setup_says(desk):
    bike = a_counted_bike(desk)
    setup = keep(desk, bike, proposed(desk, bike))
    left = desk.ask(steps_to_setup(setup.id))
    assert len(left) > 3
    for done in range(len(left)):
        steps = desk.ask(steps_to_setup(setup.id))
        assert steps == left[done:]
        check_there_and_back(desk, "Set", take_step(bike.id, steps[0]), bike_id=bike.id)
    assert desk.ask(steps_to_setup(setup.id)) == ()


def test_all_steps_at_once_are_one_deed(desk):
    bike = a_counted_bike(desk)
    setup = keep(desk, bike, proposed(desk, bike))
    steps = desk.ask(steps_to_setup(setup.id))
    check_there_and_back(desk, "Set all", take_all_steps(bike.id, steps), bike_id=bike.id)
    assert desk.ask(steps_to_setup(setup.id)) == ()
    desk.undo()
    assert desk.ask(steps_to_setup(setup.id)) == steps


def test_a_setup_is_restored_by_its_step_list_even_from_a_place_not_known(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    rebound = desk.ask(bike_parts(bike.id)).adjusters[1]
    lost = set_item(bike.id, Item.ADJUSTER, rebound.id, None, "unknown")
    desk.do("Knocked", lost, bike_id=bike.id)
    (step,) = desk.ask(steps_to_setup(setup.id))
    assert step.text == "fully closed, then open 6 clicks"
    assert step.relative == "where it stands now is not known"
    desk.do("Set", take_step(bike.id, step), bike_id=bike.id)
    assert desk.ask(steps_to_setup(setup.id)) == ()


def test_a_name_is_cleaned_and_a_name_too_long_is_refused(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    check_there_and_back(desk, "Name", name_setup(setup.id, "  wet \u202e<b> "), bike_id=bike.id)
    assert desk.ask(setups_of(bike.id))[0].name == "wet <b>"
    before = everything(desk)
    with pytest.raises(InputError, match="Name of the setup"):
        desk.do("Name", name_setup(setup.id, "x" * 10_000), bike_id=bike.id)
    assert everything(desk) == before


def test_a_bike_without_counts_can_still_have_a_setup_of_what_is_known(desk):
    bike = a_bike(desk)
    setup = keep(desk, bike, proposed(desk, bike))
    values = desk.ask(setup_values(setup.id))
    assert {key[0] for key, value in values.items() if value is not None} == {Item.SPACERS}


def test_a_pressure_of_a_setup_knows_the_temperature_it_was_set_at(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        parts = desk.ask(bike_parts(bike.id))
        fork = parts.unit("front").id
        desk.do("Set", set_item(bike.id, Item.PRESSURE, fork, 551.0, "set_to", temperature_c=4.0))
        values = {(Item.PRESSURE.value, fork): 551.0, (Item.SPACERS.value, fork): 1.0}
        setup = desk.do("Keep", keep_setup(bike.id, parts.riders[0].id, values, "baseline"))
        kept = {
            one.item: one.temperature_c for one in desk.ask(lambda reader: reader.find(SetupValue, setup_id=setup.id))
        }
        assert kept == {"pressure": 4.0, "spacers": None}
