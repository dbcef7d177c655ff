from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.library.garden import Bike
from tests.library.help import ROOT, crashed_copy, open_folder, open_garden, opened, prints, without_rights
from workbench.actions.desk import Desk
from workbench.library.opening import APPLICATION_ID
from workbench.library.upgrade import SHIPPED, Migrations
from workbench.model.errors import (
    LibraryDamaged,
    LibraryError,
    LibraryLocked,
    LibraryNewer,
    LibraryUnreachable,
    NotALibrary,
)

LATER = Migrations("0007", SHIPPED.folder)

HOLDER = """
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tests.library.help import open_garden
library = open_garden(sys.argv[1])
print("open", flush=True)
sys.stdin.readline()
"""


def refused(path: Path | str, kind: type[LibraryError], folder: Path, **options) -> str:
    """The sentence of the refusal; the folder is byte for byte as before."""
    before = prints(folder)
    with pytest.raises(LibraryError) as caught:
        open_garden(path, **options)
    assert type(caught.value) is kind
    assert prints(folder) == before
    sentence = str(caught.value)
    assert sentence.endswith(".")
    assert "\n" not in sentence
    return sentence


def test_a_new_library_is_made_with_its_folder_marked_and_stamped(tmp_path):
    path = tmp_path / "some" / "where" / "garden.trailbench"
    with opened(path) as library:
        assert library.raw.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)
        assert library.raw.execute("SELECT version_num FROM alembic_version").fetchall() == [(SHIPPED.head,)]
    assert int.from_bytes(path.read_bytes()[68:72], "big") == APPLICATION_ID


def test_an_open_library_flushes_every_commit_and_is_held_alone(tmp_path):
    with opened(tmp_path / "a") as library:
        pragmas = ("journal_mode", "synchronous", "foreign_keys", "locking_mode", "trusted_schema", "busy_timeout")
        found = {name: library.raw.execute(f"PRAGMA {name}").fetchone()[0] for name in pragmas}
        assert list(found.values()) == ["wal", 2, 1, "exclusive", 0, 0]
        assert not (tmp_path / "a-shm").exists()


def test_an_address_a_text_and_a_path_name_the_same_library(tmp_path):
    path = tmp_path / "a b#c?d%20.trailbench"
    for location in (path, str(path), f"sqlite:///{path}"):
        with opened(location) as library:
            assert library.path == path
            with library.reader() as reader:
                assert reader.count(Bike) == 0
    assert [p.name for p in tmp_path.iterdir()] == [path.name]


def test_other_addresses_and_empty_paths_are_refused(tmp_path):
    for location in ("postgresql://host/name", "sqlite:///", "", "a\x00b"):
        refused(location, LibraryUnreachable, tmp_path)


def test_a_folder_is_no_library(tmp_path):
    assert "a folder" in refused(tmp_path, NotALibrary, tmp_path)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes here")
def test_a_pipe_is_no_library_and_does_not_block(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    refused(tmp_path / "pipe", NotALibrary, tmp_path / "nothing")


def test_a_text_file_is_no_library(tmp_path):
    path = tmp_path / "notes.txt"
    path.write_text("the fork was too soft\n" * 50)
    assert "left as it is" in refused(path, NotALibrary, tmp_path)


@pytest.mark.parametrize("journal", ["DELETE", "WAL"])
def test_a_foreign_database_is_no_library_and_stays_as_it_is(tmp_path, journal):
    live = tmp_path / "live.db"
    connection = sqlite3.connect(live, isolation_level=None)
    connection.execute(f"PRAGMA journal_mode = {journal}").fetchall()
    connection.execute("CREATE TABLE alembic_version (version_num TEXT)")
    connection.execute("INSERT INTO alembic_version VALUES ('0001')")
    folder = tmp_path / "crashed"
    folder.mkdir()
    for path in tmp_path.glob("live.db*"):
        (folder / path.name).write_bytes(path.read_bytes())
    connection.close()
    refused(folder / "live.db", NotALibrary, folder)


def test_a_cut_off_file_is_damaged(tmp_path):
    path = tmp_path / "a"
    opened_once(path)
    path.write_bytes(path.read_bytes()[:5000])
    assert "backup" in refused(path, LibraryDamaged, tmp_path)


def test_a_file_full_of_noise_behind_its_head_is_damaged(tmp_path):
    path = tmp_path / "a"
    opened_once(path)
    content = path.read_bytes()
    path.write_bytes(content[:100] + b"\xa5" * (len(content) - 100))
    refused(path, LibraryDamaged, tmp_path)


def test_a_library_without_a_schema_number_is_damaged(tmp_path):
    path = tmp_path / "a"
    opened_once(path)
    connection = sqlite3.connect(path, isolation_level=None)
    connection.execute("DELETE FROM alembic_version")
    connection.execute("PRAGMA journal_mode = DELETE").fetchall()
    connection.close()
    refused(path, LibraryDamaged, tmp_path)


def test_a_newer_library_is_refused_and_stays_byte_for_byte(tmp_path):
    path = tmp_path / "a"
    opened_once(path, migrations=LATER)
    sentence = refused(path, LibraryNewer, tmp_path)
    assert "0007" in sentence
    assert SHIPPED.head in sentence


def test_a_newer_library_killed_with_work_in_its_side_file_stays_byte_for_byte(tmp_path):
    (tmp_path / "live").mkdir()
    with opened(tmp_path / "live" / "a", migrations=LATER) as library:
        Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "last words")))
        copy = crashed_copy(library, tmp_path / "crashed")
    assert copy.with_name("a-wal").stat().st_size > 0
    refused(copy, LibraryNewer, copy.parent)
    with opened(copy, migrations=LATER) as library, library.reader() as reader:
        assert reader.need(Bike, "b").name == "last words"


def test_an_empty_file_becomes_a_library(tmp_path):
    path = tmp_path / "a"
    path.touch()
    opened_once(path)
    with opened(path) as library:
        assert Desk(library).ask(lambda reader: reader.find(Bike)) == ()


def test_a_missing_library_is_not_made_when_only_asked_for(tmp_path):
    for options in ({"create": False}, {"read_only": True}):
        refused(tmp_path / "sub" / "a", LibraryUnreachable, tmp_path, **options)
    assert list(tmp_path.iterdir()) == []


def test_a_library_open_in_this_process_is_locked(tmp_path):
    with opened(tmp_path / "a") as library:
        with pytest.raises(LibraryLocked):
            open_garden(tmp_path / "a")
        Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "still works")))
    opened_once(tmp_path / "a")


def test_a_library_open_in_another_process_is_locked_until_that_is_killed(tmp_path):
    path = tmp_path / "a"
    opened_once(path)
    with held(path):
        assert "already open" in refused(path, LibraryLocked, tmp_path)
    opened_once(path)


def test_a_library_open_elsewhere_is_locked_for_a_mere_look_too(tmp_path):
    path = tmp_path / "a"
    opened_once(path)
    with held(path):
        refused(path, LibraryLocked, tmp_path, read_only=True)


def test_asking_twice_in_this_process_does_not_give_the_file_free(tmp_path):
    path = tmp_path / "a"
    with opened(path):
        with pytest.raises(LibraryLocked):
            open_garden(path)
        script = "import sys; from tests.library.help import open_garden; open_garden(sys.argv[1])"
        other = subprocess.run([sys.executable, "-c", script, str(path)], cwd=ROOT, capture_output=True, text=True)
        assert "LibraryLocked" in other.stderr


def test_a_link_leads_to_the_library_and_what_a_crash_left_beside_it(tmp_path):
    (tmp_path / "live").mkdir()
    with opened(tmp_path / "live" / "a") as library:
        Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "Tarn")))
        copy = crashed_copy(library, tmp_path / "crashed")
    (tmp_path / "link").symlink_to(copy)
    for options in ({"read_only": True}, {}):
        with opened(tmp_path / "link", **options) as library, library.reader() as reader:
            assert reader.need(Bike, "b").name == "Tarn"


def test_a_crash_is_recovered_where_no_index_file_can_be_made(tmp_path):
    (tmp_path / "live").mkdir()
    with opened(tmp_path / "live" / "a") as library:
        Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "Tarn")))
        copy = crashed_copy(library, tmp_path / "crashed")
    copy.with_name("a-shm").mkdir()  # in its way, as a full disk would be
    with opened(copy) as library, library.reader() as reader:
        assert reader.need(Bike, "b").name == "Tarn"


def test_a_new_library_on_a_full_disk_is_unreachable_and_later_made_after_all(tmp_path):
    resource = pytest.importorskip("resource", reason="this system has no limits on files")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, hard))
    try:
        with pytest.raises(LibraryUnreachable):
            open_garden(tmp_path / "a")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    opened_once(tmp_path / "a")


def test_a_path_below_a_file_is_unreachable(tmp_path):
    (tmp_path / "file").write_text("x")
    refused(tmp_path / "file" / "a", LibraryUnreachable, tmp_path)


def test_an_endless_file_name_is_unreachable(tmp_path):
    refused(tmp_path / ("n" * 10_000), LibraryUnreachable, tmp_path)


@pytest.mark.skipif(not hasattr(os, "setresuid"), reason="rights work differently here")
@pytest.mark.parametrize("what", ["file", "folder"])
def test_a_read_only_file_or_folder_is_refused_but_can_be_looked_at(what):
    with open_folder() as folder:
        path = folder / "a"
        with opened(path) as library:
            Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "Tarn")))
        path.chmod(0o444 if what == "file" else 0o666)
        folder.chmod(0o777 if what == "file" else 0o555)
        with without_rights():
            assert "read-only" in refused(path, LibraryUnreachable, folder)
            before = prints(folder)
            with opened(path, read_only=True) as library:
                desk = Desk(library)
                assert desk.ask(lambda reader: reader.need(Bike, "b").name) == "Tarn"
                with pytest.raises(LibraryUnreachable, match="reading only"):
                    desk.do("Add bike", lambda gate: gate.put(Bike("c", "no")))
            assert prints(folder) == before
        folder.chmod(0o755)


@pytest.mark.skipif(not hasattr(os, "setresuid"), reason="rights work differently here")
def test_a_read_only_folder_with_what_a_crash_left_can_be_looked_at():
    with open_folder() as folder:
        (folder / "live").mkdir()
        with opened(folder / "live" / "a") as library:
            Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "Tarn")))
            copy = crashed_copy(library, folder / "crashed")
        copy.parent.chmod(0o555)
        with without_rights():
            refused(copy, LibraryUnreachable, copy.parent)
            before = prints(copy.parent)
            with opened(copy, read_only=True) as library, library.reader() as reader:
                assert reader.need(Bike, "b").name == "Tarn"
            assert prints(copy.parent) == before
        copy.parent.chmod(0o755)


@pytest.mark.skipif(not hasattr(os, "setresuid"), reason="rights work differently here")
def test_a_file_or_folder_closed_to_us_is_unreachable():
    with open_folder() as folder:
        opened_once(folder / "a")
        (folder / "a").chmod(0o600)
        with without_rights():
            with pytest.raises(LibraryUnreachable, match="rights"):
                open_garden(folder / "a")
            with pytest.raises(LibraryUnreachable, match="cannot be made"):
                open_garden(folder / "sub" / "a")


def test_a_read_only_look_takes_along_what_a_crash_left_in_the_side_file(tmp_path):
    (tmp_path / "live").mkdir()
    with opened(tmp_path / "live" / "a") as library:
        Desk(library).do("Add bike", lambda gate: gate.put(Bike("b", "Tarn")))
        copy = crashed_copy(library, tmp_path / "crashed")
    before = prints(copy.parent)
    with opened(copy, read_only=True) as library, library.reader() as reader:
        assert reader.need(Bike, "b").name == "Tarn"
    assert prints(copy.parent) == before


def opened_once(path: Path, **options) -> None:
    """Opens and closes the library."""
    open_garden(path, **options).close()


@contextmanager
def held(path: Path) -> Iterator[None]:
    """Another process has the library open; at the end it is killed."""
    command = [sys.executable, "-c", HOLDER, str(path)]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as holder:
        try:
            assert holder.stdout.readline() == b"open\n"
            yield
        finally:
            holder.kill()
