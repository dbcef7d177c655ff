"""The air spring against the same physics written down anew in SI units, with scipy's integrals, roots and slopes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest
from scipy.differentiate import derivative
from scipy.integrate import quad
from scipy.optimize import brentq

from workbench.physics.air import (
    AirChamber,
    energy_j,
    force_n,
    positive_kpa,
    pressure_for_sag_kpa,
    rate_n_per_mm,
    static_travel_mm,
)
from workbench.physics.atmosphere import SEA_LEVEL_KPA

OUTSIDE_PA = 101_325.0


@dataclass(frozen=True)
class Spring:
    """Areas in m2, volumes in m3, pressures in Pa gauge, travel in m; own pressures None where there is no valve."""

    area: float
    positive: float
    negative: float
    travel: float
    spacer: float = 0.0
    second: float = 0.0
    second_pa: float | None = None
    negative_pa: float | None = None

    def chamber(self) -> AirChamber:
        """The same spring in the units of the workbench."""
        sizes = (self.area * 1e6, self.positive * 1e9, self.negative * 1e9, self.travel * 1e3)
        return AirChamber(*sizes, self.spacer * 1e9, self.second * 1e9)

    def asked(self, pa: float, n: float) -> dict[str, float]:
        """Pressures and exponent as arguments."""
        own = {"second_kpa": self.second_pa, "negative_kpa": self.negative_pa}
        return {"pressure_kpa": pa / 1e3, "n": n} | {name: kpa / 1e3 for name, kpa in own.items() if kpa is not None}

    def inside(self, pa: float, n: float, x: float) -> float:
        """Absolute pressure over the piston; with two chambers the root of the volumes adding up."""
        main, absolute = self.positive - self.spacer, pa + OUTSIDE_PA

        def too_large(p: float) -> float:
            volume = main * (absolute / p) ** (1 / n)
            if self.second and p > self.second_pa + OUTSIDE_PA:
                volume += self.second * ((self.second_pa + OUTSIDE_PA) / p) ** (1 / n) - self.second
            return volume - (main - self.area * x)

        return brentq(too_large, absolute * 0.5, absolute * 1e5, xtol=1e-6, rtol=1e-14)

    def force(self, pa: float, n: float, x: float) -> float:
        """Push of the gas less that of the other side."""
        back = OUTSIDE_PA
        if self.negative:
            filled = (pa if self.negative_pa is None else self.negative_pa) + OUTSIDE_PA
            back = filled * (self.negative / (self.negative + self.area * x)) ** n
        return (self.inside(pa, n, x) - back) * self.area


SPRINGS = {
    "a fork": Spring(850e-6, 195e-6, 38e-6, 0.160),
    "a fork with spacers": Spring(962e-6, 240e-6, 60e-6, 0.170, spacer=30e-6),
    "a short shock": Spring(1100e-6, 90e-6, 25e-6, 0.050),
    "a large can": Spring(1500e-6, 210e-6, 90e-6, 0.065, spacer=12e-6),
    "no negative": Spring(700e-6, 150e-6, 0.0, 0.100),
    "own negative": Spring(804e-6, 170e-6, 45e-6, 0.150, negative_pa=650e3),
    "soft own negative": Spring(804e-6, 170e-6, 45e-6, 0.150, negative_pa=0.0),
    "second positive": Spring(850e-6, 165e-6, 40e-6, 0.160, second=55e-6, second_pa=1.25e6),
    "second positive, main shorter than the travel": Spring(850e-6, 120e-6, 40e-6, 0.160, second=60e-6, second_pa=9e5),
    "second positive and spacers": Spring(850e-6, 175e-6, 40e-6, 0.160, 15e-6, 55e-6, 1.5e6, 500e3),
}
EXPONENTS = (1.0, 1.1, 1.2, 1.3, 1.4)
PRESSURES = (180e3, 520e3, 800e3)


@pytest.mark.parametrize("name", SPRINGS)
@pytest.mark.parametrize("n", EXPONENTS)
def test_force_and_pressure_inside(name, n):
    # Tolerance: the root's own, 1e-9.
    spring = SPRINGS[name]
    x = np.linspace(0, spring.travel, 9)
    for pa in PRESSURES:
        found = force_n(spring.chamber(), travel_mm=x * 1e3, **spring.asked(pa, n))
        scale = spring.area * (pa + OUTSIDE_PA)
        assert found == pytest.approx([spring.force(pa, n, at) for at in x], rel=1e-9, abs=1e-9 * scale)
        asked = spring.asked(pa, n)
        asked.pop("negative_kpa", None)
        inside = positive_kpa(spring.chamber(), travel_mm=x * 1e3, **asked) + SEA_LEVEL_KPA
        assert 1e3 * inside == pytest.approx([spring.inside(pa, n, at) for at in x], rel=1e-9)


@pytest.mark.parametrize("name", SPRINGS)
@pytest.mark.parametrize("n", [1.0, 1.2, 1.4])
def test_energy_is_the_integral_of_the_force(name, n):
    # scipy.integrate.quad; tolerance 1e-7 of the energy.
    spring, pa = SPRINGS[name], 520e3
    for share in (0.2, 0.6, 1.0):
        end = share * spring.travel
        joules, _ = quad(lambda x: spring.force(pa, n, x), 0, end, limit=400, epsabs=1e-10, epsrel=1e-10)
        found = energy_j(spring.chamber(), travel_mm=end * 1e3, **spring.asked(pa, n))
        assert found == pytest.approx(joules, rel=1e-7, abs=1e-7)


@pytest.mark.parametrize("name", SPRINGS)
@pytest.mark.parametrize("n", [1.0, 1.2, 1.4])
def test_rate_is_the_slope_of_the_force(name, n):
    # scipy.differentiate.derivative; tolerance 1e-6. Places clear of where a second chamber joins in.
    spring, pa = SPRINGS[name], 520e3
    for share in (0.1, 0.35, 0.8):
        x = share * spring.travel
        slope = derivative(np.vectorize(lambda at: spring.force(pa, n, at)), x, initial_step=spring.travel * 1e-3).df
        found = rate_n_per_mm(spring.chamber(), travel_mm=x * 1e3, **spring.asked(pa, n))
        assert found == pytest.approx(slope / 1e3, rel=1e-6)


@pytest.mark.parametrize("name", SPRINGS)
@pytest.mark.parametrize("n", [1.0, 1.35])
def test_where_a_load_rests_is_the_root_of_the_force(name, n):
    # scipy.optimize.brentq; tolerance a ten-thousandth of a millimetre.
    spring, pa = SPRINGS[name], 520e3
    for share in (0.1, 0.3, 0.9):
        load = spring.force(pa, n, share * spring.travel)
        if load <= max(spring.force(pa, n, 0.0), 0.0):
            continue
        root = brentq(lambda x, load=load: spring.force(pa, n, x) - load, 0, spring.travel, xtol=1e-12)
        found = static_travel_mm(spring.chamber(), load_n=load, **spring.asked(pa, n))
        assert found == pytest.approx(root * 1e3, abs=1e-4)


@pytest.mark.parametrize("name", [name for name, spring in SPRINGS.items() if not spring.second])
def test_the_pressure_for_a_sag_is_the_root_over_pressure(name):
    spring = SPRINGS[name]
    load = spring.force(450e3, 1.0, 0.25 * spring.travel)
    root = brentq(lambda pa: spring.force(pa, 1.0, 0.3 * spring.travel) - load, 1e3, 5e6, xtol=1e-6)
    own = {name: kpa for name, kpa in spring.asked(0.0, 1.0).items() if name == "negative_kpa"}
    found = pressure_for_sag_kpa(spring.chamber(), load_n=load, sag_mm=300 * spring.travel, **own)
    assert found == pytest.approx(root / 1e3, rel=1e-7)


# Rayner Joel, Basic Engineering Thermodynamics, Example 5.9: adiabatic compression of 300 kN/m2 from 25 to 180 degC,
# printed 1299 kN/m2 (273 for the zero of the scale). Read in a companion to the book. T V^0.4 gives the volumes.
def test_adiabatic_compression_from_temperatures():
    shrink = ((25 + 273) / (180 + 273)) ** (1 / 0.4)
    tube = AirChamber(area_mm2=100, positive_mm3=20_000, negative_mm3=0, travel_mm=190)
    pressed = positive_kpa(tube, pressure_kpa=300 - SEA_LEVEL_KPA, travel_mm=200 * (1 - shrink), n=1.4)
    assert pressed + SEA_LEVEL_KPA == pytest.approx(1299, abs=1)


# The same book, Example 5.11: 1.4 MN/m2 expands with n = 1.3 to four times the volume, printed 231 kN/m2. Here the
# negative chamber of a piston grows fourfold, and its push falls from 1400 to 231 kN/m2 absolute.
def test_polytropic_expansion():
    spring = AirChamber(area_mm2=100, positive_mm3=1e12, negative_mm3=5_000, travel_mm=150)
    kpa = 1400 - SEA_LEVEL_KPA
    start, end = (force_n(spring, pressure_kpa=kpa, travel_mm=x, n=1.3) for x in (0.0, 150.0))
    assert start == pytest.approx(0, abs=1e-6)
    assert 1400 - 1000 * end / 100 == pytest.approx(231, abs=1)


# Moran and Shapiro, Example 2.1 case n = 0 stands for a constant pressure: a huge chamber; 3 bar over 0.1 m3 is 30 kJ.
def test_work_at_constant_pressure():
    huge = AirChamber(area_mm2=1e6, positive_mm3=1e15, negative_mm3=0, travel_mm=100)
    work_kj = energy_j(huge, pressure_kpa=300, travel_mm=100) / 1000
    assert work_kj == pytest.approx(30.0, rel=1e-6)
