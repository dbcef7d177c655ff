"""How well changes are judged on simulated sessions, beside a ten-line ridge regression.

Run from the top of the project: python -m tests.bench.effects_sessions --sessions 300 --seed 1
"""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from tests.bench.simulated_sessions import FAMILIES, Session, draw
from workbench.evidence.effects import Verdict, judge_changes


@dataclass(frozen=True)
class Judged:
    """One change as a method reads it, beside the truth."""

    session: int
    truth: float
    effect: float
    low: float
    high: float
    chance: float
    verdict: str


def ours(session: Session) -> list[tuple]:
    """Trailbench's own reading."""
    rows = judge_changes(session.runs)
    return [(r.before, r.after, r.effect, r.low, r.high, r.chance_helped, r.verdict.name) for r in rows]


def ridge(session: Session) -> list[tuple]:
    """The peer: ridge regression on settings and a straight trend, with t intervals."""
    from scipy import stats

    runs = [run for run in session.runs if not run.warmup]
    y = np.array([run.response for run in runs])
    names = list(dict.fromkeys(run.setting for run in runs))
    x = np.array([[1.0, i / len(runs), *(float(run.setting == name) for name in names)] for i, run in enumerate(runs)])
    penalty = np.diag([0.0, 0.0, *[0.2] * len(names)])
    inverse = np.linalg.inv(x.T @ x + penalty)
    beta = inverse @ x.T @ y
    freedom = max(1, len(y) - len(names) - 1)
    variance = np.sum((y - x @ beta) ** 2) / freedom
    pairs = dict.fromkeys(frozenset((a.setting, b.setting)) for a, b in pairwise(runs) if a.setting != b.setting)
    found = []
    for pair in pairs:
        before, after = sorted(pair, key=names.index)
        contrast = np.zeros(len(beta))
        contrast[2 + names.index(after)], contrast[2 + names.index(before)] = 1.0, -1.0
        effect = contrast @ beta
        sd = max(1e-6, np.sqrt(variance * contrast @ inverse @ contrast))
        chance, reach = stats.t.cdf(effect / sd, freedom), stats.t.ppf(0.95, freedom) * sd
        verdict = "HELPED" if chance >= 0.95 else "HURT" if chance <= 0.05 else "CANNOT_TELL"
        found.append((before, after, effect, effect - reach, effect + reach, chance, verdict))
    return found


def judge_all(method, sessions: list[Session]) -> list[Judged]:
    """Every change of every session."""
    return [
        Judged(index, session.worth[after] - session.worth[before], *rest)
        for index, session in enumerate(sessions)
        for before, after, *rest in method(session)
    ]


def measure(rows: list[Judged]) -> dict[str, float]:
    """The figures that matter, from all rows of a family."""
    truth, effect = np.array([r.truth for r in rows]), np.array([r.effect for r in rows])
    low, high = np.array([r.low for r in rows]), np.array([r.high for r in rows])
    chance = np.array([r.chance for r in rows])
    helped = np.array([r.verdict == "HELPED" for r in rows])
    unfelt = np.array([r.verdict == Verdict.NOT_FELT.name for r in rows])
    which = np.array([r.session for r in rows])
    inside, zero, big = (low <= truth) & (truth <= high), truth == 0, np.abs(truth) >= 2
    mid, leaning = truth == 1.5, chance >= 0.8
    tops = [np.flatnonzero(which == s)[np.argmax(effect[which == s])] for s in np.unique(which)]
    bins = np.clip((chance * 10).astype(int), 0, 9)
    came = np.where(zero, 0.5, truth > 0)
    off = sum(abs(chance[bins == b].mean() - came[bins == b].mean()) * (bins == b).mean() for b in np.unique(bins))
    return {
        "cover": inside.mean(),
        "cover big": _share(inside, big),
        "width": (high - low).mean(),
        "rmse": float(np.sqrt(np.mean((effect - truth) ** 2))),
        "false helped": _share(helped, zero),
        "wrong of helped": _share(truth <= 0, helped),
        "1.5 called": _share(helped, mid),
        "1.5 probably": _share(leaning, mid),
        "wrong of probably": _share(truth <= 0, leaning),
        "sessions helped": np.mean([helped[which == s].any() for s in np.unique(which)]),
        "top overstated": np.mean([effect[t] - truth[t] for t in tops]),
        "zero not felt": _share(unfelt, zero),
        "not felt wrong": _share(np.abs(truth) >= 1, unfelt),
        "calibration": off,
    }


def _share(event: np.ndarray, among: np.ndarray) -> float:
    return float(event[among].mean()) if among.any() else float("nan")


def main() -> None:
    """Print one line a family and method."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--sessions", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--family", action="append", choices=sorted(FAMILIES))
    parser.add_argument("--no-peer", action="store_true")
    wish = parser.parse_args()
    header = None
    for name in wish.family or FAMILIES:
        rng = np.random.default_rng([wish.seed, list(FAMILIES).index(name)])
        sessions = [draw(FAMILIES[name], rng) for _ in range(wish.sessions)]
        for method in (ours,) if wish.no_peer else (ours, ridge):
            start = time.perf_counter()
            figures = measure(judge_all(method, sessions))
            spent = 1000 * (time.perf_counter() - start) / len(sessions)
            if header is None:
                header = list(figures)
                print(f"{'family':16}{'method':7}" + "".join(f"{h.replace(' ', '_'):>18}" for h in header) + "     ms")
            print(
                f"{name:16}{method.__name__:7}" + "".join(f"{figures[h]:18.3f}" for h in header) + f"{spent:7.1f}",
                flush=True,
            )


if __name__ == "__main__":
    main()
