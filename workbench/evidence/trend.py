"""The slow rise and fall beneath the ratings of a session, which has nothing to do with what was set."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.fitted import fit
from workbench.evidence.ratings import RunRecord, Scale, to_points
from workbench.model.errors import NotEnoughData

FEWEST_RUNS = 4  # rated runs that count, below which a trend is all guess
_Z90 = 1.6448536269514722


@dataclass(frozen=True, slots=True)
class Trend:
    """One value a run, with its 90 % band, around 0 over the runs that count; above 0 the day was kind.

    In points for ratings; for times in logarithms of seconds saved, so that time * exp(middle) is the time without it.
    """

    middle: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]


def session_trend(
    runs: Sequence[RunRecord],
    *,
    scale: Scale = (1, 9, 1),
    higher_is_better: bool = True,
    past_sd: float | None = None,
) -> Trend:
    """The trend of a session: getting to know the course, tiring, steady rise, slow wandering, one day and another.

    Raises
    ------
    NotEnoughData
        With fewer than four rated runs that count.

    Notes
    -----
    The part of the session model that is neither level nor setting, nor kindness right after a change, nor warm-up;
    it is estimated together with the settings from all runs at once. Its mean over the counted runs is taken out.
    """
    kept = tuple(runs)
    counted = [i for i, run in enumerate(kept) if run.response is not None and not run.warmup]
    if len(counted) < FEWEST_RUNS:
        raise NotEnoughData(f"A trend needs at least {FEWEST_RUNS} rated runs; ride more first.")
    points = to_points(kept, scale, higher_is_better=higher_is_better, past_sd=past_sd)
    found = fit(kept, points, past_sd=None if past_sd is None else points.inner(past_sd))
    mean, covariance = found.moments()
    rows = found.design.columns * found.is_trend
    rows = rows - rows[counted].mean(axis=0)
    middle = rows @ mean * points.unit
    sd = np.sqrt(np.maximum(np.einsum("ij,jk,ik->i", rows, covariance, rows), 0.0)) * points.unit
    return Trend(tuple(middle.tolist()), tuple((middle - _Z90 * sd).tolist()), tuple((middle + _Z90 * sd).tolist()))
