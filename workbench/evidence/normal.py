"""The normal distribution on arrays, without loading SciPy."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

_FAR = 37.0  # beyond this many standard deviations a double holds no probability
_FIT = (
    -1.26551223,
    1.00002368,
    0.37409196,
    0.09678418,
    -0.18628806,
    0.27886807,
    -1.13520398,
    1.48851587,
    -0.82215223,
    0.17087277,
)


def density(z: Array) -> Array:
    """Height of the standard normal curve at z."""
    return np.asarray(np.exp(-0.5 * z * z) * 0.3989422804014327)


def below(z: Array) -> Array:
    """Probability that a standard normal value lies below z, with small relative error in the lower tail too.

    Notes
    -----
    Phi(z) = erfc(-z / sqrt 2) / 2 with a Chebyshev fit of erfc, relative error below 1.2e-7 everywhere.

    References
    ----------
    Press, Teukolsky, Vetterling & Flannery (1992), Numerical Recipes, 2nd ed., section 6.2.
    """
    x = np.clip(np.asarray(z, dtype=np.float64), -_FAR, _FAR) * 0.7071067811865476
    size = np.abs(x)
    t = 1.0 / (1.0 + 0.5 * size)
    fit = np.full_like(t, _FIT[-1])
    for coefficient in reversed(_FIT[:-1]):
        fit = fit * t + coefficient
    tail = 0.5 * t * np.exp(fit - size * size)
    return np.asarray(np.where(x < 0, tail, 1.0 - tail))


def between(lower: Array, upper: Array) -> Array:
    """Probability between two bounds; both are taken to the lower tail first, where nothing cancels."""
    flip = lower > 0
    low = np.where(flip, -upper, lower)
    high = np.where(flip, -lower, upper)
    return np.asarray(np.maximum(below(high) - below(low), 1e-300))


def mixture_below(x: Array, means: Array, sds: Array, weights: Array) -> Array:
    """Probability below x under weighted mixtures of normal distributions, one row a mixture.

    x has shape (r,), the others (r, k).
    """
    total: Array = np.sum(below((x[:, None] - means) / sds) * weights, axis=1)
    return total


def mixture_quantile(share: float, means: Array, sds: Array, weights: Array) -> Array:
    """The value with the given share of each normal mixture below it: Newton's steps, kept inside a bracket."""
    low, high = np.min(means - 6.0 * sds, axis=1), np.max(means + 6.0 * sds, axis=1)
    at: Array = np.sum(means * weights, axis=1)
    for _ in range(40):
        z = (at[:, None] - means) / sds
        over = np.sum(below(z) * weights, axis=1) - share
        low, high = np.where(over < 0, at, low), np.where(over < 0, high, at)
        slope = np.sum(density(z) / sds * weights, axis=1) + 1e-300
        wish = at - over / slope
        after = np.where((wish > low) & (wish < high), wish, 0.5 * (low + high))
        if np.all(np.abs(after - at) <= 1e-9 * (1.0 + np.abs(at))):
            break
        at = after
    return at
