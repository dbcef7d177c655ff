"""What the next pressure costs: a call in milliseconds, and what importing it adds to Python with numpy.

Run from the top of the project: ``python -m tests.bench.sag_cost``.
"""

from __future__ import annotations

import subprocess
import sys
import time
from statistics import median

from workbench.physics.sag import NO_COILS, Coils, SagReading, next_pressure

REPEATS = 200
STARTS = 11


def call_ms(count: int, coils: Coils = NO_COILS) -> list[float]:
    """Time calls with so many readings."""
    readings = [SagReading(560 + 20 * number, 40.0 - 1.5 * number) for number in range(count)]
    taken = []
    for _ in range(REPEATS):
        started = time.perf_counter()
        next_pressure(readings, travel_mm=160, target=0.2, end="front", coils=coils)
        taken.append(1000 * (time.perf_counter() - started))
    return taken


def import_ms() -> float:
    """Time the import in a fresh Python that has numpy already."""
    code = (
        "import numpy, time; started = time.perf_counter(); import workbench.physics.sag; "
        "print(1000 * (time.perf_counter() - started))"
    )
    return median(float(subprocess.check_output([sys.executable, "-c", code])) for _ in range(STARTS))


def main() -> None:
    """Print both."""
    started = time.perf_counter()
    next_pressure([SagReading(560, 40.0)], travel_mm=160, target=0.2, end="front")
    print(f"first call {1000 * (time.perf_counter() - started):.1f} ms")
    for count in (1, 3, 10):
        taken = sorted(call_ms(count))
        print(f"{count:2} readings: median {median(taken):.2f} ms, 95 of 100 below {taken[int(0.95 * REPEATS)]:.2f} ms")
    for words, coils in (("negative coil", Coils(is_negative=True)), ("coil beside the air", Coils(rate_n_per_mm=3.0))):
        taken = sorted(call_ms(3, coils))
        print(f" 3 readings, {words}: median {median(taken):.2f} ms")
    print(f"import beside numpy: median {import_ms():.0f} ms")


if __name__ == "__main__":
    main()
