"""The force of an air spring over its travel as far as readings tell it, with its uncertainty."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from workbench.model.errors import InputError
from workbench.physics.air import AirChamber
from workbench.physics.limits import check_number
from workbench.physics.sag import NO_COILS, Coils, SagReading, believe
from workbench.physics.shapes import load_at, quantiles


@dataclass(frozen=True, slots=True)
class ForceBand:
    """Force as a multiple of the static load at each travel: 5 %, 50 % and 95 % of what is possible."""

    travel_mm: tuple[float, ...]
    low: tuple[float, ...]
    middle: tuple[float, ...]
    high: tuple[float, ...]


def force_band(
    readings: Sequence[SagReading],
    *,
    travel_mm: float,
    end: str,
    pressure_kpa: float,
    at_mm: Sequence[float],
    n: float = 1.0,
    chamber: AirChamber | None = None,
    negative_kpa: float | None = None,
    coils: Coils = NO_COILS,
) -> ForceBand:
    """Give the force over travel at a pressure, in multiples of the load that was measured.

    Parameters
    ----------
    readings, travel_mm, end, chamber, negative_kpa, coils
        As for `workbench.physics.sag.next_pressure`.
    pressure_kpa
        Pressure the curve is for [kPa gauge].
    at_mm
        Travels at which it is wanted, below the full travel where sizes are not known [mm].
    n
        Polytropic exponent: 1.0 at rest, about 1.35 in a hit.

    Returns
    -------
    ForceBand
        The middle curve and its 90 % band; it crosses 1 at the sag. Towards the end of the travel it widens, for
        there the shape matters that sag does not show.

    Raises
    ------
    NotEnoughData
        Without a reading.
    InputError
        If a value cannot be.

    Notes
    -----
    The same possibilities as for the next pressure, each with its load; friction is left out.
    """
    check_number("pressure_kpa", pressure_kpa, at_least=0)
    check_number("n", n, at_least=1.0, at_most=5 / 3)
    belief = believe(readings, travel_mm=travel_mm, end=end, chamber=chamber, negative_kpa=negative_kpa, coils=coils)
    shortest = float(belief.shapes.a.min())
    rows = []
    for x in at_mm:
        s = check_number("at_mm", x, at_least=0, at_most=travel_mm) / travel_mm
        if s >= shortest:
            raise InputError("at_mm", x, f"0 to below {shortest * travel_mm:g} mm")
        force = load_at(belief.shapes, pressure_kpa, s, n)[:, None] / belief.load
        rows.append(quantiles(belief, force, [0.05, 0.5, 0.95]))
    low, middle, high = (tuple(column) for column in zip(*rows, strict=True)) if rows else ((), (), ())
    return ForceBand(tuple(float(x) for x in at_mm), low, middle, high)
