"""Stretches that several stories walk, by whichever way."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tests.journeys.hand import Sight, find
from tests.journeys.ways import Way

Rounds = tuple[tuple[str, tuple[str, ...]], ...]  # what is set, and the readings it gives


def nothing() -> None:
    """Do nothing on the way."""


def count(way: Way, as_found: int, steps: int, *, killed: Callable[[], None] = nothing, is_open: bool = False) -> None:
    """Count the adjuster on the sheet in and out; one that stands open is only turned in."""
    hand = way.hand
    if not is_open:
        way.count("count_close_tool", as_found)
        hand.wait_text("count_verb", f"Keep as found {as_found}")
    killed()
    way.press("count_verb")
    hand.wait_for("count_open_tool")
    way.count("count_open_tool", steps)
    hand.wait_text("count_verb", f"Keep range {steps}")
    way.press("count_verb")
    hand.wait(lambda sight: find(sight, "count_close_tool") or find(sight, "adjusters_next"), "go on")


def begin_sag(way: Way, end: str) -> None:
    """Open the sag sheet and take up one end, as far as its spring."""
    hand = way.hand
    way.go("sag")
    hand.wait(lambda sight: find(sight, "sag_overview") or find(sight, "sag_both_ends"), "the sag sheet")
    if hand.is_in_sight("sag_both_ends"):
        way.press("sag_both_ends")
        hand.wait_for("sag_overview")
    way.press(f"sag_{end}_next" if hand.is_in_sight(f"sag_{end}_next") else f"sag_{end}_measure")
    hand.wait_for("sag_prepare_stage")
    way.press("sag_guide_verb")
    hand.wait_for("sag_spring_stage")


def read_sag(way: Way, readings: tuple[str, ...]) -> None:
    """Take the readings of a round, and see what follows from them."""
    for place, reading in enumerate(readings, 1):
        take_reading(way, reading, place)
    way.press("sag_guide_verb")
    way.hand.wait_for("sag_advice_stage")


def take_reading(way: Way, reading: str, place: int) -> None:
    """Take one reading."""
    way.enter("sag_reading_entry", reading, "sag_add_reading")
    way.hand.wait_for(f"sag_remove_{place}")


def measure_sag(way: Way, end: str, rounds: Rounds, killed: Callable[[], None] = nothing) -> None:
    """Measure one end from its preparation to the knobs put back; the last round is the one kept."""
    hand = way.hand
    begin_sag(way, end)
    for number, (pressure, readings) in enumerate(rounds, 1):
        way.fill("sag_pressure_kpa_entry", pressure)
        way.press("sag_guide_verb")
        hand.wait_for("sag_measure_stage")
        if number == 1:
            killed()
        read_sag(way, readings)
        if number < len(rounds) and hand.is_in_sight("sag_move_confirmed_entry"):
            way.tick("sag_move_confirmed")
        assert ("Keep" in hand.text_of("sag_guide_verb")) == (number == len(rounds))
        way.press("sag_guide_verb")
        hand.wait_for("sag_put_back_stage" if number == len(rounds) else "sag_spring_stage")
    tick_all(way, "sag_put_back_")


def tick_all(way: Way, prefix: str) -> None:
    """Tick every row of a step list."""
    while rows := _rows(way.hand.look(), prefix):
        way.press(rows[0])
        way.hand.wait(lambda sight, rows=rows: len(_rows(sight, prefix)) < len(rows), "a step less")


def rate_run(way: Way, number: int, liking: int, entered: Callable[[], None] = nothing) -> None:
    """Rate a run and keep it."""
    way.hand.wait_text("run_title", f"Run {number}")
    way.rate("run_liking", liking)
    entered()
    way.press("run_keep")
    way.hand.wait_text("run_title", f"Run {number + 1}")


def change_by_hand(way: Way, what: str, to: str) -> None:
    """Set something else between two runs."""
    if not way.hand.is_in_sight("by_hand_value"):
        way.press("next_by_hand")
    way.choose("by_hand_what", what)
    way.fill("by_hand_value", to)
    way.press("by_hand_take")


def write_card(way: Way, card: Path) -> None:
    """Write the card into a file."""
    hand = way.hand
    way.go("card")
    way.press("card_pdf")
    hand.wait_focus("fileNameEdit")
    hand.keys("ctrl+a")
    hand.type(str(card))
    hand.wait_text("fileNameEdit", str(card))
    hand.keys("Return")
    hand.sees("Written to")


def _rows(sight: Sight, prefix: str) -> list[str]:
    return [one["name"] for one in sight["things"] if one["kind"] == "_StepRow" and one["name"].startswith(prefix)]
