"""Which change helped: effects and verdicts from all runs of a session at once."""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from workbench.evidence.changes import Change, cautions_of, find_changes, is_confounded
from workbench.evidence.joint import JointRow, combine
from workbench.evidence.normal import Array, mixture_below, mixture_quantile
from workbench.evidence.outlook import more_runs
from workbench.evidence.ratings import Points, RunRecord, Scale, key_of, to_points
from workbench.evidence.session_model import Posterior, learn
from workbench.evidence.verdicts import Caution, ChangeVerdict, Verdict, verdict_of
from workbench.model.errors import InputError, NotEnoughData

__all__ = [
    "Caution",
    "ChangeVerdict",
    "JointRow",
    "RunRecord",
    "Verdict",
    "joint_reading",
    "judge_changes",
    "noise_sd",
]

SMALLEST_FELT = 0.5  # points of a nine-point scale, until repeats say better
SEVERAL = 3  # from this many changes on, the largest is one picked after seeing
RATING = (1.0, 9.0, 1.0)
TAILS = (0.05, 0.95)  # of a 90 % interval


@dataclass(frozen=True, slots=True)
class _Reading:
    """A session as the model sees it."""

    runs: tuple[RunRecord, ...]
    points: Points
    posterior: Posterior
    felt: float  # points


def judge_changes(
    runs: Sequence[RunRecord],
    *,
    scale: Scale = (1, 9, 1),
    smallest_felt: float | None = None,
    higher_is_better: bool = True,
    past_sd: float | None = None,
) -> list[ChangeVerdict]:
    """One verdict a change, in the order first ridden.

    Parameters
    ----------
    runs : sequence of RunRecord
        In riding order, warm-ups included; they inform the trend only.
    scale : (low, high, step), "log" or None
        A rating scale; times (always shorter is better); or a plain number.
    smallest_felt : float, optional
        Smallest difference that counts [units of the response; ratio for times]. By default the larger of half a point
        and the repeat sd.
    higher_is_better : bool
        Turn round for ratings and numbers where less is better.
    past_sd : float, optional
        This rider's run-to-run scatter in earlier sessions [units of the response; ratio for times].

    Returns
    -------
    list of ChangeVerdict
        Empty if no two settings were ridden one after the other.

    Raises
    ------
    InputError
        If a response lies outside the scale, a time is not above 0, or a size is not positive.

    Examples
    --------
    >>> runs = [RunRecord(s, r) for s, r in zip("AABBAABB", (4, 4, 7, 7, 4, 5, 7, 8))]
    >>> [(row.before, row.after, row.verdict.name) for row in judge_changes(runs)]
    [('A', 'B', 'HELPED')]
    """
    kept = tuple(runs)
    changes = find_changes(kept)
    if not changes:
        _check_sizes(smallest_felt, past_sd)
        to_points(kept, scale, higher_is_better=higher_is_better, past_sd=past_sd)
        return []
    reading = _read(kept, changes, scale, smallest_felt, higher_is_better, past_sd)
    return _name_the_picked(_judge(changes, reading))


def noise_sd(runs: Sequence[RunRecord], *, scale: Scale = (1, 9, 1)) -> tuple[float, float, float]:
    """This rider's run-to-run scatter with its 90 % interval, from runs repeated at one setting.

    Raises
    ------
    NotEnoughData
        If no setting was ridden twice.
    """
    kept = tuple(runs)
    counted = [run for run in kept if not run.warmup and run.response is not None]
    if len(counted) - len({_hashable(run) for run in counted}) < 1:
        raise NotEnoughData("No setting was ridden twice, so the scatter between runs is not known. Repeat one run.")
    reading = _read(kept, find_changes(kept), scale, None, True, None)
    low, high = reading.posterior.noise_range()
    middle = reading.posterior.noise_sd()
    return tuple(_size(reading.points, value) for value in (middle, low, high))  # type: ignore[return-value]


def joint_reading(
    responses: Mapping[str, Sequence[RunRecord]],
    *,
    scales: Mapping[str, Scale] | None = None,
    lower_is_better: Sequence[str] = (),
    past_sd: Mapping[str, float] | None = None,
) -> tuple[JointRow, ...]:
    """Several responses of the same runs read together, one row a change; the first response named leads.

    A response whose name ends in "_s" is taken as a time unless scales says otherwise; all others as ratings 1..9.
    """
    chosen = {name: (scales or {}).get(name, "log" if name.endswith("_s") else RATING) for name in responses}
    judged = {
        name: judge_changes(
            runs,
            scale=chosen[name],
            higher_is_better=name not in lower_is_better,
            past_sd=(past_sd or {}).get(name),
        )
        for name, runs in responses.items()
    }
    return combine(judged)


def _hashable(run: RunRecord) -> Hashable:
    return key_of(run.setting)


def _check_sizes(smallest_felt: float | None, past_sd: float | None) -> None:
    for name, value in (("smallest_felt", smallest_felt), ("past_sd", past_sd)):
        if value is not None and not (math.isfinite(value) and value > 0):
            raise InputError(name, value, "a finite number above 0")


def _read(
    runs: tuple[RunRecord, ...],
    changes: Sequence[Change],
    scale: Scale,
    smallest_felt: float | None,
    higher_is_better: bool,
    past_sd: float | None,
) -> _Reading:
    _check_sizes(smallest_felt, past_sd)
    points = to_points(runs, scale, higher_is_better=higher_is_better, past_sd=past_sd)
    pairs = [(change.before_key, change.after_key) for change in changes]
    posterior = learn(runs, points, pairs, past_sd=None if past_sd is None else points.inner(past_sd))
    by_default = max(SMALLEST_FELT, posterior.noise_sd())
    felt = by_default if smallest_felt is None else points.inner(smallest_felt)
    return _Reading(runs, points, posterior, felt)


def _size(points: Points, value: float) -> float:
    """A scatter on the inner scale in the units of the response."""
    return abs(points.shown(value))


def _judge(changes: Sequence[Change], reading: _Reading) -> list[ChangeVerdict]:
    return [_row(change, reading, *row) for change, row in zip(changes, _summarise(reading).tolist(), strict=True)]


def _summarise(reading: _Reading) -> Array:
    """Effect, its sd, 90 % interval, chances, and the next run's interval: one row a change, in points."""
    means, sds, weight = reading.posterior.effects()
    effect = np.sum(means * weight, axis=1)
    spread = np.sqrt(np.sum((sds**2 + (means - effect[:, None]) ** 2) * weight, axis=1))
    edge = np.full(effect.shape, reading.felt)
    helped = 1.0 - mixture_below(np.zeros_like(effect), means, sds, weight)
    beyond = 1.0 - mixture_below(edge, means, sds, weight) + mixture_below(-edge, means, sds, weight)
    low, high = (mixture_quantile(share, means, sds, weight) for share in TAILS)
    next_sds = np.sqrt(sds**2 + np.tile(reading.posterior.noise, 2) ** 2)
    next_low, next_high = (mixture_quantile(share, means, next_sds, weight) for share in TAILS)
    return np.stack([effect, spread, low, high, helped, beyond, next_low, next_high], axis=1)


def _row(
    change: Change,
    reading: _Reading,
    effect: float,
    spread: float,
    low: float,
    high: float,
    helped: float,
    felt: float,
    next_low: float,
    next_high: float,
) -> ChangeVerdict:
    points, repeat = reading.points, reading.posterior.noise_sd()
    clear = not is_confounded(change, reading.runs)
    verdict = verdict_of(helped, felt) if clear else Verdict.CANNOT_TELL
    further: int | None = None
    if clear:
        settled = verdict is not Verdict.CANNOT_TELL
        further = 0 if settled else more_runs(effect, spread, repeat, reading.felt)
    return ChangeVerdict(
        before=change.before,
        after=change.after,
        runs_before=len(change.runs_before),
        runs_after=len(change.runs_after),
        effect=points.shown(effect),
        low=points.shown(low),
        high=points.shown(high),
        chance_helped=helped,
        chance_felt=felt,
        verdict=verdict,
        more_runs=further,
        repeat_sd=_size(points, repeat),
        next_run_low=points.shown(next_low),
        next_run_high=points.shown(next_high),
        cautions=cautions_of(change, reading.runs, points),
    )


def _name_the_picked(rows: list[ChangeVerdict]) -> list[ChangeVerdict]:
    """Mark the change that looks largest among several: being picked for it makes it look larger than it is."""
    if len(rows) < SEVERAL:
        return rows
    largest = max(row.effect for row in rows)
    return [
        replace(row, cautions=row.cautions | {Caution.CHOSEN_AFTER_SEEING}) if 0 < row.effect == largest else row
        for row in rows
    ]
