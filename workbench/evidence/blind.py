"""Blind trials: exact tests for choices and for randomised orders, and orders that can be drawn again."""

from __future__ import annotations

import hashlib
import math
from bisect import bisect_left, bisect_right
from collections.abc import Hashable, Iterable, Iterator, Sequence

from workbench.model.errors import InputError, NoAnswer, NotEnoughData

MOST_ORDERS = 500_000  # orders looked at one by one
MOST_HALVED = 36  # runs up to which two labels are counted by halves
_CLOSE = 1e-9


def choice_p(correct: int, trials: int, *, chance: float = 0.5, two_sided: bool = False) -> float:
    """Probability of at least so many right answers by guessing alone.

    Parameters
    ----------
    correct, trials : int
    chance : float
        Chance of a right guess: 1/2 for "which of two", 1/3 for "which is the odd one".
    two_sided : bool
        Count the equally unlikely outcomes on the other side too (which side is preferred was not fixed beforehand).

    Raises
    ------
    InputError
        If the counts do not fit together or chance does not lie between 0 and 1.

    References
    ----------
    ISO 5495 (paired comparison), ISO 4120 (triangle), ISO 10399 (duo-trio): exact binomial.

    Examples
    --------
    >>> round(choice_p(5, 5), 5)
    0.03125
    """
    if trials < 0 or trials != int(trials):
        raise InputError("trials", trials, "a whole number from 0")
    if not 0 <= correct <= trials or correct != int(correct):
        raise InputError("correct", correct, f"a whole number from 0 to {trials}")
    if not 0.0 < chance < 1.0:
        raise InputError("chance", chance, "a number between 0 and 1")
    masses = [_binomial(k, int(trials), chance) for k in range(int(trials) + 1)]
    if two_sided:
        limit = masses[int(correct)] * (1.0 + 1e-7)
        return min(1.0, math.fsum(mass for mass in masses if mass <= limit))
    return min(1.0, math.fsum(masses[int(correct) :]))


def needed_correct(trials: int, *, chance: float = 0.5, two_sided: bool = False, alpha: float = 0.05) -> int | None:
    """Fewest right answers that guessing alone would rarely give; None if so few trials cannot show it."""
    above_chance = range(math.ceil(trials * chance), trials + 1)
    return next((k for k in above_chance if choice_p(k, trials, chance=chance, two_sided=two_sided) <= alpha), None)


def randomisation_p(
    responses: Sequence[float],
    labels: Sequence[Hashable],
    *,
    allowed_orders: Iterable[Sequence[Hashable]] | None = None,
) -> float:
    """Share of the orders that could have been drawn whose labels separate the responses at least as far.

    Parameters
    ----------
    responses : sequence of float
        In riding order.
    labels : sequence
        The setting of each run, as drawn.
    allowed_orders : iterable of sequences, optional
        Every order the draw could have given, the actual one among them. By default every arrangement of the labels.

    Returns
    -------
    float
        Two-sided. With two labels the distance is that of their means, with more the scatter between means.

    Raises
    ------
    InputError
        If lengths differ, a response is not finite, or the order ridden is not one of those allowed.
    NotEnoughData
        If there are fewer than two labels.
    NoAnswer
        If there are too many orders to count.

    References
    ----------
    Edgington & Onghena (2007), Randomization Tests, 4th ed.; Fisher (1935), The Design of Experiments.

    Examples
    --------
    >>> randomisation_p([5, 7, 4, 8], "ABAB", allowed_orders=["ABAB", "ABBA", "BAAB", "BABA"])
    0.5
    """
    values, order = [float(value) for value in responses], tuple(labels)
    _check_runs(values, order)
    origin = math.fsum(values) / len(values)
    centred = [value - origin for value in values]
    if allowed_orders is not None:
        return _over_orders(centred, order, [tuple(other) for other in allowed_orders])
    names = list(dict.fromkeys(order))
    if len(names) == 2 and len(order) <= MOST_HALVED:
        return _over_halves(centred, [label == names[0] for label in order])
    if _arrangements(order) > MOST_ORDERS:
        raise NoAnswer("There are too many possible orders to count. Draw in blocks and give the orders allowed.")
    return _over_orders(centred, order, list(arrangements(order)))


def draw_order(labels: Sequence[Hashable], *, seed: int, blocks: int = 1) -> tuple[Hashable, ...]:
    """A balanced order: the labels shuffled anew in every block. The same seed gives the same order for ever.

    Notes
    -----
    Shuffled after Fisher and Yates with a stream of SHA-256 digests of the seed, so that the order can be drawn
    again on any machine and with any version of Python.
    """
    if blocks < 1:
        raise InputError("blocks", blocks, "a whole number from 1")
    if not labels:
        raise InputError("labels", "nothing", "at least one label")
    stream = _bytes_of(seed)
    order: list[Hashable] = []
    for _ in range(blocks):
        block = list(labels)
        for last in range(len(block) - 1, 0, -1):
            other = _below(last + 1, stream)
            block[last], block[other] = block[other], block[last]
        order.extend(block)
    return tuple(order)


def block_orders(labels: Sequence[Hashable], *, blocks: int = 1) -> list[tuple[Hashable, ...]]:
    """Every order draw_order can give for these labels and blocks, for randomisation_p."""
    one = list(arrangements(tuple(labels)))
    if len(one) ** blocks > MOST_ORDERS:
        raise NoAnswer("There are too many possible orders to count. Use fewer or smaller blocks.")
    orders: list[tuple[Hashable, ...]] = [()]
    for _ in range(blocks):
        orders = [(*order, *block) for order in orders for block in one]
    return orders


def least_p(labels: Sequence[Hashable], *, blocks: int = 1) -> float:
    """The smallest probability a plan can reach, to be said before riding: few orders can never be convincing."""
    one = _arrangements(tuple(labels))
    names = dict.fromkeys(labels)
    counts = {list(labels).count(name) for name in names}
    mirrored = len(names) == 2 and len(counts) == 1
    return min(1.0, (2.0 if mirrored else 1.0) / float(one**blocks))


def plan_digest(order: Sequence[Hashable], *, seed: int, labels: Sequence[Hashable] = (), fixed_at: str = "") -> str:
    """A fingerprint of a fixed order: noted before riding, it proves afterwards that nothing was moved.

    What the labels of the order stand for, and when it was fixed, can be sealed with it.
    """
    text = "\x1f".join([str(seed), *(str(label) for label in order)])
    if labels or fixed_at:
        text = "\x1e".join([text, "\x1f".join(str(label) for label in labels), fixed_at])
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def arrangements(labels: tuple[Hashable, ...]) -> Iterator[tuple[Hashable, ...]]:
    """Every distinct arrangement of labels, repeats among them not told apart."""
    if not labels:
        yield ()
        return
    for name in dict.fromkeys(labels):
        rest = list(labels)
        rest.remove(name)
        for tail in arrangements(tuple(rest)):
            yield (name, *tail)


def _binomial(k: int, trials: int, chance: float) -> float:
    if trials < 1000:
        return float(math.comb(trials, k) * chance**k * (1.0 - chance) ** (trials - k))
    log_ways = math.lgamma(trials + 1) - math.lgamma(k + 1) - math.lgamma(trials - k + 1)
    return math.exp(log_ways + k * math.log(chance) + (trials - k) * math.log1p(-chance))


def _check_runs(values: Sequence[float], order: Sequence[Hashable]) -> None:
    if len(values) != len(order):
        raise InputError("labels", len(order), f"as many as responses ({len(values)})")
    for value in values:
        if not math.isfinite(value):
            raise InputError("response", value, "a finite number")
    if len(set(order)) < 2:
        raise NotEnoughData("All runs had the same setting, so there is nothing to compare.")


def _arrangements(order: tuple[Hashable, ...]) -> int:
    ways = math.factorial(len(order))
    for name in dict.fromkeys(order):
        ways //= math.factorial(order.count(name))
    return ways


def _over_orders(
    values: Sequence[float], order: tuple[Hashable, ...], allowed: Sequence[tuple[Hashable, ...]]
) -> float:
    if order not in set(allowed):
        raise InputError("labels", "the order ridden", "one of the orders that could have been drawn")
    seen = _separation(values, order)
    slack = _CLOSE * (1.0 + abs(seen))
    return sum(_separation(values, other) >= seen - slack for other in allowed) / len(allowed)


def _separation(values: Sequence[float], order: Sequence[Hashable]) -> float:
    sums: dict[Hashable, float] = {}
    counts: dict[Hashable, int] = {}
    for value, label in zip(values, order, strict=True):
        sums[label] = sums.get(label, 0.0) + value
        counts[label] = counts.get(label, 0) + 1
    if len(sums) == 2:
        one, other = (sums[label] / counts[label] for label in sums)
        return abs(one - other)
    return math.fsum(sums[label] ** 2 / counts[label] for label in sums)


def _over_halves(values: Sequence[float], chosen: Sequence[bool]) -> float:
    """Two labels, every arrangement: sums of each half of the runs are paired by size, so 30 runs stay quick."""
    pick = sum(chosen)
    seen = abs(math.fsum(value for value, is_one in zip(values, chosen, strict=True) if is_one))
    slack = _CLOSE * (1.0 + seen)
    middle = len(values) // 2
    left, right = _subset_sums(values[:middle]), _subset_sums(values[middle:])
    hits = 0
    for size, sums in left.items():
        others = right.get(pick - size, [])
        for part in sums:
            hits += len(others) - bisect_left(others, seen - slack - part)
            hits += bisect_right(others, -seen + slack - part)
    return min(1.0, hits / math.comb(len(values), pick))


def _subset_sums(values: Sequence[float]) -> dict[int, list[float]]:
    """Sums of all subsets, sorted, by how many values they take."""
    sums: dict[int, list[float]] = {0: [0.0]}
    for value in values:
        grown = {size + 1: [part + value for part in parts] for size, parts in sums.items()}
        for size, parts in grown.items():
            sums.setdefault(size, []).extend(parts)
    return {size: sorted(parts) for size, parts in sums.items()}


def _bytes_of(seed: int) -> Iterator[int]:
    counter = 0
    while True:
        yield from hashlib.sha256(f"{int(seed)}:{counter}".encode("ascii")).digest()
        counter += 1


def _below(count: int, stream: Iterator[int]) -> int:
    """A whole number below count, each equally likely (values that would favour the small ones are thrown away)."""
    limit = (1 << 32) - (1 << 32) % count
    while True:
        value = int.from_bytes(bytes(next(stream) for _ in range(4)), "big")
        if value < limit:
            return value % count
