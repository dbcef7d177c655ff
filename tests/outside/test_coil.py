"""Coil springs against textbook examples."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from workbench.model.units import to_unit
from workbench.physics.coil import (
    fit_rate,
    nested_load_n,
    next_rate,
    rate_in_series_n_per_mm,
    wire_rate_n_per_mm,
)
from workbench.physics.coil_choice import fitted
from workbench.viewmodels.coil_wire import MODULUS_GPA

DATA = Path(__file__).parent / "data"
MPSI_GPA = 6.894757293168361


# Shigley's Mechanical Engineering Design, 10th ed., Example 10-1: d 0.037 in, D 0.400 in, G 11.85 Mpsi, 10.5 active
# coils, printed 4.13 lbf/in and 1.56 in under 6.46 lbf. Quoted at second hand.
def test_a_small_music_wire_spring():
    rate = wire_rate_n_per_mm(
        wire_mm=0.037 * 25.4, mean_diameter_mm=0.400 * 25.4, active_coils=10.5, shear_modulus_gpa=11.85 * MPSI_GPA
    )
    lbf_per_in = to_unit(rate, "spring_rate", "lbf/in")
    assert lbf_per_in == pytest.approx(4.13, abs=0.005)
    assert 6.46 / lbf_per_in == pytest.approx(1.56, abs=0.01)


# Bhavikatti, Strength of Materials, Example 6.22: d 12, D 150 mm, 10 coils, G 80 000 N/mm2, 450 N; printed 73.24 mm.
# Read in a companion to the book.
def test_a_close_coiled_spring():
    rate = wire_rate_n_per_mm(wire_mm=12, mean_diameter_mm=150, active_coils=10, shear_modulus_gpa=80)
    assert rate == pytest.approx(6.14, abs=0.005)
    assert 450 / rate == pytest.approx(73.24, abs=0.01)


# Design of Machine Elements, concentric springs, Example 10.19: the inner spring engages 15 mm after the outer one;
# 1000 N press the outer 24.988839 mm. Read in a public solution of the example.
def test_two_springs_of_which_one_engages_later():
    outer = wire_rate_n_per_mm(wire_mm=6, mean_diameter_mm=36, active_coils=10, shear_modulus_gpa=81.37)
    inner = wire_rate_n_per_mm(wire_mm=5, mean_diameter_mm=30, active_coils=8, shear_modulus_gpa=81.37)
    assert nested_load_n(24.988839, [(outer, 0.0), (inner, 15.0)]) == pytest.approx(1000, rel=1e-6)
    assert nested_load_n(24.988839, [(outer, 0.0)]) == pytest.approx(706.021471, rel=1e-6)


# Shigley, table 10-5: chrome-silicon wire, ASTM A401, has a shear modulus of 11.2 Mpsi (from memory).
def test_the_modulus_assumed_for_an_unmarked_spring():
    assert pytest.approx(11.2 * MPSI_GPA, abs=0.05) == MODULUS_GPA


# The same statics: 450 lbf/in with 1 mm of preload under 1733.8 N; worked by hand in lbf and inches.
def test_preload_sag_and_bind_of_a_spring_by_hand():
    load_lbf, rate, preload_in = 1733.8 / 4.4482216152605, 450.0, 1 / 25.4
    there = fitted(1733.8, rate_n_per_mm=450 * 4.4482216152605 / 25.4, stroke_mm=57.5, preload_mm=1.0)
    assert there.sag_mm == pytest.approx((load_lbf / rate - preload_in) * 25.4)
    assert there.preload_force_n == pytest.approx(rate * preload_in * 4.4482216152605)


def test_springs_behind_and_beside_one_another():
    # Any statics text: 30 and 60 N/mm.
    assert rate_in_series_n_per_mm([30, 60]) == pytest.approx(20)
    assert nested_load_n(1.0, [(30, 0.0), (60, 0.0)]) == pytest.approx(90)


def test_one_percent_of_wire():
    # k goes with d^4: 4.060401 %.
    thin, thick = (
        wire_rate_n_per_mm(wire_mm=d, mean_diameter_mm=40, active_coils=5, shear_modulus_gpa=79) for d in (10, 10.1)
    )
    assert 100 * (thick / thin - 1) == pytest.approx(4.060401, rel=1e-7)


def test_preload_and_load():
    # F = k (x + x0): 80 N/mm with 4 mm preload under 500 N moves 2.25 mm.
    advice = next_rate(rate_n_per_mm=80, sag_mm=2.25, stroke_mm=50, target=0.3, preload_mm=4)
    assert advice.load_n == pytest.approx(500)
    assert advice.preload_force_n == pytest.approx(320)


def test_a_fitted_rate_has_the_interval_of_an_independent_library():
    rng = np.random.default_rng(3)
    travel = np.linspace(5, 50, 10)
    force = 40 + 82.3 * travel + rng.normal(0, 25, 10)
    line = stats.linregress(travel, force)  # scipy
    half = stats.t.ppf(0.95, 8) * line.stderr
    assert fit_rate(travel, force) == pytest.approx((line.slope, line.slope - half, line.slope + half), rel=1e-9)


# NIST Statistical Reference Datasets, linear regression, Norris: certified slope and its standard deviation.
def test_a_fitted_rate_against_certified_values():
    lines = (DATA / "nist" / "Norris.csv").read_text(encoding="utf-8").splitlines()
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    slope, low, high = fit_rate([float(row["x"]) for row in rows], [float(row["y"]) for row in rows])
    assert slope == pytest.approx(1.00211681802045, rel=1e-9)
    assert (high - low) / 2 / stats.t.ppf(0.95, 34) == pytest.approx(0.429796848199937e-3, rel=1e-8)
