"""How one answer moves what is believed about the feeling behind it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.evidence.normal import Array, between, density
from workbench.evidence.ratings import Flags

SPOILT_SHARE = 0.05
SPOILT_SD = 2.5
_EDGE = 36.0


@dataclass(frozen=True, slots=True)
class Answers:
    """Answers as bounds on linear combinations: rows (m, p), bounds, noise size relative to a run's, exact values."""

    rows: Array
    lower: Array
    upper: Array
    size: Array
    exact: Flags


def match(answers: Answers, mean: Array, variance: Array, noise: Array) -> tuple[Array, Array, Array]:
    """Log probability of each answer, and the Gaussian site (precision, pull) with its first two moments.

    Parameters
    ----------
    mean, variance : arrays, shape (k, m)
        What is believed without this answer (the cavity).
    noise : array, shape (k,)
        Run-to-run scatter of each node [points].

    Notes
    -----
    With Z(m) the probability of the answer, a = dlogZ/dm and b = -d2logZ/dm2, the site has precision b / (1 - v b)
    and pull (a + m b) / (1 - v b) (Rasmussen & Williams 2006, equations 3.58 and 3.59 in derivative form).
    """
    plain = (noise[:, None] * answers.size) ** 2
    total = np.zeros_like(mean)
    slope, bend = np.zeros_like(mean), np.zeros_like(mean)
    for share, extra in ((1.0 - SPOILT_SHARE, 0.0), (SPOILT_SHARE, SPOILT_SD**2)):
        z, first, second = _derivatives(answers, mean, np.sqrt(variance + plain + extra))
        total, slope, bend = total + share * z, slope + share * first, bend + share * second
    a = slope / total
    b = np.clip(a * a - bend / total, 1e-9, 0.999999 / variance)
    rest = 1.0 - variance * b
    return np.log(total), b / rest, (a + mean * b) / rest


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
