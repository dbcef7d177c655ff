"""Which pairs of settings were ridden one after the other, and what lowers the worth of comparing them."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from workbench.evidence.design import is_first_after_change
from workbench.evidence.ratings import Points, RunRecord, Setting, count_differences, key_of
from workbench.evidence.verdicts import Caution

FEW = 3  # fewer runs than this on a side is said
END_SHARE = 0.5  # share of a side's scores at an end of the scale from which it is said


@dataclass(frozen=True, slots=True)
class Change:
    """An unordered pair of settings, oriented as first ridden; indices of the counted runs on either side."""

    before: Setting
    after: Setting
    before_key: Hashable
    after_key: Hashable
    runs_before: tuple[int, ...]
    runs_after: tuple[int, ...]
    steps: tuple[int, ...]  # the runs that came right after a move between the two, either way


def find_changes(runs: Sequence[RunRecord]) -> list[Change]:
    """One entry a pair, in the order first ridden; warm-ups do not count."""
    counted = [i for i, run in enumerate(runs) if not run.warmup]
    keys = [key_of(run.setting) for run in runs]
    steps: dict[frozenset[Hashable], list[int]] = {}
    oriented: dict[frozenset[Hashable], tuple[int, int]] = {}
    for earlier, later in pairwise(counted):
        if keys[earlier] == keys[later]:
            continue
        pair = frozenset((keys[earlier], keys[later]))
        steps.setdefault(pair, []).append(later)
        oriented.setdefault(pair, (earlier, later))
    sides = {key: tuple(i for i in counted if keys[i] == key) for key in {keys[i] for i in counted}}
    return [
        Change(runs[a].setting, runs[b].setting, keys[a], keys[b], sides[keys[a]], sides[keys[b]], tuple(steps[pair]))
        for pair, (a, b) in oriented.items()
    ]


def is_confounded(change: Change, runs: Sequence[RunRecord]) -> bool:
    """Whether the two settings cannot be told apart cleanly.

    So when several adjusters differ, when every move between the two was disturbed, or when one side has no clean run.
    """
    if count_differences(change.before, change.after) > 1:
        return True
    if all(runs[i].confounded for i in change.steps):
        return True
    return any(all(runs[i].confounded for i in side) for side in (change.runs_before, change.runs_after))


def cautions_of(change: Change, runs: Sequence[RunRecord], points: Points) -> frozenset[Caution]:
    """Everything that lowers certainty about one change, as far as its own runs show it."""
    both = (*change.runs_before, *change.runs_after)
    first_after = min(i for i in change.runs_after if i >= change.steps[0])
    fresh = [i for i in change.runs_after if is_first_after_change(runs, i)]
    found = {
        Caution.NOT_BLIND: not all(runs[i].blind for i in both),
        Caution.NO_RETURN: not any(i > first_after for i in change.runs_before),
        Caution.CONFOUNDED: is_confounded(change, runs) or any(runs[i].confounded for i in both),
        Caution.FEW_RUNS: min(len(change.runs_before), len(change.runs_after)) < FEW,
        Caution.DAY_BOUNDARY: not _share_a_day(change, runs),
        Caution.SCALE_END: any(_at_end(side, points) for side in (change.runs_before, change.runs_after)),
        Caution.OPTIMISM_POSSIBLE: any(not runs[i].blind for i in fresh) and 2 * len(fresh) >= len(change.runs_after),
    }
    return frozenset(caution for caution, holds in found.items() if holds)


def _share_a_day(change: Change, runs: Sequence[RunRecord]) -> bool:
    return not {runs[i].day for i in change.runs_before}.isdisjoint(runs[i].day for i in change.runs_after)


def _at_end(side: Sequence[int], points: Points) -> bool:
    if not points.is_rating:
        return False
    ends = sum(bool(abs(points.lower[i]) == float("inf") or abs(points.upper[i]) == float("inf")) for i in side)
    return ends >= END_SHARE * len(side)
