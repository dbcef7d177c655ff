"""One side of an air spring: pressure, push, slope and work of a gas behind a piston."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from workbench.physics.atmosphere import SEA_LEVEL_KPA

Floats = npt.NDArray[np.float64]
_N_PER_KPA_MM2 = 1e-3
_J_PER_N_MM = 1e-3


@dataclass(frozen=True, slots=True)
class Charge:
    """A filled chamber; a negative area shrinks it with travel, a positive one lets it grow.

    A second chamber behind a floating piston joins where the first reaches its pressure. Pressures are absolute.
    """

    area_mm2: float
    volume_mm3: float
    absolute_kpa: Floats
    second_mm3: float = 0.0
    second_kpa: Floats | float = 0.0


def absolute_kpa(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    """Give the absolute pressure at a travel, p V^n = constant."""
    alone = _alone(charge, travel_mm, n)
    if not charge.second_mm3:
        return alone
    return np.minimum(alone, _joined(charge, travel_mm, n))  # the larger room holds the lower pressure


def push_n(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    """Give the push on the piston against the air outside; none where there is no chamber."""
    if not charge.volume_mm3:
        return np.zeros_like(travel_mm)
    inside = absolute_kpa(charge, travel_mm, n)
    return np.asarray((inside - SEA_LEVEL_KPA) * abs(charge.area_mm2) * _N_PER_KPA_MM2)


def slope_n_per_mm(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    """Give how fast the push changes with travel."""
    if not charge.volume_mm3:
        return np.zeros_like(travel_mm)
    pressure = absolute_kpa(charge, travel_mm, n)
    room = charge.volume_mm3 + charge.area_mm2 * travel_mm
    if charge.second_mm3:
        room = room + np.where(_is_joined(charge, travel_mm, n), charge.second_mm3, 0.0)
    return np.asarray(-n * pressure * charge.area_mm2 * abs(charge.area_mm2) / room * _N_PER_KPA_MM2)


def work_j(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    """Give the work done on the piston side from full extension, the air outside taken off."""
    if not charge.volume_mm3:
        return np.zeros_like(travel_mm)
    if charge.second_mm3:
        gas_work = _work_with_second(charge, travel_mm, n)
    else:
        gas_work = _work(charge.absolute_kpa, charge.volume_mm3, charge.area_mm2, travel_mm, n)
    sign = -np.sign(charge.area_mm2)
    outside = SEA_LEVEL_KPA * abs(charge.area_mm2) * travel_mm
    return np.asarray((sign * gas_work - outside) * _N_PER_KPA_MM2 * _J_PER_N_MM)


def coil_push_n(rate_n_per_mm: float, reach_mm: float, travel_mm: Floats) -> Floats:
    """Give the push of a coil that is fully compressed at extension and free after its reach."""
    return rate_n_per_mm * np.maximum(reach_mm - travel_mm, 0.0)


def coil_slope_n_per_mm(rate_n_per_mm: float, reach_mm: float, travel_mm: Floats) -> Floats:
    """Give what that coil adds to the rate of the spring it pushes against."""
    return np.where(travel_mm < reach_mm, rate_n_per_mm, 0.0)


def coil_work_j(rate_n_per_mm: float, reach_mm: float, travel_mm: Floats) -> Floats:
    """Give the energy that coil has given back at a travel."""
    left = np.maximum(reach_mm - travel_mm, 0.0)
    return np.asarray(rate_n_per_mm * (reach_mm**2 - left**2) / 2 * _J_PER_N_MM)


def beside_push_n(rate_n_per_mm: float, preload_mm: float, travel_mm: Floats) -> Floats:
    """Give the push of a coil that works along with the air."""
    return rate_n_per_mm * (preload_mm + travel_mm)


def beside_work_j(rate_n_per_mm: float, preload_mm: float, travel_mm: Floats) -> Floats:
    """Give the energy that coil has taken up at a travel."""
    return np.asarray(rate_n_per_mm * (preload_mm + travel_mm / 2) * travel_mm * _J_PER_N_MM)


def _alone(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    room = charge.volume_mm3 + charge.area_mm2 * travel_mm
    # A main chamber shorter than the travel is pressed empty before the end; the second then holds all the gas.
    squeezed = np.maximum(room, 1e-9 * charge.volume_mm3)
    return np.asarray(charge.absolute_kpa * (charge.volume_mm3 / squeezed) ** n)


def _joined_start_kpa(charge: Charge, n: Floats) -> Floats:
    """Give the pressure both gases would have at full extension with nothing between them."""
    both = charge.volume_mm3 + charge.second_mm3
    root = charge.volume_mm3 * charge.absolute_kpa ** (1 / n) + charge.second_mm3 * charge.second_kpa ** (1 / n)
    return np.asarray((root / both) ** n)


def _joined(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    both = charge.volume_mm3 + charge.second_mm3
    return np.asarray(_joined_start_kpa(charge, n) * (both / (both + charge.area_mm2 * travel_mm)) ** n)


def _is_joined(charge: Charge, travel_mm: Floats, n: Floats) -> npt.NDArray[np.bool_]:
    return _alone(charge, travel_mm, n) >= charge.second_kpa


def _work(start_kpa: Floats, volume_mm3: float, area_mm2: float, travel_mm: Floats, n: Floats) -> Floats:
    """Give the size of the integral of p dV from extension, positive when the gas is pressed together."""
    shrink = -np.log1p(area_mm2 * travel_mm / volume_mm3)
    heats = n > 1
    beyond_one = np.where(heats, n - 1, 1.0)
    integral = np.where(heats, np.expm1(beyond_one * shrink) / beyond_one, shrink)
    return np.asarray(start_kpa * volume_mm3 * integral)


def _work_with_second(charge: Charge, travel_mm: Floats, n: Floats) -> Floats:
    meets_mm = charge.volume_mm3 * (1 - (charge.absolute_kpa / charge.second_kpa) ** (1 / n)) / -charge.area_mm2
    before = np.minimum(travel_mm, meets_mm)
    both = charge.volume_mm3 + charge.second_mm3
    start = _joined_start_kpa(charge, n)
    alone = _work(charge.absolute_kpa, charge.volume_mm3, charge.area_mm2, before, n)
    together = _work(start, both, charge.area_mm2, np.maximum(travel_mm, before), n)
    return np.asarray(alone + together - _work(start, both, charge.area_mm2, before, n))
