"""A library that cannot be opened: one sentence, its own exit code, no traceback, and the file as it was."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from tests.fixtures import make_desk
from tests.journeys.hand import ROOT
from workbench.library.opening import APPLICATION_ID


def start(path: Path) -> subprocess.CompletedProcess[str]:
    """Start the program with its window over a library, which it is expected to refuse."""
    command = [sys.executable, "-m", "workbench", "--library", str(path)]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False, timeout=60)


def a_folder(path: Path) -> None:
    path.mkdir()


def newer(path: Path) -> None:
    with sqlite3.connect(path) as other:
        other.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        other.execute("CREATE TABLE alembic_version (version_num TEXT)")
        other.execute("INSERT INTO alembic_version VALUES ('9999')")
    other.close()


@pytest.mark.parametrize("make", [a_folder, newer])
def test_what_is_no_library_of_ours_is_refused_in_one_sentence(tmp_path, make):
    path = tmp_path / "garage.trailbench"
    make(path)
    before = path.read_bytes() if path.is_file() else b""
    done = start(path)
    assert done.returncode > 2
    assert done.stderr.startswith("trailbench: ")
    assert done.stderr.count("\n") == 1
    assert str(path) in done.stderr
    assert (path.read_bytes() if path.is_file() else b"") == before


def test_a_library_open_elsewhere_is_refused(tmp_path):
    with make_desk(tmp_path):
        done = start(tmp_path / "bench.trailbench")
    assert done.returncode > 2
    assert "already open" in done.stderr
    assert "Traceback" not in done.stderr
