"""What a run not yet ridden is expected to say."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from workbench.evidence.lookahead import foretell, know
from workbench.evidence.response import LAG_WEIGHTS, LAGS
from workbench.evidence.search import ClickSearch, Trial

RUNS = [Trial(10, 6), Trial(15, 7), Trial(5, 4), Trial(14, 8)]


def foretold_apart(known):
    """How far the next ratings at two new positions are expected to lie apart, under every curve."""
    likely = np.arange(len(known.grid.places))
    (one, _), (other, _) = foretell(known, [2, 18], likely)
    return other - one


def test_half_a_lag_halves_what_the_next_position_is_expected_to_show():
    known = know(20, RUNS, [])
    at_once, lagging = (foretold_apart(replace(known, lag=lag)) for lag in (0.0, 0.5))
    assert lagging == pytest.approx(0.5 * at_once)
    assert np.abs(at_once).max() > 1.0


def test_an_effect_that_follows_the_position_before_is_read_as_a_lag():
    def ridden(lag):
        positions = [10, 15, 5, 12, 12, 16, 8, 12]
        felt = [(1 - lag) * here + lag * before for before, here in zip([10, *positions], positions, strict=False)]
        return [Trial(position, 8 - round(abs(at - 13) / 1.4)) for position, at in zip(positions, felt, strict=True)]

    expected_before = float(np.dot(LAGS, LAG_WEIGHTS))
    assert know(20, ridden(0.5), []).lag > expected_before
    assert know(20, ridden(0.0), []).lag < expected_before


def test_the_choice_is_never_felt_as_worse_than_another():
    runs = [Trial(4, 5), Trial(10, 8), Trial(16, 7), Trial(13, 8), Trial(19, 3)]
    for count in range(1, len(runs) + 1):
        known = know(20, runs[:count], [])
        liking = known.expected_liking(np.arange(21))
        choice = round(ClickSearch(20).estimate(runs[:count]).position)
        assert liking[choice] >= liking.max() - 0.5
