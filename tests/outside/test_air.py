"""The air spring against polytropic gas laws computed at 30 digits, and textbook examples."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from workbench.physics.air import AirChamber, energy_j, force_n, positive_kpa, rate_n_per_mm, static_travel_mm
from workbench.physics.atmosphere import SEA_LEVEL_KPA

DATA = Path(__file__).parent / "data"
CYLINDER = AirChamber(area_mm2=900, positive_mm3=200e3, negative_mm3=0, travel_mm=210)
TWO_SIDED = AirChamber(area_mm2=900, positive_mm3=180e3, negative_mm3=25e3, travel_mm=150, negative_area_mm2=800)


def table(name: str) -> list[dict[str, float]]:
    """The rows of a table; lines that begin with # say where it comes from."""
    lines = (DATA / name).read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [{name: float(value) for name, value in row.items()} for row in rows]


# Closed cylinder, computed with mpmath 1.3.0 at 30 digits, rate and energy checked there by differentiation and
# quadrature. Tolerance: the ten digits printed.
@pytest.mark.parametrize("row", table("gas_spring_single_chamber.csv"))
def test_a_closed_cylinder(row):
    asked = {"pressure_kpa": 600, "travel_mm": row["x_mm"], "n": row["n"]}
    assert force_n(CYLINDER, **asked) == pytest.approx(row["F_N"], rel=1e-8)
    assert rate_n_per_mm(CYLINDER, **asked) == pytest.approx(row["k_N_per_mm"], rel=1e-8)
    assert energy_j(CYLINDER, **asked) == pytest.approx(row["E_J"], rel=1e-8, abs=1e-9)
    assert positive_kpa(CYLINDER, **asked) == pytest.approx(100 * row["p_gauge_bar"], rel=1e-8)


# Cylinder with gas on both sides and unequal areas, computed with mpmath 1.3.0.
@pytest.mark.parametrize("row", table("gas_spring_two_chamber.csv"))
@pytest.mark.parametrize("n", [1.0, 1.3])
def test_a_cylinder_with_gas_on_both_sides(row, n):
    force = force_n(TWO_SIDED, pressure_kpa=700, travel_mm=row["x_mm"], n=n)
    assert force == pytest.approx(row[f"F_N_n{n}"], rel=1e-8)


def test_where_a_load_comes_to_rest():
    # mpmath findroot and the closed form x = V/A (1 - p / (F/A + pa)).
    assert static_travel_mm(CYLINDER, pressure_kpa=600, load_n=700) == pytest.approx(44.9391969, abs=1e-6)


# Moran and Shapiro, Fundamentals of Engineering Thermodynamics, Example 2.1: work of a gas at 3 bar that doubles from
# 0.1 to 0.2 m3; the book prints 17.6 and 20.79 kJ. Read in a companion to the book. Here the gas is pressed back from
# 0.2 to 0.1 m3 along the same curve, against no outside air.
@pytest.mark.parametrize(("n", "work_kj", "tolerance"), [(1.5, 17.6, 0.05), (1.0, 20.79, 0.005)])
def test_polytropic_work(n, work_kj, tolerance):
    room = AirChamber(area_mm2=1e6, positive_mm3=200e6, negative_mm3=0, travel_mm=150)
    charge_kpa = 300 / 2**n  # absolute, at 0.2 m3
    lift_kpa = 200.0  # the same again on top keeps the gauge pressure above zero
    whole, lift = (
        energy_j(room, pressure_kpa=absolute - SEA_LEVEL_KPA, travel_mm=100, n=n)
        for absolute in (charge_kpa + lift_kpa, lift_kpa)
    )
    assert (whole - lift) / 1000 == pytest.approx(work_kj, abs=tolerance)


# Rayner Joel, Basic Engineering Thermodynamics, Example 5.1: 765 mmHg on 20 000 mm3 become 900 mmHg on 17 000 mm3.
# Read in a companion to the book; here in kPa, for the law only knows ratios.
def test_boyle():
    tube = AirChamber(area_mm2=100, positive_mm3=20_000, negative_mm3=0, travel_mm=100)
    pressed = positive_kpa(tube, pressure_kpa=765 - SEA_LEVEL_KPA, travel_mm=30)
    assert pressed + SEA_LEVEL_KPA == pytest.approx(900, rel=1e-12)


# Adiabatic compression to half the volume from 10 bar absolute, ideal gas: 26.3901582 bar (closed form); real air
# 26.7684 bar (CoolProp 8.0.0), which bounds what the ideal gas leaves out: 1.5 %.
def test_adiabatic_compression():
    tube = AirChamber(area_mm2=100, positive_mm3=20_000, negative_mm3=0, travel_mm=150)
    pressed = positive_kpa(tube, pressure_kpa=1000 - SEA_LEVEL_KPA, travel_mm=100, n=1.4) + SEA_LEVEL_KPA
    assert pressed / 100 == pytest.approx(26.3901582, rel=1e-9)
    assert pressed / 100 == pytest.approx(26.7684, rel=0.015)


def test_arrays_give_what_single_travels_give():
    travel = np.array([0.0, 40.0, 80.0])
    force = force_n(TWO_SIDED, pressure_kpa=700, travel_mm=travel)
    assert force[1] == pytest.approx(610.1914583, rel=1e-8)  # mpmath 1.3.0
