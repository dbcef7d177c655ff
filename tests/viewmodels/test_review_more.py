"""The review along one adjuster, and sessions side by side."""

from __future__ import annotations

from dataclasses import replace

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.fit_unit import fit_unit
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person, main_rider
from workbench.actions.ride import change_settings, end_session, keep_run, ride_records
from workbench.model.ride import Run, Session
from workbench.model.setting import Item
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.review import ReviewViewModel


def move(desk, bike, session, position):
    parts = desk.ask(bike_parts(bike.id))
    wanted = {(Item.ADJUSTER.value, parts.adjusters[1].id): float(position)}
    deed = change_settings(bike.id, parts.riders[0].id, wanted, session_id=session.id)
    desk.do("Change", deed, bike_id=bike.id)


def ridden_along(desk, likings):
    """One session along one adjuster: pairs of position and liking."""
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    for position, liking in likings:
        move(desk, bike, session, position)
        a_run(desk, session, liking=liking)
    return bike, session


def test_two_positions_show_their_runs_but_name_no_place(desk):
    bike, _ = ridden_along(desk, [(3, 5), (3, 5), (9, 6)])
    told = shown(ReviewViewModel, desk, bike.id)[0].state.along.response
    assert {(dot.position, dot.liking, dot.count) for dot in told.dots} == {(3, 5.0, 2), (9, 6.0, 1)}
    assert told.low is None
    assert "too few positions" in told.said


def test_three_positions_name_an_interval_in_whole_clicks_around_the_liked_one(desk):
    bike, _ = ridden_along(desk, [(2, 4), (2, 4), (6, 8), (6, 8), (11, 3), (11, 4)])
    told = shown(ReviewViewModel, desk, bike.id)[0].state.along.response
    assert told.low <= 6 <= told.high
    assert 0 <= told.low < told.high <= told.steps
    assert told.said.startswith(f"Most likely {told.low} to {told.high} from closed")


def test_the_summary_and_the_words_tell_what_each_adjuster_gained_over_where_it_began(desk):
    bike, _ = ridden_along(desk, [(2, 3), (2, 3), (2, 3), (6, 8), (6, 8), (11, 3), (11, 4)])
    state = shown(ReviewViewModel, desk, bike.id)[0].state
    told, place = state.along.told[0], state.along.response
    assert told.startswith(
        f"Fork: low-speed rebound, most likely {place.low} to {place.high} from closed; {place.likely}"
    )
    assert f"{place.likely} liked more than 2, where it began, by about +" in told
    assert told in state.summary.splitlines()
    assert told in state.read_out.splitlines()


def test_a_gain_that_may_be_none_is_said_as_one_that_cannot_be_told(desk):
    bike, _ = ridden_along(desk, [(2, 5), (6, 5), (11, 5)])
    (told,) = shown(ReviewViewModel, desk, bike.id)[0].state.along.told
    assert "cannot be told yet" in told or told.endswith("from closed.")
    assert "liked more than 2, where it began, by about" not in told


def test_one_session_alone_is_read_out_without_what_the_others_tell_of_an_adjuster(desk):
    bike, first = ridden_along(desk, [(2, 3), (2, 3), (6, 8), (6, 8), (11, 3), (11, 4)])
    desk.do("End", end_session(first.id))
    second = a_session(desk, bike)
    a_run(desk, second, liking=6)
    review, _ = shown(ReviewViewModel, desk, bike.id)
    (told,) = review.state.along.told
    assert told in review.state.read_out
    review.pick_session(second.id)
    assert told not in review.state.read_out
    assert told not in review.state.summary


def test_many_verdicts_are_counted_in_the_summary_and_few_are_said(desk):
    bike, session = ridden_along(desk, [(3, 2), (3, 2), (3, 2), (9, 8), (9, 8), (9, 8), (9, 8)])
    assert "rated higher with no. 3 than with no. 2" in shown(ReviewViewModel, desk, bike.id)[0].state.summary
    for position, liking in [(0, 2), (13, 8), (1, 2), (12, 8), (2, 2)]:
        for _ in range(4):
            move(desk, bike, session, position)
            a_run(desk, session, liking=liking)
    state = shown(ReviewViewModel, desk, bike.id)[0].state
    settled = [row for row in state.effects.rows if row.is_settled]
    assert len(settled) > 4
    up = sum(row.way == 1 for row in settled)
    assert f"Of {len(state.effects.rows)} changes the runs speak of {up} as rated higher" in state.summary
    assert settled[0].verdict not in state.summary


def test_without_a_moved_adjuster_there_is_nothing_to_look_along(desk):
    bike, _ = ridden_along(desk, [(6, 5), (6, 6)])
    assert shown(ReviewViewModel, desk, bike.id)[0].state.along.choices == ()


def test_one_session_has_nothing_to_stand_beside(desk):
    bike, _ = ridden_along(desk, [(6, 5)])
    assert shown(ReviewViewModel, desk, bike.id)[0].state.sides.heads == ()


def test_two_sessions_stand_side_by_side_and_what_differs_is_marked(desk):
    bike, first = ridden_along(desk, [(6, 5), (6, 5)])
    desk.do("End", end_session(first.id))
    second = a_session(desk, bike)
    desk.do("Colder", lambda gate: gate.put(replace(gate.need(Session, first.id), temperature_c=20.0)))
    desk.do("Wet", lambda gate: gate.put(replace(gate.need(Session, second.id), temperature_c=8.0, surface="wet")))
    move(desk, bike, second, 9)
    a_run(desk, second, liking=7)
    sides = shown(ReviewViewModel, desk, bike.id)[0].state.sides
    rows = {row.title: row for row in sides.rows}
    assert rows["Ground"].differs
    assert not rows["Course"].differs
    assert rows["Fork: low-speed rebound"].cells == ("6 clicks from closed", "9 clicks from closed")
    assert rows["Fork: low-speed rebound"].differs
    assert "The air was 12 degrees apart." in sides.cautions
    assert "The ground was not the same." in sides.cautions


def test_attributes_rated_in_both_sessions_stand_side_by_side_with_their_intervals(desk):
    bike, first = ridden_along(desk, [(6, 5)])
    setup = desk.ask(ride_records(bike.id)).current.id

    def rate(session, *scores, attribute="grip"):
        for score in scores:
            run = Run("", session.id, 0, setup, "", "", liking=5)
            desk.do("Keep run", keep_run(run, ratings=((attribute, score, "front"),)), bike_id=bike.id)

    rate(first, 5, 6, 7, 6)
    rate(first, 4, attribute="support")
    desk.do("End", end_session(first.id))
    rate(a_session(desk, bike), 7, 8)
    rows = {row.title: row.cells for row in shown(ReviewViewModel, desk, bike.id)[0].state.sides.rows}
    assert rows["Grip, front"] == ("6.0 (nine in ten 5.0 to 7.0; 4 runs)", "7, 8")
    assert "Support, front" not in rows, "rated in one of them only"


def test_the_riders_scatter_is_said_once_something_was_ridden_twice(desk):
    bike, _ = ridden_along(desk, [(6, 5), (9, 6)])
    assert "not known how much" in shown(ReviewViewModel, desk, bike.id)[0].state.effects.steady


def test_repeats_say_how_much_a_rating_scatters(desk):
    bike, _ = ridden_along(desk, [(6, 5), (6, 6), (9, 6), (9, 5)])
    assert "a rating scatters by about" in shown(ReviewViewModel, desk, bike.id)[0].state.effects.steady


def test_all_that_was_noted_of_a_run_is_said_when_it_is_opened(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    said = {"lap_s": 101.3, "travel_front_mm": 132.0, "bottom_outs_rear": 1, "compared": 1, "note": "arms tired."}
    run = a_run(desk, session, liking=7, is_warmup=True, **said)
    model, _ = shown(ReviewViewModel, desk, bike.id)
    model.pick_run(run.id)
    assert model.state.run_said == (
        "14 May 2031, run 1, setup no. 1: liking 7, better than the run before, lap 1:41.3, warm-up. "
        "Travel used: front 132\u2009mm. Hard contacts: rear 1. Note: arms tired."
    )
    model.pick_run(run.id)
    assert model.state.run_said == ""


def test_tyres_read_after_a_run_are_said_when_it_is_opened(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    run = a_run(desk, a_session(desk, bike), liking=7, tyre_front_kpa=160.0, tyre_rear_kpa=165.0)
    model, _ = shown(ReviewViewModel, desk, bike.id)
    model.pick_run(run.id)
    assert "Tyres read after it: front 23.2\u2009psi, rear 23.9\u2009psi." in model.state.run_said


def test_what_was_ridden_on_a_fork_taken_off_keeps_its_words_and_is_not_to_be_ridden_again(desk):
    bike, session = ridden_along(desk, [(3, 4), (9, 7)])
    knob = desk.ask(bike_parts(bike.id)).adjusters[1]
    run = a_run(desk, session, liking=7, direction=1, direction_of=knob.id)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    desk.do("Fit", fit_unit(bike.id, "front", "coil", travel_mm=140.0), bike_id=bike.id)
    model, _ = shown(ReviewViewModel, desk, bike.id)
    model.pick_run(run.id)
    assert "Earlier fork: low-speed rebound too fast" in model.state.run_said
    assert model.state.suited.advice == (
        "Setup no. 3 stood on hardware that is not on the bike now: it is not ridden again as it was."
    )


def compared_only(desk, answers=((10, 1), (6, -1), (10, 1), (6, 0), (10, 1), (6, -1))):
    """A session in which nobody gave a number: only better, same or worse than the run before."""
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    parts = desk.ask(bike_parts(bike.id))
    key = (Item.ADJUSTER.value, parts.adjusters[1].id)
    a_run(desk, session, liking=5)
    for position, compared in answers:
        deed = change_settings(bike.id, parts.riders[0].id, {key: float(position)}, session_id=session.id)
        desk.do("Change", deed, bike_id=bike.id)
        a_run(desk, session, compared=compared)
    return shown(ReviewViewModel, desk, bike.id)[0]


def test_setups_that_were_only_compared_are_placed_with_their_interval(desk):
    model = compared_only(desk)
    (row,) = model.state.effects.rows
    assert row.effect > 0
    assert row.low < row.effect < row.high
    assert "no. 2" in model.state.suited.sure + model.state.suited.title
    assert "Only one setup" not in model.state.suited.advice


def test_answers_to_better_or_worse_are_counted_in_words_for_the_change_picked(desk):
    model = compared_only(desk)
    model.pick_change("1-2")
    assert (
        "Seen, not judged: ridden one right after the other and compared 6 times; no. 2 was called better 5 times, "
        "no. 1 never, the same once." in model.state.closer.joint
    )
    assert len(model.state.closer.dots) == 20


def test_nobody_is_called_better_who_always_read_the_same(desk):
    model = compared_only(desk, answers=((10, 0), (6, 0), (10, 0), (6, 0)))
    (row,) = model.state.effects.rows
    assert row.low < 0 < row.high
    assert abs(row.effect) < 0.3


def test_the_table_of_runs_is_that_of_the_rider_looked_at(desk):
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike).rider_id
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    second = desk.do("Add", add_person("A. Lindqvist", mass_kg=62.0), station="garage")
    desk.do("Main rider", main_rider(bike.id, second.id), bike_id=bike.id)
    bench = Bench(desk)
    bench.put_bike(bike.id, rider_id=first)
    model = ReviewViewModel(desk, bench)
    model.show()
    assert len(model.state.runs) == 1
    assert len(model.runs_csv().splitlines()) == 2
