"""Two people ride a blind test at one screen of the real program, killed in the middle of it."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tests.journeys.hand import Hand, Sight, find
from tests.journeys.openings import a_bike_at
from tests.journeys.ways import Keyboard, Mouse
from workbench.evidence.blind import plan_digest

pytestmark = [pytest.mark.window, pytest.mark.journey]

BETRAYS = re.compile(r"(?i:no\. ?\d|setup \d|rebound|clicks|then open|from closed)|liking \d")
LIKED = (5, 7, 6, 7, 5, 8)


def test_two_people_ride_three_pairs_at_one_screen_with_two_kills_on_the_way(hand):
    rebound = a_bike_at(hand, "ride").adjusters[1].id
    hand.start()
    helper, rider = Mouse(hand), Keyboard(hand)
    _plan(hand, helper)
    for number, liking in enumerate(LIKED, start=1):
        _sees_nothing(hand)
        helper.press("blind_to_helper")
        hand.sees("Setup no.", "fully closed, then open")
        if number == 3:
            _killed(hand)
            hand.wait_for("blind_to_helper")
            _sees_nothing(hand)
            helper.press("blind_to_helper")
        helper.press(f"blind_steps_adjuster/{rebound}")
        helper.press("blind_to_rider")
        hand.wait_for("blind_keep")
        _sees_nothing(hand)
        rider.rate("blind_liking", liking)
        if number == 2:
            hand.wait(lambda sight, key=f"blind_liking_{liking}": _is_checked(sight, key), "the rating")
            _killed(hand)
            hand.wait(lambda sight, key=f"blind_liking_{liking}": _is_checked(sight, key), "the rating again")
            _sees_nothing(hand)
        rider.press("blind_keep")
        hand.wait_for("blind_to_helper" if number < len(LIKED) else "blind_reveal")
    for pair in range(3):
        helper.press(f"blind_guess_{pair + 1}_1")
    rider.press("blind_reveal")
    hand.sees("The blind test is revealed", "Guesses right:", "fits the order revealed")
    hand.keys("ctrl+z")
    hand.sees("cannot be undone")
    _holds_the_whole_test(hand.quit())


def _plan(hand: Hand, way: Mouse) -> None:
    way.press("ride_blind")
    hand.wait_focus("blind_value")
    way.choose("blind_item", "Fork: low-speed rebound")
    way.fill("blind_value", "10")
    way.fill("blind_pairs", "3")
    hand.sees("4 clicks out", "1 of 4 such tests")
    way.fill("ride_new_course", "Quarry loop")
    way.tick("ride_verified")
    way.press("blind_begin")
    hand.wait_for("blind_to_helper")


def _killed(hand: Hand) -> None:
    hand.kill_and_start(lambda content: len(content["records"]["setup"]) == 2)
    hand.wait_for("blind_sealed")


def _sees_nothing(hand: Hand) -> None:
    """Neither in sight nor spoken is anything of what is on the bike, or how it was liked."""
    told = [text for one in hand.look()["things"] for text in (one["text"], one["spoken"])]
    assert [text for text in told if BETRAYS.search(text)] == []


def _is_checked(sight: Sight, name: str) -> bool:
    thing = find(sight, name)
    return thing is not None and thing["checked"]


def _holds_the_whole_test(records: dict[str, Any]) -> None:
    (plan,) = records["blind_plan"]
    assert plan["revealed_at"]
    sealed = plan_digest(plan["order"], seed=plan["seed"], labels=(plan["labels"],), fixed_at=plan["fixed_at"])
    assert plan["digest"] == sealed
    runs = sorted(records["run"], key=lambda run: run["number"])
    assert [run["liking"] for run in runs] == list(LIKED)
    assert [run["guess"] for run in runs] == ["A", "B"] * 3
    assert all(run["is_blind"] for run in runs)
    by_letter = {letter: {run["setup_id"] for run, one in zip(runs, plan["order"], strict=True) if one == letter}
                 for letter in "AB"}  # fmt: skip
    assert all(len(setups) == 1 for setups in by_letter.values())
