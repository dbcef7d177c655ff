"""Readings settled from above and from below."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.model.sag import centre_mm, settled_centre_mm, settled_gap_mm, spread_mm

LENGTHS = st.lists(st.floats(1, 60), min_size=1, max_size=6)


@pytest.mark.parametrize(
    ("readings", "ways", "centre", "gap", "spread"),
    [
        ((30.0, 34.0), ("above", "below"), 32.0, 4.0, 0.0),
        ((30.0, 34.0, 31.0, 34.0, 30.0), ("above", "below", "above", "below", "above"), 32.0, 4.0, 1.0),
        ((30.0,), ("above",), 30.0, None, 0.0),
        ((30.0, 31.0, 36.0), (), 31.0, None, 6.0),
    ],
)
def test_the_centre_lies_between_both_ways(readings, ways, centre, gap, spread):
    assert settled_centre_mm(readings, ways) == centre
    assert settled_gap_mm(readings, ways) == gap
    assert spread_mm(readings, ways) == spread


@settings(deadline=None)
@given(LENGTHS, LENGTHS, st.floats(0, 10))
def test_friction_moves_both_ways_apart_and_leaves_the_centre(above, below, friction_mm):
    ways = ("above",) * len(above) + ("below",) * len(below)
    before = settled_centre_mm((*above, *below), ways)
    apart = (*(one - friction_mm for one in above), *(one + friction_mm for one in below))
    assert settled_centre_mm(apart, ways) == pytest.approx(before)
    assert settled_gap_mm(apart, ways) == pytest.approx(
        centre_mm(tuple(below)) - centre_mm(tuple(above)) + 2 * friction_mm
    )
