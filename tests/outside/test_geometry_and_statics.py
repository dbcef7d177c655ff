"""Leverage, geometry at sag, loads, frequencies and decay against closed forms and published bicycles."""

from __future__ import annotations

import csv
from math import pi, sqrt
from pathlib import Path

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from workbench.model.units import from_unit
from workbench.physics.balance import damping_from_decay, ride_frequency_hz, wheel_loads_n
from workbench.physics.geometry import at_sag, fork_sag_vertical_mm, trail_mm
from workbench.physics.leverage import survey, wheel_rate_n_per_mm

DATA = Path(__file__).parent / "data"
STANDARD_G = 9.80665 / 9.81


def table(name: str) -> list[dict[str, str]]:
    """The rows of a table; lines that begin with # say where it comes from."""
    lines = (DATA / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def single_pivot() -> list[dict[str, float]]:
    """A swingarm on one pivot by the law of cosines, mpmath 1.3.0 at 30 digits."""
    return [{name: float(value) for name, value in row.items()} for row in table("swingarm_single_pivot.csv")]


def pivot_curve(reading_sd_mm: float):
    """The curve surveyed without reading error."""
    rows = single_pivot()
    return survey(
        [row["shock_stroke_mm"] for row in rows],
        [row["axle_travel_mm"] for row in rows],
        reading_sd_mm=reading_sd_mm,
    )


# Ratio and wheel rate of the closed form. Tolerance 0.1 % for readings to a tenth of a millimetre, 1 % when told that
# they are good to a millimetre (the curve is then held a little straighter).
@pytest.mark.parametrize(("reading_sd_mm", "tolerance"), [(0.1, 0.001), (1.0, 0.01)])
def test_a_surveyed_single_pivot(reading_sd_mm, tolerance):
    curve = pivot_curve(reading_sd_mm)
    for row in single_pivot():
        wheel_mm = min(row["axle_travel_mm"], curve.travel_mm)
        assert curve.ratio(wheel_mm) == pytest.approx(row["leverage_ratio_dy_ds"], rel=tolerance)
        rate = wheel_rate_n_per_mm(
            curve,
            wheel_mm=wheel_mm,
            shock_rate_n_per_mm=80,
            shock_force_n=80 * (row["shock_stroke_mm"] + 2),
        )
        assert rate == pytest.approx(row["wheel_rate_N_per_mm"], rel=tolerance)


def test_the_mean_ratio_of_a_single_pivot():
    assert pivot_curve(0.1).mean == pytest.approx(3.0302536, rel=1e-4)  # mpmath 1.3.0


def test_the_wheel_rate_is_not_the_naive_one():
    # mpmath 1.3.0: 8.6812822 N/mm at 50 mm; leaving the term of the changing ratio out gives 8.3202372.
    curve = pivot_curve(0.1)
    rate = wheel_rate_n_per_mm(curve, wheel_mm=50, shock_rate_n_per_mm=80, shock_force_n=80 * 17.82579993)
    assert rate == pytest.approx(8.6812822, rel=1e-3)
    assert 80 / curve.ratio(50) ** 2 == pytest.approx(8.3202372, rel=1e-3)


# Exact plane geometry, mpmath 1.3.0.
@pytest.mark.parametrize("row", table("head_angle_sag.csv"))
def test_head_angle_and_wheelbase_at_sag(row):
    sagged = at_sag(
        wheelbase_mm=float(row["L_mm"]),
        head_angle_deg=float(row["theta_deg"]),
        fork_sag_mm=float(row["fork_sag_mm"]),
        rear_axle_up_mm=float(row["rear_sag_mm"]),
        front_radius_mm=float(row["r_front_mm"]),
        rear_radius_mm=float(row["r_rear_mm"]),
    )
    assert sagged.head_angle_deg == pytest.approx(float(row["theta_sagged_deg"]), abs=1e-6)
    assert sagged.wheelbase_mm == pytest.approx(float(row["wheelbase_sagged_mm"]), abs=1e-5)


def test_sag_along_the_fork_and_down():
    assert fork_sag_vertical_mm(40, head_angle_deg=65) == pytest.approx(36.2523115, rel=1e-8)  # closed form


def test_trail():
    # bicycleparameters.geometry.trail of BicycleParameters 1.5.2.
    assert trail_mm(wheel_radius_mm=340, head_angle_deg=66, fork_offset_mm=44) == pytest.approx(103.213757, rel=1e-8)


# Meijaard et al. (2007), Proc. R. Soc. A 463:1955, Table 1, benchmark bicycle with rider; loads by total_com of
# BicycleParameters 1.5.2, which counts with g = 9.81 m/s2.
def test_the_wheel_loads_of_the_benchmark_bicycle():
    front, rear = wheel_loads_n([(85, 300), (4, 900), (3, 1020), (2, 0)], wheelbase_mm=1020)
    assert front == pytest.approx(309.30353 * STANDARD_G, rel=1e-6)
    assert rear == pytest.approx(612.83647 * STANDARD_G, rel=1e-6)


# Measured bicycles, parameters from BicycleParameters 1.5.2 (BSD-2-Clause), loads by its total_com.
@pytest.mark.parametrize("row", table("bicycles_measured.csv"))
def test_the_wheel_loads_of_measured_bicycles(row):
    base = float(row["wheelbase_m"])
    masses = [
        (float(row["m_rearframe_kg"]), 1000 * float(row["x_rearframe_m"])),
        (float(row["m_forkbar_kg"]), 1000 * float(row["x_forkbar_m"])),
        (float(row["m_frontwheel_kg"]), 1000 * base),
        (float(row["m_rearwheel_kg"]), 0.0),
    ]
    front, rear = wheel_loads_n(masses, wheelbase_mm=1000 * base)
    assert 100 * front / (front + rear) == pytest.approx(float(row["front_wheel_load_percent"]), rel=1e-6)


# A measured rider on a measured bicycle, BicycleParameters data, again with g = 9.81 m/s2.
@pytest.mark.parametrize("row", table("rider_on_bicycle.csv"))
def test_the_wheel_loads_of_a_rider_on_a_bicycle(row):
    mass, ahead = float(row["m_total_kg"]), 1000 * float(row["x_com_m"])
    front, rear = wheel_loads_n([(mass, ahead)], wheelbase_mm=1064)
    assert front == pytest.approx(float(row["front_load_N"]) * STANDARD_G, rel=1e-6)
    assert rear == pytest.approx(float(row["rear_load_N"]) * STANDARD_G, rel=1e-6)


# Tayal, Engineering Mechanics, Example 3.7: 2 kN at 0.1 m and 0.5 kN at 0.8 m of a 1 m wheelbase put 0.6 kN on the
# single wheel. Read in a companion to the book.
def test_the_wheel_loads_of_a_scooter():
    front, rear = wheel_loads_n([(2000 / 9.80665, 100), (500 / 9.80665, 800)], wheelbase_mm=1000)
    assert front == pytest.approx(600, abs=1e-6)
    assert rear == pytest.approx(1900, abs=1e-6)


# f = (1 / 2 pi) sqrt(g / d): Thomson, Rao, Inman, chapter 2; table computed.
@pytest.mark.parametrize("row", table("natural_frequency_static_deflection.csv"))
def test_ride_frequency_of_a_linear_spring(row):
    frequency = ride_frequency_hz(500 / float(row["delta_mm"]), 500)
    assert frequency == pytest.approx(float(row["f_n_Hz"]), rel=1e-8)


def test_ride_frequency_of_a_textbook_weight():
    # Meriam and Kraige, Engineering Mechanics: Dynamics, Sample Problem 8/1: 25 lb on 160 lb/ft; with g = 32.2 ft/s2
    # 2.2847 Hz. Inputs read in a companion to the book, result computed; the two g differ by 0.08 %.
    rate = from_unit(160 / 12, "spring_rate", "lbf/in")
    assert ride_frequency_hz(rate, from_unit(25, "force", "lbf")) == pytest.approx(2.2847, rel=5e-4)


def test_decay_over_five_swings():
    assert damping_from_decay(10.0, 2.0, 5) == pytest.approx((0.321887582, 0.051162905), rel=1e-8)  # closed form


def test_decay_of_a_simulated_free_swing():
    # m 4, c 40, k 9000 (SI): damping ratio c / (2 sqrt(k m)) = 0.105409255; the swing itself from scipy's solve_ivp.
    mass, damping, rate = 4.0, 40.0, 9000.0

    def motion(_, state):
        return [state[1], -(damping * state[1] + rate * state[0]) / mass]

    def at_peak(_, state):
        return state[1]

    at_peak.direction = -1
    done = solve_ivp(motion, (0, 1.5), [1.0, 0.0], events=at_peak, rtol=1e-10, atol=1e-13)
    peaks = [state[0] for time, state in zip(done.t_events[0], done.y_events[0], strict=True) if time > 1e-6]
    decrement, ratio = damping_from_decay(1.0, peaks[2], 3)
    assert ratio == pytest.approx(damping / (2 * sqrt(rate * mass)), rel=1e-5)
    assert decrement == pytest.approx(0.666016311, rel=1e-5)  # closed form 2 pi z / sqrt(1 - z^2)
    assert decrement == pytest.approx(2 * pi * ratio / sqrt(1 - ratio**2), rel=1e-9)


def test_the_ratio_averages_to_the_mean_over_the_stroke():
    curve = pivot_curve(0.1)
    strokes = np.linspace(0, curve.stroke_mm, 401)
    ratios = [curve.ratio(curve.wheel(stroke)) for stroke in strokes]
    assert np.trapezoid(ratios, strokes) / curve.stroke_mm == pytest.approx(curve.mean, rel=1e-6)
