"""Setups carried to another day."""

from __future__ import annotations

import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.errors import InputError
from workbench.model.units import from_unit, to_unit
from workbench.physics import carry
from workbench.physics.air import AirChamber, force_n, with_spacers
from workbench.physics.atmosphere import carry_pressure
from workbench.physics.carry import carry_spring, carry_tyre

FORK = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)


def psi(value: float) -> float:
    """Kilopascals."""
    return from_unit(value, "pressure", "psi")


def in_psi(value_kpa: float) -> float:
    """Pounds per square inch."""
    return to_unit(value_kpa, "pressure", "psi")


def test_a_cold_morning():
    found = carry_spring(psi(80), here_c=22, there_c=-3, maximum_kpa=psi(85))
    assert in_psi(found.if_left_kpa) == pytest.approx(72.0, abs=0.05)
    assert in_psi(found.set_here_kpa) == pytest.approx(88.8, abs=0.1)
    assert in_psi(found.shows_there_kpa) == pytest.approx(80)
    assert found.over_maximum
    said = " ".join(found.reasons)
    assert "slower rebound" in said
    assert "No click is changed" in said
    assert "set it outside" in said


def test_up_a_mountain_the_spring_is_left_alone_and_the_tyre_is_let_down():
    fork = carry_spring(psi(80), here_c=15, there_c=15, there_m=2300)
    assert in_psi(fork.set_here_kpa) == pytest.approx(80)
    assert in_psi(fork.shows_there_kpa) == pytest.approx(83.6, abs=0.05)
    assert any("leave it" in reason for reason in fork.reasons)
    tyre = carry_tyre(psi(23), here_c=15, there_c=15, there_m=2300)
    assert in_psi(tyre.if_left_kpa) == pytest.approx(26.6, abs=0.05)
    assert in_psi(tyre.shows_there_kpa) == pytest.approx(23)
    assert tyre.set_here_kpa < psi(23)


def test_a_hot_day_is_no_reason_to_let_out():
    found = carry_spring(psi(165), here_c=20, there_c=55)
    assert in_psi(found.if_left_kpa) == pytest.approx(186.5, abs=0.05)
    assert any("do not let out" in reason for reason in found.reasons)


def test_a_heavier_rider_gets_more_pressure_and_a_new_measurement():
    found = carry_spring(psi(80), here_c=20, there_c=20, old_rider_kg=80, new_rider_kg=88)
    assert in_psi(found.set_here_kpa) == pytest.approx(80 + 0.1 * (80 + 14.696), abs=0.01)
    assert any("10\u2009% heavier" in reason and "measure the sag" in reason for reason in found.reasons)


def test_a_heavier_rider_asks_for_more_rebound_damping_and_no_click_is_moved():
    found = carry_spring(psi(80), here_c=20, there_c=20, old_rider_kg=80, new_rider_kg=88)
    assert found.rebound_shift == pytest.approx(0.1)  # rate and mass both 10 % up: the root of their product
    assert any("10\u2009% more rebound damping" in reason and "No click" in reason for reason in found.reasons)
    lighter = carry_spring(psi(80), here_c=20, there_c=20, old_rider_kg=80, new_rider_kg=72)
    assert any("less rebound damping" in reason for reason in lighter.reasons)


def test_a_spacer_hardly_moves_the_rebound_and_says_nothing_of_it():
    found = carry_spring(psi(75), here_c=20, there_c=20, chamber=FORK, sag_mm=32.0, new_spacer_mm3=10_000)
    assert 0 <= found.rebound_shift < 0.02
    assert not any("rebound" in reason for reason in found.reasons)
    assert in_psi(found.spacers.alone_kpa) == pytest.approx(91.0, abs=0.05)


def test_spacer_rider_and_cold_add_up():
    found = carry_spring(
        psi(75),
        here_c=22,
        there_c=-3,
        old_rider_kg=80,
        new_rider_kg=84,
        chamber=FORK,
        sag_mm=32.0,
        new_spacer_mm3=10_000,
    )
    spaced = with_spacers(FORK, 10_000)
    at_setup_warmth = carry_pressure(found.set_here_kpa, from_c=22, to_c=-3)
    load = 1.05 * force_n(FORK, pressure_kpa=psi(75), travel_mm=32.0)
    assert force_n(spaced, pressure_kpa=at_setup_warmth, travel_mm=32.0) == pytest.approx(load, rel=1e-9)
    assert len(found.reasons) >= 4


def test_the_same_spacers_are_no_reason():
    found = carry_spring(psi(75), here_c=20, there_c=20, chamber=FORK, sag_mm=32.0, new_spacer_mm3=0.0)
    assert found.set_here_kpa == pytest.approx(psi(75))
    assert found.reasons == ()


def test_the_same_rider_is_no_reason():
    found = carry_spring(psi(80), here_c=20, there_c=20, old_rider_kg=80, new_rider_kg=80)
    assert found.set_here_kpa == pytest.approx(psi(80))
    assert found.reasons == ()


def test_a_spacer_keeps_the_sag():
    found = carry_spring(psi(75), here_c=20, there_c=20, chamber=FORK, sag_mm=32.0, new_spacer_mm3=10_000)
    assert in_psi(found.set_here_kpa) == pytest.approx(73.4, abs=0.05)


@given(st.floats(200, 1500), st.floats(-20, 40), st.floats(-20, 40), st.floats(0, 3000), st.floats(0, 3000))
def test_the_gas_carries_the_same_force_there(pressure, here_c, there_c, here_m, there_m):
    found = carry_spring(pressure, here_c=here_c, there_c=there_c, here_m=here_m, there_m=there_m)
    down_again = carry_pressure(found.shows_there_kpa, from_c=there_c, to_c=there_c, from_m=there_m, to_m=here_m)
    assert down_again == pytest.approx(pressure, rel=1e-9, abs=1e-6)
    force = force_n(FORK, pressure_kpa=max(down_again, 0), travel_mm=32.0)
    assert force == pytest.approx(force_n(FORK, pressure_kpa=pressure, travel_mm=32.0), rel=1e-6)


@pytest.mark.parametrize(
    "changes",
    [
        {"old_rider_kg": 80.0},
        {"new_rider_kg": 80.0},
        {"old_rider_kg": 0.0, "new_rider_kg": 80.0},
        {"new_spacer_mm3": 1000.0},
        {"chamber": FORK, "sag_mm": 32.0, "new_spacer_mm3": 1e6},
        {"there_c": -400.0},
        {"maximum_kpa": -1.0},
    ],
)
def test_what_cannot_be_is_refused(changes):
    with pytest.raises(InputError):
        carry_spring(**{"pressure_kpa": 500.0, "here_c": 20.0, "there_c": 10.0, **changes})


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(carry).failed == 0
