"""Everything a session's answers say, for every node: ratings, comparisons, and changes that may be worth nothing."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

import numpy as np

from workbench.evidence.design import STEADY_SD, STEEP_SD, STEEP_SHARE, Design
from workbench.evidence.nodes import PULLED, Nodes
from workbench.evidence.normal import Array
from workbench.evidence.ratings import Points, RunRecord
from workbench.evidence.sites import Answers

SPOILT_SHARE, SPOILT_SD = 0.05, 2.5
NOTHING_SHARE, NOTHING_SD = 0.3, 0.1  # changes that change next to nothing
PULL = 0.35  # weight of the last answer, for riders whom it pulls
COMPARE_MARGIN = 0.35  # two runs closer than this feel the same, in points
SHARED_ANSWER = 2.0  # variance factor of a comparison when both runs were also rated: it is partly the same news
EDGES = {-1: (-np.inf, -COMPARE_MARGIN), 0: (-COMPARE_MARGIN, COMPARE_MARGIN), 1: (COMPARE_MARGIN, np.inf)}

Pair = tuple[Hashable, Hashable]  # a change, as the keys of the settings before and after


def collect(runs: Sequence[RunRecord], points: Points, design: Design, new: Sequence[Pair], nodes: Nodes) -> Answers:
    """Ratings in riding order, then comparisons with the run before, then one entry a change in new."""
    later = np.array(_compared(runs), dtype=np.intp)
    said = np.array([EDGES[runs[index].compared or 0] for index in later]).reshape(-1, 2)
    rows, lower, upper, scale = _rated(runs, points, design, nodes)
    feelings = np.stack([design.columns, design.lagged, design.columns])[nodes.kind]
    believed = _believed(design, new)
    count = nodes.noise.size
    repeat = (count, 1)
    both = points.given[later] & points.given[later - 1]
    noise = nodes.noise[:, None] * scale
    between = nodes.noise[:, None] * np.sqrt(2.0 * np.where(both, SHARED_ANSWER, 1.0))
    plain = np.concatenate([noise, between], axis=1) ** 2
    spoilt = plain + SPOILT_SD**2
    steep = len(believed) - len(new)
    change = np.concatenate(
        [np.full((count, steep), STEEP_SD), np.repeat(nodes.change[:, None], len(new), axis=1)], axis=1
    )
    small = np.tile([*[STEADY_SD] * steep, *[NOTHING_SD] * len(new)], repeat)
    nothing = np.zeros_like(change)
    rare = np.concatenate(
        [np.full(plain.shape[1], SPOILT_SHARE), np.full(steep, STEEP_SHARE), np.full(len(new), 1.0 - NOTHING_SHARE)]
    )
    low = np.concatenate([lower, np.tile(said[:, 0], repeat), nothing], axis=1)
    high = np.concatenate([upper, np.tile(said[:, 1], repeat), nothing], axis=1)
    return Answers(
        rows=np.concatenate(
            [rows, feelings[:, later] - feelings[:, later - 1], np.tile(believed, (count, 1, 1))], axis=1
        ),
        lower=low,
        upper=high,
        exact=(low == high).all(axis=0),
        variances=np.stack([np.concatenate([plain, small**2], axis=1), np.concatenate([spoilt, change**2], axis=1)]),
        shares=np.stack([1.0 - rare, rare]),
    )


def _believed(design: Design, new: Sequence[Pair]) -> Array:
    """Rows of what is believed to be small as a rule: the steady trend, then each new change."""
    rows = np.zeros((len(new), design.columns.shape[1]))
    for row, (before, after) in enumerate(new):
        rows[row, design.setting_columns[after]] += 1.0
        rows[row, design.setting_columns[before]] -= 1.0
    return np.concatenate([np.eye(design.is_steady.size)[design.is_steady > 0], rows])


def first_changes(pairs: Sequence[Pair]) -> list[Pair]:
    """The changes that bring in a setting for the first time; only these may be worth nothing of their own accord.

    Giving every pair its own share of nothing would count one equality several times where changes form a ring.
    """
    known: set[Hashable] = set()
    new = []
    for pair in pairs:
        if not known.issuperset(pair):
            new.append(pair)
        known.update(pair)
    return new


def _compared(runs: Sequence[RunRecord]) -> list[int]:
    return [i for i in range(1, len(runs)) if runs[i].compared is not None and runs[i].day == runs[i - 1].day]


def _rated(
    runs: Sequence[RunRecord], points: Points, design: Design, nodes: Nodes
) -> tuple[Array, Array, Array, Array]:
    """Rows, bounds and relative noise of the ratings. A pulled rider's answer is partly the answer before."""
    rated = np.flatnonzero(points.given)
    pulled = np.array([i > 0 and points.given[i - 1] and runs[i].day == runs[i - 1].day for i in range(len(runs))])
    pull = np.where(pulled, PULL, 0.0)
    known = pull * np.concatenate([[0.0], points.middle[:-1]])
    rows = np.stack([design.columns, design.lagged, (1.0 - pull)[:, None] * design.columns])
    shift = np.where((nodes.kind == PULLED)[:, None], known, 0.0)[:, rated]
    scale = np.where((nodes.kind == PULLED)[:, None], 1.0 - pull, 1.0)[:, rated]
    return rows[nodes.kind][:, rated], points.lower[rated] - shift, points.upper[rated] - shift, scale
