"""What a plot of lines is told: curves over one axis, points read, and words that stand beside them."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True, slots=True)
class Line:
    """One curve, with the band it lies in if there is one; a quiet one is there to compare with."""

    name: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    low: tuple[float, ...] = ()
    high: tuple[float, ...] = ()
    is_strong: bool = True

    def __post_init__(self) -> None:
        lengths = {len(one) for one in (self.x, self.y, self.low or self.x, self.high or self.x)}
        if len(lengths) != 1 or not all(map(isfinite, (*self.x, *self.y, *self.low, *self.high))):
            raise ValueError("a line has one finite value for every place")


@dataclass(frozen=True, slots=True)
class Lines:
    """Some curves and points over the same axes."""

    x_label: str
    y_label: str
    lines: tuple[Line, ...]
    points: tuple[tuple[float, float], ...] = ()
    odd: int | None = None  # the place of a point that stands out
    from_zero: bool = False
    said: str = ""  # the sentence the picture shows
