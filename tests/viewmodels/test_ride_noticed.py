"""What was noticed on a run, from the tick to the next step."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_session, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.ride import ride_records
from workbench.viewmodels import ride_noticed
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_run import RunDraft


@pytest.fixture
def desk(tmp_path):
    with make_desk(tmp_path) as desk:
        yield desk


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
    assert "noticed: rides lower and lower over a row of hits (rear)" in riding.state.session.runs[0].said
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
