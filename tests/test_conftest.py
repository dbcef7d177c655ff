"""The guards that hold for every test do catch what they are for."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
CARELESS_TESTS = """
import os
from pathlib import Path

import pytest
from PySide6.QtCore import qWarning
from PySide6.QtWidgets import QWidget

kept = []


def test_leaves_a_widget(qapp):
    kept.append(QWidget())


def test_deletes_its_widget_later(qapp):
    QWidget().deleteLater()


def test_gives_its_widget_to_the_driver(qtbot):
    qtbot.addWidget(QWidget())


def test_uses_a_home_of_its_own(own_home):
    assert Path.home() == own_home
    assert not list(own_home.iterdir())


@pytest.mark.window
def test_wants_a_window():
    pass


def test_makes_qt_complain(qapp):
    qWarning("something is not as it should be")
"""
ENDINGS = {
    "test_leaves_a_widget": "ERROR",
    "test_deletes_its_widget_later": "PASSED",
    "test_gives_its_widget_to_the_driver": "PASSED",
    "test_uses_a_home_of_its_own": "PASSED",
    "test_wants_a_window": "ERROR",
    "test_makes_qt_complain": "FAILED",
}


def test_careless_tests_are_caught_and_careful_ones_pass(tmp_path):
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path)
    (tmp_path / "test_careless.py").write_text(CARELESS_TESTS, encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-rA", "-c", str(ROOT / "pyproject.toml"), "--rootdir", str(tmp_path)]
    done = subprocess.run(
        [*command, "-p", "no:cacheprovider", str(tmp_path)],
        cwd=tmp_path,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        check=False,
    )
    summary = [line.split() for line in done.stdout.splitlines() if "test_careless.py::" in line]
    assert summary, done.stdout + done.stderr
    endings = {words[1].split("::")[1]: words[0] for words in summary if words[0] in ("PASSED", "FAILED")}
    endings |= {words[1].split("::")[1]: words[0] for words in summary if words[0] == "ERROR"}
    assert endings == ENDINGS, done.stdout
