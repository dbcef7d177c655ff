"""One model of a whole session: what each setting is worth, with everything else that moves a rating beside it.

Notes
-----
Feeling in run i = level + setting + learning + fatigue + trend + wander + optimism right after a change + warm-up + day
+ noise. A rating is the interval of feelings that rounds to it; the ends of the scale are open. Noise is normal with
an unknown size, and about one run in twenty is spoilt. A change is worth next to nothing with a chance of about a
quarter, otherwise something of either sign; a trend is small as a rule and steep now and then. Riders say what they
feel, or lag a change by a run or so, or are pulled by their last answer: which, is unknown. So are the sizes of noise,
changes and wander. All that lies on a grid of nodes; given a node the rest is Gaussian but for the answers, each of
which is matched by expectation propagation, and nodes are weighted by how well they explain the answers. Sizes believed
beforehand were set on simulated sessions (tests/bench/effects_sessions.py). Own derivation from:

References
----------
Minka (2001), Expectation propagation for approximate Bayesian inference, UAI 17, 362-369.
Rasmussen & Williams (2006), Gaussian Processes for Machine Learning, section 3.6.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np

from workbench.evidence.answers import NOTHING_SD, Pair, collect, first_changes
from workbench.evidence.design import Design, build
from workbench.evidence.nodes import NODE_WIDTH, Nodes, grid
from workbench.evidence.normal import Array, density, mixture_quantile
from workbench.evidence.propagation import Propagated, State, propagate
from workbench.evidence.ratings import Points, RunRecord, key_of
from workbench.evidence.sites import Answers, split

ROUNDS = 8
ALIKE_SHARE = 0.1  # settings not linked by a change of their own that are nonetheless worth the same
SIEVE = ((1, 1e-8), (3, 1e-3))  # rounds, and the weight below which a node is then dropped


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
    fit = reach(runs, points, pairs, past_sd=past_sd)
    return Posterior(fit.weight, fit.nodes.noise, *_effects(fit, pairs))


@dataclass(frozen=True, slots=True)
class Reached:
    """Where the propagation ended: the nodes still in play with their weights, and what is believed at each."""

    design: Design
    answers: Answers
    nodes: Nodes
    weight: Array
    last: Propagated


@dataclass(frozen=True, slots=True)
class _Asked:
    """A question to the model: equal where the answers, the changes asked about and the past scatter are."""

    content: tuple[Hashable, ...]
    runs: tuple[RunRecord, ...] = field(compare=False)
    points: Points = field(compare=False)
    pairs: tuple[Pair, ...] = field(compare=False)
    past_sd: float | None = field(compare=False)


def reach(runs: Sequence[RunRecord], points: Points, pairs: Sequence[Pair], *, past_sd: float | None) -> Reached:
    """Propagate a session's answers at all nodes, dropping on the way those that cannot explain them.

    The verdicts, the scatter and what suits ask the same of the same runs: it is worked out once.
    """
    told = tuple((key_of(run.setting), run.warmup, run.confounded, run.day, run.blind, run.compared) for run in runs)
    bounds = (points.lower.tobytes(), points.upper.tobytes(), points.middle.tobytes(), points.given.tobytes())
    content = (told, *bounds, points.unit, points.is_log, points.is_rating, tuple(pairs), past_sd)
    return _reach(_Asked(content, tuple(runs), points, tuple(pairs), past_sd))


@lru_cache(maxsize=6)
def _reach(asked: _Asked) -> Reached:
    design = build(asked.runs)
    nodes = grid(asked.past_sd)
    answers = collect(asked.runs, asked.points, design, first_changes(asked.pairs), nodes)
    precision = 1.0 / np.where(design.are("wander"), nodes.wander[:, None], design.sd) ** 2
    state = State(np.zeros(answers.lower.shape), np.zeros(answers.lower.shape))
    for rounds, floor in SIEVE:
        reached = propagate(answers, design.mean, precision, state, rounds)
        keep = _weights(reached.evidence + nodes.belief) > floor
        nodes, answers, precision = nodes.kept(keep), answers.kept(keep), precision[keep]
        state = reached.state.kept(keep)
    last = propagate(answers, design.mean, precision, state, ROUNDS)
    return Reached(design, answers, nodes, _weights(last.evidence + nodes.belief), last)


def _effects(fit: Reached, pairs: Sequence[Pair]) -> tuple[Array, Array, Array]:
    """What each change is worth, per node, in two parts: nothing, or something."""
    design, answers, reached = fit.design, fit.answers, fit.last
    plus = np.array([design.setting_columns[after] for _, after in pairs], dtype=np.intp)
    minus = np.array([design.setting_columns[before] for before, _ in pairs], dtype=np.intp)
    c = reached.covariance
    mean = reached.mean[:, plus] - reached.mean[:, minus]
    variance = np.maximum(c[:, plus, plus] + c[:, minus, minus] - 2.0 * c[:, plus, minus], 1e-12)
    means, sds, parts = equal_or_not(mean, variance, fit.nodes.change)
    new = first_changes(pairs)
    at = [pairs.index(pair) for pair in new]
    asked = slice(answers.exact.size - len(new), None)
    means[:, :, at], sds[:, :, at], parts[:, :, at] = split(
        reached.cavity_mean[:, asked],
        reached.cavity_variance[:, asked],
        answers.variances[:, :, asked],
        answers.shares[:, asked],
    )
    return means, sds, parts


def equal_or_not(mean: Array, variance: Array, change: Array) -> tuple[Array, Array, Array]:
    """A belief about two settings not linked by a first change, split into worth the same and not.

    The odds that they are the same follow from how much denser the belief has become at no difference (Savage and
    Dickey's ratio), when beforehand both were their own change away from a common third.
    """
    before = np.sqrt(2.0) * change[:, None]
    sd = np.sqrt(variance + NOTHING_SD**2)
    denser = (density(mean / sd) / sd) / (density(np.zeros_like(before)) / before)
    same = ALIKE_SHARE * denser / (ALIKE_SHARE * denser + 1.0 - ALIKE_SHARE)
    narrow = 1.0 / (1.0 / variance + 1.0 / NOTHING_SD**2)
    means = np.stack([narrow * mean / variance, mean])
    return means, np.sqrt(np.stack([narrow, variance])), np.stack([same, 1.0 - same])


def _weights(log_weight: Array) -> Array:
    raw = np.exp(log_weight - np.max(log_weight))
    return np.asarray(raw / raw.sum())
