"""Positions are counted from closed, whatever the maker prints."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.adjuster import (
    Adjuster,
    adjuster_title,
    adjuster_words,
    chart_from_closed,
    check_position,
    from_open,
    recount_note,
    restore_text,
    steps_text,
)
from workbench.model.errors import InputError

REBOUND = Adjuster("a", "fork", "rebound", "low")
LEVER = replace(REBOUND, kind="lever", speed="", counting="positions", position_names="firm| middle |open|")
TURNS = replace(REBOUND, counting="turns")


def test_the_makers_advice_from_open_waits_for_the_count_and_never_rewrites_old_records():
    printed = replace(REBOUND, chart_from="open", chart_steps=7)
    assert chart_from_closed(printed, None) is None
    assert chart_from_closed(printed, 13) == 6
    assert chart_from_closed(printed, 14) == 7
    assert chart_from_closed(replace(printed, chart_from="closed"), None) == 7
    assert chart_from_closed(REBOUND, 13) is None


def test_advice_from_open_beyond_the_range_is_refused():
    with pytest.raises(InputError, match=r"0 \(closed\) to 5 \(open\)"):
        chart_from_closed(replace(REBOUND, chart_from="open", chart_steps=7), 5)


def test_one_detent_more_is_a_note_and_no_error():
    assert recount_note(13, 13) == ""
    assert "normal" in recount_note(13, 14)
    assert "Count once more" in recount_note(13, 16)


@given(st.integers(0, 60), st.data())
def test_from_open_and_back_is_where_it_was(steps, data):
    position = data.draw(st.integers(0, steps))
    assert from_open(from_open(position, steps), steps) == position
    assert check_position(position, steps) == position


@pytest.mark.parametrize("position", [-1, 14])
def test_a_position_outside_the_range_is_refused(position):
    with pytest.raises(InputError):
        from_open(position, 13)


@pytest.mark.parametrize(
    ("adjuster", "steps", "said"),
    [
        (REBOUND, 0, "0 clicks"),
        (REBOUND, 1, "1 click"),
        (REBOUND, 6, "6 clicks"),
        (TURNS, 1, "1/4 turn"),
        (TURNS, 4, "1 turn"),
        (TURNS, 6, "1 1/2 turns"),
        (TURNS, 0, "0 turns"),
        (TURNS, -3, "-3/4 turn"),
        (LEVER, 1, "middle"),
        (LEVER, 7, "position 7"),
    ],
)
def test_steps_are_said_in_the_adjusters_own_counting(adjuster, steps, said):
    assert steps_text(adjuster, steps) == said


def test_a_place_is_restored_from_closed_without_trusting_where_the_knob_stands():
    assert restore_text(REBOUND, 6) == "fully closed, then open 6 clicks"
    assert restore_text(REBOUND, 0) == "fully closed"
    assert restore_text(LEVER, 2) == "set to open"


def test_an_adjuster_is_called_what_it_adjusts_until_it_has_a_name_of_its_own():
    assert adjuster_title(REBOUND) == "Low-speed rebound"
    assert adjuster_words(REBOUND) == "low-speed rebound"
    assert adjuster_words(replace(REBOUND, name="R2 <b>")) == "R2 <b>"
    assert adjuster_title(replace(REBOUND, speed="unknown")) == "Rebound"
