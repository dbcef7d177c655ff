from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.parts import bike_parts
from workbench.actions.ride import ride_records
from workbench.actions.setups import values_of
from workbench.library.dump import check
from workbench.model.ride import BlindPlan, Session
from workbench.model.setting import Item
from workbench.viewmodels.session_notes import NOT_SURE, SessionNotesViewModel

TEXT = """\
course: Quarry loop
date: 2031-05-14
1 warm-up, like 5
2 fork rebound 2 out, like 6, better, lap 1:32.4
3 fork rebound 2 in, like 5, worse
4 fork rebound 3 out, fork pressure 80 psi, like 7, note arms tired, rain
"""


@pytest.fixture
def sheet(desk, bike):
    return shown(SessionNotesViewModel, desk, bike.id)


def ridden(desk, bike):
    return desk.ask(ride_records(bike.id))


def rebound(desk, bike):
    parts = desk.ask(bike_parts(bike.id))
    return parts, next(one for one in parts.adjusters_of(parts.unit("front").id) if one.kind == "rebound").id


def test_without_a_bike_or_a_baseline_it_says_what_comes_first(desk):
    assert shown(SessionNotesViewModel, desk)[0].state.blocked == "Pick a bike first."
    bike = a_bike(desk)
    assert "baseline first" in shown(SessionNotesViewModel, desk, bike.id)[0].state.blocked


def test_every_line_is_answered_beside_the_text_and_nothing_is_kept_yet(desk, bike, sheet):
    model, _ = sheet
    before = everything(desk)
    model.set_text(TEXT + "seat up a bit\n# left alone\n")
    assert [line.number for line in model.state.lines] == [1, 2, 3, 4, 5, 6, 7]
    assert [line.is_unclear for line in model.state.lines] == [False] * 6 + [True]
    assert model.state.summary == "4 runs on Quarry loop, a new course, 14 May 2031. 1 line not understood."
    assert everything(desk) == before


def test_a_line_that_is_not_understood_keeps_the_rest_from_being_kept(desk, bike, sheet):
    model, heard = sheet
    model.set_text(TEXT + "seat up a bit\n")
    before = everything(desk)
    assert not model.keep()
    assert "Line 7 is not understood" in heard.problems[-1].text
    assert model.problem()[1] == 7
    assert everything(desk) == before


@pytest.mark.parametrize(("text", "said"), [("", "no run in it yet"), ("1 like 5", "where it was ridden")])
def test_runs_and_a_course_are_needed(sheet, text, said):
    model, heard = sheet
    model.set_text(text)
    assert not model.keep()
    assert said in heard.problems[-1].text


def test_the_session_is_kept_as_one_step_with_its_setups(desk, bike, sheet):
    model, heard = sheet
    before = everything(desk)
    model.set_text(TEXT)
    assert model.state.verb == "Keep 4 runs"
    assert model.keep()
    assert heard.labels == ["Keep 4 runs on Quarry loop"]
    session = ridden(desk, bike).sessions[-1]
    assert (session.course.name, session.session.started_at) == ("Quarry loop", "2031-05-14T00:00:00+00:00")
    assert session.session.verified_at
    assert session.session.ended_at
    assert [run.liking for run in session.runs] == [5, 6, 5, 7]
    assert [run.is_confounded for run in session.runs] == [False, False, False, True]
    numbers = {setup.id: setup.number for setup in ridden(desk, bike).setups}
    assert [numbers[run.setup_id] for run in session.runs] == [1, 2, 1, 3]
    assert [run.note for run in session.runs][-1] == "arms tired, rain"
    assert model.state.text == ""
    assert check(desk._library) == []
    desk.undo()
    assert everything(desk) == before
    assert model.state.text == TEXT
    desk.redo()
    assert ridden(desk, bike).sessions[-1] == session


def test_the_bike_stands_as_the_last_run_left_it(desk, bike, sheet):
    model, _ = sheet
    parts, key = rebound(desk, bike)
    stood = parts.value(Item.ADJUSTER, key)
    model.set_text(TEXT)
    assert model.state.after == "The bike stands as the last run left it."
    model.keep()
    records = ridden(desk, bike)
    assert records.parts.value(Item.ADJUSTER, key) == stood + 3
    assert records.current.id == records.sessions[-1].runs[-1].setup_id


def test_an_older_session_leaves_what_is_on_the_bike_alone(desk, bike, sheet):
    model, _ = sheet
    a_run(desk, a_session(desk, bike), liking=6)
    parts, _ = rebound(desk, bike)
    model.set_text(TEXT.replace("2031-05-14", "2031-05-01"))
    assert "stays as it is on record" in model.state.after
    model.keep()
    after = desk.ask(bike_parts(bike.id))
    assert after.now == parts.now


def test_the_same_text_a_second_time_is_nothing_new(desk, bike, sheet):
    model, heard = sheet
    model.set_text(TEXT)
    model.keep()
    step = desk.undo_step()
    model.set_text(TEXT.replace("like 6", "like  6") + "\n\n")
    assert not model.keep()
    assert "Nothing new: this session of 14 May 2031 has been kept already." in heard.problems[-1].text
    assert desk.undo_step() == step


def test_another_start_can_be_chosen_and_one_not_sure_sets_the_runs_aside(desk, bike, sheet):
    model, _ = sheet
    model.set_text(TEXT)
    model.keep()
    first = ridden(desk, bike).setups[0]
    model.set_start(first.id)
    model.set_text("course: Quarry loop\n1 fork rebound 1 out, like 5")
    assert model.state.start == first.id
    values = desk.ask(lambda reader: values_of(reader, (first,)))[first.id]
    _, key = rebound(desk, bike)
    assert f"before {values[Item.ADJUSTER, key]:g}" in model.state.lines[1].said
    model.set_start(NOT_SURE)
    assert model.state.start == NOT_SURE
    assert model.keep()
    (run,) = ridden(desk, bike).sessions[-1].runs
    assert run.is_set_aside
    assert "not looked at" in run.set_aside_reason


def test_the_text_is_kept_at_every_letter_and_read_again_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        shown(SessionNotesViewModel, desk, bike.id)[0].set_text("course: Qu")
    with make_desk(tmp_path) as desk:
        assert shown(SessionNotesViewModel, desk, bike.id)[0].state.text == "course: Qu"


def test_the_text_is_put_aside_and_taken_back(sheet):
    model, heard = sheet
    model.set_text(TEXT)
    model.discard()
    assert model.state.text == ""
    model.take_back_draft(heard.discarded[-1][1])
    assert model.state.text == TEXT


def test_a_value_beyond_the_makers_limits_is_said_at_its_line(desk, bike, sheet):
    model, _ = sheet
    model.set_text("1 fork pressure 9000 psi, like 5")
    assert model.state.lines[0].is_unclear
    assert "Far outside" in model.state.lines[0].said


def test_a_blind_test_under_way_comes_first(desk, bike, sheet):
    model, _ = sheet
    session = a_session(desk, bike)
    plan = BlindPlan("p", session.id, "{}", "AB", 7, "digest", desk.now())
    desk.do("Draw", lambda gate: gate.put(plan), bike_id=bike.id)
    assert "blind test is under way" in model.state.blocked
    assert not model.keep()
    assert len(everything(desk)[Session]) == 1
