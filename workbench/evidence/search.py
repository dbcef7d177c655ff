"""Where along one adjuster to ride next, and what the runs say so far."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from workbench.evidence import search_words as words
from workbench.evidence.direction import Trust, prepare
from workbench.evidence.lookahead import MOST_CANDIDATES, Knowledge, know, spread, values_of
from workbench.evidence.normal import Array
from workbench.evidence.response import DROPS, position_before
from workbench.model.errors import InputError

SETTLED_BELOW = 0.01  # points of liking
FEWEST_RUNS = 3  # counted runs before a search may settle
FIRST_STEP = (0.20, 0.25)  # share of the range; common practice, no source
ONE_AT_A_TIME = 5  # a range of so many clicks or fewer is tried one click at a time
FELT = 0.5  # points of liking; smaller differences are called about as good
USED_UP_CHANCE = 0.8  # that the liking peaks at an end or past it
END_SLACK = 0.025  # share of the range that still counts as at the end
SURE = 0.93  # share of chance in an interval that is to cover 90 %: riders differ from any model of them
CLOSE = 0.1  # share of the range; a choice no further from the place liked most is a hit
MISSED = 1.0  # points that a miss counts beside the liking it loses: the next session starts from the choice
MOST_CLICKS = 400


@dataclass(frozen=True, slots=True)
class Trial:
    """One run at a position: what the rider answered, and what lowers its worth.

    liking 1..9; direction -2 far too closed .. 0 just right .. +2 far too open; compared -1 worse, 0 the same,
    +1 better than the run before, that day.
    """

    position: int
    liking: float | None = None
    direction: int | None = None
    lap_s: float | None = field(default=None, kw_only=True)
    compared: int | None = field(default=None, kw_only=True)
    day: int = field(default=0, kw_only=True)
    warmup: bool = field(default=False, kw_only=True)
    confounded: bool = field(default=False, kw_only=True)
    blind: bool = field(default=False, kw_only=True)

    def __post_init__(self) -> None:
        _whole("position", self.position, 0, MOST_CLICKS)
        if self.liking is not None and not (math.isfinite(self.liking) and 1 <= self.liking <= 9):
            raise InputError("liking", self.liking, "1 to 9")
        if self.direction is not None:
            _whole("direction", self.direction, -2, 2)
        if self.compared is not None:
            _whole("compared", self.compared, -1, 1)
        if self.lap_s is not None and not (math.isfinite(self.lap_s) and self.lap_s > 0):
            raise InputError("lap_s", self.lap_s, "a time above 0")


@dataclass(frozen=True, slots=True)
class Proposal:
    """Where to ride next; value is what the run is expected to add to the final choice, in points of liking."""

    position: int
    value: float
    settled: bool
    exhausted: str | None
    reason: str


@dataclass(frozen=True, slots=True)
class Estimate:
    """What the runs say: the position to choose, where the liking peaks (90 %), and what was gained."""

    position: float
    low: float
    high: float
    gain: float
    gain_low: float
    gain_high: float
    as_good_low: float
    as_good_high: float
    trust: Trust


class ClickSearch:
    """The search along one adjuster: 0 closed .. range_clicks fully open, kept inside the band low .. high.

    Parameters
    ----------
    range_clicks : int
        Clicks from closed to fully open; there is one position more.
    low, high : int
        The band the rider allows, in clicks from closed; the whole range unless said otherwise.
    steps : Steps
        How positions are said in the reasons; in clicks unless the adjuster is counted otherwise.

    Raises
    ------
    InputError
        If the range or band is impossible, or a trial lies outside the range.

    Examples
    --------
    >>> search = ClickSearch(20)
    >>> search.propose([]).position
    10
    >>> search.propose([Trial(10, 6, direction=-2)]).position
    15
    """

    def __init__(
        self, range_clicks: int, *, low: int = 0, high: int | None = None, steps: words.Steps = words.CLICKS
    ) -> None:
        self.range_clicks = _whole("range_clicks", range_clicks, 1, MOST_CLICKS)
        self.low = _whole("low", low, 0, self.range_clicks)
        self.high = self.range_clicks if high is None else _whole("high", high, self.low, self.range_clicks)
        self._steps = steps
        prepare(self.range_clicks)

    def propose(self, trials: Sequence[Trial]) -> Proposal:
        """Say where to ride next, what it is expected to add, and why."""
        known = self._know(trials)
        liked = self._choice(known)
        candidates = self._candidates(trials, liked)
        values = values_of(known, candidates, self.low, self.high)
        at = int(np.argmax(np.round(values, 9)))
        value = float(values[at])
        counted = sum(1 for trial in trials if _counts(trial))
        if counted < FEWEST_RUNS and self.high > self.low:
            value = max(value, SETTLED_BELOW)  # two answers can both be spoilt, whatever they seem to say
        settled = value < SETTLED_BELOW
        exhausted = self._exhausted(known, trials)
        position = self._within_reach(trials, candidates[at])
        if exhausted:
            position = self.low if exhausted == "closed" else self.high
        reason = words.reason(
            position,
            self.range_clicks,
            [trial.position for trial in trials if _counts(trial)],
            trials[-1] if trials else None,
            settled_at=round(liked) if settled else None,
            exhausted=exhausted,
            on_the_way=position != candidates[at],
            at_range_end=position in (0, self.range_clicks),
            steps=self._steps,
        )
        return Proposal(position, value, settled, exhausted, reason)

    def estimate(self, trials: Sequence[Trial]) -> Estimate:
        """Say what the runs so far tell: position, interval, gain, clicks about as good, trust in the directions."""
        known = self._know(trials)
        clicks = np.arange(self.low, self.high + 1)
        liking = known.expected_liking(clicks)
        choice = self._choice(known)
        low, high = _interval(known.grid.places, known.place_weights, 0.0, float(self.range_clicks))
        start = trials[0].position if trials else round(choice)
        gain, gain_low, gain_high = _gain(known, round(choice), start)
        good = clicks[liking >= liking.max() - FELT]
        return Estimate(
            choice,
            min(low, choice),
            max(high, choice),
            gain,
            gain_low,
            gain_high,
            float(good.min()),
            float(good.max()),
            known.trust,
        )

    def _know(self, trials: Sequence[Trial]) -> Knowledge:
        for trial in trials:
            if trial.position > self.range_clicks:
                raise InputError("position", trial.position, f"0 (closed) to {self.range_clicks} (open)")
        answers = [
            (trial.position, position_before(trials, time), trial.direction)
            for time, trial in enumerate(trials)
            if trial.direction is not None and _counts(trial)
        ]
        return know(self.range_clicks, trials, answers)

    def _choice(self, known: Knowledge) -> float:
        """The position with the least expected loss, a miss counted as one too; the middle of several alike."""
        clicks = np.arange(self.low, self.high + 1)
        inside = np.clip(known.grid.places, self.low, self.high)
        hit = np.abs(clicks[:, None] - inside[None, :]) <= CLOSE * self.range_clicks + 1e-9
        liking = known.expected_liking(clicks)
        worth = liking + MISSED * (hit @ known.place_weights)
        worth[liking < liking.max() - FELT] = -np.inf
        alike = clicks[worth >= worth.max() - 1e-6]
        return float(alike.mean())

    def _candidates(self, trials: Sequence[Trial], choice: float) -> list[int]:
        """Where the next run may be: the middle at first, then one big step, then anywhere in the band."""
        if not trials:
            return [(self.low + self.high + 1) // 2]
        last = min(max(trials[-1].position, self.low), self.high)
        visited = {trial.position for trial in trials if _counts(trial)}
        if not visited:
            return [last]
        if self.range_clicks <= ONE_AT_A_TIME:
            return list(range(self.high, self.low - 1, -1))
        if len(visited) == 1:
            return self._first_steps(last)
        places = {int(place) for place in spread(self.low, self.high, MOST_CANDIDATES)}
        near = {math.floor(choice) - 1, math.floor(choice), math.ceil(choice), math.ceil(choice) + 1}
        places |= {place for place in near if self.low <= place <= self.high}
        return sorted(places, reverse=True)

    def _within_reach(self, trials: Sequence[Trial], target: int) -> int:
        """The target, or one click towards it on a short range."""
        if self.range_clicks > ONE_AT_A_TIME or not trials:
            return target
        last = min(max(trials[-1].position, self.low), self.high)
        return min(max(target, last - 1), last + 1)

    def _first_steps(self, last: int) -> list[int]:
        least, most = (share * self.range_clicks for share in FIRST_STEP)
        steps = [step for step in range(math.ceil(least), math.floor(most) + 1) if step >= 2]
        steps = steps or [max(2, round(0.5 * (least + most)))]
        reached = {last + sign * step for step in steps for sign in (1, -1)}
        inside = sorted((place for place in reached if self.low <= place <= self.high), reverse=True)
        if inside:
            return inside
        return [self.high if self.high - last >= last - self.low else self.low]

    def _exhausted(self, known: Knowledge, trials: Sequence[Trial]) -> str | None:
        """Which end was ridden and is still not far enough, if any."""
        visited = {trial.position for trial in trials if _counts(trial)}
        places, weights = known.grid.places, known.place_weights
        slack = END_SLACK * self.range_clicks
        if self.high in visited and weights[places >= self.high - slack].sum() > USED_UP_CHANCE:
            return "open"
        if self.low in visited and weights[places <= self.low + slack].sum() > USED_UP_CHANCE:
            return "closed"
        return None


def _counts(trial: Trial) -> bool:
    """Whether a run says anything about the position."""
    answers = (trial.liking, trial.direction, trial.lap_s, trial.compared)
    heard = any(answer is not None for answer in answers)
    return heard and not trial.warmup and not trial.confounded


def _interval(places: Array, weights: Array, least: float, most: float) -> tuple[float, float]:
    """Shortest interval that holds the share SURE of a grid; what lies past the ends counts at the ends."""
    half = 0.5 * (places[1] - places[0])
    edges = np.concatenate([places - half, [places[-1] + half]])
    below = np.concatenate([[0.0], np.cumsum(weights)]) / weights.sum()
    tails = np.linspace(0.0, 1.0 - SURE, 41)
    low = np.clip(np.interp(tails, below, edges), least, most)
    high = np.clip(np.interp(tails + SURE, below, edges), least, most)
    width = high - low
    shortest = np.flatnonzero(width <= width.min() + 1e-9)
    at = shortest[[0, -1]]  # the middle of several alike, so that both ends are treated the same
    return float(low[at].mean()), float(high[at].mean())


def _gain(known: Knowledge, choice: int, start: int) -> tuple[float, float, float]:
    """Liking at the choice over that at the start: expectation and central 90 %."""
    losses = known.grid.losses
    gain = (losses[:, :, start] - losses[:, :, choice])[:, :, None] * np.array(DROPS)
    values, weights = gain.ravel(), known.weights.ravel()
    order = np.argsort(values, kind="stable")
    below = np.cumsum(weights[order])
    picks = np.searchsorted(below, [0.05 * below[-1], 0.95 * below[-1]])
    low, high = values[order[np.minimum(picks, len(order) - 1)]]
    mean = float(values @ weights)
    return mean, min(float(low), mean), max(float(high), mean)  # a long tail can pull the mean past a quantile


def _whole(name: str, value: int, least: int, most: int) -> int:
    """A whole number between two bounds, or an error that names it."""
    if isinstance(value, bool) or not isinstance(value, (int, np.integer)) or not least <= value <= most:
        raise InputError(name, value, f"a whole number from {least} to {most}")
    return int(value)
