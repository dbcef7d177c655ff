"""What to work on next across springs and adjusters."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.evidence.plan import KnobRuns, SpringRuns, next_step, spring_task
from workbench.evidence.search import ClickSearch, Trial
from workbench.model.errors import InputError


def ridden_until_settled(liked=12):
    """The runs of a steady rider on twenty clicks, up to where the search settles."""
    trials = []
    while not (proposal := ClickSearch(20).propose(trials)).settled:
        away = proposal.position - liked
        trials.append(Trial(proposal.position, 8 - round(abs(away) / 2), max(-2, min(2, round(away / 3)))))
    return tuple(trials)


SETTLED = ridden_until_settled()


def knob(key, end="front", kind="rebound", speed="low", trials=(), **more):
    """An adjuster of twenty clicks, standing at ten."""
    return KnobRuns(key, f"{speed}-speed {kind}", end, kind, speed, 20, 10, tuple(trials), **more)


def four(end="front"):
    """A damper with all four adjusters, listed out of order."""
    return [
        knob(f"{end} hsc", end, "compression", "high"),
        knob(f"{end} lsc", end, "compression", "low"),
        knob(f"{end} lsr", end, "rebound", "low"),
        knob(f"{end} hsr", end, "rebound", "high"),
    ]


def test_the_first_run_is_ridden_as_the_knob_stands():
    step = next_step([knob("a")])
    assert step.adjuster_key == "a"
    assert step.proposal.position == 10
    assert "as it stands" in step.reason


def test_adjusters_come_in_order_with_the_fork_first_among_equals():
    knobs = [*four("rear"), *four("front")]
    order = []
    while (step := next_step(knobs, put_aside=order)).adjuster_key:
        order.append(step.adjuster_key)
    assert order == [
        "front hsr",
        "rear hsr",
        "front lsr",
        "rear lsr",
        "front lsc",
        "rear lsc",
        "front hsc",
        "rear hsc",
    ]


def test_a_single_adjuster_counts_as_low_speed():
    single = [knob("single", speed="unknown"), knob("fast", speed="high")]
    assert next_step(single).adjuster_key == "fast"
    assert next_step(single, order=[("rebound", "low"), ("rebound", "high")]).adjuster_key == "single"


def test_what_was_begun_is_finished_first():
    begun = knob("lsc", kind="compression", trials=[Trial(10, 6, -2)])
    step = next_step([*four(), begun], working_on="lsc")
    assert step.adjuster_key == "lsc"
    assert step.proposal.position == 15


def test_a_settled_adjuster_is_passed_over():
    settled = knob("hsr", speed="high", trials=SETTLED)
    step = next_step([settled, knob("lsr")], working_on="hsr")
    assert step.adjuster_key == "lsr"
    assert {one.key: one.settled for one in step.remaining} == {"hsr": True, "lsr": False}


def test_nothing_left_says_what_is_still_expected():
    step = next_step([knob("hsr", speed="high", trials=SETTLED)])
    assert step.adjuster_key is None
    assert step.proposal is None
    assert "Nothing left worth a run" in step.reason
    assert step.remaining[0].value < 0.01


def test_rebound_is_opened_again_after_a_spring_move():
    moved = knob("lsr", trials=SETTLED, spring_moved_at=len(SETTLED))
    step = next_step([moved])
    assert step.adjuster_key == "lsr"
    assert "spring moved" in step.reason
    kept = knob("lsc", kind="compression", trials=SETTLED, spring_moved_at=len(SETTLED))
    assert next_step([kept]).adjuster_key is None


def test_little_travel_asks_for_less_spring_only_where_it_can_be_judged():
    little = SpringRuns("spring", "front", (0.7, 0.8, 0.75), rebound_sane=True)
    assert next_step([knob("a")], [little], course_has_heavy_hit=True).spring_task == "less"
    assert next_step([knob("a")], [little], course_has_heavy_hit=False).spring_task is None
    unsure = SpringRuns("spring", "front", (0.7, 0.8, 0.75))
    assert next_step([knob("a")], [unsure], course_has_heavy_hit=True).adjuster_key == "a"
    assert next_step([knob("a")], [little], course_has_heavy_hit=True, put_aside=["spring"]).adjuster_key == "a"


@pytest.mark.parametrize(
    ("travel", "harsh", "limited", "task"),
    [
        ((0.95, 0.97, 1.0), (0, 1, 0), None, None),
        ((0.8, 0.8), (0, 0), None, None),
        ((0.8, 0.8, 0.84), (0, 0, 0), None, "less"),
        ((0.8, 0.8, 0.84), (0, 0, 0), "minimum", None),
        ((0.8, 0.8, 0.9), (0, 0, 0), None, None),
        ((1.0, 1.0), (2, 3), None, "end_stroke_support"),
        ((1.0, 1.0, 1.0), (3, 0, 0), None, None),
        ((1.0, 1.0), (2, 3), "maximum", None),
    ],
)
def test_the_spring_rules(travel, harsh, limited, task):
    assert spring_task(SpringRuns("s", "rear", travel, harsh, True, limited)) == task


def test_the_front_spring_is_judged_before_the_rear():
    springs = [SpringRuns(end, end, (1.0,), (3,), True) for end in ("rear", "front")]
    assert next_step([], springs, course_has_heavy_hit=True).adjuster_key == "front"


def test_an_impossible_end_or_travel_is_named():
    with pytest.raises(InputError, match="end"):
        knob("a", end="middle")
    with pytest.raises(InputError, match="travel_used"):
        SpringRuns("s", "front", (float("nan"),))


@settings(deadline=None, max_examples=20, derandomize=True)
@given(st.permutations([*four("front"), *four("rear")]))
def test_the_order_of_listing_does_not_matter(knobs):
    assert next_step(knobs).adjuster_key == "front hsr"
