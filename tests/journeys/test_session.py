"""Twenty runs with three changes are entered in the real window, reviewed, and the setup that suits put back on."""

from __future__ import annotations

from typing import Any

import pytest

from tests.journeys.hand import Hand
from tests.journeys.openings import a_bike_at
from tests.journeys.walks import change_by_hand
from tests.journeys.ways import Keyboard, Mouse, Way

pytestmark = [pytest.mark.window, pytest.mark.journey]

REBOUND, REAR = "Fork: low-speed rebound", "Shock: low-speed"
DAY = (  # what is turned, to where, and how the runs after it were liked
    ("", "", (4, 5, 5, 5)),
    (REBOUND, "10", (7, 8, 7)),
    (REBOUND, "6", (5, 5)),
    (REBOUND, "10", (8, 7, 7)),
    (f"{REAR} compression", "8", (7, 7, 6)),
    (f"{REAR} compression", "4", (8, 7, 7)),
    (f"{REAR} rebound", "11", (5, 5)),
)


def test_twenty_runs_are_entered_reviewed_and_the_setup_that_suits_restored(hand):
    a_bike_at(hand, "ride")
    hand.start()
    mouse, keys = Mouse(hand), Keyboard(hand)
    mouse.fill("ride_new_course", "Quarry loop")
    mouse.fill("ride_planned", "20")
    mouse.tick("ride_verified")
    mouse.press("ride_start")
    number = 0
    for what, to, likings in DAY:
        if what:
            change_by_hand(mouse, what, to)
            hand.wait_for("next_changed")
        for liking in likings:
            number += 1
            hand.wait_text("run_title", f"Run {number}")
            keys.rate("run_liking", liking)
            hand.keys("Return")
    hand.wait_text("run_title", "Run 21")
    mouse.press("session_end")
    hand.wait_for("ride_start")
    mouse.go("review")
    _reviewed(hand, mouse)
    _holds_the_day(hand.quit())


def _reviewed(hand: Hand, way: Way) -> None:
    """No change reads "so far" any more; what suits is named and put back on the bike."""
    hand.sees("20 runs in 1 session.", "Probably rated higher with no. 2 than with no. 1")
    assert "So far" not in hand.text_of("review_summary")
    assert "no. 2" in hand.text_of("suited_title")
    way.press("suited_put")
    hand.wait_text("review_setup", "no. 2")
    way.press("review_all")
    hand.sees("Setup no. 2 is on the bike.")


def _holds_the_day(records: dict[str, Any]) -> None:
    runs = sorted(records["run"], key=lambda run: run["number"])
    assert [run["liking"] for run in runs] == [liking for _, _, likings in DAY for liking in likings]
    assert not any(run["is_confounded"] for run in runs), "one thing at a time"
    assert len({run["setup_id"] for run in runs}) == 4
