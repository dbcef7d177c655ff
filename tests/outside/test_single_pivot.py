"""Leverage of single pivots by the law of cosines, written down anew, and wheel rates by differentiating energy."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, radians, sin, sqrt

import numpy as np
import pytest
from scipy.differentiate import derivative
from scipy.integrate import quad
from scipy.optimize import brentq

from workbench.physics.air import AirChamber, energy_j, force_n, rate_n_per_mm
from workbench.physics.leverage import survey, wheel_rate_n_per_mm
from workbench.physics.sag import wheel_sag


@dataclass(frozen=True)
class Pivot:
    """A swingarm of length a; shock eyes b and c from the pivot, under the angle psi at full extension."""

    a: float
    b: float
    c: float
    below_deg: float  # axle below the pivot at full extension
    psi_deg: float
    travel: float

    def _turned(self, y: float) -> float:
        return asin(y / self.a - sin(radians(self.below_deg))) + radians(self.below_deg)

    def _length(self, y: float) -> float:
        return sqrt(self.b**2 + self.c**2 - 2 * self.b * self.c * cos(radians(self.psi_deg) - self._turned(y)))

    def stroke(self, y: float) -> float:
        """Shock stroke at an axle travel."""
        return self._length(0.0) - self._length(y)

    def ratio(self, y: float) -> float:
        """Axle travel per stroke, dy/ds."""
        turned = self._turned(y)
        lever = self.b * self.c * sin(radians(self.psi_deg) - turned) / self._length(y)
        return self.a * cos(turned - radians(self.below_deg)) / lever


PIVOTS = {
    "the one of the table": Pivot(430, 260, 160, 12, 95, 150),
    "long and flat": Pivot(450, 280, 170, 10, 80, 170),
    "progressive": Pivot(440, 230, 150, 8, 120, 160),
    "rising at first": Pivot(430, 240, 180, 15, 60, 150),
    "short": Pivot(420, 250, 140, 5, 100, 100),
    "long travel": Pivot(460, 300, 190, 14, 105, 200),
}
PRELOAD_MM, RATE = 2.0, 80.0


def surveyed(pivot: Pivot, points: int = 11, **asked):
    """A survey in even steps of the shock, wheel travels by root finding, in no order."""
    full = pivot.stroke(pivot.travel)
    strokes = [full * step / (points - 1) for step in range(points)]
    wheels = [brentq(lambda y, s=s: pivot.stroke(y) - s, -1e-9, pivot.travel + 1e-6, xtol=1e-12) for s in strokes]
    order = np.random.default_rng(7).permutation(points)
    return survey([strokes[i] for i in order], [max(wheels[i], 0.0) for i in order], **asked)


@pytest.mark.parametrize("name", PIVOTS)
def test_the_closed_form_is_its_own_slope(name):
    # The formula for the ratio against scipy's numerical derivative of the stroke.
    pivot = PIVOTS[name]
    for y in (10.0, 50.0, 90.0):
        slope = derivative(np.vectorize(pivot.stroke), y, initial_step=1.0).df
        assert pivot.ratio(y) == pytest.approx(1 / slope, rel=1e-8)


# Exact readings in eleven steps, without a word about their error. Tolerance 0.2 % of the ratio and 0.2 points of the
# wheel sag; with seven steps 0.5 %.
@pytest.mark.parametrize("name", PIVOTS)
@pytest.mark.parametrize(("points", "tolerance"), [(11, 0.002), (7, 0.005)])
def test_ratio_stroke_and_progression_of_a_single_pivot(name, points, tolerance):
    pivot = PIVOTS[name]
    curve = surveyed(pivot, points)
    full = pivot.stroke(pivot.travel)
    assert curve.mean == pytest.approx(pivot.travel / full, rel=tolerance / 5)
    assert curve.progression == pytest.approx(1 - pivot.ratio(pivot.travel) / pivot.ratio(0), abs=2 * tolerance)
    for y in np.linspace(0, pivot.travel, 13):
        assert curve.ratio(y) == pytest.approx(pivot.ratio(y), rel=tolerance)
        assert curve.stroke(y) == pytest.approx(pivot.stroke(y), abs=tolerance * full / 5)
        assert curve.wheel(pivot.stroke(y)) == pytest.approx(y, abs=tolerance * pivot.travel / 5)
        assert wheel_sag(min(pivot.stroke(y), curve.stroke_mm), curve) == pytest.approx(y / pivot.travel, abs=tolerance)
        low, high = curve.interval(y)
        assert low <= pivot.ratio(y) <= high


# Virtual work: the wheel force is the slope of the spring's energy over wheel travel, the wheel rate its curvature.
# Energy from the closed form of the pivot, curvature by second differences of it. Tolerance 0.5 %.
@pytest.mark.parametrize("name", PIVOTS)
def test_the_wheel_rate_is_the_curvature_of_the_energy_of_a_coil(name):
    pivot = PIVOTS[name]
    curve = surveyed(pivot)

    def energy(y: float) -> float:
        return RATE * (pivot.stroke(y) + PRELOAD_MM) ** 2 / 2

    step = 0.5
    for y in np.linspace(0.1, 0.9, 9) * pivot.travel:
        curvature = (energy(y + step) - 2 * energy(y) + energy(y - step)) / step**2
        rate = wheel_rate_n_per_mm(
            curve,
            wheel_mm=y,
            shock_rate_n_per_mm=RATE,
            shock_force_n=RATE * (pivot.stroke(y) + PRELOAD_MM),
        )
        assert rate == pytest.approx(curvature, rel=0.005)


@pytest.mark.parametrize("n", [1.0, 1.35])
def test_the_wheel_rate_is_the_curvature_of_the_energy_of_an_air_spring(n):
    pivot = PIVOTS["progressive"]
    curve = surveyed(pivot)
    full = pivot.stroke(pivot.travel)
    can = AirChamber(area_mm2=1100, positive_mm3=1100 * full * 1.5, negative_mm3=1100 * full * 0.4, travel_mm=full + 1)
    asked = {"pressure_kpa": 1200.0, "n": n}

    def energy(y: float) -> float:
        return 1000 * energy_j(can, travel_mm=pivot.stroke(y), **asked)

    step = 0.5
    for y in np.linspace(0.1, 0.95, 9) * pivot.travel:
        curvature = (energy(y + step) - 2 * energy(y) + energy(y - step)) / step**2
        rate = wheel_rate_n_per_mm(
            curve,
            wheel_mm=y,
            shock_rate_n_per_mm=rate_n_per_mm(can, travel_mm=pivot.stroke(y), **asked),
            shock_force_n=force_n(can, travel_mm=pivot.stroke(y), **asked),
        )
        assert rate == pytest.approx(curvature, rel=0.005)


def test_the_work_at_the_wheel_is_the_energy_of_the_shock():
    # scipy's quadrature of the wheel force over wheel travel against the spring's energy in closed form.
    pivot = PIVOTS["long travel"]
    curve = surveyed(pivot)
    work, _ = quad(lambda y: RATE * (curve.stroke(y) + PRELOAD_MM) / curve.ratio(y), 0, pivot.travel, limit=200)
    stored = RATE * ((pivot.stroke(pivot.travel) + PRELOAD_MM) ** 2 - PRELOAD_MM**2) / 2
    assert work == pytest.approx(stored, rel=1e-3)


# Rough readings of every pivot, sd 1 mm as stated: the true ratio lies in the 90 % interval 87 to 99 % of the time
# (the prior knows little of single pivots, so the interval is on the wide side).
def test_the_interval_of_the_ratio_covers_what_it_claims_on_single_pivots():
    rng = np.random.default_rng(17)
    covered = []
    for pivot in PIVOTS.values():
        full = pivot.stroke(pivot.travel)
        strokes = np.linspace(0, full, 9)
        wheels = [brentq(lambda y, s=s, p=pivot: p.stroke(y) - s, -1e-9, pivot.travel + 1e-6) for s in strokes]
        for _ in range(25):
            noisy = np.maximum(np.asarray(wheels) + rng.normal(0, 1, 9), 0)
            noisy[0] = 0.0
            curve = survey(strokes, noisy)
            for share in (0.1, 0.4, 0.7, 0.9):
                low, high = curve.interval(share * curve.travel_mm)
                covered.append(low <= pivot.ratio(share * pivot.travel) <= high)
    assert 0.87 <= np.mean(covered) <= 0.99
