"""One model of a whole session: what each setting is worth, with everything else that moves a rating beside it.

Notes
-----
Feeling in run i = level + setting + learning + fatigue + wander + optimism right after a change + warm-up + day
+ noise. A rating is the interval of feelings that rounds to it; the ends of the scale are open. Noise is normal with
an unknown size, and about one run in twenty is spoilt. The size of the noise, of the setting effects and of the wander
are unknown: they lie on a grid of nodes. Given a node the linear part is Gaussian; each answer is matched by
expectation propagation, and nodes are weighted by how well they explain the answers. Own derivation from:

References
----------
Minka (2001), Expectation propagation for approximate Bayesian inference, UAI 17, 362-369.
Rasmussen & Williams (2006), Gaussian Processes for Machine Learning, section 3.6.
"""

from __future__ import annotations

import itertools
from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.design import Design, build
from workbench.evidence.normal import Array, mixture_quantile
from workbench.evidence.propagation import Propagated, State, propagate
from workbench.evidence.ratings import TYPICAL_SD, Points, RunRecord
from workbench.evidence.sites import Answers, split

NOISE_RATIOS = (0.4, 0.7, 1.1, 1.7, 2.6)  # of the noise expected beforehand
NOISE_SPREAD = 0.7  # log sd of that expectation
KNOWN_NOISE_SPREAD = 0.3  # the same when earlier sessions of the rider are known
SPOILT_SHARE, SPOILT_SD = 0.05, 2.5
NOTHING_SHARE, NOTHING_SD = 0.25, 0.1  # changes that change next to nothing
CHANGE_SDS = ((1.1, 0.45), (2.4, 0.55))  # size of the others
WANDER_SDS = ((0.1, 0.6), (0.5, 0.4))
LAG_SHARES = (0.6, 0.4)  # of riders whose answers do not, or do, linger on the setting before
COMPARE_MARGIN = 0.35  # two runs closer than this feel the same, in points
SHARED_ANSWER = 2.0  # variance factor of a comparison when both runs were also rated: it is partly the same news
ROUNDS_BEFORE, ROUNDS_AFTER = 4, 8
NODE_FLOOR = 1e-3
NODE_WIDTH = 0.22  # log size around a node that it stands for


Pair = tuple[Hashable, Hashable]  # a change, as the keys of the settings before and after


@dataclass(frozen=True, slots=True)
class Posterior:
    """What is known after the session: one row a node, with its weight."""

    weight: Array
    noise: Array
    means: Array  # (2, k, changes): what each change is worth, in two parts: nothing, or something
    sds: Array
    parts: Array

    def effects(self) -> tuple[Array, Array, Array]:
        """Means, sds and weights of what each change is worth: one row a change, one column a part of a node."""
        flat = [
            np.concatenate(list(values), axis=0).T
            for values in (self.means, self.sds, self.parts * self.weight[:, None])
        ]
        return flat[0], flat[1], flat[2]

    def noise_sd(self) -> float:
        """The run-to-run scatter to be expected, in points."""
        return float(np.exp(np.sum(self.weight * np.log(self.noise))))

    def noise_range(self) -> tuple[float, float]:
        """A 90 % interval of the run-to-run scatter; each node stands for the sizes around it."""
        logs, width = np.log(self.noise)[None, :], np.full((1, self.noise.size), NODE_WIDTH)
        low, high = (mixture_quantile(share, logs, width, self.weight[None, :])[0] for share in (0.05, 0.95))
        return float(np.exp(low)), float(np.exp(high))


def learn(runs: Sequence[RunRecord], points: Points, pairs: Sequence[Pair], *, past_sd: float | None) -> Posterior:
    """The posterior of a session's runs.

    Parameters
    ----------
    pairs : sequence of (before, after)
        The changes asked about, as keys of settings.
    past_sd : float, optional
        This rider's scatter in earlier sessions [points].
    """
    design = build(runs)
    nodes = _nodes(past_sd)
    answers = _answers(runs, points, design, first_changes(pairs), nodes)
    sd = np.where(design.is_wander > 0, nodes.wander[:, None], design.sd)
    precision = 1.0 / (sd * sd)
    shape = (nodes.noise.size, answers.lower.size)
    start = State(np.zeros(shape), np.zeros(shape))
    first = propagate(answers, answers.rows[nodes.lag], design.mean, precision, start, ROUNDS_BEFORE)
    keep = _weights(first.evidence + nodes.belief) > NODE_FLOOR
    fewer = answers.at_nodes(keep)
    last = propagate(
        fewer, answers.rows[nodes.lag[keep]], design.mean, precision[keep], first.state.at_nodes(keep), ROUNDS_AFTER
    )
    weight = _weights(last.evidence + nodes.belief[keep])
    return Posterior(weight, nodes.noise[keep], *_effects(design, fewer, last, pairs))


def _effects(
    design: Design, answers: Answers, reached: Propagated, pairs: Sequence[Pair]
) -> tuple[Array, Array, Array]:
    """What each change is worth, per node, as two parts; changes between settings known before have two like parts."""
    plus = np.array([design.setting_columns[after] for _, after in pairs], dtype=np.intp)
    minus = np.array([design.setting_columns[before] for before, _ in pairs], dtype=np.intp)
    c = reached.covariance
    means = np.repeat((reached.mean[:, plus] - reached.mean[:, minus])[None], 2, axis=0)
    spread = c[:, plus, plus] + c[:, minus, minus] - 2.0 * c[:, plus, minus]
    sds = np.repeat(np.sqrt(np.maximum(spread, 1e-12))[None], 2, axis=0)
    parts = np.full_like(means, 0.5)
    new = first_changes(pairs)
    at = [pairs.index(pair) for pair in new]
    asked = slice(answers.lower.size - len(new), None)
    means[:, :, at], sds[:, :, at], parts[:, :, at] = split(
        reached.cavity_mean[:, asked],
        reached.cavity_variance[:, asked],
        answers.variances[:, :, asked],
        answers.shares[:, asked],
    )
    return means, sds, parts


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


def _weights(log_weight: Array) -> Array:
    raw = np.exp(log_weight - np.max(log_weight))
    return np.asarray(raw / raw.sum())


@dataclass(frozen=True, slots=True)
class _Nodes:
    """The grid of what is unknown about the session as a whole."""

    noise: Array
    change: Array
    wander: Array
    lag: NDArray[np.intp]
    belief: Array


def _nodes(past_sd: float | None) -> _Nodes:
    centre = TYPICAL_SD if past_sd is None else past_sd
    spread = NOISE_SPREAD if past_sd is None else KNOWN_NOISE_SPREAD
    grid = list(itertools.product(NOISE_RATIOS, CHANGE_SDS, WANDER_SDS, enumerate(LAG_SHARES)))
    shares = np.log([node[1][1] * node[2][1] * node[3][1] for node in grid])
    sizes = np.log([node[0] for node in grid])
    return _Nodes(
        noise=np.array([centre * node[0] for node in grid]),
        change=np.array([node[1][0] for node in grid]),
        wander=np.array([node[2][0] for node in grid]),
        lag=np.array([node[3][0] for node in grid]),
        belief=shares - 0.5 * (sizes / spread) ** 2,
    )


def _answers(
    runs: Sequence[RunRecord],
    points: Points,
    design: Design,
    pairs: Sequence[Pair],
    nodes: _Nodes,
) -> Answers:
    """Ratings, then comparisons with the run before, then for each change the belief that it may be worth nothing."""
    feelings = np.stack([design.columns, design.lagged])
    rated = np.flatnonzero(points.given)
    compared = _comparisons(runs)
    later = np.array(compared, dtype=np.intp)
    said = [runs[index].compared or 0 for index in compared]
    edges = {-1: (-np.inf, -COMPARE_MARGIN), 0: (-COMPARE_MARGIN, COMPARE_MARGIN), 1: (COMPARE_MARGIN, np.inf)}
    wanted = np.zeros((len(pairs), feelings.shape[2]))
    for row, (before, after) in enumerate(pairs):
        wanted[row, design.setting_columns[after]] += 1.0
        wanted[row, design.setting_columns[before]] -= 1.0
    rows = [feelings[:, rated], feelings[:, later] - feelings[:, later - 1], np.stack([wanted, wanted])]
    nothing = np.zeros(len(pairs))
    lower = np.concatenate([points.lower[rated], [edges[answer][0] for answer in said], nothing])
    upper = np.concatenate([points.upper[rated], [edges[answer][1] for answer in said], nothing])
    both = points.given[later] & points.given[later - 1]
    size = np.concatenate([np.ones(rated.size), 2.0 * np.where(both, SHARED_ANSWER, 1.0)])
    noise = nodes.noise[:, None] ** 2 * size
    change = np.repeat(nodes.change[:, None] ** 2, len(pairs), axis=1)
    variances = [
        np.concatenate([noise, np.full_like(change, NOTHING_SD**2)], axis=1),
        np.concatenate([noise + SPOILT_SD**2, change], axis=1),
    ]
    rare = np.concatenate([np.full(size.size, SPOILT_SHARE), np.full(len(pairs), 1.0 - NOTHING_SHARE)])
    return Answers(
        np.concatenate(rows, axis=1), lower, upper, lower == upper, np.stack(variances), np.stack([1.0 - rare, rare])
    )


def _comparisons(runs: Sequence[RunRecord]) -> list[int]:
    return [
        index
        for index in range(1, len(runs))
        if runs[index].compared is not None and runs[index].day == runs[index - 1].day
    ]
