"""A new bike goes through every station to its card, by mouse and by keyboard alone, with kills on the way."""

from __future__ import annotations

import subprocess
from typing import Any

import pytest

from tests.journeys.story import AS_FOUND, FIRST_RUNS, FRONT, LATER_RUNS, RANGE, REAR, Story
from tests.journeys.ways import Keyboard, Mouse, Way

pytestmark = [pytest.mark.window, pytest.mark.journey]


@pytest.mark.parametrize("way", [Mouse, Keyboard])
def test_a_new_bike_goes_from_the_garage_to_its_card_and_survives_five_kills(hand, way: type[Way], tmp_path):
    story = Story(way(hand))
    story.tell(tmp_path / "card.pdf")
    assert hand.kills == 5
    _holds_all_that_was_entered(hand.quit())
    words = subprocess.run(["pdftotext", str(tmp_path / "card.pdf"), "-"], capture_output=True, text=True, check=True)
    assert "Heron 140" in words.stdout
    assert "M. Anders" in words.stdout


def _holds_all_that_was_entered(records: dict[str, Any]) -> None:
    assert [(one["name"], one["tags"]) for one in records["bike"]] == [("Heron 140", "shop")]
    assert [(one["name"], one["mass_kg"]) for one in records["person"]] == [("M. Anders", 84.5)]
    counts = sorted((one["as_found"], one["steps"]) for one in records["range_count"])
    assert counts == sorted((steps, RANGE) for steps in AS_FOUND)
    assert len(records["sag_measurement"]) == len(FRONT) + len(REAR)
    assert sorted(one["number"] for one in records["setup"]) == [1, 2]
    likings = [one["liking"] for one in sorted(records["run"], key=lambda one: one["number"])]
    assert likings == [*FIRST_RUNS, *LATER_RUNS]
