"""Means with their intervals."""

from __future__ import annotations

from math import sqrt

import pytest

from workbench.evidence.interval import mean_interval
from workbench.model.errors import NotEnoughData


@pytest.mark.parametrize(("count", "t"), [(3, 2.920), (4, 2.353), (6, 2.015), (11, 1.812)])
def test_the_interval_is_as_wide_as_the_printed_table_of_t_says(count, t):
    """One-sided 5 % points of t with 2, 3, 5 and 10 degrees of freedom, from memory of the usual printed table."""
    scores = [4, 6] * (count // 2) + [5] * (count % 2)
    middle, low, high = mean_interval(scores, low=-100, high=100)
    s_squared = 2 * (count // 2) / (count - 1)
    assert high - middle == pytest.approx(t * sqrt((s_squared + 1 / 12) / count), rel=1e-3)
    assert middle - low == pytest.approx(high - middle)


def test_equal_scores_are_no_certainty_and_the_scale_has_ends():
    assert mean_interval([7, 7, 7])[1] < 7 < mean_interval([7, 7, 7])[2]
    assert mean_interval([9, 9, 8])[2] == 9
    assert mean_interval([1, 1, 2])[1] == 1


def test_two_scores_have_no_interval():
    with pytest.raises(NotEnoughData, match="three"):
        mean_interval([5, 6])
