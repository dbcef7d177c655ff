"""What the ratings say about where along one adjuster a rider likes it most: a posterior on a small grid.

Own derivation. Liking is a level minus a drop that grows with the distance from the place liked most.
That place, the drop and the shape of the curve stand on a grid; level, learning, days and slow wandering are
Gaussian and integrate out exactly; the size of the noise is a second grid. A spoilt run is allowed for by what
the other runs say about it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.normal import Array, below

FEWEST_STEPS, MOST_STEPS = 8, 40  # grid steps over the counted range
BEYOND = 0.25  # how far past an end the place liked most may lie, as a share of the range
BEYOND_WEIGHT = 0.25  # how much less likely a place just past an end is

DROPS = (0.05, 1.2, 2.2, 3.2, 4.8)  # points lost half a range away from the place liked most
DROP_WEIGHTS = (0.1, 0.15, 0.28, 0.3, 0.17)
NOISES = (0.3, 0.55, 0.9, 1.5)  # run-to-run scatter, in points
NOISE_WEIGHTS = (0.2, 0.45, 0.27, 0.08)

LEVEL_MEAN, LEVEL_SD = 7.2, 1.0
LEARNING_MEAN, LEARNING_SD, LEARNING_RUNS = 0.3, 0.4, 2.5
WANDER_SD = 0.07  # a run
DAY_SD = 0.5
PLACE_SD = 0.15  # what the curve does not catch at a place, shared by all runs there
ROUNDING_VAR = 1.0 / 12.0
SPOILT_SHARE, SPOILT_SD = 0.06, 2.5
WARMUP_SD = 1.0
LAGS = (0.0, 0.5)  # share of what is felt that still comes from the position of the run before
LAG_WEIGHTS = (0.88, 0.12)


class Run(Protocol):
    """What the computation reads of a trial."""

    @property
    def position(self) -> int: ...
    @property
    def liking(self) -> float | None: ...
    @property
    def lap_s(self) -> float | None: ...
    @property
    def compared(self) -> int | None: ...
    @property
    def day(self) -> int: ...
    @property
    def warmup(self) -> bool: ...
    @property
    def confounded(self) -> bool: ...


@dataclass(frozen=True, slots=True)
class Curve:
    """A shape of losing liking on both sides: steepness to the closed and open side, power, flat half-width."""

    closed: float
    open: float
    power: float
    flat: float = 0.0
    needle: float = 0.0
    hump: float = 0.0
    weight: float = 1.0

    def loss(self, offset: Array) -> Array:
        """Loss per point of drop at an offset from the place liked most, in shares of the range."""
        size = np.maximum(np.abs(offset) - self.flat, 0.0)
        if self.needle:
            return np.asarray(0.15 * size / 0.5 + 0.85 * (1.0 - np.exp(-size / self.needle)))
        if self.hump:
            top = 1.0 - math.exp(-0.5 * (0.5 / self.hump) ** 2)
            return np.asarray((1.0 - np.exp(-0.5 * (size / self.hump) ** 2)) / top)
        side = np.where(offset < 0, self.closed, self.open)
        return np.asarray(side * (size / (0.5 - self.flat)) ** self.power)


CURVES = (
    Curve(1.0, 1.0, 1.0, weight=1.2),
    Curve(1.0, 1.0, 2.0, weight=1.5),
    Curve(1.5, 0.6, 1.4, weight=0.7),
    Curve(0.6, 1.5, 1.4, weight=0.7),
    Curve(1.0, 1.0, 1.2, flat=0.12, weight=0.8),
    Curve(1.0, 1.0, 1.0, needle=0.07, weight=0.7),
    Curve(1.0, 1.0, 1.0, hump=0.2, weight=0.8),
)


@dataclass(frozen=True, slots=True)
class Grid:
    """Everything about a range that does not depend on the runs."""

    range_clicks: int
    places: Array  # where the rider may like it most, in clicks, a little past both ends
    losses: Array  # (places, curves, positions): loss per point of drop
    log_prior: Array  # (places, curves, drops)


@lru_cache(maxsize=32)
def grid_of(range_clicks: int) -> Grid:
    """The grid of a range; made once."""
    steps = min(max(2 * range_clicks, FEWEST_STEPS), MOST_STEPS)
    extra = round(BEYOND * steps)
    shares = np.arange(-extra, steps + extra + 1) / steps
    positions = np.arange(range_clicks + 1) / range_clicks
    offsets = positions[None, :] - shares[:, None]
    losses = np.stack([curve.loss(offsets) for curve in CURVES], axis=1)
    past = np.maximum(np.maximum(-shares, shares - 1.0), 0.0)
    place = np.where(past > 0, BEYOND_WEIGHT * (1.0 - 0.7 * past / past.max()), 1.0)
    curve_weights = np.array([curve.weight for curve in CURVES])
    prior = place[:, None, None] * curve_weights[None, :, None] * np.array(DROP_WEIGHTS)[None, None, :]
    return Grid(range_clicks, shares * range_clicks, losses, np.log(prior / prior.sum()))


def trend_of(runs: Sequence[Run], times: Sequence[int], others: Sequence[Run], other_times: Sequence[int]) -> Array:
    """Covariance between two lists of runs of everything but setting and run-to-run noise."""
    t, o = np.asarray(times, dtype=np.float64), np.asarray(other_times, dtype=np.float64)
    learning = LEARNING_SD**2 * np.outer(np.exp(-t / LEARNING_RUNS), np.exp(-o / LEARNING_RUNS))
    wander = WANDER_SD**2 * np.minimum(t[:, None], o[None, :])
    same_day = _equal([run.day for run in runs], [run.day for run in others])
    same_place = _equal([run.position for run in runs], [run.position for run in others])
    warm, other_warm = np.array([run.warmup for run in runs]), np.array([run.warmup for run in others])
    both_warm = warm[:, None] & other_warm[None, :]
    neither = ~warm[:, None] & ~other_warm[None, :]
    place = same_place * (PLACE_SD**2 * neither + WARMUP_SD**2 * both_warm)
    return np.asarray(LEVEL_SD**2 + learning + wander + DAY_SD**2 * same_day + place)


def _equal(one: Sequence[int], other: Sequence[int]) -> NDArray[np.bool_]:
    return np.asarray(np.asarray(one)[:, None] == np.asarray(other)[None, :], dtype=np.bool_)


def trend_mean(times: Sequence[int]) -> Array:
    """Expected liking at the place liked most, run by run."""
    return np.asarray(LEVEL_MEAN - LEARNING_MEAN * np.exp(-np.asarray(times, dtype=np.float64) / LEARNING_RUNS))


@dataclass(frozen=True, slots=True)
class LikingFit:
    """The ratings' say: log likelihood on the grid, and what is needed to foretell the next rating."""

    log_likelihood: Array  # (lags, noises, places, curves, drops)
    runs: tuple[Run, ...]
    times: tuple[int, ...]
    residual: Array  # ratings less expected trend
    precisions: tuple[Array, ...]  # one a noise
    rows: Array  # (runs, places * curves): loss per drop at the runs' positions
    earlier: Array  # the same at the positions of the runs before them


def fit_liking(grid: Grid, trials: Sequence[Run]) -> LikingFit:
    """Read the ratings: every run that was rated and not confounded; warm-ups bear on the trend alone."""
    used = [(time, run) for time, run in enumerate(trials) if run.liking is not None and not run.confounded]
    runs, times = tuple(run for _, run in used), tuple(time for time, _ in used)
    places, curves, _ = grid.losses.shape
    drops = np.array(DROPS)
    shape = (len(LAGS), len(NOISES), places, curves, len(DROPS))
    if not runs:
        none = np.zeros((0, places * curves))
        return LikingFit(np.zeros(shape), runs, times, np.zeros(0), (), none, none)
    counts = np.array([0.0 if run.warmup else 1.0 for run in runs])
    rows = _rows(grid, [run.position for run in runs]) * counts[:, None]
    earlier = _rows(grid, [position_before(trials, time) for time in times]) * counts[:, None]
    residual = np.array([float(run.liking or 0.0) for run in runs]) - trend_mean(times)
    shared = trend_of(runs, times, runs, times)
    log_likelihood = np.empty(shape)
    precisions = []
    for k, noise in enumerate(NOISES):
        covariance = shared + (noise**2 + ROUNDING_VAR) * np.eye(len(runs))
        precision = np.asarray(np.linalg.inv(covariance), dtype=np.float64)
        precisions.append(precision)
        for j, lag in enumerate(LAGS):
            felt = (1.0 - lag) * rows + lag * earlier
            log_likelihood[j, k] = gaussian_say(precision, residual, felt, drops).reshape(shape[2:])
    return LikingFit(log_likelihood, runs, times, residual, tuple(precisions), rows, earlier)


def position_before(trials: Sequence[Run], time: int) -> int:
    """Position of the run before on the same day; its own if there is none."""
    is_first = time == 0 or trials[time - 1].day != trials[time].day
    return trials[time if is_first else time - 1].position


def _rows(grid: Grid, positions: Sequence[int]) -> Array:
    return np.asarray(grid.losses[:, :, list(positions)].reshape(-1, len(positions)).T)


def gaussian_say(precision: Array, residual: Array, rows: Array, drops: Array) -> Array:
    """Log likelihood of residual + drop * loss under a Gaussian, with each run allowed to be spoilt.

    Leaving out run i, the others foretell it with error e = (P r)_i / P_ii and variance 1 / P_ii.
    A spoilt run widens that variance; its likelihood ratio multiplies the whole.
    """
    pulled = precision @ residual
    pulled_rows = precision @ rows
    a = float(residual @ pulled)
    b = rows.T @ pulled
    c = np.einsum("ij,ij->j", rows, pulled_rows)
    quadratic = a + 2.0 * b[:, None] * drops + c[:, None] * drops**2
    _, log_det = np.linalg.slogdet(precision)
    spoilt = np.zeros(quadratic.shape, dtype=np.float32)  # a factor of its own, so single precision is plenty
    variance = 1.0 / np.diag(precision)
    wide = variance + SPOILT_SD**2
    surprise = variance * np.sqrt(0.5 * (1.0 / variance - 1.0 / wide))
    errors = (surprise * pulled).astype(np.float32)
    error_rows = (surprise[:, None] * pulled_rows).astype(np.float32)
    steps = drops.astype(np.float32)
    for error, row, share in zip(errors, error_rows, np.sqrt(variance / wide), strict=True):
        ratio = row[:, None] * steps
        ratio += error
        np.square(ratio, out=ratio)
        np.minimum(ratio, 80.0, out=ratio)
        np.exp(ratio, out=ratio)
        ratio *= np.float32(share)
        spoilt += ratio
    return np.asarray(0.5 * log_det - 0.5 * quadratic + np.log1p(SPOILT_SHARE / (1.0 - SPOILT_SHARE) * spoilt))


TIME_EFFECTS = (0.0, 0.004, 0.012)  # share of lap time lost half a range away; common practice, no source
TIME_WEIGHTS = (0.5, 0.3, 0.2)
TIME_NOISES = (0.006, 0.015, 0.04)


def lap_say(grid: Grid, trials: Sequence[Run]) -> Array:
    """Log likelihood of the lap times, (places, curves): the fastest place is likely near the one liked most."""
    used = [
        (time, run)
        for time, run in enumerate(trials)
        if run.lap_s is not None and not run.confounded and not run.warmup
    ]
    places, curves, _ = grid.losses.shape
    if len(used) < 2:
        return np.zeros((places, curves))
    runs, times = [run for _, run in used], [time for time, _ in used]
    logs = np.log(np.array([run.lap_s for run in runs], dtype=np.float64))
    residual = -(logs - logs.mean())
    rows = _rows(grid, [run.position for run in runs])
    parts = []
    t = np.exp(-np.asarray(times) / LEARNING_RUNS)
    same_day = _equal([run.day for run in runs], [run.day for run in runs])
    shared = 0.05**2 + 0.02**2 * np.outer(t, t) + 0.02**2 * same_day
    scale = 0.01
    for noise in TIME_NOISES:
        precision = np.asarray(np.linalg.inv((shared + noise**2 * np.eye(len(runs))) / scale**2), dtype=np.float64)
        parts.append(gaussian_say(precision, residual / scale, rows, np.array(TIME_EFFECTS) / scale))
    return np.asarray(log_sum(np.stack(parts) + np.log(TIME_WEIGHTS), axis=(0, 2)).reshape(places, curves))


SAME_BAND = 0.4  # differences smaller than this are called the same
COMPARED_SD = 0.9


def compared_say(grid: Grid, trials: Sequence[Run]) -> Array:
    """Log likelihood of better / same / worse than the run before, (places, curves, drops)."""
    places, curves, _ = grid.losses.shape
    total = np.zeros((places, curves, len(DROPS)))
    for before, after in itertools.pairwise(trials):
        usable = after.compared is not None and before.day == after.day and before.position != after.position
        if not usable or before.confounded or after.confounded or before.warmup or after.warmup:
            continue
        # Both answers come from the same ride: beside two ratings the comparison says little that is new.
        rated = before.liking is not None and after.liking is not None
        sd = COMPARED_SD * (2.0 if rated else 1.0)
        gain = (grid.losses[:, :, before.position] - grid.losses[:, :, after.position])[:, :, None] * np.array(DROPS)
        worse, better = below((-SAME_BAND - gain) / sd), below((gain - SAME_BAND) / sd)
        chance = {-1: worse, 0: np.maximum(1.0 - worse - better, 1e-9), 1: better}[int(after.compared or 0)]
        total += np.log(0.9 * chance + 0.1 / 3.0)
    return total


def log_sum(values: Array, axis: int | tuple[int, ...]) -> Array:
    """Logarithm of a sum of exponentials."""
    top = values.max(axis=axis, keepdims=True)
    return np.asarray(np.log(np.exp(values - top).sum(axis=axis)) + np.squeeze(top, axis=axis))
