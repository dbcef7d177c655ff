"""Whether the stated number of further runs settles a change as often as stated.

Run from the top of the project: python -m tests.bench.more_runs --sessions 200 --seed 1
"""

from __future__ import annotations

import argparse
from collections import defaultdict

import numpy as np

from tests.bench.simulated_sessions import FAMILIES, draw
from workbench.evidence.effects import Verdict, judge_changes
from workbench.evidence.outlook import ASSURANCE


def main() -> None:
    """Print, for each number of runs stated, how often they settled the change."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--sessions", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--family", default="plain", choices=sorted(FAMILIES))
    wish = parser.parse_args()
    rng = np.random.default_rng(wish.seed)
    settled: dict[int, list[bool]] = defaultdict(list)
    not_worth = total = 0
    for _ in range(wish.sessions):
        session = draw(FAMILIES[wish.family], rng)
        waiting = [row for row in judge_changes(session.runs) if row.verdict is Verdict.CANNOT_TELL]
        total += len(waiting)
        not_worth += sum(row.more_runs is None for row in waiting)
        stated = [row for row in waiting if row.more_runs]
        if not stated:
            continue
        row = stated[int(rng.integers(len(stated)))]
        pair = [row.after, row.before] if session.order[-1] == row.before else [row.before, row.after]
        later = judge_changes(session.continued((pair * row.more_runs)[: row.more_runs]).runs)
        same = next(r for r in later if {r.before, r.after} == {row.before, row.after})
        settled[row.more_runs].append(same.verdict is not Verdict.CANNOT_TELL)
    print(f"{total} open changes, {not_worth} not worth more runs; stated assurance {ASSURANCE}")
    for runs, outcomes in sorted(settled.items()):
        print(f"{runs:3d} more runs: settled {np.mean(outcomes):.2f} of {len(outcomes)}")
    print(f"all: {np.mean([done for outcomes in settled.values() for done in outcomes]):.2f}")


if __name__ == "__main__":
    main()
