"""Runs put right afterwards, there and back."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, everything
from workbench.actions.ride import ride_records, set_run_aside
from workbench.actions.ride_evidence import counted, told_runs
from workbench.actions.ride_marks import mark_runs
from workbench.model.errors import InputError


@pytest.fixture
def ridden(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    return bike, [a_run(desk, session, liking=liking) for liking in (5, 6, 4, 7)]


def session_of(desk, bike):
    return desk.ask(ride_records(bike.id)).sessions[-1]


def test_a_lever_left_closed_for_three_runs_is_put_right_in_one_deed(desk, ridden):
    bike, runs = ridden
    before = everything(desk)
    deed = mark_runs(tuple(run.id for run in runs[:3]), reason="Rear lever closed by mistake", lever="rear closed")
    desk.do("Rear lever closed for 3 runs", deed, bike_id=bike.id, station="ride")
    marked = session_of(desk, bike)
    assert [run.lever for run in marked.runs] == ["rear closed"] * 3 + [""]
    assert [run.number for run in counted(marked)] == [4]
    assert [run.liking for run in marked.runs] == [5, 6, 4, 7]
    records = desk.ask(ride_records(bike.id))
    assert [run.number for run, _ in told_runs(records, records.sessions, "liking")] == [4]
    after = everything(desk)
    desk.undo()
    assert everything(desk) == before
    desk.redo()
    assert everything(desk) == after


def test_a_run_that_counts_again_stood_as_its_setup_says(desk, ridden):
    bike, runs = ridden
    desk.do("Mark", mark_runs((runs[0].id,), reason="Rear lever closed by mistake", lever="rear closed"))
    desk.do("Count", set_run_aside(runs[0].id, ""), bike_id=bike.id)
    first = session_of(desk, bike).runs[0]
    assert (first.lever, first.is_set_aside) == ("", False)


def test_a_lever_nobody_has_is_refused():
    with pytest.raises(InputError):
        mark_runs((), reason="x", lever="sideways")
