"""Gauge pressure carried to another temperature or altitude."""

from __future__ import annotations

from workbench.physics.limits import check_number

ABSOLUTE_ZERO_C = -273.15
SEA_LEVEL_KPA = 101.325

_EARTH_RADIUS_M = 6_356_766.0
_SEA_LEVEL_K = 288.15
_LAPSE_K_PER_M = 0.0065
_EXPONENT = 9.80665 / (287.05287 * _LAPSE_K_PER_M)
_LOWEST_M, _HIGHEST_M = -2000.0, 11_000.0  # where the standard begins, and where its lowest layer ends


def standard_pressure_kpa(altitude_m: float) -> float:
    """Give the pressure of the standard atmosphere.

    Parameters
    ----------
    altitude_m
        Geometric altitude above sea level [m], -2000 to 11 000.

    Returns
    -------
    float
        Absolute air pressure [kPa].

    Raises
    ------
    InputError
        If the altitude is outside the lowest layer of the standard atmosphere.

    Notes
    -----
    H = r h / (r + h);  p = p0 (1 - L H / T0)^(g / (R L)) with p0 = 101.325 kPa, T0 = 288.15 K, L = 6.5 K/km.

    References
    ----------
    ISO 2533:1975, Standard Atmosphere, equations for the layer up to 11 km.

    Examples
    --------
    >>> round(standard_pressure_kpa(2000), 3)
    79.501
    """
    return _outside_kpa("altitude_m", altitude_m)


def _outside_kpa(field: str, altitude_m: float) -> float:
    check_number(field, altitude_m, at_least=_LOWEST_M, at_most=_HIGHEST_M)
    geopotential_m = _EARTH_RADIUS_M * altitude_m / (_EARTH_RADIUS_M + altitude_m)
    fall: float = (1 - _LAPSE_K_PER_M * geopotential_m / _SEA_LEVEL_K) ** _EXPONENT
    return SEA_LEVEL_KPA * fall


def carry_pressure(pressure_kpa: float, *, from_c: float, to_c: float, from_m: float = 0.0, to_m: float = 0.0) -> float:
    """Give what a gauge shows elsewhere on the same gas in the same volume.

    Parameters
    ----------
    pressure_kpa
        Gauge pressure here [kPa].
    from_c, to_c
        Temperature of the gas here and there [degC].
    from_m, to_m
        Altitude here and there [m], -2000 to 11 000.

    Returns
    -------
    float
        Gauge pressure there [kPa].

    Raises
    ------
    InputError
        If a pressure is below vacuum, a temperature at or below absolute zero, or an altitude out of range.

    Notes
    -----
    (p1 + pa1) / T1 = (p2 + pa2) / T2: the ideal gas law holds for absolute pressure. For air up to 25 bar between
    0 and 40 degC it is within 0.5 % of the real gas. Backwards in place and time it gives the pressure to set here
    for a wanted pressure there.

    References
    ----------
    Moran and Shapiro, Fundamentals of Engineering Thermodynamics, ideal gas model; ISO 2533:1975 for the air outside.

    Examples
    --------
    >>> round(carry_pressure(551.58, from_c=22, to_c=-3), 1)  # 80 psi becomes 72
    496.3
    """
    here_kpa, there_kpa = _outside_kpa("from_m", from_m), _outside_kpa("to_m", to_m)
    check_number("pressure_kpa", pressure_kpa, above=-here_kpa)
    check_number("from_c", from_c, above=ABSOLUTE_ZERO_C, at_most=1000)
    check_number("to_c", to_c, above=ABSOLUTE_ZERO_C, at_most=1000)
    warmth = (to_c - ABSOLUTE_ZERO_C) / (from_c - ABSOLUTE_ZERO_C)
    return (pressure_kpa + here_kpa) * warmth - there_kpa
