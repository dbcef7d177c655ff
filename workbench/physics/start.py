"""A pressure to start from before the first reading, only where there is evidence for one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.model.errors import NoAnswer, NotEnoughData
from workbench.physics.air import AirChamber, pressure_for_sag_kpa
from workbench.physics.limits import check_number

_FEWEST_BIKES = 3


@dataclass(frozen=True, slots=True)
class StartPressure:
    """A pressure to begin with, its 90 % interval where there is one, and where it comes from."""

    pressure_kpa: float
    low_kpa: float | None
    high_kpa: float | None
    origin: str


def start_from_table(rider_kg: float, table: Sequence[tuple[float, float]]) -> StartPressure:
    """Give the pressure of the maker's table for a rider, between its lines in a straight line.

    Parameters
    ----------
    rider_kg
        Rider ready to ride [kg].
    table
        Pairs of rider mass and gauge pressure, any order [kg, kPa].

    Raises
    ------
    InputError
        If a number cannot be.
    NotEnoughData
        If the table has fewer than two lines.
    NoAnswer
        If the rider is lighter or heavier than the table reaches.

    Examples
    --------
    >>> start_from_table(75, [(70, 500), (80, 560)]).pressure_kpa
    530.0
    """
    check_number("rider_kg", rider_kg, above=0)
    for kg, kpa in table:
        check_number("table mass", kg, above=0)
        check_number("table pressure", kpa, at_least=0)
    lines = sorted(table)
    if len(lines) < 2:
        raise NotEnoughData("A table needs two lines or more: a rider's mass and the pressure for it.")
    if not lines[0][0] <= rider_kg <= lines[-1][0]:
        raise NoAnswer(
            f"The table goes from {lines[0][0]:g} to {lines[-1][0]:g} kg and says nothing about {rider_kg:g} kg. "
            "Start in the middle of the unit's pressure range and measure."
        )
    kilograms, pressures = zip(*lines, strict=True)
    return StartPressure(float(np.interp(rider_kg, kilograms, pressures)), None, None, "the maker's table")


def start_from_garage(rider_kg: float, earlier: Sequence[tuple[float, float]]) -> StartPressure:
    """Give the pressure that earlier bikes with the same unit suggest.

    Parameters
    ----------
    rider_kg
        Rider ready to ride [kg].
    earlier
        Rider mass and gauge pressure at which the same target sag was met, one pair a bike [kg, kPa].

    Returns
    -------
    StartPressure
        Pressure with its 90 % interval for this one bike.

    Raises
    ------
    InputError
        If a number cannot be.
    NotEnoughData
        With fewer than three bikes.

    Notes
    -----
    Pressure per mass is taken as lognormal over bikes; the interval is that of the next one,
    exp(m +- t s sqrt(1 + 1/n)) with n - 1 degrees of freedom.

    References
    ----------
    Hahn and Meeker, Statistical Intervals, prediction interval for one future observation.

    Examples
    --------
    >>> found = start_from_garage(80, [(70, 490), (80, 565), (90, 625)])
    >>> round(found.pressure_kpa), found.origin
    (560, '3 earlier bikes with this unit')
    """
    check_number("rider_kg", rider_kg, above=0)
    for kg, kpa in earlier:
        check_number("rider_kg", kg, above=0)
        check_number("pressure_kpa", kpa, above=0)
    if len(earlier) < _FEWEST_BIKES:
        raise NotEnoughData(f"It takes {_FEWEST_BIKES} bikes with this unit at their target sag to suggest a pressure.")
    from scipy.special import stdtrit

    each = np.log([kpa / kg for kg, kpa in earlier])
    count = len(each)
    half = float(stdtrit(count - 1, 0.95)) * float(each.std(ddof=1)) * np.sqrt(1 + 1 / count)
    middle = float(each.mean())
    low, pressure, high = (float(rider_kg * np.exp(middle + step)) for step in (-half, 0.0, half))
    return StartPressure(pressure, low, high, f"{count} earlier bikes with this unit")


def start_from_sizes(chamber: AirChamber, *, load_n: float, load_share_sd: float, target: float) -> StartPressure:
    """Give the pressure that known chamber sizes ask for under an estimated load.

    Parameters
    ----------
    load_n
        Estimated load along the unit's axis [N].
    load_share_sd
        How far off that estimate may be, as a fraction of it (standard deviation).
    target
        Sag aimed at, as a fraction of the travel.

    Raises
    ------
    InputError
        If a number cannot be.
    """
    check_number("load_share_sd", load_share_sd, at_least=0, below=0.5)
    check_number("target", target, above=0, below=1)
    spread = 1.645 * load_share_sd
    low, pressure, high = (
        pressure_for_sag_kpa(chamber, load_n=load_n * share, sag_mm=target * chamber.travel_mm)
        for share in (1 - spread, 1.0, 1 + spread)
    )
    return StartPressure(pressure, low, high, "the sizes of the air chambers and an estimated load")
