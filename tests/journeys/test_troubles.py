"""A library that cannot be opened, where there is a screen: a page says what is wrong, and each way out is walked."""

from __future__ import annotations

import resource
import sqlite3
from contextlib import closing

import pytest

from tests.fixtures import a_bike
from tests.journeys.hand import Hand, export, find
from tests.journeys.openings import opening
from tests.journeys.ways import Keyboard, Mouse
from workbench.library.backup_files import backups_of
from workbench.library.opening import APPLICATION_ID

pytestmark = [pytest.mark.window, pytest.mark.journey]
SAID = "trouble_text"


def backed_up(hand: Hand) -> None:
    """A library with a bike, and a backup of it."""
    with opening(hand) as desk:
        a_bike(desk, name="Heron 140")
        desk.backups.make()


def test_a_damaged_library_is_restored_by_keyboard_and_the_work_goes_on(hand):
    backed_up(hand)
    sound = hand.library.read_bytes()
    hand.library.write_bytes(sound[:3000])
    way = Keyboard(hand)
    hand.start("trouble")
    assert "damaged" in hand.text_of(SAID)
    hand.wait_focus("trouble_restore")
    hand.keys("Return")
    hand.wait(lambda sight: sight["window"] == "window", "the garage is open")
    hand.sees("Heron 140")
    assert [bike["name"] for bike in export(hand.library)["records"]["bike"]] == ["Heron 140"]
    hand.keys("ctrl+shift+b")
    hand.wait_for("backups_table")
    kinds = [one.kind for one in backups_of(hand.library)]
    assert sorted(kinds) == ["as it was found", "by hand"]
    way.press("backups_make")
    hand.sees("Made and checked: 1 bike")
    assert hand.trouble() == ""


def test_a_library_that_is_gone_is_restored_by_mouse(hand):
    backed_up(hand)
    hand.library.unlink()
    hand.start("trouble")
    assert "backups of it lie beside it" in hand.text_of(SAID)
    Mouse(hand).press("trouble_restore")
    hand.wait(lambda sight: sight["window"] == "window", "the garage is open")
    hand.sees("Heron 140")


def foreign(path):
    path.write_bytes(b"somebody's holiday pictures" * 100)


def newer(path):
    with closing(sqlite3.connect(path)) as other, other:
        other.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        other.execute("CREATE TABLE alembic_version (version_num TEXT)")
        other.execute("INSERT INTO alembic_version VALUES ('9999')")


@pytest.mark.parametrize(("make", "said", "code"), [(foreign, "not a Trailbench library", 5), (newer, "later", 4)])
def test_what_cannot_be_opened_is_said_and_left_as_it_was(hand, make, said, code):
    make(hand.library)
    before = hand.library.read_bytes()
    hand.start("trouble")
    assert said in hand.text_of(SAID)
    Mouse(hand).press("trouble_quit")
    assert hand.wait_for_end() == code
    assert hand.library.read_bytes() == before
    assert hand.trouble().startswith("trailbench: ")
    assert hand.trouble().count("\n") == 1


def test_what_stood_in_the_way_is_cleared_and_tried_again(tmp_path):
    (tmp_path / "shop").write_text("no folder")
    hand = Hand(tmp_path / "shop" / "garage.trailbench", tmp_path / "stderr.txt")
    try:
        hand.start("trouble")
        (tmp_path / "shop").unlink()
        Mouse(hand).press("trouble_retry")
        hand.wait(lambda sight: sight["window"] == "window", "the garage is open")
        hand.sees("The garage is empty")
    finally:
        hand.close()


def test_a_disk_too_full_for_a_backup_is_said_and_nothing_is_lost(hand):
    backed_up(hand)
    hand.start()
    hand.keys("ctrl+shift+b")
    hand.wait_for("backups_make")
    resource.prlimit(hand.process_id(), resource.RLIMIT_FSIZE, (20_000, resource.RLIM_INFINITY))
    Mouse(hand).press("backups_make")
    hand.wait(lambda sight: "free space" in (find(sight, "banner_words") or {"text": ""})["text"], "said in the notice")
    resource.prlimit(hand.process_id(), resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    Mouse(hand).press("backups_make")
    hand.sees("Made and checked: 1 bike")
