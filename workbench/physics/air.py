"""Air springs: force, rate and energy over travel, and where a load comes to rest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import cast

import numpy as np

from workbench.model.errors import InputError
from workbench.physics import gas
from workbench.physics.atmosphere import SEA_LEVEL_KPA
from workbench.physics.chamber import AirChamber, Number, check_array, fill, fit_together, with_spacers
from workbench.physics.gas import Charge, Floats
from workbench.physics.limits import check_number

__all__ = [
    "QUICK_N",
    "AirChamber",
    "energy_j",
    "force_n",
    "positive_kpa",
    "pressure_for_sag_kpa",
    "rate_n_per_mm",
    "static_travel_mm",
    "with_spacers",
]

QUICK_N = 1.35  # between a slow, isothermal 1.0 and the 1.4 of air that keeps all its heat

Part = Callable[[AirChamber, Charge, Charge, Floats, Floats], Floats]
Asked = tuple[Number, Number, Number, Number | None, Number | None]  # pressure, travel, n, second, negative
_ROUNDING = 1e-9  # a load or travel this little beyond the end comes from rounding


def force_n(
    chamber: AirChamber,
    *,
    pressure_kpa: Number,
    travel_mm: Number,
    n: Number = 1.0,
    second_kpa: Number | None = None,
    negative_kpa: Number | None = None,
) -> float | Floats:
    """Give the force of an air spring over travel.

    Parameters
    ----------
    chamber
        Sizes of the spring.
    pressure_kpa
        Gauge pressure at full extension [kPa].
    travel_mm
        Travel used [mm]. This, the pressures and `n` may be arrays that fit together.
    n
        Polytropic exponent: 1.0 at rest, 1.3 to 1.4 in a hit.
    second_kpa
        Gauge pressure of a second positive chamber [kPa]; needed when there is one, at least that of the first.
    negative_kpa
        Gauge pressure of a negative chamber that is filled separately [kPa].

    Returns
    -------
    float or array
        Force [N]; a number when only numbers were given.

    Raises
    ------
    InputError
        If a pressure, the exponent or the travel cannot be, or a pressure is given for a chamber that is not there.

    Notes
    -----
    F = (P+ (V+ / (V+ - A x))^n - Pa) A - (P- (V- / (V- + A- x))^n - Pa) A- with absolute pressures; Pa is the air
    outside. A second positive chamber joins in where the first would exceed its pressure. A coil beside the air adds
    k (p + x). With equal areas and a
    self-filling negative chamber this is F = A P0 (1 / (1 - x/L+)^n - 1 / (1 + x/L-)^n). Friction, and the small
    area of the rod, are left out.

    References
    ----------
    Moran and Shapiro, Fundamentals of Engineering Thermodynamics, polytropic process p V^n = constant.

    Examples
    --------
    >>> fork = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)
    >>> round(force_n(fork, pressure_kpa=517.1, travel_mm=32.0))
    303
    """
    return _over_travel(_push_n, chamber, (pressure_kpa, travel_mm, n, second_kpa, negative_kpa))


def rate_n_per_mm(
    chamber: AirChamber,
    *,
    pressure_kpa: Number,
    travel_mm: Number,
    n: Number = 1.0,
    second_kpa: Number | None = None,
    negative_kpa: Number | None = None,
) -> float | Floats:
    """Give the local rate dF/dx of an air spring; arguments and errors as for `force_n` [N/mm].

    Notes
    -----
    k = n P A^2 / V for each chamber, with the absolute pressure and volume it has at that travel.
    """
    return _over_travel(_slope_n_per_mm, chamber, (pressure_kpa, travel_mm, n, second_kpa, negative_kpa))


def energy_j(
    chamber: AirChamber,
    *,
    pressure_kpa: Number,
    travel_mm: Number,
    n: Number = 1.0,
    second_kpa: Number | None = None,
    negative_kpa: Number | None = None,
) -> float | Floats:
    """Give the energy taken up from full extension to a travel; arguments and errors as for `force_n` [J].

    Notes
    -----
    The integral of the force, in closed form: W = P V ((V / V')^(n-1) - 1) / (n - 1), and P V ln(V / V') for n = 1.
    """
    return _over_travel(_work_j, chamber, (pressure_kpa, travel_mm, n, second_kpa, negative_kpa))


def positive_kpa(
    chamber: AirChamber,
    *,
    pressure_kpa: Number,
    travel_mm: Number,
    n: Number = 1.0,
    second_kpa: Number | None = None,
) -> float | Floats:
    """Give the gauge pressure in the positive chamber at a travel; arguments and errors as for `force_n` [kPa]."""
    return _over_travel(_inside_kpa, chamber, (pressure_kpa, travel_mm, n, second_kpa, None))


def static_travel_mm(
    chamber: AirChamber,
    *,
    pressure_kpa: float,
    load_n: float,
    n: float = 1.0,
    second_kpa: float | None = None,
    negative_kpa: float | None = None,
) -> float:
    """Give the travel at which the spring carries a load.

    Parameters
    ----------
    load_n
        Load along the spring's axis [N]; the others as for `force_n`.

    Returns
    -------
    float
        Travel [mm]; 0 when the load does not move the spring.

    Raises
    ------
    InputError
        If the load is negative or more than the spring can carry.

    Notes
    -----
    The force rises all the way, so halving the travel finds the one answer, here to a billionth of the travel.
    """
    optional = (("second_kpa", second_kpa), ("negative_kpa", negative_kpa))
    for name, value in (("pressure_kpa", pressure_kpa), ("n", n), *optional):
        if value is not None or name in ("pressure_kpa", "n"):
            check_number(name, cast(float, value))
    check_number("load_n", load_n, at_least=0)
    sides = fill(chamber, pressure_kpa, n, second_kpa, negative_kpa)

    def push(x: float) -> float:
        return float(_push_n(chamber, *sides, np.asarray(x), np.asarray(n)))

    most_n = push(chamber.travel_mm)
    if load_n > most_n * (1 + _ROUNDING):
        raise InputError("load_n", load_n, f"0 to {most_n:.6g} N", "More than this bottoms the spring out.")
    if load_n >= most_n:
        return chamber.travel_mm
    low, high = 0.0, chamber.travel_mm
    if load_n <= push(low):
        return 0.0
    while high - low > 1e-10 * chamber.travel_mm:
        middle = (low + high) / 2
        low, high = (middle, high) if push(middle) < load_n else (low, middle)
    return (low + high) / 2


def pressure_for_sag_kpa(
    chamber: AirChamber, *, load_n: float, sag_mm: float, negative_kpa: float | None = None
) -> float:
    """Give the gauge pressure at which a load sits at a sag; a second positive chamber is taken as not yet reached.

    Raises
    ------
    InputError
        If load or sag cannot be, or no pressure above zero carries the load there.
    """
    check_number("load_n", load_n, above=0)
    check_number("sag_mm", sag_mm, above=0, below=chamber.travel_mm)
    alone = replace(chamber, second_positive_mm3=0.0) if chamber.second_positive_mm3 else chamber
    at_zero, at_hundred = (
        float(np.asarray(force_n(alone, pressure_kpa=kpa, travel_mm=sag_mm, negative_kpa=negative_kpa)))
        for kpa in (0.0, 100.0)
    )
    needed = (load_n - at_zero) / (at_hundred - at_zero) * 100.0  # the force goes in a straight line with pressure
    return check_number("pressure_kpa", needed, at_least=0, hint="This spring is too large for the load.")


def _over_travel(part: Part, chamber: AirChamber, asked: Asked) -> float | Floats:
    """Check what was asked and give one part of the answer; a number for numbers, else an array."""
    pressure_kpa, travel_mm, n, second_kpa, negative_kpa = asked
    end_mm = chamber.travel_mm
    x = np.minimum(check_array("travel_mm", travel_mm, at_least=0, at_most=end_mm * (1 + _ROUNDING), unit="mm"), end_mm)
    positive, negative = fill(chamber, pressure_kpa, n, second_kpa, negative_kpa)
    fit_together(
        travel_mm=x,
        n=np.asarray(n),
        pressure_kpa=positive.absolute_kpa,
        second_kpa=np.asarray(positive.second_kpa),
        negative_kpa=negative.absolute_kpa,
    )
    result = part(chamber, positive, negative, x, np.asarray(n, dtype=float))
    return float(result) if np.ndim(result) == 0 else result


def _push_n(chamber: AirChamber, positive: Charge, negative: Charge, x: Floats, n: Floats) -> Floats:
    coil = gas.coil_push_n(chamber.negative_coil_n_per_mm, chamber.negative_coil_reach_mm, x)
    beside = gas.beside_push_n(chamber.coil_n_per_mm, chamber.coil_preload_mm, x)
    return np.asarray(gas.push_n(positive, x, n) - gas.push_n(negative, x, n) - coil + beside)


def _slope_n_per_mm(chamber: AirChamber, positive: Charge, negative: Charge, x: Floats, n: Floats) -> Floats:
    coil = gas.coil_slope_n_per_mm(chamber.negative_coil_n_per_mm, chamber.negative_coil_reach_mm, x)
    return np.asarray(
        gas.slope_n_per_mm(positive, x, n) - gas.slope_n_per_mm(negative, x, n) + coil + chamber.coil_n_per_mm
    )


def _work_j(chamber: AirChamber, positive: Charge, negative: Charge, x: Floats, n: Floats) -> Floats:
    coil = gas.coil_work_j(chamber.negative_coil_n_per_mm, chamber.negative_coil_reach_mm, x)
    beside = gas.beside_work_j(chamber.coil_n_per_mm, chamber.coil_preload_mm, x)
    return np.asarray(gas.work_j(positive, x, n) - gas.work_j(negative, x, n) - coil + beside)


def _inside_kpa(chamber: AirChamber, positive: Charge, negative: Charge, x: Floats, n: Floats) -> Floats:
    return np.asarray(gas.absolute_kpa(positive, x, n) - SEA_LEVEL_KPA)
