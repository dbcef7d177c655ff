"""The liking along one adjuster: a band, single curves and where it peaks."""

from __future__ import annotations

import pytest

from workbench.evidence.curve import response_curve
from workbench.evidence.search import ClickSearch, Trial
from workbench.model.errors import InputError, NotEnoughData

RIDDEN = [Trial(6, 4, warmup=True), Trial(6, 5, -1), Trial(10, 8, 0), Trial(13, 6, 1), Trial(10, 7), Trial(9, 7)]


def test_the_band_holds_its_middle_and_reaches_from_first_to_last_ridden():
    curve = response_curve(17, RIDDEN)
    assert curve.positions == tuple(range(6, 14))
    for low, middle, high in zip(curve.low, curve.middle, curve.high, strict=True):
        assert low < middle < high
    assert all(len(one) == 8 for one in curve.curves)
    assert len(curve.curves) == 12


def test_the_curve_is_highest_where_the_search_would_stay():
    curve, found = response_curve(17, RIDDEN), ClickSearch(17).estimate(RIDDEN)
    top = curve.positions[curve.middle.index(max(curve.middle))]
    assert top == round(found.position)
    inside = [found.low - 1 <= dot <= found.high + 1 for dot in curve.dots]
    assert len(curve.dots) == 20
    assert sum(inside) >= 17, "nine in ten lie in the interval"


def test_repeats_narrow_the_band():
    once = response_curve(20, [Trial(5, 5), Trial(10, 7), Trial(15, 5)])
    thrice = response_curve(
        20, [Trial(place, liking) for _ in range(3) for place, liking in ((5, 5), (10, 7), (15, 5))]
    )
    widths = [[high - low for low, high in zip(one.low, one.high, strict=True)] for one in (once, thrice)]
    assert all(later < first for first, later in zip(*widths, strict=True))


def test_ratings_seen_from_open_give_the_curve_in_the_mirror():
    there = response_curve(20, [Trial(4, 5), Trial(10, 7), Trial(18, 6)])
    back = response_curve(20, [Trial(16, 5), Trial(10, 7), Trial(2, 6)])
    assert back.middle == pytest.approx(there.middle[::-1], abs=1e-6)


def test_two_positions_are_no_curve_and_warm_ups_and_double_changes_are_none():
    with pytest.raises(NotEnoughData, match="3 positions"):
        response_curve(17, [Trial(6, 5), Trial(10, 7), Trial(13, 6, warmup=True), Trial(14, 6, confounded=True)])


def test_what_cannot_be_a_range_or_position_is_refused():
    with pytest.raises(InputError, match="range_clicks"):
        response_curve(0, RIDDEN)
    with pytest.raises(InputError, match="position"):
        response_curve(12, RIDDEN)
