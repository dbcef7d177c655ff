"""Backups of a working library: made while it is open, checked, thinned out, restored and taken back."""

from __future__ import annotations

import os
import shutil
import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from datetime import UTC, datetime, timedelta

import pytest

from tests.fixtures import a_bike, everything, make_desk
from workbench.actions.people import add_person
from workbench.library import backup_files
from workbench.library.backup import damage_of
from workbench.library.backup_files import BY_HAND, BY_ITSELF, DAMAGED, backups_of, put_in_place
from workbench.library.dump import check
from workbench.library.library import open_library
from workbench.library.rotation import NEWEST
from workbench.library.tables import schema
from workbench.model.errors import LibraryDamaged, LibraryError, LibraryLocked, LibraryUnreachable
from workbench.model.person import Person

NAME = "bench.trailbench"


class Watch:
    """A clock the test turns on."""

    def __init__(self) -> None:
        self.moment = datetime(2031, 5, 14, 9, 0, tzinfo=UTC)

    def __call__(self) -> str:
        return self.moment.isoformat()

    def wait(self, **stretch: int) -> None:
        self.moment += timedelta(**stretch)


@pytest.fixture
def watch():
    return Watch()


@pytest.fixture
def desk(tmp_path, watch):
    with make_desk(tmp_path, now=watch) as desk:
        yield desk


def add(desk, name):
    return desk.do(f"Add {name}", add_person(name))


def spoil(path, at=0.5):
    """Overwrite some pages in the middle, as a dying disk does."""
    size = path.stat().st_size
    with path.open("r+b") as file:
        file.seek(int(size * at) // 4096 * 4096)
        file.write(b"\xff" * 8192)


def files(tmp_path):
    return sorted(path.name for path in (tmp_path / "backups").glob("*"))


def test_a_backup_says_when_why_how_large_and_how_many_bikes(desk, tmp_path):
    a_bike(desk)
    made = desk.backups.make()
    assert (made.at, made.kind, made.bikes, made.trouble) == ("2031-05-14T09:00:00+00:00", BY_HAND, 1, "")
    assert made.size_bytes == (tmp_path / "backups" / made.name).stat().st_size
    assert files(tmp_path) == ["bench 2031-05-14 090000 by hand.trailbench"]
    assert desk.backups.all() == (made,)


def test_a_backup_is_a_library_of_its_own_with_everything_kept_so_far(desk, tmp_path, watch):
    a_bike(desk)
    made = desk.backups.make()
    library = open_library(tmp_path / "backups" / made.name, schema, now=watch)
    try:
        assert check(library) == []
    finally:
        library.close()


def test_two_backups_within_a_second_do_not_take_each_others_name(desk):
    add(desk, "Ada")
    first, second = desk.backups.make(), desk.backups.make()
    assert {one.name for one in desk.backups.all()} == {first.name, second.name}


def test_backups_of_another_library_in_the_same_folder_are_left_alone(desk, tmp_path, watch):
    with make_desk(tmp_path / "other", now=watch) as other:
        add(other, "Bo")
        made = other.backups.make()
    (tmp_path / "backups").mkdir()
    shutil.copy(tmp_path / "other" / "backups" / made.name, tmp_path / "backups" / made.name.replace("bench", "shop"))
    assert desk.backups.all() == ()


def test_a_backup_is_due_once_something_was_kept_and_half_an_hour_has_gone(desk, watch):
    assert not desk.backups.is_due()
    add(desk, "Ada")
    assert desk.backups.is_due()
    desk.backups.make(BY_ITSELF)
    add(desk, "Bo")
    assert not desk.backups.is_due()
    assert desk.backups.is_due(is_closing=True)
    watch.wait(minutes=31)
    assert desk.backups.is_due()
    desk.backups.make(BY_ITSELF)
    watch.wait(days=3)
    assert not desk.backups.is_due()
    assert not desk.backups.is_due(is_closing=True)


def test_typing_into_an_entry_and_undoing_make_a_backup_due_too(desk, watch):
    add(desk, "Ada")
    for move in (lambda: desk.keep_draft("sag", "{}", bike_id=None), desk.undo):
        desk.backups.make(BY_ITSELF)
        watch.wait(minutes=31)
        assert not desk.backups.is_due()
        move()
        assert desk.backups.is_due()


def test_whether_one_is_due_is_still_known_after_a_restart(tmp_path, watch):
    with make_desk(tmp_path, now=watch) as desk:
        add(desk, "Ada")
        desk.backups.make(BY_ITSELF)
    watch.wait(hours=2)
    with make_desk(tmp_path, now=watch) as desk:
        assert not desk.backups.is_due()
        add(desk, "Bo")
        assert desk.backups.is_due()


def test_old_ones_are_thinned_out_and_those_made_by_hand_stay(desk, watch, tmp_path):
    add(desk, "Ada")
    by_hand = desk.backups.make()
    for _ in range(NEWEST + 5):
        watch.wait(minutes=10)
        desk.backups.make(BY_ITSELF)
    kept = desk.backups.all()
    assert [one.kind for one in kept].count(BY_ITSELF) == NEWEST
    assert by_hand in kept
    assert not list((tmp_path / "backups").glob("*.part"))


def test_a_damaged_library_makes_no_backup_and_costs_no_good_one(desk, watch, tmp_path):
    a_bike(desk)
    for _ in range(NEWEST + 2):
        watch.wait(days=1)
        desk.backups.make(BY_ITSELF)
    before = files(tmp_path)
    desk._library.raw.execute("PRAGMA foreign_keys = OFF")
    desk._library.raw.execute("DELETE FROM person")
    with pytest.raises(LibraryDamaged, match="contradicts itself"):
        desk.backups.make(BY_ITSELF)
    assert files(tmp_path) == before


def test_a_damaged_backup_never_pushes_a_good_one_out(desk, watch, tmp_path):
    add(desk, "Ada")
    good = desk.backups.make(BY_ITSELF)
    for _ in range(NEWEST + 5):
        watch.wait(minutes=1)
        made = desk.backups.make(BY_ITSELF)
        (tmp_path / "backups" / made.name).write_bytes(b"torn" * 100)
    assert good in desk.backups.all()


def test_a_check_reads_every_page(desk, tmp_path):
    a_bike(desk)
    made = desk.backups.make()
    assert desk.backups.check(made.name) == made
    spoil(tmp_path / "backups" / made.name)
    assert desk.backups.check(made.name).trouble


def test_a_restore_brings_everything_back_and_can_be_taken_back(desk, watch):
    bike = a_bike(desk)
    before = everything(desk)
    made = desk.backups.make()
    watch.wait(minutes=5)
    add(desk, "Later")
    desk.keep_draft("sag", '{"sag": "14"}', bike_id=bike.id)
    after = everything(desk)
    heard = []
    desk.listen(heard.append)
    aside = desk.restore_backup(made.name)
    assert everything(desk) == before
    assert desk.drafts() == ()
    assert "person" in heard[-1].tables
    assert heard[-1].drafts
    assert check(desk._library) == []
    add(desk, "After the restore")
    watch.wait(minutes=5)
    desk.restore_backup(aside.name)
    assert everything(desk) == after
    assert [draft.body for draft in desk.drafts()] == ['{"sag": "14"}']
    assert check(desk._library) == []


def test_a_restore_lasts_beyond_a_restart_and_deeds_go_on_after_it(tmp_path, watch):
    with make_desk(tmp_path, now=watch) as desk:
        add(desk, "Ada")
        made = desk.backups.make()
        add(desk, "Bo")
        desk.restore_backup(made.name)
        assert desk.undo_label() == "Add Ada"
        add(desk, "Cy")
    with make_desk(tmp_path, now=watch) as desk:
        assert sorted(one.name for one in everything(desk)[Person]) == ["Ada", "Cy"]
        assert check(desk._library) == []


def test_a_damaged_backup_is_refused_and_nothing_changes(desk, tmp_path):
    a_bike(desk)
    made = desk.backups.make()
    add(desk, "Later")
    before, folder = everything(desk), files(tmp_path)
    spoil(tmp_path / "backups" / made.name)
    with pytest.raises(LibraryDamaged, match="Nothing was changed"):
        desk.restore_backup(made.name)
    assert everything(desk) == before
    assert files(tmp_path) == folder


def test_a_backup_of_a_later_version_is_refused(desk, tmp_path):
    add(desk, "Ada")
    made = desk.backups.make()
    with closing(sqlite3.connect(tmp_path / "backups" / made.name)) as file, file:
        file.execute("UPDATE alembic_version SET version_num = '9999'")
    assert desk.backups.all()[0].is_newer
    with pytest.raises(LibraryError, match="later Trailbench"):
        desk.restore_backup(made.name)


def test_a_backup_that_went_away_is_said_to_be_gone(desk, tmp_path):
    add(desk, "Ada")
    made = desk.backups.make()
    (tmp_path / "backups" / made.name).unlink()
    with pytest.raises(LibraryUnreachable, match="any more"):
        desk.restore_backup(made.name)


def test_only_so_many_copies_from_before_a_restore_are_kept(desk, watch):
    add(desk, "Ada")
    made = desk.backups.make()
    for _ in range(backup_files._KINDS.index(DAMAGED) + 4):
        watch.wait(minutes=1)
        desk.restore_backup(made.name)
    kinds = [one.kind for one in desk.backups.all()]
    assert kinds.count(backup_files.BEFORE_RESTORE) == 5
    assert kinds.count(BY_HAND) == 1


def test_a_copy_elsewhere_is_a_library_too(desk, tmp_path, watch):
    a_bike(desk)
    made = desk.backups.make()
    target = tmp_path / "stick" / "copy.trailbench"
    desk.backups.save_copy(made.name, target)
    assert damage_of(target, with_references=True) == ""
    with pytest.raises(LibraryError, match="library itself"):
        desk.backups.save_copy(made.name, tmp_path / NAME)


@pytest.mark.skipif(os.name != "posix", reason="sizes of files are limited so on POSIX only")
def test_a_full_disk_leaves_no_half_backup_and_the_good_ones_alone(desk, tmp_path, watch):
    import resource

    a_bike(desk)
    desk.backups.make()
    watch.wait(minutes=31)
    before = files(tmp_path)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, limits[1]))
    try:
        with pytest.raises(LibraryUnreachable):
            desk.backups.make()
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert files(tmp_path) == before
    assert desk.backups.make().trouble == ""


def test_a_damaged_library_that_is_not_open_gives_way_to_a_backup(tmp_path, watch):
    with make_desk(tmp_path, now=watch) as desk:
        a_bike(desk)
        made = desk.backups.make()
        before = everything(desk)
    path = tmp_path / NAME
    path.write_bytes(path.read_bytes()[:5000])
    torn = path.read_bytes()
    (tmp_path / f"{NAME}-wal").write_bytes(b"left over")
    aside = put_in_place(path, made.name, now=watch())
    assert aside.read_bytes() == torn
    assert aside.with_name(aside.name + "-wal").read_bytes() == b"left over"
    with make_desk(tmp_path, now=watch) as desk:
        assert everything(desk) == before
        assert check(desk._library) == []
        assert {one.kind for one in desk.backups.all()} == {BY_HAND, DAMAGED}


def test_a_library_that_is_gone_comes_back_from_its_backup(tmp_path, watch):
    with make_desk(tmp_path, now=watch) as desk:
        a_bike(desk)
        made = desk.backups.make()
    (tmp_path / NAME).unlink()
    assert [one.name for one in backups_of(tmp_path / NAME)] == [made.name]
    put_in_place(tmp_path / NAME, made.name, now=watch())
    with make_desk(tmp_path, now=watch) as desk:
        assert len(everything(desk)) > 0
        assert check(desk._library) == []


@pytest.mark.skipif(os.name != "posix", reason="the lock is looked at without opening the file on POSIX only")
def test_a_library_open_in_another_process_is_not_replaced(tmp_path, watch):
    import subprocess
    import sys

    with make_desk(tmp_path, now=watch) as desk:
        add(desk, "Ada")
        made = desk.backups.make()
    code = (
        "import sys; from tests.fixtures import make_desk; from pathlib import Path\n"
        "with make_desk(Path(sys.argv[1])): print('open', flush=True); sys.stdin.read()"
    )
    with subprocess.Popen(
        [sys.executable, "-c", code, str(tmp_path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as other:
        assert other.stdout.readline() == b"open\n"
        before = (tmp_path / NAME).read_bytes()
        with pytest.raises(LibraryLocked):
            put_in_place(tmp_path / NAME, made.name, now=watch())
        assert (tmp_path / NAME).read_bytes() == before
        other.stdin.close()


def test_a_copy_becomes_a_backup_once_it_was_read_through_and_holds_what_was_kept_before_it(desk, tmp_path, watch):
    add(desk, "Ada")
    before = everything(desk)
    begun = desk.backups.begin(BY_ITSELF)
    assert desk.backups.all() == ()
    add(desk, "Bo")
    with ThreadPoolExecutor(1) as elsewhere:
        found = elsewhere.submit(begun.damage).result()
    made = desk.backups.keep(begun, found)
    assert [one.name for one in desk.backups.all()] == [made.name]
    assert [one.name for one in (tmp_path / "backups").iterdir()] == [made.name]
    watch.wait(minutes=31)
    assert desk.backups.is_due(), "what came after the copy is not in it"
    after = everything(desk)
    desk.restore_backup(made.name)
    assert everything(desk) == before != after


def test_a_copy_in_which_something_is_wrong_is_let_go(desk, tmp_path):
    add(desk, "Ada")
    begun = desk.backups.begin(BY_ITSELF)
    spoil(begun.copy)
    found = begun.damage()
    assert found
    with pytest.raises(LibraryDamaged):
        desk.backups.keep(begun, found)
    assert list((tmp_path / "backups").iterdir()) == []
    assert desk.backups.is_due()
