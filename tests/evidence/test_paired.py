"""Strengths from direct choices."""

from __future__ import annotations

import math

import pytest

from workbench.evidence.paired import strengths
from workbench.model.errors import InputError, NoAnswer, NotEnoughData


def test_two_settings_give_the_log_odds():
    found = strengths([("A", "B", 3, 9)], order_effect=False)
    assert found.reference == "A"
    assert found.strength["B"] == pytest.approx(math.log(3))


def test_balanced_orders_tell_order_from_strength():
    found = strengths([("A", "B", 4, 6), ("B", "A", 8, 2)])
    assert found.strength["B"] == pytest.approx((math.log(6 / 4) + math.log(8 / 2)) / 2)
    assert found.order == pytest.approx((math.log(4 / 6) + math.log(8 / 2)) / 2)


def test_the_reference_only_moves_the_zero():
    choices = [("A", "B", 3, 5), ("B", "C", 4, 6), ("C", "A", 5, 2)]
    one, other = strengths(choices), strengths(choices, reference="C")
    gap = one.strength["B"] - one.strength["A"]
    assert other.strength["B"] - other.strength["A"] == pytest.approx(gap)


def test_what_has_no_bound_is_said():
    with pytest.raises(NoAnswer):
        strengths([("A", "B", 5, 0)], order_effect=False)
    with pytest.raises(NoAnswer):
        strengths([("A", "B", 3, 2), ("C", "D", 2, 3)], order_effect=False)


def test_nothing_chosen_is_said():
    with pytest.raises(NotEnoughData):
        strengths([])
    with pytest.raises(NotEnoughData):
        strengths([("A", "B", 0, 0)])
    with pytest.raises(InputError):
        strengths([("A", "A", 1, 2)])
    with pytest.raises(InputError):
        strengths([("A", "B", -1, 2)])
    with pytest.raises(InputError):
        strengths([("A", "B", 1, 2)], reference="C")
