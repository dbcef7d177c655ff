"""What is asked, aimed at and refused around a sag measurement."""

from __future__ import annotations

from dataclasses import replace

import pytest

from workbench.model.bike import Bike
from workbench.model.sag import SagMeasurement, SagTarget
from workbench.model.sag_rules import (
    Band,
    coil_bind_short_mm,
    first_band,
    most_preload_mm,
    move_fraction,
    preload_needed_mm,
    rounded_pressure,
    similar_rounds,
    travel_question,
)
from workbench.model.unit import Unit

BIKE = Bike("b", "Larch 150", rear_travel_mm=145.0)
FORK = Unit("f", "b", "front", "fork", travel_mm=150.0)
SHOCK = Unit("s", "b", "rear", "shock", travel_mm=60.0)
COIL = Unit("c", "b", "rear", "shock", spring="coil", travel_mm=57.5)


def measured(**other):
    base = {
        "id": "m",
        "bike_id": "b",
        "rider_id": "r",
        "unit_id": "f",
        "measured_at": "2031-05-14T09:00:00+00:00",
        "posture": "standing",
        "travel_mm": 150.0,
        "sag_mm": 30.0,
        "spread_mm": 1.0,
        "target": 0.2,
        "target_low": 0.18,
        "target_high": 0.22,
        "target_origin": "maker",
        "generation_id": "g",
        "pressure_kpa": 550.0,
        "rider_mass_kg": 84.5,
    }
    return SagMeasurement(**{**base, **other})


def test_the_riders_own_band_comes_before_the_makers_and_that_before_common_practice():
    maker = replace(FORK, maker_sag_low=0.17, maker_sag_high=0.2, maker_posture="seated")
    own = SagTarget("t", "b", "r", "f", 0.21, 0.19, 0.23, "own")
    assert first_band(BIKE, maker, own) == Band(0.19, 0.23, "own")
    assert first_band(BIKE, maker) == Band(0.17, 0.2, "maker", "seated")
    assert first_band(BIKE, FORK) == Band(0.18, 0.22, "common_practice")
    assert first_band(replace(BIKE, layout="hardtail"), FORK) == Band(0.15, 0.2, "common_practice")


def test_a_single_figure_of_the_maker_gets_the_usual_width():
    band = first_band(BIKE, replace(SHOCK, maker_sag_low=0.3))
    assert (band.low, band.high, band.origin) == (pytest.approx(0.285), pytest.approx(0.315), "maker")


@pytest.mark.parametrize(
    ("unit", "rear_mm", "is_asked"),
    [
        (FORK, 145.0, False),
        (replace(FORK, travel_mm=221.0), 145.0, True),
        (SHOCK, 145.0, False),
        (SHOCK, None, False),
        (replace(SHOCK, travel_mm=96.0), None, True),
        (replace(SHOCK, travel_mm=80.0), 140.0, True),
        (replace(SHOCK, travel_mm=40.0), 145.0, True),
        (replace(SHOCK, travel_mm=None), 145.0, False),
    ],
)
def test_a_length_that_looks_like_the_other_one_is_asked_about(unit, rear_mm, is_asked):
    assert bool(travel_question(unit, replace(BIKE, rear_travel_mm=rear_mm))) is is_asked


def test_readings_of_another_posture_mass_or_hardware_do_not_count_as_the_same_load():
    alike = measured()
    others = (
        measured(id="p", posture="seated"),
        measured(id="h", rider_mass_kg=90.0),
        measured(id="n", rider_mass_kg=None),
        measured(id="o", generation_id="older"),
    )
    found = similar_rounds((*others, alike), posture="standing", mass_kg=85.0, generation_id="g")
    assert found == (alike,)


def test_advice_is_rounded_to_the_gauge_but_never_past_a_limit():
    assert rounded_pressure(503.0, 7.0, None, None) == pytest.approx(504.0)
    assert rounded_pressure(503.0, 7.0, None, 503.0) == 503.0
    assert rounded_pressure(300.0, 7.0, 302.0, None) == 302.0


def test_a_move_is_taken_of_the_present_pressure():
    assert move_fraction(500.0, 400.0) == pytest.approx(0.2)
    assert move_fraction(0.0, 400.0) == float("inf")


def test_the_preload_for_a_target_follows_from_load_and_rate():
    # 57.5 mm stroke, 78.81 N/mm, 1.0 mm preload, 21.0 mm sag: to reach 30 % the collar would need 4.75 mm.
    load_n = 78.81 * (21.0 + 1.0)
    assert preload_needed_mm(load_n, 78.81, 0.30 * 57.5) == pytest.approx(4.75)


def test_the_smaller_of_the_makers_limit_and_two_turns_holds():
    assert most_preload_mm(COIL) == (3.0, "two turns of about 1.5 mm, common practice")
    assert most_preload_mm(replace(COIL, preload_pitch_mm=1.0)) == (2.0, "two turns, common practice")
    assert most_preload_mm(replace(COIL, preload_limit_mm=2.0)) == (2.0, "the maker's limit")
    assert most_preload_mm(replace(COIL, preload_limit_mm=9.0))[0] == 3.0


def test_a_spring_must_give_way_for_the_stroke_and_the_preload():
    assert coil_bind_short_mm(57.0, 57.5, 1.0) == pytest.approx(1.5)
    assert coil_bind_short_mm(58.5, 57.5, 1.0) == 0.0
    assert coil_bind_short_mm(None, 57.5, 1.0) == 0.0
