from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.setting import Item, changes_between
from workbench.model.warmth import Pressure, gauge_at, with_warmth
from workbench.physics.atmosphere import carry_pressure

PSI = 6.894757293168
KEY = (Item.PRESSURE.value, "fork")


def changed(before, after):
    return bool(changes_between({KEY: before}, {KEY: after}))


def test_a_pressure_that_fell_with_the_temperature_is_no_change():
    # 80 psi at 22 degC show 72.0 psi at -3 degC: absolute ideal gas in a closed volume
    assert not changed(Pressure(80 * PSI, 22.0), Pressure(72 * PSI, -3.0))


def test_the_same_fall_at_the_same_temperature_is_a_change():
    assert changed(Pressure(80 * PSI, 22.0), Pressure(72 * PSI, 22.0))


def test_without_a_temperature_only_the_gauge_counts():
    assert changed(80 * PSI, Pressure(72 * PSI, -3.0))
    assert not changed(80 * PSI, 80.3 * PSI)


def test_a_number_without_a_temperature_stays_a_plain_number():
    assert type(with_warmth(500.0, None)) is float
    assert with_warmth(None, 20.0) is None
    assert with_warmth(500.0, 20.0) == 500.0


@given(st.floats(10, 2500), st.floats(-30, 50), st.floats(-30, 50))
def test_it_is_the_carry_over_of_the_physics_room(kpa, from_c, to_c):
    assert gauge_at(kpa, from_c, to_c) == pytest.approx(carry_pressure(kpa, from_c=from_c, to_c=to_c), abs=1e-6)
