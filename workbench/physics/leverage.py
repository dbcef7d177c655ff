"""Leverage: wheel travel against shock stroke, from a survey at the bench."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import numpy.typing as npt
from numpy.polynomial import legendre

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics.leverage_curve import Floats, Leverage
from workbench.physics.limits import check_number, check_numbers

__all__ = ["Leverage", "OddReading", "stroke_from_length_mm", "survey", "wheel_rate_n_per_mm"]

Places = npt.NDArray[np.intp]

# How far the ratio may bend, order by order, as fractions of its mean: a straight fall or rise of up to a third is
# common, a hump is smaller, finer waves smaller still. Own assumption; wide enough to give way to five readings.
_BEND_SD = np.array([1.0, 0.30, 0.12, 0.05, 0.025])

# The reading error is stated and then learned: factors of what was stated, and how likely each is beforehand.
_FACTORS = np.exp(np.linspace(np.log(0.1), np.log(6), 18))
_FACTOR_CHANCE = np.exp(-0.5 * (np.log(_FACTORS) / 0.5) ** 2)

_WILD_SD = 5.0
_BACK_SD = 3.5 * np.sqrt(2)  # two readings each with its error
_FEWEST_RATIO = 0.5  # a wheel that moves less than this per mm of stroke reads as going backwards


class OddReading(InputError):
    """A reading that contradicts the others; `place` is where it stands among those given, from 0."""

    def __init__(self, place: int, value: float, allowed: str, hint: str) -> None:
        super().__init__("wheel_mm", value, allowed, hint)
        self.place = place


def survey(stroke_mm: Sequence[float], wheel_mm: Sequence[float], *, reading_sd_mm: float = 1.0) -> Leverage:
    """Give the leverage curve from pairs of shock stroke and wheel travel.

    Parameters
    ----------
    stroke_mm, wheel_mm
        Readings in pairs, in any order, both zero at full extension [mm]. The largest stroke is the end of the curve.
    reading_sd_mm
        Standard deviation of a wheel reading [mm].

    Returns
    -------
    Leverage
        Smooth curve with its uncertainty.

    Raises
    ------
    InputError
        If readings do not pair up, are negative, contradict one another, or the wheel goes back while the shock moves
        on; the last two as OddReading, which says which reading it is.
    NotEnoughData
        With fewer than three different strokes beside full extension.

    Notes
    -----
    The ratio is a polynomial of the stroke, its coefficients have a normal prior that allows much slope, some hump and
    little waviness; readings are normal and the zero of the wheel scale is read with the same sd. For each sd near the
    stated one the answer is closed, b = (X'X/v + S^-1)^-1 X'y/v, and the answers are weighed by how well that sd
    explains the readings. Own derivation.

    References
    ----------
    Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 14, linear regression with a normal prior.
    """
    strokes, wheels, order = _readings(stroke_mm, wheel_mm, reading_sd_mm)
    _check_rising(strokes, wheels, order, reading_sd_mm)
    model = _model(strokes, wheels)
    _check_agreeing(model, strokes, wheels, order, reading_sd_mm)
    coefficients, covariance = _fit(model, reading_sd_mm)
    rows = tuple(tuple(row) for row in covariance.tolist())
    curve = Leverage(float(strokes.max()), tuple(coefficients.tolist()), rows)
    if not curve.rises():
        raise InputError("wheel_mm", "the curve", "wheel travel that rises with every mm of stroke")
    return replace(curve, beyond_mm=max(float(wheels.max()) - curve.travel_mm, 0.0))


def stroke_from_length_mm(length_mm: Sequence[float]) -> list[float]:
    """Give the strokes that belong to shock lengths eye to eye; the longest is full extension [mm]."""
    lengths = [check_number("length_mm", length, above=0) for length in check_numbers("length_mm", length_mm)]
    if not lengths:
        raise NotEnoughData("There is no length to start from.")
    return [max(lengths) - length for length in lengths]


def wheel_rate_n_per_mm(
    leverage: Leverage, *, wheel_mm: float, shock_rate_n_per_mm: float, shock_force_n: float
) -> float:
    """Give the rate felt at the wheel.

    Parameters
    ----------
    wheel_mm
        Wheel travel [mm].
    shock_rate_n_per_mm, shock_force_n
        Local rate and force of the shock there [N/mm, N].

    Returns
    -------
    float
        Wheel rate [N/mm].

    Raises
    ------
    InputError
        If the travel is outside the curve, or force or rate is not finite.

    Notes
    -----
    F_w = F_s / R, so k_w = k_s / R^2 + F_s d(1/R)/dy with d(1/R)/dy = -R'(s) / R^3. A falling ratio adds rate, the
    second term; leaving it out is a common mistake.

    References
    ----------
    Virtual work, as in Dixon, Suspension Geometry and Computation, motion ratio and installation ratio.
    """
    check_number("shock_rate_n_per_mm", shock_rate_n_per_mm)
    check_number("shock_force_n", shock_force_n)
    ratio = leverage.ratio(wheel_mm)
    return shock_rate_n_per_mm / ratio**2 - shock_force_n * leverage.slope_per_mm(wheel_mm) / ratio**3


def _readings(stroke_mm: Sequence[float], wheel_mm: Sequence[float], sd_mm: float) -> tuple[Floats, Floats, Places]:
    """Give the readings by stroke, and where each stood among those given."""
    check_number("reading_sd_mm", sd_mm, above=0)
    strokes = np.asarray(check_numbers("stroke_mm", stroke_mm, at_least=0), dtype=float)
    wheels = np.asarray(check_numbers("wheel_mm", wheel_mm, at_least=0), dtype=float)
    if len(strokes) != len(wheels):
        raise InputError("wheel_mm", f"{len(wheels)} readings", f"one for each of the {len(strokes)} strokes")
    if len(np.unique(strokes[strokes > 0])) < 3:
        raise NotEnoughData("A leverage curve needs readings at three strokes or more beside full extension.")
    order = np.argsort(strokes, kind="stable")
    return strokes[order], wheels[order], order


def _check_rising(strokes: Floats, wheels: Floats, order: Places, sd_mm: float) -> None:
    """Refuse a wheel that goes back by more than reading error can explain, naming the reading that stands out."""
    back = _going_back(strokes, wheels, sd_mm)
    if not len(back):
        return
    at = int(back[0]) + 1
    odd = max((at - 1, at), key=lambda one: _standing_out(strokes, wheels, one, (at - 1, at)))
    side, other = ("above", at - 1) if odd == at else ("below", at)
    allowed = f"{side} {wheels[other]:g} mm, the reading at {strokes[other]:g} mm of stroke"
    hint = "The wheel cannot go back while the shock moves on."
    raise OddReading(int(order[odd]), float(wheels[odd]), allowed, hint)


def _going_back(strokes: Floats, wheels: Floats, sd_mm: float) -> Places:
    moved, on = np.diff(strokes), np.diff(wheels)
    on = np.where(moved == 0, -np.abs(on), on)  # two readings at one stroke contradict whichever is larger
    return np.flatnonzero(on < _FEWEST_RATIO * moved - _BACK_SD * sd_mm)


def _standing_out(strokes: Floats, wheels: Floats, one: int, pair: tuple[int, int]) -> float:
    """Give how far a reading lies off a parabola through the others, the doubtful pair left out; zero counts along."""
    rest = np.array([place for place in range(len(strokes)) if place not in pair], dtype=int)
    x, y = np.append(strokes[rest], 0.0), np.append(wheels[rest], 0.0)
    fit = np.polynomial.Polynomial.fit(x, y, min(2, len(np.unique(x)) - 1))
    return abs(float(fit(strokes[one])) - float(wheels[one]))


def _model(strokes: Floats, wheels: Floats) -> tuple[Floats, Floats, float]:
    """Give what each coefficient, and the zero of the scale, adds to the readings; the readings off a flat curve."""
    end = float(strokes.max())
    columns = np.column_stack([_integrated(strokes, end, len(_BEND_SD)), np.ones(len(strokes))])
    columns[(strokes == 0) & (wheels == 0)] = 0.0  # nothing at nothing was not read but agreed
    mean = float(wheels[strokes == end].mean()) / end
    return columns, wheels - mean * columns[:, 0], mean


def _check_agreeing(
    model: tuple[Floats, Floats, float], strokes: Floats, wheels: Floats, order: Places, sd_mm: float
) -> None:
    """Refuse a reading far off what the others say, as far as the usual reading is off."""
    columns, off, mean = model
    change, covariance, _ = _fit_with(*model, sd_mm)
    own_share = np.einsum("ij,jk,ik->i", columns, covariance, columns) / sd_mm**2
    worst = int(np.argmax(np.abs(off - columns @ change) / np.sqrt(np.maximum(1 - own_share, 1e-3))))
    others = np.arange(len(off)) != worst
    change, covariance, _ = _fit_with(columns[others], off[others], mean, sd_mm)
    away_mm = float(off[worst] - columns[worst] @ change)
    expected_sd_mm = float(np.sqrt(sd_mm**2 + columns[worst] @ covariance @ columns[worst]))
    usual = max(1.0, 1.4826 * float(np.median(np.abs(off[others] - columns[others] @ change))) / sd_mm)
    if abs(away_mm) > _WILD_SD * usual * expected_sd_mm:
        allowed = f"about {wheels[worst] - away_mm:.0f} mm at {strokes[worst]:g} mm of stroke, as the others say"
        raise OddReading(int(order[worst]), float(wheels[worst]), allowed, "Measure this point again.")


def _fit(model: tuple[Floats, Floats, float], stated_sd_mm: float) -> tuple[Floats, Floats]:
    """Give the coefficients and their covariance, over every reading error near the stated one."""
    fits = [_fit_with(*model, stated_sd_mm * factor) for factor in _FACTORS]
    changes, covariances, log_fit = (np.asarray(part) for part in zip(*fits, strict=True))
    chance = _FACTOR_CHANCE * np.exp(log_fit - log_fit.max())
    chance /= chance.sum()
    middle = chance @ changes
    apart = changes - middle
    covariance = np.tensordot(chance, covariances, 1) + (apart * chance[:, None]).T @ apart
    middle[0] += model[2]
    terms = len(_BEND_SD)
    return middle[:terms], covariance[:terms, :terms]


def _fit_with(columns: Floats, off: Floats, mean: float, sd_mm: float) -> tuple[Floats, Floats, float]:
    """Give the change of the coefficients, its covariance, and how well this reading error explains the readings."""
    prior_sd = np.append(_BEND_SD * mean, sd_mm)
    precision = columns.T @ columns / sd_mm**2 + np.diag(prior_sd**-2.0)
    covariance = np.asarray(np.linalg.inv(precision), dtype=float)
    pull = columns.T @ off / sd_mm**2
    change = covariance @ pull
    readings = int(columns.any(axis=1).sum())
    log_size = 2 * readings * np.log(sd_mm) + np.linalg.slogdet(precision)[1] + 2 * np.log(prior_sd).sum()
    return change, covariance, float(-0.5 * (off @ off / sd_mm**2 - pull @ change + log_size))


def _integrated(strokes: Floats, end: float, terms: int) -> Floats:
    """Give wheel travel at each stroke for each term of the ratio alone."""
    u = 2 * strokes / end - 1
    columns = [legendre.legval(u, legendre.legint(row, lbnd=-1)) for row in np.eye(terms)]
    return np.column_stack(columns) * end / 2
