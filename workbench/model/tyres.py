"""Tyres read after a run: whether one drifted from what it was set to."""

from __future__ import annotations

from workbench.model.ride import Run
from workbench.model.warmth import Pressure, gauge_at

TYRE_KPA = 6.9  # one psi: named from here on (common practice, no source)


def tyre_read_kpa(run: Run, end: str) -> float | None:
    """Give what the tyre at an end read after a run [kPa gauge]; None where nobody read it."""
    return run.tyre_front_kpa if end == "front" else run.tyre_rear_kpa


def tyre_drift_kpa(read_kpa: float, set_kpa: float, *, air_c: float | None = None) -> float:
    """Give by how much a tyre reads otherwise than it was set [kPa]; negative where it lost air.

    Where the temperature it was set at and that of the air are both known, a colder day alone is no drift: same air in
    the same volume. Riding warms a tyre, so a little more than was set is usual.
    """
    expected = set_kpa
    if isinstance(set_kpa, Pressure) and air_c is not None:
        expected = gauge_at(set_kpa, set_kpa.temperature_c, air_c)
    return read_kpa - expected


def has_drifted(drift_kpa: float) -> bool:
    """Tell whether a drift is to be named."""
    return abs(drift_kpa) > TYRE_KPA


def has_lost_air(drift_kpa: float) -> bool:
    """Tell whether a run with such a tyre stood otherwise than its setup says."""
    return drift_kpa < -TYRE_KPA
