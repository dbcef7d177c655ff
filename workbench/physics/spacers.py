"""Another number of spacers: the pressure that keeps the sag, what the end of the travel gains, and the worse way."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import cast

from workbench.model.errors import InputError
from workbench.physics.air import (
    QUICK_N,
    AirChamber,
    force_n,
    pressure_for_sag_kpa,
    rate_n_per_mm,
    static_travel_mm,
    with_spacers,
)
from workbench.physics.limits import check_number


@dataclass(frozen=True, slots=True)
class SpacerChange:
    """A change of spacers with its pressure, beside leaving the pressure alone and beside pressure alone."""

    pressure_kpa: float  # at which the sag stays
    left_sag_mm: float  # sag with the new spacers when the pressure is left alone
    end_before_n: float  # quick force at the end of the travel, as it is
    end_left_n: float  # with the new spacers, the pressure left alone
    end_after_n: float  # with the new spacers and the pressure that keeps the sag
    alone_kpa: float | None  # pressure that gives this end force with the old spacers; None when it would be below zero
    alone_sag_mm: float | None  # and where the rider would sit then
    rate_before_n_per_mm: float  # at the sag
    rate_after_n_per_mm: float


def change_spacers(
    chamber: AirChamber, *, pressure_kpa: float, sag_mm: float, spacer_mm3: float, negative_kpa: float | None = None
) -> SpacerChange:
    """Give what another volume of spacers asks for and does.

    Parameters
    ----------
    chamber
        Sizes of the spring with the present spacers. A second positive chamber is taken as not reached.
    pressure_kpa, sag_mm
        Gauge pressure now, and the sag that was measured with it [kPa, mm].
    spacer_mm3
        Volume of all spacers from now on [mm3].
    negative_kpa
        Pressure of a negative chamber with its own valve [kPa gauge].

    Returns
    -------
    SpacerChange
        Pressures [kPa gauge], sags [mm], quick end forces [N] and rates at the sag [N/mm].

    Raises
    ------
    InputError
        If a value cannot be, or with so many spacers the piston would meet them.

    Notes
    -----
    The load is the static force at the sag. With it the new chamber is solved for the pressure. The end forces are
    those at full travel with n = 1.35. Each force goes in a straight line with pressure, so that the pressure for the
    same end force follows from two of them.

    References
    ----------
    Moran and Shapiro, Fundamentals of Engineering Thermodynamics, polytropic process p V^n = constant.

    Examples
    --------
    >>> fork = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)
    >>> change = change_spacers(fork, pressure_kpa=517.1, sag_mm=32.0, spacer_mm3=10_000)
    >>> round(change.pressure_kpa, 1), round(change.left_sag_mm, 1), round(change.alone_kpa or 0)
    (506.4, 31.3, 628)
    """
    now = replace(chamber, second_positive_mm3=0.0) if chamber.second_positive_mm3 else chamber
    check_number("sag_mm", sag_mm, above=0, below=now.travel_mm)
    then = with_spacers(now, spacer_mm3)

    def force(spring: AirChamber, kpa: float, x: float, n: float = 1.0) -> float:
        return cast(float, force_n(spring, pressure_kpa=kpa, travel_mm=x, n=n, negative_kpa=negative_kpa))

    def rate(spring: AirChamber, kpa: float) -> float:
        return cast(float, rate_n_per_mm(spring, pressure_kpa=kpa, travel_mm=sag_mm, negative_kpa=negative_kpa))

    def rest(spring: AirChamber, kpa: float) -> float:
        return static_travel_mm(spring, pressure_kpa=kpa, load_n=load_n, negative_kpa=negative_kpa)

    load_n = force(now, pressure_kpa, sag_mm)
    if load_n <= 0:
        raise InputError("sag_mm", sag_mm, "a sag at which the spring carries a load")
    kept_kpa = pressure_for_sag_kpa(then, load_n=load_n, sag_mm=sag_mm, negative_kpa=negative_kpa)
    end = now.travel_mm
    end_after_n = force(then, kept_kpa, end, QUICK_N)
    empty_n, hundred_n = (force(now, kpa, end, QUICK_N) for kpa in (0.0, 100.0))
    alone_kpa = (end_after_n - empty_n) / (hundred_n - empty_n) * 100.0
    bottoms = alone_kpa < 0 or force(now, alone_kpa, end) < load_n
    return SpacerChange(
        pressure_kpa=kept_kpa,
        left_sag_mm=rest(then, pressure_kpa),
        end_before_n=force(now, pressure_kpa, end, QUICK_N),
        end_left_n=force(then, pressure_kpa, end, QUICK_N),
        end_after_n=end_after_n,
        alone_kpa=None if bottoms else alone_kpa,
        alone_sag_mm=None if bottoms else rest(now, alone_kpa),
        rate_before_n_per_mm=rate(now, pressure_kpa),
        rate_after_n_per_mm=rate(then, kept_kpa),
    )
