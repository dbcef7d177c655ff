"""What lowers the worth of a comparison, beside the same written out run by run."""

from __future__ import annotations

from random import Random

import pytest

from workbench.evidence.changes import FEW, cautions_of, find_changes
from workbench.evidence.ratings import RunRecord, to_points
from workbench.evidence.verdicts import Caution

WATCHED = (Caution.NOT_BLIND, Caution.NO_RETURN, Caution.FEW_RUNS, Caution.DAY_BOUNDARY, Caution.OPTIMISM_POSSIBLE)


def a_session(seed):
    """Runs on a few settings over a few days, warm-ups and blind ones among them."""
    chance = Random(seed)
    days = sorted(chance.randrange(3) for _ in range(chance.randint(4, 30)))
    return [
        RunRecord(
            chance.choice("ABC"),
            chance.randint(1, 9),
            warmup=chance.random() < 0.15,
            day=day,
            blind=seed % 4 == 0 or chance.random() < 0.4,
        )
        for day in days
    ]


def written_out(change, runs):
    """The cautions watched, each run looked at on its own."""
    before, after, both = change.runs_before, change.runs_after, (*change.runs_before, *change.runs_after)
    fresh = [
        at > 0 and runs[at].setting != runs[at - 1].setting and runs[at].day == runs[at - 1].day
        for at in range(len(runs))
    ]
    first_after = min(at for at in after if at >= change.steps[0])
    surprised = any(fresh[at] and not runs[at].blind for at in after)
    holds = (
        not all(runs[at].blind for at in both),
        not any(at > first_after and runs[at].setting == change.before for at in both),
        min(len(before), len(after)) < FEW,
        {runs[at].day for at in before}.isdisjoint({runs[at].day for at in after}),
        surprised and 2 * sum(fresh[at] for at in after) >= len(after),
    )
    return {caution for caution, is_so in zip(WATCHED, holds, strict=True) if is_so}


@pytest.mark.parametrize("seed", range(40))
def test_cautions_are_those_found_run_by_run(seed):
    runs = a_session(seed)
    points = to_points(runs, (1, 9, 1), higher_is_better=True, past_sd=None)
    for change in find_changes(runs):
        assert cautions_of(change, runs, points) & set(WATCHED) == written_out(change, runs)


def test_the_sessions_tried_have_every_caution_watched():
    seen = set()
    for seed in range(40):
        runs = a_session(seed)
        seen |= {(caution, caution in written_out(one, runs)) for one in find_changes(runs) for caution in WATCHED}
    assert len(seen) == 2 * len(WATCHED)
