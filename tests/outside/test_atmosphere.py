"""Gauge pressure over temperature and altitude against independent computations."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from workbench.model.units import from_unit, to_unit
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa

DATA = Path(__file__).parent / "data"


def table(name: str) -> list[dict[str, float]]:
    """The rows of a table; lines that begin with # say where it comes from."""
    lines = (DATA / name).read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [{name: float(value) for name, value in row.items()} for row in rows]


# US Standard Atmosphere 1976 = ISO 2533 below 32 km, geometric altitude: ambiance 1.3.1 and fluids 1.3.1 agree to
# 0.02 Pa. Tolerance 0.1 Pa, in the middle of it.
@pytest.mark.parametrize("row", table("standard_atmosphere.csv"))
def test_the_standard_atmosphere(row):
    assert 1000 * standard_pressure_kpa(row["h_m"]) == pytest.approx(row["p_Pa_geometric_ambiance"], abs=0.1)


# Public Domain Aeronautical Software tables, as quoted in the tests of the fluids library: whole pascals.
@pytest.mark.parametrize(("altitude_m", "pa", "tolerance"), [(-2000, 127780, 5), (2000, 79501, 1), (4000, 61660, 5)])
def test_the_standard_atmosphere_of_the_printed_table(altitude_m, pa, tolerance):
    assert 1000 * standard_pressure_kpa(altitude_m) == pytest.approx(pa, abs=tolerance)


# Gay-Lussac with absolute pressure, closed form; the table also holds the classic mistake of scaling gauge pressure.
@pytest.mark.parametrize("row", table("gauge_pressure_temperature.csv"))
def test_a_warmer_or_colder_spring(row):
    here = from_unit(row["p_g1_psi"], "pressure", "psi")
    there = to_unit(carry_pressure(here, from_c=row["t1_C"], to_c=row["t2_C"]), "pressure", "psi")
    assert there == pytest.approx(row["p_g2_psi"], rel=1e-7)
    assert there != pytest.approx(row["wrong_gauge_only_psi"], rel=1e-3)


def test_a_gauge_up_a_mountain():
    # 10 bar set at sea level read at 2000 m in a sealed fixed volume, closed form with the atmosphere above.
    assert carry_pressure(1000, from_c=15, to_c=15, to_m=2000) / 100 == pytest.approx(10.218236, abs=1e-5)


# Rayner Joel, Basic Engineering Thermodynamics, Example 5.7: 238.6286 kPa absolute at 15 degC heated to 135 degC at
# constant volume, printed as 338.06 kPa with 273 for the zero of the scale. Read in a companion to the book.
def test_heating_at_constant_volume():
    outside = standard_pressure_kpa(0)
    heated = carry_pressure(238.6286 - outside, from_c=15, to_c=135) + outside
    assert heated == pytest.approx(338.06, rel=5e-4)  # 273 against 273.15


# Real air at constant density, CoolProp 8.0.0 (Lemmon et al. 2000): 20 bar absolute at 20 degC. The ideal gas is to
# stay within half a percent, well under what a workshop gauge resolves.
@pytest.mark.parametrize(("to_c", "real_bar"), [(0, 18.56747), (40, 21.43088)])
def test_the_ideal_gas_is_good_enough(to_c, real_bar):
    outside = standard_pressure_kpa(0)
    carried = carry_pressure(2000 - outside, from_c=20, to_c=to_c) + outside
    assert carried / 100 == pytest.approx(real_bar, rel=0.005)
