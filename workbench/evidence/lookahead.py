"""What one more run at each position is expected to add to the final choice."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.direction import DirectionSay, Trust, read_directions, trust_of
from workbench.evidence.normal import Array
from workbench.evidence.response import (
    DROPS,
    LAG_WEIGHTS,
    LAGS,
    NOISE_WEIGHTS,
    NOISES,
    ROUNDING_VAR,
    Grid,
    LikingFit,
    Run,
    compared_say,
    fit_liking,
    grid_of,
    lap_say,
    trend_mean,
    trend_of,
)

MOST_CANDIDATES = 11
MOST_CHOICES = 31
BIN_EDGES = (-1.2, -0.4, 0.4, 1.2)  # between the next ratings told apart, in their standard deviations
LEAST_WEIGHT = 1e-4  # places less likely than this are left out of planning


@dataclass(frozen=True, slots=True)
class NextRun:
    """A run not yet ridden, as the computation sees it."""

    position: int
    day: int
    liking: float | None = None
    lap_s: float | None = None
    compared: int | None = None
    warmup: bool = False
    confounded: bool = False


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Everything the runs so far say."""

    grid: Grid
    weights: Array  # (places, curves, drops), sum 1
    noise_weights: Array  # (noises,)
    liking: LikingFit
    direction: DirectionSay
    trust: Trust
    asks_direction: bool
    runs: int
    day: int
    lag: float = 0.0  # expected share of what is felt that comes from the position of the run before
    last: int | None = None  # position of the last run

    @property
    def place_weights(self) -> Array:
        """Chance of each place being the one liked most."""
        return np.asarray(self.weights.sum(axis=(1, 2)))

    @property
    def noise_variance(self) -> float:
        """Expected run-to-run variance of a rating, rounding included."""
        return float(self.noise_weights @ np.square(NOISES)) + ROUNDING_VAR

    def expected_liking(self, positions: NDArray[np.int_]) -> Array:
        """Expected liking at positions, less that at the place liked most (never above 0)."""
        by_curve = self.weights @ np.array(DROPS)
        return np.asarray(-np.einsum("pc,pcx->x", by_curve, self.grid.losses[:, :, positions]))


def know(range_clicks: int, trials: Sequence[Run], answers: Sequence[tuple[int, int, int]]) -> Knowledge:
    """Read all runs, and the direction answers (position, position before, answer), into one posterior."""
    grid = grid_of(range_clicks)
    liking = fit_liking(grid, trials)
    directions = [read_directions(grid, answers, lag) for lag in LAGS]
    by_lag = np.stack([say.log_likelihood for say in directions]) + np.log(LAG_WEIGHTS)[:, None]
    rest = grid.log_prior + lap_say(grid, trials)[:, :, None] + compared_say(grid, trials)
    joint = liking.log_likelihood + np.log(NOISE_WEIGHTS)[:, None, None, None] + rest
    joint += by_lag[:, None, :, None, None]
    chances = np.exp(joint - joint.max())
    chances /= chances.sum()
    trusts = [trust_of(say, part) for say, part in zip(directions, chances.sum(axis=(1, 3, 4)), strict=True)]
    rated = sum(run.liking is not None for run in trials)
    return Knowledge(
        grid,
        chances.sum(axis=(0, 1)),
        chances.sum(axis=(0, 2, 3, 4)),
        liking,
        directions[0],
        Trust(*(sum(shares) for shares in zip(*trusts, strict=True))),
        asks_direction=not trials or 2 * len(answers) >= max(rated, 1),
        runs=len(trials),
        day=trials[-1].day if trials else 0,
        lag=float(chances.sum(axis=(1, 2, 3, 4)) @ np.array(LAGS)),
        last=trials[-1].position if trials else None,
    )


def values_of(known: Knowledge, candidates: Sequence[int], low: int, high: int) -> Array:
    """Points of liking that one more run at each candidate is expected to add to the final choice."""
    choices = spread(low, high, MOST_CHOICES)
    likely = np.flatnonzero(known.place_weights > LEAST_WEIGHT)
    drops = np.array(DROPS)
    weights = known.weights[likely].reshape(len(likely), -1)
    losses = known.grid.losses[likely]
    # (places, curve and drop, choices): weighted liking at each choice under each curve
    outcome = -(losses[:, :, choices][:, :, None, :] * drops[None, None, :, None]).reshape(*weights.shape, -1)
    outcome *= weights[:, :, None]
    now = float(outcome.sum(axis=(0, 1)).max())
    result = np.zeros(len(candidates))
    foretold = foretell(known, candidates, likely)
    for k, (position, (middle, variance)) in enumerate(zip(candidates, foretold, strict=True)):
        answer = known.direction.next_chances(known.grid, position, likely) if known.asks_direction else None
        gains = np.matmul(rating_chances(middle, math.sqrt(variance), weights), outcome)  # (places, ratings, choices)
        if answer is not None:
            after = (answer @ gains.reshape(len(likely), -1)).reshape(len(answer), *gains.shape[1:])
        else:
            after = gains.sum(axis=0)[None]
        result[k] = float(after.max(axis=2).sum()) - now
    return np.maximum(result, 0.0)


def rating_chances(middle: Array, sd: float, weights: Array) -> Array:
    """Chances of the next rating falling into each of a few bins, (places, bins, curves and drops)."""
    centre = float(np.sum(middle * weights) / weights.sum())
    spread_sd = math.sqrt(float(np.sum((middle - centre) ** 2 * weights) / weights.sum()) + sd**2)
    cuts = (centre + spread_sd * np.array(BIN_EDGES) - middle[:, None, :].transpose(0, 2, 1)) / sd
    cdf = 1.0 / (1.0 + np.exp(-1.702 * np.clip(cuts, -20.0, 20.0)))  # the logistic is near enough for planning
    bins = np.empty((len(middle), len(BIN_EDGES) + 1, middle.shape[1]))
    bins[:, 0] = cdf[:, :, 0]
    bins[:, 1:-1] = np.diff(cdf, axis=2).transpose(0, 2, 1)
    bins[:, -1] = 1.0 - cdf[:, :, -1]
    return bins


def foretell(known: Knowledge, candidates: Sequence[int], likely: NDArray[np.int_]) -> list[tuple[Array, float]]:
    """Expected next rating under every curve, (places, curves and drops), and its scatter, for each candidate."""
    grid, fit = known.grid, known.liking
    new = [NextRun(position, known.day) for position in candidates]
    time = [known.runs]
    drops = np.array(DROPS)
    own = trend_of(new[:1], time, new[:1], time)[0, 0]
    variance = np.full(len(new), known.noise_variance + own)
    level = np.full(len(new), float(trend_mean(time)[0]))
    losses = grid.losses[likely]
    slopes = -(1.0 - known.lag) * losses[:, :, candidates]  # (places, curves, candidates)
    if known.last is not None:
        slopes -= known.lag * losses[:, :, known.last][:, :, None]
    if fit.runs:
        shared = trend_of(new, time * len(new), fit.runs, fit.times)
        pull = shared @ fit.precisions[int(np.argmax(known.noise_weights))]
        level = level + pull @ fit.residual
        variance -= np.einsum("ij,ij->i", pull, shared)
        rows = (1.0 - known.lag) * fit.rows + known.lag * fit.earlier
        rows = rows.reshape(len(fit.runs), *grid.losses.shape[:2])[:, likely]
        slopes = slopes + np.einsum("kr,rpc->pck", pull, rows)
    middles = level[:, None, None] + slopes.transpose(2, 0, 1).reshape(len(new), -1, 1) * drops
    middles = middles.reshape(len(new), len(likely), -1)
    return list(zip(middles, (float(one) for one in variance), strict=True))


def spread(low: int, high: int, most: int) -> NDArray[np.int_]:
    """Up to so many whole positions from low to high, evenly, the same seen from either end."""
    width = high - low
    if width + 1 <= most:
        return np.arange(low, high + 1)
    left = np.floor(np.linspace(0.0, width, most)[: (most + 1) // 2] + 0.5).astype(int)
    return np.unique(np.concatenate([low + left, high - left]))
