"""A maker's chart that counts from open, before the count, after it, and after a recount; in the real window."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from tests.journeys.hand import Hand, draft
from tests.journeys.openings import opening, put_on_bench
from tests.journeys.walks import count
from tests.journeys.ways import BothHands
from workbench.actions.adjusters import keep_as_found, keep_range

pytestmark = [pytest.mark.window, pytest.mark.journey]


def test_a_chart_from_open_waits_for_the_count_and_a_recount_moves_the_chart_and_no_old_record(hand):
    with opening(hand) as desk:
        bike = a_bike(desk)
        parts = put_on_bench(desk, bike, "adjusters")
        rebound = parts.adjusters[1]
        for other in parts.adjusters:
            if other != rebound:
                desk.do("As found", keep_as_found(bike.id, other.id, 4), bike_id=bike.id)
                desk.do("Range", keep_range(bike.id, other.id, 12), bike_id=bike.id)
    work = BothHands(hand)
    hand.start()
    work.press("open_facts_fork_2")
    work.press("facts_fork_2_chart_from_open")
    work.fill("facts_fork_2_chart_steps_entry", "7")
    hand.keys("Tab")
    hand.sees("7 clicks from open (maker), not converted until counted")
    work.press("count_fork_2")
    count(work, 6, 13)
    hand.sees("6 clicks from closed (maker: 7 from open)")
    work.go("baseline")
    hand.sees("fully closed, then open 6 clicks (the maker's advice)")
    work.press("baseline_keep")
    work.press("baseline_all")
    hand.wait_for("baseline_ride")
    work.go("adjusters")
    work.press("count_fork_2")
    count(work, 6, 14, killed=lambda: _killed_while_counting(hand))
    hand.sees(
        "7 clicks from closed (maker: 7 from open)",
        "Counted 13 before: one detent more or less at the open end is normal.",
    )
    work.go("baseline")
    hand.sees("Setup no. 1", "Fork: low-speed rebound: fully closed, then open 6 clicks")
    records = hand.quit()
    counts = sorted(
        (one for one in records["range_count"] if one["adjuster_id"] == rebound.id), key=lambda one: one["steps"]
    )
    assert [(one["as_found"], one["steps"]) for one in counts] == [(6, 13), (6, 14)]
    (kept,) = [one for one in records["setup_value"] if one["subject_id"] == rebound.id]
    assert (kept["value"], kept["range_id"]) == (6.0, counts[0]["id"]), "as it was counted then"
    (chart,) = [one for one in records["adjuster"] if one["id"] == rebound.id]
    assert (chart["chart_steps"], chart["chart_from"]) == (7, "open")


def _killed_while_counting(hand: Hand) -> None:
    hand.kill_and_start(lambda content: '"counted_in": 6' in draft(content, "count"))
    hand.wait_text("count_verb", "Keep as found 6")
