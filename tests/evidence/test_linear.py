"""The linear part: what it refuses, and what a prior does."""

from __future__ import annotations

import numpy as np
import pytest

from workbench.evidence.linear import gaussian_posterior, least_squares, one_way
from workbench.model.errors import InputError, NotEnoughData


def test_too_few_runs_are_said():
    with pytest.raises(NotEnoughData):
        least_squares(np.ones((1, 2)), np.ones(1))
    with pytest.raises(NotEnoughData):
        one_way([])


def test_two_things_that_always_changed_together_are_said():
    x = np.array([[1.0, 2.0], [2.0, 4.0], [3.0, 6.0]])
    with pytest.raises(NotEnoughData):
        least_squares(x, np.array([1.0, 2.0, 3.0]))


def test_a_prior_pulls_towards_its_mean():
    x, y = np.ones((1, 4, 1)), np.full((1, 4), 3.0)
    mean, covariance = gaussian_posterior(x, np.array([[4.0]]), np.array([[0.0]]), np.ones((1, 4)), y)
    assert mean[0, 0] == pytest.approx(1.5)
    assert covariance[0, 0, 0] == pytest.approx(1 / 8)


def test_unbounded_weights_are_refused():
    with pytest.raises(InputError):
        gaussian_posterior(np.ones((1, 1)), np.ones((1, 1)), np.zeros((1, 1)), np.full((1, 1), np.inf), np.ones((1, 1)))


def test_where_nothing_is_told_yet_what_is_believed_beforehand_stands_to_the_last_digit():
    chance = np.random.default_rng(5)
    design, precision = chance.normal(size=(3, 6, 4)), chance.uniform(0.1, 9.0, size=(3, 4))
    shift = chance.normal(size=(3, 4))
    nothing = np.zeros((3, 6))
    mean, covariance = gaussian_posterior(design, precision, shift, nothing, nothing)
    everything = np.linalg.inv(np.stack([np.diag(row) for row in precision]))
    assert np.array_equal(covariance, everything)
    assert np.allclose(mean, np.einsum("kij,kj->ki", everything, shift), rtol=1e-14, atol=0.0)
    pulled, _ = gaussian_posterior(design, precision, shift, nothing, nothing + 1.0)
    assert not np.allclose(pulled, mean), "a pull without weight is told as well"
