"""Coil springs: the rate a load asks for, what can be bought, rate from wire or from readings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, sqrt
from typing import NamedTuple

import numpy as np

from workbench.model.errors import InputError, NotEnoughData
from workbench.model.units import from_unit, show
from workbench.physics.limits import check_number, check_numbers, percent

STOCK_STEP_N_PER_MM = from_unit(25, "spring_rate", "lbf/in")  # common practice, no source
_NEAR = 0.01  # sag this near to the target, as a fraction of the stroke, asks for no other spring


class StockSpring(NamedTuple):
    """A spring that can be bought and what it does on this unit."""

    rate_n_per_mm: float
    sag_fraction: float
    binds: bool


@dataclass(frozen=True, slots=True)
class RateAdvice:
    """Which coil spring a measured sag asks for; rates and loads along the unit's own axis."""

    load_n: float
    rate_n_per_mm: float
    stock: tuple[StockSpring, ...]
    reason: str
    preload_needed_mm: float = 0.0  # what the present spring would need for the target
    preload_force_n: float = 0.0


def next_rate(
    *,
    rate_n_per_mm: float,
    sag_mm: float,
    stroke_mm: float,
    target: float,
    preload_mm: float = 0.0,
    stock_step_n_per_mm: float | None = None,
    spring_stroke_mm: float | None = None,
    stock_rates_n_per_mm: Sequence[float] | None = None,
) -> RateAdvice:
    """Give the spring rate that brings a measured load to the target sag.

    Parameters
    ----------
    rate_n_per_mm, preload_mm
        The spring that is in, and its preload from slack-free contact [N/mm, mm].
    sag_mm, stroke_mm
        Sag measured with it, and the stroke of the unit [mm].
    target
        Sag aimed at, as a fraction of the stroke.
    stock_step_n_per_mm
        Step in which springs are sold [N/mm]; 25 lbf/in when not given.
    spring_stroke_mm
        Usable stroke of the springs offered [mm]; without it coil bind cannot be judged.
    stock_rates_n_per_mm
        The rates on the shelf, instead of a step [N/mm].

    Returns
    -------
    RateAdvice
        Load, exact rate, the stock rates around it as (rate, sag fraction, binds), and why.

    Raises
    ------
    InputError
        If the sag is not between zero and the stroke, or another value cannot be.

    Notes
    -----
    F = k (s + p);  k_target = F / (t S + p);  the sag of a stock rate is F / k - p. A spring binds when its usable
    stroke is less than the unit's stroke plus the preload.

    References
    ----------
    Hooke's law, as in Meriam and Kraige, Engineering Mechanics: Dynamics, 8/2.

    Examples
    --------
    >>> advice = next_rate(rate_n_per_mm=78.81, sag_mm=21.0, stroke_mm=57.5, target=0.30, preload_mm=1.0)
    >>> round(advice.load_n), round(advice.rate_n_per_mm, 1), round(advice.stock[1].sag_fraction, 3)
    (1734, 95.0, 0.296)
    """
    _check_measurement(rate_n_per_mm, sag_mm, stroke_mm, target, preload_mm)
    if spring_stroke_mm is not None:
        check_number("spring_stroke_mm", spring_stroke_mm, above=0)
    load_n = rate_n_per_mm * (sag_mm + preload_mm)
    exact = load_n / (target * stroke_mm + preload_mm)
    binds = spring_stroke_mm is not None and spring_stroke_mm < stroke_mm + preload_mm
    stock = tuple(
        StockSpring(rate, min(max(load_n / rate - preload_mm, 0.0) / stroke_mm, 1.0), binds)
        for rate in _rates_around(exact, stock_step_n_per_mm, stock_rates_n_per_mm)
    )
    preload_needed = load_n / rate_n_per_mm - target * stroke_mm
    reason = _reason(sag_mm / stroke_mm, target, exact, rate_n_per_mm, preload_needed)
    if binds:
        reason += _bind_sentence(spring_stroke_mm or 0.0, stroke_mm, preload_mm)
    return RateAdvice(load_n, exact, stock, reason, preload_needed, rate_n_per_mm * preload_mm)


def _check_measurement(rate: float, sag_mm: float, stroke_mm: float, target: float, preload_mm: float) -> None:
    check_number("rate_n_per_mm", rate, above=0)
    check_number("stroke_mm", stroke_mm, above=0)
    check_number("target", target, above=0, below=1)
    check_number("preload_mm", preload_mm, at_least=0)
    check_number(
        "sag_mm", sag_mm, above=0, below=stroke_mm, hint="At no sag or at the end of the stroke no load shows."
    )


def _rates_around(exact: float, step: float | None, shelf: Sequence[float] | None) -> tuple[float, ...]:
    """Give the nearest rate at or below and above the exact one."""
    if shelf is not None:
        for rate in check_numbers("stock_rates_n_per_mm", shelf):
            check_number("stock_rates_n_per_mm", rate, above=0)
        below = [rate for rate in shelf if rate <= exact]
        above = [rate for rate in shelf if rate > exact]
        return (*([max(below)] if below else []), *([min(above)] if above else []))
    step = check_number("stock_step_n_per_mm", STOCK_STEP_N_PER_MM if step is None else step, above=0)
    count = floor(exact / step + 1e-9)
    return tuple(step * number for number in (count, count + 1) if number > 0)


def _reason(sag: float, target: float, exact: float, rate: float, preload_needed_mm: float) -> str:
    seen = f"The sag is {percent(sag, 1)}, the target {percent(target, 1)}"
    if abs(sag - target) <= _NEAR:
        return f"{seen}: this spring fits."
    word = "stiffer" if exact > rate else "softer"
    wanted = f"{show(exact, 'spring_rate', unit='N/mm')} ({show(exact, 'spring_rate', unit='lbf/in')})"
    if preload_needed_mm > 0:
        warning = f"Preload does not mend it: this spring would need {preload_needed_mm:.2f} mm of it."
    else:
        warning = "Less preload does not mend it: even without any this spring sags too little."
    return f"{seen}: the load asks for a {word} spring, {wanted}. {warning}"


def _bind_sentence(spring_stroke_mm: float, stroke_mm: float, preload_mm: float) -> str:
    needed_mm = stroke_mm + preload_mm
    return (
        f" Coil bind: a spring with {spring_stroke_mm:g} mm of usable stroke is too short, {needed_mm:g} mm are needed."
        " Do not fit it."
    )


def preload_from_turns_mm(turns: float, pitch_mm: float) -> float:
    """Give the preload that turns of the collar from slack-free contact make [mm]."""
    return check_number("turns", turns, at_least=0) * check_number("pitch_mm", pitch_mm, above=0)


def wire_rate_n_per_mm(
    *, wire_mm: float, mean_diameter_mm: float, active_coils: float, shear_modulus_gpa: float
) -> float:
    """Give the rate of a helical spring from its sizes.

    Parameters
    ----------
    wire_mm, mean_diameter_mm
        Diameter of the wire, and of the coil from wire centre to wire centre [mm].
    active_coils
        Coils that deflect; closed ends do not.
    shear_modulus_gpa
        Shear modulus of the wire [GPa]; spring steel has about 77 to 82.

    Returns
    -------
    float
        Rate [N/mm].

    Raises
    ------
    InputError
        If a size is not above zero or the wire not thinner than the coil.

    Notes
    -----
    k = G d^4 / (8 D^3 n). The wire enters to the fourth power: 1 % more wire is 4 % more rate.

    References
    ----------
    Budynas and Nisbett, Shigley's Mechanical Engineering Design, 10th ed., eq. 10-9.

    Examples
    --------
    >>> round(wire_rate_n_per_mm(wire_mm=12, mean_diameter_mm=150, active_coils=10, shear_modulus_gpa=80), 3)
    6.144
    """
    check_number("mean_diameter_mm", mean_diameter_mm, above=0)
    check_number("wire_mm", wire_mm, above=0, below=mean_diameter_mm)
    check_number("active_coils", active_coils, above=0)
    check_number("shear_modulus_gpa", shear_modulus_gpa, above=0)
    return shear_modulus_gpa * 1000 * wire_mm**4 / (8 * mean_diameter_mm**3 * active_coils)


def fit_rate(travel_mm: Sequence[float], force_n: Sequence[float]) -> tuple[float, float, float]:
    """Give the rate of a spring from pressing it, with a 90 % interval.

    Parameters
    ----------
    travel_mm, force_n
        Readings in pairs, any order; preload and scale offset do not matter [mm, N].

    Returns
    -------
    tuple of float
        Rate and the ends of its 90 % interval [N/mm].

    Raises
    ------
    InputError
        If the readings do not pair up, are not finite, or the force does not rise.
    NotEnoughData
        With fewer than three readings, or all at one travel.

    Notes
    -----
    Straight line by least squares; the interval is Student's t with n - 2 degrees of freedom on the slope.

    References
    ----------
    Draper and Smith, Applied Regression Analysis, 3rd ed., ch. 1.

    Examples
    --------
    >>> [round(value, 2) for value in fit_rate([0, 10, 20, 30], [5, 803, 1601, 2405])]
    [79.98, 79.68, 80.28]
    """
    x, y = _pairs(travel_mm, force_n)
    if len(x) < 3 or np.ptp(x) == 0:
        raise NotEnoughData("A rate with its interval needs at least three readings at different travels.")
    centred = x - x.mean()
    spread = float(centred @ centred)
    slope = float(centred @ y) / spread
    if slope <= 0:
        raise InputError("force_n", f"{slope:.3g} N/mm", "a force that rises with travel")
    rest = y - y.mean() - slope * centred
    sd = sqrt(float(rest @ rest) / (len(x) - 2) / spread)
    half = _student_95(len(x) - 2) * sd
    return slope, slope - half, slope + half


def _pairs(travel_mm: Sequence[float], force_n: Sequence[float]) -> tuple[np.ndarray, np.ndarray]:
    travels, forces = check_numbers("travel_mm", travel_mm), check_numbers("force_n", force_n)
    if len(travels) != len(forces):
        raise InputError("force_n", f"{len(forces)} readings", f"one for each of the {len(travels)} travels")
    return np.asarray(travels, dtype=float), np.asarray(forces, dtype=float)


def _student_95(degrees: int) -> float:
    """Give the 95 % point of Student's t."""
    from scipy.special import stdtrit

    return float(stdtrit(degrees, 0.95))


def nested_load_n(travel_mm: float, springs: Sequence[tuple[float, float]]) -> float:
    """Give the load of springs side by side that engage one after the other.

    Parameters
    ----------
    travel_mm
        Travel [mm].
    springs
        Pairs of rate and the travel at which that spring begins to work [N/mm, mm].

    Notes
    -----
    F = sum of k_i max(x - x_i, 0).

    References
    ----------
    Bhandari, Design of Machine Elements, concentric springs.
    """
    check_number("travel_mm", travel_mm, at_least=0)
    return sum(
        check_number("rate_n_per_mm", rate, at_least=0) * max(travel_mm - check_number("engages_mm", engages), 0.0)
        for rate, engages in springs
    )


def rate_in_series_n_per_mm(rates_n_per_mm: Sequence[float]) -> float:
    """Give the rate of springs one behind the other, 1/k = sum of 1/k_i."""
    if not rates_n_per_mm:
        raise NotEnoughData("There is no spring to add up.")
    return 1 / sum(1 / check_number("rate_n_per_mm", rate, above=0) for rate in rates_n_per_mm)
