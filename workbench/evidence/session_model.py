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
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.design import Design, build
from workbench.evidence.linear import gaussian_posterior
from workbench.evidence.normal import Array, mixture_quantile
from workbench.evidence.ratings import TYPICAL_SD, Points, RunRecord
from workbench.evidence.sites import Answers, match

NOISE_RATIOS = (0.33, 0.55, 0.8, 1.1, 1.5, 2.1, 3.0)  # of the noise expected beforehand
NOISE_SPREAD = 0.5  # log sd of that expectation
KNOWN_NOISE_SPREAD = 0.3  # the same when earlier sessions of the rider are known
SETTING_SDS = ((0.05, 0.22), (0.45, 0.2), (0.9, 0.24), (1.5, 0.2), (2.4, 0.14))
WANDER_SDS = ((0.08, 0.4), (0.3, 0.4), (0.7, 0.2))
COMPARE_MARGIN = 0.35  # two runs closer than this feel the same, in points
SHARED_ANSWER = 2.0  # variance factor of a comparison when both runs were also rated: it is partly the same news
ROUNDS_BEFORE, ROUNDS_AFTER = 4, 8
NODE_FLOOR = 1e-3


@dataclass(frozen=True, slots=True)
class Posterior:
    """What is known after the session: one row a node, with its weight."""

    weight: Array
    noise: Array
    mean: Array
    covariance: Array
    design: Design

    def contrast(self, plus: int, minus: int) -> tuple[Array, Array]:
        """Mean and sd, per node, of one setting's worth over another's."""
        mean = self.mean[:, plus] - self.mean[:, minus]
        c = self.covariance
        variance = c[:, plus, plus] + c[:, minus, minus] - 2.0 * c[:, plus, minus]
        return mean, np.sqrt(np.maximum(variance, 1e-12))

    def noise_sd(self) -> float:
        """The run-to-run scatter to be expected, in points."""
        return float(np.exp(np.sum(self.weight * np.log(self.noise))))

    def noise_range(self) -> tuple[float, float]:
        """A 90 % interval of the run-to-run scatter; each node stands for the sizes around it."""
        logs, width = np.log(self.noise), np.full_like(self.noise, 0.16)
        low, high = (mixture_quantile(share, logs, width, self.weight) for share in (0.05, 0.95))
        return float(np.exp(low)), float(np.exp(high))


def learn(runs: Sequence[RunRecord], points: Points, *, past_sd: float | None) -> Posterior:
    """The posterior of a session's runs; past_sd, in points, is this rider's scatter in earlier sessions."""
    design = build(runs)
    answers = _answers(runs, points, design)
    noise, setting, wander, log_prior = _nodes(past_sd)
    sd = np.where(design.is_setting > 0, setting[:, None], np.where(design.is_wander > 0, wander[:, None], design.sd))
    precision = 1.0 / (sd * sd)
    shape = (noise.size, answers.lower.size)
    state = (np.zeros(shape), np.zeros(shape))
    first = _propagate(answers, design, precision, noise, state, ROUNDS_BEFORE)
    keep = _weights(first[0] + log_prior) > NODE_FLOOR
    state = (first[3][keep], first[4][keep])
    evidence, mean, covariance, _, _ = _propagate(answers, design, precision[keep], noise[keep], state, ROUNDS_AFTER)
    return Posterior(_weights(evidence + log_prior[keep]), noise[keep], mean, covariance, design)


def _weights(log_weight: Array) -> Array:
    raw = np.exp(log_weight - np.max(log_weight))
    return np.asarray(raw / raw.sum())


def _nodes(past_sd: float | None) -> tuple[Array, Array, Array, Array]:
    centre = TYPICAL_SD if past_sd is None else past_sd
    spread = NOISE_SPREAD if past_sd is None else KNOWN_NOISE_SPREAD
    grid = list(itertools.product(NOISE_RATIOS, SETTING_SDS, WANDER_SDS))
    noise = np.array([centre * ratio for ratio, _, _ in grid])
    setting = np.array([pair[0] for _, pair, _ in grid])
    wander = np.array([pair[0] for _, _, pair in grid])
    beliefs = [-0.5 * (np.log(ratio) / spread) ** 2 + np.log(size[1]) + np.log(drift[1]) for ratio, size, drift in grid]
    return noise, setting, wander, np.array(beliefs)


def _answers(runs: Sequence[RunRecord], points: Points, design: Design) -> Answers:
    rated = np.flatnonzero(points.given)
    rows = [design.columns[rated]]
    lower, upper = [points.lower[rated]], [points.upper[rated]]
    size = [np.ones(rated.size)]
    edges = {-1: (-np.inf, -COMPARE_MARGIN), 0: (-COMPARE_MARGIN, COMPARE_MARGIN), 1: (COMPARE_MARGIN, np.inf)}
    for index in range(1, len(runs)):
        answer = runs[index].compared
        if answer is None or runs[index].day != runs[index - 1].day:
            continue
        rows.append((design.columns[index] - design.columns[index - 1])[None, :])
        lower.append(np.array([edges[answer][0]]))
        upper.append(np.array([edges[answer][1]]))
        both = points.given[index] and points.given[index - 1]
        size.append(np.array([np.sqrt(2.0 * (SHARED_ANSWER if both else 1.0))]))
    low, high = np.concatenate(lower), np.concatenate(upper)
    return Answers(np.concatenate(rows), low, high, np.concatenate(size), low == high)


def _propagate(
    answers: Answers,
    design: Design,
    precision: Array,
    noise: Array,
    state: tuple[Array, Array],
    rounds: int,
) -> tuple[Array, Array, Array, Array, Array]:
    """Expectation propagation; gives log evidence, means, covariances and the sites reached, per node."""
    weight, pull = state
    shift = precision * design.mean
    x = answers.rows
    for turn in range(rounds + 1):
        mean, covariance = gaussian_posterior(x, precision, shift, weight, pull)
        at = mean @ x.T
        spread = np.maximum(np.sum(np.matmul(x, covariance) * x, axis=2), 1e-12)
        free = np.maximum(1.0 / spread - weight, 1e-8)
        cavity_mean = (at / spread - pull) / free
        log_mass, new_weight, new_pull = match(answers, cavity_mean, 1.0 / free, noise)
        if turn < rounds:
            weight, pull = weight + 0.9 * (new_weight - weight), pull + 0.9 * (new_pull - pull)
    evidence = _evidence(precision, shift, mean, covariance)
    marginal_weight = free + weight
    cavity_pull = cavity_mean * free
    site = log_mass + 0.5 * (cavity_pull**2 / free - np.log(free))
    site -= 0.5 * ((cavity_pull + pull) ** 2 / marginal_weight - np.log(marginal_weight))
    return evidence + site.sum(axis=1), mean, covariance, weight, pull


def _evidence(precision: Array, shift: Array, mean: Array, covariance: Array) -> Array:
    """Log of the Gaussian part's normaliser: posterior against prior."""
    _, log_det = np.linalg.slogdet(covariance)
    inner = np.linalg.solve(covariance, mean[:, :, None])[:, :, 0]
    prior = 0.5 * np.sum(shift * shift / precision, axis=1) - 0.5 * np.sum(np.log(precision), axis=1)
    return np.asarray(0.5 * np.sum(mean * inner, axis=1) + 0.5 * log_det - prior)
