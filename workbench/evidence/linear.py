"""The linear part: least squares, one-way analysis of variance, and Gaussian posteriors for many nodes at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.normal import Array
from workbench.model.errors import InputError, NotEnoughData


@dataclass(frozen=True, slots=True)
class Fit:
    """A least-squares fit: coefficients with their standard errors, residual scatter and degrees of freedom."""

    coefficients: Array
    errors: Array
    residual_sd: float
    r_squared: float
    freedom: int


@dataclass(frozen=True, slots=True)
class OneWay:
    """Scatter between and within groups."""

    between_ss: float
    within_ss: float
    between_df: int
    within_df: int
    f: float
    residual_sd: float


def least_squares(design: Array, values: Array) -> Fit:
    """Ordinary least squares by QR of the column-scaled design.

    Parameters
    ----------
    design : array, shape (n, p)
        One row an observation; a column of ones if a level is wanted.
    values : array, shape (n,)

    Returns
    -------
    Fit
        R squared is taken about the mean if some column is constant, about zero otherwise.

    Raises
    ------
    NotEnoughData
        If there are no more rows than columns, or columns repeat one another.

    References
    ----------
    Golub & Van Loan, Matrix Computations, section 5.3; checked against NIST StRD.
    """
    rows, columns = design.shape
    if rows < columns:
        raise NotEnoughData("There are fewer runs than things to estimate from them.")
    size = np.sqrt(np.sum(design * design, axis=0))
    q, r = np.linalg.qr(design / size)
    if np.min(np.abs(np.diag(r))) < 1e-13:
        raise NotEnoughData("Two of the things to estimate always changed together, so they cannot be told apart.")
    inverse = np.linalg.inv(r)
    scaled = inverse @ (q.T @ values)
    scaled = scaled + inverse @ (q.T @ (values - (design / size) @ scaled))  # one refinement step
    residual = values - (design / size) @ scaled
    freedom = rows - columns
    rss = float(residual @ residual)
    sd = float(np.sqrt(rss / freedom)) if freedom else 0.0
    has_level = bool(np.any(np.ptp(design, axis=0) == 0))
    about = values - values.mean() if has_level else values
    total = float(about @ about)
    errors = sd * np.sqrt(np.sum(inverse * inverse, axis=1)) / size
    return Fit(scaled / size, errors, sd, 1.0 - rss / total if total > 0 else 1.0, freedom)


def one_way(groups: Sequence[Sequence[float]]) -> OneWay:
    """One-way analysis of variance; sums are taken about the first value, so that large offsets do no harm.

    References
    ----------
    NIST StRD, data sets SiRstv and SmLs01 to SmLs09.
    """
    filled = [np.asarray(group, dtype=np.float64) for group in groups if len(group)]
    if not filled:
        raise NotEnoughData("There are no runs to compare.")
    origin = filled[0][0]
    shifted = [group - origin for group in filled]
    means = [float(group.mean()) for group in shifted]
    count = sum(group.size for group in shifted)
    grand = sum(mean * group.size for mean, group in zip(means, shifted, strict=True)) / count
    between = sum(group.size * (mean - grand) ** 2 for mean, group in zip(means, shifted, strict=True))
    within = sum(float(np.sum((group - mean) ** 2)) for mean, group in zip(means, shifted, strict=True))
    df_between, df_within = len(filled) - 1, count - len(filled)
    spread = within / df_within if df_within else 0.0
    f = (between / df_between) / spread if df_between and spread > 0 else float("nan")
    return OneWay(between, within, df_between, df_within, f, float(np.sqrt(spread)))


def gaussian_posterior(
    design: Array, precision: Array, shift: Array, weight: Array, pull: Array
) -> tuple[Array, Array]:
    """Means and covariances of the coefficients, one row a node.

    Parameters
    ----------
    design : array, shape (n, p) or (k, n, p)
    precision, shift : arrays, shape (k, p)
        Prior precision of each coefficient, and precision times prior mean.
    weight, pull : arrays, shape (k, n)
        Precision of each observation, and precision times its value.

    Raises
    ------
    InputError
        If a weight is not finite.
    """
    if not np.all(np.isfinite(weight)):
        raise InputError("weight", "not finite", "finite numbers")
    if not np.any(weight) and not np.any(pull):  # nothing is told yet: what is believed beforehand stands
        return shift / precision, _diagonal(1.0 / precision)
    columns = design.shape[-1]
    turned = np.swapaxes(design if design.ndim == 3 else design[None, :, :], 1, 2)
    matrix = np.matmul(turned * weight[:, None, :], design)
    matrix[:, np.arange(columns), np.arange(columns)] += precision
    covariance = np.linalg.inv(matrix)
    told = np.matmul(turned, pull[:, :, None])[:, :, 0]
    mean = np.matmul(covariance, (shift + told)[:, :, None])[:, :, 0]
    return mean, covariance


def _diagonal(values: Array) -> Array:
    """One diagonal matrix a node."""
    nodes, columns = values.shape
    filled = np.zeros((nodes, columns, columns))
    filled[:, np.arange(columns), np.arange(columns)] = values
    return filled
