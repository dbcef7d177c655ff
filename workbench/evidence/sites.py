"""How one answer moves what is believed about the feeling behind it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.evidence.normal import Array, between, density
from workbench.evidence.ratings import Flags

_EDGE = 36.0


@dataclass(frozen=True, slots=True)
class Answers:
    """Answers as bounds on linear combinations of what is unknown.

    rows (k, m, p) and bounds (k, m) for each node; whether an answer is an exact value (m,). The noise of each
    answer is one of two sizes: variances (2, k, m) with shares (2, m).
    """

    rows: Array
    lower: Array
    upper: Array
    exact: Flags
    variances: Array
    shares: Array

    def kept(self, keep: Flags) -> Answers:
        """The same answers for fewer nodes."""
        return Answers(
            self.rows[keep], self.lower[keep], self.upper[keep], self.exact, self.variances[:, keep], self.shares
        )


def joined(*blocks: Answers) -> Answers:
    """Several blocks of answers as one."""
    return Answers(
        np.concatenate([block.rows for block in blocks], axis=1),
        np.concatenate([block.lower for block in blocks], axis=1),
        np.concatenate([block.upper for block in blocks], axis=1),
        np.concatenate([block.exact for block in blocks]),
        np.concatenate([block.variances for block in blocks], axis=2),
        np.concatenate([block.shares for block in blocks], axis=1),
    )


def match(answers: Answers, mean: Array, variance: Array) -> tuple[Array, Array, Array]:
    """Log probability of each answer, and the Gaussian site (precision, pull) with its first two moments.

    Parameters
    ----------
    mean, variance : arrays, shape (k, m)
        What is believed without this answer (the cavity).

    Notes
    -----
    With Z(m) the probability of the answer, a = dlogZ/dm and b = -d2logZ/dm2, the site has precision b / (1 - v b)
    and pull (a + m b) / (1 - v b) (Rasmussen & Williams 2006, equations 3.58 and 3.59 in derivative form).
    """
    total = np.zeros_like(mean)
    slope, bend = np.zeros_like(mean), np.zeros_like(mean)
    for share, extra in zip(answers.shares, answers.variances, strict=True):
        z, first, second = _derivatives(answers, mean, np.sqrt(variance + extra))
        total, slope, bend = total + share * z, slope + share * first, bend + share * second
    a = slope / total
    b = np.clip(a * a - bend / total, 1e-9, 0.999999 / variance)
    rest = 1.0 - variance * b
    return np.log(total), b / rest, (a + mean * b) / rest


def split(mean: Array, variance: Array, sizes: Array, shares: Array) -> tuple[Array, Array, Array]:
    """A belief times a two-sized normal around zero: means, sds and weights of the two parts, shape (2, k, m)."""
    parts = [
        share * density(mean / np.sqrt(variance + size)) / np.sqrt(variance + size)
        for share, size in zip(shares, sizes, strict=True)
    ]
    weights = np.stack(parts) + 1e-300
    after = 1.0 / (1.0 / variance + 1.0 / sizes)
    return after * mean / variance, np.sqrt(after), weights / weights.sum(axis=0)


def _derivatives(answers: Answers, mean: Array, sd: Array) -> tuple[Array, Array, Array]:
    """Probability (or density) of each answer and its first two derivatives by the mean."""
    low = np.clip((answers.lower - mean) / sd, -_EDGE, _EDGE)
    if np.all(answers.exact):
        mass = density(low) / sd + 1e-300
        return mass, low * mass / sd, (low * low - 1.0) * mass / (sd * sd)
    high = np.clip((answers.upper - mean) / sd, -_EDGE, _EDGE)
    at_low, at_high = density(low), density(high)
    mass = between(low, high)
    first, second = (at_low - at_high) / sd, (low * at_low - high * at_high) / (sd * sd)
    if np.any(answers.exact):
        point = at_low / sd + 1e-300
        mass = np.where(answers.exact, point, mass)
        first = np.where(answers.exact, low * point / sd, first)
        second = np.where(answers.exact, (low * low - 1.0) * point / (sd * sd), second)
    return mass, first, second
