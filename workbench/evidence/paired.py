"""Which setting wins how often, from direct choices between two: strengths on one common scale."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.normal import Array
from workbench.model.errors import InputError, NoAnswer, NotEnoughData

Choices = Sequence[tuple[Hashable, Hashable, int, int]]

_ROUNDS, _TOO_FAR = 50, 15.0


@dataclass(frozen=True, slots=True)
class Strengths:
    """Log odds of each setting against the reference, with standard errors; order is the pull of being ridden first."""

    reference: Hashable
    strength: dict[Hashable, float]
    error: dict[Hashable, float]
    order: float
    order_error: float
    deviance: float


def strengths(choices: Choices, *, reference: Hashable | None = None, order_effect: bool = True) -> Strengths:
    """Strengths of settings that were chosen between in pairs.

    Parameters
    ----------
    choices : sequence of (ridden first, ridden second, times the first was chosen, times the second was)
    reference : optional
        The setting all others are measured from; by default the first named.
    order_effect : bool
        Allow for a pull towards the one ridden first.

    Raises
    ------
    InputError
        If a count is negative or a setting is compared with itself.
    NotEnoughData
        If nothing was chosen.
    NoAnswer
        If a setting won or lost everything, or was never linked to the others: then its strength has no bound.

    Notes
    -----
    logit P(first chosen) = strength(first) - strength(second) + order, fitted by Newton's steps.

    References
    ----------
    Bradley & Terry (1952), Biometrika 39, 324-345; Agresti (2002), Categorical Data Analysis, section 10.6.
    """
    names = _names(choices, reference)
    design, won, lost = _design(choices, names, order_effect)
    beta = np.zeros(design.shape[1])
    for _ in range(_ROUNDS):
        chance = 1.0 / (1.0 + np.exp(-design @ beta))
        weight = (won + lost) * chance * (1.0 - chance)
        information = design.T @ (weight[:, None] * design)
        if np.linalg.cond(information) > 1e12 or np.max(np.abs(beta), initial=0.0) > _TOO_FAR:
            raise NoAnswer("One setting won or lost every choice, so only its rank is known. Let them meet again.")
        step = np.linalg.solve(information, design.T @ (won - (won + lost) * chance))
        beta = beta + step
        if np.max(np.abs(step), initial=0.0) < 1e-12:
            break
    errors = np.sqrt(np.diag(np.linalg.inv(information)))
    count = len(names) - 1
    return Strengths(
        names[0],
        dict(zip(names, [0.0, *beta[:count].tolist()], strict=True)),
        dict(zip(names, [0.0, *errors[:count].tolist()], strict=True)),
        float(beta[count]) if order_effect else 0.0,
        float(errors[count]) if order_effect else 0.0,
        _deviance(design @ beta, won, lost),
    )


def _names(choices: Choices, reference: Hashable | None) -> list[Hashable]:
    for first, second, won, lost in choices:
        if won < 0 or lost < 0:
            raise InputError("choices", (won, lost), "counts from 0")
        if first == second:
            raise InputError("choices", first, "two different settings")
    found = dict.fromkeys(name for first, second, won, lost in choices if won + lost for name in (first, second))
    if not found:
        raise NotEnoughData("Nothing has been chosen yet.")
    if reference is not None and reference not in found:
        raise InputError("reference", reference, "one of the settings chosen between")
    head = next(iter(found)) if reference is None else reference
    return [head, *(name for name in found if name != head)]


def _design(choices: Choices, names: list[Hashable], order_effect: bool) -> tuple[Array, Array, Array]:
    used = [choice for choice in choices if choice[2] + choice[3]]
    design = np.zeros((len(used), len(names)))
    for row, (first, second, _, _) in enumerate(used):
        design[row, names.index(first)] += 1.0
        design[row, names.index(second)] -= 1.0
    columns = [design[:, 1:], np.ones((len(used), 1))] if order_effect else [design[:, 1:]]
    won = np.array([float(choice[2]) for choice in used])
    lost = np.array([float(choice[3]) for choice in used])
    return np.concatenate(columns, axis=1), won, lost


def _deviance(logit: Array, won: Array, lost: Array) -> float:
    total = won + lost
    chance = 1.0 / (1.0 + np.exp(-logit))
    with np.errstate(divide="ignore", invalid="ignore"):
        up = np.where(won > 0, won * np.log(won / (total * chance)), 0.0)
        down = np.where(lost > 0, lost * np.log(lost / (total * (1.0 - chance))), 0.0)
    return float(2.0 * np.sum(up + down))
