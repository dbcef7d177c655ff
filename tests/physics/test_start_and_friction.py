"""Pressures to start from, and friction seen in the sag."""

from __future__ import annotations

import doctest
import math

import numpy as np
import pytest

from workbench.model.errors import InputError, NoAnswer, NotEnoughData
from workbench.physics import friction, start
from workbench.physics.air import AirChamber, force_n, rate_n_per_mm, static_travel_mm
from workbench.physics.friction import between_settled
from workbench.physics.start import start_from_garage, start_from_sizes, start_from_table

FORK = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)


def test_the_makers_table_in_any_order():
    assert start_from_table(65, [(80, 560), (60, 440), (70, 500)]).pressure_kpa == pytest.approx(470)
    assert start_from_table(60, [(60, 440), (70, 500)]).origin == "the maker's table"


def test_a_table_is_not_stretched():
    with pytest.raises(NoAnswer, match="60 to 70 kg"):
        start_from_table(75, [(60, 440), (70, 500)])


def test_one_line_is_no_table():
    with pytest.raises(NotEnoughData):
        start_from_table(75, [(75, 500)])


def test_two_bikes_are_too_few():
    with pytest.raises(NotEnoughData, match="3 bikes"):
        start_from_garage(75, [(75, 500), (80, 530)])


def test_the_interval_from_earlier_bikes_covers_the_next_one():
    rng = np.random.default_rng(2)
    covered = []
    for _ in range(400):
        masses = rng.uniform(60, 100, 5)
        pressures = 7 * masses * np.exp(rng.normal(0, 0.08, 5))
        found = start_from_garage(masses[-1], list(zip(masses[:-1], pressures[:-1], strict=True)))
        covered.append(found.low_kpa <= pressures[-1] <= found.high_kpa)
    assert 0.86 <= np.mean(covered) <= 0.94


def test_known_sizes_give_the_pressure_of_their_spring():
    load = force_n(FORK, pressure_kpa=500, travel_mm=32.0)
    found = start_from_sizes(FORK, load_n=load, load_share_sd=0.05, target=0.20)
    assert found.pressure_kpa == pytest.approx(500)
    assert found.low_kpa < 500 < found.high_kpa


@pytest.mark.parametrize(
    "question",
    [
        lambda: start_from_table(math.nan, [(60, 440), (70, 500)]),
        lambda: start_from_table(65, [(60, 440), (-70, 500)]),
        lambda: start_from_garage(75, [(75, 500), (80, 530), (85, math.inf)]),
        lambda: start_from_sizes(FORK, load_n=300, load_share_sd=0.9, target=0.2),
        lambda: between_settled(from_above_mm=34, from_below_mm=30, rate_n_per_mm=7, load_n=300, travel_mm=160),
        lambda: between_settled(from_above_mm=34, from_below_mm=170, rate_n_per_mm=7, load_n=300, travel_mm=160),
    ],
)
def test_what_cannot_be_is_refused(question):
    with pytest.raises(InputError):
        question()


def test_a_sticky_fork_gives_its_friction_back():
    load = 300.0
    above, below = (static_travel_mm(FORK, pressure_kpa=500, load_n=load + sign * 40) for sign in (-1, 1))
    middle = static_travel_mm(FORK, pressure_kpa=500, load_n=load)
    rate = rate_n_per_mm(FORK, pressure_kpa=500, travel_mm=middle)
    found = between_settled(from_above_mm=above, from_below_mm=below, rate_n_per_mm=rate, load_n=load, travel_mm=160)
    assert found.friction_n == pytest.approx(40, rel=0.03)
    assert found.sag_mm == pytest.approx(middle, abs=0.5)
    assert found.attend


@pytest.mark.parametrize("module", [start, friction])
def test_the_examples_in_the_docstrings_hold(module):
    assert doctest.testmod(module).failed == 0
