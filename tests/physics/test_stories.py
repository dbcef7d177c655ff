"""Whole stories from the bench, in numbers that follow from the gas law and springs alone."""

from __future__ import annotations

import pytest

from workbench.model.units import from_unit, to_unit
from workbench.physics.air import AirChamber, force_n, pressure_for_sag_kpa, static_travel_mm, with_spacers
from workbench.physics.atmosphere import carry_pressure
from workbench.physics.coil import next_rate
from workbench.physics.spacers import change_spacers

FORK = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)


def psi(value: float) -> float:
    """Kilopascals."""
    return from_unit(value, "pressure", "psi")


def in_psi(value_kpa: float) -> float:
    """Pounds per square inch."""
    return to_unit(value_kpa, "pressure", "psi")


def test_a_coil_that_sags_too_far():
    advice = next_rate(
        rate_n_per_mm=78.81, sag_mm=21.0, stroke_mm=57.5, target=0.30, preload_mm=1.0, spring_stroke_mm=57.0
    )
    assert advice.load_n == pytest.approx(1734, abs=0.5)
    assert advice.rate_n_per_mm == pytest.approx(95.0, abs=0.05)
    assert to_unit(advice.rate_n_per_mm, "spring_rate", "lbf/in") == pytest.approx(542, abs=0.6)
    softer, stiffer = advice.stock
    assert to_unit(softer.rate_n_per_mm, "spring_rate", "lbf/in") == pytest.approx(525)
    assert to_unit(stiffer.rate_n_per_mm, "spring_rate", "lbf/in") == pytest.approx(550)
    assert softer.sag_fraction == pytest.approx(0.311, abs=0.0005)
    assert stiffer.sag_fraction == pytest.approx(0.296, abs=0.0005)
    assert advice.preload_needed_mm == pytest.approx(4.75, abs=0.005)
    assert "4.75 mm" in advice.reason
    assert stiffer.binds
    assert "58.5 mm" in advice.reason


def test_a_cold_morning():
    shows = carry_pressure(psi(80), from_c=22, to_c=-3)
    assert in_psi(shows) == pytest.approx(72.0, abs=0.05)
    to_have_80 = carry_pressure(psi(80), from_c=-3, to_c=22)
    assert in_psi(to_have_80) == pytest.approx(88.8, abs=0.1)
    assert in_psi(carry_pressure(psi(22), from_c=22, to_c=-3)) == pytest.approx(18.9, abs=0.05)


def test_harsh_bottoming_with_the_sag_right():
    load = force_n(FORK, pressure_kpa=psi(75), travel_mm=32.0)
    assert load == pytest.approx(303, abs=0.5)
    spaced = with_spacers(FORK, 10_000)
    assert static_travel_mm(spaced, pressure_kpa=psi(75), load_n=load) == pytest.approx(31.3, abs=0.05)
    end = force_n(FORK, pressure_kpa=psi(75), travel_mm=160, n=1.35)
    spaced_end = force_n(spaced, pressure_kpa=psi(75), travel_mm=160, n=1.35)
    assert end == pytest.approx(2550, abs=5)
    assert spaced_end == pytest.approx(3060, abs=5)
    assert static_travel_mm(spaced, pressure_kpa=psi(73.4), load_n=load) == pytest.approx(32.0, abs=0.05)
    assert in_psi(pressure_for_sag_kpa(spaced, load_n=load, sag_mm=32.0)) == pytest.approx(73.4, abs=0.05)


def test_the_same_end_force_by_pressure_alone_costs_sag():
    change = change_spacers(FORK, pressure_kpa=psi(75), sag_mm=32.0, spacer_mm3=10_000)
    assert in_psi(change.pressure_kpa) == pytest.approx(73.4, abs=0.05)
    assert change.left_sag_mm == pytest.approx(31.3, abs=0.05)
    assert (change.end_before_n, change.end_left_n) == (pytest.approx(2550, abs=5), pytest.approx(3060, abs=5))
    # What pressure alone is set against is the whole change, spacer and 73.4 psi, which ends at 3005 N.
    assert change.end_after_n == pytest.approx(3005, abs=5)
    assert in_psi(change.alone_kpa) == pytest.approx(91.0, abs=0.05)
    assert change.alone_sag_mm / 160 == pytest.approx(0.16, abs=0.005)


def test_a_hot_shock():
    hot = carry_pressure(psi(165), from_c=20, to_c=55)
    assert in_psi(hot) == pytest.approx(186.5, abs=0.05)
    let_down_hot = carry_pressure(psi(165), from_c=55, to_c=20)
    assert in_psi(let_down_hot) == pytest.approx(145.8, abs=0.1)


def test_up_a_mountain():
    assert in_psi(carry_pressure(psi(80), from_c=15, to_c=15, to_m=2300)) == pytest.approx(83.6, abs=0.05)
    assert in_psi(carry_pressure(psi(23), from_c=15, to_c=15, to_m=2300)) == pytest.approx(26.6, abs=0.05)
