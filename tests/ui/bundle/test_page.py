"""In and out, worked by mouse and keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from tests.fixtures import a_bike, everything, make_desk
from tests.ui.driver import Driver
from workbench.actions.edit import edit
from workbench.model.bike import Bike
from workbench.ui.bundle.page import BundlePage
from workbench.viewmodels.bundle import BundleViewModel

Key = Qt.Key


@pytest.fixture
def target(tmp_path, monkeypatch):
    """Where the file dialogs point to."""
    path = tmp_path / "larch.bundle.json"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    return path


@pytest.fixture
def there(tmp_path):
    with make_desk(tmp_path / "there") as desk:
        yield desk


def test_a_bike_goes_out_here_and_comes_in_there(qtbot, desk, there, target):
    bike = a_bike(there, name="Larch <b>150</b>")
    out = Driver(qtbot, there, BundlePage, BundleViewModel, bike.id)
    assert out.find("bundle_take_bike").words() == "Take Larch <b>150</b> along ..."
    out.press("bundle_take_bike")
    assert str(target) in out.find("bundle_said").text()
    sheet = Driver(qtbot, desk, BundlePage, BundleViewModel)
    assert sheet.focused() == "bundle_open"
    sheet.keys(Key.Key_Return)
    assert sheet.focused() == "bundle_bring"
    assert "1 bike" in sheet.words()
    sheet.keys(Key.Key_Return)
    assert everything(desk)[Bike] == (bike,)
    assert sheet.kept == ["Bring in Larch <b>150</b>"]
    sheet.press("bundle_open")
    assert "Nothing new" in sheet.find("bundle_said").text()
    assert not sheet.is_shown("bundle_bring")


def test_a_version_is_chosen_by_mouse(qtbot, desk, there, target):
    bike = a_bike(there)
    out = Driver(qtbot, there, BundlePage, BundleViewModel, bike.id)
    out.press("bundle_take_bike")
    sheet = Driver(qtbot, desk, BundlePage, BundleViewModel)
    sheet.press("bundle_open")
    sheet.press("bundle_bring")
    for one, word in ((desk, "here"), (there, "there")):
        one.do("Tag", edit(Bike, bike.id, "tags", word), bike_id=bike.id)
    out.press("bundle_take_bike")
    sheet.press("bundle_open")
    assert "tags “here” → “there”" in sheet.words()
    sheet.press("bundle_bring")
    assert "which version stays" in sheet.find("bundle_problem").text()
    sheet.press("bundle_choice_1_file")
    sheet.press("bundle_bring")
    assert everything(desk)[Bike][0].tags == "there"


def test_a_file_of_something_else_is_refused_on_the_sheet(qtbot, desk, target):
    target.write_bytes(b"\x89PNG\r\n")
    sheet = Driver(qtbot, desk, BundlePage, BundleViewModel)
    sheet.press("bundle_open")
    assert "no text file" in sheet.find("bundle_problem").text()
    assert not sheet.is_shown("bundle_bring")
    sheet.press("bundle_close")
    assert sheet.asked_for == ["garage"]
