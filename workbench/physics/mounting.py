"""Another mounting of the shock: where the same rider sits with the same spring."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.model.errors import InputError, NoAnswer
from workbench.physics.leverage import Leverage, wheel_rate_n_per_mm
from workbench.physics.limits import check_number


@dataclass(frozen=True, slots=True)
class Moved:
    """Where a rider comes to rest in a mounting, and how stiff it is there."""

    sag_mm: float  # of the shock
    wheel_sag_mm: float
    wheel_sag: float  # fraction of the wheel travel
    ratio: float  # leverage at that sag
    wheel_rate: float  # in the spring curve's own force per mm


def sag_when_moved(
    now: Leverage,
    there: Leverage,
    *,
    sag_mm: float,
    travel_mm: Sequence[float],
    force: Sequence[float],
) -> Moved:
    """Give where the same rider sits after the shock is mounted elsewhere, its spring left alone.

    Parameters
    ----------
    now, there
        Leverage of the present mounting and of the other one.
    sag_mm
        Sag of the shock in the present mounting [mm].
    travel_mm, force
        The spring's curve: shock travel [mm], rising from 0, and force in any unit.

    Returns
    -------
    Moved
        Shock sag [mm], wheel sag [mm and fraction], ratio, and wheel rate in the unit of force per mm.

    Raises
    ------
    InputError
        If the curve does not rise, has other lengths, or the sag lies outside it or the survey.
    NoAnswer
        If the spring does not carry the rider before the end of the travel there.

    Notes
    -----
    What rests on the axle stays: W = F(s) / R(s). With s the sag now, the sag there is where F(s') / R'(s') = W. The
    load at the axle, not at the shock, is what a mounting leaves alone. The curve is read off by straight lines between
    its points.

    References
    ----------
    Virtual work, as in Dixon, Suspension Geometry and Computation, motion ratio and installation ratio.
    """
    travel, push = np.asarray(travel_mm, dtype=float), np.asarray(force, dtype=float)
    if travel.shape != push.shape or len(travel) < 2 or (np.diff(travel) <= 0).any() or (np.diff(push) <= 0).any():
        raise InputError("force", "the curve", "as many forces as travels, both rising")
    last_mm = min(now.stroke_mm, float(travel[-1]))
    check_number("sag_mm", sag_mm, above=0, at_most=last_mm)
    load = _at(travel, push, sag_mm) / now.ratio(now.wheel(sag_mm))

    def over(s: float) -> float:
        return _at(travel, push, s) / there.ratio(there.wheel(s)) - load

    low, high = 0.0, min(there.stroke_mm, float(travel[-1]))
    if over(high) < 0:
        raise NoAnswer("The spring does not carry the rider there: it would go through all of its travel.")
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if over(middle) < 0 else (low, middle)
    return _resting(there, travel, push, (low + high) / 2)


def _resting(there: Leverage, travel: np.ndarray, push: np.ndarray, sag_mm: float) -> Moved:
    wheel_mm = there.wheel(sag_mm)
    step = (travel[-1] - travel[0]) / 60
    below, above = max(sag_mm - step, 0.0), min(sag_mm + step, float(travel[-1]))
    slope = (_at(travel, push, above) - _at(travel, push, below)) / (above - below)
    rate = wheel_rate_n_per_mm(
        there, wheel_mm=wheel_mm, shock_rate_n_per_mm=slope, shock_force_n=_at(travel, push, sag_mm)
    )
    return Moved(sag_mm, wheel_mm, wheel_mm / there.travel_mm, there.ratio(wheel_mm), rate)


def _at(travel: np.ndarray, push: np.ndarray, at_mm: float) -> float:
    return float(np.interp(at_mm, travel, push))
