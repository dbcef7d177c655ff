"""Atmosphere, geometry at sag, decay and coil fits against the same physics solved in another way."""

from __future__ import annotations

from math import cos, exp, pi, radians, sin, sqrt

import numpy as np
import pytest
from scipy import stats
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from workbench.model.units import from_unit, to_unit
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa
from workbench.physics.balance import damping_from_decay, ride_frequency_hz, wheel_loads_n
from workbench.physics.coil import fit_rate, next_rate, wire_rate_n_per_mm
from workbench.physics.geometry import at_sag

EARTH_M, MOLAR_R = 6_356_766.0, 287.05287


# ISO 2533 defines the atmosphere by the balance of a column of air, dp/dh = -p g(h) / (R T), with T falling by 6.5 K
# for each geopotential kilometre. Integrated by scipy from sea level; tolerance 0.1 Pa.
@pytest.mark.parametrize("altitude_m", [-2000, -1200, -400, 150, 850, 1700, 2750, 3900, 5500, 8848, 11_000])
def test_the_air_outside_carries_the_air_above(altitude_m):
    def fall(h, p):
        geopotential = EARTH_M * h / (EARTH_M + h)
        gravity = 9.80665 * (EARTH_M / (EARTH_M + h)) ** 2
        return -p * gravity / (MOLAR_R * (288.15 - 0.0065 * geopotential))

    column = solve_ivp(fall, (0, altitude_m), [101_325.0], rtol=1e-11, atol=1e-8)
    assert 1000 * standard_pressure_kpa(altitude_m) == pytest.approx(column.y[0, -1], abs=0.1)


# Printed in tables of the standard atmosphere for geometric altitude, five figures, from memory.
@pytest.mark.parametrize(
    ("altitude_m", "pa", "tolerance"), [(-1000, 1.1393e5, 5), (5000, 5.4048e4, 1), (10_000, 2.6500e4, 1)]
)
def test_the_air_outside_as_remembered(altitude_m, pa, tolerance):
    assert 1000 * standard_pressure_kpa(altitude_m) == pytest.approx(pa, abs=tolerance)


# p V = m R T with a stated mass of air: the mass from the first state, the gauge from the second.
@pytest.mark.parametrize(
    ("psi", "from_c", "to_c", "from_m", "to_m"),
    [
        (80, 22, -3, 0, 0),
        (240, 18, 44, 1200, 300),
        (25, 30, -25, 2600, -200),
        (310, -10, 10, 0, 3100),
        (6, 15, -40, 0, 0),
    ],
)
def test_the_gauge_on_a_stated_mass_of_air(psi, from_c, to_c, from_m, to_m):
    volume_m3 = 2.3e-4
    first_pa = from_unit(psi, "pressure", "psi") * 1000 + 1000 * standard_pressure_kpa(from_m)
    mass_kg = first_pa * volume_m3 / (MOLAR_R * (from_c + 273.15))
    there_pa = mass_kg * MOLAR_R * (to_c + 273.15) / volume_m3 - 1000 * standard_pressure_kpa(to_m)
    carried = carry_pressure(from_unit(psi, "pressure", "psi"), from_c=from_c, to_c=to_c, from_m=from_m, to_m=to_m)
    assert 1000 * carried == pytest.approx(there_pa, rel=1e-9, abs=1e-6)


def rolled(wheelbase, angle_deg, fork_sag, rear_up, drop, radii, rear_centre):
    """Turn the sagged frame until both wheels touch a level ground, by a root finder; head angle, wheelbase, drop."""
    front_r, rear_r = radii
    angle = radians(angle_deg)
    line = np.array([wheelbase, front_r - rear_r]) / np.hypot(wheelbase, front_r - rear_r)
    below = np.array([line[1], -line[0]])
    bracket = np.array([0, rear_r]) + rear_centre * line + drop * below
    front = np.array([wheelbase - fork_sag * cos(angle), front_r + fork_sag * sin(angle)])
    rear = np.array([0.0, rear_r + rear_up])

    def turned(phi):
        turn = np.array([[cos(phi), -sin(phi)], [sin(phi), cos(phi)]])
        return (turn @ point for point in (front, rear, bracket))

    def uneven(phi):
        f, r, _ = turned(phi)
        return (f[1] - front_r) - (r[1] - rear_r)

    phi = brentq(uneven, -0.5, 0.5, xtol=1e-14)
    f, r, b = turned(phi)
    axles = f - r
    down = (axles[1] * (b - r)[0] - axles[0] * (b - r)[1]) / np.hypot(*axles)
    return angle_deg - np.degrees(phi), axles[0], down


@pytest.mark.parametrize(
    "case",
    [
        (1180.0, 67.5, 24.0, 30.0, 15.0, (350.0, 350.0), 440.0),
        (1260.0, 63.0, 36.0, 55.0, 28.0, (372.0, 372.0), 445.0),
        (1240.0, 64.0, 34.0, 50.0, 10.0, (372.0, 352.0), 435.0),
        (1100.0, 70.0, 15.0, 0.0, -20.0, (352.0, 372.0), 425.0),
        (1225.0, 90.0, 40.0, 40.0, 25.0, (350.0, 350.0), 440.0),
        (1300.0, 62.0, 0.0, 65.0, 35.0, (372.0, 352.0), 450.0),
    ],
)
def test_geometry_at_sag_by_rolling_the_bike_onto_the_ground(case):
    wheelbase, angle, fork_sag, rear_up, drop, (front_r, rear_r), rear_centre = case
    found = at_sag(
        wheelbase_mm=wheelbase,
        head_angle_deg=angle,
        fork_sag_mm=fork_sag,
        rear_axle_up_mm=rear_up,
        bb_drop_mm=drop,
        rear_centre_mm=rear_centre,
        front_radius_mm=front_r,
        rear_radius_mm=rear_r,
    )
    head, base, down = rolled(*case)
    # A frame turned by phi has its head angle steeper by -phi.
    assert found.head_angle_deg == pytest.approx(head, abs=1e-8)
    assert found.wheelbase_mm == pytest.approx(base, abs=1e-6)
    assert found.bb_drop_mm == pytest.approx(down, abs=1e-6)


# A free swing m x'' + c x' + k x = 0 integrated by scipy, peaks found as events; tolerance 1e-5.
@pytest.mark.parametrize(("ratio", "hertz", "swings"), [(0.02, 2.4, 6), (0.08, 1.8, 4), (0.2, 3.1, 2), (0.35, 2.0, 1)])
def test_the_damping_of_an_integrated_swing(ratio, hertz, swings):
    omega = 2 * pi * hertz

    def motion(_, state):
        return [state[1], -2 * ratio * omega * state[1] - omega**2 * state[0]]

    def at_peak(_, state):
        return state[1]

    at_peak.direction = -1
    done = solve_ivp(motion, (0, (swings + 1.5) / hertz), [1.0, 0.0], events=at_peak, rtol=1e-11, atol=1e-14)
    peaks = [state[0] for time, state in zip(done.t_events[0], done.y_events[0], strict=True) if time > 1e-6]
    decrement, found = damping_from_decay(1.0, peaks[swings - 1], swings)
    assert found == pytest.approx(ratio, rel=1e-5)
    assert decrement == pytest.approx(2 * pi * ratio / sqrt(1 - ratio**2), rel=1e-5)


# Schaum, Engineering Mechanics, Problem 19.20: damping ratio 0.316, decay 2.095 a swing by the book's short form
# ratio x omega x period; exactly 2.09272. Read in a companion to the book.
def test_the_decay_of_a_textbook_damper():
    decrement, ratio = damping_from_decay(exp(2.09272), 1.0, 1)
    assert ratio == pytest.approx(0.316, abs=5e-5)
    assert decrement == pytest.approx(2.095, abs=0.003)


# A mass on a spring let go and timed, scipy's solve_ivp: the period is one over the frequency.
def test_ride_frequency_of_an_integrated_bounce():
    rate, load = 9.2, 412.0
    mass = load / 9.80665

    def rising(_, state):
        return state[0]

    rising.direction = 1
    done = solve_ivp(
        lambda _, state: [state[1], -rate * 1000 / mass * state[0]], (0, 3), [0.02, 0.0], events=rising, rtol=1e-11
    )
    crossings = done.t_events[0]
    assert ride_frequency_hz(rate, load) == pytest.approx(1 / np.diff(crossings).mean(), rel=1e-5)


def test_loads_of_two_scales_give_the_share():
    # Moment balance: 312 N and 468 N at 1.18 m put the centre of mass 0.472 m ahead of the rear contact, 40 % in front.
    front, rear = wheel_loads_n([(780 / 9.80665, 472)], wheelbase_mm=1180)
    assert (front, rear) == (pytest.approx(312), pytest.approx(468))


# Wire springs by the energy of torsion: U = T^2 l / (2 G J) with T = F D / 2, l = pi D n and J = pi d^4 / 32,
# and the deflection dU/dF by a difference (Castigliano).
@pytest.mark.parametrize(
    ("wire", "diameter", "coils", "modulus"),
    [(12.2, 52.0, 6.25, 79.3), (10.5, 48.0, 5.5, 77.2), (13.0, 60.0, 4.75, 81.5), (4.0, 28.0, 9.0, 73.0)],
)
def test_the_rate_of_a_wire_spring_from_the_energy_of_torsion(wire, diameter, coils, modulus):
    def energy(force):
        polar = pi * wire**4 / 32
        return (force * diameter / 2) ** 2 * (pi * diameter * coils) / (2 * modulus * 1000 * polar)

    deflection = (energy(1001.0) - energy(999.0)) / 2.0
    rate = wire_rate_n_per_mm(wire_mm=wire, mean_diameter_mm=diameter, active_coils=coils, shear_modulus_gpa=modulus)
    assert rate == pytest.approx(1000.0 / deflection, rel=1e-9)


# The load, the target and each stock spring's sag by a root finder on k (x + p) = F.
@pytest.mark.parametrize(
    ("lbf_in", "sag", "stroke", "target", "preload"), [(400, 15.2, 55, 0.28, 0.5), (350, 24.0, 65, 0.3, 2)]
)
def test_a_coil_for_a_target_by_root_finding(lbf_in, sag, stroke, target, preload):
    rate = from_unit(lbf_in, "spring_rate", "lbf/in")
    advice = next_rate(rate_n_per_mm=rate, sag_mm=sag, stroke_mm=stroke, target=target, preload_mm=preload)
    exact = brentq(lambda k: k * (target * stroke + preload) - rate * (sag + preload), 1, 500)
    assert advice.rate_n_per_mm == pytest.approx(exact, rel=1e-9)
    for spring in advice.stock:
        settles = brentq(lambda x, k=spring.rate_n_per_mm: k * (x + preload) - advice.load_n, 0, stroke)
        assert spring.sag_fraction == pytest.approx(settles / stroke, rel=1e-9)
        steps = to_unit(spring.rate_n_per_mm, "spring_rate", "lbf/in") / 25
        assert steps == pytest.approx(round(steps), abs=1e-9)


# 90 % interval over 600 made-up springs a case; by chance alone it stays within 3 points.
@pytest.mark.parametrize("count", [3, 4, 7, 20])
def test_the_interval_of_a_fitted_rate_covers_what_it_claims(count):
    rng = np.random.default_rng(count)
    travel = np.sort(rng.uniform(2, 50, count))
    covered = []
    for _ in range(600):
        _, low, high = fit_rate(travel, 60 + 82 * travel + rng.normal(0, 20, count))
        covered.append(low <= 82 <= high)
    assert np.mean(covered) == pytest.approx(0.90, abs=0.035)


def test_a_fit_with_repeats_is_that_of_scipy():
    travel, force = [10, 10, 20, 20, 20, 35], [815, 798, 1610, 1622, 1604, 2811]
    line = stats.linregress(travel, force)
    half = stats.t.ppf(0.95, 4) * line.stderr
    assert fit_rate(travel, force) == pytest.approx((line.slope, line.slope - half, line.slope + half), rel=1e-9)
