"""The ride's sheet driven by keys and mouse."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from tests.fixtures import a_bike, a_session
from tests.ui.driver import Driver, Key
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings, ride_records
from workbench.actions.setups import name_setup
from workbench.model.setting import Item
from workbench.ui.ride.page import RidePage
from workbench.viewmodels.ride import RideViewModel


def ride(qtbot, desk, bike):
    return Driver(qtbot, desk, RidePage, RideViewModel, bike.id)


@pytest.fixture
def riding(qtbot, desk, bike):
    a_session(desk, bike)
    return ride(qtbot, desk, bike)


def runs(desk, bike):
    return desk.ask(ride_records(bike.id)).sessions[-1].runs


def test_riding_without_a_baseline_leads_to_it(qtbot, desk):
    driver = ride(qtbot, desk, a_bike(desk))
    assert "Write setup no. 1 first" in driver.words()
    button = next(one for one in driver.page.findChildren(object) if getattr(one, "words", None) and _says(one))
    driver.bot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert driver.asked_for == ["baseline"]


def _says(button):
    return button.isVisible() and button.metaObject().className() == "Button" and button.words() == "Go to the baseline"


def test_a_session_is_started_with_the_keyboard_alone(qtbot, desk, bike):
    driver = ride(qtbot, desk, bike)
    assert driver.focused() == "ride_new_course"
    driver.bot.keyClicks(driver.page.focusWidget(), "Quarry loop")
    driver.tab_to("ride_verified")
    driver.keys(Key.Key_Space)
    driver.tab_to("ride_start")
    driver.keys(Key.Key_Space)
    assert driver.kept == ["Start session"]
    assert "Session on Quarry loop" in driver.words()


def test_a_start_without_a_course_is_refused_at_the_field(qtbot, desk, bike):
    driver = ride(qtbot, desk, bike)
    driver.press("ride_start")
    assert driver.focused() == "ride_new_course"
    assert "Pick a course or name a new one." in driver.words()
    assert runs_or_none(desk, bike) == ()


def runs_or_none(desk, bike):
    return desk.ask(ride_records(bike.id)).sessions


def test_a_run_is_kept_with_number_keys_and_enter(desk, bike, riding):
    riding.keys(Key.Key_7, Key.Key_Return)
    (run,) = runs(desk, bike)
    assert (run.number, run.liking) == (1, 7)
    assert riding.kept == ["Keep run 1, liking 7"]
    assert "Run 2" in riding.words()
    riding.page.start()
    riding.keys(Key.Key_5, Key.Key_Return)
    assert [one.liking for one in runs(desk, bike)] == [7, 5]


def test_a_run_is_kept_with_the_mouse_and_typed_travel(desk, bike, riding):
    riding.keys(Key.Key_6)
    riding.type_into("run_travel_front", "142")
    riding.type_into("run_travel_rear", "5,1 cm")
    riding.press("run_keep")
    (run,) = runs(desk, bike)
    assert (run.liking, run.travel_front_mm, run.travel_rear_mm) == (6, 142.0, 51.0)


def test_travel_beyond_the_fork_is_said_at_its_field_and_nothing_is_lost(desk, bike, riding):
    riding.keys(Key.Key_6)
    riding.type_into("run_travel_front", "999", then=Key.Key_Return)
    assert riding.focused() == "run_travel_front"
    assert "the fork travel" in riding.words()
    assert riding.find("run_travel_front").text() == "999"
    assert runs(desk, bike) == ()
    riding.type_into("run_travel_front", "142", then=Key.Key_Return)
    assert [(one.liking, one.travel_front_mm) for one in runs(desk, bike)] == [(6, 142.0)]


def test_a_second_free_change_is_refused_unless_said(desk, bike, riding):
    riding.keys(Key.Key_5, Key.Key_Return)
    change_by_hand(riding, "rebound", "9")
    assert "Ride it now" in riding.words()
    change_by_hand(riding, "compression", "2")
    assert "2 things at once" in riding.words()
    assert riding.focused() == "by_hand_value"
    assert len(desk.ask(ride_records(bike.id)).setups) == 2
    tick(riding, "by_hand_both")
    riding.press("by_hand_take")
    assert desk.ask(ride_records(bike.id)).setups[-1].is_confounded


def change_by_hand(driver, kind, text):
    if not driver.is_shown("by_hand_what"):
        driver.press("next_by_hand")
    box = driver.find("by_hand_what")
    place = next(place for place in range(box.count()) if f"Fork: low-speed {kind}" in box.itemText(place))
    box.setFocus()
    driver.bot.keyClick(box, Key.Key_Home)
    for _ in range(place):
        driver.bot.keyClick(box, Key.Key_Down)
    assert box.currentIndex() == place
    driver.type_into("by_hand_value", text, then=Key.Key_Return)


def tick(driver, name):
    driver.find(f"{name}_entry" if driver.is_shown(f"{name}_entry") else name).setFocus()
    driver.keys(Key.Key_Space)


def test_the_proposal_is_set_with_one_press_and_says_what_changed(desk, bike, riding):
    for _ in range(2):
        riding.page.start()
        riding.keys(Key.Key_5, Key.Key_Return)
    riding.press("next_set")
    assert "Ride it now" in riding.words()
    assert "three pushes" in riding.words()
    assert "Stop testing if anything feels wrong." in riding.words()
    assert desk.ask(ride_records(bike.id)).current.number == 2


def test_an_entry_half_made_is_on_screen_again_when_the_page_is_built_anew(qtbot, desk, bike, riding):
    riding.keys(Key.Key_8)
    riding.type_into("run_travel_front", "14")
    again = ride(qtbot, desk, bike)
    assert again.find("run_travel_front").text() == "14"
    again.page.start()
    again.keys(Key.Key_Return)
    assert [(one.liking, one.travel_front_mm) for one in runs(desk, bike)] == [(8, 14.0)]


def test_a_session_ends_and_is_opened_again(desk, bike, riding):
    riding.keys(Key.Key_5, Key.Key_Return)
    riding.press("session_end")
    assert "Start a session" in riding.words()
    riding.press("ride_reopen")
    assert "Run 2" in riding.words()


def test_names_of_courses_are_shown_as_typed(qtbot, desk, bike):
    a_session(desk, bike, course="<b>Loop</b> & <img src=x>")
    driver = ride(qtbot, desk, bike)
    assert "Session on <b>Loop</b> & <img src=x>" in driver.words()


def test_attributes_are_folded_away_and_rated_with_a_digit_each(desk, bike, riding):
    assert not riding.is_shown("run_scores")
    riding.keys(Key.Key_7)
    riding.press("run_attributes")
    assert riding.focused() == "run_score_grip_front"
    riding.keys(Key.Key_6, Key.Key_5, Key.Key_8)
    assert riding.focused() == "run_score_bottom_out_front"
    riding.keys(Key.Key_Return)
    (run,) = runs(desk, bike)
    ratings = desk.ask(ride_records(bike.id)).sessions[-1].ratings
    assert (run.liking, {(one.attribute, one.end): one.score for one in ratings}) == (
        7,
        {("grip", "front"): 6, ("comfort", "front"): 5, ("support", "front"): 8},
    )


def test_a_session_judged_by_lap_time_asks_for_it(qtbot, desk, bike):
    session = a_session(desk, bike)
    desk.do("Judge by lap", lambda gate: gate.put(replace(session, response="lap_s")), bike_id=bike.id)
    driver = ride(qtbot, desk, bike)
    assert driver.is_shown("run_lap")
    driver.find("run_liking").setFocus()
    driver.keys(Key.Key_7, Key.Key_Return)
    driver.find("run_liking").setFocus()
    driver.keys(Key.Key_8)
    assert runs(desk, bike)[0].is_warmup, "a warm-up needs no lap time"
    driver.press("run_keep")
    assert driver.focused() == "run_lap"
    assert "judged by it" in driver.words()


def test_a_tick_shows_suspects_and_a_click_leads_to_the_next_step(desk, bike, riding):
    riding.press("run_notice")
    riding.press("noticed_packs")
    riding.press("where_packs_rear")
    assert "Rebound too slow for a row of hits" in riding.words()
    riding.press("suspect_packs_1_work")
    assert "Rear" in riding.find("next_title").text()


def test_after_a_suspect_is_picked_the_focus_is_on_the_next_step(desk, bike, riding):
    riding.keys(Key.Key_7, Key.Key_Return)
    riding.press("run_notice")
    riding.press("noticed_packs")
    riding.press("suspect_packs_1_work")
    assert riding.focused() in ("next_set", "next_by_hand")


def test_several_runs_are_marked_by_mouse(desk, bike, riding):
    for _ in range(2):
        riding.page.start()
        riding.keys(Key.Key_7, Key.Key_Return)
    riding.press("run_marks")
    riding.find("mark_first").setCurrentIndex(0)
    riding.press("mark_take")
    assert [run.lever for run in runs(desk, bike)] == ["rear closed", "rear closed"]
    assert not riding.is_shown("mark_take")


def test_a_session_switches_to_a_named_setup_by_keys(qtbot, desk, bike):
    dry = desk.ask(ride_records(bike.id)).current
    knob = desk.ask(bike_parts(bike.id)).adjusters[0]
    other = {(Item.ADJUSTER.value, knob.id): 2.0}
    wet = desk.do("Set", change_settings(bike.id, dry.rider_id, other), bike_id=bike.id)
    desk.do("Name", name_setup(wet.id, "wet <b>roots</b>"), bike_id=bike.id)
    back = {key: desk.ask(ride_records(bike.id)).values[dry.id][key] for key in other}
    desk.do("Back", change_settings(bike.id, dry.rider_id, back), bike_id=bike.id)
    a_session(desk, bike)
    driver = ride(qtbot, desk, bike)
    driver.tab_to("switch_fold")
    driver.keys(Key.Key_Space)
    assert driver.focused() == "switch_setups"
    assert "fully closed, then open 2 clicks" in driver.find("switch_steps").text()
    driver.tab_to("switch_set")
    driver.keys(Key.Key_Space)
    assert driver.kept == ["Switch to setup no. 2 “wet <b>roots</b>”"]
    assert desk.ask(ride_records(bike.id)).current.id == wet.id
    assert not driver.is_shown("switch_set")


def test_what_the_session_is_judged_by_has_the_focus_first_run_after_run(qtbot, desk, bike):
    session = a_session(desk, bike)
    desk.do("Judge by lap", lambda gate: gate.put(replace(session, response="lap_s")), bike_id=bike.id)
    driver = ride(qtbot, desk, bike)
    for lap in ("1:41.3", "1:40.2"):
        assert driver.focused() == "run_lap"
        driver.bot.keyClicks(driver.page.focusWidget(), lap)
        driver.find("run_liking").setFocus()
        driver.keys(Key.Key_7, Key.Key_Return)
    assert [(run.lap_s, run.liking) for run in runs(desk, bike)] == [(101.3, 7), (100.2, 7)]


def test_a_session_judged_by_liking_begins_at_the_liking_with_the_lap_folded_away(riding):
    assert riding.focused().startswith("run_liking")
    assert not riding.is_shown("run_lap")


def test_the_watch_is_started_and_stopped_by_one_key_and_shows_its_time(riding):
    riding.press("run_more")
    assert riding.find("run_watch").words() == "Start the watch"
    riding.press("run_watch")
    assert riding.find("run_watch").words() == "Stop the watch"
    assert ":" in riding.find("run_watch_time").text(), "at once"
    riding.press("run_watch")
    assert not riding.is_shown("run_watch_time")
    assert ":" in riding.find("run_lap").text()
