"""Force over travel with its band, and springs known as a table."""

from __future__ import annotations

import doctest
import math

import numpy as np
import pytest

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics import spring_table as tables
from workbench.physics.air import AirChamber, force_n, static_travel_mm
from workbench.physics.band import force_band
from workbench.physics.sag import SagReading
from workbench.physics.spring_table import spring_table

FORK = AirChamber(850, 850 * 235, 850 * 60, 160)
LOAD = float(force_n(FORK, pressure_kpa=500, travel_mm=32.0))
AT = [0.0, 16.0, 32.0, 64.0, 96.0, 128.0, 150.0]


def reading(pressure: float, chamber: AirChamber = FORK, load: float = LOAD) -> SagReading:
    """A reading without scatter."""
    return SagReading(pressure, static_travel_mm(chamber, pressure_kpa=pressure, load_n=load))


def band(*readings: SagReading, **changes):
    """Ask for the fork."""
    asked = {"travel_mm": 160.0, "end": "front", "pressure_kpa": 500.0, "at_mm": AT, **changes}
    return force_band(readings, **asked)


def test_the_band_holds_the_true_curve():
    found = band(reading(500), reading(560), reading(450))
    true = np.asarray(force_n(FORK, pressure_kpa=500, travel_mm=np.array(AT))) / LOAD
    assert (np.asarray(found.low) <= true + 1e-9).all()
    assert (true <= np.asarray(found.high) + 1e-9).all()


def test_the_curve_crosses_the_load_at_the_sag():
    found = band(reading(500))
    assert found.middle[2] == pytest.approx(1.0, abs=0.01)
    assert found.low[2] < 1 < found.high[2]


def test_the_end_of_the_travel_is_less_certain_than_the_sag():
    found = band(reading(500), reading(560))
    width = np.asarray(found.high) - np.asarray(found.low)
    assert width[-1] > 3 * width[2]


def test_known_sizes_narrow_the_band_and_speed_raises_it():
    guessed, known, quick = (
        band(reading(500), **extra) for extra in ({}, {"chamber": FORK}, {"chamber": FORK, "n": 1.35})
    )
    assert known.high[-1] - known.low[-1] < guessed.high[-1] - guessed.low[-1]
    assert quick.middle[-1] > known.middle[-1]
    true = float(force_n(FORK, pressure_kpa=500, travel_mm=150.0, n=1.35)) / LOAD
    assert quick.middle[-1] == pytest.approx(true, rel=0.03)


def test_unequal_areas_are_understood():
    unequal = AirChamber(850, 850 * 235, 780 * 60, 160, negative_area_mm2=780)
    load = float(force_n(unequal, pressure_kpa=500, travel_mm=32.0))
    found = band(reading(500, unequal, load), chamber=unequal)
    true = np.asarray(force_n(unequal, pressure_kpa=500, travel_mm=np.array(AT))) / load
    assert found.middle == pytest.approx(true, rel=0.04, abs=0.01)


@pytest.mark.parametrize(
    "changes", [{"pressure_kpa": -1}, {"at_mm": [170.0]}, {"at_mm": [math.nan]}, {"n": 3}, {"end": "top"}]
)
def test_what_cannot_be_is_refused(changes):
    with pytest.raises(InputError):
        band(reading(500), **changes)


def test_without_a_reading_there_is_no_band():
    with pytest.raises(NotEnoughData):
        band()


def test_a_progressive_spring_from_a_table():
    table = spring_table([(60, 5200), (0, 200), (20, 1400), (40, 3000)])
    assert table.force_n(0) == 200
    assert table.force_n(50) == pytest.approx(4100)
    assert table.travel_mm(table.force_n(33.0)) == pytest.approx(33.0)
    assert [table.rate_n_per_mm(x) for x in (10, 30, 50)] == pytest.approx([60, 80, 110])


@pytest.mark.parametrize(
    ("rows", "field"),
    [
        ([(0, 0), (0, 5)], "travel_mm"),
        ([(0, 10), (10, 5)], "force_n"),
        ([(0, 0), (-10, 5)], "travel_mm"),
        ([(0, 0), (10, math.nan)], "force_n"),
    ],
)
def test_a_table_that_cannot_be_is_refused_by_name(rows, field):
    with pytest.raises(InputError) as caught:
        spring_table(rows)
    assert caught.value.field == field


def test_beyond_the_table_is_refused():
    table = spring_table([(0, 200), (60, 5000)])
    for question, value in ((table.force_n, 61), (table.travel_mm, 100), (table.rate_n_per_mm, -1)):
        with pytest.raises(InputError):
            question(value)
    with pytest.raises(NotEnoughData):
        spring_table([(0, 0)])


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(tables).failed == 0
