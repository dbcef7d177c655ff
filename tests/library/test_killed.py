from __future__ import annotations

import os

import pytest

from tests.library.garden import Bike
from tests.library.help import opened
from tests.library.killing import cut_off_at, kill_one, survivors
from workbench.actions.desk import Desk

can_cut_off = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system has no limits on files")


def test_a_killed_program_loses_nothing_it_had_kept_and_keeps_nothing_half(tmp_path):
    path = tmp_path / "garden.trailbench"
    for lines in (1, 4, 9):
        last = kill_one(path, lines)
        bikes = survivors(path, last)
    assert bikes > 2
    with opened(path) as library:
        desk = Desk(library)
        assert desk.undo().from_earlier_start
        assert desk.ask(lambda reader: reader.count(Bike)) == bikes - 1


@can_cut_off
def test_a_library_whose_making_is_cut_off_is_made_at_the_next_start(tmp_path):
    for path in cut_off_at("open_garden", tmp_path, [0, 512, 4_095, 4_096, 8_192, 20_480, 40_960, 61_440, 81_920]):
        assert survivors(path, "") == 0


@can_cut_off
def test_a_deed_cut_off_in_the_middle_of_a_write_leaves_nothing_of_itself(tmp_path):
    for path in cut_off_at("write_for_ever", tmp_path, list(range(150_000, 250_000, 13_001))):
        assert survivors(path, "") > 0
