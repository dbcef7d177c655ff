"""Each deed of the adjusters' sheet: done, undone, done again."""

from __future__ import annotations

import json

import pytest

from tests.fixtures import a_bike
from workbench.actions.adjusters import (
    adjuster_records,
    close_to_count,
    count_earlier,
    keep_as_found,
    keep_range,
    log_found,
    skip_adjuster,
    wait_for,
)
from workbench.actions.garage import start_generation
from workbench.model.errors import InputError


@pytest.fixture
def bike(desk):
    return a_bike(desk)


def records(desk, bike):
    return desk.ask(adjuster_records(bike.id))


def do(desk, bike, deed):
    return desk.do("A deed", deed, bike_id=bike.id, station="adjusters")


def lines(desk, bike, adjuster):
    return [(line.value, line.how) for line in records(desk, bike).log if line.subject_id == adjuster.id]


def check_undo(desk, bike, deed):
    """Do, undo and redo a deed; records must be equal each time. Gives what the deed gives."""
    before = records(desk, bike)
    result = do(desk, bike, deed)
    after = records(desk, bike)
    assert after != before
    desk.undo()
    assert records(desk, bike) == before
    desk.redo()
    assert records(desk, bike) == after
    return result


def test_as_found_is_on_record_before_anything_is_opened(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    check_undo(desk, bike, keep_as_found(bike.id, rebound.id, 6))
    assert lines(desk, bike, rebound) == [(6.0, "counted"), (0.0, "closed")]
    (step,) = records(desk, bike).put_back
    assert (step.value, step.before) == (6.0, 0.0)


def test_keeping_a_range_records_count_and_open_knob_and_closes_the_draft(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    draft = desk.keep_draft("count", json.dumps({}), bike_id=bike.id, subject=rebound.id)
    do(desk, bike, keep_as_found(bike.id, rebound.id, 6))
    count = check_undo(desk, bike, keep_range(bike.id, rebound.id, 13, draft_id=draft.id))
    assert (count.steps, count.as_found) == (13, 6)
    parts = records(desk, bike).parts
    assert count.generation_id == parts.generation(rebound.unit_id).id
    line = records(desk, bike).latest(rebound.id)
    assert (line.value, line.how, line.range_id) == (13.0, "opened", count.id)
    assert desk.drafts(bike.id) == ()
    desk.undo()
    assert [one.id for one in desk.drafts(bike.id)] == [draft.id]


def test_a_refused_range_leaves_nothing(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    do(desk, bike, keep_as_found(bike.id, rebound.id, 6))
    before = records(desk, bike)
    with pytest.raises(InputError):
        do(desk, bike, keep_range(bike.id, rebound.id, 3))
    assert records(desk, bike) == before


def test_a_recount_of_an_open_knob_remembers_where_it_was_found(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    do(desk, bike, keep_as_found(bike.id, rebound.id, 6))
    first = do(desk, bike, keep_range(bike.id, rebound.id, 13))
    check_undo(desk, bike, close_to_count(bike.id, rebound.id))
    second = do(desk, bike, keep_range(bike.id, rebound.id, 14))
    assert (second.steps, second.as_found) == (14, 6)
    assert records(desk, bike).parts.ranges == (first, second)


def test_an_unknown_place_is_kept_as_unknown(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    do(desk, bike, keep_as_found(bike.id, rebound.id, None))
    assert lines(desk, bike, rebound) == [(None, "unknown"), (0.0, "closed")]
    assert do(desk, bike, keep_range(bike.id, rebound.id, 13)).as_found is None


def test_a_count_belongs_to_the_hardware_it_was_made_on(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    do(desk, bike, keep_range(bike.id, rebound.id, 13))
    do(desk, bike, start_generation(rebound.unit_id, "retune"))
    assert records(desk, bike).parts.range_of(rebound.id) is None
    assert len(records(desk, bike).parts.ranges) == 1


def test_passing_one_over_gives_the_reason_until_it_is_counted(desk, bike):
    rebound = records(desk, bike).parts.adjusters[1]
    check_undo(desk, bike, skip_adjuster(bike.id, rebound.id, "Knob missing or stuck"))
    assert records(desk, bike).skipped == {rebound.id: "Knob missing or stuck"}
    do(desk, bike, skip_adjuster(bike.id, rebound.id, "Not today"))
    assert records(desk, bike).skipped == {rebound.id: "Not today"}
    check_undo(desk, bike, keep_range(bike.id, rebound.id, 13))
    assert records(desk, bike).skipped == {}


def test_springs_and_tyres_are_logged_as_they_were_read(desk, bike):
    parts = records(desk, bike).parts
    fork, tyre = parts.units[0], parts.tyres[0]
    check_undo(desk, bike, log_found(bike.id, "pressure", fork.id, 565.4))
    check_undo(desk, bike, log_found(bike.id, "spacers", fork.id, 2))
    check_undo(desk, bike, log_found(bike.id, "tyre_pressure", tyre.id, None))
    now = {(line.item, line.subject_id): (line.value, line.how) for line in records(desk, bike).parts.now}
    assert now["pressure", fork.id] == (565.4, "as_attached")
    assert now["spacers", fork.id] == (2.0, "stated")
    assert now["tyre_pressure", tyre.id] == (None, "unknown")


@pytest.mark.parametrize("value", [-1.0, 9000.0, float("nan"), float("inf")])
def test_a_pressure_no_fork_can_hold_is_refused(bike, value):
    with pytest.raises(InputError, match="Air pressure"):
        log_found(bike.id, "pressure", "fork", value)


def test_the_counting_order_can_be_changed(desk, bike):
    compression, rebound = records(desk, bike).parts.adjusters[:2]
    check_undo(desk, bike, count_earlier(rebound.id))
    assert [one.id for one in records(desk, bike).parts.adjusters[:2]] == [rebound.id, compression.id]
    do(desk, bike, count_earlier(rebound.id))
    assert records(desk, bike).parts.adjusters[0].id == rebound.id


def test_one_adjuster_can_wait_for_another(desk, bike):
    compression, rebound = records(desk, bike).parts.adjusters[:2]
    check_undo(desk, bike, wait_for(rebound.id, compression.id))
    assert records(desk, bike).parts.adjuster(rebound.id).depends_on == compression.id
