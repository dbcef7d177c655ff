"""The ride's sheet without a window: start, run, change, end."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.adjusters import keep_range
from workbench.actions.edit import edit
from workbench.actions.fit_unit import fit_unit
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.actions.ride import change_settings, end_session, ride_records
from workbench.model.person import Person
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import Item, Setup
from workbench.viewmodels import ride_run, ride_start
from workbench.viewmodels.review import ReviewViewModel
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_next import YOURS
from workbench.viewmodels.ride_run import RunDraft
from workbench.viewmodels.ride_start import StartDraft
from workbench.viewmodels.shown import Units


@pytest.fixture
def riding(desk, bike):
    a_session(desk, bike)
    return shown(RideViewModel, desk, bike.id)


def records(desk, bike):
    return desk.ask(ride_records(bike.id))


def adjuster_key(desk, bike, place):
    return f"adjuster/{desk.ask(bike_parts(bike.id)).adjusters[place].id}"


def keep(view_model, liking, **more):
    for name, value in {"liking": liking, **more}.items():
        view_model.set_run(name, value)
    return view_model.keep_run()


# Before a session


def test_riding_waits_for_a_bike_a_baseline_and_a_rider(desk):
    assert shown(RideViewModel, desk)[0].state.blocked == "Pick a bike first."
    bike = a_bike(desk)
    assert "baseline" in shown(RideViewModel, desk, bike.id)[0].state.blocked


def test_a_session_starts_on_a_new_course_from_a_verified_start(desk, bike):
    view_model, heard = shown(RideViewModel, desk, bike.id)
    assert view_model.state.start.setup_text == "Setup no. 1"
    assert view_model.state.start.steps == ()
    for name, value in (("new_course", "Quarry loop"), ("temperature", "61 F"), ("verified", True)):
        view_model.set_start(name, value)
    assert view_model.start_session()
    session = records(desk, bike).open_session
    assert session.course.name == "Quarry loop"
    assert session.session.verified_at
    assert session.session.temperature_c == pytest.approx(16.1, abs=0.05)
    assert view_model.state.session.title == "Session on Quarry loop"
    assert heard.labels == ["Start session"]
    desk.undo()
    assert everything(desk)[Course] == ()
    assert view_model.state.start.draft.new_course == "Quarry loop"


@pytest.mark.parametrize(
    ("draft", "has_steps", "field"),
    [
        ({}, False, "new_course"),
        ({"new_course": "\u202e "}, False, "new_course"),
        ({"new_course": "x" * 10_000}, False, "new_course"),
        ({"new_course": "Loop", "temperature": "-80"}, False, "temperature"),
        ({"new_course": "Loop", "temperature": "warm"}, False, "temperature"),
        ({"new_course": "Loop", "planned": "0"}, False, "planned"),
        ({"new_course": "Loop", "planned": "000001" + "9" * 5000}, False, "planned"),
        ({"new_course": "Loop"}, False, "verified"),
        ({"new_course": "Loop", "verified": True}, True, "not_verified"),
        ({"new_course": "Loop", "not_verified": "x" * 10_000}, True, "not_verified"),
        ({"new_course": "Loop", "not_verified": "in a hurry"}, True, None),
        ({"new_course": "Loop", "planned": "", "verified": True}, False, None),
    ],
    ids=lambda one: str(one)[:50],
)
def test_what_keeps_a_session_from_starting_is_said_at_its_field(draft, has_steps, field):
    found = ride_start.problem(StartDraft(**draft), Units(), has_steps=has_steps)
    assert (found.field if found else None) == field


def test_a_bike_that_does_not_stand_as_its_setup_lists_the_steps_first(desk, bike):
    rebound = desk.ask(bike_parts(bike.id)).adjusters[1]
    desk.do("Meddle", set_item(bike.id, Item.ADJUSTER, rebound.id, 1.0, "set_to"), bike_id=bike.id)
    view_model, heard = shown(RideViewModel, desk, bike.id)
    view_model.set_start("new_course", "Loop")
    view_model.set_start("verified", True)
    assert not view_model.start_session()
    assert heard.field == "not_verified"
    (step,) = view_model.state.start.steps
    assert step.text == "Fork: low-speed rebound: fully closed, then open 6 clicks"
    view_model.take_step(step.key)
    assert view_model.start_session()


def test_a_start_that_is_not_verified_sets_its_runs_aside(desk, bike):
    view_model, _ = shown(RideViewModel, desk, bike.id)
    view_model.set_start("new_course", "Loop")
    view_model.set_start("not_verified", "no pump here")
    assert view_model.start_session()
    assert keep(view_model, 5)
    (run,) = records(desk, bike).open_session.runs
    assert (run.is_set_aside, run.set_aside_reason) == (True, "Start not verified")


def test_what_was_entered_of_a_start_is_there_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        shown(RideViewModel, desk, bike.id)[0].set_start("new_course", "Quarry <b>")
    with make_desk(tmp_path) as desk:
        assert shown(RideViewModel, desk, bike.id)[0].state.start.draft.new_course == "Quarry <b>"


def test_the_next_session_begins_with_what_the_last_one_had_or_goes_on_with_it(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 5)
    view_model.end_session()
    start = view_model.state.start
    assert dict(start.courses)[start.draft.course_id] == "Quarry loop"
    assert view_model.state.last_session_text.startswith("Quarry loop")
    view_model.reopen()
    assert view_model.state.session.entry.number == 2


# Runs


def test_a_run_is_kept_with_what_the_rider_said(desk, bike, riding):
    view_model, heard = riding
    assert view_model.state.session.entry.is_warmup
    assert keep(view_model, 6, direction=-1, travel_front="142", lap="2:41.3", note="<i>nice</i>")
    (run,) = records(desk, bike).open_session.runs
    assert (run.number, run.liking, run.direction, run.travel_front_mm, run.lap_s) == (1, 6, -1, 142.0, 161.3)
    assert (run.note, run.is_warmup, run.direction_of is not None) == ("<i>nice</i>", True, True)
    assert heard.labels == ["Keep run 1, liking 6"]
    assert view_model.state.session.entry.draft == RunDraft()
    assert view_model.state.session.runs[0].said == "liking 6, lap 2:41.3, warm-up"
    assert not view_model.state.session.entry.is_warmup


def test_attributes_are_kept_with_the_run_end_by_end_and_survive_as_a_draft(desk, bike, riding):
    view_model, _ = riding
    view_model.set_run("liking", 6)
    view_model.rate("support/rear", 4)
    view_model.rate("grip/front", 8)
    view_model.rate("grip/front", None)
    view_model.rate("grip/front", 7)
    again = shown(RideViewModel, desk, bike.id)[0].state.session.entry
    assert again.draft.scores == (("grip/front", 7), ("support/rear", 4))
    assert [row.title for row in again.scores] == ["Front", "Rear"]
    assert again.scores[0].cells[0].title == "Grip, front"
    assert [cell.score for cell in again.scores[1].cells] == [None, None, 4, None, None]
    assert view_model.keep_run()
    (kept,) = records(desk, bike).sessions
    assert {(one.attribute, one.score, one.end) for one in kept.ratings} == {
        ("grip", 7, "front"),
        ("support", 4, "rear"),
    }
    assert view_model.state.session.entry.draft.scores == ()


def test_a_kept_draft_with_scores_nobody_knows_opens_without_them():
    kept = '{"liking": 7, "scores": [["grip/front", 7], ["shine/front", 9], ["grip/rear", 12]]}'
    assert RunDraft.from_json(kept).scores == (("grip/front", 7),)
    assert RunDraft.from_json('{"liking": 7}').scores == ()


def test_a_session_judged_by_lap_time_asks_for_it(desk, bike):
    view_model, heard = shown(RideViewModel, desk, bike.id)
    assert view_model.state.start.responses == (("liking", "Liking"), ("lap_s", "Lap time"))
    for name, value in (("new_course", "Ridge"), ("response", "lap_s"), ("verified", True)):
        view_model.set_start(name, value)
    assert view_model.start_session()
    assert records(desk, bike).open_session.session.response == "lap_s"
    view_model.set_run("is_warmup", False)
    view_model.set_run("liking", 7)
    assert not view_model.keep_run()
    assert (heard.problems[-1].field, "judged by it" in heard.problems[-1].text) == ("lap", True)
    view_model.set_run("lap", "2:41.3")
    assert view_model.keep_run()


def test_the_ride_happened_when_its_first_entry_was_made_not_when_it_was_kept(desk, bike, riding):
    view_model, _ = riding
    view_model.set_run("liking", 5)
    begun = view_model.state.session.entry.draft.ridden_at
    desk.now()
    view_model.keep_run()
    (run,) = records(desk, bike).open_session.runs
    assert run.ridden_at == begun < run.typed_at


def test_a_run_belongs_to_what_was_ridden_also_when_the_next_thing_is_set_before_it_is_kept(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 5)
    ridden = records(desk, bike).current
    view_model.set_run("liking", 6)
    view_model.set_run("direction", -1)
    tested = view_model.state.session.entry.draft.tested_id
    other = next(place for place in (0, 1) if adjuster_key(desk, bike, place) != f"adjuster/{tested}")
    assert view_model.change_by_hand(adjuster_key(desk, bike, other), "2")
    assert records(desk, bike).current != ridden
    assert view_model.keep_run()
    run = records(desk, bike).open_session.runs[-1]
    assert (run.setup_id, run.direction_of) == (ridden.id, tested)


def test_an_entry_begun_on_a_setup_that_was_undone_since_goes_to_the_one_on_the_bike(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 5)
    view_model.change_by_hand(adjuster_key(desk, bike, 1), "9")
    view_model.set_run("liking", 6)
    desk.undo()
    assert view_model.keep_run()
    run = records(desk, bike).open_session.runs[-1]
    assert run.setup_id == records(desk, bike).current.id


def test_a_discarded_run_entry_can_be_taken_back(desk, bike, riding):
    view_model, heard = riding
    view_model.set_run("liking", 6)
    view_model.discard_run()
    ((label, draft_id),) = heard.discarded
    assert label == "Run entry discarded"
    view_model.take_back_draft(draft_id)
    assert view_model.state.session.entry.draft.liking == 6


def test_a_start_was_verified_when_it_was_ticked_not_when_the_session_began(desk, bike):
    view_model, _ = shown(RideViewModel, desk, bike.id)
    view_model.set_start("verified", True)
    ticked = view_model.state.start.draft.verified_at
    view_model.set_start("new_course", "Loop")
    assert view_model.start_session()
    session = records(desk, bike).open_session.session
    assert session.verified_at == ticked < session.started_at


def test_a_run_without_any_answer_is_asked_for_one(riding):
    view_model, heard = riding
    assert view_model.keep_run(), "a warm-up may go without"
    assert not view_model.keep_run()
    assert heard.field == "liking"


PROBLEMS = [
    ({"travel_front": "170"}, "travel_front"),
    ({"travel_front": "151"}, None),
    ({"travel_rear": "abc"}, "travel_rear"),
    ({"bottom_front": "51"}, "bottom_front"),
    ({"bottom_front": "00009999"}, "bottom_front"),
    ({"lap": "1 s"}, "lap"),
    ({"lap": "-5"}, "lap"),
    ({"note": "x" * 10_000}, "note"),
    ({"lap": "2:41.3", "liking": None}, None),
    ({"liking": None}, "liking"),
]


@pytest.mark.parametrize(("entry", "field"), PROBLEMS, ids=lambda one: str(one)[:40])
def test_an_entry_of_a_run_that_cannot_be_is_said_at_its_field(desk, bike, entry, field):
    draft = RunDraft(**{"liking": 5, **entry})
    found = ride_run.problem(draft, desk.ask(bike_parts(bike.id)), Units())
    assert (found.field if found else None) == field


def test_a_refused_run_loses_nothing_that_was_typed(desk, bike, riding):
    view_model, heard = riding
    assert not keep(view_model, 6, travel_front="999")
    assert heard.field == "travel_front"
    assert everything(desk)[Run] == ()
    draft = view_model.state.session.entry.draft
    assert (draft.liking, draft.travel_front) == (6, "999")


def test_a_run_half_entered_survives_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        a_session(desk, bike)
        shown(RideViewModel, desk, bike.id)[0].set_run("liking", 7)
    with make_desk(tmp_path) as desk:
        view_model, _ = shown(RideViewModel, desk, bike.id)
        assert view_model.state.session.entry.draft.liking == 7
        view_model.discard_run()
        assert view_model.state.session.entry.draft == RunDraft()


def test_keeping_undone_gives_the_entry_back(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 6)
    desk.undo()
    assert view_model.state.session.entry.draft.liking == 6
    assert everything(desk)[Run] == ()
    desk.redo()
    assert view_model.state.session.entry.draft == RunDraft()


def test_a_run_is_set_aside_with_a_reason_and_counted_again(riding):
    view_model, _ = riding
    keep(view_model, 6)
    run_id = view_model.state.session.runs[0].run_id
    view_model.set_aside(run_id, "Lever was wrong")
    assert view_model.state.session.runs[0].said == "liking 6, warm-up, set aside: Lever was wrong"
    view_model.set_aside(run_id, "")
    assert not view_model.state.session.runs[0].is_set_aside


# Changes


@pytest.mark.parametrize(
    ("counting", "names", "said"),
    [("turns", "", "turns from closed"), ("positions", "|".join("abcdefghijklmnopqrst"), "Go to ")],
)
def test_an_adjuster_counted_otherwise_is_proposed_and_reviewed_in_its_own_words(desk, bike, counting, names, said):
    knob = desk.ask(bike_parts(bike.id)).adjusters[1]
    told = replace(knob, counting=counting, position_names=names)
    desk.do("Counted so", lambda gate: gate.put(told), bike_id=bike.id)
    session = a_session(desk, bike)
    for position, liking in ((6, 4), (11, 7), (15, 6)):
        wanted = {(Item.ADJUSTER.value, knob.id): float(position)}
        desk.do("Move", change_settings(bike.id, session.rider_id, wanted, session_id=session.id), bike_id=bike.id)
        a_run(desk, session, liking=liking, direction=0, direction_of=knob.id)
    look = shown(RideViewModel, desk, bike.id)[0].state.session.next
    response = shown(ReviewViewModel, desk, bike.id)[0].state.along
    assert said in look.reason
    for sentence in (
        look.reason,
        *response.told,
        response.response.said,
        *(one.said for one in response.response.places),
    ):
        assert "click" not in sentence
        assert "()" not in sentence
    assert len(response.response.names) == response.response.steps + 1


def test_the_proposal_is_set_with_one_key_and_waits_for_its_run(desk, bike, riding):
    view_model, heard = riding
    keep(view_model, 5)
    keep(view_model, 5, direction=-1)
    look = view_model.state.session.next
    assert look.verb == "It is set"
    assert " further " in look.reason
    assert "from where it stands" not in look.reason, "the move is said once"
    assert "pitch a rider forward" in look.care
    assert any("Vent slowly" in one.care for one in view_model.state.session.choices)
    view_model.set_proposed()
    state = view_model.state.session
    assert desk.ask(bike_parts(bike.id)).value(Item.ADJUSTER, look.adjuster_id) == look.position
    assert state.changed
    assert state.setup_text == "Setup no. 2 is on the bike"
    assert state.changed in heard.labels
    keep(view_model, 7)
    assert view_model.state.session.changed == ""
    assert view_model.state.session.runs[0].change == state.changed


def test_a_second_free_change_is_refused_at_the_field_unless_said(desk, bike, riding):
    view_model, heard = riding
    keep(view_model, 5)
    assert view_model.change_by_hand(adjuster_key(desk, bike, 1), "9")
    before = everything(desk)
    assert not view_model.change_by_hand(adjuster_key(desk, bike, 0), "2")
    assert heard.field == "by_hand"
    assert "2 things at once" in heard.problems[-1].text
    assert everything(desk) == before
    assert view_model.change_by_hand(adjuster_key(desk, bike, 0), "2", both_meant=True)
    keep(view_model, 6)
    assert "two changes at once" in view_model.state.session.runs[0].said


def test_going_back_by_hand_shows_the_first_setups_number_again(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 5)
    view_model.change_by_hand(adjuster_key(desk, bike, 1), "9")
    keep(view_model, 6)
    view_model.change_by_hand(adjuster_key(desk, bike, 1), "6")
    assert view_model.state.session.setup_text == "Setup no. 1 is on the bike"
    assert len(everything(desk)[Setup]) == 2


@pytest.mark.parametrize(
    ("what", "text"),
    [
        ("adjuster", "18"),
        ("adjuster", "-1"),
        ("adjuster", ""),
        ("adjuster", "6 clicks"),
        ("adjuster", "9" * 5000),
        ("pressure", "nan"),
        ("pressure", "99999 psi"),
        ("pressure", "30 mm"),
        ("spacers", "12345678"),
        ("spacers", "1.5"),
    ],
    ids=lambda one: one[:12],
)
def test_a_change_that_cannot_be_made_is_refused_and_changes_nothing(desk, bike, riding, what, text):
    view_model, heard = riding
    before = everything(desk)
    key = next(one.key for one in view_model.state.session.choices if one.key.startswith(f"{what}/"))
    assert not view_model.change_by_hand(key, text)
    assert heard.field == "by_hand"
    assert everything(desk) == before


def test_a_pressure_that_stands_there_already_asks_whether_it_was_let_out_hot(desk, bike, riding):
    view_model, heard = riding
    before = everything(desk)
    key = next(one.key for one in view_model.state.session.choices if one.key.startswith("pressure/"))
    assert not view_model.change_by_hand(key, "75.5 psi")
    assert heard.field == "by_hand"
    assert heard.problems[-1].text.startswith(
        "It stands at 75.4\u2009psi already. If some was let out while it was hot"
    )
    assert everything(desk) == before
    assert view_model.change_by_hand(key, "77 psi")


def test_overruled_twice_the_tool_follows_the_rider(desk, bike, riding):
    view_model, _ = riding
    keep(view_model, 5)
    for liking in (6, 5):
        look = view_model.state.session.next
        assert not look.follows_rider
        elsewhere = 1 if look.position != 1 else 2
        view_model.change_by_hand(f"adjuster/{look.adjuster_id}", str(elsewhere))
        keep(view_model, liking)
        view_model.change_by_hand(f"adjuster/{look.adjuster_id}", "4")
        keep(view_model, liking)
    assert view_model.state.session.next.follows_rider


def test_another_adjuster_can_be_worked_on_instead(riding):
    view_model, _ = riding
    keep(view_model, 5)
    first = view_model.state.session.next.adjuster_id
    view_model.put_aside()
    assert view_model.state.session.next.adjuster_id != first


def test_a_bike_meddled_with_in_a_session_keeps_no_run_until_it_is_said_what_stands(desk, bike, riding):
    view_model, heard = riding
    rebound = desk.ask(bike_parts(bike.id)).adjusters[1]
    desk.do("Meddle", set_item(bike.id, Item.ADJUSTER, rebound.id, 1.0, "set_to"), bike_id=bike.id)
    assert view_model.state.session.setup_text == "The bike stands as no setup says"
    assert not keep(view_model, 5)
    assert "no setup says" in heard.problems[-1].text
    view_model.change_by_hand(adjuster_key(desk, bike, 1), "1")
    assert view_model.keep_run()


def test_the_rider_reads_the_units_of_the_bench(desk, bike, riding):
    view_model, _ = riding
    choice = next(one for one in view_model.state.session.choices if one.key.startswith("pressure/"))
    assert (choice.now, choice.unit) == ("75.4\u2009psi", "psi")


def test_a_session_of_an_unknown_kind_of_entry_is_read_as_far_as_it_is_known():
    assert RunDraft.from_json('{"liking": 5, "mood": "fine"}') == replace(RunDraft(), liking=5)
    assert StartDraft.from_json('{"mood": "fine"}') == StartDraft()


def test_ending_and_undoing_the_end_gives_the_same_session(desk, bike, riding):
    view_model, _ = riding
    before = everything(desk)[Session]
    view_model.end_session()
    assert view_model.state.session is None
    desk.undo()
    assert everything(desk)[Session] == before
    assert view_model.state.session is not None


def test_a_bare_number_keeps_its_unit_when_somebody_else_comes_to_the_bench(desk, bike, riding):
    view_model, _ = riding
    view_model.set_run("liking", 5)
    view_model.set_run("travel_front", "5")
    inches = desk.do("Add", add_person("B. Ito", works_here=True, rides=False), station="garage")
    desk.do("Units", edit(Person, inches.id, "length_unit", "in"), station="garage")
    view_model._bench.seat(inches.id)
    assert view_model.state.session.entry.draft.travel_front == "5 mm"
    assert view_model.keep_run()
    assert records(desk, bike).open_session.runs[-1].travel_front_mm == 5.0


def test_after_two_overrules_the_choice_is_said_to_be_the_riders(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    for liking in (5, 6):
        a_run(desk, session, liking=liking)
    view_model = shown(RideViewModel, desk, bike.id)[0]
    for _ in range(2):
        look = view_model.state.session.next
        assert not look.reason.startswith(YOURS)
        other = look.position + 1 if look.position < look.steps else look.position - 1
        assert view_model.change_by_hand(f"adjuster/{look.adjuster_id}", str(other))
        a_run(desk, session, liking=6)
    assert view_model.state.session.next.reason.startswith(YOURS)


@pytest.mark.parametrize(("response", "field"), [("lap_s", None), ("liking", "liking")])
def test_a_time_a_recorder_has_is_enough_where_the_lap_is_judged(desk, bike, response, field):
    session = a_session(desk, bike)
    desk.do("Judge", lambda gate: gate.put(replace(session, response=response)), bike_id=bike.id)
    view_model, heard = shown(RideViewModel, desk, bike.id)
    view_model.set_run("is_warmup", False)
    view_model.set_run("lap", "track")
    assert view_model.keep_run() == (field is None)
    assert heard.field == field


def test_after_another_fork_the_direction_is_asked_about_a_knob_that_is_there(desk, bike):
    session = a_session(desk, bike)
    view_model, _ = shown(RideViewModel, desk, bike.id)
    a_run(desk, session, liking=5)
    assert view_model.change_by_hand(adjuster_key(desk, bike, 1), "6")
    a_run(desk, session, liking=6)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    desk.do("Fit", fit_unit(bike.id, "front", "air", travel_mm=150.0), bike_id=bike.id)
    for adjuster in desk.ask(bike_parts(bike.id)).adjusters[:2]:
        desk.do("Range", keep_range(bike.id, adjuster.id, 12), bike_id=bike.id)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    again, _ = shown(RideViewModel, desk, bike.id)
    assert again.state.session.entry.direction_question == "Front low-speed rebound was"
    a_run(desk, session, liking=6)
    assert again.state.session.entry.direction_question == "Front low-speed rebound was"


# The watch


def test_the_watch_gives_the_time_from_one_press_to_the_next(desk, riding):
    view_model, heard = riding
    view_model.press_watch()
    assert view_model.watch_time() != ""
    view_model.set_run("liking", 6)
    assert not view_model.keep_run()
    assert (heard.field, "still running" in heard.problems[-1].text) == ("lap", True)
    begun = datetime.fromisoformat(view_model.state.session.entry.draft.watch)
    view_model.press_watch()
    draft = view_model.state.session.entry.draft
    assert (draft.watch, view_model.watch_time()) == ("", "")
    (seconds,) = [Units().parse(draft.lap, "duration")]
    assert 0 < seconds <= (datetime.fromisoformat(desk.now()) - begun).total_seconds()


def test_the_watch_runs_on_while_the_window_is_closed(desk, bike, riding):
    riding[0].press_watch()
    begun = riding[0].state.session.entry.draft.watch
    again, _ = shown(RideViewModel, desk, bike.id)
    assert again.state.session.entry.draft.watch == begun
    assert Units().parse(again.watch_time(), "duration") > 0
