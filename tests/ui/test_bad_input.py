"""Strings that do harm elsewhere: entered as a person would, each is shown, exported and brought in again unharmed."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, everything, make_desk
from workbench.__main__ import main
from workbench.actions.edit import edit
from workbench.actions.ride import ride_records
from workbench.actions.setups import name_setup
from workbench.app import Workbench
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike
from workbench.model.errors import InputError
from workbench.model.facts import NOTE_LIMIT, TEXT_LIMIT, clean_text
from workbench.model.person import Person
from workbench.model.ride import Course, Run
from workbench.model.setting import Setup
from workbench.viewmodels.bundle import BundleViewModel
from workbench.viewmodels.review_export import runs_csv
from workbench.viewmodels.session_notes import SessionNotesViewModel
from workbench.viewmodels.window import BUNDLE, HISTORY

MOMENT = "2031-05-20T09:00:00+00:00"
ENTITIES = '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><x>&b;</x>'
STRINGS = (
    '<img src="file:///x.png">',
    "<s>struck</s> <b>bold</b>",
    "a & b &amp; c &lt;d&gt;",
    '=HYPERLINK("http://x","y")',
    "+1+1",
    "-2 clicks",
    "@SUM(A1)",
    "'=1+1",
    ENTITIES,
    "../../../etc/passwd",
    "..\\..\\windows",
    "\\\\host\\share\\x",
    "NaN",
    "Infinity",
    "1e999",
    "9" * 190,
    "[" * 190,
    '{"format": "trailbench bundle"}',
    "'; DROP TABLE bike; --",
    "%s %d {0} {name} %n",
    "a\u202egnp.exe",
    "zero\u200bwidth\u2060joined",
    "\u05d0\u05d5\u05e4\u05e0\u05d9\u05d9\u05dd \u062f\u0631\u0627\u062c\u0629",
    "\U0001f6b2\U0001f468\u200d\U0001f469\u200d\U0001f467 \u0928\u092e\u0938\u094d\u0924\u0947",
    "\u00e9 e\u0301 \ufb01 \u212b",
    "tab\there",
    "# not a heading",
    "course: x",
    "W" * TEXT_LIMIT,
)


def enter(desk, text):
    """Put the text wherever a person can put one; gives the bike."""
    bike = a_counted_bike(desk, name=text, rider=text)
    for kind, name in ((Bike, "tags"), (Bike, "note"), (Bike, "name")):
        desk.do(f"Set {name} of {text}"[:60], edit(kind, bike.id, name, text), bike_id=bike.id, station="garage")
    setup = a_baseline(desk, bike)
    desk.do("Name the setup", name_setup(setup.id, text), bike_id=bike.id)
    session = a_session(desk, bike, course=text)
    a_run(desk, session, liking=6, note=clean_text(text), is_set_aside=True, set_aside_reason=clean_text(text))
    return bike


@pytest.fixture(scope="module", params=STRINGS, ids=lambda text: ascii(text)[1:25])
def entered(request, tmp_path_factory):
    """A library with the text in every place, as it is to be shown."""
    folder = tmp_path_factory.mktemp("entered")
    with make_desk(folder / "there") as desk:
        bike = enter(desk, request.param)
    return folder, bike, clean_text(request.param)


def test_it_is_shown_as_typed(qapp, entered):
    folder, bike, text = entered
    workbench = Workbench(open_library(folder / "there" / "bench.trailbench", schema, now=lambda: MOMENT))
    try:
        workbench.window.show()
        workbench.view_model.open_bike(bike.id)
        for sheet in ("garage", "review", HISTORY, BUNDLE):
            workbench.view_model.open_station(sheet)
            QApplication.processEvents()
            workbench.window.grab()
            labels = [one for one in workbench.window.findChildren(QLabel) if one.text() and one.isVisible()]
            assert all(one.textFormat() == Qt.TextFormat.PlainText for one in labels)
            assert any(one.text() == text for one in labels), sheet
    finally:
        workbench.close()
        QApplication.processEvents()


def test_it_goes_out_and_comes_in_again_unharmed(entered):
    folder, _, text = entered
    with make_desk(folder / "there") as there, make_desk(folder / "here") as here:
        out, into = (without_window(BundleViewModel, desk) for desk in (there, here))
        target = folder / out.file_name(whole=True)
        assert target.parent == folder
        assert out.take_along(target, whole=True)
        assert into.open_file(target)
        assert into.bring_in()
        assert everything(here) == everything(there)
        assert everything(here)[Bike][0].name == text
        assert {everything(here)[kind][0].name for kind in (Person, Course, Setup)} == {text}
        again = folder / "again.json"
        into.take_along(again, whole=True)
        assert json.loads(again.read_text("utf-8"))["records"] == json.loads(target.read_text("utf-8"))["records"]
        assert into.open_file(target)
        assert into.state.verb == ""


def without_window(kind, desk):
    """A view-model without a window."""
    from workbench.viewmodels.bench import Bench

    model = kind(desk, Bench(desk))
    model.show()
    return model


def test_a_spreadsheet_reads_it_as_text_and_numbers_as_numbers(entered):
    folder, bike, text = entered
    with make_desk(folder / "there") as desk:
        records = desk.ask(ride_records(bike.id))
        rows = list(csv.reader(io.StringIO(runs_csv(records, records.sessions), newline="")))
    told = dict(zip(rows[0], rows[1], strict=True))
    for name in ("course", "note", "set_aside"):
        assert not told[name].startswith(("=", "+", "-", "@", "\t", "\r")), name
        assert told[name].removeprefix("'") in (text, text.removeprefix("'"))
    assert told["liking"] == "6"


def test_scripts_get_it_in_the_export(entered):
    folder, _, text = entered
    target = folder / "all.json"
    assert main(["--library", str(folder / "there" / "bench.trailbench"), "--export", str(target)]) == 0
    held = json.loads(target.read_text(encoding="utf-8"))["records"]
    assert held["bike"][0]["name"] == held["course"][0]["name"] == text


@pytest.mark.parametrize("text", STRINGS, ids=lambda text: ascii(text)[1:25])
def test_it_is_taken_as_a_note_from_a_session_written_down(tmp_path, text):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        model = without_window(SessionNotesViewModel, desk)
        model._bench.put_bike(bike.id)
        model.set_text(f"course: Quarry loop\n1 like 5, note {text}")
        assert model.keep()
        assert everything(desk)[Run][0].note == " ".join(clean_text(text).split("\n"))


@pytest.mark.parametrize("text", ["x" * 1_000_000, "\x00", "\ud800"], ids=["1 MB", "zero byte", "half a letter"])
def test_what_cannot_be_stored_is_refused_at_its_field_or_cleaned_and_nothing_is_lost(tmp_path, text):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        before = everything(desk)
        if len(text) > NOTE_LIMIT:
            with pytest.raises(InputError, match="up to 5000"):
                edit(Bike, bike.id, "note", text)
            with pytest.raises(InputError, match="at most"):
                desk.do("Past the field", lambda gate: gate.put(replace(gate.need(Bike, bike.id), note=text)))
        else:
            desk.do("Note", edit(Bike, bike.id, "note", text))
        assert everything(desk) == before
