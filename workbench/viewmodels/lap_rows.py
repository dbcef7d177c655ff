"""Laps found on a track beside the runs of a session: which goes to which, in order, and what that changes. Pure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from workbench.actions.ride import SessionRecords
from workbench.exchange.gpx import Lap
from workbench.model.responses import is_lap, lap_text
from workbench.model.ride import Run
from workbench.viewmodels.shown import how_many

NONE = ""  # a lap that is no run
MOST_ROWS = 40  # what is beyond is no session, but a gate at the wrong place


@dataclass(frozen=True, slots=True)
class LapRow:
    """One lap found: when it began, how long it took, and the run it goes to."""

    place: int
    begun: str
    lap: str
    choices: tuple[tuple[str, str], ...]
    run_id: str
    said: str = ""
    lap_s: float = 0.0
    is_news: bool = False  # the run has no time yet, or another


def rows_of(laps: Sequence[Lap], session: SessionRecords, chosen: Mapping[int, str]) -> tuple[LapRow, ...]:
    """Let every lap go to the next run, unless somebody chose: a later run, or none. Runs keep their order."""
    zone = datetime.fromisoformat(session.session.started_at).tzinfo or UTC
    rows, left = [], list(session.runs)
    for place, lap in enumerate(laps[:MOST_ROWS]):
        lap_s = round(lap.lap_s, 1)
        begun = datetime.fromtimestamp(lap.begun_s, zone).strftime("%H:%M:%S")
        if not is_lap(lap_s):
            said = "no time of a run: 5 s to 2 h"
            rows.append(LapRow(place, begun, lap_text(lap_s), ((NONE, "no run"),), NONE, said, lap_s))
            continue
        choices = (*((run.id, _run_words(run)) for run in left), (NONE, "no run"))
        wanted = chosen.get(place, choices[0][0])
        run_id = wanted if wanted in {key for key, _ in choices} else choices[0][0]
        run = next((one for one in left if one.id == run_id), None)
        said, is_news = _beside(run, lap_s)
        rows.append(LapRow(place, begun, lap_text(lap_s), choices, run_id, said, lap_s, is_news))
        if run is not None:
            left = left[left.index(run) + 1 :]
    return tuple(rows)


def news_of(rows: Sequence[LapRow]) -> dict[str, float]:
    """Give the lap times to write, by run."""
    return {row.run_id: row.lap_s for row in rows if row.run_id and row.is_news}


def summary(laps: Sequence[Lap], rows: Sequence[LapRow], session: SessionRecords) -> str:
    """Say how laps and runs go together, and what is left over."""
    given = {row.run_id for row in rows if row.run_id}
    without = [run for run in session.runs if run.id not in given]
    loose = [row for row in rows if not row.run_id]
    said = [f"{how_many(len(laps), 'lap')} found, {how_many(len(session.runs), 'run')} in this session."]
    if len(laps) > MOST_ROWS:
        said.append(f"The first {MOST_ROWS} are shown: so many say that a gate is at the wrong place.")
    if without:
        verb = "gets" if len(without) == 1 else "get"
        said.append(f"{_numbers('Run', [run.number for run in without])} {verb} no time.")
    if loose:
        verb = "goes" if len(loose) == 1 else "go"
        said.append(f"{_numbers('Lap', [row.place + 1 for row in loose])} {verb} to no run.")
    if len(laps) != len(session.runs):
        said.append("Look through the list: which lap goes to which run is told by their order alone.")
    return " ".join(said)


def other_day(laps: Sequence[Lap], session: SessionRecords) -> str:
    """Say that the track is of another day than the session; empty where it is not."""
    started = datetime.fromisoformat(session.session.started_at)
    if not laps:
        return ""
    recorded = datetime.fromtimestamp(laps[0].begun_s, started.tzinfo or UTC)
    if recorded.date() == started.date():
        return ""
    days = f"{recorded.day} {recorded.strftime('%b %Y')}", f"{started.day} {started.strftime('%b %Y')}"
    return f"The track is of {days[0]}, the session of {days[1]}. Is it the right one?"


def _run_words(run: Run) -> str:
    words = f"run {run.number}"
    if run.is_warmup:
        words += ", warm-up"
    return f"{words}, set aside" if run.is_set_aside else words


def _beside(run: Run | None, lap_s: float) -> tuple[str, bool]:
    if run is None:
        return "", False
    if run.lap_s is None:
        return "", True
    if round(run.lap_s, 1) == lap_s:
        return "has it already", False
    return f"takes the place of {lap_text(run.lap_s)}", True


def _numbers(noun: str, numbers: Sequence[int]) -> str:
    """Say a few numbers with their noun: Run 5; Runs 5 and 6."""
    if len(numbers) == 1:
        return f"{noun} {numbers[0]}"
    return f"{noun}s {', '.join(str(one) for one in numbers[:-1])} and {numbers[-1]}"
