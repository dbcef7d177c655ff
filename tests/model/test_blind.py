"""What a blind test is: its letters, its pairs, and what may not be ridden blind."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.fixtures import a_baseline, a_counted_bike, make_desk
from workbench.actions.parts import bike_parts
from workbench.actions.setups import setup_values
from workbench.model.blind import is_concealed, labels_text, letter_at, pairs_of, setups_of, unfit, valid
from workbench.model.ride import BlindPlan, Run
from workbench.model.setting import Item

PLAN = BlindPlan("p", "s", labels_text("one", "two"), "ABBA", 7, "", "2031-05-14T09:00:00+00:00")


def runs(*set_aside):
    return tuple(
        Run(str(place), "s", place + 1, "one", "", "", is_set_aside=aside) for place, aside in enumerate(set_aside)
    )


def test_the_letters_of_a_plan_are_read_as_written():
    assert setups_of(PLAN) == {"A": "one", "B": "two"}
    assert [letter_at(PLAN, place) for place in (0, 1, 4)] == ["A", "B", ""]


def test_a_plan_is_concealed_until_it_is_revealed():
    assert is_concealed(PLAN)
    assert not is_concealed(replace(PLAN, revealed_at="2031-05-14T10:00:00+00:00"))
    assert not is_concealed(None)


def test_a_run_set_aside_takes_no_place_and_an_odd_run_belongs_to_no_pair():
    ridden = runs(False, True, False, False)
    assert [run.number for run in valid(ridden)] == [1, 3, 4]
    assert [(one.number, other.number) for one, other in pairs_of(ridden)] == [(1, 3)]


def test_what_cannot_be_told_apart_or_is_not_known_is_unfit(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        values = desk.ask(setup_values(a_baseline(desk, bike).id))
        parts = desk.ask(bike_parts(bike.id))
    key = (Item.ADJUSTER.value, parts.adjusters[1].id)
    fork = (Item.PRESSURE.value, parts.units[0].id)
    assert unfit(parts, values, {**values, key: 9.0}) == ""
    assert "the same" in unfit(parts, values, values)
    assert "differ in 2" in unfit(parts, values, {**values, key: 9.0, fork: 560.0})
    assert "not known" in unfit(parts, values, {**values, key: None})
    assert "never ridden blind" in unfit(parts, {**values, key: 0.0}, {**values, key: 3.0})
    assert unfit(parts, values, {**values, fork: 560.0}) == "", "a spring may be tested as well"
    assert "15 % apart" in unfit(parts, {**values, fork: 500.0}, {**values, fork: 580.0})


def test_an_adjuster_nobody_counted_is_unfit(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        parts = replace(desk.ask(bike_parts(bike.id)), ranges=())
    key = (Item.ADJUSTER.value, parts.adjusters[1].id)
    assert "not been counted" in unfit(parts, {key: 4.0}, {key: 6.0})


@pytest.mark.parametrize(
    ("kind", "one", "other", "refused"),
    [
        ("lever", 1, 2, ""),
        ("compression", 2, 1, ""),
        ("lever", 0, 1, "firmest position of a lever"),
        ("lever", 2, 0, "firmest position of a lever"),
        ("rebound", 1, 2, "Fully closed and fully open"),
    ],
)
def test_of_a_lever_only_the_firmest_position_is_never_ridden_blind(tmp_path, kind, one, other, refused):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        parts = desk.ask(bike_parts(bike.id))
    found = parts.adjusters[1]
    names = {"counting": "positions", "position_names": "firm|middle|open"}
    lever = replace(found, kind=kind, **names)
    ranges = tuple(replace(count, steps=2) if count.adjuster_id == found.id else count for count in parts.ranges)
    others = tuple(lever if adjuster.id == found.id else adjuster for adjuster in parts.adjusters)
    key = (Item.ADJUSTER.value, found.id)
    said = unfit(replace(parts, adjusters=others, ranges=ranges), {key: float(one)}, {key: float(other)})
    assert said.startswith(f"The {refused}" if refused.startswith("firm") else refused)
    assert bool(said) == bool(refused)
