"""Adjusters that gate or drag one another, push tests, and the key of a foot switch."""

from __future__ import annotations

import pytest

from tests.fixtures import a_counted_bike, check_there_and_back
from tests.viewmodels.sheets import shown
from workbench.actions.adjusters import depend_on, keep_as_found, keep_range, say_push, wait_for
from workbench.actions.garage import NewBike, add_adjuster, add_bike
from workbench.actions.parts import bike_parts
from workbench.model.counting import counting_sequence, next_to_count
from workbench.model.errors import InputError
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_list import NO_EFFECT


@pytest.fixture
def bike(desk):
    return desk.do("Add", add_bike(NewBike("Larch", layout="hardtail")))


def adjusters(desk, bike):
    return desk.ask(bike_parts(bike.id)).adjusters


def test_what_another_depends_on_is_counted_first(desk, bike):
    compression, rebound = adjusters(desk, bike)
    desk.do("Wait", wait_for(compression.id, rebound.id), bike_id=bike.id)
    parts = desk.ask(bike_parts(bike.id))
    assert [one.id for one in counting_sequence(parts)] == [rebound.id, compression.id]
    assert next_to_count(parts).id == rebound.id


def test_two_that_depend_on_each_other_are_taken_as_they_stand(desk, bike):
    compression, rebound = adjusters(desk, bike)
    desk.do("Wait", wait_for(compression.id, rebound.id), bike_id=bike.id)
    desk.do("Wait", wait_for(rebound.id, compression.id), bike_id=bike.id)
    assert {one.id for one in counting_sequence(desk.ask(bike_parts(bike.id)))} == {compression.id, rebound.id}


def test_where_the_other_one_stood_is_said_while_counting_and_kept_beside_the_count(desk, bike):
    compression, rebound = adjusters(desk, bike)
    desk.do("Wait", wait_for(compression.id, rebound.id), bike_id=bike.id)
    check_there_and_back(desk, "At 3", depend_on(compression.id, "gates", 3), bike_id=bike.id)
    sheet, _ = shown(AdjustersViewModel, desk, bike.id)
    sheet.count(compression.id)
    assert "Have fork low-speed rebound 3 clicks from closed meanwhile." in sheet.state.count.notes
    desk.do("Found", keep_as_found(bike.id, compression.id, 4), bike_id=bike.id)
    count = desk.do("Range", keep_range(bike.id, compression.id, 11), bike_id=bike.id)
    assert count.note == "Counted with low-speed rebound 3 clicks from closed."
    desk.do("Drags", depend_on(compression.id, "drags", None), bike_id=bike.id)
    assert any("takes fork low-speed rebound along" in note for note in sheet.state.count.notes)


def test_a_push_test_without_a_difference_is_a_damper_fault_in_the_list(desk):
    bike = a_counted_bike(desk)
    sheet, _ = shown(AdjustersViewModel, desk, bike.id)
    first = adjusters(desk, bike)[0]
    sheet.open_facts(first.id)
    assert sheet.edit(first.id, "push_felt", "same")
    assert (sheet.state.groups[0].rows[0].note, sheet.state.groups[0].rows[0].is_fault) == (NO_EFFECT, True)
    sheet.edit(first.id, "push_felt", "differs")
    assert not sheet.state.groups[0].rows[0].is_fault
    with pytest.raises(InputError):
        say_push("any", "perhaps")


def test_a_push_test_said_while_counting_is_kept_with_the_range(desk, bike):
    compression = adjusters(desk, bike)[0]
    sheet, _ = shown(AdjustersViewModel, desk, bike.id)
    sheet.count(compression.id)
    sheet.set_count(4)
    sheet.keep_as_found()
    assert sheet.state.count.asks_push
    sheet.set_count(12)
    sheet.set_push("same")
    assert sheet.state.count.push == "same"
    sheet.keep_range()
    assert desk.ask(bike_parts(bike.id)).range_of(compression.id).push_felt == "same"


def test_an_end_stroke_device_is_not_judged_by_a_push(desk, bike):
    fork = desk.ask(bike_parts(bike.id)).units[0]
    device = desk.do("Add", add_adjuster(fork.id, "end_stroke", ""), bike_id=bike.id)
    desk.do("Found", keep_as_found(bike.id, device.id, 2), bike_id=bike.id)
    sheet, _ = shown(AdjustersViewModel, desk, bike.id)
    sheet.count(device.id)
    assert not sheet.state.count.asks_push
    assert any("near the end of the travel" in note for note in sheet.state.count.notes)


def test_the_key_of_a_foot_switch_is_remembered(desk, bike):
    sheet, _ = shown(AdjustersViewModel, desk, bike.id)
    sheet.count(adjusters(desk, bike)[0].id)
    assert sheet.state.count.foot_key == 0
    sheet.set_foot_key(0x01000017)
    again, _ = shown(AdjustersViewModel, desk, bike.id)
    again.count(adjusters(desk, bike)[0].id)
    assert again.state.count.foot_key == 0x01000017
    again.set_foot_key(0)
    assert again.state.count.foot_key == 0
