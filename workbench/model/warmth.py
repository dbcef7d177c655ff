"""Pressures that know the temperature they were set at: on a colder day the same air reads less."""

from __future__ import annotations

ABSOLUTE_ZERO_C = -273.15
OUTSIDE_KPA = 101.325


class Pressure(float):
    """A gauge pressure [kPa] with the temperature it was set at [degC]; a number like any other in all else."""

    __slots__ = ("temperature_c",)

    temperature_c: float

    def __new__(cls, kpa: float, temperature_c: float) -> Pressure:
        made = super().__new__(cls, kpa)
        made.temperature_c = temperature_c
        return made


def with_warmth(kpa: float | None, temperature_c: float | None) -> float | None:
    """Give a pressure its temperature, where both are known."""
    return kpa if kpa is None or temperature_c is None else Pressure(kpa, temperature_c)


def gauge_at(kpa: float, from_c: float, to_c: float) -> float:
    """Give what the same air in the same volume shows at another temperature: absolute ideal gas, at sea level."""
    warmer = (to_c - ABSOLUTE_ZERO_C) / (from_c - ABSOLUTE_ZERO_C)
    return (kpa + OUTSIDE_KPA) * warmer - OUTSIDE_KPA


def as_shown_beside(kpa: float, other: float) -> float:
    """Give what a pressure would show at the temperature another was set at; itself where one is not known."""
    if isinstance(kpa, Pressure) and isinstance(other, Pressure):
        return gauge_at(kpa, kpa.temperature_c, other.temperature_c)
    return kpa
