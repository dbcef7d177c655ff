"""What a revealed blind test says: odds in plain words, the difference from A to B, and whether the seal holds."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tests.fixtures import a_run, a_session, everything
from tests.viewmodels.sheets import shown
from workbench.actions.blind import begin_blind, keep_blind_run, reveal
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.actions.ride import add_course, end_session, ride_records
from workbench.evidence.blind import block_orders, choice_p, randomisation_p
from workbench.model.ride import BlindPlan, Run, Session
from workbench.model.setting import Item
from workbench.viewmodels.odds import meaning, out_of
from workbench.viewmodels.review import ReviewViewModel
from workbench.viewmodels.review_blind import HIDDEN
from workbench.viewmodels.shown import Units

LIKED = {"A": 5, "B": 7}


def begun(desk, bike, *, pairs=3, seed=20):
    records = desk.ask(ride_records(bike.id))
    course = desk.do("Course", add_course("Quarry loop"))
    session = Session("", bike.id, records.parts.riders[0].id, course.id, "", verified_at=desk.now())
    key = (Item.ADJUSTER.value, desk.ask(bike_parts(bike.id)).adjusters[1].id)
    deed = begin_blind(session, records.current.id, pairs=pairs, seed=seed, wanted={key: 10.0})
    return desk.do("Begin", deed, bike_id=bike.id)


def ridden(desk, bike, *, pairs=3, runs=None, liked=LIKED, guess_right=True, seed=20):
    """A revealed test, rated by what was on the bike."""
    plan = begun(desk, bike, pairs=pairs, seed=seed)
    order = plan.order[:runs]
    for letter in order:
        run = Run("", "", 0, "", "", "", liking=liked[letter])
        desk.do("Keep", keep_blind_run(plan.session_id, run), bike_id=bike.id)
    right = {pair: order[2 * pair : 2 * pair + 2].index("B") for pair in range(len(order) // 2)}
    guesses = right if guess_right else {pair: 1 - which for pair, which in right.items()}
    desk.do("Reveal", reveal(plan.session_id, guesses=guesses), bike_id=bike.id)
    return plan


def result(desk, bike):
    return shown(ReviewViewModel, desk, bike.id)[0].state.blind


def test_a_clear_test_of_three_pairs_is_said_with_its_odds(desk, bike):
    ridden(desk, bike)
    said = result(desk, bike)
    assert said.title == "Blind test: A, no. 1, against B, no. 2 (Fork: low-speed rebound 4 clicks out)"
    assert said.ratings.startswith("Rated 7.0 with B and 5.0 with A. Rated higher with B than with A")
    assert "in 1 of 4 such tests. Chance alone does that easily" in said.by_order
    assert said.by_order.endswith("With 3 pairs it cannot get rarer.")
    assert said.guesses == (
        "Guesses right: 3 of 3. Chance alone gives this in 1 of 8 such tests. "
        "That is a hint; it settles nothing by itself."
    )
    assert said.incomplete == ""


@pytest.mark.parametrize(("seed", "first"), [(20, "A"), (3, "B")])
def test_the_difference_is_told_from_a_to_b_whichever_was_ridden_first(desk, bike, seed, first):
    assert ridden(desk, bike, seed=seed).order[0] == first
    (row,) = result(desk, bike).effects.rows
    assert row.low < row.effect < row.high
    assert row.effect > 0
    assert row.verdict.startswith("B against A: +")


def test_the_runs_of_a_blind_test_carry_no_caution_that_the_rider_knew(desk, bike):
    ridden(desk, bike)
    state = shown(ReviewViewModel, desk, bike.id)[0].state
    assert all("knew" not in row.cautions for row in state.effects.rows)
    assert all("Probably" not in row.verdict for row in state.effects.rows)
    assert all(point.is_blind for point in state.timeline.points)


@pytest.mark.parametrize("liked", [{"A": 6, "B": 6}, {"A": 7, "B": 5}, {"A": 1, "B": 9}], ids=str)
def test_the_odds_are_those_of_the_exact_tests(desk, bike, liked):
    plan = ridden(desk, bike, liked=liked, guess_right=False)
    said = result(desk, bike)
    p = randomisation_p([liked[one] for one in plan.order], plan.order, allowed_orders=block_orders("AB", blocks=3))
    assert f"in {out_of(p)} such tests. {meaning(p)}" in said.by_order
    assert f"Guesses right: 0 of 3. Chance alone gives as many or more in {out_of(choice_p(0, 3))}" in said.guesses


def test_six_pairs_can_settle_something(desk, bike):
    ridden(desk, bike, pairs=6)
    said = result(desk, bike)
    assert "in 1 of 32 such tests. That is hard to put down to chance." in said.by_order
    assert "in 1 of 64 such tests. That is hard to put down to chance." in said.guesses


def test_a_test_stopped_early_says_so_and_claims_what_its_pairs_can(desk, bike):
    ridden(desk, bike, runs=5)
    said = result(desk, bike)
    assert said.incomplete.startswith("Incomplete: stopped after 2 of 3 pairs.")
    assert "1 of 2" in said.incomplete
    assert [row.title for row in said.rows] == ["Pair 1", "Pair 2"]
    assert "Guesses right: 2 of 2. Chance alone gives this in 1 of 4" in said.guesses


def test_a_test_of_no_pair_says_nothing(desk, bike):
    ridden(desk, bike, runs=1)
    said = result(desk, bike)
    assert said.incomplete == "Incomplete: stopped after 0 of 3 pairs. Nothing can be said of it."
    assert (said.ratings, said.by_order, said.guesses, said.effects.rows) == ("", "", "", ())
    assert said.is_proven


def test_a_run_set_aside_and_ridden_again_leaves_the_order_as_drawn(desk, bike):
    plan = begun(desk, bike, pairs=1)
    spoilt = Run("", "", 0, "", "", "", is_set_aside=True, set_aside_reason="Fell or stopped")
    for run in (spoilt, Run("", "", 0, "", "", "", liking=5), Run("", "", 0, "", "", "", liking=7)):
        desk.do("Keep", keep_blind_run(plan.session_id, run))
    desk.do("Reveal", reveal(plan.session_id, guesses={0: 1}))
    said = result(desk, bike)
    assert said.is_proven
    assert said.rows[0].first.startswith("run 1: ")


def test_each_pair_is_listed_with_what_it_had_and_how_it_was_guessed(desk, bike):
    plan = ridden(desk, bike, pairs=1)
    (row,) = result(desk, bike).rows
    first, second = plan.order
    assert (row.first, row.second) == (
        f"run 1: {first}, liking {LIKED[first]}",
        f"run 2: {second}, liking {LIKED[second]}",
    )
    assert row.guess == "guessed right"


def test_the_result_is_read_out_first_and_its_guesses_go_into_the_table(desk, bike):
    plan = ridden(desk, bike, pairs=1)
    view_model, _ = shown(ReviewViewModel, desk, bike.id)
    lines = view_model.state.read_out.splitlines()
    assert lines[0].startswith("Blind test: A, no. 1, against B, no. 2")
    assert any(line.startswith("Guesses right: 1 of 1") for line in lines)
    heads, *rows = (line.split(",") for line in view_model.runs_csv().splitlines())
    assert [row[heads.index("guess")] for row in rows] == list(plan.order)
    assert view_model.state.sessions[1][1].endswith("2 blind runs")


# The seal


def test_the_seal_holds_and_everything_is_given_to_check_it(desk, bike):
    plan = ridden(desk, bike)
    said = result(desk, bike)
    assert said.is_proven
    assert "before the first run" in said.proof
    for part in (str(plan.seed), plan.order, plan.digest):
        assert part in said.seal


@pytest.mark.parametrize(
    "moved",
    [
        {"order": "BAABAB"},
        {"seed": 21},
        {"fixed_at": "2031-05-14T08:00:00+00:00"},
        {"digest": "0" * 64},
    ],
    ids=lambda one: next(iter(one)),
)
def test_a_plan_moved_afterwards_is_told_from_the_one_sealed(desk, bike, moved):
    plan = ridden(desk, bike)
    desk.do("Meddle", lambda gate: gate.put(replace(gate.need(BlindPlan, plan.id), **moved)), bike_id=bike.id)
    said = result(desk, bike)
    assert not said.is_proven
    assert said.proof.endswith("Do not rely on this test.")


def test_a_run_moved_to_the_other_setup_is_noticed(desk, bike):
    ridden(desk, bike)
    one, other = (run for run in sorted(everything(desk)[Run], key=lambda run: run.number)[:2])
    desk.do("Meddle", lambda gate: gate.put(replace(one, setup_id=other.setup_id)), bike_id=bike.id)
    said = result(desk, bike)
    assert not said.is_proven
    assert (said.ratings, said.by_order, said.guesses) == ("", "", ""), "nothing is claimed of it"


def test_a_first_run_that_says_it_came_before_the_draw_is_named(desk, bike):
    ridden(desk, bike)
    first = min(everything(desk)[Run], key=lambda run: run.number)
    earlier = replace(first, ridden_at="2031-05-14T08:00:00+00:00")
    desk.do("Meddle", lambda gate: gate.put(earlier), bike_id=bike.id)
    assert "the clock was set back in between" in result(desk, bike).proof


# While it is concealed, and beside other sessions


def test_the_review_waits_while_only_a_concealed_test_is_there(desk, bike):
    plan = begun(desk, bike)
    run = Run("", "", 0, "", "", "", liking=7)
    desk.do("Keep", keep_blind_run(plan.session_id, run), bike_id=bike.id)
    view_model, _ = shown(ReviewViewModel, desk, bike.id)
    assert view_model.state.blocked == HIDDEN


def test_a_concealed_test_is_left_out_of_pictures_words_and_tables(desk, bike):
    open_session = a_session(desk, bike)
    for liking in (5, 6):
        a_run(desk, open_session, liking=liking)
    desk.do("End", end_session(open_session.id), bike_id=bike.id)
    before = shown(ReviewViewModel, desk, bike.id)[0]
    runs, words = before.runs_csv(), before.state.read_out
    plan = begun(desk, bike)
    desk.do("Keep", keep_blind_run(plan.session_id, Run("", "", 0, "", "", "", liking=9)), bike_id=bike.id)
    view_model, _ = shown(ReviewViewModel, desk, bike.id)
    state = view_model.state
    assert state.summary.startswith(HIDDEN)
    assert (state.blind, len(state.timeline.points), len(state.sessions)) == (None, 2, 2)
    assert view_model.runs_csv() == runs
    assert state.read_out == words


def test_the_result_belongs_to_its_own_session(desk, bike):
    ridden(desk, bike)
    later = a_session(desk, bike, course="Old mill")
    a_run(desk, later, liking=6)
    view_model, _ = shown(ReviewViewModel, desk, bike.id)
    assert view_model.state.blind is None, "the newest session was an open one"
    blind = next(one for one in everything(desk)[Session] if one.is_blind)
    view_model.pick_session(blind.id)
    assert view_model.state.blind.title.startswith("Blind test")


def test_names_typed_by_people_stand_as_typed(desk, bike):
    adjuster = desk.ask(bike_parts(bike.id)).adjusters[1]
    desk.do("Name", edit(type(adjuster), adjuster.id, "name", "<b>R</b>"), bike_id=bike.id)
    ridden(desk, bike)
    assert "<b>R</b>" in result(desk, bike).title


def test_lengths_and_pressures_are_said_in_the_units_of_who_reads(desk, bike):
    records = desk.ask(ride_records(bike.id))
    course = desk.do("Course", add_course("Quarry loop"))
    session = Session("", bike.id, records.parts.riders[0].id, course.id, "", verified_at=desk.now())
    key = (Item.PRESSURE.value, records.parts.units[0].id)
    deed = begin_blind(session, records.current.id, pairs=1, seed=20, wanted={key: 580.0})
    plan = desk.do("Begin", deed, bike_id=bike.id)
    for liking in (5, 7):
        desk.do("Keep", keep_blind_run(plan.session_id, Run("", "", 0, "", "", "", liking=liking)))
    desk.do("Reveal", reveal(plan.session_id, guesses={0: 0}), bike_id=bike.id)
    assert Units().text(580.0, "pressure") in result(desk, bike).title


# Judged by lap time

LAP_OF = {"A": 102.0, "B": 99.0}


def timed(desk, bike, *, pairs=6, seed=20, lap_of=LAP_OF, without=()):
    """A revealed test judged by lap time, timed by what was on the bike."""
    plan = begun(desk, bike, pairs=pairs, seed=seed)
    session = next(one for one in everything(desk)[Session] if one.id == plan.session_id)
    desk.do("By lap", lambda gate: gate.put(replace(session, response="lap_s")), bike_id=bike.id)
    for place, letter in enumerate(plan.order):
        lap_s = None if place in without else lap_of[letter] + 0.1 * (place % 3)
        desk.do("Keep", keep_blind_run(plan.session_id, Run("", "", 0, "", "", "", lap_s=lap_s)), bike_id=bike.id)
    guesses = {pair: plan.order[2 * pair : 2 * pair + 2].index("B") for pair in range(pairs)}
    desk.do("Reveal", reveal(plan.session_id, guesses=guesses), bike_id=bike.id)
    return plan


def test_a_test_judged_by_lap_time_is_told_in_times(desk, bike):
    timed(desk, bike)
    said = result(desk, bike)
    assert said.ratings.startswith("On average 1:39.1 with B and 1:42.1 with A. Quicker with B than with A")
    assert "in 1 of 32 such tests. That is hard to put down to chance." in said.by_order
    assert said.by_order.startswith("If the setup did not matter to the times")
    assert said.effects.unit == "percent"
    assert said.rows[0].first.startswith("run 1: ")
    assert ", lap 1:" in said.rows[0].first


@pytest.mark.parametrize("seed", [20, 3])
def test_a_quicker_b_is_told_as_quicker_whichever_was_ridden_first(desk, bike, seed):
    timed(desk, bike, seed=seed)
    (row,) = result(desk, bike).effects.rows
    assert row.low < row.effect < row.high
    assert row.effect == pytest.approx(100 * (102.0 / 99.0 - 1), abs=0.5)


def test_the_odds_of_times_are_those_of_the_exact_test_on_their_logarithms(desk, bike):
    lap_of = {"A": 102.0, "B": 101.9}
    plan = timed(desk, bike, pairs=4, lap_of=lap_of)
    times = [math.log(lap_of[one] + 0.1 * (place % 3)) for place, one in enumerate(plan.order)]
    p = randomisation_p(times, plan.order, allowed_orders=block_orders("AB", blocks=4))
    assert f"in {out_of(p)} such tests." in result(desk, bike).by_order


def test_pairs_without_both_times_are_left_out_and_it_is_said(desk, bike):
    timed(desk, bike, pairs=4, without=(3,))
    said = result(desk, bike)
    assert said.ratings.startswith("Of 4 pairs 3 have both lap times. On average ")
    assert "With 3 pairs it cannot get rarer." in said.by_order
    assert "no answer" in said.rows[1].second


def test_without_any_time_it_says_where_they_could_come_from(desk, bike):
    timed(desk, bike, pairs=3, without=range(6))
    said = result(desk, bike)
    assert "read them from a recorded track" in said.ratings
    assert (said.by_order, said.effects.rows) == ("", ())
    assert "Guesses right: 3 of 3" in said.guesses
