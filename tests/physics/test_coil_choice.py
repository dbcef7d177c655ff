"""What each spring at hand would do, and how far a rate from the wire is known."""

from __future__ import annotations

import doctest
from math import inf, nan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.errors import InputError, NotEnoughData
from workbench.model.units import from_unit
from workbench.physics import coil_choice, spring_table
from workbench.physics.coil import rate_in_series_n_per_mm, wire_rate_n_per_mm
from workbench.physics.coil_choice import (
    fitted,
    fitted_table,
    load_interval_n,
    rate_for_n_per_mm,
    stock_rates_n_per_mm,
    wire_rate_interval,
)
from workbench.physics.spring_table import dual_spring, spring_from_contact

LOAD_N = 78.81 * 22  # 450 lbf/in, 1 mm of preload, 21 mm of sag


def lbf_in(rate: float) -> float:
    return from_unit(rate, "spring_rate", "lbf/in")


@pytest.mark.parametrize("module", [coil_choice, spring_table])
def test_the_examples_in_the_docstrings_hold(module):
    assert doctest.testmod(module).failed == 0


def test_a_measured_shock_gets_the_nearest_spring_first():
    exact = rate_for_n_per_mm(LOAD_N, stroke_mm=57.5, target=0.30, preload_mm=1.0)
    assert exact == pytest.approx(95.0, abs=0.05)
    rates = stock_rates_n_per_mm(exact, lbf_in(25), count=3)
    assert rates == pytest.approx([lbf_in(550), lbf_in(525), lbf_in(575)])
    sags = [fitted(LOAD_N, rate_n_per_mm=rate, stroke_mm=57.5, preload_mm=1.0).sag_fraction for rate in rates[:2]]
    assert sags == pytest.approx([0.296, 0.311], abs=0.0005)


def test_a_spring_too_short_for_stroke_and_preload_binds():
    there = fitted(LOAD_N, rate_n_per_mm=lbf_in(550), stroke_mm=57.5, preload_mm=1.0, spring_stroke_mm=57.0)
    assert (there.needed_mm, there.binds) == (58.5, True)
    assert not fitted(LOAD_N, rate_n_per_mm=96, stroke_mm=57.5, preload_mm=1, spring_stroke_mm=58.5).binds


@given(st.floats(10, 400), st.floats(50, 8000), st.floats(20, 90), st.floats(0, 6))
def test_load_and_spring_are_in_balance_unless_an_end_is_met(rate, load, stroke, preload):
    there = fitted(load, rate_n_per_mm=rate, stroke_mm=stroke, preload_mm=preload)
    if 0 < there.sag_mm < stroke:
        assert rate * (there.sag_mm + preload) == pytest.approx(load)
        assert there.carries
    assert 0 <= there.sag_fraction <= 1
    assert there.carries == (load <= rate * (stroke + preload) * (1 + 1e-12))


@given(st.floats(10, 400), st.floats(50, 4000), st.floats(20, 90), st.floats(0, 6))
def test_a_straight_table_is_a_spring_of_one_rate(rate, load, stroke, preload):
    straight = spring_from_contact([(100.0, 100.0 * rate)])
    plain = fitted(load, rate_n_per_mm=rate, stroke_mm=stroke, preload_mm=preload)
    there = fitted_table(load, straight, stroke_mm=stroke, preload_mm=preload)
    assert there.sag_mm == pytest.approx(plain.sag_mm, abs=1e-9)
    assert there.preload_force_n == pytest.approx(plain.preload_force_n, abs=1e-9)
    assert there.binds == (stroke + preload > 100 + 1e-9)


def test_a_progressive_spring_counts_as_force_over_compression():
    spring = spring_from_contact([(20, 1000), (60, 4200)])
    there = fitted_table(1800, spring, stroke_mm=50, preload_mm=5)
    assert there.sag_mm == pytest.approx(25)
    assert there.rate_n_per_mm * (there.sag_mm + 5) == pytest.approx(1800)
    assert there.preload_force_n == pytest.approx(250)
    assert not there.binds
    assert fitted_table(1800, spring, stroke_mm=50, preload_mm=5, spring_stroke_mm=54.0).binds
    assert not fitted_table(9000, spring, stroke_mm=50).carries


@given(st.floats(20, 200), st.floats(2, 30), st.floats(20, 200))
def test_two_springs_in_a_row_are_soft_up_to_the_stop_and_then_the_other_alone(stopped, stop, other):
    spring = dual_spring(
        stopped_rate_n_per_mm=stopped,
        stop_mm=stop,
        other_rate_n_per_mm=other,
        stroke_mm=stop + stopped * stop / other + 20,
    )
    (_, _), (met_mm, met_n), (end_mm, end_n) = spring.rows
    assert met_n / met_mm == pytest.approx(rate_in_series_n_per_mm([stopped, other]))
    assert (end_n - met_n) / (end_mm - met_mm) == pytest.approx(other)
    # At the stop the one is pressed by what it may, the other by what the same force presses it.
    assert met_mm == pytest.approx(stop + met_n / other)


def test_a_stroke_that_ends_before_the_stop_is_refused_with_what_it_takes():
    with pytest.raises(InputError, match=r"stroke_mm.*above 30"):
        dual_spring(stopped_rate_n_per_mm=50, stop_mm=20, other_rate_n_per_mm=100, stroke_mm=25)


def test_a_force_at_slack_free_contact_is_refused():
    with pytest.raises(InputError, match="0 N at 0 mm"):
        spring_from_contact([(0, 50), (10, 400)])
    with pytest.raises(NotEnoughData):
        spring_from_contact([])


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"rate_n_per_mm": 0}, "rate_n_per_mm"),
        ({"rate_n_per_mm": nan}, "rate_n_per_mm"),
        ({"stroke_mm": inf}, "stroke_mm"),
        ({"preload_mm": -0.1}, "preload_mm"),
        ({"spring_stroke_mm": 0}, "spring_stroke_mm"),
    ],
)
def test_what_cannot_be_is_refused_by_name(changes, field):
    with pytest.raises(InputError) as caught:
        fitted(1700, **{"rate_n_per_mm": 80, "stroke_mm": 57.5, **changes})
    assert caught.value.field == field


def test_the_interval_from_the_wire_covers_nine_in_ten():
    sizes = {"wire_mm": 11.5, "mean_diameter_mm": 46.0, "active_coils": 6.5, "shear_modulus_gpa": 77.2}
    low, high = wire_rate_interval(**sizes)
    rng = np.random.default_rng(5)
    scatter = {"wire_mm": 0.03, "mean_diameter_mm": 0.3, "active_coils": 0.1, "shear_modulus_gpa": 0.772}
    rates = [
        wire_rate_n_per_mm(**{name: rng.normal(value, scatter[name]) for name, value in sizes.items()})
        for _ in range(4000)
    ]
    assert np.mean([low <= rate <= high for rate in rates]) == pytest.approx(0.90, abs=0.02)


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"load_n": 0.0}, "load_n"),
        ({"load_n": float("nan")}, "load_n"),
        ({"compressed_mm": 0.0}, "compressed_mm"),
        ({"end": "middle"}, "end"),
        ({"reading_sd_mm": -1.0}, "reading_sd_mm"),
    ],
)
def test_a_load_off_a_coil_that_cannot_be_is_refused_by_name(changes, field):
    given = {"load_n": 1700.0, "compressed_mm": 22.0, "end": "rear", "reading_sd_mm": 0.2, **changes}
    with pytest.raises(InputError) as refused:
        load_interval_n(given.pop("load_n"), **given)
    assert refused.value.field == field


def test_a_load_off_a_coil_is_less_sure_in_front_and_with_a_rough_reading():
    def width(**changes):
        low, high = load_interval_n(1700.0, **{"compressed_mm": 22.0, "end": "rear", "reading_sd_mm": 0.2, **changes})
        return high - low

    assert width(end="front") > width()
    assert width(reading_sd_mm=1.0) > width()
    assert width(compressed_mm=44.0) < width()
