"""The ratings along one adjuster: every run where it stood, and where the liking most likely peaks."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from math import ceil, floor, isfinite
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.actions.ride_evidence import knob_runs
from workbench.model.parts import BikeParts
from workbench.model.setting import Item

if TYPE_CHECKING:
    from workbench.evidence.plan import KnobRuns

FEWEST_PLACES = 3  # positions ridden before a place is named
DIRECTION_WORDS = ("far too closed", "too closed", "right", "too open", "far too open")


@dataclass(frozen=True, slots=True)
class Dot:
    """Runs with one rating at one position."""

    position: int
    liking: float
    count: int

    def __post_init__(self) -> None:
        if not isfinite(self.liking):
            raise ValueError("a rating is finite")


@dataclass(frozen=True, slots=True)
class Response:
    """One adjuster: its range, the runs, and what they say."""

    adjuster_id: str = ""
    title: str = ""
    steps: int = 1
    dots: tuple[Dot, ...] = ()
    low: int | None = None  # most likely between these, 9 in 10, rounded outward
    high: int | None = None
    good_low: int | None = None  # about as good as the most liked
    good_high: int | None = None
    now: int | None = None
    said: str = ""
    answers: tuple[tuple[int, str], ...] = ()  # position, "2 too closed, 1 right"


@dataclass(frozen=True, slots=True)
class ResponseState:
    """Which adjusters have runs, and the one looked at."""

    choices: tuple[tuple[str, str], ...] = ()
    response: Response = field(default_factory=Response)


def resolve_response(records: RideRecords, picked: str) -> ResponseState:
    """Lay out the adjusters that were ridden at two positions or more, the one ridden at most of them first."""
    knobs = sorted(
        (knob for knob in knob_runs(records) if len(_places(knob)) > 1), key=lambda knob: -len(_places(knob))
    )
    if not knobs:
        return ResponseState()
    knob = next((one for one in knobs if one.key == picked), knobs[0])
    return ResponseState(
        tuple((one.key, _title(records.parts, one.key)) for one in knobs), _response(records.parts, knob)
    )


def _title(parts: BikeParts, adjuster_id: str) -> str:
    return parts.subject_title(Item.ADJUSTER, adjuster_id)


def _places(knob: KnobRuns) -> set[int]:
    return {trial.position for trial in knob.trials if trial.liking is not None and not trial.warmup}


def _response(parts: BikeParts, knob: KnobRuns) -> Response:
    rated = [one for one in knob.trials if one.liking is not None and not one.warmup and not one.confounded]
    dots = Counter((one.position, float(one.liking or 0)) for one in rated)
    base = Response(
        adjuster_id=knob.key,
        title=_title(parts, knob.key),
        steps=knob.range_clicks,
        dots=tuple(Dot(position, liking, count) for (position, liking), count in sorted(dots.items())),
        now=knob.current,
        answers=_answers(knob),
        said=f"{len(rated)} runs at {len(_places(knob))} positions; too few positions to name a place yet.",
    )
    if len(_places(knob)) < FEWEST_PLACES:
        return base
    return _with_estimate(base, knob)


def _with_estimate(base: Response, knob: KnobRuns) -> Response:
    from workbench.evidence.search import ClickSearch

    found = ClickSearch(knob.range_clicks).estimate(knob.trials)
    low, high = max(0, floor(found.low)), min(knob.range_clicks, ceil(found.high))
    good_low, good_high = round(found.as_good_low), round(found.as_good_high)
    words = f"Most likely {low} to {high} from closed, nine times in ten."
    if good_high > good_low:
        words += f" {good_low} to {good_high} are about as good."
    if high >= max(_places(knob)) and high < knob.range_clicks:
        words += " It may lie beyond what was ridden: try further out."
    elif low <= min(_places(knob)) and low > 0:
        words += " It may lie beyond what was ridden: try further in."
    return replace(base, low=low, high=high, good_low=good_low, good_high=good_high, said=words)


def _answers(knob: KnobRuns) -> tuple[tuple[int, str], ...]:
    by_place: dict[int, Counter[int]] = {}
    for trial in knob.trials:
        if trial.direction is not None:
            by_place.setdefault(trial.position, Counter())[trial.direction] += 1
    return tuple(
        (place, ", ".join(f"{count} {DIRECTION_WORDS[way + 2]}" for way, count in sorted(said.items())))
        for place, said in sorted(by_place.items())
    )
