"""What counts as a change, and as one change."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.model.bikes import a_log
from workbench.model.setting import Change, Item, changes_between, free_changes, latest

ITEMS = [(item.value, subject) for item, subject in itertools.product(Item, ("fork", "shock", "a1"))]
VALUES = st.dictionaries(st.sampled_from(ITEMS), st.none() | st.integers(0, 900).map(float), max_size=6)


def changes(*keys):
    return tuple(Change(item, subject, 1.0, 2.0) for item, subject in keys)


def test_pressures_the_gauge_cannot_tell_apart_do_not_differ():
    key = (Item.PRESSURE.value, "fork")
    assert changes_between({key: 500.0}, {key: 503.4}) == ()
    assert changes_between({key: 500.0}, {key: 503.6}) == (Change(*key, 500.0, 503.6),)
    click = (Item.ADJUSTER.value, "a1")
    assert len(changes_between({click: 5.0}, {click: 6.0})) == 1


@given(VALUES, VALUES)
def test_no_change_is_lost_or_invented_and_each_way_mirrors_the_other(before, after):
    forth, back = changes_between(before, after), changes_between(after, before)
    assert {(one.item, one.subject_id, one.before, one.after) for one in forth} == {
        (one.item, one.subject_id, one.after, one.before) for one in back
    }
    assert changes_between(before, before) == ()


@pytest.mark.parametrize(
    ("keys", "count"),
    [
        ([("spacers", "fork"), ("pressure", "fork")], 1),
        ([("spacers", "fork"), ("pressure", "shock")], 2),
        ([("spring_rate", "shock"), ("preload", "shock")], 1),
        ([("pressure", "fork"), ("second_pressure", "fork")], 1),
        ([("spacers", "fork"), ("pressure", "fork"), ("second_pressure", "fork")], 1),
        ([("adjuster", "a1"), ("adjuster", "a2")], 2),
        ([("adjuster", "a1"), ("pressure", "fork"), ("spacers", "fork")], 2),
        ([("tyre_pressure", "ft"), ("tyre_pressure", "rt")], 2),
        ([("spacers", "fork"), ("preload", "fork")], 2),
        ([], 0),
    ],
)
def test_linked_changes_on_one_unit_are_one(keys, count):
    for order in itertools.permutations(keys):
        assert free_changes(changes(*order)) == count


@given(st.sets(st.sampled_from(ITEMS), max_size=6))
def test_there_are_never_more_free_changes_than_changes_and_never_none_of_some(keys):
    count = free_changes(changes(*sorted(keys)))
    assert bool(keys) <= count <= len(keys)


def test_the_line_with_the_highest_number_holds_however_they_are_read():
    log = a_log(("pressure", "fork", 500.0, "set_to"), ("pressure", "fork", 520.0, "set_to"))
    assert latest(log)["pressure", "fork"].value == 520.0
    assert latest(log[::-1])["pressure", "fork"].value == 520.0
