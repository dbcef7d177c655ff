"""Air springs: force, rate and energy over travel, and where a load comes to rest."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from workbench.model.errors import InputError
from workbench.physics import gas
from workbench.physics.atmosphere import SEA_LEVEL_KPA
from workbench.physics.gas import Charge, Floats
from workbench.physics.limits import check_number

Number = float | npt.ArrayLike
QUICK_N = 1.35  # between a slow, isothermal 1.0 and the 1.4 of air that keeps all its heat


@dataclass(frozen=True, slots=True)
class AirChamber:
    """The sizes of an air spring; volumes are those at full extension.

    Without a negative chamber (volume 0) the outside air acts on the other side of the piston. The negative chamber
    fills itself from the positive one at full extension unless its own pressure is given. A negative coil pushes
    against the spring over the first part of the travel, its reach.
    """

    area_mm2: float
    positive_mm3: float
    negative_mm3: float
    travel_mm: float
    spacer_mm3: float = 0.0
    second_positive_mm3: float = 0.0
    negative_area_mm2: float | None = None  # the piston's area when not given
    negative_coil_n_per_mm: float = 0.0
    negative_coil_reach_mm: float = 0.0

    def __post_init__(self) -> None:
        check_number("area_mm2", self.area_mm2, above=0)
        check_number("travel_mm", self.travel_mm, above=0)
        check_number("positive_mm3", self.positive_mm3, above=0)
        for name in ("negative_mm3", "second_positive_mm3", "negative_coil_n_per_mm", "negative_coil_reach_mm"):
            check_number(name, getattr(self, name), at_least=0)
        if self.negative_area_mm2 is not None:
            check_number("negative_area_mm2", self.negative_area_mm2, above=0)
        swept_mm3 = self.area_mm2 * self.travel_mm
        room_mm3 = self.positive_mm3 + self.second_positive_mm3 - swept_mm3
        if room_mm3 <= 0:
            allowed = f"above {swept_mm3 - self.second_positive_mm3:.0f} mm3, what the piston sweeps"
            raise InputError("positive_mm3", self.positive_mm3, allowed, "The chamber is shorter than the travel.")
        if self.positive_mm3 <= 0 or not 0 <= self.spacer_mm3 < min(room_mm3, self.positive_mm3):
            raise InputError(
                "spacer_mm3",
                self.spacer_mm3,
                f"0 to below {min(room_mm3, self.positive_mm3):.0f} mm3",
                "With more spacers the piston would meet them before the end of the travel.",
            )


def with_spacers(chamber: AirChamber, spacer_mm3: float) -> AirChamber:
    """Give the same spring with spacers of that volume in all."""
    return replace(chamber, spacer_mm3=spacer_mm3)


def force_n(
    chamber: AirChamber,
    *,
    pressure_kpa: float,
    travel_mm: Number,
    n: float = 1.0,
    second_kpa: float | None = None,
    negative_kpa: float | None = None,
) -> float | Floats:
    """Give the force of an air spring over travel.

    Parameters
    ----------
    chamber
        Sizes of the spring.
    pressure_kpa
        Gauge pressure at full extension [kPa].
    travel_mm
        Travel used, a number or an array [mm].
    n
        Polytropic exponent: 1.0 at rest, 1.3 to 1.4 in a hit.
    second_kpa
        Gauge pressure of a second positive chamber [kPa]; needed when there is one, at least that of the first.
    negative_kpa
        Gauge pressure of a negative chamber that is filled separately [kPa].

    Returns
    -------
    float or array
        Force, of the shape of `travel_mm` [N].

    Raises
    ------
    InputError
        If a pressure, the exponent or the travel cannot be.

    Notes
    -----
    F = (P+ (V+ / (V+ - A x))^n - Pa) A - (P- (V- / (V- + A- x))^n - Pa) A- with absolute pressures; Pa is the air
    outside. A second positive chamber joins in where the first would exceed its pressure. With equal areas and a
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
    x = _travel(chamber, travel_mm)
    positive, negative = _charges(chamber, pressure_kpa, n, second_kpa, negative_kpa)
    force = gas.push_n(positive, x, n) - gas.push_n(negative, x, n) - gas.coil_push_n(*_coil(chamber), x)
    return _like(travel_mm, force)


def rate_n_per_mm(
    chamber: AirChamber,
    *,
    pressure_kpa: float,
    travel_mm: Number,
    n: float = 1.0,
    second_kpa: float | None = None,
    negative_kpa: float | None = None,
) -> float | Floats:
    """Give the local rate dF/dx of an air spring; arguments and errors as for `force_n` [N/mm].

    Notes
    -----
    k = n P A^2 / V for each chamber, with the absolute pressure and volume it has at that travel.
    """
    x = _travel(chamber, travel_mm)
    positive, negative = _charges(chamber, pressure_kpa, n, second_kpa, negative_kpa)
    rate = gas.slope_n_per_mm(positive, x, n) - gas.slope_n_per_mm(negative, x, n)
    return _like(travel_mm, rate + gas.coil_slope_n_per_mm(*_coil(chamber), x))


def energy_j(
    chamber: AirChamber,
    *,
    pressure_kpa: float,
    travel_mm: Number,
    n: float = 1.0,
    second_kpa: float | None = None,
    negative_kpa: float | None = None,
) -> float | Floats:
    """Give the energy taken up from full extension to a travel; arguments and errors as for `force_n` [J].

    Notes
    -----
    The integral of the force, in closed form: W = P V ((V / V')^(n-1) - 1) / (n - 1), and P V ln(V / V') for n = 1.
    """
    x = _travel(chamber, travel_mm)
    positive, negative = _charges(chamber, pressure_kpa, n, second_kpa, negative_kpa)
    work = gas.work_j(positive, x, n) - gas.work_j(negative, x, n) - gas.coil_work_j(*_coil(chamber), x)
    return _like(travel_mm, work)


def positive_kpa(
    chamber: AirChamber,
    *,
    pressure_kpa: float,
    travel_mm: Number,
    n: float = 1.0,
    second_kpa: float | None = None,
) -> float | Floats:
    """Give the gauge pressure in the positive chamber at a travel; arguments and errors as for `force_n` [kPa]."""
    x = _travel(chamber, travel_mm)
    positive, _ = _charges(chamber, pressure_kpa, n, second_kpa, None)
    return _like(travel_mm, gas.absolute_kpa(positive, x, n) - SEA_LEVEL_KPA)


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
    positive, negative = _charges(chamber, pressure_kpa, n, second_kpa, negative_kpa)
    check_number("load_n", load_n, at_least=0)

    def push(x: float) -> float:
        at = np.asarray(x)
        return float(gas.push_n(positive, at, n) - gas.push_n(negative, at, n) - gas.coil_push_n(*_coil(chamber), at))

    most_n = push(chamber.travel_mm)
    if load_n > most_n:
        raise InputError("load_n", load_n, f"0 to {most_n:.0f} N", "More than this bottoms the spring out.")
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


def _charges(
    chamber: AirChamber, pressure_kpa: float, n: float, second_kpa: float | None, negative_kpa: float | None
) -> tuple[Charge, Charge]:
    """Give the positive and the negative side as filled, after checking what was asked."""
    check_number("pressure_kpa", pressure_kpa, at_least=0)
    check_number("n", n, at_least=1.0, at_most=5 / 3)
    if chamber.second_positive_mm3 > 0:
        hint = "A second positive chamber needs its own pressure, at least that of the first."
        second_kpa = check_number(
            "second_kpa", float("nan") if second_kpa is None else second_kpa, at_least=pressure_kpa, hint=hint
        )
    if negative_kpa is not None:
        check_number("negative_kpa", negative_kpa, at_least=0)
    positive = Charge(
        -chamber.area_mm2,
        chamber.positive_mm3 - chamber.spacer_mm3,
        pressure_kpa + SEA_LEVEL_KPA,
        chamber.second_positive_mm3,
        (second_kpa or 0.0) + SEA_LEVEL_KPA,
    )
    inside_kpa = pressure_kpa if negative_kpa is None else negative_kpa
    area_mm2 = chamber.negative_area_mm2 or chamber.area_mm2
    return positive, Charge(area_mm2, chamber.negative_mm3, inside_kpa + SEA_LEVEL_KPA)


def _coil(chamber: AirChamber) -> tuple[float, float]:
    return chamber.negative_coil_n_per_mm, chamber.negative_coil_reach_mm


def _travel(chamber: AirChamber, travel_mm: Number) -> Floats:
    x = np.asarray(travel_mm, dtype=float)
    outside = ~((x >= 0) & (x <= chamber.travel_mm))
    if outside.any():
        raise InputError("travel_mm", x[outside].flat[0], f"0 to {chamber.travel_mm:g} mm")
    return x


def _like(travel_mm: Number, result: Floats) -> float | Floats:
    return float(result) if np.ndim(travel_mm) == 0 else result
