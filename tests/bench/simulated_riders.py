"""Simulated riders at one adjuster: what they like, how they rate it and how they say which way to go."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from workbench.evidence.search import Trial

FELT_SD = 0.6
BROAD = ("broad", "needles")  # families drawn wider than the rest: ranges, noise, widths and heights


@dataclass
class Rider:
    """A simulated rider: what is liked, how it is rated, how the direction is answered."""

    range_clicks: int
    wanted: float  # the position liked most, in clicks; may lie past an end
    loss: Callable[[float], float]  # points lost at an offset in shares of the range
    level: float
    noise: float
    learning: float
    scale: float
    answer_noise: float
    rng: np.random.Generator
    manner: str = "honest"
    zero: float = 0.0
    outliers: float = 0.0
    lag: float = 0.0
    drift: float = 0.0
    felt: float = 0.0

    @property
    def best(self) -> float:
        """The position liked most inside the range."""
        return min(max(self.wanted, 0.0), float(self.range_clicks))

    def true_loss(self, position: float) -> float:
        """Points lost at a position, against the click liked most."""
        at = [self.loss((click - self.wanted) / self.range_clicks) for click in range(self.range_clicks + 1)]
        return self.loss((position - self.wanted) / self.range_clicks) - min(at)

    def ride(self, trials: list[Trial], position: int, *, direction: bool) -> Trial:
        """One run, answered."""
        t = len(trials)
        before = trials[-1].position if trials else position
        felt = (1 - self.lag) * position + self.lag * before
        offset = (felt - self.wanted) / self.range_clicks
        liking = self.level - self.loss(offset) - self.learning * math.exp(-t / 2.5)
        self.felt += self.drift * self.rng.normal()
        liking += self.felt + self.noise * self.rng.normal()
        if self.rng.random() < self.outliers:
            liking += self.rng.normal() * 2.5
        rating = int(np.clip(round(liking), 1, 9))
        answer = None
        if direction:
            raw = self.scale * (offset - self.zero) + self.answer_noise * self.rng.normal()
            answer = int(np.clip(round(raw), -2, 2))
            if self.manner == "reversed":
                answer = -answer
            if self.manner == "random":
                answer = int(self.rng.integers(-2, 3))
        return Trial(position, rating, answer)


def make_rider(rng: np.random.Generator, family: str) -> Rider:
    """A rider of a family."""
    range_clicks = int(rng.integers(10, 23))
    drop = rng.uniform(2.0, 4.2)
    kind = "hump" if family == "hump" else ("vee", "bow", "bow", "plateau", "skew")[rng.integers(5)]
    side = rng.uniform(1.3, 2.2) if rng.random() < 0.5 else 1 / rng.uniform(1.3, 2.2)
    width = rng.uniform(0.05, 0.12)
    hump = rng.uniform(0.12, 0.25)

    def loss(offset: float) -> float:
        size = abs(offset)
        if family == "flat":
            return 0.0
        if family == "needle":
            return drop * (1 - math.exp(-size / 0.07))
        if kind == "vee":
            return drop * size / 0.5
        if kind == "plateau":
            return drop * max(size - width, 0) / (0.5 - width)
        if kind == "skew":
            return drop * (size / 0.5) ** 1.5 * (side if offset > 0 else 1 / side)
        if kind == "hump":
            return drop * (1 - math.exp(-0.5 * (size / hump) ** 2))
        return drop * (size / 0.5) ** 2

    share = rng.uniform(0.1, 0.9)
    if family == "beyond":
        share = float(rng.choice([rng.uniform(-0.25, -0.08), rng.uniform(1.08, 1.25)]))
    if family == "at an end":
        share = float(rng.choice([0.0, 1.0]))
    manner, zero = "honest", 0.0
    if family in ("reversed", "random"):
        manner = family
    if family == "offset":
        zero = float(rng.choice([-0.15, 0.15]))
    if family == "mixture":
        draw = rng.random()
        manner = "honest" if draw < 0.7 or draw >= 0.9 else "reversed" if draw < 0.8 else "random"
        zero = float(rng.choice([-0.15, 0.15])) if draw >= 0.9 else 0.0
    rider = Rider(
        range_clicks,
        share * range_clicks,
        loss,
        level=rng.uniform(6.5, 8.3),
        noise=FELT_SD * math.exp(0.3 * rng.normal()),
        learning=rng.uniform(0.0, 0.8),
        scale=0.0 if family == "flat" else rng.uniform(3.0, 8.0),
        answer_noise=rng.uniform(0.3, 0.8),
        rng=np.random.default_rng(rng.integers(2**32)),
        manner=manner,
        zero=zero,
        outliers=0.1 if family == "outliers" else 0.0,
        lag=0.5 if family == "lag" else 0.0,
        drift=0.15 if family == "drift" else 0.0,
    )
    return _broaden(rider, rng, family) if family in BROAD else rider


def _broaden(rider: Rider, rng: np.random.Generator, family: str) -> Rider:
    """The same rider on any range, with louder ratings and a curve of any width and height."""
    rider.range_clicks = int(rng.integers(8, 31))
    rider.wanted = rider.range_clicks * rng.uniform(-0.05, 1.05)
    rider.noise = rng.uniform(0.5, 1.2) if family == "broad" else rider.noise
    rider.scale = rng.uniform(3.0, 10.0)
    rider.loss = _needle(rng) if family == "needles" else _broad(rng)
    return rider


def _broad(rng: np.random.Generator) -> Callable[[float], float]:
    """A curve of any power, lean and flat top, or a bell of any width."""
    drop, power = rng.uniform(1.5, 6.0), rng.uniform(0.9, 2.6)
    flat = rng.choice([0.0, 0.0, rng.uniform(0.03, 0.15)])
    lean = rng.choice([1.0, 1.0, rng.uniform(1.2, 2.2), 1 / rng.uniform(1.2, 2.2)])
    bell = rng.choice([0.0, 0.0, rng.uniform(0.12, 0.35)])

    def loss(offset: float) -> float:
        size = max(abs(offset) - flat, 0.0) * (lean if offset > 0 else 1 / lean)
        if bell:
            return float(drop * (1 - math.exp(-0.5 * (size / bell) ** 2)))
        return float(drop * (size / 0.5) ** power)

    return loss


def _needle(rng: np.random.Generator) -> Callable[[float], float]:
    """A sharp peak: a cusp, a narrow bell, or a steep fall to a floor."""
    drop, kind, width = rng.uniform(2.0, 4.2), int(rng.integers(4)), rng.uniform(0.05, 0.1)

    def loss(offset: float) -> float:
        size = abs(offset)
        if kind == 0:
            return float(drop * (1 - math.exp(-size / width)))
        if kind == 1:
            return float(drop * math.sqrt(size / 0.5))
        if kind == 2:
            return float(drop * (1 - math.exp(-0.5 * (size / width) ** 2)))
        return float(drop * min(size / (2 * width), 1.0))

    return loss
