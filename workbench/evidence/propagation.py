"""Expectation propagation: many small non-Gaussian answers around one Gaussian core, for all nodes at once.

References
----------
Minka (2001), Expectation propagation for approximate Bayesian inference, UAI 17, 362-369.
Rasmussen & Williams (2006), Gaussian Processes for Machine Learning, section 3.6.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.evidence.linear import gaussian_posterior
from workbench.evidence.normal import Array
from workbench.evidence.ratings import Flags
from workbench.evidence.sites import Answers, match

STEP = 0.9  # share of each update taken; all answers are updated at once


@dataclass(frozen=True, slots=True)
class State:
    """The Gaussian stand-ins of all answers, per node: precision and precision times value."""

    weight: Array
    pull: Array

    def kept(self, keep: Flags) -> State:
        """The same for fewer nodes."""
        return State(self.weight[keep], self.pull[keep])


@dataclass(frozen=True, slots=True)
class Propagated:
    """Where the rounds ended: log evidence (k,), the stand-ins, and what is believed without each answer (k, m)."""

    evidence: Array
    state: State
    cavity_mean: Array
    cavity_variance: Array
    mean: Array
    covariance: Array


def propagate(answers: Answers, prior_mean: Array, precision: Array, start: State, rounds: int) -> Propagated:
    """Match every answer in turn until the rounds are used up.

    Parameters
    ----------
    prior_mean, precision : arrays, shapes (p,) and (k, p)
    """
    rows, weight, pull = answers.rows, start.weight, start.pull
    shift = precision * prior_mean
    for turn in range(rounds + 1):
        mean, covariance = gaussian_posterior(rows, precision, shift, weight, pull)
        at = np.matmul(rows, mean[:, :, None])[:, :, 0]
        spread = np.maximum(np.sum(np.matmul(rows, covariance) * rows, axis=2), 1e-12)
        free = np.maximum(1.0 / spread - weight, 1e-8)
        cavity_mean = (at / spread - pull) / free
        log_mass, new_weight, new_pull = match(answers, cavity_mean, 1.0 / free)
        if turn < rounds:
            weight, pull = weight + STEP * (new_weight - weight), pull + STEP * (new_pull - pull)
    cavity_pull = cavity_mean * free
    site = log_mass + 0.5 * (cavity_pull**2 / free - np.log(free))
    site -= 0.5 * ((cavity_pull + pull) ** 2 / (free + weight) - np.log(free + weight))
    evidence = _evidence(precision, shift, mean, covariance) + site.sum(axis=1)
    return Propagated(evidence, State(weight, pull), cavity_mean, 1.0 / free, mean, covariance)


def _evidence(precision: Array, shift: Array, mean: Array, covariance: Array) -> Array:
    """Log of the Gaussian part's normaliser: posterior against prior."""
    _, log_det = np.linalg.slogdet(covariance)
    inner = np.linalg.solve(covariance, mean[:, :, None])[:, :, 0]
    prior = 0.5 * np.sum(shift * shift / precision, axis=1) - 0.5 * np.sum(np.log(precision), axis=1)
    return np.asarray(0.5 * np.sum(mean * inner, axis=1) + 0.5 * log_det - prior)
