"""The ratings along one adjuster: every run where it stood, and where the liking most likely peaks."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from functools import lru_cache, partial
from math import ceil, floor
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.actions.ride_evidence import knob_runs, trials_of
from workbench.actions.setups import Values
from workbench.model.errors import NotEnoughData
from workbench.model.parts import BikeParts
from workbench.model.setting import Item, Setup, changes_between, without_removed
from workbench.model.steps import values_now
from workbench.viewmodels.review_curve import CurveBand, Dot, Place, to_read
from workbench.viewmodels.review_effects import signed

if TYPE_CHECKING:
    from workbench.evidence.curve import ResponseCurve
    from workbench.evidence.plan import KnobRuns
    from workbench.evidence.search import Estimate, Trial
    from workbench.evidence.search_words import Steps

FEWEST_PLACES = 3  # positions ridden before a place is named
DIRECTION_WORDS = ("far too closed", "too closed", "right", "too open", "far too open")


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
    curve: CurveBand = field(default_factory=CurveBand)
    likely: int | None = None  # the position to choose as it stands
    peaks: tuple[int, ...] = ()  # twenty places where the liking may peak, each one chance in twenty
    ridden: tuple[int, int] | None = None  # the outermost positions ridden
    places: tuple[Place, ...] = ()  # every position with something to read
    names: tuple[str, ...] = ("0", "1")  # how each position is said below the picture
    axis: str = "from closed"


@dataclass(frozen=True, slots=True)
class ResponseState:
    """Which adjusters have runs, and the one looked at."""

    choices: tuple[tuple[str, str], ...] = ()
    response: Response = field(default_factory=Response)
    told: tuple[str, ...] = ()  # a sentence for each adjuster that tells of a place


def resolve_response(records: RideRecords, picked: str, strong: frozenset[str] = frozenset()) -> ResponseState:
    """Lay out the adjusters that were ridden at two positions or more, the one ridden at most of them first.

    ``strong`` are the setups of the change picked: their runs stand out.
    """
    found = [_along(records, knob) for knob in knob_runs(records)]
    knobs = sorted((one for one in found if len(_places(one.knob)) > 1), key=lambda one: -len(_places(one.knob)))
    if not knobs:
        return ResponseState()
    chosen = next((one for one in knobs if one.knob.key == picked), knobs[0])
    response = _response(records.parts, chosen, _strong_places(records, chosen, strong))
    return ResponseState(
        tuple((one.knob.key, _title(records.parts, one.knob.key)) for one in knobs),
        replace(response, places=to_read(response.dots, response.curve, partial(_where, chosen.knob.steps))),
        tuple(f"{_title(records.parts, one.knob.key)}, {_told(one.knob)}" for one in found if _is_told(one.knob)),
    )


@dataclass(frozen=True, slots=True)
class _Along:
    """The runs along one adjuster, everything else standing as in one state of the bike."""

    knob: KnobRuns
    others: Values
    setup_number: int | None = None  # whose state it is; None: the bike as it stands


def _along(records: RideRecords, knob: KnobRuns) -> _Along:
    """Take the state of everything else in which the adjuster was ridden at most positions; as it stands if alike."""
    adjuster = records.parts.adjuster(knob.key)
    here = _Along(knob, values_now(records.parts))
    positions: dict[tuple[object, ...], set[float]] = {}
    newest: dict[tuple[object, ...], Setup] = {}
    for setup in _ridden(records):
        values = records.values[setup.id]
        position = values.get((Item.ADJUSTER.value, knob.key))
        if position is None:  # not known: no place along it
            continue
        rest = tuple(sorted((item, value) for item, value in values.items() if item[1] != knob.key))
        positions.setdefault(rest, set()).add(position)
        newest[rest] = setup
    most = max(positions, key=lambda rest: (len(positions[rest]), newest[rest].number), default=None)
    if adjuster is None or most is None or len(positions[most]) <= len(_places(knob)):
        return here
    there = newest[most]
    trials = trials_of(records, adjuster, records.values[there.id], knob.range_clicks)
    return _Along(replace(knob, trials=trials), records.values[there.id], there.number)


def _ridden(records: RideRecords) -> list[Setup]:
    """Give the setups with a rated run that counts, in number order."""
    ids = {
        run.setup_id
        for session in records.sessions
        for run in session.runs
        if run.liking is not None and not (run.is_warmup or run.is_set_aside)
    }
    return [setup for setup in records.setups if setup.id in ids]


def _strong_places(records: RideRecords, along: _Along, setups: frozenset[str]) -> frozenset[int] | None:
    """Give the positions of the setups that differ from the others in this adjuster alone."""
    if not setups:
        return None
    now, adjuster_id = along.others, along.knob.key
    found = set()
    for setup_id in setups & records.values.keys():
        values = records.values[setup_id]
        position = values.get((Item.ADJUSTER.value, adjuster_id))
        others = changes_between(without_removed(values, now), now)
        if position is not None and all(change.subject_id == adjuster_id for change in others):
            found.add(round(position))
    return frozenset(found)


def _title(parts: BikeParts, adjuster_id: str) -> str:
    return parts.subject_title(Item.ADJUSTER, adjuster_id)


def _places(knob: KnobRuns) -> set[int]:
    return {trial.position for trial in knob.trials if trial.liking is not None and not trial.warmup}


def _response(parts: BikeParts, along: _Along, strong: frozenset[int] | None) -> Response:
    knob = along.knob
    rated = [one for one in knob.trials if one.liking is not None and not one.warmup and not one.confounded]
    dots = Counter((one.position, float(one.liking or 0)) for one in rated)
    base = Response(
        adjuster_id=knob.key,
        title=_title(parts, knob.key),
        steps=knob.range_clicks,
        names=tuple(knob.steps.tick(place) for place in range(knob.range_clicks + 1)),
        axis=knob.steps.axis,
        dots=tuple(
            Dot(position, liking, count, strong is None or position in strong)
            for (position, liking), count in sorted(dots.items())
        ),
        now=knob.current,
        ridden=(min(_places(knob)), max(_places(knob))),
        answers=_answers(knob),
        said=f"{len(rated)} runs at {len(_places(knob))} positions; too few positions to name a place yet.",
    )
    if along.setup_number is not None:
        base = replace(base, said=f"{base.said} {_with_others(along.setup_number)}")
    if not _is_told(knob):
        return base
    found = _with_estimate(base, knob)
    return (
        found if along.setup_number is None else replace(found, said=f"{found.said} {_with_others(along.setup_number)}")
    )


def _with_others(number: int) -> str:
    return f"Everything else as in setup no. {number}, not as it stands now."


def _with_estimate(base: Response, knob: KnobRuns) -> Response:
    found, curve = _estimate(knob.range_clicks, knob.trials), _curve(knob.range_clicks, knob.trials)
    low, high = _place(knob)
    good_low, good_high = round(found.as_good_low), round(found.as_good_high)
    told = _told(knob)
    words = told[0].upper() + told[1:]
    if good_high > good_low:
        words += f" {knob.steps.short(good_low)} to {knob.steps.short(good_high)} are about as good."
    if high >= max(_places(knob)) and high < knob.range_clicks:
        words += " It may lie beyond what was ridden: try further out."
    elif low <= min(_places(knob)) and low > 0:
        words += " It may lie beyond what was ridden: try further in."
    return replace(
        base,
        low=low,
        high=high,
        good_low=good_low,
        good_high=good_high,
        said=words,
        curve=CurveBand(curve.positions, curve.middle, curve.low, curve.high, curve.curves) if curve else CurveBand(),
        likely=round(found.position),
        peaks=curve.dots if curve else (),
    )


def _is_told(knob: KnobRuns) -> bool:
    return len(_places(knob)) >= FEWEST_PLACES


def _place(knob: KnobRuns) -> tuple[int, int]:
    """Give the clicks between which the liking peaks nine times in ten, rounded outward."""
    found = _estimate(knob.range_clicks, knob.trials)
    return max(0, floor(found.low)), min(knob.range_clicks, ceil(found.high))


def _told(knob: KnobRuns) -> str:
    """Say where the liking peaks, and how much more it is than where the adjuster was first ridden."""
    found, (low, high) = _estimate(knob.range_clicks, knob.trials), _place(knob)
    say = knob.steps.short
    words = f"most likely {say(low)} to {_where(knob.steps, high)}"
    first, best = say(knob.trials[0].position), say(round(found.position))
    if first == best:
        return f"{words}."
    gain = f"{signed(found.gain)} (nine in ten {signed(found.gain_low)} to {signed(found.gain_high)})"
    if found.gain_low <= 0:
        return f"{words}; whether {best} is liked more than {first}, where it began, cannot be told yet: {gain}."
    return f"{words}; {best} liked more than {first}, where it began, by about {gain}."


def _where(steps: Steps, position: int) -> str:
    return steps.short(position) if steps.is_named else f"{steps.short(position)} from closed"


@lru_cache(maxsize=16)
def _estimate(range_clicks: int, trials: tuple[Trial, ...]) -> Estimate:
    """Estimate once per set of runs."""
    from workbench.evidence.search import ClickSearch

    return ClickSearch(range_clicks).estimate(trials)


@lru_cache(maxsize=4)
def _curve(range_clicks: int, trials: tuple[Trial, ...]) -> ResponseCurve | None:
    """Draw the curve once per set of runs; none where too few positions are free of other changes."""
    from workbench.evidence.curve import response_curve

    try:
        return response_curve(range_clicks, trials)
    except NotEnoughData:
        return None


def _answers(knob: KnobRuns) -> tuple[tuple[int, str], ...]:
    by_place: dict[int, Counter[int]] = {}
    for trial in knob.trials:
        if trial.direction is not None:
            by_place.setdefault(trial.position, Counter())[trial.direction] += 1
    return tuple(
        (place, ", ".join(f"{count} {DIRECTION_WORDS[way + 2]}" for way, count in sorted(said.items())))
        for place, said in sorted(by_place.items())
    )
