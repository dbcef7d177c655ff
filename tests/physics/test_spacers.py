"""Another number of spacers, with and without its pressure."""

from __future__ import annotations

import doctest
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.errors import InputError
from workbench.physics import spacers
from workbench.physics.air import AirChamber, force_n, static_travel_mm
from workbench.physics.spacers import change_spacers

FORK = AirChamber(area_mm2=850, positive_mm3=850 * 230, negative_mm3=850 * 45, travel_mm=160)
ASKED = {"pressure_kpa": 517.1, "sag_mm": 32.0}


@settings(max_examples=40)
@given(st.floats(100, 1500), st.floats(0.05, 0.45), st.floats(0, 40_000), st.floats(0, 40_000))
def test_with_its_pressure_the_sag_stays_and_by_pressure_alone_it_moves_the_other_way(kpa, share, before, after):
    fork = replace(FORK, spacer_mm3=before)
    sag = share * 160
    change = change_spacers(fork, pressure_kpa=kpa, sag_mm=sag, spacer_mm3=after)
    load = force_n(fork, pressure_kpa=kpa, travel_mm=sag)
    then = replace(fork, spacer_mm3=after)
    assert static_travel_mm(then, pressure_kpa=change.pressure_kpa, load_n=load) == pytest.approx(sag, abs=1e-6)
    assert (change.pressure_kpa - kpa) * (after - before) <= 1e-9 * kpa
    assert (change.end_after_n - change.end_before_n) * (after - before) >= -1e-6
    if change.alone_kpa is not None:
        alone = force_n(fork, pressure_kpa=change.alone_kpa, travel_mm=160.0, n=1.35)
        assert alone == pytest.approx(change.end_after_n, rel=1e-9)
        assert (change.alone_sag_mm - sag) * (after - before) <= 1e-6


def test_the_same_spacers_are_no_change():
    change = change_spacers(FORK, **ASKED, spacer_mm3=0.0)
    assert change.pressure_kpa == pytest.approx(517.1)
    assert (change.left_sag_mm, change.alone_sag_mm) == (pytest.approx(32.0), pytest.approx(32.0))
    assert change.end_before_n == pytest.approx(change.end_after_n)
    assert change.rate_before_n_per_mm == pytest.approx(change.rate_after_n_per_mm)


def test_taking_spacers_out_softens_the_end():
    change = change_spacers(replace(FORK, spacer_mm3=20_000), **ASKED, spacer_mm3=0.0)
    assert change.pressure_kpa > 517.1
    assert change.end_after_n < change.end_before_n


def test_a_second_chamber_and_a_separate_negative_are_understood():
    change = change_spacers(replace(FORK, second_positive_mm3=50_000), **ASKED, spacer_mm3=10_000)
    assert change == change_spacers(FORK, **ASKED, spacer_mm3=10_000)
    own = change_spacers(FORK, **ASKED, spacer_mm3=10_000, negative_kpa=517.1)
    assert own.left_sag_mm == pytest.approx(change.left_sag_mm)


@pytest.mark.parametrize(
    ("changes", "field"),
    [({"spacer_mm3": 60_000}, "spacer_mm3"), ({"sag_mm": 160.0}, "sag_mm"), ({"pressure_kpa": -1.0}, "pressure_kpa")],
)
def test_what_cannot_be_is_refused_by_name(changes, field):
    with pytest.raises(InputError) as caught:
        change_spacers(FORK, **{**ASKED, "spacer_mm3": 10_000.0, **changes})
    assert caught.value.field == field


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(spacers).failed == 0
