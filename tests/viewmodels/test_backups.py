from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from tests.fixtures import a_bike, everything, make_desk
from workbench.actions.desk import Backup
from workbench.actions.people import add_person
from workbench.library import backups
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.person import Person
from workbench.viewmodels.backups import BackupKeeper, BackupsViewModel, resolve_row, size_text
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.window import WindowViewModel


class Sheet:
    """The sheet over a real library, on a clock the test turns on."""

    def __init__(self, desk, clock):
        self.desk, self.clock = desk, clock
        self.bench = Bench(desk)
        self.model = BackupsViewModel(desk, self.bench)
        self.problems = []
        self.model.refused.connect(self.problems.append)
        self.model.show()

    @property
    def state(self):
        return self.model.state

    def folder(self) -> Path:
        return Path(self.state.folder)


@pytest.fixture
def clock():
    moment = [datetime(2031, 5, 14, 9, 0, tzinfo=UTC)]

    def now(**wait):
        moment[0] += timedelta(**wait)
        return moment[0].isoformat()

    return now


@pytest.fixture
def sheet(tmp_path, clock):
    with make_desk(tmp_path, now=clock) as desk:
        yield Sheet(desk, clock)


def test_an_empty_folder_offers_nothing_to_restore(sheet):
    assert sheet.state.rows == ()
    assert not sheet.state.can_restore


def test_a_backup_made_now_is_listed_picked_and_said(sheet):
    a_bike(sheet.desk)
    sheet.model.make()
    (row,) = sheet.state.rows
    assert (row.when, row.why, row.bikes, row.checked) == ("14 May 2031, 09:00", "by hand", "1", "when it was made")
    assert sheet.state.picked == row.key
    assert sheet.state.said.startswith("Made and checked: 1 bike, ")


def test_a_restore_is_asked_about_first_and_can_be_taken_back(sheet):
    a_bike(sheet.desk)
    sheet.model.make()
    before = everything(sheet.desk)
    sheet.desk.do("Add Bo", add_person("Bo"))
    after = everything(sheet.desk)
    sheet.model.ask_restore()
    assert "14 May 2031, 09:00, with 1 bike?" in sheet.state.question
    sheet.model.leave_it()
    assert sheet.state.question == ""
    assert everything(sheet.desk) == after
    sheet.model.ask_restore()
    sheet.model.restore()
    assert everything(sheet.desk) == before
    assert "Restored as it was on 14 May 2031" in sheet.state.said
    assert sheet.state.take_back
    sheet.model.take_back()
    assert everything(sheet.desk) == after
    assert sheet.state.take_back == ""
    assert [row.why for row in sheet.state.rows].count("before a restore") == 2


def test_picking_another_backup_takes_the_question_back(sheet, clock):
    a_bike(sheet.desk)
    sheet.model.make()
    clock(minutes=1)
    sheet.model.make()
    sheet.model.ask_restore()
    sheet.model.pick(sheet.state.rows[1].key)
    assert sheet.state.question == ""
    assert sheet.state.picked == sheet.state.rows[1].key


def test_a_damaged_backup_is_shown_so_and_cannot_be_restored(sheet, clock):
    a_bike(sheet.desk)
    sheet.model.make()
    clock(minutes=1)
    sheet.model.make()
    bad, good = sheet.state.rows
    path = sheet.folder() / bad.key
    path.write_bytes(path.read_bytes()[:-9000])
    sheet.model.check_all()
    assert [row.checked for row in sheet.state.rows] == ["damaged", "whole, just now"]
    assert sheet.state.said == "Checked 2 backups: 1 damaged."
    sheet.model.pick(bad.key)
    assert not sheet.state.can_restore
    sheet.model.ask_restore()
    assert sheet.state.question == ""
    sheet.model.pick(good.key)
    assert sheet.state.can_restore


def test_a_copy_is_saved_elsewhere_or_the_reason_is_said(sheet, tmp_path):
    a_bike(sheet.desk)
    sheet.model.make()
    assert sheet.model.save_copy(tmp_path / "stick" / sheet.model.copy_name())
    assert "checked there" in sheet.state.said
    (tmp_path / "file").write_text("in the way")
    assert not sheet.model.save_copy(tmp_path / "file" / "copy.trailbench")
    assert "could not be written" in sheet.problems[-1].text


def test_what_goes_wrong_with_a_backup_is_said_and_the_list_stays(sheet):
    a_bike(sheet.desk)
    sheet.model.make()
    Path(sheet.state.folder, sheet.state.picked).unlink()
    sheet.model.restore()
    assert "any more" in sheet.problems[-1].text
    assert sheet.state.rows == ()


def test_the_bench_is_set_anew_after_a_restore(sheet):
    sheet.desk.do("Add Ada", add_person("Ada"))
    sheet.model.make()
    window = WindowViewModel(sheet.desk, sheet.bench)
    window.show()
    later = a_bike(sheet.desk)
    sheet.bench.put_bike(later.id)
    assert window.state.bike_name == later.name
    sheet.model.restored.connect(window.start_over)
    sheet.model.restore()
    assert window.state.bike_id is None
    assert window.state.rows == ()


def test_one_of_a_later_version_is_said_to_be_so():
    row = resolve_row(Backup("a", "2031-05-14T09:00:00+00:00", "by hand", 400, 2, is_newer=True), None)
    assert (row.checked, row.is_usable) == ("by a later version", False)


@pytest.mark.parametrize(("size", "said"), [(0, "1\u2009kB"), (4096, "4\u2009kB"), (1_234_567, "1.2\u2009MB")])
def test_sizes_are_said_in_plain_units(size, said):
    assert size_text(size) == said


def test_the_keeper_makes_one_when_due_and_the_last_at_the_end(sheet, clock):
    keeper = BackupKeeper(sheet.desk)
    keeper.look()
    assert sheet.desk.backups.all() == ()
    sheet.desk.do("Add Ada", add_person("Ada"))
    keeper.look()
    keeper.look()
    assert [one.kind for one in sheet.desk.backups.all()] == ["by itself"]
    sheet.desk.do("Add Bo", add_person("Bo"))
    keeper.look()
    assert len(sheet.desk.backups.all()) == 1
    keeper.finish()
    assert len(sheet.desk.backups.all()) == 2
    keeper.finish()
    assert len(sheet.desk.backups.all()) == 2


def test_the_keeper_says_once_that_no_backup_can_be_made(sheet):
    said = []
    keeper = BackupKeeper(sheet.desk)
    keeper.failed.connect(said.append)
    Path(sheet.state.folder).write_text("in the way")
    sheet.desk.do("Add Ada", add_person("Ada"))
    keeper.look()
    keeper.look()
    assert len(said) == 1
    assert said[0].startswith("No backup could be made.")
    Path(sheet.state.folder).unlink()
    keeper.look()
    assert len(sheet.desk.backups.all()) == 1


@pytest.fixture
def large(monkeypatch):
    """Every library counts as large."""
    monkeypatch.setattr(backups, "LARGE_BYTES", 0)


def test_a_large_copy_is_read_through_while_work_goes_on(sheet, large):
    keeper = BackupKeeper(sheet.desk)
    sheet.desk.do("Add Ada", add_person("Ada"))
    keeper.look()
    assert sheet.desk.backups.all() == (), "it is none before it was read through"
    sheet.desk.do("Add Bo", add_person("Bo"))
    keeper._reading.join()
    keeper.look()
    assert [one.kind for one in sheet.desk.backups.all()] == ["by itself"]
    keeper.finish()
    assert len(sheet.desk.backups.all()) == 2, "the last one holds what came after the copy"


def test_work_that_ends_waits_for_the_copy_under_way(sheet, large):
    keeper = BackupKeeper(sheet.desk)
    sheet.desk.do("Add Ada", add_person("Ada"))
    keeper.look()
    keeper.finish()
    assert len(sheet.desk.backups.all()) == 1
    assert [one.name for one in sheet.folder().iterdir()] == [sheet.desk.backups.all()[0].name]


def test_a_large_copy_that_reads_damaged_is_said_once_and_leaves_nothing(sheet, large, monkeypatch):
    monkeypatch.setattr(backups, "damage_of", lambda *_args, **_more: "a torn page")
    said = []
    keeper = BackupKeeper(sheet.desk)
    keeper.failed.connect(said.append)
    sheet.desk.do("Add Ada", add_person("Ada"))
    for _ in range(2):
        keeper.look()
        keeper._reading.join()
        keeper.look()
    assert len(said) == 1
    assert "a torn page" in said[0]
    assert list(sheet.folder().iterdir()) == []


def test_a_look_at_a_library_keeps_nothing_and_makes_no_backup(tmp_path, clock):
    with make_desk(tmp_path, now=clock) as desk:
        a_bike(desk)
    from workbench.actions.desk import Desk

    library = open_library(tmp_path / "bench.trailbench", schema, now=clock, read_only=True)
    try:
        desk = Desk(library)
        bench = Bench(desk)
        bench.put_bike(everything(desk)[Person][0].id)
        assert not desk.backups.is_due(is_closing=True)
        assert not BackupsViewModel(desk, bench).state.can_keep
    finally:
        library.close()
    assert not (tmp_path / "backups").exists()
