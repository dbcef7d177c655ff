"""Sag arithmetic against closed forms and an independent solver."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from scipy.optimize import brentq

from workbench.physics.air import AirChamber
from workbench.physics.leverage import survey
from workbench.physics.sag import SagReading, next_pressure, wheel_sag

DATA = Path(__file__).parent / "data"
ATMOSPHERE_PA = 101325.0


def two_sided_force_n(gauge_pa: float, x_m: float) -> float:
    """Isothermal gas on both sides of a piston, written down anew in SI units: 180 and 25 cm3, 9 and 8 cm2."""
    absolute = gauge_pa + ATMOSPHERE_PA
    front = absolute * 180e-6 / (180e-6 - 9e-4 * x_m) - ATMOSPHERE_PA
    back = absolute * 25e-6 / (25e-6 + 8e-4 * x_m) - ATMOSPHERE_PA
    return front * 9e-4 - back * 8e-4


# The force itself stands in the table of the two-chamber cylinder (mpmath 1.3.0): 610.1914583 N at 40 mm and 7 bar.
@pytest.mark.parametrize("target", [0.15, 0.20, 0.25, 0.30, 0.35])
def test_from_one_reading_of_a_known_cylinder_to_any_sag(target):
    load = two_sided_force_n(7e5, 0.040)
    assert load == pytest.approx(610.1914583, rel=1e-8)
    right_pa = brentq(lambda pa: two_sided_force_n(pa, target * 0.150) - load, 1e4, 5e6)
    chamber = AirChamber(area_mm2=900, positive_mm3=180e3, negative_mm3=25e3, travel_mm=150, negative_area_mm2=800)
    found = next_pressure([SagReading(700, 40.0)], travel_mm=150, target=target, end="front", chamber=chamber)
    assert found.pressure_kpa == pytest.approx(right_pa / 1000, rel=0.01)


# A single pivot by the law of cosines, mpmath 1.3.0: half a stroke of sag at the shock is more than half at the wheel.
def test_sag_at_the_wheel_of_a_single_pivot():
    lines = (DATA / "swingarm_single_pivot.csv").read_text(encoding="utf-8").splitlines()
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    strokes = [float(row["shock_stroke_mm"]) for row in rows]
    travels = [float(row["axle_travel_mm"]) for row in rows]
    curve = survey(strokes, travels, reading_sd_mm=0.1)
    for stroke, travel in zip(strokes, travels, strict=True):
        assert wheel_sag(stroke, curve) == pytest.approx(travel / travels[-1], abs=5e-4)
    shock_sag = strokes[5] / strokes[-1]
    assert shock_sag == pytest.approx(0.3197, abs=1e-4)
    assert wheel_sag(strokes[5], curve) == pytest.approx(1 / 3, abs=5e-4)
