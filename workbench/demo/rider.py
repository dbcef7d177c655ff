"""A rider made of numbers: likes each adjuster at a certain click, learns, tires, and answers with some scatter."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp
from random import Random


@dataclass(frozen=True, slots=True)
class Answers:
    """What the rider says after one run."""

    liking: int
    direction: int
    lap_s: float
    travel_front: float  # share of the travel used
    travel_rear: float
    scores: tuple[tuple[str, int, str], ...]  # attribute, score, end


ASIDE = (("grip", "front", -0.2), ("comfort", "front", -0.8), ("support", "rear", 0.3))  # and how far from the liking


class SimulatedRider:
    """Seeded, so that the same scenario always gives the same answers."""

    def __init__(self, seed: int, likes: dict[str, int]) -> None:
        self._random = Random(seed)
        self._aside = Random(seed + 1)  # so that what is looked at beside changes no answer
        self._likes = likes
        self.names = tuple(likes)

    def ride(self, positions: dict[str, float], ranges: dict[str, int], tested: str, run: int) -> Answers:
        """Ride once; positions and ranges are by adjuster, ``run`` counts from 1 in its session."""
        misses = {name: (positions[name] - want) / ranges[name] for name, want in self._likes.items()}
        pleasure = 7.4 - sum(7.0 * abs(miss) ** 1.3 for miss in misses.values())
        learned = 0.9 * exp(-(run - 1) / 2.5)
        tired = 0.12 * max(0, run - 9)
        heard = pleasure - learned - tired + self._random.gauss(0.0, 0.45)
        off = misses.get(tested, 0.0) + self._random.gauss(0.0, 0.05)
        lap = 118.0 * (1 + 0.008 * (7.4 - pleasure)) + 2.5 * learned + self._random.gauss(0.0, 0.7)
        return Answers(
            liking=min(9, max(1, round(heard))),
            direction=0 if abs(off) < 0.07 else (1 if off > 0 else -1) * (2 if abs(off) > 0.28 else 1),
            lap_s=round(lap, 1),
            travel_front=0.93 + self._random.gauss(0.0, 0.015),
            travel_rear=0.94 + self._random.gauss(0.0, 0.015),
            scores=tuple(
                (name, min(9, max(1, round(pleasure + shift + self._aside.gauss(0.0, 0.7)))), end)
                for name, end, shift in ASIDE
            ),
        )
