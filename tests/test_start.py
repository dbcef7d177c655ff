"""The set-up script says what is wrong in one sentence, and sets up nothing twice."""

from __future__ import annotations

import ast
import configparser
import errno
import importlib
import os
import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parent.parent
SCRIPTS = ROOT / "packaging"


@pytest.fixture
def script(monkeypatch):
    """Import one of the set-up scripts the way start.py does."""
    monkeypatch.syspath_prepend(str(SCRIPTS))
    return importlib.import_module


def test_an_old_python_is_told_what_it_needs(script, monkeypatch, capsys):
    start = script("start")
    monkeypatch.setattr(sys, "version_info", (3, 6, 15))
    assert start.main() == 1
    assert "needs Python 3.11 or newer, and this is Python 3.6." in capsys.readouterr().err


def test_an_old_python_can_read_the_first_script():
    # Before the version is checked nothing newer may stand: no annotations, f-strings or imports of our own.
    tree = ast.parse((SCRIPTS / "start.py").read_text(encoding="utf-8"), feature_version=(3, 4))
    assert not [node for node in ast.walk(tree) if isinstance(node, ast.JoinedStr | ast.AnnAssign)]
    assert [name.name for node in tree.body if isinstance(node, ast.Import) for name in node.names] == ["sys"]


@pytest.mark.parametrize("words", ["", "walk", "--help"])
def test_an_unknown_command_is_told_both_commands(words):
    done = subprocess.run(
        [sys.executable, str(SCRIPTS / "start.py"), *words.split()], capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert "start.py run" in done.stderr
    assert "start.py test" in done.stderr


# What pip 23 printed in each case.
@pytest.mark.parametrize(
    ("words", "trouble", "sentence"),
    [
        (
            "WARNING: Retrying (Retry(total=1, connect=None, read=None, redirect=None, status=None)) after connection "
            "broken by 'NewConnectionError('<pip._vendor.urllib3.connection.HTTPSConnection object>: Failed to "
            "establish a new connection: [Errno -3] Temporary failure in name resolution')': /simple/alembic/\n"
            "ERROR: Could not find a version that satisfies the requirement alembic==1.20.1 (from versions: none)\n"
            "ERROR: No matching distribution found for alembic==1.20.1",
            "network",
            "network does not answer",
        ),
        (
            "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE. If you have updated the package "
            "versions, please update the hashes.",
            "hash",
            "nothing was installed",
        ),
        ("ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device", "disk", "is full"),
        ("ERROR: No matching distribution found for PySide6-Essentials==6.11.3", "platform", "no ready-made package"),
        ("Segmentation fault", "unknown", "pip's own words are in"),
    ],
)
def test_pips_failures_become_one_sentence(script, tmp_path, words, trouble, sentence):
    trouble_script = script("trouble")
    assert trouble_script.pip_trouble(words) == trouble
    said = trouble_script.pip_sentence(trouble, tmp_path / ".venv", tmp_path / "pip.log")
    assert sentence in said
    assert "\n" not in said


@pytest.mark.parametrize(
    ("number", "sentence"),
    [(errno.EROFS, "cannot be written"), (errno.EACCES, "cannot be written"), (errno.ENOSPC, "is full")],
)
def test_a_folder_that_takes_no_files_is_named(script, tmp_path, number, sentence):
    error = script("trouble").folder_trouble(OSError(number, os.strerror(number)), tmp_path)
    assert sentence in str(error)


def test_settings_that_would_lead_packages_astray_do_not_reach_pip(script, monkeypatch):
    for name in ("PYTHONDONTWRITEBYTECODE", "PIP_TARGET", "PYTHONPATH", "PIP_NO_COMPILE"):
        monkeypatch.setenv(name, "1")
    monkeypatch.setenv("PIP_CERT", "own.pem")
    child = script("environment").child_environment()
    assert not {"PYTHONDONTWRITEBYTECODE", "PIP_TARGET", "PYTHONPATH", "PIP_NO_COMPILE"} & set(child)
    assert child["PIP_CERT"] == "own.pem"


def test_a_changed_lock_makes_the_environment_anew(script, monkeypatch, tmp_path):
    environment = script("environment")
    (tmp_path / "lock").write_text("a==1", encoding="utf-8")
    (tmp_path / "python").touch()
    monkeypatch.setattr(environment, "LOCK", tmp_path / "lock")
    monkeypatch.setattr(environment, "STAMP", tmp_path / "stamp")
    monkeypatch.setattr(environment, "python", lambda: tmp_path / "python")
    assert not environment.is_ready()
    environment.STAMP.write_text(environment.wanted_stamp(), encoding="utf-8")
    assert environment.is_ready()
    environment.LOCK.write_text("a==2", encoding="utf-8")
    assert not environment.is_ready()


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the loader is asked on Linux only")
def test_a_library_that_is_not_there_is_named(script, tmp_path):
    missing = script("system").missing_libraries(Path(sys.executable), tmp_path, "offscreen")
    assert any("libqoffscreen.so" in name for name in missing)


def test_every_dependency_stands_in_the_lock_with_hashes_and_a_version_it_allows():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lock = (SCRIPTS / "requirements.lock").read_text(encoding="utf-8")
    rows = [row.split("\\")[0].strip() for row in lock.splitlines() if re.match(r"[a-z]", row)]
    pinned = [Requirement(row) for row in rows]
    assert lock.count("--hash=sha256:") >= len(pinned)
    for wanted in map(Requirement, project["dependencies"]):
        if wanted.marker and not wanted.marker.evaluate():
            continue
        found = [row for row in pinned if canonicalize_name(row.name) == canonicalize_name(wanted.name)]
        found = [row for row in found if not row.marker or row.marker.evaluate()]
        assert len(found) == 1, wanted
        version = str(found[0].specifier).removeprefix("==")
        assert wanted.specifier.contains(version), f"{wanted}: remake the lock, which has {version}"


def test_the_lock_names_no_place_to_fetch_from():
    lock = (SCRIPTS / "requirements.lock").read_text(encoding="utf-8")
    assert not re.search(r"https?:|file:|^-", lock, re.MULTILINE)


def test_an_old_pyside_is_pinned_for_the_python_that_needs_it():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert "PySide6-Essentials==6.11.3; python_version < '3.12'" in project["dependencies"]
    lock = (SCRIPTS / "requirements.lock").read_text(encoding="utf-8")
    assert "pyside6-essentials==6.11.3 ; python_full_version < '3.12'" in lock


def test_the_menu_entry_starts_this_checkout_and_lies_where_the_desktop_looks(script, monkeypatch, tmp_path):
    desktop = script("desktop")
    entry = desktop.write_entry({"XDG_DATA_HOME": str(tmp_path)})
    assert entry == tmp_path / "applications" / "trailbench.desktop"
    read = configparser.RawConfigParser()
    read.optionxform = str
    read.read(entry, encoding="utf-8")
    told = dict(read["Desktop Entry"])
    assert shlex.split(told["Exec"]) == [sys.executable, str(SCRIPTS / "start.py"), "run"]
    assert Path(told["Icon"]).read_bytes() == (ROOT / "resources" / "icons" / "trailbench.svg").read_bytes()
    assert (told["Type"], told["Terminal"]) == ("Application", "false")


# Desktop Entry Specification 1.5, "The Exec key": quotes, backtick, dollar and backslash are escaped inside quotes, and
# the general escape of strings comes on top, so that a backslash stands four times and a dollar as two and a dollar.
@pytest.mark.parametrize(
    ("word", "written"),
    [
        ("/opt/my bench/py", '"/opt/my bench/py"'),
        ("/opt/$home", r'"/opt/\\$home"'),
        ("/opt/back\\slash", r'"/opt/back\\\\slash"'),
        ("/opt/100 %", '"/opt/100 %%"'),
    ],
)
def test_a_folder_with_an_awkward_name_is_quoted_for_the_menu(script, word, written):
    assert script("desktop").quoted(word) == written


def test_a_data_folder_that_takes_no_files_is_said_in_one_sentence(script, tmp_path):
    (tmp_path / "applications").write_text("a file where a folder belongs", encoding="utf-8")
    with pytest.raises(script("trouble").SetupError, match="The menu entry cannot be written"):
        script("desktop").write_entry({"XDG_DATA_HOME": str(tmp_path)})
