"""What a session's feelings are made of, as columns."""

from __future__ import annotations

import numpy as np
import pytest

from workbench.evidence.design import MOST_WANDER_PARTS, WANDER_RUNS, build
from workbench.evidence.effects import RunRecord


def wander(days):
    design = build([RunRecord("A", 5, day=day) for day in days])
    return design.columns[:, design.are("wander")]


def test_the_wander_of_a_short_session_adds_up_to_its_covariance():
    parts = wander([0] * 5)
    apart = np.abs(np.arange(5)[:, None] - np.arange(5)[None, :])
    assert parts @ parts.T == pytest.approx(np.exp(-apart / WANDER_RUNS), abs=1e-9)


def test_one_day_wanders_without_the_other():
    parts = wander([0, 0, 0, 1, 1])
    assert parts @ parts.T == pytest.approx(parts @ parts.T * (np.array([0, 0, 0, 1, 1])[:, None] == [0, 0, 0, 1, 1]))


def test_of_many_days_alike_the_latest_keep_their_wander():
    days = [day for day in range(MOST_WANDER_PARTS + 3) for _ in range(4)]
    parts = wander(days)
    wandering = {days[run] for run in np.flatnonzero(np.abs(parts).sum(axis=1) > 1e-9)}
    assert parts.shape[1] == MOST_WANDER_PARTS
    assert wandering == set(range(3, MOST_WANDER_PARTS + 3))
