"""Every run in the order ridden, the changes between them, and on request the trend beneath."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import exp
from statistics import fmean, median
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.model.errors import NotEnoughData
from workbench.model.responses import lap_text
from workbench.model.ride import Run
from workbench.model.setting import Item, changes_between
from workbench.viewmodels.review_basis import LAP, Basis, TimeOrRating
from workbench.viewmodels.review_data import LapPoint, Period, RunPoint, Timeline, TrendPoint
from workbench.viewmodels.review_runs import RunWords
from workbench.viewmodels.shown import how_many, short_date

if TYPE_CHECKING:
    from workbench.evidence.effects import RunRecord
    from workbench.evidence.trend import Trend

GAP = 1.0  # empty places between two sessions on the timeline
TREND_SAID = (
    "The dashed line is the trend: getting to know the course, tiring, a rise or fall through the day. The marks stand"
    " where they would without it; a thin line leads back to the rating as given."
)


def timeline_of(
    records: RideRecords, basis: Basis, runs: tuple[RunWords, ...] = (), *, with_trend: bool = False
) -> Timeline:
    """Place every rated run, with what is read off it; a period is a stretch on one setup within a session."""
    read = {one.run_id: one.read for one in runs}
    places, periods, starts = _lay_out(records, basis.sessions)
    points, laps = [], []
    for session in basis.sessions:
        marks = _marks(records, session)
        for run in session.runs:
            mark = marks[run.setup_id]
            if run.liking is not None:
                points.append(replace(_point(records, run, places[run.id], mark), read=read.get(run.id, "")))
            if run.lap_s is not None:
                laps.append(replace(_lap(records, run, places[run.id], mark), read=read.get(run.id, "")))
    trend, said = _trend_of(basis, places) if with_trend else ((), "")
    return Timeline(
        tuple(points),
        periods,
        starts,
        f"Liking of {how_many(len(points), 'run')} in the order ridden",
        tuple(laps),
        _laps_said(laps),
        trend,
        basis.response == LAP,
        said,
    )


def session_words(session: SessionRecords) -> str:
    """Name a session: day, course, runs."""
    runs = how_many(len(session.runs), "blind run" if session.session.is_blind else "run")
    return f"{short_date(session.session.started_at)}, {session.course.name}, {runs}"


def _lay_out(
    records: RideRecords, sessions: tuple[SessionRecords, ...]
) -> tuple[dict[str, float], tuple[Period, ...], tuple[tuple[float, str], ...]]:
    places: dict[str, float] = {}
    periods: list[Period] = []
    starts = []
    place = 1.0
    for session in sessions:
        starts.append((place, session_words(session)))
        for run in session.runs:
            setup = records.setup(run.setup_id)
            if periods and periods[-1].setup_id == run.setup_id and periods[-1].last == place - 1:
                last = periods.pop()
                periods.append(Period(last.first, place, last.setup_id, last.label, last.is_confounded))
            else:
                periods.append(Period(place, place, run.setup_id, f"no. {setup.number}", run.is_confounded))
            places[run.id] = place
            place += 1
        place += GAP
    return places, tuple(periods), tuple(starts)


def _point(records: RideRecords, run: Run, place: float, mark: str) -> RunPoint:
    return RunPoint(
        run.id,
        run.setup_id,
        place,
        float(run.liking or 0),
        mark,
        _said(records, run, f"liking {run.liking}"),
        run.is_warmup,
        run.is_set_aside,
        run.is_blind,
    )


def _lap(records: RideRecords, run: Run, place: float, mark: str) -> LapPoint:
    lap_s = float(run.lap_s or 0)
    said = _said(records, run, f"lap {lap_text(lap_s)}")
    return LapPoint(run.id, run.setup_id, place, lap_s, mark, said, run.is_warmup, run.is_set_aside, run.is_blind)


def _said(records: RideRecords, run: Run, told: str) -> str:
    words = [f"run {run.number}", f"setup no. {records.setup(run.setup_id).number}", told]
    if run.is_warmup:
        words.append("warm-up")
    if run.is_set_aside:
        words.append(f"set aside: {run.set_aside_reason}")
    return ", ".join(words)


def _marks(records: RideRecords, session: SessionRecords) -> dict[str, str]:
    """Say of each setup ridden how its runs are marked."""
    return {one: _mark(records, one, session.runs[0].setup_id) for one in {run.setup_id for run in session.runs}}


def _mark(records: RideRecords, setup_id: str, first_setup: str) -> str:
    """Say how a setup differs from the first one of its session: nothing, clicks more open or closed, or other."""
    changes = changes_between(records.values[first_setup], records.values[setup_id])
    if not changes:
        return "baseline"
    if len(changes) == 1 and changes[0].item == Item.ADJUSTER and None not in (changes[0].before, changes[0].after):
        return "open" if (changes[0].after or 0) > (changes[0].before or 0) else "closed"
    return "other"


def _laps_said(laps: list[LapPoint]) -> str:
    counted = [lap.lap_s for lap in laps if not (lap.is_warmup or lap.is_set_aside)]
    if not counted:
        return ""
    return f"{how_many(len(counted), 'lap time')}, middle {lap_text(median(counted))}; equal steps are equal shares"


@lru_cache(maxsize=8)
def _trend(runs: tuple[RunRecord, ...], scale: TimeOrRating, past_sd: float | None) -> Trend | str:
    """Ask for the trend once per set of runs; a sentence where there is too little."""
    from workbench.evidence.trend import session_trend

    try:
        return session_trend(runs, scale=scale, past_sd=past_sd)
    except NotEnoughData as error:
        return str(error)


def _trend_of(basis: Basis, places: dict[str, float]) -> tuple[tuple[tuple[TrendPoint, ...], ...], str]:
    """Lay the trend over the response: a line a session, at the height of the counted runs."""
    trend = _trend(basis.runs, basis.scale, basis.past_sd)
    if isinstance(trend, str):
        return (), trend
    counted = [run.response for run in basis.runs if not run.warmup and run.response is not None]
    level = median(counted) if basis.response == LAP else fmean(counted)
    lines: dict[int, list[TrendPoint]] = {}
    for at, (run, run_id) in enumerate(zip(basis.runs, basis.run_ids, strict=True)):
        if run.response is None:
            continue
        rise = (trend.middle[at], trend.low[at], trend.high[at])
        response = float(run.response)
        if basis.response == LAP:
            drawn, without = [level * exp(-one) for one in rise], response * exp(rise[0])
        else:
            drawn, without = [level + one for one in rise], response - rise[0]
        low, high = sorted(drawn[1:])
        lines.setdefault(run.day, []).append(TrendPoint(run_id, places[run_id], drawn[0], low, high, without))
    return tuple(tuple(line) for line in lines.values()), TREND_SAID
