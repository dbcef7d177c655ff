"""Which coil springs would do: sag, preload force and coil bind of each, and how far a rate from the wire is known."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, sqrt

from workbench.model.errors import InputError
from workbench.physics.coil import wire_rate_n_per_mm
from workbench.physics.limits import check_number
from workbench.physics.shapes import NOISE
from workbench.physics.spring_table import SpringTable

# Scatter of what is read at the bench and of handbooks, one sd; common practice, no source.
WIRE_SD_MM = 0.03
DIAMETER_SD_MM = 0.3
COILS_SD = 0.1
MODULUS_SD = 0.01  # of the modulus: handbooks differ by 1 to 2 % for the same wire
_NORMAL_90 = 1.6449  # half-width of a 90 % interval, in sd


@dataclass(frozen=True, slots=True)
class Fitted:
    """What a coil spring does on a unit under a load."""

    sag_mm: float
    sag_fraction: float
    preload_force_n: float
    rate_n_per_mm: float  # force over compression at the load; the spring's own where it is linear
    needed_mm: float  # compression at the end of the stroke, preload with it
    binds: bool  # goes solid before the end of the stroke
    carries: bool = True  # false: the load takes it to the end of stroke or table


def load_interval_n(load_n: float, *, compressed_mm: float, end: str, reading_sd_mm: float) -> tuple[float, float]:
    """Give the 90 % interval of a load read off a coil [N].

    Parameters
    ----------
    load_n, compressed_mm
        The load, and how far it presses the spring, preload with it [N, mm].
    end
        "front" or "rear"; the load at the front varies more from mounting to mounting.
    reading_sd_mm
        How far a reading lies off because of the way it is taken [mm].

    Raises
    ------
    InputError
        If a value cannot be.

    Notes
    -----
    Two scatters as shares of the load, added as squares: of the rider, the mean of those the next pressure reckons with
    (common practice, no source), and of the reading over the compression.

    References
    ----------
    JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.1.6.

    Examples
    --------
    >>> [round(one) for one in load_interval_n(1734, compressed_mm=22.0, end="rear", reading_sd_mm=0.2)]
    [1676, 1792]
    """
    check_number("load_n", load_n, above=0)
    check_number("compressed_mm", compressed_mm, above=0)
    if end not in NOISE:
        raise InputError("end", end, "front or rear")
    levels, chances = NOISE[end]
    rider = sum(level * chance for level, chance in zip(levels, chances, strict=True))
    read = check_number("reading_sd_mm", reading_sd_mm, at_least=0) / compressed_mm
    half = _NORMAL_90 * sqrt(rider**2 + read**2)
    return load_n * max(1 - half, 0.0), load_n * (1 + half)


def rate_for_n_per_mm(load_n: float, *, stroke_mm: float, target: float, preload_mm: float = 0.0) -> float:
    """Give the rate that carries a load at the target sag, k = F / (t S + p)."""
    check_number("load_n", load_n, above=0)
    check_number("target", target, above=0, below=1)
    check_number("stroke_mm", stroke_mm, above=0)
    return load_n / (target * stroke_mm + check_number("preload_mm", preload_mm, at_least=0))


def fitted(
    load_n: float,
    *,
    rate_n_per_mm: float,
    stroke_mm: float,
    preload_mm: float = 0.0,
    spring_stroke_mm: float | None = None,
) -> Fitted:
    """Give what a spring of one rate does on a unit.

    Parameters
    ----------
    load_n
        Load along the unit's axis [N].
    rate_n_per_mm, preload_mm, spring_stroke_mm
        The spring, its preload from slack-free contact, and its usable stroke where that is known [N/mm, mm, mm].
    stroke_mm
        Stroke of the unit [mm].

    Raises
    ------
    InputError
        If a value cannot be.

    Notes
    -----
    x = F / k - p, at least 0 and at most the stroke; the preload force is k p. The spring binds when its usable stroke
    is less than stroke and preload together.

    References
    ----------
    Hooke's law, as in Meriam and Kraige, Engineering Mechanics: Dynamics, 8/2.

    Examples
    --------
    >>> there = fitted(1734, rate_n_per_mm=96.32, stroke_mm=57.5, preload_mm=1.0, spring_stroke_mm=57.0)
    >>> round(there.sag_fraction, 3), there.needed_mm, there.binds
    (0.296, 58.5, True)
    """
    check_number("load_n", load_n, above=0)
    check_number("rate_n_per_mm", rate_n_per_mm, above=0)
    needed_mm = _needed_mm(stroke_mm, preload_mm)
    if spring_stroke_mm is not None:
        check_number("spring_stroke_mm", spring_stroke_mm, above=0)
    free_mm = load_n / rate_n_per_mm - preload_mm
    sag_mm = min(max(free_mm, 0.0), stroke_mm)
    binds = spring_stroke_mm is not None and spring_stroke_mm < needed_mm - 1e-9
    force_n = rate_n_per_mm * preload_mm
    return Fitted(sag_mm, sag_mm / stroke_mm, force_n, rate_n_per_mm, needed_mm, binds, free_mm <= stroke_mm)


def fitted_table(
    load_n: float,
    spring: SpringTable,
    *,
    stroke_mm: float,
    preload_mm: float = 0.0,
    spring_stroke_mm: float | None = None,
) -> Fitted:
    """Give what a progressive or dual spring does on a unit; arguments and errors as for `fitted`.

    The table begins at slack-free contact. Its last travel is as far as the spring is known to go, so the spring is
    taken to bind beyond it, unless a shorter usable stroke is given.
    """
    check_number("load_n", load_n, above=0)
    needed_mm = _needed_mm(stroke_mm, preload_mm)
    last_mm, end_n = spring.rows[-1]
    usable_mm = last_mm if spring_stroke_mm is None else min(last_mm, spring_stroke_mm)
    preload_force_n = spring.force_n(min(preload_mm, last_mm))
    at_mm = last_mm if load_n >= end_n else spring.travel_mm(load_n)
    sag_mm = min(max(at_mm - preload_mm, 0.0), stroke_mm)
    rate = load_n / max(sag_mm + preload_mm, 1e-6)
    carries = load_n < end_n and at_mm - preload_mm <= stroke_mm
    return Fitted(sag_mm, sag_mm / stroke_mm, preload_force_n, rate, needed_mm, usable_mm < needed_mm - 1e-9, carries)


def _needed_mm(stroke_mm: float, preload_mm: float) -> float:
    return check_number("stroke_mm", stroke_mm, above=0) + check_number("preload_mm", preload_mm, at_least=0)


def stock_rates_n_per_mm(rate_n_per_mm: float, stock_step_n_per_mm: float, *, count: int = 5) -> tuple[float, ...]:
    """Give the rates of a shelf in even steps that lie nearest to a rate, the nearest first [N/mm].

    Examples
    --------
    >>> stock_rates_n_per_mm(95.0, 25.0, count=3)
    (100.0, 75.0, 125.0)
    """
    exact = check_number("rate_n_per_mm", rate_n_per_mm, above=0)
    step = check_number("stock_step_n_per_mm", stock_step_n_per_mm, above=0)
    middle = floor(exact / step)
    rates = [step * number for number in range(max(middle - count, 1), middle + count + 2)]
    return tuple(sorted(rates, key=lambda rate: abs(rate - exact))[:count])


def wire_rate_interval(
    *, wire_mm: float, mean_diameter_mm: float, active_coils: float, shear_modulus_gpa: float
) -> tuple[float, float]:
    """Give the 90 % interval of a rate reckoned from the wire [N/mm]; arguments and errors as for the rate itself.

    Notes
    -----
    Shares of scatter add as squares, each times its exponent in k = G d^4 / (8 D^3 n): 4 for the wire, 3 for the
    diameter, 1 for coils and modulus. What is read scatters by 0.03 mm, 0.3 mm and 0.1 coils, the modulus by 1 %
    (common practice, no source).

    References
    ----------
    JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.1.6.

    Examples
    --------
    >>> [round(end, 1) for end in wire_rate_interval(
    ...     wire_mm=12, mean_diameter_mm=48, active_coils=6, shear_modulus_gpa=77.2)]
    [287.3, 315.8]
    """
    rate = wire_rate_n_per_mm(
        wire_mm=wire_mm,
        mean_diameter_mm=mean_diameter_mm,
        active_coils=active_coils,
        shear_modulus_gpa=shear_modulus_gpa,
    )
    shares = (4 * WIRE_SD_MM / wire_mm, 3 * DIAMETER_SD_MM / mean_diameter_mm, COILS_SD / active_coils, MODULUS_SD)
    half = _NORMAL_90 * sqrt(sum(share**2 for share in shares))
    return rate * max(1 - half, 0.0), rate * (1 + half)
