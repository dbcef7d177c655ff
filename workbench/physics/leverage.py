"""Leverage: wheel travel against shock stroke, from a survey at the bench."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from numpy.polynomial import legendre

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics.limits import check_number

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.intp]

# How far the ratio may bend, order by order, as fractions of its mean: a straight fall or rise of up to a third is
# common, a hump is smaller, finer waves smaller still. Own assumption; wide enough to give way to five readings.
_BEND_SD = np.array([1.0, 0.30, 0.12, 0.05, 0.025])
_NINETY = 1.6448536269514722
_WILD_SD = 5.0
_FEWEST_RATIO = 0.3  # a wheel that moves less than this per mm of stroke reads as going backwards


class OddReading(InputError):
    """A reading that contradicts the others; `place` is where it stands among those given, from 0."""

    def __init__(self, place: int, value: float, allowed: str, hint: str) -> None:
        super().__init__("wheel_mm", value, allowed, hint)
        self.place = place


@dataclass(frozen=True, slots=True)
class Leverage:
    """A smooth leverage curve; `travel_mm` of the wheel belongs to `stroke_mm` of the shock."""

    stroke_mm: float
    coefficients: tuple[float, ...]  # of the ratio over stroke, Legendre on -1..1
    covariance: tuple[tuple[float, ...], ...]

    @property
    def travel_mm(self) -> float:
        """Wheel travel at the end of the surveyed stroke [mm]."""
        return self.wheel(self.stroke_mm)

    @property
    def mean(self) -> float:
        """Wheel travel over shock stroke, the whole way."""
        return self.travel_mm / self.stroke_mm

    @property
    def progression(self) -> float:
        """Fall of the ratio from start to end as a fraction of the start; negative when it rises."""
        start, end = (float(self._ratio_at(stroke)) for stroke in (0.0, self.stroke_mm))
        return (start - end) / start

    def wheel(self, stroke_mm: float) -> float:
        """Give the wheel travel that belongs to a shock stroke [mm]."""
        check_number("stroke_mm", stroke_mm, at_least=0, at_most=self.stroke_mm)
        return float(self._travel_at(stroke_mm, self._integral))

    def stroke(self, wheel_mm: float) -> float:
        """Give the shock stroke that belongs to a wheel travel [mm]."""
        travel_mm = self.travel_mm
        check_number("wheel_mm", wheel_mm, at_least=0, at_most=travel_mm * (1 + 1e-9))
        integral = self._integral
        low, high = 0.0, self.stroke_mm
        while high - low > 1e-11 * self.stroke_mm:
            middle = (low + high) / 2
            low, high = (middle, high) if self._travel_at(middle, integral) < wheel_mm else (low, middle)
        return (low + high) / 2

    def ratio(self, wheel_mm: float) -> float:
        """Give the leverage ratio at a wheel travel: wheel movement per shock movement."""
        return float(self._ratio_at(self.stroke(wheel_mm)))

    def slope_per_mm(self, wheel_mm: float) -> float:
        """Give how the ratio changes per mm of shock stroke at a wheel travel."""
        u = 2 * self.stroke(wheel_mm) / self.stroke_mm - 1
        return float(legendre.legval(u, legendre.legder(self._b))) * 2 / self.stroke_mm

    def interval(self, wheel_mm: float) -> tuple[float, float]:
        """Give the 90 % interval of the ratio at a wheel travel."""
        u = 2 * self.stroke(wheel_mm) / self.stroke_mm - 1
        row = legendre.legvander(np.asarray([u]), len(self.coefficients) - 1)[0]
        half = _NINETY * float(np.sqrt(row @ np.asarray(self.covariance) @ row))
        middle = float(row @ self._b)
        return middle - half, middle + half

    @property
    def _b(self) -> Floats:
        return np.asarray(self.coefficients)

    @property
    def _integral(self) -> Floats:
        return np.asarray(legendre.legint(self._b, lbnd=-1), dtype=float)

    def _travel_at(self, stroke_mm: float, integral: Floats) -> Floats:
        u = 2 * stroke_mm / self.stroke_mm - 1
        return np.asarray(legendre.legval(u, integral)) * self.stroke_mm / 2

    def _ratio_at(self, stroke_mm: float | Floats) -> Floats:
        return np.asarray(legendre.legval(2 * np.asarray(stroke_mm) / self.stroke_mm - 1, self._b))


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
    little waviness; readings are normal with the sd given, more if they scatter more, and the zero of the wheel scale
    is read with that sd too. All normal, so the answer is closed: b = (X'X/v + S^-1)^-1 X'y/v. Own derivation.

    References
    ----------
    Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 14, linear regression with a normal prior.
    """
    strokes, wheels, order = _readings(stroke_mm, wheel_mm, reading_sd_mm)
    _check_rising(strokes, wheels, order, reading_sd_mm)
    coefficients, covariance, rest = _fit(strokes, wheels, reading_sd_mm)
    free = max(len(strokes) - 3, 1)
    scatter = float(np.sqrt(rest @ rest / free))
    if scatter > reading_sd_mm:
        coefficients, covariance, rest = _fit(strokes, wheels, scatter)
    worst = int(np.argmax(np.abs(rest)))
    if abs(rest[worst]) > _WILD_SD * reading_sd_mm:
        allowed = f"about {wheels[worst] - rest[worst]:.0f} mm at {strokes[worst]:g} mm of stroke, as the others say"
        raise OddReading(int(order[worst]), float(wheels[worst]), allowed, "Measure this point again.")
    curve = Leverage(
        float(strokes.max()), tuple(coefficients.tolist()), tuple(tuple(row) for row in covariance.tolist())
    )
    if (curve._ratio_at(np.linspace(0, curve.stroke_mm, 50)) <= 0).any():
        raise InputError("wheel_mm", "the curve", "wheel travel that rises with every mm of stroke")
    return curve


def stroke_from_length_mm(length_mm: Sequence[float]) -> list[float]:
    """Give the strokes that belong to shock lengths eye to eye; the longest is full extension [mm]."""
    if not len(length_mm):
        raise NotEnoughData("There is no length to start from.")
    for length in length_mm:
        check_number("length_mm", length, above=0)
    longest = max(length_mm)
    return [longest - length for length in length_mm]


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
    if len(stroke_mm) != len(wheel_mm):
        raise InputError("wheel_mm", f"{len(wheel_mm)} readings", f"one for each of the {len(stroke_mm)} strokes")
    for name, values in (("stroke_mm", stroke_mm), ("wheel_mm", wheel_mm)):
        for value in values:
            check_number(name, value, at_least=0)
    strokes, wheels = np.asarray(stroke_mm, dtype=float), np.asarray(wheel_mm, dtype=float)
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
    needed = _FEWEST_RATIO * np.diff(strokes) - 2.5 * np.sqrt(2) * sd_mm
    return np.flatnonzero(np.diff(wheels) < needed)


def _standing_out(strokes: Floats, wheels: Floats, one: int, pair: tuple[int, int]) -> float:
    """Give how far a reading lies off a parabola through the others, the doubtful pair left out; zero counts along."""
    rest = np.array([place for place in range(len(strokes)) if place not in pair], dtype=int)
    x, y = np.append(strokes[rest], 0.0), np.append(wheels[rest], 0.0)
    fit = np.polynomial.Polynomial.fit(x, y, min(2, len(np.unique(x)) - 1))
    return abs(float(fit(strokes[one])) - float(wheels[one]))


def _fit(strokes: Floats, wheels: Floats, sd_mm: float) -> tuple[Floats, Floats, Floats]:
    """Give coefficients, their covariance and what the curve leaves over; the zero of the scale is fitted too."""
    end = float(strokes.max())
    terms = len(_BEND_SD)
    columns = np.column_stack([_integrated(strokes, end, terms), np.where(strokes > 0, 1.0, 0.0)])
    mean = float(wheels[-1]) / end
    prior_sd = np.append(_BEND_SD * mean, sd_mm)
    start = np.zeros(terms + 1)
    start[0] = mean
    start_precision = np.diag(prior_sd**-2.0)
    precision = columns.T @ columns / sd_mm**2 + start_precision
    covariance = np.linalg.inv(precision)
    solved = covariance @ (columns.T @ wheels / sd_mm**2 + start_precision @ start)
    rest = wheels - columns @ solved
    return solved[:terms], covariance[:terms, :terms], rest


def _integrated(strokes: Floats, end: float, terms: int) -> Floats:
    """Give wheel travel at each stroke for each term of the ratio alone."""
    u = 2 * strokes / end - 1
    columns = [legendre.legval(u, legendre.legint(row, lbnd=-1)) for row in np.eye(terms)]
    return np.column_stack(columns) * end / 2
