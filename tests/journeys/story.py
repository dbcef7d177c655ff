"""One story through every station: a new bike, from the garage to its card, with the program killed on the way."""

from __future__ import annotations

from pathlib import Path

from tests.journeys.hand import Sight, draft, find
from tests.journeys.walks import count, measure_sag, nothing, rate_run, take_reading, write_card
from tests.journeys.ways import Way

FACTS = (
    ("name", "Heron 140"),
    ("rider", "M. Anders"),
    ("rider_mass", "84.5 kg"),
    ("fork_travel", "150 mm"),
    ("shock_stroke", "60 mm"),
    ("rear_travel", "145 mm"),
)
AS_FOUND = (2, 3, 1, 4)
RANGE = 5
FRONT = (("82 psi", ("38 mm", "40 mm", "39 mm")), ("92 psi", ("30 mm", "31 mm")))
REAR = (("180 psi", ("17 mm", "17.5 mm")),)
FIRST_RUNS = (5, 6)
LATER_RUNS = (7, 7, 8, 7)


class Story:
    """Tells the story one station at a time; what was entered is compared at every kill."""

    def __init__(self, way: Way) -> None:
        self.way, self.hand = way, way.hand

    def tell(self, card: Path) -> None:
        """The whole story."""
        self.hand.start()
        self.add_the_bike()
        self.count_the_adjusters()
        measure_sag(self.way, "front", FRONT, self._killed_while_measuring)
        measure_sag(self.way, "rear", REAR)
        self.set_the_baseline()
        self.ride()
        self.review()
        self.hand_over(card)

    def add_the_bike(self) -> None:
        self.way.press("welcome_add")
        self.hand.wait_focus("new_bike_name")
        for name, text in FACTS:
            self.way.fill(f"new_bike_{name}", text)
        self.way.press("new_bike_add")
        self.hand.wait_for("garage_sheet")
        self.way.fill("facts_bike_tags_entry", "shop")
        self.way.fill("facts_fork_minimum_kpa_entry", "40 psi")
        self.way.fill("facts_fork_maximum_kpa_entry", "120 psi")

    def count_the_adjusters(self) -> None:
        self.way.go("adjusters")
        self.way.fill("found_fork_pressure_entry", "82 psi")
        self.way.fill("found_shock_pressure_entry", "180 psi")
        self.way.press("adjusters_next")
        for place, steps in enumerate(AS_FOUND):
            count(self.way, steps, RANGE, killed=self._killed_while_counting if place == 1 else nothing)

    def _killed_while_counting(self) -> None:
        self.hand.kill_and_start(lambda content: draft(content, "count"))
        self.hand.wait_text("count_verb", f"Keep as found {AS_FOUND[1]}")

    def _killed_while_measuring(self) -> None:
        """Once in the middle of typing, once with a reading just taken."""
        self.way.fill("sag_reading_entry", "38.")
        self.hand.kill_and_start(lambda content: "38." in draft(content, "sag"))
        self.hand.wait_text("sag_reading_entry", "38.")
        take_reading(self.way, "38.5 mm", 1)
        self.hand.kill_and_start(lambda content: "38.5" in draft(content, "sag"))
        self.hand.wait_for("sag_remove_1")
        self.way.press("sag_remove_1")
        self.hand.wait(lambda sight: not find(sight, "sag_remove_1"), "the reading gone")

    def set_the_baseline(self) -> None:
        self.way.go("baseline")
        self.way.press("baseline_keep")
        self.hand.wait(lambda sight: not find(sight, "baseline_keep"), "the setup kept")
        self.hand.kill_and_start(lambda content: len(content["records"]["setup"]) == 1)
        self._undo_from_before()
        self.way.press("baseline_all")
        self.hand.wait_for("baseline_ride")

    def _undo_from_before(self) -> None:
        """A deed from before the restart is offered with its bike and time, then undone, then done again."""
        self.way.menu("Edit", "Undo")
        self.hand.sees("Undo “Keep setup no. 1” on Heron 140, 14 May 2031", "It was done before this start.")
        self.way.press("banner_action")
        self.hand.wait_for("baseline_keep")
        self.way.menu("Edit", "Redo")
        self.hand.wait_for("baseline_all")

    def ride(self) -> None:
        self.way.go("ride")
        self.way.fill("ride_new_course", "Quarry lap")
        self.way.tick("ride_verified")
        self.way.press("ride_start")
        for number, liking in enumerate(FIRST_RUNS, 1):
            rate_run(self.way, number, liking)
        self.way.press("next_set")
        self.hand.wait_for("next_changed")
        for number, liking in enumerate(LATER_RUNS, len(FIRST_RUNS) + 1):
            rate_run(self.way, number, liking, self._killed_while_rating if number == 5 else nothing)

    def _killed_while_rating(self) -> None:
        liking = LATER_RUNS[5 - len(FIRST_RUNS) - 1]
        self.way.fill("run_travel_front", "11")
        self.hand.kill_and_start(lambda content: '"11"' in draft(content, "run"))
        self.hand.wait(lambda sight: _checked(sight, f"run_liking_{liking}"), "the liking again")
        self.hand.wait_text("run_travel_front", "11")

    def review(self) -> None:
        self.way.go("review")
        self.hand.sees("6 runs in 1 session.")
        self.way.choose("review_setup", "no. 1")
        self.way.press("review_all")
        self.hand.sees("Setup no. 1 is on the bike.")

    def hand_over(self, card: Path) -> None:
        write_card(self.way, card)
        self.way.press("card_hand_over")
        self.hand.sees("Handed over")


def _checked(sight: Sight, name: str) -> bool:
    return bool((find(sight, name) or {"checked": False})["checked"])
