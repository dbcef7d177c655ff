"""How close the click search gets to what simulated riders like, beside the ways people do it by hand.

Run from the top of the project: python -m tests.bench.click_search [--riders 200] [--seed 1] [--families ...]
"""

from __future__ import annotations

import argparse
import math
import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from tests.bench.simulated_riders import Rider, make_rider
from workbench.evidence.search import ClickSearch, Trial

RUNS = 8


@dataclass
class Row:
    """What one search of one rider ended with."""

    near: dict[int, bool]
    loss: float
    covered: bool
    width: float
    settled_at: int | None
    settled_loss: float | None
    claimed: bool
    used_up: bool


def search_with_tool(rider: Rider, *, direction: bool, runs: int = RUNS, most: int = 16) -> Row:
    """Let the tool propose, until the runs are ridden."""
    tool = ClickSearch(rider.range_clicks)
    trials: list[Trial] = []
    near: dict[int, bool] = {}
    loss = width = math.nan
    covered = False
    settled_at, settled_loss, claimed, used_up = None, None, False, False
    while len(trials) < most and (len(trials) < runs or settled_at is None):
        proposal = tool.propose(trials)
        used_up |= proposal.exhausted is not None
        if settled_at is None and proposal.settled:
            settled_at = len(trials)
            estimate = tool.estimate(trials)
            settled_loss = rider.true_loss(round(estimate.position))
            claimed = estimate.gain_low > 0
        trials.append(rider.ride(trials, proposal.position, direction=direction))
        if len(trials) in (3, 6, runs):
            estimate = tool.estimate(trials)
            chosen = round(estimate.position)
            near[len(trials)] = abs(chosen - rider.best) <= 0.1 * rider.range_clicks
            if len(trials) == runs:
                loss = rider.true_loss(chosen)
                covered = estimate.low - 1e-9 <= rider.best <= estimate.high + 1e-9
                width = (estimate.high - estimate.low) / rider.range_clicks
    return Row(near, loss, covered, width, settled_at, settled_loss, claimed, used_up)


def search_by_hand(rider: Rider) -> Row:
    """From fully open in, two clicks at a time, keeping what was rated higher."""
    position, step = rider.range_clicks, -2
    trials = [rider.ride([], position, direction=False)]
    best = trials[0]
    while len(trials) < RUNS:
        position = int(np.clip(best.position + step, 0, rider.range_clicks))
        trials.append(rider.ride(trials, position, direction=False))
        if trials[-1].liking >= best.liking:
            best = trials[-1]
        else:
            step = -step
    return _peer_row(rider, best.position)


def search_by_sweep(rider: Rider) -> Row:
    """Eight even positions and a parabola through the ratings."""
    trials: list[Trial] = []
    for position in np.round(np.linspace(0, rider.range_clicks, RUNS)).astype(int):
        trials.append(rider.ride(trials, int(position), direction=False))
    x, y = [trial.position for trial in trials], [trial.liking for trial in trials]
    a, b, _ = np.polyfit(x, y, 2)
    top = -b / (2 * a) if a < 0 else x[int(np.argmax(y))]
    return _peer_row(rider, int(np.clip(round(top), 0, rider.range_clicks)))


def _peer_row(rider: Rider, chosen: int) -> Row:
    near = abs(chosen - rider.best) <= 0.1 * rider.range_clicks
    return Row({3: near, 6: near, 8: near}, rider.true_loss(chosen), True, 1.0, None, None, False, False)


METHODS: dict[str, Callable[[Rider], Row]] = {
    "tool, direction": lambda rider: search_with_tool(rider, direction=True),
    "tool, liking": lambda rider: search_with_tool(rider, direction=False),
    "by hand": search_by_hand,
    "sweep + parabola": search_by_sweep,
}
CASES = (
    ("plain", ("tool, direction", "tool, liking", "by hand", "sweep + parabola")),
    ("outliers", ("tool, direction", "tool, liking", "by hand", "sweep + parabola")),
    ("random", ("tool, direction",)),
    ("reversed", ("tool, direction",)),
    ("mixture", ("tool, direction",)),
    ("offset", ("tool, direction",)),
    ("needle", ("tool, direction", "tool, liking")),
    ("lag", ("tool, direction", "tool, liking")),
    ("drift", ("tool, direction", "tool, liking")),
    ("broad", ("tool, direction", "tool, liking", "by hand", "sweep + parabola")),
    ("needles", ("tool, direction", "tool, liking")),
    ("hump", ("tool, direction", "tool, liking")),
    ("beyond", ("tool, direction", "tool, liking")),
    ("at an end", ("tool, direction", "tool, liking")),
    ("flat", ("tool, direction", "tool, liking")),
)


def report(family: str, method: str, rows: list[Row], seconds: float) -> str:
    """One line of the table."""
    share = {runs: 100 * np.mean([row.near[runs] for row in rows]) for runs in (3, 6, 8)}
    losses = np.array([row.loss for row in rows])
    settled = [row.settled_at for row in rows if row.settled_at is not None]
    settled_loss = [row.settled_loss for row in rows if row.settled_loss is not None]
    return (
        f"{family:9s} {method:17s} {share[3]:5.0f} {share[6]:4.0f} {share[8]:4.0f}  {losses.mean():6.3f}"
        f" {100 * np.mean(losses > 0.5):5.1f} {100 * np.mean([row.covered for row in rows]):6.1f}"
        f" {100 * np.mean([row.width for row in rows]):6.1f} {100 * len(settled) / len(rows):6.0f}"
        f" {np.mean(settled) if settled else math.nan:6.1f} {min(settled, default=0):3d}"
        f" {np.mean(settled_loss) if settled_loss else math.nan:7.3f}"
        f" {100 * np.mean([row.claimed for row in rows]):6.1f} {100 * np.mean([row.used_up for row in rows]):7.1f}"
        f" {seconds:6.1f}"
    )


def print_times() -> None:
    """Milliseconds of processor time a proposal takes, the least of five."""
    print("\nrange  runs    ms")
    for range_clicks in (12, 20, 60):
        tool = ClickSearch(range_clicks)
        shares = ((0.5, 6, -2), (0.75, 7, -1), (0.9, 8, 0), (0.8, 8, 0), (0.7, 7, -1))
        runs = [Trial(int(share * range_clicks), liking, direction) for share, liking, direction in shares] * 60
        for count in (1, 5, 10, 40, 300):
            taken = []
            for _ in range(5):
                began = time.process_time()
                tool.propose(runs[:count])
                taken.append(1000 * (time.process_time() - began))
            print(f"{range_clicks:5d} {count:5d} {min(taken):5.1f}")


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--riders", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--families", nargs="*", default=[family for family, _ in CASES])
    parser.add_argument("--tool-only", action="store_true")
    options = parser.parse_args()
    print(
        "family    method            near3    6    8    loss >0.5% cover% width% settl%"
        "  at_run min  loss  claim% used_up%  time_s"
    )
    for family, methods in CASES:
        if family not in options.families:
            continue
        for method in methods:
            if options.tool_only and not method.startswith("tool"):
                continue
            rng = np.random.default_rng(options.seed)
            began = time.perf_counter()
            rows = [METHODS[method](make_rider(rng, family)) for _ in range(options.riders)]
            print(report(family, method, rows, time.perf_counter() - began), flush=True)
    print_times()


if __name__ == "__main__":
    main()
