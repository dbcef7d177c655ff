"""What a hose takes, and what only a leak explains."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics.hose import as_attached, hose_share, reattached

PSI = 6.894757


def test_two_attachments_give_the_hose_over_the_chamber():
    assert hose_share(180 * PSI, as_attached(180 * PSI, 4 / 95)) == pytest.approx(4 / 95)


@settings(deadline=None)
@given(st.floats(50, 3000), st.floats(0.001, 0.2))
def test_what_was_learned_predicts_what_is_shown(kpa, share):
    assert hose_share(kpa, as_attached(kpa, share)) == pytest.approx(share)


def test_a_second_reading_that_is_not_lower_tells_nothing():
    with pytest.raises(NotEnoughData):
        hose_share(1000.0, 1000.0)
    with pytest.raises(InputError):
        hose_share(-1.0, 5.0)


def test_a_pump_attached_again_is_no_leak():
    found = reattached(180 * PSI, 173 * PSI, gauge_kpa=3.5)
    assert not found.is_leak
    assert found.missing_kpa == 0


def test_only_what_hose_and_gauge_leave_over_is_called_a_leak():
    learned = (4 / 95,)
    assert not reattached(180 * PSI, 172 * PSI, shares=learned, gauge_kpa=3.5).is_leak
    found = reattached(180 * PSI, 150 * PSI, shares=learned, gauge_kpa=3.5)
    assert found.is_leak
    assert found.missing_kpa == pytest.approx(found.expected_low_kpa - 150 * PSI)
    assert found.missing_kpa < (172.7 - 150) * PSI


def test_what_was_learned_narrows_what_is_expected():
    typical = reattached(1000.0, 950.0, gauge_kpa=3.5)
    learned = reattached(1000.0, 950.0, shares=(0.042, 0.041, 0.3), gauge_kpa=3.5)
    width = typical.expected_high_kpa - typical.expected_low_kpa
    assert learned.expected_high_kpa - learned.expected_low_kpa < width
    assert learned.is_learned
