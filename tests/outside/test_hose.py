"""A hose against the worked figures of a can of 95 cm3 and a hose of 4 cm3.

Source: Boyle's law at outside pressure by hand, (180 + 14.7) x 95 + 14.7 x 4 = (p + 14.7) x 99, p = 172.7 psi.
"""

from __future__ import annotations

import pytest

from workbench.physics.hose import as_attached


def test_a_can_of_95_cm3_and_a_hose_of_4_cm3_show_173_of_180_psi():
    by_hand = ((180 + 14.7) * 95 + 14.7 * 4) / 99 - 14.7
    assert as_attached(180.0, 4 / 95) == pytest.approx(by_hand)
    assert round(as_attached(180.0, 4 / 95)) == 173
