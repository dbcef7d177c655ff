"""The window around the sheets: menus, banner, undo, what is remembered from one start to the next."""

from __future__ import annotations

import sys
from contextlib import contextmanager

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QLabel,
    QLineEdit,
    QMenu,
    QPushButton,
    QScrollArea,
    QWidget,
)

from tests.fixtures import Clock, a_bike, a_counted_bike, make_desk
from workbench.actions.desk import Desk
from workbench.actions.garage import garage_rows
from workbench.app import Workbench, excepthook
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.job import STATIONS
from workbench.ui import messages
from workbench.ui.parts.theme import announcer

Key = Qt.Key


@contextmanager
def window(folder, qtbot, *, now=None):
    """The program's own window over the library in the folder."""
    workbench = Workbench(open_library(folder / "bench.trailbench", schema, now=now or Clock()))
    workbench.window.resize(1280, 800)
    workbench.window.show()
    qtbot.waitExposed(workbench.window)
    try:
        yield workbench
    finally:
        workbench.close()
        QApplication.processEvents()


def find(workbench, name, kind=QWidget):
    QApplication.processEvents()
    shown = [one for one in workbench.window.findChildren(kind, name) if one.isVisible()]
    assert len(shown) == 1, f"{name}: {shown}"
    return shown[0]


def words(workbench):
    QApplication.processEvents()
    return "\n".join(
        str(one.text()) for one in workbench.window.findChildren(QWidget) if one.isVisible() and hasattr(one, "text")
    )


def menu(workbench, name):
    workbench.window.menu[name].trigger()
    QApplication.processEvents()


def press(qtbot, workbench, name):
    qtbot.mouseClick(find(workbench, name, QPushButton), Qt.MouseButton.LeftButton)


def test_an_empty_garage_says_what_to_do_and_leads_there(qtbot, tmp_path):
    with window(tmp_path, qtbot) as workbench:
        assert "The garage is empty" in words(workbench)
        assert "All bikes" not in words(workbench), "the list itself is in sight"
        press(qtbot, workbench, "welcome_add")
        qtbot.keyClicks(find(workbench, "new_bike_name", QLineEdit), "Heron 140")
        press(qtbot, workbench, "new_bike_add")
        assert [row.bike.name for row in workbench.desk.ask(garage_rows())] == ["Heron 140"]
        assert "Heron 140" in find(workbench, "head_bike").text()
        assert "Add Heron 140" in words(workbench)


def test_at_two_hundred_percent_on_a_small_screen_the_sheet_has_the_window_to_itself(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        a_bike(desk, name="Larch 150")
    with window(tmp_path, qtbot) as workbench:
        workbench.window.resize(640, 400)
        QApplication.processEvents()
        assert (workbench.window.width(), workbench.window.height()) == (640, 400)
        bike_list = find(workbench, "bike_list")
        bike_list.setCurrentIndex(bike_list.model().index(0, 0))
        qtbot.keyClick(bike_list, Key.Key_Return)
        assert "Larch 150" in find(workbench, "head_bike").text()
        assert workbench.window.side.isHidden()
        assert workbench.window.title_block.isHidden()
        press(qtbot, workbench, "head_garage")
        assert find(workbench, "bike_list").isVisible()
        assert not [one for one in workbench.window.findChildren(QWidget, "sheet_frame") if one.isVisible()]
        press(qtbot, workbench, "head_garage")
        assert find(workbench, "sheet_frame").width() > 560
        workbench.window.resize(1280, 800)
        QApplication.processEvents()
        assert find(workbench, "bike_list").isVisible()
        assert workbench.window.title_block.isVisible()


def test_the_search_narrows_while_typing_and_enter_opens_the_first(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        for name in ("Larch 150", "Fell 130", "Tarn"):
            a_bike(desk, name=name, rider=f"Rider of {name}")
    with window(tmp_path, qtbot) as workbench:
        menu(workbench, "find")
        search = find(workbench, "garage_search", QLineEdit)
        qtbot.keyClicks(search, "fell")
        assert [row.name for row in workbench.view_model.state.rows] == ["Fell 130"]
        qtbot.keyClick(search, Key.Key_Return)
        assert find(workbench, "head_bike").text() == "Fell 130"


def test_every_station_opens_from_the_menu(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
    with window(tmp_path, qtbot) as workbench:
        assert not workbench.window.menu["go_sag"].isEnabled()
        workbench.view_model.open_bike(bike.id)
        for station in STATIONS:
            menu(workbench, f"go_{station}")
            assert workbench.window.page(station).isVisible()
            assert workbench.view_model.state.station == station


def test_undo_and_redo_stand_in_the_menu_with_their_labels(qtbot, tmp_path):
    with make_desk(tmp_path):
        pass
    with window(tmp_path, qtbot) as workbench:
        assert not workbench.window.menu["undo"].isEnabled()
        a_bike(workbench.desk, name="Salt & Pepper")
        assert workbench.window.menu["undo"].text() == "&Undo “Add Salt && Pepper”"
        menu(workbench, "undo")
        assert workbench.desk.ask(garage_rows()) == ()
        assert workbench.window.menu["redo"].text() == "&Redo “Add Salt && Pepper”"
        menu(workbench, "redo")
        assert len(workbench.desk.ask(garage_rows())) == 1


def test_undo_of_an_earlier_start_is_offered_in_the_banner_first(qtbot, tmp_path):
    clock = Clock()
    with make_desk(tmp_path, now=clock) as desk:
        a_bike(desk)
    with window(tmp_path, qtbot, now=clock) as workbench:
        menu(workbench, "undo")
        assert "It was done before this start." in words(workbench)
        assert len(workbench.desk.ask(garage_rows())) == 1
        button = next(
            one
            for one in workbench.window.banner.findChildren(QPushButton)
            if one.isVisible() and _says(one, "Undo it")
        )
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
        assert workbench.desk.ask(garage_rows()) == ()


def _says(button, text):
    return text in (button.words() if hasattr(button, "words") else button.text())


def test_undoing_the_bike_whose_sheet_lies_open_ends_at_the_welcome(qtbot, tmp_path):
    with make_desk(tmp_path):
        pass
    with window(tmp_path, qtbot) as workbench:
        bike = a_bike(workbench.desk)
        workbench.view_model.open_bike(bike.id)
        for station in STATIONS:
            menu(workbench, f"go_{station}")
        menu(workbench, "undo")
        assert "The garage is empty" in words(workbench)


def test_what_is_being_typed_is_kept_when_the_window_closes(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
    with window(tmp_path, qtbot) as workbench:
        workbench.view_model.open_bike(bike.id)
        menu(workbench, "go_garage")
        line = find(workbench, "facts_bike_tags_entry", QLineEdit)
        workbench.window.activateWindow()
        line.setFocus()
        qtbot.waitUntil(line.hasFocus)
        qtbot.keyClicks(line, "red, customer")
        workbench.window.close()
    with make_desk(tmp_path) as desk:
        assert desk.ask(garage_rows())[0].bike.tags == "red, customer"


def test_the_window_opens_where_it_was_closed_and_as_it_looked(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
    try:
        with window(tmp_path, qtbot) as workbench:
            workbench.view_model.open_bike(bike.id)
            menu(workbench, "go_baseline")
            menu(workbench, "dark")
            assert announcer.theme.dark
        with window(tmp_path, qtbot) as workbench:
            assert workbench.view_model.state.station == "baseline"
            assert workbench.desk.setting("look/colour", "") == "dark"
            assert workbench.window.menu["dark"].isChecked()
            menu(workbench, "dark")
            assert not announcer.theme.dark
    finally:
        _light()


def _light():
    from workbench.ui.parts.theme import Theme, apply_theme

    apply_theme(QApplication.instance(), Theme())


@pytest.mark.parametrize("name", ["<b>Larch</b>", "<img src=x>", "דוד", "🚵 150", "x" * 200])
def test_any_name_is_shown_as_typed_at_the_head_and_in_the_title(qtbot, tmp_path, name):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk, name=name, rider=name)
    with window(tmp_path, qtbot) as workbench:
        workbench.view_model.open_bike(bike.id)
        head = find(workbench, "head_bike")
        assert head.text() == name
        assert head.textFormat() == Qt.TextFormat.PlainText
        assert dict(workbench.window.title_block.cells())["Rider"] == name
        assert workbench.window.minimumSizeHint().width() <= 1280


def test_a_hint_stands_above_a_new_station_until_it_is_put_away_by_keyboard(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
    with window(tmp_path, qtbot) as workbench:
        workbench.bench.put_bike(bike.id, station="sag")
        hint = find(workbench, "hint")
        assert hint.accessibleName().startswith("Hint: Here it is measured")
        assert not hint.geometry().intersects(find(workbench, "sheet_frame").geometry())
        assert workbench.window.focusWidget() is not find(workbench, "hint_got_it")
        for _ in range(80):
            if workbench.window.focusWidget() is find(workbench, "hint_got_it"):
                break
            workbench.window.focusNextPrevChild(True)
        qtbot.keyClick(workbench.window.focusWidget(), Key.Key_Space)
        assert hint.isHidden()
        assert workbench.window.page("sag").isAncestorOf(workbench.window.focusWidget())
        menu(workbench, "hints")
        assert find(workbench, "hint_words").text() == hint.accessibleName().removeprefix("Hint: ")


def test_a_hint_leaves_the_room_to_the_large_keys_of_bench_mode(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
    try:
        with window(tmp_path, qtbot) as workbench:
            workbench.bench.put_bike(bike.id, station="sag")
            hint = find(workbench, "hint")
            menu(workbench, "bench")
            assert hint.isHidden()
            menu(workbench, "bench")
            assert hint.isVisible()
    finally:
        _light()


def test_what_does_this_do_opens_the_help_where_it_speaks_of_the_adjuster(qtbot, tmp_path, monkeypatch):
    from workbench.ui import window as window_module

    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
    papers = []
    monkeypatch.setattr(window_module, "show", papers.append)
    with window(tmp_path, qtbot) as workbench:
        workbench.bench.put_bike(bike.id, station="adjusters")
        press(qtbot, workbench, "what_fork_2")
        dialog = papers[0]
        dialog.show()
        heading = next(one for one in dialog.findChildren(QLabel) if one.text() == "Rebound")
        page = dialog.findChild(QScrollArea)
        qtbot.waitUntil(lambda: page.verticalScrollBar().value() > 0)
        assert abs(heading.mapTo(page.viewport(), QPoint(0, 0)).y()) < 40


def context_menu(workbench, reason, place):
    """Ask for the menu of the bike list, and give its lines by their words."""
    bikes = find(workbench, "bike_list", QAbstractItemView)
    target = bikes.viewport() if reason == QContextMenuEvent.Reason.Mouse else bikes
    QApplication.sendEvent(target, QContextMenuEvent(reason, place, target.mapToGlobal(place)))
    opened = workbench.window.findChild(QMenu, "bike_menu")
    return opened, {line.text(): line for line in opened.actions()} if opened else {}


def test_the_bike_list_offers_its_deeds_by_menu_key_and_by_right_click(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        first, second = a_bike(desk, name="Alder"), a_bike(desk, name="Birch")
    with window(tmp_path, qtbot) as workbench:
        workbench.view_model.open_bike(first.id)
        bikes = find(workbench, "bike_list", QAbstractItemView)
        row = bikes.visualRect(bikes.model().index(1, 0)).center()
        opened, lines = context_menu(workbench, QContextMenuEvent.Reason.Mouse, row)
        assert list(lines) == ["Open", "Put away"]
        lines["Put away"].trigger()
        opened.close()
        assert [one.name for one in workbench.view_model.state.rows] == ["Alder"]
        assert workbench.view_model.state.bike_id == first.id
        QApplication.processEvents()
        bikes.setCurrentIndex(bikes.model().index(0, 0))
        opened, lines = context_menu(workbench, QContextMenuEvent.Reason.Keyboard, QPoint(0, 0))
        lines["Put away"].trigger()
        opened.close()
        assert workbench.view_model.state.bike_id is None
        menu(workbench, "undo")
        menu(workbench, "undo")
        assert len(workbench.desk.ask(garage_rows())) == 2
        assert second.id in {one.bike_id for one in workbench.view_model.state.rows}


def test_a_right_click_beside_the_bikes_offers_nothing(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        a_bike(desk)
    with window(tmp_path, qtbot) as workbench:
        bikes = find(workbench, "bike_list", QAbstractItemView)
        below = bikes.viewport().rect().bottomLeft()
        assert context_menu(workbench, QContextMenuEvent.Reason.Mouse, below) == (None, {})


def test_an_unforeseen_failure_is_written_down_said_once_and_survived(qtbot, tmp_path, monkeypatch):
    said = []
    monkeypatch.setattr(messages, "failure", lambda *words: said.append(words))
    refusals = []
    hook = excepthook(tmp_path / "logs" / "trouble.log", refusals.append)
    try:
        raise ZeroDivisionError("nobody foresaw this")
    except ZeroDivisionError:
        hook(*sys.exc_info())
    assert "nobody foresaw this" in (tmp_path / "logs" / "trouble.log").read_text(encoding="utf-8")
    assert len(said) == 1
    assert refusals == []


def test_two_windows_never_share_a_library(qtbot, tmp_path):
    from workbench.model.errors import LibraryLocked

    with window(tmp_path, qtbot) as workbench:
        assert isinstance(workbench.desk, Desk)
        with pytest.raises(LibraryLocked):
            open_library(tmp_path / "bench.trailbench", schema, now=Clock())
