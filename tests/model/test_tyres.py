"""A tyre read after a run, against what it was set to."""

from __future__ import annotations

import pytest

from workbench.model.tyres import TYRE_KPA, has_drifted, has_lost_air, tyre_drift_kpa
from workbench.model.warmth import Pressure

PSI = 6.894757


def test_without_temperatures_the_drift_is_the_plain_difference():
    assert tyre_drift_kpa(140.0, 152.0) == pytest.approx(-12.0)
    assert tyre_drift_kpa(140.0, Pressure(152.0, 22.0)) == pytest.approx(-12.0)
    assert tyre_drift_kpa(140.0, 152.0, air_c=-3.0) == pytest.approx(-12.0)


def test_a_cold_morning_alone_is_no_loss_of_air():
    # 22 psi set at 22 degC shows 18.9 psi at -3 degC: the same air.
    drift = tyre_drift_kpa(18.9 * PSI, Pressure(22.0 * PSI, 22.0), air_c=-3.0)
    assert abs(drift) < 0.3
    assert not has_drifted(drift)


def test_more_than_one_psi_is_named_and_only_below_is_air_lost():
    assert not has_drifted(TYRE_KPA)
    assert has_drifted(TYRE_KPA + 0.1)
    assert has_drifted(-TYRE_KPA - 0.1)
    assert has_lost_air(-TYRE_KPA - 0.1)
    assert not has_lost_air(TYRE_KPA + 20)
    assert pytest.approx(PSI, abs=0.01) == TYRE_KPA
