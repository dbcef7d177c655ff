"""The session model with all its parts kept: what each setting is worth beside the others, and what the day did.

Verdicts ask for differences of two settings only. The pictures of the review ask for more: the trend beneath the
ratings, and all settings at once. The model is the same (`session_model`).
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.answers import collect, first_changes
from workbench.evidence.changes import find_changes
from workbench.evidence.design import OPTIMISM_MEAN, OPTIMISM_SD, WARMUP_SD, Design, build
from workbench.evidence.nodes import grid
from workbench.evidence.normal import Array
from workbench.evidence.propagation import Propagated, State, propagate
from workbench.evidence.ratings import Flags, Points, RunRecord
from workbench.evidence.session_model import ROUNDS, SIEVE


@dataclass(frozen=True, slots=True)
class Fitted:
    """A session as the model sees it: one entry a node in weight, noise, mean and covariance of all columns."""

    design: Design
    weight: Array
    noise: Array
    mean: Array
    covariance: Array
    is_trend: Flags  # the columns of learning, tiring, rise, wander and days

    @property
    def noise_sd(self) -> float:
        """Run-to-run scatter to be expected [points]."""
        return float(np.exp(np.sum(self.weight * np.log(self.noise))))

    def columns_of(self, settings: Sequence[Hashable]) -> list[int]:
        """Where the settings stand among the columns."""
        return [self.design.setting_columns[key] for key in settings]

    def moments(self) -> tuple[Array, Array]:
        """Mean and covariance of all columns, nodes taken together."""
        mean = self.weight @ self.mean
        apart = self.mean - mean
        within = np.einsum("k,kij->ij", self.weight, self.covariance)
        return mean, np.asarray(within + np.einsum("k,ki,kj->ij", self.weight, apart, apart))


def fit(runs: Sequence[RunRecord], points: Points, *, past_sd: float | None = None) -> Fitted:
    """Fit the model to a session.

    Parameters
    ----------
    past_sd : float, optional
        This rider's scatter in earlier sessions [points].
    """
    design = build(runs)
    nodes = grid(past_sd)
    pairs = [(change.before_key, change.after_key) for change in find_changes(runs)]
    answers = collect(runs, points, design, first_changes(pairs), nodes)
    precision = 1.0 / np.where(design.is_wander > 0, nodes.wander[:, None], design.sd) ** 2
    state = State(np.zeros(answers.lower.shape), np.zeros(answers.lower.shape))
    for rounds, floor in SIEVE:
        reached = propagate(answers, design.mean, precision, state, rounds)
        keep = _weights(reached, nodes.belief) > floor
        nodes, answers, precision = nodes.kept(keep), answers.kept(keep), precision[keep]
        state = reached.state.kept(keep)
    last = propagate(answers, design.mean, precision, state, ROUNDS)
    return Fitted(design, _weights(last, nodes.belief), nodes.noise, last.mean, last.covariance, _trend(design, runs))


def _weights(reached: Propagated, belief: Array) -> Array:
    log_weight = reached.evidence + belief
    raw = np.exp(log_weight - np.max(log_weight))
    return np.asarray(raw / raw.sum())


def _trend(design: Design, runs: Sequence[RunRecord]) -> Flags:
    """Everything but level, settings, kindness right after a change, and warm-ups."""
    others = np.ones(design.sd.size, dtype=np.bool_)
    others[[0, *design.setting_columns.values()]] = False
    others &= ~((design.sd == OPTIMISM_SD) & (design.mean == OPTIMISM_MEAN))
    warm = np.array([float(run.warmup) for run in runs])
    is_warm = np.all(design.columns == warm[:, None], axis=0) & (design.sd == WARMUP_SD) & (design.is_wander == 0)
    return np.asarray(others & ~is_warm)
