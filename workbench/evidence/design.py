"""The parts a session's feelings are made of, as columns with a prior each."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from workbench.evidence.normal import Array
from workbench.evidence.ratings import Flags, RunRecord, key_of

LEVEL_SD = 4.0
SETTING_SD = 4.0
LEARNING_SD = 0.7
LEARNING_RUNS = (2.5, 8.0)  # how many runs it takes to learn a course, quick and slow
STEADY_SD = 1.2  # a steady rise or fall over ten runs, as a rule
STEEP_SD, STEEP_SHARE = 5.0, 0.07  # and now and then a steep one
FATIGUE_SD = 0.6
FATIGUE_START, FATIGUE_SPAN = 10, 10.0
OPTIMISM_MEAN, OPTIMISM_SD = 0.15, 0.35
WARMUP_SD = 1.0
DAY_SD = 0.7
WANDER_RUNS = 8.0  # how long a wandering level remembers itself
WANDER_PARTS, MOST_WANDER_PARTS = 5, 12
LAG = 0.4  # share of the run before that lingers, for riders with whom it does


@dataclass(frozen=True, slots=True)
class Design:
    """Columns of the linear part, with the prior sd and mean of each and what it stands for.

    lagged holds the same columns when a run still tells something of the setting before; the size of the wander is
    decided by the nodes.
    """

    columns: Array
    lagged: Array
    sd: Array
    mean: Array
    setting_columns: dict[Hashable, int]
    kinds: tuple[str, ...]

    def are(self, *kinds: str) -> Flags:
        """Which columns are of these kinds."""
        return np.array([kind in kinds for kind in self.kinds], dtype=np.bool_)


def is_first_after_change(runs: Sequence[RunRecord], at: int) -> bool:
    """Whether a run's setting differs from the run before on the same day."""
    if at == 0 or runs[at].day != runs[at - 1].day:
        return False
    return key_of(runs[at].setting) != key_of(runs[at - 1].setting)


def build(runs: Sequence[RunRecord]) -> Design:
    """The design of a session: level, settings, learning, fatigue, optimism, warm-up, days, wander."""
    parts: list[tuple[Array, float, float, str]] = [(np.ones(len(runs)), LEVEL_SD, 0.0, "level")]
    keys = [key_of(run.setting) for run in runs]
    names = list(dict.fromkeys(keys))
    parts += [(np.array([float(key == name) for key in keys]), SETTING_SD, 0.0, "setting") for name in names]
    parts += _trends(runs)
    parts.append((_first_after_change(runs), OPTIMISM_SD, OPTIMISM_MEAN, "optimism"))
    parts.append((np.array([float(run.warmup) for run in runs]), WARMUP_SD, 0.0, "warm-up"))
    days = list(dict.fromkeys(run.day for run in runs))
    parts += [(np.array([float(run.day == day) for run in runs]), DAY_SD, 0.0, "day") for day in days if len(days) > 1]
    parts += [(column, 1.0, 0.0, "wander") for column in _wander(tuple(run.day for run in runs))]
    parts = [part for part in parts if np.any(part[0])]
    kinds = tuple(part[3] for part in parts)
    columns = np.stack([part[0] for part in parts], axis=1)
    return Design(
        columns=columns,
        lagged=_lagged(columns, np.array([kind == "setting" for kind in kinds]), runs),
        sd=np.array([part[1] for part in parts]),
        mean=np.array([part[2] for part in parts]),
        setting_columns={name: 1 + index for index, name in enumerate(names)},
        kinds=kinds,
    )


def _lagged(columns: Array, is_setting: Flags, runs: Sequence[RunRecord]) -> Array:
    """Setting columns that reach their full weight only over a few runs, as after a slow-footed rider or damper."""
    lagged = columns.copy()
    for i in range(1, len(runs)):
        if runs[i].day == runs[i - 1].day:
            lagged[i, is_setting] = (1.0 - LAG) * columns[i, is_setting] + LAG * lagged[i - 1, is_setting]
    return lagged


def _first_after_change(runs: Sequence[RunRecord]) -> Array:
    return np.array([is_first_after_change(runs, at) for at in range(len(runs))], dtype=np.float64)


def _run_of_day(runs: Sequence[RunRecord]) -> Array:
    seen: dict[int, int] = {}
    order = []
    for run in runs:
        order.append(seen.get(run.day, 0))
        seen[run.day] = order[-1] + 1
    return np.array(order, dtype=np.float64)


def _trends(runs: Sequence[RunRecord]) -> list[tuple[Array, float, float, str]]:
    of_day = _run_of_day(runs)
    amount = np.array([1.0 if run.day == runs[0].day else 0.5 for run in runs])  # a known course is relearnt faster
    learning = [amount * (np.exp(-of_day / tau) - 1.0) for tau in LEARNING_RUNS]
    tired = np.maximum(0.0, of_day - FATIGUE_START) / FATIGUE_SPAN
    parts = [(column, LEARNING_SD, 0.0, "learning") for column in learning]
    return [*parts, (tired, FATIGUE_SD, 0.0, "fatigue"), (of_day / 10.0, STEEP_SD, 0.0, "steady")]


@lru_cache(maxsize=4)
def _wander(run_days: tuple[int, ...]) -> tuple[Array, ...]:
    """The leading parts of a level that wanders and slowly forgets, with unit variance per run.

    Only the days matter, so that ratings and lap times of the same runs share them. Each day is a block of its own.
    Where parts of several days weigh the same and there is room for some of them only, the latest days have theirs.
    """
    run_of, days = np.arange(len(run_days), dtype=np.float64), np.array(run_days)
    parts: list[tuple[float, int, Array]] = []
    for order, day in enumerate(dict.fromkeys(run_days)):
        here = np.flatnonzero(days == day)
        gaps = np.abs(run_of[here, None] - run_of[None, here])
        values, vectors = np.linalg.eigh(np.exp(-gaps / WANDER_RUNS))
        for value, vector in zip(values.tolist(), vectors.T, strict=True):
            column = np.zeros(len(run_days))
            column[here] = vector * np.sqrt(max(value, 0.0))
            parts.append((round(value, 9), order, column))
    most = min(MOST_WANDER_PARTS, max(WANDER_PARTS, 2 * len(set(run_days))))
    leading = sorted(parts, key=lambda part: part[:2], reverse=True)[:most]
    return tuple(column for value, _, column in leading if value > 0.02 * len(run_days) / 40)
