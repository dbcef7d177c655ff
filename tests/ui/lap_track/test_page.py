"""Lap times from a track, worked by mouse on the plan, and without one."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QFileDialog

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.ui.driver import Driver
from tests.viewmodels.test_lap_track import track
from workbench.actions.ride import ride_records
from workbench.ui.lap_track.page import LapTrackPage
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.plots.track import TrackPlot
from workbench.viewmodels.lap_track import LapTrackViewModel

Key = Qt.Key


@pytest.fixture
def sheet(qtbot, desk, tmp_path, monkeypatch):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    for liking in (4, 5, 6):
        a_run(desk, session, liking=liking)
    path = tmp_path / "ride.gpx"
    path.write_text(track(), encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    return Driver(qtbot, desk, LapTrackPage, LapTrackViewModel, bike.id)


def laps_kept(sheet):
    return [run.lap_s for run in sheet.desk.ask(ride_records(sheet.bench.bike_id)).sessions[-1].runs]


def click_on_plan(sheet, east_m, north_m):
    plot = sheet.find("lap_plan", TrackPlot)
    at = plot.getPlotItem().getViewBox().mapViewToScene(QPointF(east_m, north_m))
    sheet.bot.mouseClick(plot.viewport(), Qt.MouseButton.LeftButton, pos=plot.mapFromScene(at))


def test_two_clicks_on_the_plan_give_the_laps(sheet):
    assert sheet.focused() == "lap_open"
    sheet.press("lap_open")
    assert "ride.gpx: 457 points with times" in sheet.words()
    click_on_plan(sheet, 0.0, -400.0)
    click_on_plan(sheet, 0.0, 400.0)
    assert sheet.find("lap_goes_3", ListBox).currentText() == "run 3"
    assert sheet.model.state.verb in sheet.words()
    sheet.press("lap_write")
    assert all(70 < lap_s < 80 for lap_s in laps_kept(sheet))
    assert sheet.asked_for == ["review"]


def test_without_a_mouse_the_gates_are_typed_and_a_lap_is_said_to_be_no_run(sheet):
    sheet.keys(Key.Key_Return)
    for name, text in (("lap_start_at_entry", "0:09"), ("lap_finish_at_entry", "1:23")):
        sheet.tab_to(name)
        sheet.bot.keyClicks(sheet.page.focusWidget(), text)
        sheet.keys(Key.Key_Return)
    assert sheet.is_shown("lap_goes_1")
    sheet.tab_to("lap_goes_1")
    sheet.keys(Key.Key_End)
    assert sheet.find("lap_goes_1", ListBox).currentText() == "no run"
    assert sheet.focused() == "lap_goes_1", "the list stays where it is worked on"
    sheet.tab_to("lap_write")
    sheet.keys(Key.Key_Return)
    assert [lap_s is not None for lap_s in laps_kept(sheet)] == [True, True, False]


def test_what_cannot_be_read_is_said_where_it_was_asked_for(sheet, tmp_path):
    sheet.press("lap_open")
    wrong = tmp_path / "<b>x.gpx"
    wrong.write_text("<kml/>", encoding="utf-8")
    sheet.page.open_file(wrong)
    assert sheet.find("lap_problem").text().startswith("<b>x.gpx gives no track.")
    sheet.tab_to("lap_start_ends_entry")
    sheet.bot.keyClicks(sheet.page.focusWidget(), "north gate")
    sheet.keys(Key.Key_Return)
    assert "46.00512" in sheet.find("lap_start_ends_said").text()
    assert sheet.focused() == "lap_start_ends_entry"
