"""A mean with its interval: for what is set side by side and not judged."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from statistics import fmean, variance

from workbench.model.errors import NotEnoughData

ROUNDING_VAR = 1.0 / 12.0  # of an answer in whole points


def mean_interval(scores: Sequence[float], *, low: float = 1, high: float = 9) -> tuple[float, float, float]:
    """Mean of some scores in whole points with its 90 % interval, kept inside the scale.

    Raises
    ------
    NotEnoughData
        With fewer than three scores.

    Notes
    -----
    mean +- t(0.95, n - 1) sqrt((s^2 + 1/12) / n); the twelfth allows for rounding, so that equal scores are not taken
    for certainty. Trends and changes of setting among the scores are not taken out.

    References
    ----------
    Student (1908), The probable error of a mean, Biometrika 6, 1-25.

    Examples
    --------
    >>> [round(value, 2) for value in mean_interval([5, 6, 7, 6])]
    [6.0, 4.98, 7.02]
    """
    if len(scores) < 3:
        raise NotEnoughData("An interval needs three scores.")
    from scipy.special import stdtrit

    middle = fmean(scores)
    half = float(stdtrit(len(scores) - 1, 0.95)) * sqrt((variance(scores) + ROUNDING_VAR) / len(scores))
    return middle, max(middle - half, low), min(middle + half, high)
