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
    read: str = ""  # the line to read off the picture

    def __post_init__(self) -> None:
        if not (isfinite(self.place) and isfinite(self.liking)):
            raise ValueError("a point on the timeline is finite")


@dataclass(frozen=True, slots=True)
class LapPoint:
    """One lap time on the strip below the ratings, at the place of its run."""

    run_id: str
    setup_id: str
    place: float
    lap_s: float
    mark: str
    said: str
    is_warmup: bool = False
    is_set_aside: bool = False
    is_blind: bool = False
    read: str = ""  # the line to read off the picture

    def __post_init__(self) -> None:
        if not (isfinite(self.place) and isfinite(self.lap_s) and self.lap_s > 0):
            raise ValueError("a lap on the timeline has a finite time above 0")


@dataclass(frozen=True, slots=True)
class Period:
    """A stretch of runs on one setup."""

    first: float
    last: float
    setup_id: str
    label: str
    is_confounded: bool = False


@dataclass(frozen=True, slots=True)
class TrendPoint:
    """The trend at one run, on the scale of its picture, with its 90 % band; and the run without it."""

    run_id: str
    place: float
    value: float
    low: float
    high: float
    without: float

    def __post_init__(self) -> None:
        if not all(isfinite(one) for one in (self.place, self.value, self.low, self.high, self.without)):
            raise ValueError("a trend is finite")


@dataclass(frozen=True, slots=True)
class Timeline:
    """Every rating in riding order; sessions are parted by a gap."""

    points: tuple[RunPoint, ...] = ()
    periods: tuple[Period, ...] = ()
    sessions: tuple[tuple[float, str], ...] = ()  # where each session begins, and its words
    said: str = ""
    laps: tuple[LapPoint, ...] = ()
    laps_said: str = ""
    trend: tuple[tuple[TrendPoint, ...], ...] = ()  # a line a session; empty unless asked for
    trend_of_laps: bool = False
    trend_said: str = ""


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
    way: int = 0  # 1 better, -1 worse, 0 no difference felt or not told
    joint_note: str = ""  # said when other answers disagree
    clock_text: str = ""  # of lap times, in seconds

    @property
    def read(self) -> str:
        """The line to read off the picture."""
        helped = f"; it helped with a chance of {self.chance_text}" if self.chance_text else ""
        return f"{self.change}: {self.effect_text}, nine times in ten {self.interval_text}{helped}"

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
    axis: str = "points; grey: hardly felt"
    unit: str = "points"
    reach: float = 2.0  # the picture goes at least so far to both sides
    is_so_far: bool = False


@dataclass(frozen=True, slots=True)
class Picked:
    """The change looked at closely: its dots, and what the other answers say of it."""

    title: str = ""
    verdict: str = ""
    cautions: str = ""
    dots: tuple[float, ...] = ()
    dots_said: str = ""
    next_said: str = ""
    joint: tuple[str, ...] = ()  # a line a response
    joint_said: str = ""


@dataclass(frozen=True, slots=True)
class LookedDot:
    """Runs with one score of one attribute. ``side`` is before, after, or all when no change is picked."""

    score: int
    count: int
    side: str


@dataclass(frozen=True, slots=True)
class LookedRow:
    """One attribute at one end."""

    title: str
    dots: tuple[LookedDot, ...]
    said: str


@dataclass(frozen=True, slots=True)
class Looked:
    """Everything that was asked beside the one response named: shown, never judged."""

    title: str = ""
    said: str = ""
    rows: tuple[LookedRow, ...] = ()


@dataclass(frozen=True, slots=True)
class Suited:
    """The setup most likely to suit so far, how sure, and the cheapest way to be surer."""

    title: str = ""
    sure: str = ""
    advice: str = ""
    setup_id: str = ""  # empty: none is named
