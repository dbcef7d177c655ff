"""Blind tests on record: drawn and sealed before the first run, told to nobody, revealed once."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.fixtures import check_there_and_back, everything
from workbench.actions.blind import begin_blind, blind_records, keep_blind_run, reveal
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.ride import add_course, ride_records
from workbench.actions.ride_evidence import run_records
from workbench.evidence.blind import block_orders, draw_order, plan_digest
from workbench.evidence.effects import judge_changes
from workbench.evidence.verdicts import Caution
from workbench.model.errors import InputError, UndoRefused
from workbench.model.ride import BlindPlan, Run, Session
from workbench.model.setting import Item, Setup

SEED = 1234567


def a_session(desk, bike):
    records = desk.ask(ride_records(bike.id))
    course = desk.do("Course", add_course("Quarry loop"))
    return Session("", bike.id, records.parts.riders[0].id, course.id, "", verified_at=desk.now())


def key_of(desk, bike, place=1):
    return (Item.ADJUSTER.value, desk.ask(bike_parts(bike.id)).adjusters[place].id)


def begun(desk, bike, *, pairs=3, seed=SEED, position=10.0):
    a = desk.ask(ride_records(bike.id)).current
    deed = begin_blind(a_session(desk, bike), a.id, pairs=pairs, seed=seed, wanted={key_of(desk, bike): position})
    return desk.do("Begin the blind test", deed, bike_id=bike.id)


def ride(desk, plan, liking, **more):
    run = replace(Run("", "", 0, "", "", "", liking=liking), **more)
    return desk.do("Keep run", keep_blind_run(plan.session_id, run))


def test_the_order_is_drawn_in_pairs_and_sealed_with_its_time_before_any_run(desk, bike):
    plan = begun(desk, bike)
    assert tuple(plan.order) in block_orders(("A", "B"), blocks=3)
    assert plan.order == "".join(draw_order(("A", "B"), seed=SEED, blocks=3))
    assert plan.digest == plan_digest(plan.order, seed=SEED, labels=(plan.labels,), fixed_at=plan.fixed_at)
    run = ride(desk, plan, 5)
    assert plan.fixed_at < run.ridden_at


@pytest.mark.parametrize(
    "moved",
    [{"order": "BAABBA"}, {"seed": SEED + 1}, {"labels": "{}"}, {"fixed_at": "2031-05-14T10:00:00+00:00"}],
    ids=str,
)
def test_nothing_sealed_can_be_moved_without_the_fingerprint_showing_it(desk, bike, moved):
    plan = replace(begun(desk, bike), **moved)
    assert plan.digest != plan_digest(plan.order, seed=plan.seed, labels=(plan.labels,), fixed_at=plan.fixed_at)


def test_a_begun_test_goes_there_and_back(desk, bike):
    a = desk.ask(ride_records(bike.id)).current
    deed = begin_blind(a_session(desk, bike), a.id, pairs=3, seed=SEED, wanted={key_of(desk, bike): 10.0})
    check_there_and_back(desk, "Begin the blind test", deed, bike_id=bike.id)


def test_runs_of_a_test_go_there_and_back(desk, bike):
    plan = begun(desk, bike)
    run = Run("", "", 0, "", "", "", liking=6)
    kept = check_there_and_back(
        desk, "Keep run 1", keep_blind_run(plan.session_id, run, ratings=(("grip", 7, ""),)), bike_id=bike.id
    )
    assert kept.is_blind


def test_each_run_is_kept_on_the_setup_its_place_was_drawn_for(desk, bike):
    plan = begun(desk, bike)
    for liking in (5, 6, 5, 6, 5, 6):
        ride(desk, plan, liking)
    records = desk.ask(blind_records(plan.session_id))
    letters = {setup.id: letter for letter, setup in records.setups.items()}
    assert "".join(letters[run.setup_id] for run in records.runs) == plan.order
    assert not any(run.is_confounded for run in records.runs)
    with pytest.raises(InputError):
        ride(desk, plan, 5)


def test_a_run_set_aside_is_ridden_again_on_the_same_setup(desk, bike):
    plan = begun(desk, bike)
    spoilt = ride(desk, plan, None, is_set_aside=True, set_aside_reason="Fell or stopped")
    again = ride(desk, plan, 6)
    assert spoilt.setup_id == again.setup_id
    assert desk.ask(blind_records(plan.session_id)).place == 1


def test_until_the_reveal_neither_runs_nor_positions_are_told(desk, bike):
    plan = begun(desk, bike)
    ride(desk, plan, 8)
    records = desk.ask(ride_records(bike.id))
    (session,) = records.sessions
    assert session.is_concealed
    assert session.runs == ()
    assert run_records(records, records.sessions) == []
    assert records.parts.value(*key_of(desk, bike)) is None
    assert records.current is None
    job = desk.ask(job_records(bike.id))
    assert (job.is_concealed, job.current) == (True, None)


def test_the_reveal_tells_all_and_the_bike_stands_as_ridden_last(desk, bike):
    plan = begun(desk, bike)
    for liking in (5, 6, 5, 6, 5, 6):
        ride(desk, plan, liking)
    desk.do("Reveal", reveal(plan.session_id, guesses={0: 0, 1: 1, 2: 0}))
    records = desk.ask(ride_records(bike.id))
    (session,) = records.sessions
    assert [run.guess for run in session.runs] == ["B", "A", "A", "B", "B", "A"]
    assert session.session.ended_at
    assert not session.is_concealed
    assert records.current.id == session.runs[-1].setup_id


@pytest.mark.parametrize(("was_set", "place"), [(False, 0), (True, 1)])
def test_stopped_early_the_bike_stands_as_ridden_or_as_already_set(desk, bike, was_set, place):
    plan = begun(desk, bike)
    ride(desk, plan, 5)
    desk.do("Reveal", reveal(plan.session_id, guesses={}, was_set=was_set))
    records = desk.ask(ride_records(bike.id))
    blind = desk.ask(blind_records(plan.session_id))
    assert records.current.id == blind.setups[plan.order[place]].id


def test_stopped_before_anything_was_set_the_bike_stands_as_before(desk, bike):
    key = key_of(desk, bike)
    before = desk.ask(bike_parts(bike.id)).line(*key)
    plan = begun(desk, bike)
    desk.do("Reveal", reveal(plan.session_id, guesses={}))
    after = desk.ask(bike_parts(bike.id)).line(*key)
    assert (after.value, after.how, after.range_id) == (before.value, before.how, before.range_id)


def test_there_is_no_reveal_without_a_guess_for_every_pair(desk, bike):
    plan = begun(desk, bike)
    for liking in (5, 6, 5):
        ride(desk, plan, liking)
    before = everything(desk)
    with pytest.raises(InputError, match="pair 1"):
        desk.do("Reveal", reveal(plan.session_id, guesses={}))
    assert everything(desk) == before
    desk.do("Reveal", reveal(plan.session_id, guesses={0: 1}))
    assert [run.guess for run in everything(desk)[Run]].count("") == 1, "the odd run belongs to no pair"


def test_what_was_revealed_cannot_be_undone_nor_anything_before_it(desk, bike):
    plan = begun(desk, bike)
    ride(desk, plan, 5)
    desk.do("Reveal", reveal(plan.session_id, guesses={}))
    before = everything(desk)
    with pytest.raises(UndoRefused, match="has been seen"):
        desk.undo()
    assert everything(desk) == before
    with pytest.raises(InputError):
        desk.do("Reveal", reveal(plan.session_id, guesses={}))
    desk.do("Course", add_course("Another"))
    assert desk.undo().label == "Course"
    with pytest.raises(UndoRefused):
        desk.undo()


def test_before_the_reveal_a_run_and_even_the_start_can_be_undone(desk, bike):
    plan = begun(desk, bike)
    ride(desk, plan, 5)
    assert desk.undo().label == "Keep run"
    assert desk.undo().label == "Begin the blind test"
    assert everything(desk)[BlindPlan] == ()
    assert desk.ask(ride_records(bike.id)).current is not None


def test_a_setup_ridden_before_serves_as_b_again(desk, bike):
    plan = begun(desk, bike, pairs=1)
    desk.do("Reveal", reveal(plan.session_id, guesses={}))
    setups = everything(desk)[Setup]
    begun(desk, bike, pairs=1)
    assert everything(desk)[Setup] == setups


@pytest.mark.parametrize(
    ("wanted", "said"),
    [
        ({}, "the same"),
        ({1: 0.0}, "never ridden blind"),
        ({1: 17.0}, "never ridden blind"),
        ({0: 7.0, 1: 9.0}, "differ in 2 things"),
    ],
    ids=["same", "closed", "open", "two"],
)
def test_what_cannot_be_ridden_blind_is_refused_with_its_reason(desk, bike, wanted, said):
    a = desk.ask(ride_records(bike.id)).current
    values = {key_of(desk, bike, place): value for place, value in wanted.items()}
    session = a_session(desk, bike)
    before = everything(desk)
    with pytest.raises(InputError, match=said):
        desk.do("Begin", begin_blind(session, a.id, pairs=3, seed=1, wanted=values))
    assert everything(desk) == before


@pytest.mark.parametrize("pairs", [0, 13])
def test_a_number_of_pairs_nobody_can_ride_is_refused(desk, bike, pairs):
    with pytest.raises(InputError, match="1 to 12"):
        begin_blind(a_session(desk, bike), "", pairs=pairs, seed=1)


def test_blind_runs_lose_the_caution_that_the_rider_knew(desk, bike):
    plan = begun(desk, bike)
    for letter in plan.order:
        ride(desk, plan, 7 if letter == "B" else 5)
    desk.do("Reveal", reveal(plan.session_id, guesses=dict.fromkeys(range(3), 0)))
    records = desk.ask(ride_records(bike.id))
    (row,) = judge_changes(run_records(records, records.sessions))
    assert not row.cautions & {Caution.NOT_BLIND, Caution.OPTIMISM_POSSIBLE}
