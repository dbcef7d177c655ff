"""Overlap of the runs before and after a change."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.evidence.overlap import corrected_tau, nap, tau, tau_u
from workbench.model.errors import InputError, NotEnoughData

SCORES = st.lists(st.integers(1, 9), min_size=3, max_size=8)


@given(SCORES, SCORES)
def test_turning_the_phases_round_turns_the_sign(before, after):
    assert tau(after, before) == pytest.approx(-tau(before, after))
    assert nap(after, before) == pytest.approx(1 - nap(before, after))


@given(SCORES, SCORES, st.floats(0.5, 20), st.floats(-50, 50))
def test_units_and_offsets_do_not_matter(before, after, factor, offset):
    moved = [[factor * value + offset for value in phase] for phase in (before, after)]
    assert nap(*moved) == pytest.approx(nap(before, after))
    assert tau_u(*moved) == pytest.approx(tau_u(before, after))


def test_equal_runs_overlap_by_half():
    assert nap([5, 5], [5]) == 0.5
    assert corrected_tau([5, 5, 5], [5, 5]) == 0.0


def test_too_little_is_said():
    with pytest.raises(NotEnoughData):
        nap([], [5])
    with pytest.raises(NotEnoughData):
        corrected_tau([5, 6], [7])
    with pytest.raises(InputError):
        nap([math.nan], [5])
