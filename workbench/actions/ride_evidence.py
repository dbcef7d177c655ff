"""From what was ridden to what the statistics read: runs along one adjuster, and runs by setup."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.setups import Values
from workbench.model.adjuster import Adjuster, adjuster_words, steps_text
from workbench.model.item_facts import maker_limits
from workbench.model.ride import Run
from workbench.model.setting import GAUGE_KPA, Item, changes_between, free_changes, without_removed
from workbench.model.steps import values_now
from workbench.model.unit import Unit

if TYPE_CHECKING:
    from workbench.evidence.effects import RunRecord
    from workbench.evidence.plan import KnobRuns, SpringRuns
    from workbench.evidence.search import Trial
    from workbench.evidence.search_words import Steps

WORKABLE = ("rebound", "compression")


def knob_runs(records: RideRecords) -> tuple[KnobRuns, ...]:
    """Give every counted adjuster with the runs in which it, and nothing else, stood elsewhere than now."""
    from workbench.evidence.plan import KnobRuns

    now = values_now(records.parts)
    knobs = []
    for adjuster in records.parts.adjusters:
        count = records.parts.range_of(adjuster.id)
        position = now.get((Item.ADJUSTER, adjuster.id))
        if adjuster.kind not in WORKABLE or count is None or position is None or count.steps < 1:
            continue
        knobs.append(
            KnobRuns(
                key=adjuster.id,
                name=adjuster_words(adjuster),
                end=records.parts.unit_of(adjuster).end,
                kind=adjuster.kind,
                speed=adjuster.speed,
                range_clicks=count.steps,
                current=min(round(position), count.steps),
                trials=trials_of(records, adjuster, now, count.steps),
                steps=_steps_of(adjuster),
            )
        )
    return tuple(knobs)


def _steps_of(adjuster: Adjuster) -> Steps:
    """Say positions in clicks, in turns, or by their names, as the adjuster is counted."""
    from workbench.evidence.search_words import CLICKS, Steps

    if adjuster.counting == "clicks":
        return CLICKS
    say = partial(steps_text, adjuster)
    if adjuster.counting == "positions":
        return Steps(say, say, say, "", is_named=True)
    return Steps(say, say, lambda quarters: f"{quarters / 4:g}", "turns from closed")


def trials_of(records: RideRecords, adjuster: Adjuster, now: Values, steps: int) -> tuple[Trial, ...]:
    """Give the runs that differ from the bike as it stands in this adjuster alone, in riding order.

    Positions counted on other hardware are another thing, so such runs are left out. A recount may find a detent less
    at the open end: what stood there stands at the end of the range now.
    """
    from workbench.evidence.search import Trial

    trials = []
    last = None
    for one in ridden(records, records.sessions):
        run, values = one.run, records.values[one.run.setup_id]
        position = values.get((Item.ADJUSTER.value, adjuster.id))
        others = changes_between(without_removed(values, now), now)
        if position is None or any(change.subject_id != adjuster.id for change in others):
            continue
        trials.append(
            Trial(
                min(round(position), steps),
                liking=run.liking,
                direction=run.direction if run.direction_of == adjuster.id else None,
                lap_s=run.lap_s,
                compared=run.compared if one.before is last else None,
                day=one.day,
                warmup=run.is_warmup,
                confounded=run.is_confounded,
                blind=run.is_blind,
            )
        )
        last = run
    return tuple(trials)


def spring_runs(records: RideRecords) -> tuple[SpringRuns, ...]:
    """Give what the runs at the present spring settings used of each end's travel."""
    from workbench.evidence.plan import SpringRuns

    now = values_now(records.parts)
    found = []
    for unit in records.parts.units:
        if not unit.travel_mm:
            continue
        runs = [
            run for session in records.sessions for run in counted(session) if _same_spring(records, run, unit, now)
        ]
        shares, contacts = [], []
        for run in runs:
            used = run.travel_front_mm if unit.end == "front" else run.travel_rear_mm
            hits = run.bottom_outs_front if unit.end == "front" else run.bottom_outs_rear
            if used is not None:
                shares.append(min(used / unit.travel_mm, 1.0))
            if hits is not None:
                contacts.append(hits)
        found.append(
            SpringRuns(
                unit.id,
                unit.end,
                tuple(shares),
                tuple(contacts),
                rebound_sane=_rebound_sane(records, unit, runs),
                limited=_limited(now, unit),
            )
        )
    return tuple(found)


def _limited(now: Values, unit: Unit) -> str | None:
    """Say at which limit of the maker an air spring stands: its pressure, and its spacers in the same direction."""
    pressure = now.get((Item.PRESSURE, unit.id))
    if pressure is None:
        return None
    lowest, highest = maker_limits(Item.PRESSURE, unit)
    spacers = now.get((Item.SPACERS, unit.id)) or 0.0
    most_spacers = maker_limits(Item.SPACERS, unit)[1]
    if lowest is not None and pressure < lowest + GAUGE_KPA and spacers == 0:
        return "minimum"
    is_full = most_spacers is not None and spacers >= most_spacers
    if highest is not None and pressure > highest - GAUGE_KPA and is_full:
        return "maximum"
    return None


def _same_spring(records: RideRecords, run: Run, unit: Unit, now: Values) -> bool:
    generation = records.parts.generation(unit.id)
    if generation is not None and run.ridden_at < generation.started_at:
        return False
    values = records.values[run.setup_id]
    return not any(
        change.subject_id == unit.id and change.item != Item.ADJUSTER for change in changes_between(values, now)
    )


def _rebound_sane(records: RideRecords, unit: Unit, runs: list[Run]) -> bool | None:
    """Judge by the latest answer about a rebound adjuster of this end: not far too closed, not far too open."""
    rebounds = {one.id for one in records.parts.adjusters_of(unit.id) if one.kind == "rebound"}
    answers = [run.direction for run in runs if run.direction_of in rebounds and run.direction is not None]
    return abs(answers[-1]) < 2 if answers else None


def counted(session: SessionRecords) -> tuple[Run, ...]:
    """Give the runs that count: those not set aside."""
    return tuple(run for run in session.runs if not run.is_set_aside)


def run_records(
    records: RideRecords, sessions: tuple[SessionRecords, ...], response: str = "liking"
) -> list[RunRecord]:
    """Give the counted runs of some sessions by setup number, with one response; runs without it are left out.

    Better or worse than the run before is about the liking, and goes with it.
    """
    return [record for _, record in told_runs(records, sessions, response)]


def told_runs(records: RideRecords, sessions: tuple[SessionRecords, ...], response: str) -> list[tuple[Run, RunRecord]]:
    """Give the same runs, each with its own record."""
    from workbench.evidence.effects import RunRecord

    found: list[tuple[Run, RunRecord]] = []
    last = None
    for one in ridden(records, sessions):
        run, value = one.run, getattr(one.run, response)
        compared = run.compared if response == "liking" and one.before is last else None
        if value is None and compared is None:
            continue
        record = RunRecord(
            records.setup(run.setup_id).number,
            value,
            warmup=run.is_warmup,
            confounded=one.is_confounded,
            day=one.day,
            blind=run.is_blind,
            compared=compared,
        )
        found.append((run, record))
        last = run
    return found


@dataclass(frozen=True, slots=True)
class Ridden:
    """One counted run among the others."""

    run: Run
    day: int
    before: Run | None  # the run directly before it that day, which "better" or "worse" speaks of
    is_confounded: bool  # whether more than one thing differs from the rated run before


def ridden(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> Iterator[Ridden]:
    """Give the counted runs in riding order, each judged by the counted runs before it as they count today."""
    moved = _Moved(records)
    rated: Run | None = None
    for day, session in enumerate(sessions):
        before: Run | None = None
        for run in session.runs:
            if not run.is_set_aside:
                several = rated is not None and not run.is_warmup and moved(rated, run) > 1
                yield Ridden(run, day, before, run.is_confounded or several)
                rated = rated if run.is_warmup else run
            before = run


class _Moved:
    """Counts the free changes between the setups of two runs; of many runs on a few setups, once a pair."""

    def __init__(self, records: RideRecords) -> None:
        self._values = records.values
        self._known: dict[tuple[str, str], int] = {}

    def __call__(self, earlier: Run, later: Run) -> int:
        pair = (earlier.setup_id, later.setup_id)
        if pair not in self._known:
            before, after = (self._values[setup_id] for setup_id in pair)
            self._known[pair] = free_changes(changes_between(before, after))
        return self._known[pair]
