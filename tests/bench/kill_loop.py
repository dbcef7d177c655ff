"""Kills a writing program over and over and looks at what is left.

    python -m tests.bench.kill_loop [ROUNDS] [SEED]

One round in a hundred is a program started from nothing. The others are forked from this one, which has no second
thread and no library open at that moment: as real a process and as real a kill, at a fraction of the cost. Each file is
killed ten times over, the first time while it is being made. Stops at the first loss, and says how many rounds it came
to. A kill takes the process and leaves the machine: what a power cut does to a disk is not shown by this.
"""

from __future__ import annotations

import os
import random
import signal
import sys
import tempfile
import time
from collections import Counter
from contextlib import suppress
from pathlib import Path

from tests.library.killing import kill_one, survivors, write_for_ever

KILLS_A_FILE = 10
FRESH_EVERY = 101  # no multiple of ten, so that each place in a file has its turn
SAID_EVERY = 250


def main(rounds: int, seed: int) -> None:
    """Kills at random moments, also while the file is being made; stops at the first loss."""
    chance = random.Random(seed)
    last_words: Counter[str] = Counter()
    begun, number = time.monotonic(), 0
    with tempfile.TemporaryDirectory() as folder:
        try:
            for number in range(rounds):
                path = Path(folder) / f"{number // KILLS_A_FILE}.trailbench"
                last = _kill(path, number, chance)
                left = survivors(path, last)
                last_words[last.partition(" ")[0] or "nothing"] += 1
                if number % SAID_EVERY == SAID_EVERY - 1:
                    print(f"{number + 1} kills in {time.monotonic() - begun:.0f} s", flush=True)
                if number % KILLS_A_FILE == KILLS_A_FILE - 1:
                    _clear(path)
        except BaseException as error:
            print(f"round {number + 1} of seed {seed}: {type(error).__name__} {error}; {number} rounds before it held")
            raise
    said = ", ".join(f"{count} after “{word}”" for word, count in sorted(last_words.items()))
    print(f"{rounds} kills of seed {seed}: nothing lost, nothing half. Killed {said}. {left} bikes in the last file.")


def _kill(path: Path, number: int, chance: random.Random) -> str:
    """Kill one writer, and give the last thing it had said."""
    is_early = number % KILLS_A_FILE == 0
    if number % FRESH_EVERY == 0:
        return kill_one(path, 0 if is_early else chance.randint(1, 40), chance.uniform(0.2, 0.6) if is_early else 0.0)
    if is_early:
        return kill_forked(path, 0, chance.uniform(0.0, 0.08))
    return kill_forked(path, chance.randint(1, 20), chance.uniform(0.0, 0.006))


def kill_forked(path: Path, lines: int, delay_s: float) -> str:
    """Fork a writer, kill it after so many lines and a delay, and give the last thing it had said."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        with suppress(BaseException):
            os.dup2(writing, 1)
            os.close(reading)
            os.close(writing)
            write_for_ever(path)
        os._exit(3)  # it writes until it is killed: coming here is a fault
    os.close(writing)
    with os.fdopen(reading, "rb") as voice:
        said = [voice.readline() for _ in range(lines)]
        time.sleep(delay_s)
        os.kill(child, signal.SIGKILL)
        said += voice.readlines()
    status = os.waitpid(child, 0)[1]
    if not os.WIFSIGNALED(status):
        raise AssertionError(f"the writer ended by itself with {status}")
    return said[-1].decode().strip() if said else ""


def _clear(path: Path) -> None:
    for file in path.parent.glob(f"{path.name}*"):
        file.unlink()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100, int(sys.argv[2]) if len(sys.argv) > 2 else 1)
