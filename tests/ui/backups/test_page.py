"""The sheet of backups and the page of troubles, worked by mouse and keys."""

from __future__ import annotations

import os
import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget

from tests.fixtures import a_bike, everything, make_desk
from tests.library.help import open_folder, without_rights
from tests.ui.driver import Driver
from workbench import app
from workbench.__main__ import main, read_arguments
from workbench.actions.people import add_person
from workbench.app import Workbench
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.errors import LibraryDamaged, LibraryError
from workbench.trouble import way_out
from workbench.ui.backups.page import BackupsPage
from workbench.ui.backups.trouble import TroubleDialog
from workbench.viewmodels.backups import BackupsViewModel

Key = Qt.Key
NAME = "bench.trailbench"


@pytest.fixture
def sheet(qtbot, desk):
    a_bike(desk)
    return Driver(qtbot, desk, BackupsPage, BackupsViewModel)


def test_a_backup_is_made_and_restored_by_mouse(sheet):
    sheet.press("backups_make")
    assert "Made and checked" in sheet.find("backups_said").text()
    before = everything(sheet.desk)
    sheet.desk.do("Add Bo", add_person("Bo"))
    sheet.press("backups_restore")
    assert "Restore the backup of" in sheet.find("backups_question").text()
    sheet.press("backups_restore_yes")
    assert everything(sheet.desk) == before
    assert not sheet.is_shown("backups_question")
    sheet.press("backups_take_back")
    assert everything(sheet.desk) != before
    assert sheet.problems == []


def test_all_of_it_goes_by_keyboard(sheet):
    assert sheet.focused() == "backups_make"
    sheet.keys(Key.Key_Return)
    sheet.tab_to("backups_table")
    sheet.keys(Key.Key_Down)
    sheet.tab_to("backups_restore")
    sheet.keys(Key.Key_Return)
    assert sheet.focused() == "backups_restore_yes"
    sheet.tab_to("backups_restore_no")
    sheet.keys(Key.Key_Return)
    assert sheet.focused() == "backups_restore"
    sheet.tab_to("backups_close")
    sheet.keys(Key.Key_Return)
    assert sheet.asked_for == ["garage"]


def test_a_copy_goes_where_it_is_asked_to(sheet, monkeypatch, tmp_path):
    sheet.press("backups_make")
    target = tmp_path / "stick.trailbench"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    sheet.press("backups_copy")
    assert target.exists()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    sheet.press("backups_copy")
    assert str(target) in sheet.find("backups_said").text()


def test_every_page_is_made_anew_after_a_restore(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        a_bike(desk, name="Larch 150")
        desk.backups.make()
    workbench = Workbench(open_library(tmp_path / NAME, schema, now=lambda: "2031-05-15T09:00:00+00:00"))
    try:
        workbench.window.show()
        later = a_bike(workbench.desk, name="Cinder 170", rider="N. Brook")
        workbench.bench.put_bike(later.id)
        workbench.view_model.open_station("garage")
        workbench.window.menu["backups"].trigger()
        page = workbench.window.page("backups")
        page.view_model.pick(page.view_model.state.rows[-1].key)
        page.view_model.restore()
        QApplication.processEvents()
        assert workbench.window.head.findChild(QWidget, "head_bike").text() == ""
        assert [row.name for row in workbench.view_model.state.rows] == ["Larch 150"]
        assert set(workbench.window._pages) == {"backups"}
        workbench.view_model.open_bike(workbench.view_model.state.rows[0].bike_id)
        QApplication.processEvents()
        assert workbench.window.head.findChild(QWidget, "head_bike").text() == "Larch 150"
    finally:
        workbench.close()
        QApplication.processEvents()


def test_a_damaged_file_leads_from_the_notice_to_the_backups(qtbot, tmp_path):
    workbench = Workbench(open_library(tmp_path / NAME, schema, now=lambda: "2031-05-15T09:00:00+00:00"))
    try:
        workbench.window.show()
        app.excepthook(tmp_path / "log", workbench.window.say)(
            LibraryDamaged, LibraryDamaged("It is damaged. Nothing was changed; restore a backup."), None
        )
        assert workbench.window.banner.action.text() == "Backups"
        workbench.window.banner.action.click()
        assert workbench.view_model.state.station == "backups"
    finally:
        workbench.close()
        QApplication.processEvents()


def answer(press: str, seen: list[str], picks: str = ""):
    """Press a button of the page of troubles as soon as it is there."""

    def act():
        (dialog,) = [one for one in QApplication.topLevelWidgets() if isinstance(one, TroubleDialog)]
        seen.append(dialog.findChild(QWidget, "trouble_text").text())
        dialog.findChild(QWidget, f"trouble_{press}").click()

    QTimer.singleShot(0, act)


def options_for(path: Path):
    return read_arguments(["--library", str(path)])


def refusal(path: Path) -> LibraryError:
    with pytest.raises(LibraryError) as refused:
        app.open_the_library(options_for(path)).close()
    return refused.value


def test_a_damaged_library_is_restored_from_the_page_of_troubles(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        a_bike(desk)
        desk.backups.make()
        before = everything(desk)
    path = tmp_path / NAME
    path.write_bytes(path.read_bytes()[:2000])
    seen: list[str] = []
    answer("restore", seen)
    again = way_out(refusal(path), options_for(path))
    library = app.open_the_library(again)
    library.close()
    assert "damaged" in seen[0]
    with make_desk(tmp_path) as desk:
        assert everything(desk) == before


def test_a_library_that_is_gone_is_restored_or_begun_anew(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        a_bike(desk)
        desk.backups.make()
    path = tmp_path / NAME
    path.unlink()
    answer("begin", [])
    anew = way_out(refusal(path), options_for(path))
    app.open_the_library(anew).close()
    with make_desk(tmp_path) as desk:
        assert not any(everything(desk).values())


def test_quitting_gives_the_refusal_and_leaves_the_file_as_it_was(qtbot, tmp_path):
    path = tmp_path / NAME
    path.write_bytes(b"somebody's holiday pictures" * 100)
    before = path.read_bytes()
    error = refusal(path)
    answer("quit", [])
    with pytest.raises(type(error)):
        way_out(error, options_for(path))
    assert path.read_bytes() == before


def test_another_library_can_be_opened_instead(qtbot, tmp_path, monkeypatch):
    with make_desk(tmp_path) as desk:
        a_bike(desk)
    foreign = tmp_path / "foreign.trailbench"
    foreign.write_bytes(b"no library" * 100)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(tmp_path / NAME), ""))
    answer("other", [])
    again = way_out(refusal(foreign), options_for(foreign))
    assert again.library == str(tmp_path / NAME)


@pytest.mark.skipif(os.name != "posix", reason="rights are taken away as POSIX does")
def test_a_library_that_may_only_be_read_can_be_looked_at(qtbot):
    with open_folder() as folder:
        with make_desk(folder) as desk:
            a_bike(desk)
        (folder / NAME).chmod(0o444)
        with without_rights():
            error = refusal(folder / NAME)
        answer("look", [])
        library = app.open_the_library(way_out(error, options_for(folder / NAME)))
        assert library.read_only
        library.close()


def test_a_look_shows_the_garage_with_a_lasting_notice(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
    library = app.open_the_library(replace(options_for(tmp_path / NAME), looks_only=True))
    workbench = Workbench(library)
    try:
        workbench.window.show()
        workbench.window.say_lasting("Opened to look at only.")
        workbench.view_model.open_bike(bike.id)
        QApplication.processEvents()
        assert workbench.view_model.state.bike_name == bike.name
        assert workbench.window.banner.remaining_ms() == -1
    finally:
        workbench.close()
        QApplication.processEvents()


def test_without_a_screen_the_sentence_and_the_exit_code_are_all(tmp_path, capsys):
    path = tmp_path / NAME
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE recipe (name TEXT)")
    connection.close()
    assert main(["--library", str(path)]) == 5
    assert capsys.readouterr().err.startswith("trailbench: ")
