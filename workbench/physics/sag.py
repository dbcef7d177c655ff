"""Sag of an air spring: the pressure to try next, and when to stop measuring."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics.limits import check_number, percent
from workbench.physics.shapes import (
    OUTSIDE_KPA,
    Belief,
    Coil,
    Other,
    Shapes,
    known_shapes,
    learn,
    pressure_for,
    quantiles,
    sag_at,
    share,
    typical_shapes,
)

if TYPE_CHECKING:
    from workbench.physics.air import AirChamber
    from workbench.physics.leverage import Leverage

_READING_SD_MM = 0.2
_FELT_SAG = 0.015
_SURE = 0.95
_LIMIT_SURE = 0.90
_DOUBTFUL = 0.5
_MOST_KPA = 10_000.0
_SAME_TRAVEL_MM = 0.5
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Coils:
    """Coils in an air spring: one in place of the negative chamber, and rate and preload of one beside the air."""

    is_negative: bool = False
    rate_n_per_mm: float = 0.0
    preload_mm: float = 0.0


NO_COILS = Coils()


@dataclass(frozen=True, slots=True)
class SagReading:
    """One settled reading, several mountings combined: gauge pressure and sag of the unit's own travel."""

    pressure_kpa: float
    sag_mm: float


@dataclass(frozen=True, slots=True)
class PressureAdvice:
    """The pressure to set next, the sag to expect there with its 90 % interval, and whether to measure on."""

    pressure_kpa: float
    sag_fraction: float
    sag_low: float
    sag_high: float
    settled: bool
    limited: str | None
    reason: str
    readings_disagree: bool = False


def next_pressure(
    readings: Sequence[SagReading],
    *,
    travel_mm: float,
    target: float,
    end: str,
    minimum_kpa: float | None = None,
    maximum_kpa: float | None = None,
    chamber: AirChamber | None = None,
    negative_kpa: float | None = None,
    reading_sd_mm: float = _READING_SD_MM,
    coils: Coils = NO_COILS,
) -> PressureAdvice:
    """Give the pressure most likely to bring the sag to its target, from all readings so far.

    Parameters
    ----------
    readings
        Pressure [kPa gauge] and sag [mm] of each setting measured, posture alike.
    travel_mm
        Travel of the unit itself: of a fork, or the stroke of a shock [mm].
    target
        Sag aimed at, as a fraction of that travel.
    end
        "front" or "rear"; the load at the front varies more from mounting to mounting.
    minimum_kpa, maximum_kpa
        Limits of the unit; the advice never leaves them [kPa gauge].
    chamber
        Sizes of the spring when known; typical ones are assumed otherwise. A second positive chamber is taken as not
        yet reached.
    negative_kpa
        Pressure of a negative chamber with its own valve, when the sizes are known [kPa gauge].
    reading_sd_mm
        How far a reading lies off because of the way it is taken [mm]; the scatter of the rider comes on top.
    coils
        Coils in a spring whose sizes are not known; where they are, the coils are part of the chamber.

    Returns
    -------
    PressureAdvice
        Pressure, the true sag expected there with its 90 % interval, and whether another measurement is worth while.

    Raises
    ------
    NotEnoughData
        Without a reading.
    InputError
        If a pressure, sag, limit or the target cannot be.

    Notes
    -----
    A grid over chamber lengths and the scaling between gauge and absolute pressure, over the scatter of a reading and
    over a single slip; for each the load is normal in closed form. The advice is the median of the pressures that would
    meet the target. Settled means that the true sag lies within 1.5 points of the target with 95 % chance there. Own
    derivation; the scatter of a rider on a bike and the chamber sizes are common practice, no source.

    References
    ----------
    Moran and Shapiro, Fundamentals of Engineering Thermodynamics, for the isothermal gas; Gelman et al., Bayesian Data
    Analysis, 3rd ed., ch. 3, for the grid.

    Examples
    --------
    >>> advice = next_pressure([SagReading(560, 40.0)], travel_mm=160, target=0.20, end="front")
    >>> advice.pressure_kpa > 560, advice.settled
    (True, False)
    """
    check_number("target", target, above=0, below=1)
    low_kpa, high_kpa = _check_limits(minimum_kpa, maximum_kpa)
    readings = tuple(readings)
    belief = believe(
        readings,
        travel_mm=travel_mm,
        end=end,
        chamber=chamber,
        negative_kpa=negative_kpa,
        reading_sd_mm=reading_sd_mm,
        coils=coils,
    )
    needed = pressure_for(belief, target)
    wanted = quantiles(belief, needed, [0.5])[0]
    limited = "minimum" if wanted < low_kpa else "maximum" if wanted > high_kpa else None
    is_stated = (minimum_kpa if limited == "minimum" else maximum_kpa) is not None
    pressure = min(max(wanted, low_kpa), high_kpa)
    sags = sag_at(belief, pressure)
    sag_low, sag, sag_high = quantiles(belief, sags, [0.05, 0.5, 0.95])
    if limited is None:
        is_sure = share(belief, np.abs(sags - target) < _FELT_SAG) >= _SURE
    else:
        beyond = needed < low_kpa if limited == "minimum" else needed > high_kpa
        is_sure = share(belief, beyond) >= _LIMIT_SURE
    disagree = belief.doubt > _DOUBTFUL
    settled = is_sure and not disagree
    sentences = (
        _direction_sentence(readings[-1], travel_mm, target, pressure, is_limited=limited is not None),
        _limit_sentence(limited, sag, target, is_stated=is_stated),
        _disagree_sentence(belief.slip) if disagree else "",
        _trust_sentence(settled, limited),
        "" if chamber else "Typical chamber sizes are assumed.",
    )
    reason = " ".join(sentence for sentence in sentences if sentence)
    return PressureAdvice(pressure, sag, sag_low, sag_high, settled, limited, reason, disagree)


def wheel_sag(shock_sag_mm: float, leverage: Leverage) -> float:
    """Give the sag at the wheel, as a fraction of wheel travel, that belongs to a sag of the shock.

    Raises
    ------
    InputError
        If the sag is outside the surveyed stroke.
    """
    check_number("shock_sag_mm", shock_sag_mm, at_least=0, at_most=leverage.stroke_mm * (1 + _ROUNDING))
    return leverage.wheel(shock_sag_mm) / leverage.travel_mm


def believe(
    readings: Sequence[SagReading],
    *,
    travel_mm: float,
    end: str,
    chamber: AirChamber | None = None,
    negative_kpa: float | None = None,
    reading_sd_mm: float = _READING_SD_MM,
    coils: Coils = NO_COILS,
) -> Belief:
    """Give what the readings leave possible about load and spring; arguments and errors as for `next_pressure`."""
    check_number("travel_mm", travel_mm, above=0)
    if end not in ("front", "rear"):
        raise InputError("end", end, "front or rear")
    if not readings:
        raise NotEnoughData("Measure the sag once at any pressure: the next pressure is worked out from it.")
    for reading in readings:
        check_number("pressure_kpa", reading.pressure_kpa, at_least=0, at_most=_MOST_KPA)
        hint = "At no sag, or at the end of the travel, no load shows. Change the pressure and measure again."
        check_number("sag_mm", reading.sag_mm, above=0, below=travel_mm, hint=hint)
    shapes = _shapes(chamber, travel_mm, negative_kpa)
    if chamber is None and coils != NO_COILS:
        shapes = _with_coils(coils, readings[0].pressure_kpa, travel_mm, end)
    return learn(
        shapes,
        [reading.pressure_kpa for reading in readings],
        [reading.sag_mm / travel_mm for reading in readings],
        end=end,
        blur=check_number("reading_sd_mm", reading_sd_mm, above=0, below=travel_mm) / travel_mm,
    )


def _check_limits(minimum_kpa: float | None, maximum_kpa: float | None) -> tuple[float, float]:
    """Give the limits of the pressure, after refusing what cannot be."""
    low = 0.0 if minimum_kpa is None else check_number("minimum_kpa", minimum_kpa, at_least=0)
    high = _MOST_KPA if maximum_kpa is None else check_number("maximum_kpa", maximum_kpa, at_least=low, above=0)
    return low, high


def _shapes(chamber: AirChamber | None, travel_mm: float, negative_kpa: float | None) -> Shapes:
    """Give the shapes to reckon with: near the stated sizes, or typical ones."""
    if chamber is None:
        return typical_shapes()
    if abs(chamber.travel_mm - travel_mm) > _SAME_TRAVEL_MM:
        raise InputError("travel_mm", travel_mm, f"{chamber.travel_mm:g} mm, the travel of the chamber")
    positive = (chamber.positive_mm3 - chamber.spacer_mm3) / chamber.area_mm2 / travel_mm
    area_mm2 = chamber.negative_area_mm2 or chamber.area_mm2
    negative = chamber.negative_mm3 / area_mm2 / travel_mm
    ratio = area_mm2 / chamber.area_mm2 if negative else 0.0
    own_kpa = 0.0
    if negative and negative_kpa is not None:
        own_kpa = (check_number("negative_kpa", negative_kpa, at_least=0) + OUTSIDE_KPA) * ratio
    other = Other(OUTSIDE_KPA * (1 - ratio), own_kpa)
    shapes = known_shapes(positive, negative or 1.0, 0.0 if own_kpa else ratio, other)
    return _with_known_coils(shapes, chamber, travel_mm)


def _with_known_coils(shapes: Shapes, chamber: AirChamber, travel_mm: float) -> Shapes:
    from workbench.physics.coil_shapes import with_coil_beside

    if chamber.negative_coil_n_per_mm:
        kpa = np.full_like(shapes.a, chamber.negative_coil_n_per_mm * travel_mm / chamber.area_mm2 * 1000)
        shapes = replace(shapes, back=Coil(kpa, np.full_like(kpa, chamber.negative_coil_reach_mm / travel_mm)))
    if not chamber.coil_n_per_mm:
        return shapes
    return with_coil_beside(
        shapes,
        rate_n_per_mm=chamber.coil_n_per_mm,
        preload_mm=chamber.coil_preload_mm,
        travel_mm=travel_mm,
        end="front",
        area_mm2=chamber.area_mm2,
    )


def _with_coils(coils: Coils, pressure_kpa: float, travel_mm: float, end: str) -> Shapes:
    """Give typical springs with the coils that are said to be in there."""
    from workbench.physics.coil_shapes import with_coil_back, with_coil_beside

    rate = check_number("rate_n_per_mm", coils.rate_n_per_mm, at_least=0)
    preload_mm = check_number("preload_mm", coils.preload_mm, at_least=0)
    shapes = with_coil_back(pressure_kpa) if coils.is_negative else typical_shapes()
    if not rate:
        return shapes
    return with_coil_beside(shapes, rate_n_per_mm=rate, preload_mm=preload_mm, travel_mm=travel_mm, end=end)


def _direction_sentence(
    last: SagReading, travel_mm: float, target: float, pressure_kpa: float, *, is_limited: bool
) -> str:
    seen = f"The last sag was {percent(last.sag_mm / travel_mm, 1)}, the target is {percent(target, 1)}"
    change = pressure_kpa - last.pressure_kpa
    if abs(change) < 0.01 * last.pressure_kpa:
        return f"{seen}: {'the pressure stays' if is_limited else 'this pressure fits'}."
    amount = f"{percent(abs(change) / last.pressure_kpa)} " if last.pressure_kpa else ""
    return f"{seen}: {amount}{'more' if change > 0 else 'less'} pressure."


def _limit_sentence(limited: str | None, sag: float, target: float, *, is_stated: bool) -> str:
    if limited is None:
        return ""
    bound = f"the unit's {limited} pressure" if is_stated else "as far as a pressure can go"
    return f"That is {bound}; about {percent(sag, 1)} of sag is to be had there, not {percent(target, 1)}."


def _disagree_sentence(slip: int | None) -> str:
    if slip is not None:
        return f"Reading {slip + 1} does not fit the others: measure that pressure again."
    return "The readings contradict one another: check posture, indicator and pump, and measure again."


def _trust_sentence(settled: bool, limited: str | None) -> str:
    if settled and limited:
        return "Another measurement would not change that."
    if settled:
        return "Another measurement would not change the pressure by anything you feel."
    return "Set it, let the rider get on again, and measure once more."
