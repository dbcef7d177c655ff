"""Coil springs: advice, shelves, bind and fits."""

from __future__ import annotations

import doctest
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.errors import InputError, NotEnoughData
from workbench.model.units import from_unit
from workbench.physics import coil
from workbench.physics.coil import fit_rate, next_rate, preload_from_turns_mm, wire_rate_n_per_mm

ASKED = {"rate_n_per_mm": 80.0, "sag_mm": 18.0, "stroke_mm": 60.0, "target": 0.30, "preload_mm": 1.0}


@given(st.floats(20, 200), st.floats(2, 40), st.floats(41, 95), st.floats(0.1, 0.45), st.floats(0, 8))
def test_the_exact_rate_gives_the_target(rate, sag, stroke, target, preload):
    advice = next_rate(rate_n_per_mm=rate, sag_mm=sag, stroke_mm=stroke, target=target, preload_mm=preload)
    assert advice.load_n / advice.rate_n_per_mm - preload == pytest.approx(target * stroke)


@given(st.floats(20, 200), st.floats(2, 40), st.floats(0.15, 0.45))
def test_stock_rates_stand_on_both_sides_and_the_stiffer_sags_less(rate, sag, target):
    advice = next_rate(rate_n_per_mm=rate, sag_mm=sag, stroke_mm=60, target=target)
    stock = advice.stock
    assert stock[-1].rate_n_per_mm > advice.rate_n_per_mm
    if len(stock) == 2:
        assert stock[0].rate_n_per_mm <= advice.rate_n_per_mm * (1 + 1e-9)
        assert stock[0].sag_fraction >= stock[1].sag_fraction


def test_a_spring_that_fits_is_said_to_fit():
    advice = next_rate(**ASKED)
    assert advice.rate_n_per_mm == pytest.approx(80.0)
    assert "fits" in advice.reason


def test_too_little_sag_is_not_mended_by_preload_either():
    advice = next_rate(**{**ASKED, "sag_mm": 12.0})
    assert advice.rate_n_per_mm < 80
    assert "softer" in advice.reason


def test_a_coarser_step():
    step = from_unit(50, "spring_rate", "lbf/in")
    advice = next_rate(**{**ASKED, "sag_mm": 22.0}, stock_step_n_per_mm=step)
    assert advice.stock[1].rate_n_per_mm - advice.stock[0].rate_n_per_mm == pytest.approx(step)
    assert (advice.stock[0].rate_n_per_mm / step) == pytest.approx(round(advice.stock[0].rate_n_per_mm / step))


def test_what_is_on_the_shelf():
    advice = next_rate(**{**ASKED, "sag_mm": 22.0}, stock_rates_n_per_mm=[120.0, 70.0, 90.0, 100.0])
    assert [spring.rate_n_per_mm for spring in advice.stock] == [90.0, 100.0]
    assert next_rate(**ASKED, stock_rates_n_per_mm=[]).stock == ()


def test_bind_is_about_the_spring_and_the_preload():
    assert not any(spring.binds for spring in next_rate(**ASKED).stock)
    assert not any(spring.binds for spring in next_rate(**ASKED, spring_stroke_mm=61.0).stock)
    bound = next_rate(**ASKED, spring_stroke_mm=60.9)
    assert all(spring.binds for spring in bound.stock)
    assert "Coil bind" in bound.reason


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"rate_n_per_mm": 0}, "rate_n_per_mm"),
        ({"sag_mm": 60.0}, "sag_mm"),
        ({"sag_mm": 0.0}, "sag_mm"),
        ({"sag_mm": math.nan}, "sag_mm"),
        ({"stroke_mm": math.inf}, "stroke_mm"),
        ({"target": 1.2}, "target"),
        ({"preload_mm": -1}, "preload_mm"),
        ({"stock_step_n_per_mm": 0}, "stock_step_n_per_mm"),
        ({"spring_stroke_mm": -2}, "spring_stroke_mm"),
        ({"stock_rates_n_per_mm": [80, -1]}, "stock_rates_n_per_mm"),
    ],
)
def test_what_cannot_be_is_refused_by_name(changes, field):
    with pytest.raises(InputError) as caught:
        next_rate(**{**ASKED, **changes})
    assert caught.value.field == field


def test_a_wire_thicker_than_its_coil_is_refused():
    with pytest.raises(InputError, match="wire_mm"):
        wire_rate_n_per_mm(wire_mm=50, mean_diameter_mm=40, active_coils=5, shear_modulus_gpa=79)


@given(st.permutations(range(6)), st.floats(5, 200), st.floats(0, 400))
def test_exact_readings_give_the_exact_rate_in_any_order(order, rate, preload):
    travel = [5.0 * number for number in order]
    found, low, high = fit_rate(travel, [preload + rate * x for x in travel])
    assert found == pytest.approx(rate)
    assert low <= found <= high


def test_the_interval_of_a_fitted_rate_covers_what_it_claims():
    rng = np.random.default_rng(11)
    travel = np.linspace(5, 45, 6)
    fits = [fit_rate(travel, 50 + 80 * travel + rng.normal(0, 30, 6)) for _ in range(400)]
    covered = np.mean([low <= 80 <= high for _, low, high in fits])
    assert 0.86 <= covered <= 0.94


@pytest.mark.parametrize(("travel", "force"), [([1, 2], [3, 4]), ([2, 2, 2], [3, 4, 5]), ([], [])])
def test_too_few_readings_give_no_rate(travel, force):
    with pytest.raises(NotEnoughData):
        fit_rate(travel, force)


@pytest.mark.parametrize(
    ("travel", "force"), [([1, 2, 3], [3, 4]), ([1, 2, 3], [9, 5, 1]), ([1, 2, math.nan], [1, 2, 3])]
)
def test_readings_that_cannot_be_are_refused(travel, force):
    with pytest.raises(InputError):
        fit_rate(travel, force)


def test_turns_of_the_collar():
    assert preload_from_turns_mm(1.5, 1.25) == pytest.approx(1.875)


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(coil).failed == 0
