"""Which of the settings ridden suits most, how sure that is, and which run would make it surer at the least cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np

from workbench.evidence.fitted import Fitted, fit
from workbench.evidence.normal import Array
from workbench.evidence.outlook import BESIDES, more_runs
from workbench.evidence.ratings import RunRecord, Scale, key_of, to_points
from workbench.model.errors import NotEnoughData

SMALLEST_FELT = 0.5  # points of a nine-point scale, until repeats say better
WORTH_A_RUN = 0.01  # points that one more run is expected to add to the choice
DRAWS = 4000
SEED = 20  # the same runs give the same answer
STEPS = 41  # of the next answer, when a run not yet ridden is thought through


@dataclass(frozen=True, slots=True)
class Suits:
    """The setting with the highest expected response among those ridden, and what speaks for it.

    gain is over the setting ridden first, already shrunk as every estimate here is. chance_most is that no other
    setting ridden is higher, chance_felt that none is higher by as much as is felt. ride is the setting whose next
    run is expected to add most to the choice, ride_value how much [points]; more_runs the even number of runs, half
    on the setting and half on the runner-up, after which the two are likely told apart (None: not within 12).
    """

    setting: Hashable
    runner_up: Hashable
    runs: int
    among: int
    gain: float
    gain_low: float
    gain_high: float
    chance_most: float
    chance_felt: float
    ride: Hashable
    ride_value: float
    more_runs: int | None


def most_suited(
    runs: Sequence[RunRecord],
    *,
    scale: Scale = (1, 9, 1),
    higher_is_better: bool = True,
    past_sd: float | None = None,
) -> Suits:
    """The setting most likely to suit, of those ridden and rated, or compared with the run before.

    Raises
    ------
    NotEnoughData
        If fewer than two settings were ridden and rated or compared.

    Notes
    -----
    All settings are estimated at once by the session model, whose belief that most changes do little pulls every
    estimate towards the others: that is what takes the luck out of the highest. Chances are shares of 4000 draws from
    the joint posterior, with a fixed seed. A run at setting k is thought through as in the correlated knowledge
    gradient: the expected maximum of the later means less today's maximum.

    References
    ----------
    Frazier, Powell & Dayanik (2009), The knowledge-gradient policy for correlated normal beliefs, INFORMS Journal on
    Computing 21, 599-613.
    """
    kept = tuple(runs)
    counts = Counter(key_of(run.setting) for run in kept if _is_told(run) and not run.warmup)
    keys = [key for key in dict.fromkeys(key_of(run.setting) for run in kept) if counts[key]]
    if len(keys) < 2:
        seen = "Only one setup was ridden and rated" if keys else "No setup was ridden and rated yet"
        raise NotEnoughData(f"{seen}. Ride two, and come back to the first: that is the cheapest start.")
    points = to_points(kept, scale, higher_is_better=higher_is_better, past_sd=past_sd)
    found = fit(kept, points, past_sd=None if past_sd is None else points.inner(past_sd))
    mean, covariance = found.moments()
    columns = found.columns_of(keys)
    worth = mean[columns]
    order = np.argsort(-worth, kind="stable")
    lead, second = int(order[0]), int(order[1])
    draws = _draws(found, columns)
    felt = max(SMALLEST_FELT, found.noise_sd)
    others = np.delete(draws, lead, axis=1).max(axis=1)
    gained = draws[:, lead] - draws[:, 0]
    low, high = np.quantile(gained, [0.05, 0.95])
    values = run_values(found, columns, mean, covariance)
    ride = int(np.argmax(np.round(values, 6)))
    apart = covariance[np.ix_([columns[lead], columns[second]], [columns[lead], columns[second]])]
    spread = float(np.sqrt(apart[0, 0] + apart[1, 1] - 2.0 * apart[0, 1]))
    return Suits(
        setting=keys[lead],
        runner_up=keys[second],
        runs=counts[keys[lead]],
        among=len(keys),
        gain=points.shown(float(worth[lead] - worth[0])),
        gain_low=points.shown(float(low)),
        gain_high=points.shown(float(high)),
        chance_most=float(np.mean(draws[:, lead] >= others)),
        chance_felt=float(np.mean(draws[:, lead] >= others - felt)),
        ride=keys[ride],
        ride_value=float(values[ride]),
        more_runs=more_runs(float(worth[lead] - worth[second]), spread, found.noise_sd, felt),
    )


def run_values(found: Fitted, columns: Sequence[int], mean: Array, covariance: Array) -> Array:
    """Points that one more run at each setting is expected to add to the choice among them."""
    row = found.design.columns[-1] * found.is_trend
    row[0] = 1.0
    noise = BESIDES * found.noise_sd**2
    z = np.linspace(-3.5, 3.5, STEPS)
    weight = np.exp(-0.5 * z * z)
    weight /= weight.sum()
    values = []
    for column in columns:
        run = row.copy()
        run[column] = 1.0
        told = covariance @ run
        moved = told[list(columns)] / np.sqrt(run @ told + noise)
        later = (mean[list(columns)][:, None] + moved[:, None] * z).max(axis=0)
        values.append(max(float(later @ weight) - float(mean[list(columns)].max()), 0.0))
    return np.array(values)


def _is_told(run: RunRecord) -> bool:
    """Whether a run was rated, or called better, the same or worse than the one before."""
    return run.response is not None or run.compared is not None


def _draws(found: Fitted, columns: list[int]) -> Array:
    """Draws of what all settings are worth, each node as often as its weight says."""
    ends = np.round(np.cumsum(found.weight) * DRAWS).astype(int)
    shares = np.diff(np.concatenate([[0], ends]))
    normal = np.random.default_rng(SEED).standard_normal((DRAWS, len(columns)))
    parts, begun = [], 0
    for node, share in enumerate(shares.tolist()):
        covariance = found.covariance[node][np.ix_(columns, columns)]
        root = np.linalg.cholesky(covariance + 1e-9 * np.eye(len(columns)))
        parts.append(found.mean[node, columns] + normal[begun : begun + share] @ root.T)
        begun += share
    return np.concatenate(parts)
