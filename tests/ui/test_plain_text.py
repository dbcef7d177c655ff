"""What people type is shown as they typed it: nothing in the window reads it as markup."""

from __future__ import annotations

import ast
import gc
import shutil
import subprocess
from dataclasses import fields, replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QMessageBox, QWidget

from workbench.actions.desk import Desk, Gate
from workbench.app import Workbench
from workbench.demo import build
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.adjuster import Adjuster
from workbench.model.bike import Bike, Tyre
from workbench.model.facts import TEXT_LIMIT
from workbench.model.job import STATIONS
from workbench.model.person import Person
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import Setup
from workbench.model.unit import Unit
from workbench.ui import messages

UI = Path(messages.__file__).parent
MOMENT = "2031-05-14T09:00:00+00:00"
# What would make Qt or the plots read a text as markup.
MARKUP = {"setHtml", "insertHtml", "appendHtml", "RichText", "AutoText", "MarkdownText", "setMarkdown", "QTextBrowser"}
TEXTS = ("name", "note", "tags", "serial", "not_verified_reason", "set_aside_reason")
TOLD = (Bike, Person, Unit, Adjuster, Tyre, Course, Run, Setup)
HOSTILE = (
    "<b>bold</b> & <img src=x>",
    "</p><s>struck</s> &amp; \U0001f6b2\U0001f468\u200d\U0001f469\u200d\U0001f467",
    "\u05d0\u05d5\u05e4\u05e0\u05d9\u05d9\u05dd \u062f\u0631\u0627\u062c\u0629 <i>x</i>",
    "W" * TEXT_LIMIT,
)


def test_no_widget_reads_text_as_markup():
    found = []
    for path in UI.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            name = getattr(node, "attr", getattr(node, "id", ""))
            if name in MARKUP:
                found.append(f"{path.relative_to(UI)}:{node.lineno}: {name}")
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("QLabel", "QToolTip"):
                found.append(f"{path.relative_to(UI)}:{node.lineno}: take Words, it is always plain")
    assert not found, "\n".join(found)


def test_a_tool_tip_is_always_escaped():
    found = []
    for path in UI.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "setToolTip":
                asked = ast.unparse(node.args[0])
                if not asked.startswith(("plain_tip(", "escape(", "''")):
                    found.append(f"{path.relative_to(UI)}:{node.lineno}: {asked}")
    assert not found, "\n".join(found)


def test_every_word_of_the_one_message_box_is_plain(qtbot, monkeypatch):
    formats = []

    def read_instead(box: QMessageBox) -> int:
        formats.extend(one.textFormat() for one in box.findChildren(QLabel) if one.text())
        return 0

    monkeypatch.setattr(QMessageBox, "exec", read_instead)
    messages.failure("<b>x</b>", "where it happened")
    assert Qt.TextFormat.PlainText in formats


def words_of(window: QWidget) -> list[QLabel]:
    """Every label that holds words; the plots' own menus are switched off and never seen."""
    return [one for one in window.findChildren(QLabel) if one.text() and one.isVisibleTo(window)]


@pytest.fixture(scope="module")
def sample(tmp_path_factory) -> Path:
    """The sample garage, made once."""
    path = tmp_path_factory.mktemp("sample") / "sample.trailbench"
    build(path)
    return path


@pytest.fixture
def workbench_with(qapp, tmp_path, sample):
    """A window over the sample garage in which every text is a hostile one."""
    opened = []

    def make(text: str) -> Workbench:
        path = Path(shutil.copy(sample, tmp_path / "hostile.trailbench"))
        library = open_library(path, schema, now=lambda: MOMENT)
        Desk(library).do("Rename", lambda gate: rename_everything(gate, text), bike_id=None, station="")
        workbench = Workbench(library)
        workbench.window.show()
        opened.append(workbench)
        return workbench

    yield make
    for workbench in opened:
        workbench.close()
    opened.clear()
    gc.collect()


def rename_everything(gate: Gate, text: str) -> None:
    """Put the text into every name and note there is."""
    for kind in TOLD:
        names = [field.name for field in fields(kind) if field.name in TEXTS]
        gate.put(*(replace(record, **dict.fromkeys(names, text)) for record in gate.find(kind)))


@pytest.mark.parametrize("text", HOSTILE, ids=["markup", "entities and emoji", "right to left", "very long"])
def test_every_sheet_shows_what_was_typed(qapp, workbench_with, text, tmp_path):
    workbench = workbench_with(text)
    workbench.bench.put_bike(workbench.desk.ask(lambda reader: reader.find(Session))[0].bike_id)
    for station in STATIONS:
        workbench.view_model.open_station(station)
        qapp.processEvents()
        workbench.window.grab()
        labels = words_of(workbench.window)
        assert all(label.textFormat() == Qt.TextFormat.PlainText for label in labels), station
        assert any(label.text() == text for label in labels), station
    workbench.view_model.search(text[:30])
    assert len(workbench.view_model.state.rows) >= 4
    assert workbench.window.windowTitle() == "Trailbench"


@pytest.mark.parametrize("text", HOSTILE[:2], ids=["markup", "entities"])
def test_the_card_prints_what_was_typed(qapp, workbench_with, text, tmp_path):
    workbench = workbench_with(text)
    setup = workbench.desk.ask(lambda reader: reader.find(Setup))[0]
    workbench.bench.put_bike(setup.bike_id)
    workbench.view_model.open_station("card")
    page = workbench.window.page("card")
    page.write_pdf(tmp_path / "card.pdf")
    words = subprocess.run(["pdftotext", str(tmp_path / "card.pdf"), "-"], capture_output=True, text=True, check=True)
    assert text[:12] in words.stdout
