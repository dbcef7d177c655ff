"""One story through every station: a new bike, from the garage to its card, with the program killed on the way."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests.journeys.hand import Sight, export, find
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

    def __init__(self, way: Way, library: Path) -> None:
        self.way, self.hand, self.library = way, way.hand, library
        self.kills = 0

    def tell(self, card: Path) -> None:
        """The whole story."""
        self.hand.start()
        self.add_the_bike()
        self.count_the_adjusters()
        self.measure_sag("front", FRONT, self._killed_while_measuring)
        self.measure_sag("rear", REAR, lambda: None)
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
            self.way.count("count_close_tool", steps)
            self.hand.wait_text("count_verb", f"Keep as found {steps}")
            if place == 1:
                self.kill(lambda content: _draft(content, "count"))
                self.hand.wait_text("count_verb", f"Keep as found {steps}")
            self.way.press("count_verb")
            self.hand.wait_for("count_open_tool")
            self.way.count("count_open_tool", RANGE)
            self.hand.wait(lambda sight: str(RANGE) in _text(sight, "count_verb"), "the range")
            self.way.press("count_verb")
            self.hand.wait(lambda sight: find(sight, "count_close_tool") or find(sight, "adjusters_next"), "go on")

    def measure_sag(
        self, end: str, rounds: tuple[tuple[str, tuple[str, ...]], ...], killed: Callable[[], None]
    ) -> None:
        self.way.go("sag")
        if not self.hand.is_in_sight(f"sag_{end}_next"):
            self.way.press("sag_both_ends")
        self.way.press(f"sag_{end}_next")
        self.hand.wait_for("sag_prepare_stage")
        self.way.press("sag_guide_verb")
        for number, (pressure, readings) in enumerate(rounds, 1):
            self.hand.wait_for("sag_spring_stage")
            self.way.fill("sag_pressure_kpa_entry", pressure)
            self.way.press("sag_guide_verb")
            self.hand.wait_for("sag_measure_stage")
            if number == 1:
                killed()
            for place, reading in enumerate(readings, 1):
                self._read(reading, place)
            self.way.press("sag_guide_verb")
            self.hand.wait_for("sag_advice_stage")
            if number < len(rounds) and self.hand.is_in_sight("sag_move_confirmed_entry"):
                self.way.tick("sag_move_confirmed")
            assert ("Keep" in self.hand.text_of("sag_guide_verb")) == (number == len(rounds))
            self.way.press("sag_guide_verb")
        self.hand.wait_for("sag_put_back_stage")
        self._tick_all("sag_put_back_")

    def _killed_while_measuring(self) -> None:
        """Once in the middle of typing, once with a reading just taken."""
        self.way.fill("sag_reading_entry", "38.")
        self.kill(lambda content: "38." in _draft(content, "sag"))
        self.hand.wait_text("sag_reading_entry", "38.")
        self._read("38.5 mm", 1)
        self.kill(lambda content: "38.5" in _draft(content, "sag"))
        self.hand.wait_for("sag_remove_1")
        self.way.press("sag_remove_1")
        self.hand.wait(lambda sight: not find(sight, "sag_remove_1"), "the reading gone")

    def set_the_baseline(self) -> None:
        self.way.go("baseline")
        self.way.press("baseline_keep")
        self.hand.wait(lambda sight: not find(sight, "baseline_keep"), "the setup kept")
        self.kill(lambda content: len(content["records"]["setup"]) == 1)
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
            self._run(number, liking)
        self.way.press("next_set")
        self.hand.wait_for("next_changed")
        for number, liking in enumerate(LATER_RUNS, len(FIRST_RUNS) + 1):
            self._run(number, liking, is_killed=number == 5)

    def _run(self, number: int, liking: int, *, is_killed: bool = False) -> None:
        self.hand.wait_text("run_title", f"Run {number}")
        self.way.rate("run_liking", liking)
        if is_killed:
            self.way.fill("run_travel_front", "11")
            self.kill(lambda content: '"11"' in _draft(content, "run"))
            self.hand.wait(lambda sight: _checked(sight, f"run_liking_{liking}"), "the liking again")
            self.hand.wait_text("run_travel_front", "11")
        self.way.press("run_keep")
        self.hand.wait_text("run_title", f"Run {number + 1}")

    def review(self) -> None:
        self.way.go("review")
        self.hand.sees("6 runs in 1 session.")
        self.way.choose("review_setup", "no. 1")
        self.way.press("review_all")
        self.hand.sees("Setup no. 1 is on the bike.")

    def hand_over(self, card: Path) -> None:
        self.way.go("card")
        self.way.press("card_pdf")
        self.hand.wait_focus("fileNameEdit")
        self.hand.keys("ctrl+a")
        self.hand.type(str(card))
        self.hand.wait_text("fileNameEdit", str(card))
        self.hand.keys("Return")
        self.hand.sees("Written to")
        self.way.press("card_hand_over")
        self.hand.sees("Handed over")

    def kill(self, holds: Callable[[dict[str, Any]], object]) -> None:
        """Kill the program; what the file held before it still holds; then start again."""
        before = export(self.library)
        assert holds(before), before["drafts"]
        self.hand.kill()
        self.kills += 1
        assert export(self.library) == before
        self.hand.start()

    def _read(self, reading: str, place: int) -> None:
        self.way.enter("sag_reading_entry", reading, "sag_add_reading")
        self.hand.wait_for(f"sag_remove_{place}")

    def _tick_all(self, prefix: str) -> None:
        while rows := _rows(self.hand.look(), prefix):
            self.way.press(rows[0])
            self.hand.wait(lambda sight, rows=rows: len(_rows(sight, prefix)) < len(rows), "a step less")


def _rows(sight: Sight, prefix: str) -> list[str]:
    return [one["name"] for one in sight["things"] if one["kind"] == "_StepRow" and one["name"].startswith(prefix)]


def _text(sight: Sight, name: str) -> str:
    return str((find(sight, name) or {"text": ""})["text"])


def _checked(sight: Sight, name: str) -> bool:
    return bool((find(sight, name) or {"checked": False})["checked"])


def _draft(content: dict[str, Any], kind: str) -> str:
    """The body of the open draft of a kind."""
    return next((one["body"] for one in content["drafts"] if one["kind"] == kind and not one["closed_by"]), "")
