"""Atmosphere, balance and geometry: limits, symmetries and refusals."""

from __future__ import annotations

import doctest
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.errors import InputError
from workbench.physics import atmosphere, balance, geometry
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa
from workbench.physics.balance import (
    damping_from_decay,
    fork_vertical_rate_n_per_mm,
    front_against_rear,
    rebound_shift,
    ride_frequency_hz,
    wheel_loads_n,
)
from workbench.physics.geometry import at_sag, fork_sag_vertical_mm, trail_mm

celsius = st.floats(-40, 80)
metres = st.floats(-400, 5000)


@settings(max_examples=30)
@given(st.floats(0, 3000), celsius, celsius, metres, metres)
def test_there_and_back_is_no_change(pressure, here_c, there_c, here_m, there_m):
    there = carry_pressure(pressure, from_c=here_c, to_c=there_c, from_m=here_m, to_m=there_m)
    if there > -standard_pressure_kpa(there_m):
        back = carry_pressure(there, from_c=there_c, to_c=here_c, from_m=there_m, to_m=here_m)
        assert back == pytest.approx(pressure, abs=1e-8)


@settings(max_examples=30)
@given(st.floats(0, 3000), celsius, metres)
def test_staying_is_no_change(pressure, here_c, here_m):
    stayed = carry_pressure(pressure, from_c=here_c, to_c=here_c, from_m=here_m, to_m=here_m)
    assert stayed == pytest.approx(pressure, abs=1e-9)


@settings(max_examples=30)
@given(st.floats(50, 3000), celsius, st.floats(1, 40), metres, st.floats(10, 2000))
def test_warmer_and_higher_read_more(pressure, here_c, warmer, here_m, higher):
    assert carry_pressure(pressure, from_c=here_c, to_c=here_c + warmer) > pressure
    assert carry_pressure(pressure, from_c=here_c, to_c=here_c, from_m=here_m, to_m=here_m + higher) > pressure


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"pressure_kpa": -102}, "pressure_kpa"),
        ({"pressure_kpa": math.nan}, "pressure_kpa"),
        ({"from_c": -273.15}, "from_c"),
        ({"to_c": -300}, "to_c"),
        ({"to_m": 20_000}, "to_m"),
        ({"from_m": math.inf}, "from_m"),
    ],
)
def test_air_that_cannot_be_is_refused_by_name(changes, field):
    asked = {"pressure_kpa": 500, "from_c": 20, "to_c": 0, **changes}
    with pytest.raises(InputError) as caught:
        carry_pressure(asked.pop("pressure_kpa"), **asked)
    assert caught.value.field == field


@settings(max_examples=30)
@given(st.floats(0.5, 200), st.floats(50, 3000), st.floats(1.1, 5))
def test_frequency_goes_with_the_root(rate, load, factor):
    one = ride_frequency_hz(rate, load)
    assert ride_frequency_hz(rate * factor, load) == pytest.approx(one * math.sqrt(factor))
    assert ride_frequency_hz(rate, load * factor) == pytest.approx(one / math.sqrt(factor))


@pytest.mark.parametrize(("rate", "load"), [(0, 100), (-1, 100), (10, 0), (math.nan, 100), (10, math.inf)])
def test_a_frequency_needs_a_spring_and_a_load(rate, load):
    with pytest.raises(InputError):
        ride_frequency_hz(rate, load)


def test_front_against_rear_in_words():
    assert "same pace" in front_against_rear(2.0, 2.02)
    assert front_against_rear(2.4, 2.0).startswith("The rear is softer")
    assert front_against_rear(1.8, 2.2).startswith("The front is softer")


def test_an_upright_fork_has_its_own_rate():
    assert fork_vertical_rate_n_per_mm(10, 90) == pytest.approx(10)
    assert fork_vertical_rate_n_per_mm(10, 65) == pytest.approx(10 / math.sin(math.radians(65)) ** 2)


def test_a_stiffer_spring_asks_for_more_rebound_damping():
    assert rebound_shift(80, 80) == 0
    assert rebound_shift(80, 100) > 0 > rebound_shift(80, 60)
    assert rebound_shift(80, 88, mass_ratio=1.1) == pytest.approx(0.1)


@settings(max_examples=30)
@given(st.floats(0.01, 0.6), st.integers(1, 6))
def test_a_made_up_decay_gives_its_damping_back(ratio, cycles):
    decrement = 2 * math.pi * ratio / math.sqrt(1 - ratio**2)
    found, damping = damping_from_decay(1.0, math.exp(-decrement * cycles), cycles)
    assert (found, damping) == (pytest.approx(decrement), pytest.approx(ratio))


@pytest.mark.parametrize(("x0", "xn", "cycles"), [(1, 2, 1), (0, 0, 1), (1, 0, 1), (1, 0.5, 0), (math.nan, 1, 1)])
def test_a_swing_that_grows_is_refused(x0, xn, cycles):
    with pytest.raises(InputError):
        damping_from_decay(x0, xn, cycles)


def test_loads_add_up_to_the_weight():
    front, rear = wheel_loads_n([(80, 450), (15, 600)], wheelbase_mm=1200)
    assert front + rear == pytest.approx(95 * 9.80665)
    with pytest.raises(InputError):
        wheel_loads_n([], wheelbase_mm=1200)


BIKE = {"wheelbase_mm": 1220.0, "head_angle_deg": 64.5, "fork_sag_mm": 30.0, "rear_axle_up_mm": 45.0}


def test_no_sag_is_no_change():
    still = at_sag(**{**BIKE, "fork_sag_mm": 0, "rear_axle_up_mm": 0}, bb_drop_mm=25)
    assert (still.head_angle_deg, still.wheelbase_mm, still.bb_drop_mm) == pytest.approx((64.5, 1220, 25))


def test_the_fork_steepens_and_the_rear_slackens():
    assert at_sag(**{**BIKE, "rear_axle_up_mm": 0}).head_angle_deg > 64.5
    assert at_sag(**{**BIKE, "fork_sag_mm": 0}).head_angle_deg < 64.5


def test_the_bottom_bracket_comes_down_between_both_ends():
    sagged = at_sag(**BIKE, bb_drop_mm=25)
    down = sagged.bb_drop_mm - 25
    assert 30 * math.sin(math.radians(64.5)) < down < 45
    level = at_sag(**{**BIKE, "head_angle_deg": 90, "fork_sag_mm": 40, "rear_axle_up_mm": 40}, bb_drop_mm=25)
    assert level.bb_drop_mm == pytest.approx(65)


def test_without_sag_wheels_of_two_sizes_change_nothing():
    mixed = at_sag(
        **{**BIKE, "fork_sag_mm": 0, "rear_axle_up_mm": 0}, bb_drop_mm=25, front_radius_mm=370, rear_radius_mm=350
    )
    assert (mixed.head_angle_deg, mixed.wheelbase_mm, mixed.bb_drop_mm) == pytest.approx((64.5, 1220, 25))


def test_the_drop_is_left_out_when_not_given():
    assert at_sag(**BIKE).bb_drop_mm is None


@pytest.mark.parametrize(
    "changes",
    [
        {"wheelbase_mm": 0},
        {"head_angle_deg": 180},
        {"fork_sag_mm": -1},
        {"rear_axle_up_mm": math.nan},
        {"fork_sag_mm": 1220},
    ],
)
def test_geometry_that_cannot_be_is_refused_by_name(changes):
    with pytest.raises(InputError) as caught:
        at_sag(**{**BIKE, **changes})
    assert caught.value.field in changes


def test_projections():
    assert fork_sag_vertical_mm(40, head_angle_deg=90) == pytest.approx(40)
    assert trail_mm(wheel_radius_mm=350, head_angle_deg=90, fork_offset_mm=40) == pytest.approx(-40)


@pytest.mark.parametrize("module", [atmosphere, balance, geometry])
def test_the_examples_in_the_docstrings_hold(module):
    assert doctest.testmod(module).failed == 0
