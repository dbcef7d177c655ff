"""A blind test without a window: planned, ridden by two people at one screen, guessed, revealed, and told to nobody."""

from __future__ import annotations

from dataclasses import asdict, replace

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.adjusters import keep_as_found, keep_range
from workbench.actions.garage import add_adjuster
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.ride import ride_records
from workbench.model.ride import BlindPlan, Course, Run, Session
from workbench.model.setting import Item, Setup
from workbench.viewmodels.odds import meaning, out_of
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_blind import Side
from workbench.viewmodels.ride_blind_plan import most_words
from workbench.viewmodels.window import WindowViewModel

SEED = 20


def rebound(desk, bike):
    return desk.ask(bike_parts(bike.id)).adjusters[1].id


def planning(desk, bike, *, pairs="3", value="10", seed=SEED):
    view_model, heard = shown(RideViewModel, desk, bike.id, seeds=lambda: seed)
    view_model.plan_blind()
    for name, text in (("item", f"adjuster/{rebound(desk, bike)}"), ("value", value), ("pairs", pairs)):
        view_model.set_plan(name, text)
    view_model.set_start("new_course", "Quarry loop")
    view_model.set_start("verified", True)
    return view_model, heard


def begun_test(desk, bike, **more):
    view_model, heard = planning(desk, bike, **more)
    assert view_model.begin_blind(), heard.problems
    return view_model, heard


def put_on(view_model):
    """The helper's turn."""
    view_model.show_helper()
    for line in view_model.state.blind.steps:
        view_model.tick_blind(line.key, True)
    assert view_model.to_rider()


def ride(view_model, *likings):
    for liking in likings:
        put_on(view_model)
        view_model.rate_blind("liking", liking)
        assert view_model.keep_blind()


def guess_all(view_model, *which):
    for pair, one in enumerate(which):
        view_model.guess(pair, one)


# Planning


def test_a_plan_says_what_it_compares_and_the_most_it_can_show(desk, bike):
    view_model, _ = planning(desk, bike)
    plan = view_model.state.plan
    assert plan.differs == "A to B: Fork: low-speed rebound 4 clicks out."
    assert "1 of 4" in plan.most
    assert not plan.is_weak


@pytest.mark.parametrize(
    ("pairs", "words"),
    [(1, "every one"), (2, "1 of 2"), (3, "1 of 4"), (5, "1 of 16"), (6, "1 of 32"), (8, "1 of 128")],
)
def test_what_so_many_pairs_can_show_is_said_before_riding(pairs, words):
    assert words in most_words(pairs)
    assert ("cannot reach its aim" in most_words(pairs)) == (pairs < 3)
    assert ("hint" in most_words(pairs)) == (3 <= pairs <= 5)


def test_a_plan_of_too_few_pairs_is_marked_before_riding_but_can_be_ridden(desk, bike):
    view_model, _ = planning(desk, bike, pairs="2")
    assert view_model.state.plan.is_weak
    assert view_model.begin_blind()


@pytest.mark.parametrize(
    ("entries", "field"),
    [
        ({"value": ""}, "value"),
        ({"value": "lots"}, "value"),
        ({"value": "99"}, "value"),
        ({"value": "0"}, "value"),
        ({"value": "17"}, "value"),
        ({"value": "6"}, "value"),
        ({"pairs": "0"}, "pairs"),
        ({"pairs": "many"}, "pairs"),
        ({"pairs": "13"}, "pairs"),
    ],
    ids=str,
)
def test_what_keeps_a_test_from_beginning_is_said_at_its_field_and_stays_as_typed(desk, bike, entries, field):
    view_model, heard = planning(desk, bike)
    for name, value in entries.items():
        view_model.set_plan(name, value)
    assert not view_model.begin_blind()
    assert heard.field == field
    assert [getattr(view_model.state.plan.draft, name) for name in entries] == list(entries.values())
    assert everything(desk)[Session] == ()


@pytest.mark.parametrize(
    ("name", "value", "field"),
    [("new_course", "", "new_course"), ("verified", False, "verified"), ("not_verified", "no time", "verified")],
)
def test_the_start_has_to_be_complete_and_verified(desk, bike, name, value, field):
    view_model, heard = planning(desk, bike)
    view_model.set_start(name, value)
    assert not view_model.begin_blind()
    assert heard.field == field


def test_a_plan_survives_a_restart_and_can_be_discarded_and_taken_back(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        planning(desk, bike, value="1x")
    with make_desk(tmp_path) as desk:
        view_model, heard = shown(RideViewModel, desk, bike.id)
        assert view_model.state.plan.draft.value == "1x"
        view_model.drop_plan()
        assert view_model.state.plan is None
        ((_, draft_id),) = heard.discarded
        view_model.take_back_draft(draft_id)
        assert view_model.state.plan.draft.pairs == "3"


def test_b_may_be_a_setup_ridden_before_that_differs_in_one_thing(desk, bike):
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    view_model, _ = shown(RideViewModel, desk, bike.id, seeds=lambda: SEED)
    view_model.change_by_hand(f"adjuster/{rebound(desk, bike)}", "9")
    view_model.end_session()
    one, two = sorted(everything(desk)[Setup], key=lambda setup: setup.number)
    view_model.plan_blind()
    view_model.set_plan("a_id", one.id)
    plan = view_model.state.plan
    assert plan.others[1] == (two.id, "no. 2: Fork: low-speed rebound 3 clicks out")
    view_model.set_plan("b_id", two.id)
    view_model.set_start("verified", True)
    assert view_model.begin_blind()
    assert len(everything(desk)[Setup]) == 2


def test_before_a_test_all_of_a_is_set_but_what_is_under_test(desk, bike):
    other = desk.ask(bike_parts(bike.id)).adjusters[0].id
    one = everything(desk)[Setup][0]
    for adjuster in (other, rebound(desk, bike)):
        desk.do("Meddle", set_item(bike.id, Item.ADJUSTER, adjuster, 2.0, "set_to"), bike_id=bike.id)
    view_model, _ = planning(desk, bike)
    view_model.set_plan("a_id", one.id)
    view_model.set_plan("value", "10")
    (step,) = view_model.state.start.steps
    assert step.key == f"adjuster/{other}"
    view_model.take_step(step.key)
    assert view_model.state.start.steps == ()


# Two people at one screen


def test_a_begun_test_shows_a_screen_that_is_nobodys(desk, bike):
    view_model, heard = begun_test(desk, bike)
    state = view_model.state.blind
    assert (state.side, state.steps, state.setup_text) == (Side.DOOR, (), "")
    assert state.subtitle == "Run 1 of 6"
    assert heard.labels == ["Begin the blind test"]


def test_the_helper_is_told_what_to_set_from_closed_and_ticks_it_before_handing_over(desk, bike):
    view_model, heard = begun_test(desk, bike)
    assert not view_model.to_rider(), "the screen is nobody's yet"
    view_model.show_helper()
    state = view_model.state.blind
    (plan,) = everything(desk)[BlindPlan]
    clicks = {"A": 6, "B": 10}[plan.order[0]]
    assert [line.text for line in state.steps] == [f"Fork: low-speed rebound: fully closed, then open {clicks} clicks"]
    assert [line.remark for line in state.steps] == [""]
    assert "same motions" in state.motions
    assert not view_model.to_rider()
    assert heard.field == "blind_steps"
    view_model.tick_blind(state.steps[0].key, True)
    assert view_model.to_rider()
    assert view_model.state.blind.side is Side.RIDER


def test_the_rider_rates_and_the_screen_becomes_nobodys_again(desk, bike):
    view_model, heard = begun_test(desk, bike)
    put_on(view_model)
    assert not view_model.keep_blind()
    assert heard.field == "blind_liking"
    view_model.rate_blind("liking", 7)
    view_model.score_blind("grip/front", 8)
    view_model.rate_blind("note", "<b>quick</b>")
    assert view_model.keep_blind()
    assert view_model.state.blind.side is Side.DOOR
    assert heard.labels[-1] == "Keep blind run 1"
    (run,) = everything(desk)[Run]
    assert (run.liking, run.note, run.is_blind) == (7, "<b>quick</b>", True)


def test_the_screen_goes_back_to_the_helper_only_over_the_one_that_is_nobodys(desk, bike):
    view_model, _ = begun_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("liking", 4)
    view_model.to_door()
    assert view_model.state.blind.side is Side.DOOR
    view_model.show_helper()
    assert view_model.state.blind.draft.liking is None, "the helper does not see the rating"
    assert view_model.state.blind.draft.ticked
    assert view_model.to_rider()
    assert view_model.state.blind.draft.liking == 4, "and the rider finds it again"


def test_out_of_sight_the_helpers_screen_closes_itself(desk, bike):
    view_model, _ = begun_test(desk, bike)
    view_model.show_helper()
    view_model.hide()
    assert view_model.state.blind.side is Side.DOOR
    view_model.show()
    assert view_model.state.blind.side is Side.DOOR


def test_an_undone_run_closes_the_helpers_screen_and_is_rated_again(desk, bike):
    view_model, _ = begun_test(desk, bike)
    ride(view_model, 6)
    view_model.show_helper()
    desk.undo()
    assert view_model.state.blind.side is Side.RIDER
    assert view_model.state.blind.draft.liking == 6
    assert view_model.keep_blind()


def test_what_was_set_for_a_later_run_does_not_hold_for_an_undone_one(desk, bike):
    view_model, _ = begun_test(desk, bike)
    ride(view_model, 6)
    put_on(view_model)
    view_model.rate_blind("liking", 9)
    desk.undo()
    assert view_model.state.blind.subtitle.startswith("Run 1 of 6")
    assert view_model.state.blind.side is Side.DOOR, "another setup may be on the bike"
    view_model.show_helper()
    assert not view_model.to_rider(), "it has to be set again"
    desk.redo()
    assert view_model.state.blind.draft.liking == 9, "what was entered of the later run is there again with it"


def test_another_bike_on_the_bench_closes_the_helpers_screen(desk, bike):
    view_model, _ = begun_test(desk, bike)
    other = a_counted_bike(desk, name="Fell 130")
    view_model.show_helper()
    view_model._bench.put_bike(other.id)
    view_model._bench.put_bike(bike.id)
    assert view_model.state.blind.side is Side.DOOR


def test_steps_that_are_left_keep_a_test_from_beginning(desk, bike):
    other = desk.ask(bike_parts(bike.id)).adjusters[0].id
    one = everything(desk)[Setup][0]
    desk.do("Meddle", set_item(bike.id, Item.ADJUSTER, other, 2.0, "set_to"), bike_id=bike.id)
    view_model, heard = planning(desk, bike)
    view_model.set_plan("a_id", one.id)
    assert not view_model.begin_blind()
    assert heard.field == "verified"
    assert "steps that are left" in heard.problems[-1].text
    view_model.take_all_steps()
    assert view_model.begin_blind()


def test_a_spoilt_run_is_set_aside_and_ridden_again(desk, bike):
    view_model, heard = begun_test(desk, bike)
    put_on(view_model)
    assert view_model.keep_blind(spoilt="Fell or stopped")
    assert view_model.state.blind.subtitle == "Run 1 of 6"
    assert heard.labels[-1] == "Set blind run 1 aside"
    (run,) = everything(desk)[Run]
    assert (run.is_set_aside, run.liking) == (True, None)


# Guess and reveal


def test_after_the_last_run_the_guess_is_asked_before_anything_is_revealed(desk, bike):
    view_model, heard = begun_test(desk, bike)
    ride(view_model, 5, 6, 5, 6, 5, 6)
    state = view_model.state.blind
    assert (state.side, state.pairs, state.can_go_on) == (Side.GUESS, 3, False)
    guess_all(view_model, 0, 1)
    assert not view_model.reveal()
    assert heard.field == "guess_2"
    view_model.guess(2, 0)
    labels = list(heard.labels)
    assert view_model.reveal()
    assert heard.labels == labels, "no notice offers to undo it"
    assert view_model.state.blind is None
    assert view_model.state.start is not None
    assert view_model.state.last_session == "", "a blind test is not opened again"
    (plan,) = everything(desk)[BlindPlan]
    assert plan.revealed_at


def test_a_test_stopped_early_asks_for_whole_pairs_only_and_can_go_on_after_all(desk, bike):
    view_model, _ = begun_test(desk, bike)
    ride(view_model, 5, 6, 5)
    view_model.stop_early()
    assert (view_model.state.blind.pairs, view_model.state.blind.can_go_on) == (1, True)
    view_model.go_on()
    assert view_model.state.blind.side is Side.DOOR
    view_model.stop_early()
    view_model.guess(0, 1)
    assert view_model.reveal()
    assert everything(desk)[Session][0].ended_at


def test_a_revealed_test_leaves_no_entry_under_way_not_even_of_one_undone_before(desk, bike):
    view_model, _ = begun_test(desk, bike, pairs="1")
    put_on(view_model)
    desk.undo()
    assert view_model.begin_blind()
    ride(view_model, 5, 6)
    view_model.guess(0, 1)
    assert view_model.reveal()
    assert desk.drafts(bike.id) == ()


def test_a_guess_can_be_taken_back_until_the_reveal(desk, bike):
    view_model, _ = begun_test(desk, bike, pairs="1")
    ride(view_model, 5, 6)
    view_model.guess(0, 1)
    view_model.guess(0, None)
    assert not view_model.reveal()


# Nothing is lost, and nothing told


@pytest.mark.parametrize("stage", ["door", "helper", "rider", "guess"])
def test_a_restart_loses_nothing_and_never_opens_on_the_helpers_screen(tmp_path, stage):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        view_model, _ = begun_test(desk, bike, pairs="1")
        ride(view_model, 5)
        if stage in ("helper", "rider"):
            view_model.show_helper()
            view_model.tick_blind(view_model.state.blind.steps[0].key, True)
        if stage == "rider":
            view_model.to_rider()
            view_model.rate_blind("liking", 8)
        if stage == "guess":
            ride(view_model, 6)
            view_model.guess(0, 1)
    with make_desk(tmp_path) as desk:
        view_model, _ = shown(RideViewModel, desk, bike.id)
        state = view_model.state.blind
        assert state.side == {"helper": "door"}.get(stage, stage)
        assert state.steps == ()
        if stage == "rider":
            assert state.draft.liking == 8
        if stage == "guess":
            assert state.guess.guess(0) == 1
        if stage == "helper":
            view_model.show_helper()
            assert view_model.state.blind.draft.ticked, "what was set is still ticked"


def test_what_the_rider_and_the_window_are_told_is_the_same_whatever_the_order(tmp_path):
    told = []
    for seed in range(8):
        folder = tmp_path / str(seed)
        folder.mkdir()
        with make_desk(folder) as desk:
            bike = a_counted_bike(desk)
            a_baseline(desk, bike)
            view_model, heard = begun_test(desk, bike, seed=seed)
            window, _ = shown(WindowViewModel, desk, bike.id)
            said = [_told(view_model, window)]
            for liking in (5, 6, 5, 6):
                put_on(view_model)
                said.append(_told(view_model, window))
                view_model.rate_blind("liking", liking)
                view_model.keep_blind()
                said.append(_told(view_model, window))
            (plan,) = everything(desk)[BlindPlan]
            told.append((plan.order, said, heard.labels, desk.undo_label()))
    assert len({order for order, *_ in told}) > 3, "the seeds draw different orders"
    assert all(tuple(rest) == told[0][1:] for _, *rest in told)


def _told(view_model, window):
    state = view_model.state.blind
    assert state.side in (Side.DOOR, Side.RIDER)
    told = replace(state, sealed="", session_id="")
    texts = {name: value for name, value in asdict(told).items() if name != "scores"}
    around = window.state
    return texts, around.cells, [(mark.state, mark.why) for mark in around.marks], around.undo_text, around.redo_text


def test_the_window_says_concealed_where_the_setup_stands(desk, bike):
    begun_test(desk, bike)
    window, _ = shown(WindowViewModel, desk, bike.id)
    assert dict(window.state.cells)["Setup"] == "concealed"
    whys = {str(mark.station): mark.why for mark in window.state.marks}
    assert (whys["ride"], whys["card"]) == ("blind test under way", "blind test under way")


def test_undo_of_a_begun_test_goes_back_to_the_plan_as_it_was(desk, bike):
    view_model, _ = begun_test(desk, bike)
    assert desk.undo().label == "Begin the blind test"
    assert view_model.state.plan.draft.value == "10"
    assert view_model.state.start.draft.new_course == "Quarry loop"
    assert everything(desk)[Course] == ()
    assert desk.ask(ride_records(bike.id)).current is not None


@pytest.mark.parametrize(
    ("p", "words"),
    [
        (1.0, "every one"),
        (0.5, "1 of 2"),
        (0.25, "1 of 4"),
        (0.125, "1 of 8"),
        (11 / 32, "about 7 of 20"),
        (0.875, "about 18 of 20"),
        (7 / 64, "about 1 of 9"),
        (1 / 32, "1 of 32"),
    ],
)
def test_probabilities_are_said_so_that_they_can_be_counted(p, words):
    assert out_of(p) == words


def test_what_a_probability_means_is_said_in_words():
    assert meaning(1 / 32) == "That is hard to put down to chance."
    assert "hint" in meaning(1 / 8)
    assert "settles nothing" in meaning(1 / 4)


# Lap times


def timed_test(desk, bike, **more):
    view_model, heard = planning(desk, bike, **more)
    view_model.set_start("response", "lap_s")
    assert view_model.begin_blind(), heard.problems
    return view_model, heard


def test_a_blind_run_carries_a_lap_time_beside_the_liking(desk, bike):
    view_model, _ = begun_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("lap", "1:41.3")
    view_model.rate_blind("liking", 6)
    assert view_model.keep_blind()
    (run,) = everything(desk)[Run]
    assert (run.lap_s, run.liking) == (101.3, 6)


def test_a_test_judged_by_lap_time_asks_for_it_and_needs_no_liking(desk, bike):
    view_model, heard = timed_test(desk, bike)
    put_on(view_model)
    assert view_model.state.blind.response == "lap_s"
    view_model.rate_blind("liking", 6)
    assert not view_model.keep_blind()
    assert heard.field == "blind_lap"
    view_model.rate_blind("liking", None)
    view_model.rate_blind("lap", "3")
    assert not view_model.keep_blind()
    assert "5 s to 2 h" in heard.problems[-1].text
    view_model.rate_blind("lap", "1:41.3")
    assert view_model.keep_blind()


def test_a_time_a_recorder_has_can_come_later(desk, bike):
    view_model, _ = timed_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("lap", "Track")
    assert view_model.keep_blind()
    assert everything(desk)[Run][0].lap_s is None


def test_a_run_that_does_not_count_keeps_no_lap_time(desk, bike):
    view_model, _ = timed_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("lap", "1:41.3")
    assert view_model.keep_blind(spoilt="Fell or stopped")
    assert everything(desk)[Run][0].lap_s is None


def test_no_screen_but_the_riders_has_the_lap_time_typed(desk, bike):
    view_model, _ = begun_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("lap", "1:41.3")
    assert "1:41.3" in repr(view_model.state.blind)
    view_model.to_door()
    assert "1:41.3" not in repr(view_model.state)
    view_model.show_helper()
    assert "1:41.3" not in repr(view_model.state)


# A lever


@pytest.fixture
def lever(desk, bike):
    """A lever with three named positions, counted and set to the middle one."""
    unit = desk.ask(bike_parts(bike.id)).units[0]
    added = desk.do("Add", add_adjuster(unit.id, "lever", ""), bike_id=bike.id)
    named = replace(added, counting="positions", position_names="Firm|Middle|Open")
    desk.do("Names", lambda gate: gate.put(named), bike_id=bike.id)
    desk.do("As found", keep_as_found(bike.id, named.id, 1), bike_id=bike.id)
    desk.do("Range", keep_range(bike.id, named.id, 2), bike_id=bike.id)
    desk.do("Set", set_item(bike.id, Item.ADJUSTER, named.id, 1.0, "set_to"), bike_id=bike.id)
    a_baseline(desk, bike)
    return named


def test_a_lever_is_tested_by_the_names_of_its_positions(desk, bike, lever):
    view_model, heard = planning(desk, bike, pairs="1")
    view_model.set_plan("item", f"adjuster/{lever.id}")
    view_model.set_plan("value", "halfway")
    assert not view_model.begin_blind()
    assert "Firm or Middle or Open" in heard.problems[-1].text
    view_model.set_plan("value", "firm")
    assert not view_model.begin_blind()
    assert "firmest position" in heard.problems[-1].text
    view_model.set_plan("value", "open")
    assert view_model.begin_blind(), heard.problems
    view_model.show_helper()
    (line,) = view_model.state.blind.steps
    assert line.text.endswith(("set to Open", "set to Middle"))
    assert line.remark == ""
    assert "through all of them to the most open" in view_model.state.blind.motions


def test_the_helpers_motions_with_a_lever_are_the_same_before_every_run(desk, bike, lever):
    view_model, _ = planning(desk, bike, pairs="3")
    view_model.set_plan("item", f"adjuster/{lever.id}")
    view_model.set_plan("value", "open")
    assert view_model.begin_blind()
    motions = set()
    for liking in (5, 6, 5, 6, 5, 6):
        view_model.show_helper()
        motions.add(view_model.state.blind.motions)
        view_model.to_door()
        ride(view_model, liking)
    assert len(motions) == 1
    guess_all(view_model, 0, 0, 0)
    assert view_model.reveal()


def test_the_rider_can_take_the_time_of_a_blind_run_with_the_watch(desk, bike):
    view_model, heard = begun_test(desk, bike)
    put_on(view_model)
    view_model.rate_blind("liking", 6)
    view_model.press_blind_watch()
    assert view_model.blind_watch_time() != ""
    assert not view_model.keep_blind()
    assert heard.field == "blind_lap"
    view_model.press_blind_watch()
    assert view_model.state.blind.draft.lap != ""
    view_model.rate_blind("lap", "1:40")
    assert view_model.keep_blind()
    assert everything(desk)[Run][0].lap_s == 100.0
