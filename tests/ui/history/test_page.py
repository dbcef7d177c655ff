"""The history, worked by mouse and keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QComboBox

from tests.fixtures import a_bike, everything
from tests.ui.driver import Driver
from workbench.actions.checkin import Found, checkin_records, decline_item, file_checkin
from workbench.actions.edit import edit
from workbench.actions.people import add_person
from workbench.model.bike import Bike
from workbench.ui.history.page import HistoryPage
from workbench.ui.parts.table import Table
from workbench.viewmodels.history import HistoryViewModel
from workbench.viewmodels.pictures import take_in

Key = Qt.Key


@pytest.fixture
def sheet(qtbot, desk):
    bike = a_bike(desk, name="Larch <b>150</b>")
    desk.do("Tag it", edit(Bike, bike.id, "tags", "shop"), bike_id=bike.id, station="garage")
    desk.do("Add Bo", add_person("Bo"))
    return Driver(qtbot, desk, HistoryPage, HistoryViewModel)


def listed(sheet):
    table = sheet.find("history_table", Table)
    return [table.item(row, 3).text() for row in range(table.rowCount())]


def test_typing_narrows_the_list(sheet):
    sheet.type_into("history_text", "tag", then=Key.Key_Return)
    assert listed(sheet) == ["Tag it"]
    sheet.type_into("history_text", "")
    sheet.bot.waitUntil(lambda: len(listed(sheet)) == 3)


def test_a_bike_is_chosen_and_its_name_stands_as_typed(sheet):
    box = sheet.find("history_bike", QComboBox)
    assert box.itemText(1) == "Larch <b>150</b>"
    box.setFocus()
    sheet.bot.keyClick(box, Key.Key_Down)
    assert listed(sheet) == ["Tag it"]
    assert sheet.find("history_table", Table).item(0, 2).text() == "Larch <b>150</b>"


def test_a_deed_is_picked_with_the_arrow_keys_and_undone_to(sheet):
    before = everything(sheet.desk)
    sheet.tab_to("history_table")
    sheet.keys(Key.Key_Down, Key.Key_Down)
    QApplication.processEvents()
    assert sheet.find("history_picked").text() == "Tag it"
    assert "tags – → “shop”" in sheet.find("history_changed").text()
    sheet.press("history_undo")
    assert sheet.focused() == "history_undo_yes"
    sheet.keys(Key.Key_Return)
    assert everything(sheet.desk) != before
    assert listed(sheet)[0] == "Add Bo (undone)"
    sheet.desk.redo()
    assert everything(sheet.desk) == before


def test_the_pictures_a_deed_speaks_of_are_shown_small(qtbot, desk, tmp_path):
    image = QImage(400, 300, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    image.save(str(tmp_path / "mark.png"))
    taken = take_in(desk, tmp_path / "mark.png")
    bike = a_bike(desk)
    desk.do("File", file_checkin(bike.id, "quick", (Found("frame", "attend", picture=taken),)), bike_id=bike.id)
    item_id = desk.ask(checkin_records(bike.id)).open_items[0].item.id
    desk.do("Declined", decline_item(item_id), bike_id=bike.id)
    sheet = Driver(qtbot, desk, HistoryPage, HistoryViewModel)
    for label in ("File", "Declined"):
        sheet.model.pick(next(row.key for row in sheet.model.state.rows if row.what == label))
        assert sheet.find("history_picture_1").accessibleName() == "Picture: mark.png"
    sheet.model.pick(next(row.key for row in sheet.model.state.rows if row.what == "Add Larch 150"))
    assert not sheet.is_shown("history_picture_1")


def test_the_deed_picked_stays_in_sight_above_what_is_said_of_it(sheet, desk):
    for number in range(30):
        desk.do(f"Add P{number}", add_person(f"P{number}"))
    sheet.page.resize(900, 500)
    table = sheet.find("history_table", Table)
    table.setFocus()
    for _ in range(6):
        sheet.bot.keyClick(table, Key.Key_Down)
        QApplication.processEvents()
    row = table.visualRect(table.model().index(table.currentRow(), 0))
    assert table.currentRow() >= 5
    assert table.visibleRegion().contains(row)
