"""What "too closed ... just right ... too open" says about the place liked most, and how far to trust it.

Own derivation. An honest rider's answer is a rounded, noisy share of the distance to the place liked most, perhaps
with a shifted zero. A reversed rider means the opposite of what is said; a random one answers from habit.
Which of them answers is inferred together with the place, never assumed.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.normal import Array, below
from workbench.evidence.response import Grid, grid_of, log_sum

SCALES = (2.0, 4.0, 7.0, 12.0)  # answer steps per range
SCALE_WEIGHTS = (0.18, 0.32, 0.32, 0.18)
NOISES = (0.4, 0.85)  # in answer steps
NOISE_WEIGHTS = (0.5, 0.5)
ZEROS = (-0.2, -0.1, 0.0, 0.1, 0.2)  # shift of what is called just right, as a share of the range
ZERO_WEIGHTS = (0.08, 0.17, 0.5, 0.17, 0.08)
SLIP = 0.03  # share of answers that are slips
TRUST_WEIGHTS = (0.80, 0.08, 0.12)
ANSWERS = (-2, -1, 0, 1, 2)


class Trust(NamedTuple):
    """How likely the direction answers are honest, reversed or random."""

    honest: float
    reversed: float
    random: float


@dataclass(frozen=True, slots=True)
class DirectionSay:
    """Log likelihood by place, trust in the answers, and chances of the next answer."""

    log_likelihood: Array  # (places,)
    by_trust: Array  # (3, places), log
    weights: Array  # (2, nodes, places): share of each honest and reversed node, given the place
    random_share: Array  # (places,)
    habits: Array  # (5,): chances of a random rider's next answer

    def next_chances(self, grid: Grid, position: int, places: NDArray[np.int_]) -> Array:
        """Chance of each of the five answers at a position, for some of the places, (5, places)."""
        table = answer_table(grid.range_clicks)[:, :, position, places]  # (answers, nodes, places)
        honest = np.einsum("anp,np->ap", table, self.weights[0][:, places])
        turned = np.einsum("anp,np->ap", table[::-1], self.weights[1][:, places])
        return np.asarray(honest + turned + self.habits[:, None] * self.random_share[None, places])


def _nodes() -> tuple[Array, Array]:
    values = np.array(list(itertools.product(SCALES, NOISES, ZEROS)))
    weights = np.array([a * b * c for a, b, c in itertools.product(SCALE_WEIGHTS, NOISE_WEIGHTS, ZERO_WEIGHTS)])
    return values, weights / weights.sum()


@lru_cache(maxsize=4)
def answer_table(range_clicks: int) -> Array:
    """Chance of each answer, (answers, nodes, positions, places), of an honest rider."""
    grid = grid_of(range_clicks)
    values, _ = _nodes()
    scale, noise, zero = (values[:, k][:, None, None] for k in range(3))
    offset = (np.arange(range_clicks + 1)[:, None] - grid.places[None, :]) / range_clicks
    middle = scale * (offset[None, :, :] - zero)
    cuts = [below((cut - middle) / noise) for cut in (-1.5, -0.5, 0.5, 1.5)]
    edges = [np.zeros_like(cuts[0]), *cuts, np.ones_like(cuts[0])]
    chances = np.stack([high - low for low, high in itertools.pairwise(edges)])
    return np.asarray((1.0 - SLIP) * chances + SLIP / 5.0)


@lru_cache(maxsize=4)
def _log_answer_table(range_clicks: int) -> Array:
    return np.log(answer_table(range_clicks))


def prepare(range_clicks: int) -> None:
    """Make the tables of a range before the first question, which then is answered as fast as the rest."""
    _log_answer_table(range_clicks)


def read_directions(grid: Grid, answers: Sequence[tuple[int, int, int]], lag: float = 0.0) -> DirectionSay:
    """Read (position, position before, answer), in any order; a lag is the share still felt of the one before."""
    table = _log_answer_table(grid.range_clicks)
    _, node_weights = _nodes()
    shape = (2, len(node_weights), len(grid.places))
    logs = np.broadcast_to(np.log(node_weights)[None, :, None], shape).copy()
    for (low, high, answer), count in Counter(_felt(answers, lag)).items():
        for position, part in ((low, count),) if low == high else ((low, 0.5 * count), (high, 0.5 * count)):
            logs[0] += part * table[answer + 2, :, position, :]
            logs[1] += part * table[2 - answer, :, position, :]
    given = [answer for _, _, answer in answers]
    counts = np.array([given.count(answer) for answer in ANSWERS], dtype=np.float64)
    random_log = _habit_say(counts)
    prior = np.log(TRUST_WEIGHTS)
    by_trust = np.concatenate([log_sum(logs, axis=1), np.full((1, len(grid.places)), random_log)]) + prior[:, None]
    total = log_sum(by_trust, axis=0)
    weights = np.exp(logs + prior[:2, None, None] - total)
    habits = (counts + 1.0) / (counts.sum() + 5.0)
    return DirectionSay(total, by_trust, weights, np.exp(by_trust[2] - total), habits)


def _felt(answers: Sequence[tuple[int, int, int]], lag: float) -> list[tuple[int, int, int]]:
    """The two whole positions around what was felt, and the answer."""
    felt = [((1.0 - lag) * position + lag * before, answer) for position, before, answer in answers]
    return [(math.floor(place), math.ceil(place), answer) for place, answer in felt]


def _habit_say(counts: Array) -> float:
    """Log chance of the answers in their order if each comes from habit (rule of succession)."""
    total, seen = 0.0, np.ones(5)
    for k in range(5):
        for _ in range(int(counts[k])):
            total += float(np.log(seen[k] / seen.sum()))
            seen[k] += 1.0
    return total


def trust_of(say: DirectionSay, place_weights: Array) -> Trust:
    """Chances of honest, reversed and random, given the posterior weight of every place; they sum to its sum."""
    return Trust(*(float(part) for part in np.exp(say.by_trust - say.log_likelihood) @ place_weights))
