"""Front against rear: ride frequency, damping of a free swing, load on the wheels."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot, log, pi, radians, sin, sqrt

from workbench.model.errors import InputError
from workbench.physics.limits import check_number

GRAVITY_M_S2 = 9.80665


def ride_frequency_hz(rate_n_per_mm: float, load_n: float) -> float:
    """Give the frequency at which a load bounces on a spring.

    Parameters
    ----------
    rate_n_per_mm
        Local rate at sag, at the wheel and vertical [N/mm].
    load_n
        Static load on that end [N].

    Returns
    -------
    float
        Undamped natural frequency [Hz].

    Raises
    ------
    InputError
        If rate or load is not above zero.

    Notes
    -----
    f = (1 / 2 pi) sqrt(k g / F). For a progressive spring k is the local rate, not load over sag.

    References
    ----------
    Thomson and Dahleh, Theory of Vibration with Applications, ch. 2, natural frequency from static deflection.

    Examples
    --------
    >>> round(ride_frequency_hz(10.0, 250.0), 4)  # 25 mm static deflection
    3.1522
    """
    check_number("rate_n_per_mm", rate_n_per_mm, above=0)
    check_number("load_n", load_n, above=0)
    return sqrt(rate_n_per_mm * 1000 * GRAVITY_M_S2 / load_n) / (2 * pi)


def fork_vertical_rate_n_per_mm(rate_n_per_mm: float, head_angle_deg: float) -> float:
    """Give the vertical rate at the front wheel of a fork that slides along the steering axis.

    Notes
    -----
    Travel and force are both projected, so k_vertical = k / sin^2(head angle). Own derivation, friction left out.
    """
    check_number("rate_n_per_mm", rate_n_per_mm, above=0)
    check_number("head_angle_deg", head_angle_deg, above=0, at_most=90)
    vertical: float = rate_n_per_mm / sin(radians(head_angle_deg)) ** 2
    return vertical


def damping_from_decay(x0: float, xn: float, cycles: float) -> tuple[float, float]:
    """Give the logarithmic decrement and the damping ratio from two peaks of a free swing.

    Parameters
    ----------
    x0, xn
        Height of two peaks on the same side of rest, the second `cycles` later [any one unit].
    cycles
        Full swings between them.

    Returns
    -------
    tuple of float
        Decrement and damping ratio.

    Raises
    ------
    InputError
        If the peaks do not decay or the number of cycles is not above zero.

    Notes
    -----
    delta = ln(x0 / xn) / n;  zeta = delta / sqrt(4 pi^2 + delta^2).

    References
    ----------
    Meirovitch, Fundamentals of Vibrations, logarithmic decrement.

    Examples
    --------
    >>> tuple(round(number, 6) for number in damping_from_decay(10.0, 2.0, 5))
    (0.321888, 0.051163)
    """
    check_number("x0", x0, above=0)
    check_number("xn", xn, above=0, at_most=x0, hint="A free swing gets smaller.")
    check_number("cycles", cycles, above=0)
    decrement = log(x0 / xn) / cycles
    return decrement, decrement / hypot(2 * pi, decrement)


def rebound_shift(old_rate_n_per_mm: float, new_rate_n_per_mm: float, *, mass_ratio: float = 1.0) -> float:
    """Give how much more rebound damping a changed spring asks for, as a fraction.

    Parameters
    ----------
    old_rate_n_per_mm, new_rate_n_per_mm
        Local rate at the sag, before and after [N/mm].
    mass_ratio
        The mass it carries after, over the one before.

    Raises
    ------
    InputError
        If a rate or the ratio is not above zero.

    Notes
    -----
    Critical damping is 2 sqrt(k m), so at the same share of it the wanted damping goes with sqrt(k m).

    References
    ----------
    Any vibration text, e.g. Meriam and Kraige, Engineering Mechanics: Dynamics, 8/2.

    Examples
    --------
    >>> round(rebound_shift(80.0, 96.8), 3)
    0.1
    """
    check_number("old_rate_n_per_mm", old_rate_n_per_mm, above=0)
    check_number("new_rate_n_per_mm", new_rate_n_per_mm, above=0)
    check_number("mass_ratio", mass_ratio, above=0)
    return sqrt(new_rate_n_per_mm / old_rate_n_per_mm * mass_ratio) - 1


def wheel_loads_n(masses: Sequence[tuple[float, float]], *, wheelbase_mm: float) -> tuple[float, float]:
    """Give the static load on front and rear wheel on level ground.

    Parameters
    ----------
    masses
        Pairs of mass [kg] and distance ahead of the rear contact point [mm].
    wheelbase_mm
        Distance between the contact points [mm].

    Returns
    -------
    tuple of float
        Load on the front and on the rear wheel [N].

    Raises
    ------
    InputError
        If a mass is negative or the wheelbase not above zero.

    Notes
    -----
    Moments about the rear contact point: N_front = g sum(m x) / wheelbase.

    References
    ----------
    Meijaard, Papadopoulos, Ruina and Schwab (2007), Proc. R. Soc. A 463, 1955-1982, for the benchmark bicycle.
    """
    check_number("wheelbase_mm", wheelbase_mm, above=0)
    if not masses:
        raise InputError("masses", "none", "at least one mass with its place")
    for mass_kg, ahead_mm in masses:
        check_number("mass_kg", mass_kg, at_least=0)
        check_number("ahead_mm", ahead_mm)
    front_n = GRAVITY_M_S2 * sum(mass * ahead for mass, ahead in masses) / wheelbase_mm
    return front_n, GRAVITY_M_S2 * sum(mass for mass, _ in masses) - front_n


def front_against_rear(front_hz: float, rear_hz: float) -> str:
    """Say in plain words how the ride frequencies of both ends compare; no verdict, for no agreed target exists."""
    check_number("front_hz", front_hz, above=0)
    check_number("rear_hz", rear_hz, above=0)
    ratio = front_hz / rear_hz
    if abs(ratio - 1) < 0.05:
        return f"Front and rear move at nearly the same pace ({front_hz:.1f} and {rear_hz:.1f} Hz)."
    slower, faster = ("rear", "front") if ratio > 1 else ("front", "rear")
    share = (max(ratio, 1 / ratio) - 1) * 100
    return (
        f"The {slower} is softer for its load than the {faster}: {front_hz:.1f} Hz front, {rear_hz:.1f} Hz rear, "
        f"{share:.0f} % apart."
    )
