"""The command line: what it does without a window, and its exit codes with one sentence each."""

from __future__ import annotations

import json
import shutil
import sqlite3

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.__main__ import main, read_arguments

NAME = "bench.trailbench"


@pytest.fixture
def library(tmp_path):
    """A sound library with one bike, closed."""
    with make_desk(tmp_path) as desk:
        a_bike(desk)
    return tmp_path / NAME


def check(path):
    return main(["--library", str(path), "--check"])


def one_sentence(capsys):
    said = capsys.readouterr().err.strip()
    assert said.startswith("trailbench: ")
    assert "Traceback" not in said
    assert len(said.splitlines()) == 1
    return said


def run_sql(path, *statements):
    connection = sqlite3.connect(path)
    with connection:
        for statement in statements:
            connection.execute(statement)
    connection.close()


def test_a_sound_library_is_said_to_be_so(library, capsys):
    assert check(library) == 0
    assert "sound" in capsys.readouterr().out


def test_an_export_holds_records_and_journal_and_is_the_same_twice(library, tmp_path):
    first, second = tmp_path / "one.json", tmp_path / "two.json"
    for target in (first, second):
        assert main(["--library", str(library), "--export", str(target)]) == 0
    assert first.read_bytes() == second.read_bytes()
    told = json.loads(first.read_text(encoding="utf-8"))
    assert [one["name"] for one in told["records"]["bike"]] == ["Larch 150"]
    assert [one["label"] for one in told["journal"]] == ["Add Larch 150"]


def test_export_and_check_leave_the_library_as_it_was(library, tmp_path):
    before = library.read_bytes()
    assert main(["--library", str(library), "--check", "--export", str(tmp_path / "out.json")]) == 0
    assert library.read_bytes() == before


@pytest.mark.parametrize(
    "arguments",
    [
        ["--nonsense"],
        ["--now", "yesterday"],
        ["--now", ""],
        ["--size", "wide"],
        ["--size", "10x10"],
        ["--scale", "3"],
        ["--theme", "pink"],
        ["--export"],
        ["stray"],
    ],
    ids=" ".join,
)
def test_wrong_arguments_end_with_2_and_a_sentence(arguments, capsys):
    if arguments == ["--now", ""]:
        assert read_arguments(arguments).has_fixed_now is False
        return
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 2
    assert "trailbench: error: " in capsys.readouterr().err


def test_a_locked_library_ends_with_3(tmp_path, capsys):
    with make_desk(tmp_path):
        assert check(tmp_path / NAME) == 3
    one_sentence(capsys)


def test_a_newer_library_ends_with_4_and_stays_as_it_was(library, capsys):
    run_sql(library, "UPDATE alembic_version SET version_num = '9999'")
    before = library.read_bytes()
    assert check(library) == 4
    assert library.read_bytes() == before
    one_sentence(capsys)


@pytest.mark.parametrize(
    "content", [b"not a database, but long enough to be looked at" * 40, None], ids=["text", "sql"]
)
def test_a_foreign_file_ends_with_5_and_stays_as_it_was(tmp_path, capsys, content):
    path = tmp_path / NAME
    if content is None:
        run_sql(path, "CREATE TABLE recipe (name TEXT)")
    else:
        path.write_bytes(content)
    before = path.read_bytes()
    assert check(path) == 5
    assert path.read_bytes() == before
    one_sentence(capsys)


def test_a_folder_is_no_library_and_ends_with_5(tmp_path, capsys):
    assert check(tmp_path) == 5
    assert "is a folder" in one_sentence(capsys)


def test_nothing_at_all_ends_with_6(tmp_path, capsys):
    for path in (tmp_path / "gone.trailbench", tmp_path / "no" / "such" / "folder.trailbench"):
        assert check(path) == 6
        one_sentence(capsys)
        assert not path.is_file(), "a script makes no library"


def test_an_export_that_cannot_be_written_ends_with_6_and_leaves_nothing_behind(library, tmp_path, capsys):
    (tmp_path / "taken").mkdir()
    before = sorted(tmp_path.rglob("*"))
    for target in (tmp_path / "no such folder" / "out.json", tmp_path / "taken"):
        assert main(["--library", str(library), "--export", str(target)]) == 6
        one_sentence(capsys)
    assert sorted(tmp_path.rglob("*")) == before


def test_a_tour_that_cannot_be_written_ends_with_6(library, capsys, monkeypatch):
    for name in ("QT_QPA_PLATFORM", "QT_SCALE_FACTOR"):
        monkeypatch.setenv(name, "")
    assert main(["--tour", str(library)]) == 6
    one_sentence(capsys)


def test_a_damaged_library_ends_with_7(library, capsys):
    run_sql(library, "PRAGMA foreign_keys = OFF", "DELETE FROM bike")
    assert check(library) == 7
    assert capsys.readouterr().err.strip()


def test_a_library_cut_short_ends_with_7_or_5_and_without_a_traceback(library, tmp_path, capsys):
    whole = library.read_bytes()
    for part in (100, 5000, len(whole) // 2):
        cut = tmp_path / f"cut{part}.trailbench"
        cut.write_bytes(whole[:part])
        assert check(cut) in (5, 6, 7)
        assert "Traceback" not in capsys.readouterr().err


def test_a_library_that_may_only_be_read_is_still_checked_and_exported(library, tmp_path):
    folder = tmp_path / "read only"
    folder.mkdir()
    copy = folder / NAME
    shutil.copyfile(library, copy)
    copy.chmod(0o400)
    folder.chmod(0o500)
    try:
        target = tmp_path / "out.json"
        assert main(["--library", str(copy), "--check", "--export", str(target)]) == 0
        assert target.exists()
    finally:
        folder.chmod(0o700)


def test_the_clock_can_be_set():
    assert read_arguments(["--now", "2031-05-14T09:00:00+02:00"]).now() == "2031-05-14T07:00:00.000+00:00"
    now = read_arguments(["--now", "2031-05-14T09:00:00"]).now
    assert [now(), now()] == ["2031-05-14T09:00:00.000+00:00", "2031-05-14T09:00:00.001+00:00"]
