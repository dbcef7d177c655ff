"""A walk at random over the adjusters' sheet: the way back is never lost, whatever is done in whatever order."""

from __future__ import annotations

import random

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.actions.adjusters import adjuster_records
from workbench.model.put_back import line_before_measuring
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.bench import Bench


def a_deed(chance: random.Random, model: AdjustersViewModel, desk) -> object:
    """Choose something a person could do now, what is usual more often than what is not."""
    ids = [row.adjuster_id for group in model.state.groups for row in group.rows]
    often = (
        lambda: model.set_count(chance.randrange(1, 9)),
        lambda: model.set_count(chance.randrange(9, 16)),
        lambda: model.keep_as_found(is_known=chance.random() < 0.8, was_closed=chance.random() < 0.3),
        model.keep_range,
    )
    seldom = (
        lambda: model.count(chance.choice(ids)),
        lambda: model.clicked(chance.choice((-1, 1, 1))),
        lambda: model.skip("Not today"),
        model.leave,
        model.discard,
        lambda: model.take_step(model.state.put_back[0].key) if model.state.put_back else None,
        model.take_all_steps,
        desk.undo,
        desk.undo,
        desk.redo,
    )
    if model.state.count is None and chance.random() < 0.5:
        return seldom[0]
    return chance.choice(often if chance.random() < 0.6 else seldom)


def check_way_back(records) -> None:
    """Every knob that measuring moved is on the put-back list, at the place it stood at before."""
    steps = {step.subject_id: step for step in records.put_back}
    for adjuster in records.parts.adjusters:
        line = records.latest(adjuster.id)
        is_moved = line is not None and line.how in ("opened", "closed")
        before = line_before_measuring(records.log, adjuster.id)
        if is_moved and before is not None and before.value is not None:
            assert steps[adjuster.id].value == before.value
        elif not is_moved:
            assert adjuster.id not in steps
        count = records.parts.range_of(adjuster.id)
        if count is not None and count.as_found is not None:
            assert 0 <= count.as_found <= count.steps


@pytest.mark.parametrize("seed", range(2))
def test_the_way_back_is_never_lost(tmp_path, seed):
    chance = random.Random(seed)
    bike_id, counted = None, 0
    for _ in range(3):  # each round ends like a killed program and begins anew
        with make_desk(tmp_path) as desk:
            bike_id = bike_id or a_bike(desk).id
            floor = desk.undo_step().id
            bench = Bench(desk)
            bench.put_bike(bike_id)
            model = AdjustersViewModel(desk, bench)
            model.show()
            for _ in range(60):
                deed = a_deed(chance, model, desk)
                if deed == desk.undo and desk.undo_step().id == floor:
                    continue
                deed()
                records = desk.ask(adjuster_records(bike_id))
                check_way_back(records)
                counted = max(counted, len(records.parts.ranges))
    assert counted >= 2
