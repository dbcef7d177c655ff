"""The blind test's screens: planned, handed to and fro, rated, guessed; and nobody's screen tells anybody anything."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from tests.fixtures import a_baseline, a_counted_bike, everything
from tests.ui.driver import Driver
from workbench.actions.parts import bike_parts
from workbench.model.ride import BlindPlan, Run, Session
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import StepList
from workbench.ui.ride.page import RidePage
from workbench.viewmodels.ride import RideViewModel

Key = Qt.Key


@pytest.fixture
def riding(qtbot, desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    driver = Driver(qtbot, desk, RidePage, RideViewModel, bike.id)
    driver.model.seeds = lambda: 20
    driver.rebound = desk.ask(bike_parts(bike.id)).adjusters[1].id
    return driver


def plan(driver, *, pairs="1", value="10"):
    driver.press("ride_blind")
    driver.model.set_plan("item", f"adjuster/{driver.rebound}")
    driver.type_into("blind_value", value)
    driver.type_into("blind_pairs", pairs)
    driver.type_into("ride_new_course", "Quarry loop")
    driver.press("ride_verified_entry")


def begin(driver, **more):
    plan(driver, **more)
    driver.press("blind_begin")
    assert driver.is_shown("blind_to_helper")


def put_on(driver):
    """The helper's turn, by keys: open, tick, hand over."""
    assert driver.focused() == "blind_door"
    driver.tab_to("blind_to_helper")
    driver.keys(Key.Key_Return)
    assert driver.focused().startswith("blind_steps_")
    driver.keys(Key.Key_Space)
    driver.tab_to("blind_to_rider")
    driver.keys(Key.Key_Return)
    assert driver.focused().startswith("blind_liking")


def test_a_plan_is_made_beside_the_start_of_a_session(riding):
    assert not riding.is_shown("blind_value")
    riding.press("ride_blind")
    assert riding.focused() == "blind_value"
    for name in ("ride_planned", "ride_not_verified", "ride_start", "ride_blind"):
        assert not riding.is_shown(name), name
    riding.press("blind_drop")
    assert riding.is_shown("ride_start")


def test_what_a_plan_can_show_is_said_as_the_pairs_are_typed(riding):
    plan(riding, pairs="3")
    assert "1 of 4" in riding.find("blind_most").text()
    riding.type_into("blind_pairs", "2")
    assert "cannot reach its aim" in riding.find("blind_weak").text()
    riding.type_into("blind_pairs", "x")
    assert not riding.is_shown("blind_most")


@pytest.mark.parametrize(
    ("name", "text", "field", "words"),
    [
        ("blind_value", "0", "blind_value", "never ridden blind"),
        ("blind_pairs", "99", "blind_pairs", "1 to 12"),
        ("ride_new_course", "", "ride_new_course", "course"),
        ("ride_temperature", "warm", "ride_temperature", "warm"),
    ],
)
def test_bad_entries_are_said_where_they_stand_and_lose_nothing(riding, name, text, field, words):
    plan(riding)
    riding.type_into(name, text)
    riding.press("blind_begin")
    assert riding.focused() == field
    assert words in riding.words()
    assert riding.find(name).text() == text
    assert everything(riding.desk)[Session] == ()


def test_an_unverified_start_is_said_at_its_tick_box(riding):
    plan(riding)
    riding.press("ride_verified_entry")
    riding.press("blind_begin")
    assert riding.focused() == "ride_verified_entry"
    assert riding.is_shown("ride_verified_said")
    riding.press("ride_verified_entry")
    assert not riding.is_shown("ride_verified_said")


def test_a_whole_test_goes_by_keys_from_the_first_run_to_the_reveal(riding):
    begin(riding)
    for digit in (Key.Key_5, Key.Key_7):
        put_on(riding)
        riding.keys(digit, Key.Key_Return)
    assert riding.focused().startswith("blind_guess_1")
    riding.keys(Key.Key_2)
    riding.tab_to("blind_reveal")
    riding.keys(Key.Key_Return)
    assert riding.asked_for == ["review"]
    assert riding.problems == ["The blind test is revealed. It is not undone, because it has been seen."]
    runs = sorted(everything(riding.desk)[Run], key=lambda run: run.number)
    assert [run.liking for run in runs] == [5, 7]
    assert [run.guess for run in runs] == ["A", "B"]


def test_the_helpers_words_are_gone_as_soon_as_the_screen_is_the_riders(riding):
    begin(riding)
    assert "then open" not in riding.words()
    riding.press("blind_to_helper")
    assert "Setup no." in riding.words()
    put_words = riding.find("blind_steps").steps()[0].text
    assert "fully closed, then open" in put_words
    riding.keys(Key.Key_Space)
    riding.press("blind_to_rider")
    assert "then open" not in riding.words()
    assert riding.page.findChild(StepList, "blind_steps").steps() == (), "not even where it is not seen"
    assert riding.page.findChild(Words, "blind_setup").text() == ""


def test_the_screen_is_not_handed_over_before_all_is_ticked(riding):
    begin(riding)
    riding.press("blind_to_helper")
    riding.press("blind_to_rider")
    assert riding.is_shown("blind_steps_said")
    assert riding.focused().startswith("blind_steps_")


def test_a_run_without_a_rating_is_asked_for_one(riding):
    begin(riding)
    put_on(riding)
    riding.press("blind_keep")
    assert riding.is_shown("blind_said")
    assert riding.focused().startswith("blind_liking")


def test_an_enter_too_many_of_the_riders_does_not_open_the_helpers_screen(riding):
    begin(riding)
    put_on(riding)
    riding.keys(Key.Key_7, Key.Key_Return, Key.Key_Return, Key.Key_Space, Key.Key_Return)
    assert riding.is_shown("blind_to_helper")
    assert "then open" not in riding.words()


def test_attributes_fold_out_and_are_kept(riding):
    begin(riding)
    put_on(riding)
    riding.press("blind_attributes")
    riding.keys(Key.Key_8)
    assert riding.model.state.blind.draft.scores == (("grip/front", 8),)


def test_a_run_that_does_not_count_is_ridden_again(riding):
    begin(riding)
    put_on(riding)
    menu = riding.find("blind_spoilt").menu()
    next(action for action in menu.actions() if action.text() == "Fell or stopped").trigger()
    assert riding.find("ride_sheet_subtitle").text() == "Run 1 of 2"
    assert everything(riding.desk)[Run][0].is_set_aside


def test_a_hidden_page_shows_nobodys_screen_when_it_comes_back(riding):
    begin(riding)
    riding.press("blind_to_helper")
    riding.page.hide()
    riding.page.show()
    assert riding.is_shown("blind_to_helper")
    assert "then open" not in riding.words()


def test_a_stopped_test_can_go_on_or_be_revealed_with_no_pair(riding):
    begin(riding)
    riding.press("blind_stop")
    assert "nothing to guess" in riding.find("blind_asked").text()
    riding.press("blind_go_on")
    riding.press("blind_stop")
    riding.press("blind_reveal")
    assert everything(riding.desk)[BlindPlan][0].revealed_at


def test_a_missing_guess_is_asked_for_where_it_is_missing(riding):
    begin(riding, pairs="2")
    for digit in (Key.Key_5, Key.Key_7, Key.Key_6, Key.Key_6):
        put_on(riding)
        riding.keys(digit, Key.Key_Return)
    riding.keys(Key.Key_1)
    riding.press("blind_reveal")
    assert "pair 2" in riding.find("blind_guess_said").text()
    assert riding.focused().startswith("blind_guess_2")


def test_a_test_judged_by_lap_time_begins_every_run_at_it(riding):
    plan(riding)
    riding.model.set_start("response", "lap_s")
    riding.press("blind_begin")
    riding.press("blind_to_helper")
    riding.keys(Key.Key_Space)
    riding.press("blind_to_rider")
    assert riding.focused() == "blind_lap"
    riding.keys(Key.Key_Return)
    assert "judged by it" in riding.words()
    riding.bot.keyClicks(riding.page.focusWidget(), "1:41.3")
    riding.keys(Key.Key_Return)
    assert [run.lap_s for run in everything(riding.desk)[Run]] == [101.3]


def test_a_test_judged_by_liking_has_the_lap_time_before_the_note(riding):
    begin(riding)
    put_on(riding)
    riding.type_into("blind_lap", "1:40")
    riding.find("blind_liking").setFocus()
    riding.keys(Key.Key_6, Key.Key_Return)
    assert [(run.lap_s, run.liking) for run in everything(riding.desk)[Run]] == [(100.0, 6)]
