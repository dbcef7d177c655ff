"""A session from notes, worked by keys and mouse."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPlainTextEdit

from tests.fixtures import a_baseline, a_counted_bike
from tests.ui.driver import Driver
from workbench.actions.ride import ride_records
from workbench.ui.session_notes.page import SessionNotesPage
from workbench.viewmodels.session_notes import SessionNotesViewModel

Key = Qt.Key


@pytest.fixture
def sheet(qtbot, desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    return Driver(qtbot, desk, SessionNotesPage, SessionNotesViewModel, bike.id)


def type_text(sheet, text):
    edit = sheet.find("notes_text", QPlainTextEdit)
    edit.setFocus()
    for place, line in enumerate(text.split("\n")):
        if place:
            sheet.bot.keyClick(edit, Key.Key_Return)
        sheet.bot.keyClicks(edit, line)
    return edit


def test_a_session_is_typed_mended_and_kept_by_keyboard_alone(sheet):
    assert sheet.focused() == "notes_text"
    edit = type_text(sheet, "course: Quarry loop\n1 like 5\n2 fork rebond 2 out, 6")
    assert "Not understood" in sheet.words()
    sheet.tab_to("notes_keep")
    sheet.keys(Key.Key_Return)
    assert "Line 3 is not understood" in sheet.find("notes_said").text()
    assert sheet.focused() == "notes_text"
    assert edit.textCursor().blockNumber() == 2
    for _ in range(len("nd 2 out, 6")):
        sheet.keys(Key.Key_Backspace)
    type_text(sheet, "und 2 out, 6")
    assert not sheet.is_shown("notes_said")
    sheet.tab_to("notes_keep")
    sheet.keys(Key.Key_Return)
    (session,) = sheet.desk.ask(ride_records(sheet.bench.bike_id)).sessions
    assert [run.liking for run in session.runs] == [5, 6]
    assert sheet.kept == ["Keep 2 runs on Quarry loop"]
    assert sheet.asked_for == ["review"]
    assert edit.toPlainText() == ""


def test_markup_in_a_note_stays_what_was_typed(sheet):
    type_text(sheet, "course: <b>Quarry</b>\n1 like 5, note <s>x</s> & y")
    assert "note “<s>x</s> & y”" in sheet.words()
    sheet.press("notes_keep")
    (session,) = sheet.desk.ask(ride_records(sheet.bench.bike_id)).sessions
    assert (session.course.name, session.runs[0].note) == ("<b>Quarry</b>", "<s>x</s> & y")


def test_the_text_put_aside_leaves_an_empty_sheet(sheet):
    edit = type_text(sheet, "1 like 5")
    sheet.press("notes_discard")
    assert edit.toPlainText() == ""
    assert not sheet.is_shown("notes_discard")
