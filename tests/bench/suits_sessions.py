"""How often the setup said to suit is as good as any by feel, and how far its gain is overstated, in simulation.

Run from the top of the project: python -m tests.bench.suits_sessions --sessions 200 --seed 1
The peer names the setup with the highest mean rating.
"""

from __future__ import annotations

import argparse
import itertools
from collections import defaultdict

import numpy as np

from tests.bench.simulated_sessions import FAMILIES, draw
from workbench.evidence.suits import most_suited
from workbench.model.errors import NotEnoughData

FELT = 0.5
BINS = (0.0, 0.4, 0.6, 0.8, 0.95, 1.01)


def naive(session) -> str:
    """The setup with the highest mean."""
    ratings = defaultdict(list)
    for run in session.runs:
        if not run.warmup:
            ratings[run.setting].append(run.response)
    return max(ratings, key=lambda name: np.mean(ratings[name]))


def judge(family: str, sessions: int, seed: int) -> None:
    """Print one family."""
    rows = []
    rng = np.random.default_rng(seed)
    for _ in range(sessions):
        session = draw(FAMILIES[family], rng)
        try:
            found = most_suited(session.runs)
        except NotEnoughData:
            continue
        names = list(dict.fromkeys(run.setting for run in session.runs if not run.warmup))
        worth = {name: session.worth[name] for name in names}
        best, first = max(worth.values()), worth[names[0]]
        rows.append(
            (
                found.chance_felt,
                worth[found.setting] >= best - FELT,
                best - worth[found.setting],
                best - worth[naive(session)],
                found.gain - (worth[found.setting] - first),
                found.gain_low <= worth[found.setting] - first <= found.gain_high,
            )
        )
    table = np.array(rows, dtype=float)
    chance, right = table[:, 0], table[:, 1]
    print(f"{family:16s} lost {table[:, 2].mean():.3f} (highest mean: {table[:, 3].mean():.3f})", end="  ")
    print(f"gain overstated {table[:, 4].mean():+.3f}, interval holds {table[:, 5].mean():.2f}", end="  ")
    for low, high in itertools.pairwise(BINS):
        inside = (chance >= low) & (chance < high)
        if inside.sum() > 4:
            print(f"[said {chance[inside].mean():.2f} was {right[inside].mean():.2f}, {int(inside.sum())}]", end=" ")
    print()


def main() -> None:
    """Read the arguments and judge every family."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--sessions", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    told = parser.parse_args()
    for family in FAMILIES:
        judge(family, told.sessions, told.seed)


if __name__ == "__main__":
    main()
