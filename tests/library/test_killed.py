from __future__ import annotations

from tests.library.garden import Bike
from tests.library.help import opened
from tests.library.killing import kill_one, survivors
from workbench.actions.desk import Desk


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
