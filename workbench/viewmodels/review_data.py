"""The review's pictures as numbers: frozen, finite, and with the words that belong to them."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True, slots=True)
class RunPoint:
    """One run on the timeline. ``mark`` is baseline, open, closed or other."""

    run_id: str
    setup_id: str
    place: float
    liking: float
    mark: str
    said: str
    is_warmup: bool = False
    is_set_aside: bool = False
    is_blind: bool = False

    def __post_init__(self) -> None:
        if not (isfinite(self.place) and isfinite(self.liking)):
            raise ValueError("a point on the timeline is finite")


@dataclass(frozen=True, slots=True)
class Period:
    """A stretch of runs on one setup."""

    first: float
    last: float
    setup_id: str
    label: str
    is_confounded: bool = False


@dataclass(frozen=True, slots=True)
class Timeline:
    """Every rating in riding order; sessions are parted by a gap."""

    points: tuple[RunPoint, ...] = ()
    periods: tuple[Period, ...] = ()
    sessions: tuple[tuple[float, str], ...] = ()  # where each session begins, and its words
    said: str = ""


@dataclass(frozen=True, slots=True)
class EffectRow:
    """One change with its difference, interval and verdict."""

    key: str
    before_id: str
    after_id: str
    change: str
    effect: float
    low: float
    high: float
    effect_text: str
    interval_text: str
    chance_text: str
    verdict: str
    cautions: str
    runs_text: str
    is_settled: bool = False

    def __post_init__(self) -> None:
        if not all(isfinite(value) for value in (self.effect, self.low, self.high)):
            raise ValueError("an effect is finite")


@dataclass(frozen=True, slots=True)
class Effects:
    """All changes in the order ridden."""

    rows: tuple[EffectRow, ...] = ()
    felt: float = 0.5
    said: str = ""
    steady: str = ""  # how much this rider's ratings scatter
