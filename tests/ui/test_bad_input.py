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
from workbench.viewmodels.bench import Bench
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


@pytest.fixture(scope="module")
def garage(tmp_path_factory):
    """A library with each text in every place; with it the bikes and the texts as they are to be shown."""
    folder = tmp_path_factory.mktemp("entered")
    with make_desk(folder / "there") as desk:
        bikes = {enter(desk, text).id: clean_text(text) for text in STRINGS}
    return folder, bikes


def without_window(kind, desk):
    """A view-model in sight of nobody."""
    model = kind(desk, Bench(desk))
    model.show()
    return model


def test_each_is_shown_as_typed(qapp, garage):
    folder, bikes = garage
    workbench = Workbench(open_library(folder / "there" / "bench.trailbench", schema, now=lambda: MOMENT))
    try:
        workbench.window.show()
        for bike_id, text in bikes.items():
            workbench.view_model.open_bike(bike_id)
            for sheet in ("garage", "review", HISTORY, BUNDLE):
                workbench.view_model.open_station(sheet)
                QApplication.processEvents()
                labels = [one for one in workbench.window.findChildren(QLabel) if one.text() and one.isVisible()]
                assert all(one.textFormat() == Qt.TextFormat.PlainText for one in labels)
                assert any(one.text() == text for one in labels), (sheet, text)
            workbench.window.grab()
    finally:
        workbench.close()
        QApplication.processEvents()


def test_each_goes_out_and_comes_in_again_unharmed(garage):
    folder, bikes = garage
    with make_desk(folder / "there") as there, make_desk(folder / "here") as here:
        out, into = (without_window(BundleViewModel, desk) for desk in (there, here))
        target = folder / "garage.bundle.json"
        assert out.take_along(target, whole=True)
        assert into.open_file(target)
        assert into.bring_in()
        assert everything(here) == everything(there)
        for kind in (Bike, Person, Course, Setup):
            assert sorted(one.name for one in everything(here)[kind]) == sorted(bikes.values())
        again = folder / "again.json"
        into.take_along(again, whole=True)
        assert json.loads(again.read_text("utf-8"))["records"] == json.loads(target.read_text("utf-8"))["records"]
        assert into.open_file(target)
        assert into.state.verb == ""


def test_a_name_never_leads_a_file_out_of_its_folder(garage):
    folder, bikes = garage
    with make_desk(folder / "there") as desk:
        model = without_window(BundleViewModel, desk)
        for bike_id in bikes:
            model._bench.put_bike(bike_id)
            assert (folder / model.file_name(whole=False)).resolve().parent == folder.resolve()


def test_a_spreadsheet_reads_each_as_text_and_numbers_as_numbers(garage):
    folder, bikes = garage
    with make_desk(folder / "there") as desk:
        for bike_id, text in bikes.items():
            records = desk.ask(ride_records(bike_id))
            heads, row = csv.reader(io.StringIO(runs_csv(records, records.sessions), newline=""))
            told = dict(zip(heads, row, strict=True))
            for name in ("course", "note", "set_aside"):
                assert not told[name].startswith(("=", "+", "-", "@", "\t", "\r")), text
                assert told[name] in (text, f"'{text}"), text
            assert told["liking"] == "6"


def test_scripts_get_each_in_the_export(garage):
    folder, bikes = garage
    target = folder / "all.json"
    assert main(["--library", str(folder / "there" / "bench.trailbench"), "--export", str(target)]) == 0
    held = json.loads(target.read_text(encoding="utf-8"))["records"]
    assert {one["id"]: one["name"] for one in held["bike"]} == bikes


def test_each_is_taken_as_a_note_from_a_session_written_down(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        model = without_window(SessionNotesViewModel, desk)
        model._bench.put_bike(bike.id)
        lines = [f"{place} like 5, note {text}" for place, text in enumerate(STRINGS, start=1)]
        model.set_text("course: Quarry loop\n" + "\n".join(lines))
        assert model.keep(), model.problem()
        runs = sorted(everything(desk)[Run], key=lambda run: run.number)
        assert [run.note for run in runs] == [clean_text(text) for text in STRINGS]


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
