"""Service by riding hours or months: how many hours, where they come from, and what falls due.

Intervals, shares and the break-in are common practice, no source; what the maker's manual says takes their place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from workbench.model.parts import BikeParts
from workbench.model.reading import how_many
from workbench.model.ride import Run
from workbench.model.sag import SagMeasurement
from workbench.model.service import RidingHours, ServicePart
from workbench.model.unit import Generation

HOUR_SOURCES = {"stated": "as the rider says", "log": "from a ride log or computer"}
INTERVAL_ORIGINS = {"maker": "the maker's manual", "common_practice": "common practice, no source"}
SOON = 0.8  # of an interval
BREAK_IN_HOURS = 8.0
BROKEN_IN_BY = frozenset({"new", "service", "oil", "retune", "spring", "exchange"})
DAYS_A_MONTH = 30.44
LATEST = "9999-12-31T00:00:00+00:00"  # for who does not say which day it is: all that was told and ridden counts


@dataclass(frozen=True, slots=True)
class WearPart:
    """A part that is serviced. Those with a ``reason`` begin new hardware when they are."""

    part: str
    end: str
    title: str
    hours: float
    months: int | None = None
    reason: str = ""
    for_spring: tuple[str, ...] = ()


WEAR_PARTS = (
    WearPart("lowers", "front", "Fork lower legs", 50.0, None, "service"),
    WearPart("air", "front", "Fork air spring", 100.0, 12, "service", ("air", "air_coil")),
    WearPart("damper", "front", "Fork damper oil", 150.0, 12, "oil"),
    WearPart("air", "rear", "Shock air can", 50.0, None, "service", ("air", "air_coil")),
    WearPart("damper", "rear", "Shock damper oil", 125.0, 12, "oil"),
    WearPart("pivots", "rear", "Frame pivots and eyes", 150.0, 12),
    WearPart("headset", "frame", "Headset bearings", 200.0, 12),
)


@dataclass(frozen=True, slots=True)
class Hours:
    """Hours ridden, and where the figure comes from in words."""

    hours: float
    told: RidingHours | None
    ridden_h: float = 0.0
    runs: int = 0


@dataclass(frozen=True, slots=True)
class Wear:
    """How one part stands in its interval."""

    part: WearPart
    kept: ServicePart
    used_hours: float | None  # None: not known when it was last serviced
    used_months: float | None
    state: str  # "unknown", "fine", "soon", "due"

    @property
    def code(self) -> str:
        """The code of the item it becomes in a check-in."""
        return f"service/{self.part.part}/{self.part.end}"


def part_title(part: str, end: str) -> str:
    """Name a part that is serviced."""
    return next((one.title for one in WEAR_PARTS if (one.part, one.end) == (part, end)), part)


def wear_parts_of(parts: BikeParts) -> tuple[WearPart, ...]:
    """List the parts of this bike that are serviced."""
    fitting = []
    for one in WEAR_PARTS:
        unit = parts.unit(one.end)
        if one.end != "frame" and unit is None:
            continue
        if not one.for_spring or (unit is not None and unit.spring in one.for_spring):
            fitting.append(one)
    return tuple(fitting)


def run_hours(run: Run, typical_s: float | None) -> float:
    """Give the hours of one run: its lap time, else what the course usually takes, else nothing."""
    seconds = run.lap_s if run.lap_s is not None else typical_s
    return (seconds or 0.0) / 3600.0


def hours_at(
    moment: str, readings: Sequence[RidingHours], runs: Sequence[Run], typical_s: dict[str, float | None]
) -> Hours:
    """Give the hours ridden by a moment: the newest figure told by then, and the runs here since.

    ``typical_s`` gives what the course of each session usually takes. Before the first figure, that one holds:
    nobody knows better.
    """
    now = datetime.fromisoformat(moment)
    ordered = sorted(readings, key=lambda one: datetime.fromisoformat(one.at))
    told = [one for one in ordered if datetime.fromisoformat(one.at) <= now]
    base = told[-1] if told else None
    since = datetime.fromisoformat(base.at) if base else None
    counted = [
        run
        for run in runs
        if run.ridden_at
        and datetime.fromisoformat(run.ridden_at) <= now
        and (since is None or datetime.fromisoformat(run.ridden_at) > since)
    ]
    ridden = sum(run_hours(run, typical_s.get(run.session_id)) for run in counted)
    if base is None and ordered:
        return Hours(ordered[0].hours, ordered[0])
    return Hours((base.hours if base else 0.0) + ridden, base, ridden, len(counted))


def hours_words(hours: Hours, told_on: str) -> str:
    """Say where a figure of hours comes from."""
    runs = f"{hours.ridden_h:.1f}\u2009h from {how_many(hours.runs, 'run')} ridden here" if hours.runs else ""
    if hours.told is None:
        return f"Only {runs}; the time before is not known." if runs else "Not known yet: ask, or read the ride log."
    said = f"{hours.told.hours:g}\u2009h {HOUR_SOURCES.get(hours.told.source, hours.told.source)} on {told_on}"
    return f"{said}, {runs} since." if runs else f"{said}."


def wear_of(part: WearPart, kept: ServicePart, hours: Hours, now: str) -> Wear:
    """Judge one part: due by hours or by months, whichever comes first; by hours alone if no day is given."""
    used_h = hours.hours - kept.last_hours if kept.last_hours is not None else None
    used_m = None
    if kept.last_at is not None and now != LATEST:
        days = (datetime.fromisoformat(now) - datetime.fromisoformat(kept.last_at)) / timedelta(days=1)
        used_m = days / DAYS_A_MONTH
    shares = [
        used / interval
        for used, interval in ((used_h, kept.interval_hours), (used_m, kept.interval_months))
        if used is not None and interval
    ]
    if not shares:
        return Wear(part, kept, used_h, used_m, "unknown")
    share = max(shares)
    return Wear(part, kept, used_h, used_m, "due" if share >= 1.0 else "soon" if share >= SOON else "fine")


def needs_sag_again(
    generation: Generation | None,
    sag: Sequence[SagMeasurement],
    now_hours: float,
    started_hours: float,
    sag_hours: dict[str, float],
    *,
    is_new: bool = False,
) -> bool:
    """Tell whether a new or serviced unit has been ridden in, and its sag was last measured before that.

    ``sag_hours`` gives the hours at each measuring. ``is_new`` says that first hardware was new when it came.
    """
    if generation is None or generation.reason not in BROKEN_IN_BY or (generation.number == 1 and not is_new):
        return False
    if now_hours - started_hours < BREAK_IN_HOURS:
        return False
    kept = [one for one in sag if one.is_kept and one.generation_id == generation.id]
    return bool(kept) and all(sag_hours[one.id] - started_hours < BREAK_IN_HOURS for one in kept)
