"""The normal distribution on arrays."""

from __future__ import annotations

import math

import numpy as np
import pytest

from workbench.evidence.normal import below, between, density, mixture_below, mixture_quantile


def test_the_tail_keeps_its_relative_precision():
    z = np.linspace(-30, 8, 400)
    truth = np.array([0.5 * math.erfc(-x / math.sqrt(2)) for x in z])
    assert below(z) == pytest.approx(truth, rel=2e-7)


def test_far_bounds_hold_nothing_or_everything():
    assert below(np.array([-np.inf, np.inf, 0.0])) == pytest.approx([0.0, 1.0, 0.5], abs=1e-7)


def test_a_slice_far_above_is_as_good_as_one_far_below():
    up = between(np.array([9.0]), np.array([10.0]))
    down = between(np.array([-10.0]), np.array([-9.0]))
    assert up == pytest.approx(down, rel=1e-12)
    assert up == pytest.approx(0.5 * math.erfc(9 / math.sqrt(2)), rel=1e-5)


def test_density_is_the_slope_of_below():
    z = np.linspace(-3, 3, 13)
    assert (below(z + 1e-3) - below(z - 1e-3)) / 2e-3 == pytest.approx(density(z), abs=1e-3)


@pytest.mark.parametrize("share", [0.001, 0.05, 0.5, 0.95, 0.999])
def test_the_quantile_of_a_mixture_is_found_again(share):
    means = np.array([[-3.0, 0.0, 5.0], [0.0, 0.0, 0.0]])
    sds = np.array([[0.1, 2.0, 0.5], [0.01, 1.0, 3.0]])
    weights = np.array([[0.5, 0.3, 0.2], [0.8, 0.1, 0.1]])
    at = mixture_quantile(share, means, sds, weights)
    assert mixture_below(at, means, sds, weights) == pytest.approx(share, abs=1e-6)
