"""Everything a session's answers say, for every node: ratings, comparisons, and what is believed to be small."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

import numpy as np

from workbench.evidence.design import STEADY_SD, STEEP_SD, STEEP_SHARE, Design
from workbench.evidence.nodes import PULLED, Nodes
from workbench.evidence.normal import Array
from workbench.evidence.ratings import Flags, Points, RunRecord
from workbench.evidence.sites import Answers, joined

SPOILT_SHARE, SPOILT_SD = 0.05, 2.5
CONFOUNDED_SD = 1.5  # what else moved a run that was disturbed
NOTHING_SHARE, NOTHING_SD = 0.27, 0.1  # changes that change next to nothing
PULL = 0.35  # weight of the last answer, for riders whom it pulls
COMPARE_MARGIN = 0.35  # two runs closer than this feel the same, in points
SHARED_ANSWER = 2.0  # variance factor of a comparison when both runs were also rated: it is partly the same news
EDGES = {-1: (-np.inf, -COMPARE_MARGIN), 0: (-COMPARE_MARGIN, COMPARE_MARGIN), 1: (COMPARE_MARGIN, np.inf)}

Pair = tuple[Hashable, Hashable]  # a change, as the keys of the settings before and after


def collect(runs: Sequence[RunRecord], points: Points, design: Design, new: Sequence[Pair], nodes: Nodes) -> Answers:
    """Ratings in riding order, then comparisons with the run before, then beliefs; those on new changes come last."""
    return joined(
        _ratings(runs, points, design, nodes),
        _comparisons(runs, points, design, nodes),
        _beliefs(design, new, nodes),
    )


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


def _ratings(runs: Sequence[RunRecord], points: Points, design: Design, nodes: Nodes) -> Answers:
    """One entry a rated run. A pulled rider's answer is partly the answer before."""
    rated = np.flatnonzero(points.given)
    pulled = np.array([i > 0 and points.given[i - 1] and runs[i].day == runs[i - 1].day for i in range(len(runs))])
    pull = np.where(pulled, PULL, 0.0)
    known = pull * np.concatenate([[0.0], points.middle[:-1]])
    is_pulled = (nodes.kind == PULLED)[:, None]
    rows = np.stack([design.columns, design.lagged, (1.0 - pull)[:, None] * design.columns])[nodes.kind]
    shift = np.where(is_pulled, known, 0.0)[:, rated]
    sd = nodes.noise[:, None] * np.where(is_pulled, 1.0 - pull, 1.0)[:, rated]
    variance = sd**2 + CONFOUNDED_SD**2 * _disturbed(runs)[rated]
    exact = points.lower[rated] == points.upper[rated]
    return _with_spoilt(rows[:, rated], points.lower[rated] - shift, points.upper[rated] - shift, exact, variance)


def _comparisons(runs: Sequence[RunRecord], points: Points, design: Design, nodes: Nodes) -> Answers:
    """One entry a run said to be better, the same or worse than the run before."""
    later = np.array(
        [i for i in range(1, len(runs)) if runs[i].compared is not None and runs[i].day == runs[i - 1].day],
        dtype=np.intp,
    )
    said = np.array([EDGES[runs[index].compared or 0] for index in later]).reshape(-1, 2)
    feelings = np.stack([design.columns, design.lagged, design.columns])[nodes.kind]
    both = points.given[later] & points.given[later - 1]
    disturbed = _disturbed(runs)
    variance = nodes.noise[:, None] ** 2 * 2.0 * np.where(both, SHARED_ANSWER, 1.0)
    variance = variance + CONFOUNDED_SD**2 * (disturbed[later] + disturbed[later - 1])
    lower, upper = (np.tile(edge, (nodes.noise.size, 1)) for edge in said.T)
    exact = np.zeros(later.size, dtype=np.bool_)
    return _with_spoilt(feelings[:, later] - feelings[:, later - 1], lower, upper, exact, variance)


def _beliefs(design: Design, new: Sequence[Pair], nodes: Nodes) -> Answers:
    """What is small as a rule, said as an answer of nothing with two sizes: the steady trend, then each new change."""
    steady = np.eye(len(design.kinds))[design.are("steady")]
    rows = np.zeros((len(new), design.columns.shape[1]))
    for row, (before, after) in enumerate(new):
        rows[row, design.setting_columns[after]] += 1.0
        rows[row, design.setting_columns[before]] -= 1.0
    count, steep = nodes.noise.size, len(steady)
    small = np.tile([*[STEADY_SD] * steep, *[NOTHING_SD] * len(new)], (count, 1))
    change = np.repeat(nodes.change[:, None], len(new), axis=1)
    large = np.concatenate([np.full((count, steep), STEEP_SD), change], axis=1)
    share = np.array([*[STEEP_SHARE] * steep, *[1.0 - NOTHING_SHARE] * len(new)])
    nothing = np.zeros_like(large)
    return Answers(
        np.tile(np.concatenate([steady, rows]), (count, 1, 1)),
        nothing,
        nothing,
        np.ones(share.size, dtype=np.bool_),
        np.stack([small**2, large**2]),
        np.stack([1.0 - share, share]),
    )


def _with_spoilt(rows: Array, lower: Array, upper: Array, exact: Flags, variance: Array) -> Answers:
    """Answers of runs, of which some few were spoilt by something else."""
    share = np.full(exact.size, SPOILT_SHARE)
    return Answers(
        rows, lower, upper, exact, np.stack([variance, variance + SPOILT_SD**2]), np.stack([1.0 - share, share])
    )


def _disturbed(runs: Sequence[RunRecord]) -> Array:
    return np.array([float(run.confounded) for run in runs])
