"""What was noticed on a run, from the tick to the next step."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.ride import ride_records
from workbench.viewmodels import ride_noticed
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_run import RunDraft


@pytest.fixture
def bike(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    a_session(desk, bike)
    return bike


@pytest.fixture
def riding(desk, bike):
    return shown(RideViewModel, desk, bike.id)[0]


def look(riding):
    return riding.state.session.noticed


def test_a_tick_names_suspects_in_order_with_a_test_each(riding):
    riding.notice("packs", None)
    (told,) = look(riding).told
    assert told.end == "both"
    assert told.suspects[0].what == "Rebound too slow for a row of hits"
    assert all(one.test for one in told.suspects)
    assert "Not a diagnosis" in look(riding).remark


def test_the_end_is_picked_and_the_tick_taken_back(riding):
    riding.notice("packs", None)
    riding.notice("packs", "rear")
    assert look(riding).told[0].end == "rear"
    riding.notice("packs", "")
    assert look(riding).told == ()


def test_what_was_noticed_is_kept_with_the_run_and_said_in_the_list(desk, bike, riding):
    riding.set_run("liking", 5)
    riding.notice("packs", "rear")
    riding.notice("clunks", "front")
    assert riding.keep_run()
    (kept,) = desk.ask(ride_records(bike.id)).sessions
    assert {(one.symptom, one.end) for one in kept.symptoms} == {("packs", "rear"), ("clunks", "front")}
    assert "noticed: sinks lower over a row of hits (rear)" in riding.state.session.runs[0].said
    assert look(riding).remark.startswith("Noticed on run 1.")
    assert [row.key for row in look(riding).told] == ["packs", "clunks"]
    assert not any(row.end for row in look(riding).rows)


def test_a_suspect_that_is_an_adjuster_becomes_the_next_step(riding):
    riding.notice("packs", "rear")
    suspect = look(riding).told[0].suspects[0]
    assert suspect.verb.startswith("Work on rear ")
    riding.work_on(suspect.adjuster_id)
    assert riding.state.session.next.adjuster_id == suspect.adjuster_id
    riding.put_aside()
    assert riding.state.session.next.adjuster_id != suspect.adjuster_id
    riding.work_on(suspect.adjuster_id)
    assert riding.state.session.next.adjuster_id == suspect.adjuster_id


def test_a_kept_draft_gives_back_what_can_be_meant():
    draft = RunDraft(noticed=(("packs", "rear"),))
    assert RunDraft.from_json(draft.to_json()).noticed == draft.noticed
    assert ride_noticed.in_order((("packs", "sideways"), ("no_such", "front"), ("dives", "front"))) == (
        ("dives", "front"),
    )


# Overruled twice


def overrule(riding):
    """Keep a run, and set the proposed adjuster elsewhere than proposed."""
    riding.set_run("liking", 5)
    riding.set_run("direction", -1)
    riding.keep_run()
    look = riding.state.session.next
    other = look.position - 1 if look.position > look.now else look.position + 1
    assert riding.change_by_hand(f"adjuster/{look.adjuster_id}", str(other))


def test_a_rider_who_went_elsewhere_twice_is_asked_what_they_are_after(desk, riding):
    riding.set_run("liking", 5)
    riding.keep_run()  # a warm-up: what is proposed next is to ride it as it stands
    overrule(riding)
    riding.set_run("liking", 5)
    riding.keep_run()
    assert riding.state.session.next.ask == ""
    overrule(riding)
    riding.set_run("liking", 5)
    riding.keep_run()
    look = riding.state.session.next
    assert (look.ask, look.goal, look.offers) == ("What are you after?", "", ())
    riding.say_after("composure")
    look = riding.state.session.next
    assert look.goal == "composure"
    riding.work_on(look.offers[-1][0])
    assert riding.state.session.next.adjuster_id == look.offers[-1][0]
    desk.undo()
    assert riding.state.session.next.goal == ""
