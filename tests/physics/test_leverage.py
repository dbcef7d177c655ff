"""Leverage surveys: honest curves from rough readings."""

from __future__ import annotations

import doctest
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics import leverage
from workbench.physics.leverage import OddReading, stroke_from_length_mm, survey, wheel_rate_n_per_mm

STROKE_MM = 60.0
CURVES = {
    "flat": lambda u: 2.7 + 0 * u,
    "progressive": lambda u: 3.1 - 0.7 * u,
    "regressive": lambda u: 2.4 + 0.5 * u,
    "rising and falling": lambda u: 2.6 + 0.8 * u - 1.0 * u**2,
}


def truth(name: str) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Stroke, wheel travel and ratio of a curve, finely."""
    u = np.linspace(0, 1, 4001)
    ratio = CURVES[name](u)
    wheel = np.concatenate([[0], np.cumsum((ratio[1:] + ratio[:-1]) / 2 * STROKE_MM / 4000)])
    return u * STROKE_MM, wheel, ratio


@pytest.mark.parametrize("name", CURVES)
def test_good_readings_give_the_curve_back(name):
    strokes, wheels, ratios = truth(name)
    at = slice(None, None, 400)
    curve = survey(strokes[at], wheels[at], reading_sd_mm=0.1)
    assert curve.mean == pytest.approx(wheels[-1] / STROKE_MM, rel=1e-3)
    for share in (0.05, 0.3, 0.6, 0.95):
        index = int(share * 4000)
        assert curve.ratio(wheels[index]) == pytest.approx(ratios[index], rel=0.01)
    assert curve.progression == pytest.approx(1 - ratios[-1] / ratios[0], abs=0.02)


@pytest.mark.parametrize("name", CURVES)
def test_the_interval_covers_what_it_claims(name):
    rng = np.random.default_rng(5)
    strokes, wheels, ratios = truth(name)
    at = np.linspace(0, 4000, 9).astype(int)
    covered = []
    for _ in range(40):
        noisy = wheels[at] + rng.normal(0, 1, len(at)) * (at > 0)
        curve = survey(strokes[at], np.maximum(noisy, 0))
        for share in (0.1, 0.4, 0.7, 0.9):
            middle = share * curve.travel_mm
            low, high = curve.interval(middle)
            covered.append(low <= np.interp(share * wheels[-1], wheels, ratios) <= high)
    assert np.mean(covered) >= 0.87


@settings(max_examples=25)
@given(st.floats(0, 1))
def test_there_and_back_is_no_change(share):
    strokes, wheels, _ = truth("progressive")
    curve = survey(strokes[::500], wheels[::500])
    assert curve.wheel(curve.stroke(share * curve.travel_mm)) == pytest.approx(share * curve.travel_mm, abs=1e-6)


@settings(max_examples=25)
@given(st.permutations(range(7)))
def test_the_order_of_the_readings_does_not_matter(order):
    stroke, wheel = [0, 10, 20, 30, 40, 50, 60], [0, 31, 60.5, 88, 114, 138.5, 161]
    shuffled = survey([stroke[i] for i in order], [wheel[i] for i in order])
    assert shuffled.coefficients == pytest.approx(survey(stroke, wheel).coefficients, rel=1e-9)


def test_the_curve_rises_all_the_way():
    curve = survey([0, 10, 20, 30, 40, 50, 60], [0, 31, 60.5, 88, 114, 138.5, 161])
    travel = [curve.wheel(stroke) for stroke in np.linspace(0, 60, 61)]
    assert (np.diff(travel) > 0).all()
    assert travel[0] == pytest.approx(0, abs=1e-9)


def test_rougher_readings_are_less_certain():
    stroke, wheel = [0, 20, 40, 60], [0, 60.5, 114, 161]
    widths = [np.ptp(survey(stroke, wheel, reading_sd_mm=sd).interval(80)) for sd in (0.3, 1.0, 3.0)]
    assert widths == sorted(widths)


def test_readings_that_scatter_more_than_said_are_less_certain_too():
    stroke = [0, 10, 20, 30, 40, 50, 60]
    calm = survey(stroke, [0, 31, 60.5, 88, 114, 138.5, 161], reading_sd_mm=1.0)
    rough = survey(stroke, [0, 33.5, 57.5, 91, 111, 141.5, 161], reading_sd_mm=1.0)
    assert np.ptp(rough.interval(80)) > np.ptp(calm.interval(80))


def test_a_constant_ratio_adds_nothing_to_the_wheel_rate():
    strokes = np.linspace(0, 60, 7)
    flat = survey(strokes, 2.5 * strokes, reading_sd_mm=0.05)
    rate = wheel_rate_n_per_mm(flat, wheel_mm=70, shock_rate_n_per_mm=90, shock_force_n=2000)
    assert rate == pytest.approx(90 / 2.5**2, rel=1e-3)


def test_a_falling_ratio_adds_to_the_wheel_rate_and_a_rising_one_takes():
    for name, sign in (("progressive", 1), ("regressive", -1)):
        strokes, wheels, _ = truth(name)
        curve = survey(strokes[::400], wheels[::400], reading_sd_mm=0.2)
        rate = wheel_rate_n_per_mm(curve, wheel_mm=50, shock_rate_n_per_mm=90, shock_force_n=2000)
        assert sign * (rate - 90 / curve.ratio(50) ** 2) > 0


@pytest.mark.parametrize(
    ("stroke", "wheel", "field"),
    [
        ([0, 10, 20, 30], [0, 30, 20, 80], "wheel_mm"),
        ([0, 10, 20, 30], [0, 30, 28, 80], "wheel_mm"),
        ([0, 10, 20, 30, 40, 50, 60], [0, 30, 60, 120, 120, 150, 180], "wheel_mm"),
        ([0, 10, 20, 30], [0, 30, 60], "wheel_mm"),
        ([0, 10, 20, math.nan], [0, 30, 60, 80], "stroke_mm"),
        ([0, 10, 20, 30], [0, 30, 60, -80], "wheel_mm"),
    ],
)
def test_surveys_that_contradict_themselves_are_refused_by_name(stroke, wheel, field):
    with pytest.raises(InputError) as caught:
        survey(stroke, wheel)
    assert caught.value.field == field


def test_a_reading_error_of_nothing_is_refused():
    with pytest.raises(InputError, match="reading_sd_mm"):
        survey([0, 10, 20, 30], [0, 30, 58, 85], reading_sd_mm=0)


@pytest.mark.parametrize("stroke", [[], [0], [0, 10, 20], [0, 10, 10, 20]])
def test_a_survey_needs_three_strokes(stroke):
    with pytest.raises(NotEnoughData):
        survey(stroke, [2.5 * each for each in stroke])


def test_beyond_the_curve_is_refused():
    curve = survey([0, 20, 40, 60], [0, 60.5, 114, 161])
    for question, value in ((curve.wheel, 61), (curve.stroke, 170), (curve.ratio, -1), (curve.interval, 170)):
        with pytest.raises(InputError):
            question(value)


def test_strokes_from_lengths():
    assert stroke_from_length_mm([205, 230, 217.5]) == pytest.approx([25, 0, 12.5])
    with pytest.raises(NotEnoughData):
        stroke_from_length_mm([])


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(leverage).failed == 0


@pytest.mark.parametrize("place", [1, 3, 5])
@pytest.mark.parametrize("seed", [0, 1, 2])
def test_a_reading_that_goes_back_is_named_where_it_was_given_in_any_order(place, seed):
    strokes = np.array([0.0, 10, 20, 30, 40, 50, 60])
    wheels = 3.0 * strokes - 0.008 * strokes**2
    wheels[place] += 45.0 if place < 4 else -45.0
    order = np.random.default_rng(seed).permutation(len(strokes))
    with pytest.raises(OddReading) as caught:
        survey(strokes[order], wheels[order])
    assert int(order[caught.value.place]) == place
    assert caught.value.value == pytest.approx(wheels[place])
