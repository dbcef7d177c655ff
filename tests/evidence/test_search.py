"""The click search: bounds, symmetry, honesty about little data."""

from __future__ import annotations

import doctest

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.evidence import search as search_module
from workbench.evidence.search import ClickSearch, Trial
from workbench.evidence.search_words import Steps
from workbench.model.errors import InputError

FEW = settings(deadline=None, max_examples=40, derandomize=True)


@st.composite
def searches(draw, most_runs=7):
    """A search and a list of runs in its range."""
    range_clicks = draw(st.sampled_from([1, 2, 3, 5, 8, 13, 20, 60]))
    low = draw(st.integers(0, range_clicks))
    high = draw(st.integers(low, range_clicks))
    trial = st.builds(
        Trial,
        st.integers(0, range_clicks),
        st.none() | st.integers(1, 9),
        st.none() | st.integers(-2, 2),
        lap_s=st.none() | st.floats(50, 200),
        compared=st.none() | st.integers(-1, 1),
        day=st.integers(0, 1),
        warmup=st.booleans(),
        confounded=st.booleans(),
    )
    trials = sorted(draw(st.lists(trial, max_size=most_runs)), key=lambda one: one.day)
    return range_clicks, low, high, trials


def mirrored(range_clicks, trials):
    """The same rides on a knob counted from the other end."""
    return [
        Trial(
            range_clicks - one.position,
            one.liking,
            None if one.direction is None else -one.direction,
            lap_s=one.lap_s,
            compared=one.compared,
            day=one.day,
            warmup=one.warmup,
            confounded=one.confounded,
        )
        for one in trials
    ]


@FEW
@given(searches())
def test_a_proposal_stays_inside_the_band_and_says_where(case):
    range_clicks, low, high, trials = case
    proposal = ClickSearch(range_clicks, low=low, high=high).propose(trials)
    assert isinstance(proposal.position, int)
    assert low <= proposal.position <= high
    assert proposal.value >= 0
    assert proposal.settled == (proposal.value < 0.01)
    assert proposal.exhausted in (None, "closed", "open")
    assert f"{proposal.position} click" in proposal.reason
    assert "best" not in proposal.reason.lower()
    assert "optimal" not in proposal.reason.lower()


@FEW
@given(searches())
def test_an_estimate_is_ordered_and_inside_the_range(case):
    range_clicks, low, high, trials = case
    estimate = ClickSearch(range_clicks, low=low, high=high).estimate(trials)
    assert low <= estimate.as_good_low <= estimate.position <= estimate.as_good_high <= high
    assert 0 <= estimate.low <= estimate.position <= estimate.high <= range_clicks
    assert estimate.gain_low <= estimate.gain <= estimate.gain_high
    assert sum(estimate.trust) == pytest.approx(1.0)


@FEW
@given(searches())
def test_the_same_runs_give_the_same_answer(case):
    range_clicks, low, high, trials = case
    one, other = (ClickSearch(range_clicks, low=low, high=high) for _ in range(2))
    assert one.propose(trials) == other.propose(trials)
    assert one.estimate(trials) == other.estimate(trials)


@FEW
@given(searches())
def test_counting_from_the_other_end_mirrors_the_estimate(case):
    range_clicks, low, high, trials = case
    one = ClickSearch(range_clicks, low=low, high=high).estimate(trials)
    other = ClickSearch(range_clicks, low=range_clicks - high, high=range_clicks - low)
    seen = other.estimate(mirrored(range_clicks, trials))
    assert seen.position == pytest.approx(range_clicks - one.position, abs=1e-6)
    assert seen.low == pytest.approx(range_clicks - one.high, abs=1e-6)
    assert seen.as_good_low == pytest.approx(range_clicks - one.as_good_high)
    assert seen.gain == pytest.approx(one.gain, abs=1e-6)
    assert seen.trust == pytest.approx(one.trust, abs=1e-6)


def test_counting_from_the_other_end_mirrors_the_proposals():
    runs = [Trial(10, 5, -2), Trial(14, 7, -1), Trial(17, 6, 1), Trial(15, 8, 0)]
    for count in range(1, len(runs) + 1):
        proposal = ClickSearch(20).propose(runs[:count])
        seen = ClickSearch(20).propose(mirrored(20, runs[:count]))
        assert seen.position == 20 - proposal.position
        assert seen.value == pytest.approx(proposal.value, abs=1e-9)


def test_warm_ups_and_confounded_runs_say_nothing_about_the_position():
    useless = [
        Trial(2, 9, 0, warmup=True),
        Trial(2, 9, 0, confounded=True),
    ]
    nothing = ClickSearch(20).estimate([])
    for trial in useless:
        told = ClickSearch(20).estimate([trial])
        assert told.position == nothing.position
        assert told.low == pytest.approx(nothing.low)
        assert told.high == pytest.approx(nothing.high)


@pytest.mark.parametrize(
    ("range_clicks", "least", "most"), [(8, 2, 2), (12, 2, 3), (20, 4, 5), (24, 5, 6), (60, 12, 15)]
)
def test_the_first_step_is_a_fifth_to_a_quarter_of_the_range(range_clicks, least, most):
    search = ClickSearch(range_clicks)
    start = search.propose([]).position
    for direction, sign in ((-2, 1), (2, -1)):
        step = search.propose([Trial(start, 5, direction)]).position - start
        assert least <= step * sign <= most


@pytest.mark.parametrize("range_clicks", [1, 2, 3, 4, 5])
def test_short_ranges_are_tried_one_click_at_a_time(range_clicks):
    search = ClickSearch(range_clicks)
    trials = []
    for _ in range(6):
        proposal = search.propose(trials)
        assert not trials or proposal.settled or abs(proposal.position - trials[-1].position) <= 1
        trials.append(Trial(proposal.position, 5 + proposal.position // 2, -1))


@pytest.mark.parametrize("range_clicks", [3, 20, 60])
def test_a_rider_who_wants_more_than_fully_open_hears_that_the_range_is_used_up(range_clicks):
    search = ClickSearch(range_clicks)
    trials = []
    for _ in range(8):
        proposal = search.propose(trials)
        if proposal.exhausted:
            break
        trials.append(Trial(proposal.position, min(9, 4 + round(3 * proposal.position / range_clicks)), -2))
    assert proposal.exhausted == "open"
    assert proposal.position == range_clicks
    assert "used up" in proposal.reason


def test_a_rider_content_in_the_middle_never_hears_that_the_range_is_used_up():
    search = ClickSearch(20)
    trials = []
    for _ in range(8):
        proposal = search.propose(trials)
        assert proposal.exhausted is None
        away = proposal.position - 12
        trials.append(Trial(proposal.position, 8 - round(abs(away) / 3), max(-2, min(2, round(away / 3)))))
    estimate = search.estimate(trials)
    assert abs(estimate.position - 12) <= 2
    assert estimate.low <= 12 <= estimate.high


def test_a_search_settles_not_before_the_third_run():
    search = ClickSearch(20)
    trials = []
    settled_at = None
    for count in range(15):
        proposal = search.propose(trials)
        if proposal.settled:
            settled_at = count
            break
        away = proposal.position - 12
        trials.append(Trial(proposal.position, 8 - round(abs(away) / 2), max(-2, min(2, round(away / 3)))))
    assert settled_at is not None
    assert settled_at >= 3


def test_a_rider_who_feels_nothing_ends_settled_without_a_claimed_gain():
    search = ClickSearch(20)
    trials = []
    while not (proposal := search.propose(trials)).settled:
        assert len(trials) < 15
        trials.append(Trial(proposal.position, 7, 0))
    assert search.estimate(trials).gain_low <= 0


def test_reversed_directions_are_seen_through():
    trials = []
    search = ClickSearch(20)
    for _ in range(8):
        position = search.propose(trials).position
        away = position - 5
        trials.append(Trial(position, max(1, 8 - round(abs(away) / 2)), -max(-2, min(2, round(away / 3)))))
    estimate = search.estimate(trials)
    assert estimate.trust.reversed > 0.5
    assert abs(estimate.position - 5) <= 2


def test_six_equal_answers_at_one_click_are_not_six_proofs():
    one = ClickSearch(20).estimate([Trial(10, 7, 0)])
    six = ClickSearch(20).estimate([Trial(10, 7, 0)] * 6)
    assert six.high - six.low > 0.5 * (one.high - one.low)


def test_one_spoilt_run_does_not_move_the_choice_far():
    def rated(position):
        return 8 - round(abs(position - 12) / 2)

    runs = [Trial(position, rated(position)) for position in (10, 15, 5, 12, 18, 13, 9)]
    spoilt = [*runs, Trial(12, 2)]
    search = ClickSearch(20)
    assert abs(search.estimate(spoilt).position - search.estimate(runs).position) <= 2


def test_better_and_worse_alone_lead_the_right_way():
    search = ClickSearch(20)
    better = search.estimate([Trial(10), Trial(15, compared=1), Trial(18, compared=-1)])
    worse = search.estimate([Trial(10), Trial(5, compared=1), Trial(2, compared=-1)])
    assert better.position > 10 > worse.position


def test_lap_times_alone_lead_the_right_way():
    search = ClickSearch(20)
    laps = {4: 124.0, 8: 122.0, 12: 120.0, 16: 119.0}
    estimate = search.estimate([Trial(position, lap_s=lap) for position, lap in laps.items()])
    assert estimate.position > 10
    in_minutes = search.estimate([Trial(position, lap_s=lap / 60) for position, lap in laps.items()])
    assert in_minutes.position == estimate.position
    assert in_minutes.low == pytest.approx(estimate.low)


def test_after_warm_ups_the_same_position_is_ridden_for_a_rating():
    proposal = ClickSearch(20).propose([Trial(7, 6, warmup=True), Trial(7, 6, warmup=True)])
    assert proposal.position == 7
    assert not proposal.settled


def test_a_band_of_one_position_is_settled_there():
    proposal = ClickSearch(20, low=6, high=6).propose([Trial(6, 5), Trial(6, 6), Trial(6, 5)])
    assert proposal.position == 6
    assert proposal.settled


def test_another_day_may_be_kinder_without_moving_the_choice():
    first = [Trial(10, 7), Trial(15, 5), Trial(5, 5), Trial(8, 7)]
    kinder = [Trial(one.position, one.liking + 2, day=1) for one in first[1:3]]
    search = ClickSearch(20)
    assert abs(search.estimate([*first, *kinder]).position - search.estimate(first).position) <= 2


def test_a_rider_whose_effects_lag_one_run_is_still_found_out():
    search = ClickSearch(20)
    trials = []
    for _ in range(8):
        position = search.propose(trials).position
        felt = 0.4 * position + 0.6 * (trials[-1].position if trials else position)
        away = felt - 14
        trials.append(Trial(position, max(1, 8 - round(abs(away) / 2)), max(-2, min(2, round(away / 3)))))
    assert abs(search.estimate(trials).position - 14) <= 2


def quarters(steps):
    return f"{steps / 4:g} turns"


def names(position):
    return ("open", "middle", "firm")[position]


def test_an_adjuster_counted_in_turns_is_spoken_of_in_turns():
    search = ClickSearch(20, steps=Steps(quarters, quarters))
    assert "2.5 turns from closed" in search.propose([]).reason
    reason = search.propose([Trial(10, 6, direction=-2)]).reason
    assert "3.75 turns from closed, 1.25 turns further open: you called 2.5 turns far too closed" in reason
    assert "click" not in reason


def test_positions_with_names_are_spoken_of_by_them():
    search = ClickSearch(2, steps=Steps(names, names, is_named=True))
    reasons = [search.propose(trials).reason for trials in ([], [Trial(1, 6, direction=-2)], [Trial(2, 4)])]
    assert reasons[0].startswith("Start at middle,")
    assert not any("click" in reason or "from closed" in reason for reason in reasons)


def test_the_reason_for_a_first_step_repeats_what_the_rider_said():
    reason = ClickSearch(20).propose([Trial(10, 5, -2)]).reason
    assert "15 clicks from closed" in reason
    assert "you called 10 far too closed" in reason


def test_on_a_short_range_a_far_aim_is_neared_click_by_click():
    proposal = ClickSearch(5).propose([Trial(2, 5, -2)])
    assert proposal.position == 3
    assert "3 clicks from closed" in proposal.reason


def test_the_examples_hold():
    assert doctest.testmod(search_module).failed == 0
    assert doctest.testmod(search_module).attempted > 0


def test_fresh_searches_start_in_the_middle_of_the_band():
    assert ClickSearch(20).propose([]).position == 10
    assert ClickSearch(20, low=2, high=8).propose([]).position == 5


@pytest.mark.parametrize(
    "make",
    [
        lambda: ClickSearch(0),
        lambda: ClickSearch(-4),
        lambda: ClickSearch(12.5),
        lambda: ClickSearch(20, low=12, high=8),
        lambda: ClickSearch(20, high=21),
        lambda: Trial(-1),
        lambda: Trial(3, 10),
        lambda: Trial(3, float("nan")),
        lambda: Trial(3, 5, 3),
        lambda: Trial(3, 5, compared=2),
        lambda: Trial(3, lap_s=-4.0),
        lambda: ClickSearch(10).propose([Trial(11, 5)]),
    ],
)
def test_impossible_input_is_named(make):
    with pytest.raises(InputError, match="allowed is"):
        make()
