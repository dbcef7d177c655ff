"""Another mounting of the shock, against closed forms."""

from __future__ import annotations

import numpy as np
import pytest

from workbench.model.errors import InputError, NoAnswer
from workbench.physics.leverage import survey
from workbench.physics.mounting import sag_when_moved

STROKES = np.linspace(0, 60, 13)
TRAVEL = tuple(np.linspace(0, 60, 61))
COIL = tuple(80.0 * x for x in TRAVEL)


def straight(ratio: float):
    return survey(STROKES, ratio * STROKES, reading_sd_mm=0.01)


def test_the_same_mounting_changes_nothing():
    there = sag_when_moved(straight(2.5), straight(2.5), sag_mm=17.0, travel_mm=TRAVEL, force=COIL)
    assert there.sag_mm == pytest.approx(17.0, abs=0.01)
    assert there.wheel_sag == pytest.approx(17 / 60, abs=1e-3)


def test_with_steady_ratios_and_a_coil_shock_sag_goes_with_the_ratio_and_wheel_sag_with_its_square():
    # Virtual work by hand: W = k s / R, so s' = s R'/R and y' = y (R'/R)^2.
    there = sag_when_moved(straight(2.5), straight(2.75), sag_mm=16.0, travel_mm=TRAVEL, force=COIL)
    assert there.sag_mm == pytest.approx(17.6, abs=0.02)
    assert there.wheel_sag_mm == pytest.approx(40.0 * 1.21, abs=0.1)
    assert there.wheel_rate == pytest.approx(80 / 2.75**2, rel=0.01)


def test_a_falling_ratio_adds_the_second_term_to_the_wheel_rate():
    falling = survey(STROKES, 3.0 * STROKES - 0.005 * STROKES**2, reading_sd_mm=0.01)
    there = sag_when_moved(straight(2.5), falling, sag_mm=16.0, travel_mm=TRAVEL, force=COIL)
    ratio = 3.0 - 0.01 * there.sag_mm
    assert there.ratio == pytest.approx(ratio, rel=2e-3)
    by_hand = 80 / ratio**2 + 80 * there.sag_mm * 0.01 / ratio**3
    assert there.wheel_rate == pytest.approx(by_hand, rel=0.02)


def test_the_unit_of_force_is_no_matter():
    in_newton = sag_when_moved(straight(2.5), straight(2.9), sag_mm=16.0, travel_mm=TRAVEL, force=COIL)
    in_loads = sag_when_moved(
        straight(2.5), straight(2.9), sag_mm=16.0, travel_mm=TRAVEL, force=tuple(f / 1280 for f in COIL)
    )
    assert in_loads.sag_mm == pytest.approx(in_newton.sag_mm)
    assert in_loads.wheel_rate * 1280 == pytest.approx(in_newton.wheel_rate)


def test_a_spring_that_would_go_all_the_way_is_said():
    with pytest.raises(NoAnswer, match="all of its travel"):
        sag_when_moved(straight(2.0), straight(3.5), sag_mm=40.0, travel_mm=TRAVEL, force=COIL)


@pytest.mark.parametrize("sag_mm", [0.0, 61.0, float("nan")])
def test_a_sag_outside_the_curve_is_refused(sag_mm):
    with pytest.raises(InputError, match="sag_mm"):
        sag_when_moved(straight(2.5), straight(2.7), sag_mm=sag_mm, travel_mm=TRAVEL, force=COIL)


def test_a_curve_that_does_not_rise_is_refused():
    with pytest.raises(InputError, match="rising"):
        sag_when_moved(straight(2.5), straight(2.7), sag_mm=10.0, travel_mm=TRAVEL, force=COIL[::-1])
