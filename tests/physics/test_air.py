"""Air springs: what must hold for any sizes."""

from __future__ import annotations

import doctest
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.errors import InputError
from workbench.physics import air
from workbench.physics.air import (
    AirChamber,
    energy_j,
    force_n,
    positive_kpa,
    pressure_for_sag_kpa,
    rate_n_per_mm,
    static_travel_mm,
    with_spacers,
)

FORK = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)
COIL_NEGATIVE = replace(FORK, negative_mm3=0.0, negative_coil_n_per_mm=9.0, negative_coil_reach_mm=40.0)
TWO_POSITIVE = AirChamber(850, 850 * 200, 850 * 45, 160, second_positive_mm3=60_000)
KINDS = [
    (FORK, {}),
    (replace(FORK, negative_area_mm2=780.0), {}),
    (replace(FORK, negative_mm3=0.0), {}),
    (COIL_NEGATIVE, {}),
    (FORK, {"negative_kpa": 700.0}),
    (TWO_POSITIVE, {"second_kpa": 1100.0}),
    (TWO_POSITIVE, {"second_kpa": 500.0}),
    (replace(TWO_POSITIVE, positive_mm3=850 * 150), {"second_kpa": 1100.0}),
]


@st.composite
def chambers(draw) -> AirChamber:
    """Any sensible spring."""
    area, travel = draw(st.floats(300, 2500)), draw(st.floats(30, 220))
    swept = area * travel
    return AirChamber(
        area,
        swept * draw(st.floats(1.1, 4)),
        swept * draw(st.floats(0.05, 2)),
        travel,
        draw(st.floats(0, 0.05)) * swept,
    )


@pytest.mark.parametrize(("chamber", "extra"), KINDS)
@pytest.mark.parametrize("n", [1.0, 1.35])
def test_rate_and_energy_belong_to_the_force(chamber, extra, n):
    x = np.linspace(0, 160, 3201)
    asked = {"pressure_kpa": 500, "travel_mm": x, "n": n, **extra}
    force, rate, energy = (part(chamber, **asked) for part in (force_n, rate_n_per_mm, energy_j))
    steps = (force[1:] + force[:-1]) / 2 * np.diff(x) / 1000
    assert energy == pytest.approx(np.concatenate([[0], np.cumsum(steps)]), rel=1e-4, abs=1e-4)
    middle = (rate[1:] + rate[:-1]) / 2
    slope = np.diff(force) / np.diff(x)
    kinks = np.abs(np.diff(rate)) > 1  # a coil that ends, a chamber that joins
    assert kinks.sum() <= 2
    assert slope[~kinks] == pytest.approx(middle[~kinks], rel=1e-3)


@given(chambers(), st.floats(50, 2000), st.floats(1.0, 1.4))
@settings(max_examples=30)
def test_force_rises_with_travel_pressure_and_speed(chamber, pressure, n):
    x = np.linspace(0, chamber.travel_mm, 40)
    force = force_n(chamber, pressure_kpa=pressure, travel_mm=x, n=n)
    assert (np.diff(force) > 0).all()
    assert (force_n(chamber, pressure_kpa=pressure * 1.1, travel_mm=x, n=n)[1:] > force[1:]).all()
    assert (force_n(chamber, pressure_kpa=pressure, travel_mm=x, n=n + 0.05)[1:] > force[1:]).all()


@given(chambers(), st.floats(50, 2000), st.floats(0.01, 0.99), st.floats(1.0, 1.4))
@settings(max_examples=30)
def test_the_load_at_a_travel_comes_to_rest_there(chamber, pressure, share, n):
    travel = share * chamber.travel_mm
    load = force_n(chamber, pressure_kpa=pressure, travel_mm=travel, n=n)
    found = static_travel_mm(chamber, pressure_kpa=pressure, load_n=load, n=n)
    assert found == pytest.approx(travel, rel=1e-7)


@given(chambers(), st.floats(50, 2000), st.floats(0.05, 0.6))
@settings(max_examples=30)
def test_the_pressure_for_a_sag_gives_that_sag(chamber, pressure, share):
    travel = share * chamber.travel_mm
    load = force_n(chamber, pressure_kpa=pressure, travel_mm=travel)
    assert pressure_for_sag_kpa(chamber, load_n=load, sag_mm=travel) == pytest.approx(pressure, rel=1e-9)


@given(chambers(), st.floats(50, 2000), st.floats(0.1, 3))
@settings(max_examples=30)
def test_the_size_of_the_millimetre_does_not_matter(chamber, pressure, scale):
    """Everything longer by a factor, areas by its square, volumes by its cube: force by its square."""
    bigger = AirChamber(
        chamber.area_mm2 * scale**2,
        chamber.positive_mm3 * scale**3,
        chamber.negative_mm3 * scale**3,
        chamber.travel_mm * scale,
        chamber.spacer_mm3 * scale**3,
    )
    x = 0.4 * chamber.travel_mm
    small = force_n(chamber, pressure_kpa=pressure, travel_mm=x)
    assert force_n(bigger, pressure_kpa=pressure, travel_mm=x * scale) == pytest.approx(small * scale**2, rel=1e-9)


def test_a_huge_chamber_pushes_with_the_same_force_all_the_way():
    huge = AirChamber(850, 1e12, 0, 160)
    force = force_n(huge, pressure_kpa=500, travel_mm=np.array([0.0, 80.0, 160.0]))
    assert force == pytest.approx(425.0, rel=1e-6)
    assert rate_n_per_mm(huge, pressure_kpa=500, travel_mm=80.0) == pytest.approx(0, abs=1e-6)


def test_huge_chambers_make_a_nearly_straight_line_from_nothing():
    """With both sides long the force is close to A P0 x (1/L+ + 1/L-)."""
    long = AirChamber(850, 850 * 20_000, 850 * 20_000, 160)
    x = np.linspace(0, 160, 9)
    straight = 850 * (500 + 101.325) * 1e-3 * x * 2 / 20_000
    assert force_n(long, pressure_kpa=500, travel_mm=x) == pytest.approx(straight, rel=1e-3, abs=1e-9)


def test_no_spacer_is_no_change():
    x = np.linspace(0, 160, 9)
    plain = force_n(FORK, pressure_kpa=500, travel_mm=x)
    assert (force_n(with_spacers(FORK, 0.0), pressure_kpa=500, travel_mm=x) == plain).all()


def test_a_spacer_works_mostly_at_the_end():
    spaced = with_spacers(FORK, 20_000)
    x = np.array([32.0, 160.0])
    gain = force_n(spaced, pressure_kpa=500, travel_mm=x, n=1.35) / force_n(FORK, pressure_kpa=500, travel_mm=x, n=1.35)
    assert gain[1] - 1 > 5 * (gain[0] - 1) > 0


def test_an_equal_charge_on_both_sides_of_the_second_piston_is_one_large_chamber():
    one = AirChamber(850, 850 * 200 + 60_000, 850 * 45, 160)
    x = np.linspace(0, 160, 9)
    together = force_n(TWO_POSITIVE, pressure_kpa=500, second_kpa=500, travel_mm=x, n=1.35)
    assert together == pytest.approx(force_n(one, pressure_kpa=500, travel_mm=x, n=1.35), rel=1e-12, abs=1e-9)


def test_a_very_hard_second_chamber_is_never_reached():
    alone = replace(TWO_POSITIVE, second_positive_mm3=0.0)
    x = np.linspace(0, 120, 9)
    hard = force_n(TWO_POSITIVE, pressure_kpa=300, second_kpa=3000, travel_mm=x)
    assert hard == pytest.approx(force_n(alone, pressure_kpa=300, travel_mm=x), rel=1e-12, abs=1e-9)


def test_a_second_chamber_softens_the_end_only():
    alone = replace(TWO_POSITIVE, second_positive_mm3=0.0)
    early, late = (
        [
            force_n(chamber, pressure_kpa=500, travel_mm=x, n=1.35, **extra)
            for chamber, extra in ((alone, {}), (TWO_POSITIVE, {"second_kpa": 1000}))
        ]
        for x in (32.0, 160.0)
    )
    assert early[0] == early[1]
    assert late[0] > late[1]


def test_a_negative_coil_helps_off_the_top_and_then_lets_go():
    without = replace(COIL_NEGATIVE, negative_coil_n_per_mm=0.0)
    x = np.array([0.0, 20.0, 40.0, 100.0])
    less = force_n(without, pressure_kpa=500, travel_mm=x) - force_n(COIL_NEGATIVE, pressure_kpa=500, travel_mm=x)
    assert less == pytest.approx([360.0, 180.0, 0.0, 0.0])


def test_the_pressure_in_the_chamber_follows_boyle():
    assert positive_kpa(FORK, pressure_kpa=500, travel_mm=115.0) == pytest.approx(2 * 601.325 - 101.325)


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"area_mm2": 0}, "area_mm2"),
        ({"area_mm2": math.nan}, "area_mm2"),
        ({"travel_mm": -1}, "travel_mm"),
        ({"travel_mm": 230}, "positive_mm3"),
        ({"positive_mm3": 850 * 100}, "positive_mm3"),
        ({"negative_mm3": -1}, "negative_mm3"),
        ({"negative_mm3": math.inf}, "negative_mm3"),
        ({"spacer_mm3": 850 * 71}, "spacer_mm3"),
        ({"spacer_mm3": -1}, "spacer_mm3"),
        ({"spacer_mm3": math.nan}, "spacer_mm3"),
        ({"negative_area_mm2": 0}, "negative_area_mm2"),
    ],
)
def test_sizes_that_cannot_be_are_refused_by_name(changes, field):
    with pytest.raises(InputError) as caught:
        replace(FORK, **changes)
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("chamber", "asked", "field"),
    [
        (FORK, {"pressure_kpa": -1, "travel_mm": 10}, "pressure_kpa"),
        (FORK, {"pressure_kpa": math.nan, "travel_mm": 10}, "pressure_kpa"),
        (FORK, {"pressure_kpa": 500, "travel_mm": 161}, "travel_mm"),
        (FORK, {"pressure_kpa": 500, "travel_mm": [10, -1]}, "travel_mm"),
        (FORK, {"pressure_kpa": 500, "travel_mm": math.nan}, "travel_mm"),
        (FORK, {"pressure_kpa": 500, "travel_mm": 10, "n": 0.9}, "n"),
        (FORK, {"pressure_kpa": 500, "travel_mm": 10, "negative_kpa": -3}, "negative_kpa"),
        (TWO_POSITIVE, {"pressure_kpa": 500, "travel_mm": 10}, "second_kpa"),
        (TWO_POSITIVE, {"pressure_kpa": 500, "travel_mm": 10, "second_kpa": 400}, "second_kpa"),
    ],
)
def test_questions_that_cannot_be_answered_are_refused_by_name(chamber, asked, field):
    with pytest.raises(InputError) as caught:
        force_n(chamber, **asked)
    assert caught.value.field == field


def test_a_load_that_bottoms_out_is_refused_with_the_most_it_can_be():
    with pytest.raises(InputError, match="bottoms the spring out"):
        static_travel_mm(FORK, pressure_kpa=500, load_n=1e5)


def test_a_load_below_the_top_out_force_moves_nothing():
    assert static_travel_mm(replace(FORK, negative_mm3=0.0), pressure_kpa=500, load_n=400) == 0.0


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(air).failed == 0
