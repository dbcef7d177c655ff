"""The review without a window: timeline, effects, and the way back."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings, end_session, ride_records, set_run_aside
from workbench.model.setting import Item
from workbench.viewmodels.review import ALL, ReviewViewModel
from workbench.viewmodels.review_basis import _lately
from workbench.viewmodels.review_data import EffectRow, RunPoint


def move(desk, bike, session, position, place=1, **more):
    parts = desk.ask(bike_parts(bike.id))
    wanted = {(Item.ADJUSTER.value, parts.adjusters[place].id): float(position)}
    deed = change_settings(bike.id, parts.riders[0].id, wanted, session_id=session.id, **more)
    return desk.do("Change", deed, bike_id=bike.id)


@pytest.fixture
def ridden(desk):
    """Warm-up, two runs as found, two more open and better, back, and one set aside."""
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=4, is_warmup=True)
    for liking in (4, 5):
        a_run(desk, session, liking=liking)
    move(desk, bike, session, 10)
    for liking in (8, 8):
        a_run(desk, session, liking=liking)
    move(desk, bike, session, 6)
    last = a_run(desk, session, liking=4)
    desk.do("Aside", set_run_aside(last.id, "Disturbed on the way"), bike_id=bike.id)
    return bike, session


def sheet(desk, ridden):
    return shown(ReviewViewModel, desk, ridden[0].id)[0]


def test_there_is_nothing_to_review_before_a_run(desk):
    assert "Pick a bike" in shown(ReviewViewModel, desk)[0].state.blocked
    assert "first run" in shown(ReviewViewModel, desk, a_counted_bike(desk).id)[0].state.blocked


def test_every_run_stands_on_the_timeline_with_its_change_marked(desk, ridden):
    timeline = sheet(desk, ridden).state.timeline
    assert [point.liking for point in timeline.points] == [4, 4, 5, 8, 8, 4]
    assert [point.mark for point in timeline.points] == ["baseline"] * 3 + ["open"] * 2 + ["baseline"]
    assert [(period.first, period.last, period.label) for period in timeline.periods] == [
        (1, 3, "no. 1"),
        (4, 5, "no. 2"),
        (6, 6, "no. 1"),
    ]
    assert timeline.points[0].is_warmup
    assert timeline.points[5].is_set_aside
    assert timeline.points[5].said == "run 6, setup no. 1, liking 4, set aside: Disturbed on the way"


def test_a_change_is_judged_with_its_interval_in_words_and_numbers(desk, ridden):
    (row,) = sheet(desk, ridden).state.effects.rows
    assert row.key == "1-2"
    assert row.change == "no. 1 to 2: Fork: low-speed rebound 4 clicks out"
    assert 2 < row.effect < 5
    assert row.low < row.effect < row.high
    assert row.runs_text == "2 and 2"
    assert row.effect_text.startswith("+")
    assert row.verdict
    assert row.cautions
    assert not {"best", "optimal", "significant", "proven"} & set(row.verdict.lower().split())


def test_the_summary_says_how_many_runs_were_set_aside(desk, ridden):
    assert sheet(desk, ridden).state.summary.startswith("6 runs in 1 session, 1 set aside. ")


def test_two_changes_at_once_are_hatched_on_the_timeline(desk, ridden):
    bike, session = ridden
    a_run(desk, session, liking=5)
    move(desk, bike, session, 9)
    move(desk, bike, session, 2, place=0, say_confounded=True)
    a_run(desk, session, liking=7)
    state = sheet(desk, ridden).state
    assert [period.is_confounded for period in state.timeline.periods] == [False, False, False, True]
    assert state.timeline.points[-1].mark == "other"


def test_one_session_can_be_looked_at_alone(desk, ridden):
    bike, session = ridden
    desk.do("End", end_session(session.id), bike_id=bike.id)
    second = a_session(desk, bike, course="Ridge")
    a_run(desk, second, liking=6)
    view_model = sheet(desk, ridden)
    assert view_model.state.sessions[0][1] == "All sessions"
    assert view_model.state.sessions[1][1].endswith("Ridge, 1 run")
    assert view_model.state.summary.startswith("7 runs in 2 sessions, 1 set aside. The session is still open")
    view_model.pick_session(second.id)
    assert len(view_model.state.timeline.points) == 1
    assert view_model.state.summary.startswith("1 run in 1 session.")
    view_model.pick_session(ALL)
    places = [point.place for point in view_model.state.timeline.points]
    assert places == [1, 2, 3, 4, 5, 6, 8], "a gap parts the sessions"


def test_a_picked_change_shows_its_setup_and_picking_again_lets_go(desk, ridden):
    view_model = sheet(desk, ridden)
    row = view_model.state.effects.rows[0]
    view_model.pick_change(row.key)
    assert (view_model.state.picked, view_model.state.setup_id) == (row.key, row.after_id)
    view_model.pick_change(row.key)
    assert view_model.state.picked == ""


def test_a_setup_is_restored_by_its_step_list_and_keeps_its_number(desk, ridden):
    bike, _ = ridden
    view_model = sheet(desk, ridden)
    second = view_model.state.setups[1][0]
    view_model.pick_setup(second)
    assert view_model.state.setup_said == "rated 8, 8"
    (step,) = view_model.state.steps
    assert step.text == "Fork: low-speed rebound: fully closed, then open 10 clicks"
    assert step.remark == "4 clicks out from where it stands"
    view_model.take_step(step.key)
    assert view_model.state.steps_done == "Setup no. 2 is on the bike."
    records = desk.ask(ride_records(bike.id))
    assert records.current.id == second
    assert len(records.setups) == 2
    desk.undo()
    assert view_model.state.steps == (step,)
    view_model.take_all()
    assert desk.undo_label() == "Restore setup no. 2"


def test_what_is_drawn_is_finite():
    with pytest.raises(ValueError, match="finite"):
        RunPoint("r", "s", 1.0, math.nan, "baseline", "")
    with pytest.raises(ValueError, match="finite"):
        EffectRow("k", "a", "b", "", 1.0, -math.inf, 2.0, "", "", "", "", "", "")


def test_with_very_many_runs_the_last_session_comes_first_and_all_can_be_asked_for(desk, ridden, monkeypatch):
    bike, session = ridden
    desk.do("End", end_session(session.id), bike_id=bike.id)
    later = a_session(desk, bike, course="Long one")
    a_run(desk, later, liking=6)
    monkeypatch.setattr("workbench.viewmodels.review.MOST_UNASKED", 6)
    view_model = sheet(desk, ridden)
    assert view_model.state.session == later.id
    assert len(view_model.state.timeline.points) == 1
    assert "The last of 2 sessions is shown" in view_model.state.summary
    view_model.pick_session(ALL)
    assert len(view_model.state.timeline.points) == 7
    assert "is shown" not in view_model.state.summary
    view_model.pick_session(later.id)
    assert "is shown" not in view_model.state.summary


def test_how_a_rider_scatters_is_taken_from_the_latest_sessions_before(desk, ridden):
    bike, session = ridden
    records = desk.ask(ride_records(bike.id))
    many = tuple(replace(records.sessions[0], session=replace(session, id=str(number))) for number in range(20))
    assert [one.session.id for one in _lately(many)] == [str(number) for number in range(12, 20)]
    assert _lately(many[:3]) == many[:3]
