"""The session model with all its parts kept: what each setting is worth beside the others, and what the day did.

Verdicts ask for differences of two settings only. The pictures of the review ask for more: the trend beneath the
ratings, and all settings at once. The model is the same (`session_model`).
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.changes import find_changes
from workbench.evidence.design import Design
from workbench.evidence.normal import Array
from workbench.evidence.ratings import Flags, Points, RunRecord
from workbench.evidence.session_model import reach


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
    pairs = [(change.before_key, change.after_key) for change in find_changes(runs)]
    found = reach(runs, points, pairs, past_sd=past_sd)
    is_trend = found.design.are("learning", "fatigue", "steady", "wander", "day")
    return Fitted(found.design, found.weight, found.nodes.noise, found.last.mean, found.last.covariance, is_trend)
