"""The disk fills up in the middle of work: it is said where it happens, nothing is lost, and the work goes on."""

from __future__ import annotations

import resource

import pytest

from tests.journeys.hand import Hand, export, find
from tests.journeys.ways import Mouse

pytestmark = [pytest.mark.window, pytest.mark.journey]
NO_ROOM = "check the disk and its free space"


def leave_room_for(hand: Hand, size: int) -> None:
    """Let the program write no file beyond this size from now on."""
    resource.prlimit(hand.process_id(), resource.RLIMIT_FSIZE, (size, resource.RLIM_INFINITY))


def test_work_goes_on_after_the_disk_was_full(hand):
    way = Mouse(hand)
    hand.start()
    way.press("welcome_add")
    hand.wait_focus("new_bike_name")
    way.fill("new_bike_name", "Heron 140")
    way.press("new_bike_add")
    hand.wait_for("garage_sheet")
    before = export(hand.library)
    leave_room_for(hand, 4096)
    way.fill("facts_bike_tags_entry", "shop")
    hand.keys("Tab")
    hand.wait(
        lambda sight: NO_ROOM in (find(sight, "facts_bike_tags_said") or {"text": ""})["text"], "said at the field"
    )
    way.go("adjusters")
    hand.wait(lambda sight: NO_ROOM in (find(sight, "banner_words") or {"text": ""})["text"], "said in the notice")
    way.press("adjusters_next")
    way.count("count_close_tool", 2)
    way.menu("Edit", "Undo")
    way.press("banner_close")
    way.go("garage")
    hand.wait_text("facts_bike_tags_entry", "shop")
    assert export(hand.library) == before
    leave_room_for(hand, resource.RLIM_INFINITY)
    way.press("facts_bike_tags_entry")
    hand.wait_focus("facts_bike_tags_entry")
    hand.keys("Tab")
    hand.wait(lambda _: export(hand.library)["records"]["bike"][0]["tags"] == "shop", "the fact kept")
    assert hand.text_of("facts_bike_tags_entry") == "shop"
    assert not hand.is_in_sight("facts_bike_tags_said")
    way.go("adjusters")
    way.count("count_close_tool", 1)
    hand.wait(lambda sight: (find(sight, "count_verb") or {"text": ""})["text"] == "Keep as found 1", "counting again")
    assert hand.trouble() == ""
