"""Kills a writing program over and over and looks at what is left: `python -m tests.bench.kill_loop [ROUNDS]`."""

from __future__ import annotations

import random
import sys
import tempfile
from pathlib import Path

from tests.library.killing import kill_one, survivors


def main(rounds: int) -> None:
    """Kills at random moments, also while the file is being made; stops at the first loss."""
    chance = random.Random(1)
    with tempfile.TemporaryDirectory() as folder:
        for number in range(rounds):
            path = Path(folder) / f"{number // 10}.trailbench"
            early = number % 10 == 0
            last = kill_one(path, 0 if early else chance.randint(1, 40), chance.uniform(0.2, 0.6) if early else 0.0)
            left = survivors(path, last)
            print(f"round {number + 1}: last word “{last}”, {left} whole bikes")
    print(f"{rounds} kills, nothing lost, nothing half")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
