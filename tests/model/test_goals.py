"""What a rider is after, and what bears on it."""

from __future__ import annotations

import pytest

from tests.model.bikes import parts_of
from workbench.model.goals import GOALS, MOST_OFFERED, adjusters_for
from workbench.model.responses import ATTRIBUTES


def test_what_can_be_asked_for_is_what_can_be_rated():
    assert GOALS == ATTRIBUTES


@pytest.mark.parametrize("goal", GOALS)
def test_only_counted_adjusters_are_offered_and_few_of_them(goal):
    offered = adjusters_for(goal, parts_of())
    assert 0 < len(offered) <= MOST_OFFERED
    assert adjusters_for(goal, parts_of(ranges={})) == ()


def test_an_unknown_goal_offers_nothing():
    assert adjusters_for("fame", parts_of()) == ()
