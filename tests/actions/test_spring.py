"""Leverage surveys and mountings: kept, said and moved, each one step there and back."""

from __future__ import annotations

import pytest

from tests.fixtures import a_counted_bike, check_there_and_back
from workbench.actions.garage import start_generation
from workbench.actions.parts import bike_parts
from workbench.actions.spring import keep_survey, move_mounting, spring_records, state_mounting
from workbench.model.unit import LeverageSurvey, Unit, mountings, survey_in_use

PAIRS = ((20.0, 55.0), (40.0, 106.0), (60.0, 152.0))


def shock_of(desk, bike):
    return desk.ask(bike_parts(bike.id)).unit("rear")


def test_a_survey_by_length_keeps_the_shocks_length_too(desk):
    bike = a_counted_bike(desk)
    shock = shock_of(desk, bike)
    deed = keep_survey(bike.id, shock.id, "long", PAIRS, eye_to_eye_mm=210.0)
    check_there_and_back(desk, "Keep survey", deed, bike_id=bike.id)
    assert shock_of(desk, bike).eye_to_eye_mm == 210.0


def test_saying_which_mounting_the_shock_is_in_starts_nothing_anew(desk):
    bike = a_counted_bike(desk)
    shock = shock_of(desk, bike)
    before = desk.ask(bike_parts(bike.id)).generation(shock.id)
    check_there_and_back(desk, "Say", state_mounting(shock.id, "long"), bike_id=bike.id)
    assert shock_of(desk, bike).mounting == "long"
    assert desk.ask(bike_parts(bike.id)).generation(shock.id) == before


def test_moving_the_shock_starts_new_hardware_and_no_place_is_known_any_more(desk):
    bike = a_counted_bike(desk)
    shock = shock_of(desk, bike)
    check_there_and_back(desk, "Move", move_mounting(shock.id, "short"), bike_id=bike.id)
    parts = desk.ask(bike_parts(bike.id))
    generation = parts.generation(shock.id)
    assert (generation.number, generation.reason, generation.note) == (2, "mount", "short")
    assert all(parts.range_of(one.id) is None for one in parts.adjusters_of(shock.id))


def test_what_is_reckoned_with_is_the_newest_survey_of_the_mounting_in_use(desk):
    bike = a_counted_bike(desk)
    shock = shock_of(desk, bike)
    for mounting in ("long", "short", "Long"):
        desk.do("Keep", keep_survey(bike.id, shock.id, mounting, PAIRS), bike_id=bike.id)
    surveys = desk.ask(spring_records(bike.id)).surveys
    assert [one.mounting for one in mountings(surveys, shock)] == ["Long", "short"]
    assert survey_in_use(surveys, shock).mounting == "Long"
    desk.do("Say", state_mounting(shock.id, "short"), bike_id=bike.id)
    assert survey_in_use(surveys, shock_of(desk, bike)).mounting == "short"
    desk.do("Say", state_mounting(shock.id, "middle"), bike_id=bike.id)
    assert survey_in_use(surveys, shock_of(desk, bike)) is None


def test_surveys_of_another_shock_are_not_mountings_of_this_one():
    other = LeverageSurvey("s", "b", "another", "long")
    assert mountings((other,), Unit("u", "b", "rear", "shock")) == ()


@pytest.mark.parametrize(("reason", "known"), [("mount", None), ("chip", None), ("service", "long")])
def test_after_a_move_noted_in_the_garage_the_mounting_has_to_be_said_anew(desk, reason, known):
    bike = a_counted_bike(desk)
    shock = shock_of(desk, bike)
    desk.do("Say", state_mounting(shock.id, "long"), bike_id=bike.id)
    check_there_and_back(desk, "Renew", start_generation(shock.id, reason), bike_id=bike.id)
    assert shock_of(desk, bike).mounting == known
