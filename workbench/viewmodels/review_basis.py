"""What a review rests on: the sessions chosen, what they are judged by, and the runs as the statistics read them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Literal

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import counted, ridden, run_records, told_runs
from workbench.model.errors import NotEnoughData
from workbench.model.responses import RESPONSES
from workbench.model.setting import Setup

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

LAP = "lap_s"
RATING = (1.0, 9.0, 1.0)
ENOUGH_RUNS = 40  # of earlier sessions, to tell how much a rider's answers scatter
TimeOrRating = Literal["log"] | tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Basis:
    """The runs of the sessions chosen, by the response named before they were ridden."""

    sessions: tuple[SessionRecords, ...]
    response: str
    runs: tuple[RunRecord, ...]
    run_ids: tuple[str, ...]  # of the runs, in the same order
    lap_runs: tuple[RunRecord, ...]  # those with a lap time, whatever is judged by,
    liking_runs: tuple[RunRecord, ...]  # those with a liking or compared with the run before,
    direction_runs: tuple[tuple[str, tuple[RunRecord, ...]], ...]  # and by adjuster those with a direction of it
    past_sd: float | None
    is_mixed: bool  # the sessions were to be judged by different responses

    @property
    def scale(self) -> TimeOrRating:
        """The scale of the response."""
        return scale_of(self.response)

    @property
    def is_so_far(self) -> bool:
        """Whether a session shown has not come to its planned end."""
        return any(is_before_end(session) for session in self.sessions)


def scale_of(response: str) -> TimeOrRating:
    """Give the scale of a response."""
    return "log" if response == LAP else RATING


def is_before_end(session: SessionRecords) -> bool:
    """Tell whether a session is open and its planned runs are not all ridden; without a plan, until it is ended."""
    planned = session.session.planned_runs
    return session.session.ended_at is None and (planned is None or len(counted(session)) < planned)


def basis_of(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> Basis:
    """Read the sessions by the response they named; where they named different ones, by the liking."""
    named = {one.session.response for one in sessions if one.runs} & set(RESPONSES) or {"liking"}
    response = next(iter(named)) if len(named) == 1 else "liking"
    told = told_runs(records, sessions, response)
    return Basis(
        sessions,
        response,
        tuple(record for _, record in told),
        tuple(run.id for run, _ in told),
        tuple(run_records(records, sessions, LAP)),
        tuple(run_records(records, sessions, "liking")),
        _directions(records, sessions),
        _past_sd(records, sessions, response),
        is_mixed=len(named) > 1,
    )


def _directions(
    records: RideRecords, sessions: tuple[SessionRecords, ...]
) -> tuple[tuple[str, tuple[RunRecord, ...]], ...]:
    """Give the direction answers by adjuster, as how far from just right they lie: nearer is better."""
    from workbench.evidence.effects import RunRecord

    found: dict[str, list[RunRecord]] = {}
    for ride in ridden(records, sessions):
        run = ride.run
        if run.direction is None or run.direction_of is None:
            continue
        record = RunRecord(
            records.setup(run.setup_id).number,
            -abs(run.direction),
            warmup=run.is_warmup,
            confounded=ride.is_confounded,
            day=ride.day,
            blind=run.is_blind,
        )
        found.setdefault(run.direction_of, []).append(record)
    return tuple((adjuster_id, tuple(runs)) for adjuster_id, runs in found.items())


def setup_numbered(records: RideRecords, setting: object) -> Setup:
    """Give the setup a setting of the statistics stands for."""
    return next(setup for setup in records.setups if setup.number == int(str(setting)))


def _past_sd(records: RideRecords, sessions: tuple[SessionRecords, ...], response: str) -> float | None:
    """Give the scatter of the same rider in earlier sessions that are not among those chosen."""
    chosen = {one.session.id for one in sessions}
    riders = {one.session.rider_id for one in sessions}
    begun = min((one.session.started_at for one in sessions), default="")
    earlier = tuple(
        one
        for one in records.sessions
        if one.session.id not in chosen and one.session.rider_id in riders and one.session.started_at < begun
    )
    if not earlier or len(riders) != 1:
        return None
    found = scatter(tuple(run_records(records, _lately(earlier), response)), scale_of(response))
    return found[0] if found else None


def _lately(sessions: tuple[SessionRecords, ...]) -> tuple[SessionRecords, ...]:
    """Give the latest sessions that have enough runs together: how somebody rated years ago says little."""
    kept: list[SessionRecords] = []
    for one in reversed(sessions):
        if sum(len(counted(other)) for other in kept) >= ENOUGH_RUNS:
            break
        kept.append(one)
    return tuple(reversed(kept))


@lru_cache(maxsize=32)
def judge(runs: tuple[RunRecord, ...], scale: TimeOrRating, past_sd: float | None) -> tuple[ChangeVerdict, ...]:
    """Judge once per set of runs: reading the sheet again costs nothing."""
    from workbench.evidence.effects import judge_changes

    return tuple(judge_changes(list(runs), scale=scale, past_sd=past_sd))


@lru_cache(maxsize=8)
def scatter(runs: tuple[RunRecord, ...], scale: TimeOrRating) -> tuple[float, float, float] | None:
    """Give the rider's run-to-run scatter with its interval; None without a repeat."""
    from workbench.evidence.effects import noise_sd

    try:
        return noise_sd(runs, scale=scale)
    except NotEnoughData:
        return None
