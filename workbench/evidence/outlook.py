"""How many more runs are likely to settle a change."""

from __future__ import annotations

import math

from workbench.evidence.verdicts import UNFELT

ASSURANCE = 0.8  # the chance of a clear verdict that the stated number of runs should give
WORTH_AT_MOST = 12  # more runs than this on one change are not worth proposing
BESIDES = (
    1.35  # variance factor for rounding, spoilt runs and wander, set on simulated sessions (tests/bench/more_runs.py)
)
_Z_SURE = 1.6448536269514722


def more_runs(effect: float, sd: float, repeat_sd: float, felt: float) -> int | None:
    """The even number of further runs, half on each setting, after which a clear verdict is likely.

    Parameters
    ----------
    effect, sd : float
        What is believed about the difference now [points].
    repeat_sd : float
        Scatter of a single run [points].
    felt : float
        Smallest difference that counts as felt [points].

    Returns
    -------
    int or None
        None if not even 12 runs give a clear verdict with a chance of 0.8.

    Notes
    -----
    n runs give the difference a precision of n / (4 s^2), less what else moves them. The later belief has sd v1 and a
    mean that is itself normal around today's with variance sd^2 - v1^2; counted are the means that would read helped,
    hurt or not felt.
    """
    for runs in range(2, WORTH_AT_MOST + 1, 2):
        later = 1.0 / math.sqrt(1.0 / sd**2 + runs / (4.0 * BESIDES * repeat_sd**2))
        spread = math.sqrt(max(sd**2 - later**2, 1e-12))
        if _settled(effect, spread, later, felt) >= ASSURANCE:
            return runs
    return None


def _settled(effect: float, spread: float, later: float, felt: float) -> float:
    edge = _Z_SURE * later
    clear = _phi((effect - edge) / spread) + _phi((-effect - edge) / spread)
    inside = min(_unfelt_reach(later, felt), edge)
    unfelt = _phi((inside - effect) / spread) - _phi((-inside - effect) / spread) if inside > 0 else 0.0
    return clear + unfelt


def _unfelt_reach(later: float, felt: float) -> float:
    """How far from zero the later mean may lie and still read as not felt; 0 if nowhere."""
    if _beyond(0.0, later, felt) > UNFELT:
        return 0.0
    low, high = 0.0, felt + 3.0 * later
    for _ in range(40):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if _beyond(middle, later, felt) <= UNFELT else (low, middle)
    return low


def _beyond(mean: float, sd: float, felt: float) -> float:
    return _phi((mean - felt) / sd) + _phi((-mean - felt) / sd)


def _phi(z: float) -> float:
    return 0.5 * math.erfc(-z / math.sqrt(2.0))
