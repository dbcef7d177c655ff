"""What the baseline sheet is made from."""

from __future__ import annotations

from tests.fixtures import a_baseline, a_counted_bike
from workbench.actions.baseline import baseline_records
from workbench.model.baseline import AS_FOUND, MEASURED, NONE_FITTED
from workbench.model.setting import Item


def test_a_bike_that_was_looked_at_proposes_what_was_found(desk):
    bike = a_counted_bike(desk)
    records = desk.ask(baseline_records(bike.id))
    proposed = {(one.item, one.subject_id): (one.value, one.origin) for one in records.proposed}
    fork, shock = records.parts.units
    assert proposed[Item.PRESSURE, fork.id] == (520.0, MEASURED)
    assert proposed[Item.SPACERS, shock.id] == (0.0, NONE_FITTED)
    places = [proposed[Item.ADJUSTER, one.id] for one in records.parts.adjusters]
    assert places == [(5.0, AS_FOUND), (6.0, AS_FOUND), (4.0, AS_FOUND), (7.0, AS_FOUND)]
    assert (records.setups, records.steps, records.newest) == ((), (), {})


def test_once_kept_and_set_nothing_is_left_to_set(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    records = desk.ask(baseline_records(bike.id))
    assert records.setups == (setup,)
    assert records.steps == ()
    assert len(records.newest) == len(records.proposed)
