"""The review on screen: every run drawn, changes picked, a setup brought back."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtWidgets import QApplication, QCheckBox

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.ui.driver import Driver, Key
from workbench.actions.ride import change_settings, keep_run, ride_records
from workbench.model.ride import Run
from workbench.ui.parts.theme import Theme, apply_theme
from workbench.ui.plots.dots import DotsPlot
from workbench.ui.plots.effects import EffectsPlot
from workbench.ui.plots.laps import LapPlot
from workbench.ui.plots.looked import LookedPlot
from workbench.ui.plots.reading import ReadPlot
from workbench.ui.plots.response import ResponsePlot
from workbench.ui.plots.timeline import TimelinePlot
from workbench.ui.review.page import ReviewPage
from workbench.viewmodels.review import ReviewViewModel
from workbench.viewmodels.review_data import EffectRow, Effects


@pytest.fixture
def bike(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike, course="<b>Loop</b>")
    for liking in (4, 5):
        a_run(desk, session, liking=liking)
    parts = desk.ask(ride_records(bike.id)).parts
    wanted = {("adjuster", parts.adjusters[1].id): 10.0}
    desk.do("Change", change_settings(bike.id, parts.riders[0].id, wanted, session_id=session.id), bike_id=bike.id)
    for liking in (8, 7):
        a_run(desk, session, liking=liking)
    return bike


def review(qtbot, desk, bike):
    return Driver(qtbot, desk, ReviewPage, ReviewViewModel, bike.id)


@pytest.fixture
def driver(qtbot, desk, bike):
    return review(qtbot, desk, bike)


def test_before_the_first_run_the_sheet_leads_to_the_ride(qtbot, desk):
    driver = review(qtbot, desk, a_counted_bike(desk))
    assert "nothing to review before the first run" in driver.words()


def test_every_run_and_every_change_is_drawn(driver):
    timeline, effects = driver.find("review_timeline", TimelinePlot), driver.find("review_effects", EffectsPlot)
    assert [point.liking for point in timeline.shown().points] == [4, 5, 8, 7]
    assert timeline.shown().points[2].mark == "open"
    assert len(effects.shown().rows) == 1
    assert timeline.accessibleName().startswith("Liking of 4 runs in the order ridden. 4 runs in 1 session.")
    assert effects.accessibleName() == driver.model.state.effects.rows[0].verdict


def test_the_table_says_the_same_in_words_and_can_be_picked_by_key(driver):
    table = driver.find("review_table")
    row = driver.model.state.effects.rows[0]
    texts = "\n".join(table.item(0, column).text() for column in range(table.columnCount()))
    assert all(words in texts for words in (row.change, row.effect_text, row.interval_text, row.verdict))
    table.setFocus()
    table.setCurrentCell(0, 1)
    driver.bot.keyClick(table, Key.Key_Return)
    assert driver.model.state.picked == row.key
    assert "What lowers certainty here" in driver.words()


def test_a_setup_is_brought_back_by_ticking_its_steps(desk, bike, driver):
    box = driver.find("review_setup")
    box.setFocus()
    driver.bot.keyClick(box, Key.Key_Home)
    assert box.currentText() == "no. 1"
    assert "fully closed, then open 6 clicks" in driver.find("review_steps").steps()[0].text
    driver.find("review_steps").setFocus()
    driver.keys(Key.Key_Space)
    assert "Setup no. 1 is on the bike." in driver.words()
    assert desk.ask(ride_records(bike.id)).current.number == 1


def test_the_names_of_courses_are_shown_as_typed(driver):
    box = driver.find("review_session")
    assert "<b>Loop</b>, 4 runs" in box.itemText(1)


def test_the_plots_follow_the_theme(qapp, driver):
    apply_theme(qapp, Theme(dark=True))
    plot = driver.find("review_timeline", TimelinePlot)
    assert plot.backgroundBrush().color() == plot.colour("card")
    assert len(plot.shown().points) == 4


def test_a_picked_change_shows_its_dots_and_its_other_answers(driver):
    assert not driver.is_shown("review_dots")
    table = driver.find("review_table")
    table.setFocus()
    table.setCurrentCell(0, 1)
    driver.bot.keyClick(table, Key.Key_Return)
    dots = driver.find("review_dots", DotsPlot)
    assert len(dots.shown()) == 20
    assert driver.model.state.closer.dots_said in dots.accessibleName()
    assert driver.model.state.closer.joint_said in driver.words()


def test_the_trend_is_taken_out_and_put_back_by_its_box(driver):
    box = driver.find("review_trend").findChild(QCheckBox)
    driver.bot.mouseClick(box, Qt.MouseButton.LeftButton)
    assert len(driver.find("review_timeline", TimelinePlot).shown().trend) == 1
    assert "The dashed line is the trend" in driver.words()
    driver.bot.keyClick(box, Key.Key_Space)
    assert driver.find("review_timeline", TimelinePlot).shown().trend == ()


def test_the_words_unfold_and_can_be_copied(qapp, driver):
    assert not driver.is_shown("review_read_out")
    driver.press("review_words")
    assert driver.find("review_read_out").text() == driver.model.state.read_out
    driver.press("review_copy")
    assert qapp.clipboard().text() == driver.model.state.read_out
    assert driver.problems == ["The summary is on the clipboard."]


def test_what_suits_leads_to_its_steps(driver):
    driver.find("review_setup").setFocus()
    driver.bot.keyClick(driver.find("review_setup"), Key.Key_Home)
    driver.press("suited_put")
    assert driver.find("review_setup").currentText() == "no. 2"
    assert driver.focused() in ("review_setup", "review_steps")


def test_lap_times_and_attributes_have_their_pictures_once_there_are_any(qtbot, desk, bike):
    driver = review(qtbot, desk, bike)
    assert not driver.is_shown("review_laps")
    assert not driver.is_shown("review_looked_plot")
    session = desk.ask(ride_records(bike.id)).open_session.session
    current = desk.ask(ride_records(bike.id)).current
    run = Run("", session.id, 0, current.id, "", "", liking=7, lap_s=161.3)
    desk.do("Keep run", keep_run(run, ratings=(("grip", 7, "front"),)), bike_id=bike.id)
    assert driver.find("review_laps", LapPlot).accessibleName() == driver.model.state.timeline.laps_said
    assert "Grip, front: 7." in driver.find("review_looked_plot", LookedPlot).accessibleName()


def test_a_point_of_the_changes_picture_picks_its_change(driver):
    plot = driver.find("review_effects", EffectsPlot)
    (dots,) = [item for item in plot.getPlotItem().items if type(item).__name__ == "ScatterPlotItem"]
    dots.sigClicked.emit(dots, dots.points(), None)
    assert driver.model.state.picked == driver.model.state.effects.rows[0].key


# Read off the pictures


def spot_of(plot, place):
    """Where a point that can be read lies in the picture, in pixels."""
    stop = plot.stops()[place]
    return plot.mapFromScene(plot.getPlotItem().getViewBox().mapViewToScene(QPointF(stop.x, stop.y)))


def point_at(plot, place):
    """Bring the pointer to a point of a picture."""
    plot.scene().sigMouseMoved.emit(plot.mapToScene(spot_of(plot, place)))


def test_what_is_under_the_pointer_is_said_in_one_line_and_gone_with_it(driver):
    plot = driver.find("review_timeline", ReadPlot)
    how = driver.find("review_runs_read").text()
    assert how.startswith("Point at")
    point_at(plot, 2)
    assert driver.find("review_runs_read").text() == plot.stops()[2].said
    QApplication.sendEvent(plot, QEvent(QEvent.Type.Leave))
    assert driver.find("review_runs_read").text() == how


def test_a_change_is_read_in_its_row_by_pointer_and_by_key(driver):
    plot, row = driver.find("review_effects", EffectsPlot), driver.model.state.effects.rows[0]
    said = []
    plot.read.connect(said.append)
    point_at(plot, 0)
    assert said[-1] == row.read
    assert row.interval_text in row.read
    assert plot.told_in_row() == f"{row.effect_text} ({row.interval_text})"
    QApplication.sendEvent(plot, QEvent(QEvent.Type.Leave))
    assert plot.told_in_row() == ""
    plot.setFocus(Qt.FocusReason.TabFocusReason)
    assert plot.told_in_row() == f"{row.effect_text} ({row.interval_text})"
    driver.keys(Key.Key_Return)
    assert driver.model.state.picked == row.key


def test_arrow_keys_read_run_after_run_and_enter_opens_the_run(driver):
    plot = driver.find("review_timeline", TimelinePlot)
    plot.setFocus(Qt.FocusReason.TabFocusReason)
    assert driver.find("review_runs_read").text().endswith("run 1, setup no. 1: liking 4")
    driver.keys(Key.Key_Right, Key.Key_Right)
    assert (
        "run 3, setup no. 2 (Fork: low-speed rebound 4 clicks out): liking 8" in driver.find("review_runs_read").text()
    )
    assert plot.accessibleDescription() == driver.find("review_runs_read").text()
    driver.keys(Key.Key_Return)
    assert driver.find("review_run_said").text() == driver.model.state.run_said
    assert driver.model.state.picked == driver.model.state.effects.rows[0].key
    driver.keys(Key.Key_End, Key.Key_Right)
    assert "run 4" in driver.find("review_runs_read").text()
    plot.clearFocus()
    assert driver.find("review_runs_read").text().startswith("Point at")


def test_a_click_on_a_run_opens_it_and_a_second_one_lets_it_go(driver):
    plot = driver.find("review_timeline", TimelinePlot)
    driver.bot.mouseClick(plot.viewport(), Qt.MouseButton.LeftButton, pos=spot_of(plot, 3))
    run_id = driver.model.state.timeline.points[3].run_id
    assert driver.model.state.run_id == run_id
    assert "run 4" in driver.find("review_run_said").text()
    plot.run_picked.emit(run_id)
    assert not driver.is_shown("review_run_said")


def test_the_table_has_the_same_runs_in_numbers_and_opens_them(driver):
    assert not driver.is_shown("review_runs_table")
    driver.press("review_runs_fold")
    table = driver.find("review_runs_table")
    cells = [[table.item(row, column).text() for column in range(4)] for row in range(table.rowCount())]
    assert cells[2][1:] == ["no. 2", "liking 8", "Fork: low-speed rebound 4 clicks out"]
    assert [read[2] for read in cells] == ["liking 4", "liking 5", "liking 8", "liking 7"]
    table.setFocus()
    table.setCurrentCell(1, 0)
    assert driver.model.state.run_id == driver.model.state.timeline.points[1].run_id
    table.setCurrentCell(2, 0)
    assert "run 3" in driver.find("review_run_said").text()


def test_the_curve_is_read_position_by_position_and_stands_below_in_words(driver):
    plot = driver.find("review_response", ResponsePlot)
    plot.setFocus(Qt.FocusReason.TabFocusReason)
    driver.keys(Key.Key_End)
    assert driver.find("response_read").text() == "10 from closed: rated 7, 8"
    driver.press("response_fold")
    assert "6 from closed: rated 4, 5" in driver.find("response_places").text().split("\n")


def test_each_change_has_a_line_of_its_own_beside_its_point(qtbot):
    plot = EffectsPlot()
    qtbot.addWidget(plot)
    told = ("no. 1 to 2", 0.5, -0.5, 1.5), ("no. 2 to 3", -1.0, -2.0, 0.0)
    rows = tuple(EffectRow(key, "", "", key, *numbers, "", "", "", "", "", "") for key, *numbers in told)
    plot.show_effects(Effects(rows), "")
    lines = next(item for item in plot.getPlotItem().listDataItems() if getattr(item, "xData", None) is not None)
    assert lines.opts["connect"] == "pairs", "no line from one change to the next"
    assert list(lines.xData) == [-0.5, 1.5, -2.0, 0.0]
    first, second = plot.middles()
    assert list(lines.yData) == [first, first, second, second]
