"""Counting order, what a count allows, and what it forbids."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.bike import Bike, StationState
from workbench.model.counting import (
    check_counting_fact,
    check_steps,
    next_to_count,
    position_names,
    settled_range,
    skip_key,
    uncounted,
)
from workbench.model.errors import InputError
from workbench.model.job import JobRecords, job_marks
from workbench.model.parts import BikeParts
from workbench.model.unit import Unit

CLICKS = Adjuster("a", "fork", "rebound")
TURNS = Adjuster("t", "fork", "rebound", counting="turns")
LEVER = Adjuster("l", "fork", "lever", counting="positions", position_names="firm|middle|open")


def bike_with(*counted: str) -> BikeParts:
    ids = ("a", "b", "c")
    return BikeParts(
        bike=Bike("bike", "Larch 150"),
        riders=(),
        units=(Unit("fork", "bike", "front", "fork"),),
        generations=(),
        adjusters=tuple(Adjuster(key, "fork", "rebound", counting_order=n) for n, key in enumerate(ids)),
        tyres=(),
        ranges=tuple(RangeCount(f"count {key}", key, None, 10, 5, "") for key in counted),
        now=(),
    )


def test_counting_goes_on_with_the_next_in_order_and_comes_back_for_the_ones_left():
    assert next_to_count(bike_with()).id == "a"
    assert next_to_count(bike_with("a"), after="a").id == "b"
    assert next_to_count(bike_with("b"), after="b").id == "c"
    assert next_to_count(bike_with("b", "c"), after="c").id == "a"
    assert next_to_count(bike_with("a", "b", "c"), after="c") is None


def test_one_passed_over_is_not_asked_for_again():
    assert next_to_count(bike_with("a"), {"b"}, after="a").id == "c"
    assert [one.id for one in uncounted(bike_with("c"), {"a"})] == ["b"]


def test_the_station_is_done_when_the_rest_is_passed_over():
    def mark(parts, skips):
        marks = job_marks(JobRecords(parts, skips=skips))
        return next((one.state, one.why) for one in marks if one.station == "adjusters")

    assert mark(bike_with("a", "b"), {})[1] == "2 of 3 counted"
    assert mark(bike_with("a", "b"), {skip_key("c"): "Knob missing or stuck"}) == (StationState.DONE, "")


def test_a_range_is_what_was_counted_outwards():
    assert settled_range(CLICKS, 6, 13) == (13, "")
    assert settled_range(CLICKS, None, 13) == (13, "")
    assert settled_range(CLICKS, 13, 13) == (13, "")


def test_one_detent_less_outwards_is_a_note_and_two_are_refused():
    assert settled_range(CLICKS, 13, 12) == (
        13,
        "13 clicks in, 12 clicks out: one detent less at the open end is normal.",
    )
    with pytest.raises(InputError, match="13 clicks in, but only 11 clicks out"):
        settled_range(CLICKS, 13, 11)
    with pytest.raises(InputError, match="1 1/2 turns in, but only 1/2 turn out"):
        settled_range(TURNS, 6, 2)


def test_a_range_of_nothing_is_refused():
    with pytest.raises(InputError, match="pass it over"):
        settled_range(CLICKS, 0, 0)


@given(st.none() | st.integers(0, 40), st.integers(1, 40))
def test_a_settled_range_always_holds_the_place_it_was_found_at(as_found, counted_out):
    try:
        steps, note = settled_range(CLICKS, as_found, counted_out)
    except InputError:
        assert as_found is not None
        assert as_found >= counted_out + 2
        return
    assert steps - counted_out in (0, 1)
    assert bool(note) == (steps != counted_out)
    assert as_found is None or as_found <= steps


@pytest.mark.parametrize("steps", [-1, 201, 10**9])
def test_no_knob_has_that_many_steps(steps):
    with pytest.raises(InputError, match="0 to 200"):
        check_steps(steps)


def test_positions_are_named_closed_first():
    assert position_names(LEVER) == ("firm", "middle", "open")
    assert position_names(CLICKS) == ()


def test_a_count_once_made_keeps_its_meaning():
    check_counting_fact(CLICKS, "counting", "turns", is_counted=False)
    check_counting_fact(CLICKS, "counting", "clicks", is_counted=True)
    check_counting_fact(LEVER, "position_names", "lock|trail|descend", is_counted=True)
    with pytest.raises(InputError, match="add it anew"):
        check_counting_fact(CLICKS, "counting", "turns", is_counted=True)
    with pytest.raises(InputError, match="3 names"):
        check_counting_fact(LEVER, "position_names", "firm|open", is_counted=True)
