"""How many more runs are likely to settle a change."""

from __future__ import annotations

import pytest

from workbench.evidence.outlook import WORTH_AT_MOST, more_runs


def test_a_near_decision_needs_few_runs_a_weak_lean_many():
    near, weak = more_runs(1.5, 0.9, 0.5, 0.5), more_runs(0.6, 0.6, 0.8, 0.5)
    assert near is not None
    assert weak is None or weak > near


@pytest.mark.parametrize("effect", [0.0, 0.3, 1.0, 2.0])
def test_direction_does_not_matter(effect):
    assert more_runs(effect, 0.8, 0.6, 0.5) == more_runs(-effect, 0.8, 0.6, 0.5)


def test_a_noisy_rider_is_told_it_is_not_worth_it():
    assert more_runs(0.1, 0.8, 4.0, 0.5) is None


def test_runs_come_in_pairs_and_never_without_end():
    for effect in (0.0, 0.5, 1.0):
        for sd in (0.3, 0.6, 1.2):
            found = more_runs(effect, sd, 0.6, 0.5)
            assert found is None or (found % 2 == 0 and 2 <= found <= WORTH_AT_MOST)
