"""How an air spring of unknown sizes may behave: a grid of shapes, and what readings say about load and shape.

The load per piston area is (P + c Pa) g(s) - h(s) with g(s) = 1 / (1 - s/a) - r / (1 + s/b); s is sag over travel, a
and b the lengths of the positive and negative chamber over travel, r the area of a negative chamber that fills itself
over that of the piston, c between 0 (force goes with gauge pressure) and 1 (with absolute pressure). What does not go
with the pressure is h: the air outside on unequal areas, a negative chamber with its own valve, a negative coil, and
with a minus a coil that works along with the air.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import erf, sqrt

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Chances = tuple[tuple[float, float], ...]
OUTSIDE_KPA = 101.325

# What is likely, each as (value, chance). Compression ratios a / (a - 1) of 2 to 5, negative chambers of a fifth to
# three quarters of the travel: common practice, no source.
_POSITIVE = ((1.25, 0.09), (1.4, 0.35), (1.6, 0.40), (1.9, 0.16))
_NEGATIVE = ((0.18, 0.06), (0.28, 0.24), (0.40, 0.38), (0.55, 0.24), (0.75, 0.08))
_SCALING = ((0.0, 0.05), (0.5, 0.14), (1.0, 0.81))

# Scatter of one reading as a fraction of the load, and how likely: hips move, seals stick. Front carries less load.
NOISE = {
    "front": ((0.018, 0.025, 0.034, 0.046, 0.065, 0.11, 0.22), (0.12, 0.24, 0.28, 0.22, 0.10, 0.03, 0.01)),
    "rear": ((0.0065, 0.01, 0.0145, 0.02, 0.03, 0.06, 0.14), (0.13, 0.23, 0.27, 0.21, 0.12, 0.03, 0.01)),
}
_WILD_LEVELS = 2  # the scatters at the end of each list are more than a rider makes
_SLIP_CHANCE = 0.03
_SLIP_SD = 0.25
_SLIP_FROM = 3
_NEGLIGIBLE = 1e-3  # of the likeliest possibility: below, left out
_FADED = 4e-3  # and from here on counted in full
_LEAST_KPA = 1.0
_LEAST_LOAD_KPA = 1e-3
_LEAST_SLOPE = 0.1
_STEPS = 7  # along the slope, to where a load is carried
_FIRST_SAG = 0.25

# Sizes stated by a person: the effective lengths may be a little off.
_STATED_POSITIVE = ((0.97, 0.25), (1.0, 0.5), (1.03, 0.25))
_STATED_NEGATIVE = ((0.9, 0.25), (1.0, 0.5), (1.1, 0.25))
_SHORTEST = 1.02  # a positive chamber must outlast the travel

# Places of a standard normal and their weights: the trapezoidal rule, which is very good for a bell.
_NODES = np.linspace(-2.6, 2.6, 7)
_NODE_WEIGHT = np.exp(-0.5 * _NODES**2) / np.exp(-0.5 * _NODES**2).sum()
_BELOW = np.array([0.5 * (1 + erf(place / sqrt(2))) for place in _NODES])
_BETWEEN = np.diff(_BELOW) / (_BELOW[-1] - _BELOW[0])  # what lies between one place and the next
_THINNEST = 1e-7  # of a value: pieces that are all at one place, as at the end of the travel, get this width


@dataclass(frozen=True, slots=True)
class Coil:
    """A coil in an air spring: its push per piston area for each full travel it is pressed [kPa], one row a shape."""

    kpa: Floats
    length: Floats  # over travel: the reach of one that pushes back, the preload of one beside the air


@dataclass(frozen=True, slots=True)
class Other:
    """What pushes against the spring whatever its pressure; per piston area [kPa]."""

    steady_kpa: float = 0.0
    own_kpa: float = 0.0  # a negative chamber with its own valve, at full extension


@dataclass(frozen=True, slots=True)
class Shapes:
    """A set of possible springs with their chances before any reading; one row each."""

    a: Floats
    b: Floats
    r: Floats
    outside_kpa: Floats
    chance: Floats
    other: Other
    back: Coil | None = None  # a negative coil
    beside: Coil | None = None  # a coil that works along with the air


@dataclass(frozen=True, slots=True)
class Belief:
    """What may be true after the readings, one row each possibility, chances adding up to one."""

    shapes: Shapes  # of each possibility
    load: Floats  # load per area [kPa], places of a normal in a row
    chance: Floats
    noise: float  # scatter of one reading as a fraction of the load, on average
    doubt: float  # chance that the readings scatter more than readings should
    slip: int | None  # the reading that more likely than not is a slip


@lru_cache(maxsize=1)
def typical_shapes() -> Shapes:
    """Give the shapes assumed when no chamber sizes are known."""
    return _grid(_POSITIVE, _NEGATIVE, 1.0, _SCALING)


@lru_cache(maxsize=64)
def known_shapes(positive: float, negative: float, area_ratio: float, other: Other) -> Shapes:
    """Give the shapes near stated sizes: chamber lengths over travel, self-filling negative over positive area."""
    lengths = tuple((max(positive * scale, _SHORTEST), chance) for scale, chance in _STATED_POSITIVE)
    negatives = tuple((negative * scale, chance) for scale, chance in _STATED_NEGATIVE)
    return _grid(lengths, negatives, area_ratio, ((1.0, 1.0),), other)


def _grid(
    positive: Chances, negative: Chances, area_ratio: float, scaling: Chances, other: Other | None = None
) -> Shapes:
    axes = (positive, negative, scaling)
    a, b, c = np.meshgrid(*([value for value, _ in axis] for axis in axes), indexing="ij")
    chances = np.meshgrid(*([chance for _, chance in axis] for axis in axes), indexing="ij")
    chance = np.prod(chances, axis=0).ravel()
    r = np.full(a.size, area_ratio)
    return Shapes(a.ravel(), b.ravel(), r, c.ravel() * OUTSIDE_KPA, chance / chance.sum(), other or Other())


def load_at(shapes: Shapes, pressure_kpa: float, s: float | Floats, n: float = 1.0) -> Floats:
    """Give the load per area that every shape carries at a sag [kPa]."""
    return np.asarray(_driving(shapes, pressure_kpa) * _pull(shapes, s, n) - _hold(shapes, s, n))


def sag_at(belief: Belief, pressure_kpa: float) -> Floats:
    """Give the sag of every possibility at a pressure, at most full travel."""
    of = _column(belief.shapes)
    if of.other.own_kpa or of.back is not None or of.beside is not None:
        return _sag_by_steps(of, belief.load, pressure_kpa)
    y = (belief.load + of.other.steady_kpa) / _driving(of, pressure_kpa)
    # 1 / (1 - s/a) - r / (1 + s/b) = y is a quadratic in s.
    square, linear, constant = y / (of.a * of.b), 1 / of.b + of.r / of.a - y * (1 / of.b - 1 / of.a), 1 - of.r - y
    root = np.sqrt(np.maximum(linear**2 - 4 * square * constant, 0.0))
    return np.asarray(np.clip(-2 * constant / (linear + root), 0.0, 1.0))


def pressure_for(belief: Belief, sag: float) -> Floats:
    """Give the pressure at which every possibility would sit at a sag [kPa]."""
    of = _column(belief.shapes)
    return np.asarray((belief.load + _hold(of, sag)) / _pull(of, sag) - of.outside_kpa)


def _sag_by_steps(shapes: Shapes, load: Floats, pressure_kpa: float) -> Floats:
    """Step along the slope to where the load is carried, never out of the stretch the answer is known to be in."""
    driving, own = _driving(shapes, pressure_kpa), shapes.other.own_kpa
    low, high = np.zeros_like(load), np.ones_like(load)
    s = np.full_like(load, _FIRST_SAG)
    for _ in range(_STEPS):
        short = load_at(shapes, pressure_kpa, s) - load
        low, high = np.where(short < 0, s, low), np.where(short < 0, high, s)
        slope = driving / (shapes.a * (1 - s / shapes.a) ** 2)
        slope = slope + (driving * shapes.r + own) / (shapes.b * (1 + s / shapes.b) ** 2)
        if shapes.back is not None:
            slope = slope + shapes.back.kpa * (s < shapes.back.length)
        if shapes.beside is not None:
            slope = slope + shapes.beside.kpa
        s = np.clip(s - short / slope, low, high)
    return s


def _driving(shapes: Shapes, pressure_kpa: float) -> Floats:
    return np.maximum(pressure_kpa + shapes.outside_kpa, _LEAST_KPA)


def _pull(shapes: Shapes, s: float | Floats, n: float = 1.0) -> Floats:
    """Give g(s)."""
    return np.asarray((1 / (1 - s / shapes.a)) ** n - shapes.r * (1 / (1 + s / shapes.b)) ** n)


def _hold(shapes: Shapes, s: float | Floats, n: float = 1.0) -> Floats:
    """Give h(s)."""
    other = shapes.other
    chamber = other.own_kpa * (1 / (1 + s / shapes.b)) ** n if other.own_kpa else 0.0
    back = shapes.back.kpa * np.maximum(shapes.back.length - s, 0.0) if shapes.back is not None else 0.0
    beside = shapes.beside.kpa * (shapes.beside.length + s) if shapes.beside is not None else 0.0
    return np.asarray(other.steady_kpa + chamber + back - beside)


def _log_slope(shapes: Shapes, pressure_kpa: float, s: float) -> Floats:
    """Give d ln load / ds, by a central difference."""
    step = 1e-5
    above, below = (np.maximum(load_at(shapes, pressure_kpa, s + sign * step), _LEAST_LOAD_KPA) for sign in (1, -1))
    return np.maximum(np.log(above / below) / (2 * step), _LEAST_SLOPE)


def _column(shapes: Shapes) -> Shapes:
    """Give the shapes as columns beside the places of each load."""
    return rows_of(shapes, np.arange(len(shapes.a))[:, None])


def rows_of(shapes: Shapes, index: npt.NDArray[np.int64]) -> Shapes:
    """Give some of the shapes, in any order and as often as asked for."""
    return Shapes(
        shapes.a[index],
        shapes.b[index],
        shapes.r[index],
        shapes.outside_kpa[index],
        shapes.chance[index],
        shapes.other,
        _coil_rows(shapes.back, index),
        _coil_rows(shapes.beside, index),
    )


def _coil_rows(coil: Coil | None, index: npt.NDArray[np.int64]) -> Coil | None:
    return None if coil is None else Coil(coil.kpa[index], coil.length[index])


def learn(shapes: Shapes, pressures_kpa: Sequence[float], sags: Sequence[float], *, end: str, blur: float) -> Belief:
    """Give what readings leave possible; `blur` is the reading error of the sag as a fraction of the travel.

    Each shape turns each reading into a log load. For every scatter, and for every choice of one slip among three or
    more, the load is then normal with a known mean and variance, and the chance of the possibility is how well the
    readings agree. The load has a flat prior in the logarithm, set so that a single reading favours no shape.
    """
    pairs = list(zip(pressures_kpa, sags, strict=True))
    seen = np.stack([np.log(np.maximum(load_at(shapes, p, s), _LEAST_LOAD_KPA)) for p, s in pairs])
    slope = np.stack([_log_slope(shapes, p, s) for p, s in pairs])
    noise, noise_chance = (np.asarray(part) for part in NOISE[end])
    # Axes from here on: reading or slip, shape, scatter.
    variance = (slope * blur)[:, :, None] ** 2 + noise**2
    about = seen.mean(axis=0)
    parts = _sums(variance, (seen - about)[:, :, None])
    total, first, second, log_variance = parts if len(sags) < _SLIP_FROM else _with_slips(parts, variance, seen - about)
    fit = -0.5 * (second - first**2 / total + np.log(total) + log_variance)
    fit += (np.log(slope).sum(axis=0) * (1 - 1 / len(sags)))[:, None]
    slip_chance = np.append(1.0, np.full(len(fit) - 1, _SLIP_CHANCE))[:, None, None]
    chance = np.exp(fit - fit.max()) * shapes.chance[:, None] * noise_chance * slip_chance
    return _belief(shapes, about[:, None] + first / total, 1 / np.sqrt(total), chance / chance.sum(), noise)


def _sums(variance: Floats, seen: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """Give weights, weighted loads, their squares and log variances, summed over the readings."""
    terms = (1 / variance, seen / variance, seen**2 / variance, np.log(variance))
    weight, first, second, logs = (term.sum(axis=0, keepdims=True) for term in terms)
    return weight, first, second, logs


def _with_slips(parts: tuple[Floats, ...], variance: Floats, seen: Floats) -> list[Floats]:
    """Put beside the sums those in which one reading after the other counts as a slip."""
    wider, seen = variance + _SLIP_SD**2, seen[:, :, None]
    less = 1 / wider - 1 / variance
    changes = (less, less * seen, less * seen**2, np.log(wider / variance))
    return [np.concatenate([part, part + change]) for part, change in zip(parts, changes, strict=True)]


def _belief(shapes: Shapes, mean: Floats, sd: Floats, chance: Floats, noise: Floats) -> Belief:
    """Keep the possibilities that matter and lay out their loads."""
    by_noise = chance.sum(axis=(0, 1))
    by_slip = chance.sum(axis=(1, 2))
    slip = int(np.argmax(by_slip)) - 1
    doubt = float(by_noise[-_WILD_LEVELS:].sum() + by_slip[1:].sum())
    # What is left out fades out first, so that the answer does not jump when a possibility comes or goes.
    fade = np.clip((chance.ravel() / chance.max() - _NEGLIGIBLE) / (_FADED - _NEGLIGIBLE), 0.0, 1.0)
    keep = np.flatnonzero(fade)
    row = keep // chance.shape[2] % chance.shape[1]
    kept = chance.ravel()[keep] * fade[keep]
    return Belief(
        rows_of(shapes, row),
        np.exp(mean.ravel()[keep][:, None] + _NODES * sd.ravel()[keep][:, None]),
        kept / kept.sum(),
        float(by_noise @ noise),
        doubt,
        slip if slip >= 0 else None,
    )


def quantiles(belief: Belief, values: Floats, at: Sequence[float]) -> list[float]:
    """Give weighted quantiles of a value over all possibilities.

    Between two places of its load a possibility is spread evenly, so that the answer moves without jumps when values
    pass one another. The sum of such pieces rises in straight lines from edge to edge.
    """
    low, high = np.minimum(values[:, :-1], values[:, 1:]), np.maximum(values[:, :-1], values[:, 1:])
    high = np.maximum(high, low + _THINNEST * (1 + np.abs(low)))
    density = (belief.chance[:, None] * _BETWEEN / (high - low)).ravel()
    edges = np.concatenate([low.ravel(), high.ravel()])
    order = np.argsort(edges)
    edges, slope = edges[order], np.cumsum(np.concatenate([density, -density])[order])
    below = np.concatenate([[0.0], np.cumsum(slope[:-1] * np.diff(edges))])
    found = np.interp(at, np.maximum.accumulate(below), edges)
    return [float(value) for value in np.clip(found, values.min(), values.max())]


def share(belief: Belief, happens: npt.NDArray[np.bool_]) -> float:
    """Give the chance of what happens in some of the possibilities."""
    return float(belief.chance @ (happens @ _NODE_WEIGHT))
