"""The runs and the curve along one adjuster: what is drawn, and position by position what is read off it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True, slots=True)
class Dot:
    """Runs with one rating at one position."""

    position: int
    liking: float
    count: int
    is_strong: bool = True  # of the change picked, if one is

    def __post_init__(self) -> None:
        if not isfinite(self.liking):
            raise ValueError("a rating is finite")


@dataclass(frozen=True, slots=True)
class Place:
    """One position to be read off: what was rated there, and where the curve runs."""

    position: int
    liking: float  # the curve's height, or without one the mean of the ratings
    said: str


@dataclass(frozen=True, slots=True)
class CurveBand:
    """The liking from the first position ridden to the last: middle, 90 % band, and single curves it is made of."""

    positions: tuple[int, ...] = ()
    middle: tuple[float, ...] = ()
    low: tuple[float, ...] = ()
    high: tuple[float, ...] = ()
    curves: tuple[tuple[float, ...], ...] = ()

    def __post_init__(self) -> None:
        lines = (self.middle, self.low, self.high, *self.curves)
        if any(len(line) != len(self.positions) for line in lines) or not all(
            isfinite(y) for one in lines for y in one
        ):
            raise ValueError("a curve has a finite value at each position")


def to_read(dots: tuple[Dot, ...], curve: CurveBand, where: Callable[[int], str]) -> tuple[Place, ...]:
    """Say position by position what the picture shows."""
    found = []
    rated = {dot.position for dot in dots}
    for position in sorted(rated | set(curve.positions)):
        likings = [dot.liking for dot in dots if dot.position == position for _ in range(dot.count)]
        said = [f"rated {', '.join(f'{one:g}' for one in sorted(likings))}" if likings else "not ridden"]
        height = sum(likings) / len(likings) if likings else 0.0
        if position in curve.positions:
            at = curve.positions.index(position)
            height = curve.middle[at]
            said.append(f"curve {height:.1f}, nine times in ten {curve.low[at]:.1f} to {curve.high[at]:.1f}")
        found.append(Place(position, height, f"{where(position)}: {'; '.join(said)}"))
    return tuple(found)
