"""How far the runs before and after a change overlap: plain descriptive measures, no verdict.

They say what was seen, in countable pairs. A trend that was there anyway counts fully in the simple ones: that is why
verdicts come from the session model, and why the corrected measures stand beside them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import combinations, product
from statistics import median

from workbench.model.errors import InputError, NotEnoughData


def nap(before: Sequence[float], after: Sequence[float]) -> float:
    """Share of all pairs (a run before, a run after) in which the run after was higher; a tie counts half.

    References
    ----------
    Parker & Vannest (2009), An improved effect size for single-case research, Behavior Therapy 40, 357-367.

    Examples
    --------
    >>> nap([5, 6, 5], [7, 6, 8])
    0.9444444444444444
    """
    _check(before, after, 1)
    return 0.5 + 0.5 * _lead(before, after) / (len(before) * len(after))


def tau(before: Sequence[float], after: Sequence[float]) -> float:
    """Pairs in which the run after was higher, less those in which it was lower, over all pairs: -1 to 1."""
    _check(before, after, 1)
    return _lead(before, after) / (len(before) * len(after))


def tau_u(before: Sequence[float], after: Sequence[float]) -> float:
    """Tau less what the trend among the runs before would have given anyway.

    References
    ----------
    Parker, Vannest, Davis & Sauber (2011), Combining nonoverlap and trend for single-case research: Tau-U, Behavior
    Therapy 42, 284-299.
    """
    _check(before, after, 1)
    trend = sum(_sign(later - earlier) for earlier, later in combinations(before, 2))
    return (_lead(before, after) - trend) / (len(before) * len(after))


def corrected_tau(before: Sequence[float], after: Sequence[float]) -> float:
    """Rank correlation of being after the change with the response, once the trend of the runs before is taken out.

    Raises
    ------
    NotEnoughData
        If fewer than three runs lie before the change, or one after.

    Notes
    -----
    The trend is the median of all slopes among the runs before (Theil and Sen); the correlation is Kendall's tau-b.

    References
    ----------
    Tarlow (2017), An improved rank correlation effect size statistic for single-case designs: baseline corrected Tau,
    Behavior Modification 41, 427-467.
    """
    _check(before, after, 3)
    slope = median((b - a) / (j - i) for (i, a), (j, b) in combinations(enumerate(before), 2))
    flat = [value - slope * index for index, value in enumerate((*before, *after))]
    head, tail = flat[: len(before)], flat[len(before) :]
    untied = sum(_sign(b - a) != 0 for a, b in combinations(flat, 2))
    if not untied:
        return 0.0
    return _lead(head, tail) / math.sqrt(untied * len(head) * len(tail))


def _lead(before: Sequence[float], after: Sequence[float]) -> int:
    return sum(_sign(b - a) for a, b in product(before, after))


def _sign(gap: float) -> int:
    return 0 if abs(gap) < 1e-9 else (1 if gap > 0 else -1)


def _check(before: Sequence[float], after: Sequence[float], least_before: int) -> None:
    for value in (*before, *after):
        if not math.isfinite(value):
            raise InputError("response", value, "a finite number")
    if len(before) < least_before or not after:
        raise NotEnoughData("There are too few runs on one side of the change. Ride another.")
