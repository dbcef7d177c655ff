"""Blind trials: exact probabilities and orders that can be drawn again."""

from __future__ import annotations

import math
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.evidence.blind import (
    arrangements,
    block_orders,
    choice_p,
    draw_order,
    least_p,
    needed_correct,
    plan_digest,
    randomisation_p,
)
from workbench.model.errors import InputError, NoAnswer, NotEnoughData


def test_no_trials_show_nothing():
    assert choice_p(0, 0) == 1.0
    assert choice_p(0, 0, two_sided=True) == 1.0


@given(st.integers(1, 60), st.data())
def test_more_right_answers_are_less_likely_by_guessing(trials, data):
    right = data.draw(st.integers(1, trials))
    assert choice_p(right, trials) <= choice_p(right - 1, trials)
    assert 0 < choice_p(right, trials, chance=1 / 3) <= choice_p(right, trials) + 1e-12 <= 1 + 1e-12


@given(st.integers(1, 40), st.data())
def test_two_sided_does_not_mind_which_side_won(trials, data):
    right = data.draw(st.integers(0, trials))
    one, other = choice_p(right, trials, two_sided=True), choice_p(trials - right, trials, two_sided=True)
    assert one == pytest.approx(other)
    assert one == pytest.approx(min(1.0, 2 * choice_p(max(right, trials - right), trials)))


def test_a_very_long_series_still_adds_up():
    assert choice_p(0, 5000) == pytest.approx(1.0)
    assert choice_p(2500, 5000) == pytest.approx(0.5056, abs=1e-4)


@pytest.mark.parametrize(
    ("right", "trials", "chance"),
    [(3, 2, 0.5), (-1, 2, 0.5), (1, -1, 0.5), (1, 2, 0.0), (1, 2, math.nan), (1.5, 2, 0.5)],
)
def test_impossible_counts_are_refused(right, trials, chance):
    with pytest.raises(InputError):
        choice_p(right, trials, chance=chance)


def test_counting_by_halves_agrees_with_every_arrangement():
    values, labels = [5, 6.5, 4, 8, 7, 7, 3.2], "ABABBAB"
    every = list(arrangements(tuple(labels)))
    assert len(every) == 35
    assert randomisation_p(values, labels) == pytest.approx(randomisation_p(values, labels, allowed_orders=every))


@given(st.lists(st.integers(1, 9), min_size=6, max_size=6), st.floats(0.1, 50), st.floats(-100, 100))
def test_units_and_offsets_do_not_matter(values, factor, offset):
    moved = [factor * value + offset for value in values]
    assert randomisation_p(moved, "ABBABA") == pytest.approx(randomisation_p(values, "ABBABA"))


@given(st.lists(st.integers(1, 9), min_size=6, max_size=6))
def test_names_and_direction_do_not_matter(values):
    plain = randomisation_p(values, "ABBABA")
    assert randomisation_p(values, "BAABAB") == pytest.approx(plain)
    assert randomisation_p([-value for value in values], "ABBABA") == pytest.approx(plain)


def test_equal_answers_separate_nothing():
    assert randomisation_p([6] * 8, "ABABABAB") == 1.0
    assert randomisation_p([0.1] * 9, "ABCABCABC", allowed_orders=block_orders("ABC", blocks=3)) == 1.0


def test_three_settings_are_compared_at_once():
    assert randomisation_p([1, 5, 9, 1, 5, 9], "ABCABC", allowed_orders=block_orders("ABC", blocks=2)) == 6 / 36
    assert randomisation_p([1, 5, 9, 1, 5, 9], "ABCABC") == pytest.approx(6 / 90)


def test_the_order_ridden_must_be_one_that_could_have_been_drawn():
    with pytest.raises(InputError):
        randomisation_p([1, 2, 3, 4], "AABB", allowed_orders=["ABAB", "BABA"])


def test_what_cannot_be_tested_is_said():
    with pytest.raises(NotEnoughData):
        randomisation_p([1, 2], "AA")
    with pytest.raises(InputError):
        randomisation_p([1, 2, 3], "AB")
    with pytest.raises(InputError):
        randomisation_p([1, math.nan], "AB")
    with pytest.raises(NoAnswer):
        randomisation_p(list(range(60)), "ABCDEF" * 10)
    with pytest.raises(NoAnswer):
        block_orders("ABCD", blocks=20)


def test_thirty_runs_of_two_settings_are_still_counted_exactly():
    values = [float(i % 7) for i in range(30)]
    assert 0 < randomisation_p(values, "AB" * 15) <= 1


def test_the_same_seed_draws_the_same_order_for_ever():
    assert draw_order("AB", seed=7, blocks=6) == draw_order("AB", seed=7, blocks=6)
    assert "".join(draw_order("ABCD", seed=2026, blocks=2)) == "ACBDCDBA"


def test_every_block_is_balanced():
    order = draw_order("AABBC", seed=3, blocks=4)
    for start in range(0, 20, 5):
        assert Counter(order[start : start + 5]) == Counter("AABBC")


def test_every_order_is_drawn_about_as_often():
    drawn = Counter(draw_order("ABC", seed=seed) for seed in range(6000))
    assert len(drawn) == 6
    assert all(880 < count < 1120 for count in drawn.values())


def test_a_drawn_order_is_one_of_those_counted():
    orders = block_orders("AB", blocks=4)
    assert len(orders) == len(set(orders)) == 16
    assert draw_order("AB", seed=11, blocks=4) in orders


def test_a_plan_that_cannot_reach_its_aim_says_so_before():
    assert least_p("AB", blocks=3) == 0.25
    assert least_p("AB", blocks=6) == pytest.approx(2 / 64)
    assert least_p("AAABBB") == pytest.approx(2 / 20)
    assert needed_correct(3) is None


def test_a_plan_reaches_the_least_probability_it_names():
    values = [0, 1] * 6
    assert randomisation_p(values, "AB" * 6, allowed_orders=block_orders("AB", blocks=6)) == least_p("AB", blocks=6)


def test_the_fingerprint_shows_any_move():
    order = draw_order("AB", seed=5, blocks=3)
    assert plan_digest(order, seed=5) == plan_digest(list(order), seed=5)
    assert plan_digest(order, seed=5) != plan_digest(order[::-1], seed=5)
    assert plan_digest(order, seed=5) != plan_digest(order, seed=6)


def test_nothing_to_draw_is_refused():
    with pytest.raises(InputError):
        draw_order("", seed=1)
    with pytest.raises(InputError):
        draw_order("AB", seed=1, blocks=0)


@pytest.mark.parametrize("labels", [(), ("one", "two")])
@pytest.mark.parametrize("fixed_at", ["", "2031-05-14T09:00:00+00:00"])
def test_the_fingerprint_seals_what_the_labels_stand_for_and_the_time_as_well(labels, fixed_at):
    order = draw_order(("A", "B"), seed=5, blocks=3)
    sealed = plan_digest(order, seed=5, labels=labels, fixed_at=fixed_at)
    assert sealed == plan_digest("".join(order), seed=5, labels=list(labels), fixed_at=fixed_at)
    assert sealed != plan_digest(order, seed=5, labels=(*labels, "three"), fixed_at=fixed_at)
    assert sealed != plan_digest(order, seed=5, labels=labels, fixed_at=f"{fixed_at}1")


def test_no_part_of_what_is_sealed_can_pass_for_another():
    assert plan_digest(("A", "B"), seed=5, labels=("C",)) != plan_digest(("A", "B", "C"), seed=5)
    assert plan_digest(("A",), seed=5, labels=("B",)) != plan_digest(("A",), seed=5, fixed_at="B")


@given(st.lists(st.integers(1, 9), min_size=8, max_size=8))
def test_over_all_orders_that_could_be_drawn_a_rare_outcome_is_as_rare_as_it_says(ratings):
    """Whatever was rated, if the setup did not matter: the share of orders with such a p is at most that p."""
    orders = block_orders(("A", "B"), blocks=4)
    values = [randomisation_p(ratings, order, allowed_orders=orders) for order in orders]
    for limit in set(values):
        assert sum(p <= limit + 1e-9 for p in values) / len(orders) <= limit + 1e-9
