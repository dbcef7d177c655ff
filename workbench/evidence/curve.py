"""The liking along one adjuster as far as the runs tell it: a band, and some of the curves it is made of."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.lookahead import LEAST_WEIGHT, Knowledge, foretell, know
from workbench.evidence.normal import Array, mixture_quantile
from workbench.evidence.response import position_before
from workbench.evidence.search import MOST_CLICKS, Trial
from workbench.model.errors import InputError, NotEnoughData

CURVES = 12
DOTS = 20
FEWEST_PLACES = 3  # positions ridden and rated before a curve is drawn


@dataclass(frozen=True, slots=True)
class ResponseCurve:
    """Liking at each position from the first ridden to the last: middle, 90 % band, and single curves.

    dots are twenty places, in whole clicks, between which the liking peaks with equal chances; what lies beyond an
    end of the range is at that end.
    """

    positions: tuple[int, ...]
    middle: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]
    curves: tuple[tuple[float, ...], ...]
    dots: tuple[int, ...]


def response_curve(range_clicks: int, trials: Sequence[Trial]) -> ResponseCurve:
    """The liking along an adjuster, without the scatter of a single run.

    Raises
    ------
    InputError
        If the range or a position is impossible.
    NotEnoughData
        With fewer than three positions ridden and rated, warm-ups and confounded runs left out.

    Notes
    -----
    The posterior of `ClickSearch`: place liked most, drop and shape on a grid, the level Gaussian at each of its
    points, taken as at the next run of the last day. The single curves are those at equal steps of the posterior
    sorted by place, so that they are spread as the belief is; nothing is drawn at random.
    """
    if not 1 <= range_clicks <= MOST_CLICKS:
        raise InputError("range_clicks", range_clicks, f"a whole number from 1 to {MOST_CLICKS}")
    for trial in trials:
        if trial.position > range_clicks:
            raise InputError("position", trial.position, f"0 (closed) to {range_clicks} (open)")
    ridden = [trial for trial in trials if trial.liking is not None and not trial.warmup and not trial.confounded]
    places = {trial.position for trial in ridden}
    if len(places) < FEWEST_PLACES:
        raise NotEnoughData(f"A curve needs {FEWEST_PLACES} positions ridden and rated.")
    known = know(range_clicks, trials, _answers(trials))
    positions = list(range(min(places), max(places) + 1))
    likely = np.flatnonzero(known.place_weights > LEAST_WEIGHT)
    foretold = foretell(known, positions, likely)
    middles = np.stack([middle.ravel() for middle, _ in foretold])  # (positions, curves)
    noise = known.noise_variance
    sds = np.array([math.sqrt(max(variance - noise, 1e-6)) for _, variance in foretold])
    weight = known.weights[likely].reshape(-1)
    weight = weight / weight.sum()
    spread = np.broadcast_to(sds[:, None], middles.shape)
    shares = np.broadcast_to(weight, middles.shape)
    low, high = (mixture_quantile(share, middles, spread, shares) for share in (0.05, 0.95))
    return ResponseCurve(
        tuple(positions),
        tuple((middles @ weight).tolist()),
        tuple(low.tolist()),
        tuple(high.tolist()),
        tuple(tuple(middles[:, at].tolist()) for at in _spread(weight, CURVES)),
        _peak_dots(known),
    )


def _answers(trials: Sequence[Trial]) -> list[tuple[int, int, int]]:
    """Direction answers that say something: position, position before, answer."""
    return [
        (trial.position, position_before(trials, time), trial.direction)
        for time, trial in enumerate(trials)
        if trial.direction is not None and not trial.warmup and not trial.confounded
    ]


def _spread(weight: Array, count: int) -> list[int]:
    """Entries at equal steps of the weights summed up, which stand sorted by place, shape and drop."""
    below = np.cumsum(weight) / weight.sum()
    return [int(np.searchsorted(below, (k + 0.5) / count)) for k in range(count)]


def _peak_dots(known: Knowledge) -> tuple[int, ...]:
    """Where the liking peaks, in twentieths; curves without a drop peak nowhere and leave it where it was believed."""
    grid = known.grid
    at = _spread(known.place_weights, DOTS)
    return tuple(int(np.clip(np.floor(grid.places[place] + 0.5), 0, grid.range_clicks)) for place in at)
