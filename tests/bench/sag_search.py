"""How soon the sag meets its target on simulated springs, beside two simple rules in the same runs.

Run from the top of the project: ``python -m tests.bench.sag_search [riders] [seed]``.

Each rider has a random spring (chamber lengths, areas, friction, what of the atmosphere acts), a load, a scatter of
the posture that is drawn anew at every mounting, and a first pressure that is off. A reading is the median of three
mountings, read to half a millimetre. The share shown is of riders whose true sag at the advised pressure lies within
one point of the target after one, two and three readings.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np

from workbench.physics.sag import PressureAdvice, SagReading, next_pressure

PSI_KPA = 6.894757293168361
OUTSIDE_KPA = 101.325
READINGS = 3


@dataclass(frozen=True)
class Spring:
    """The truth about one end of one bike; loads per piston area in kPa."""

    end: str
    travel_mm: float
    target: float
    positive: float
    negative: float
    area_ratio: float
    outside: float
    load: float
    friction: float
    posture: float

    def pull(self, sag: float) -> float:
        """Give the force per area and pressure at a sag."""
        return float(1 / (1 - sag / self.positive) - self.area_ratio / (1 + sag / self.negative))

    def sag(self, pressure_kpa: float, load: float) -> float:
        """Give the sag of a load: the root of a quadratic."""
        a, b, r = self.positive, self.negative, self.area_ratio
        y = load / (pressure_kpa + self.outside * OUTSIDE_KPA)
        linear, constant = 1 / b + r / a - y * (1 / b - 1 / a), 1 - r - y
        root = np.sqrt(max(linear**2 - 4 * y / (a * b) * constant, 0.0))
        return float(np.clip(-2 * constant / (linear + root), 0.0, 1.0))

    def true_sag(self, pressure_kpa: float) -> float:
        """Give the sag without scatter."""
        return self.sag(pressure_kpa, self.load)

    def right_pressure(self) -> float:
        """Give the pressure that meets the target."""
        return self.load / self.pull(self.target) - self.outside * OUTSIDE_KPA

    def reading(self, pressure_kpa: float, rng: np.random.Generator) -> SagReading:
        """Mount the rider three times and take the middle."""
        seen = []
        for _ in range(3):
            load = self.load * (1 + rng.normal(0, self.posture)) * (1 + rng.uniform(-self.friction, self.friction))
            seen.append(round(2 * self.sag(pressure_kpa, load) * self.travel_mm) / 2)
        middle = float(np.clip(np.median(seen), 0.5, self.travel_mm - 0.5))
        return SagReading(pressure_kpa, middle)


@dataclass(frozen=True)
class Family:
    """A kind of spring to draw from: chamber lengths over travel, areas, what of the atmosphere acts."""

    name: str
    positive: tuple[float, float] = (1.25, 1.8)
    negative: tuple[float, float] = (0.2, 0.6)
    area_ratio: tuple[float, float] = (1.0, 1.0)
    outside: tuple[float, float] = (1.0, 1.0)
    friction: tuple[float, float] = (0.0, 0.03)
    start: float = 0.25


FAMILIES = (
    Family("equal areas"),
    Family("equal areas, close to typical", positive=(1.35, 1.6), negative=(0.3, 0.5), friction=(0.0, 0.04)),
    Family("equal areas, sticky seals", negative=(0.3, 0.7), friction=(0.0, 0.06), start=0.35),
    Family("between gauge and absolute", outside=(0.0, 1.0)),
    Family("smaller negative area", negative=(0.2, 0.8), area_ratio=(0.87, 1.0)),
    Family("small chambers", positive=(1.15, 1.4), negative=(0.12, 0.3)),
    Family("large chambers", positive=(1.6, 2.4), negative=(0.4, 0.9)),
    # Here a rule that takes one shape for all springs does nearly as well as knowing each: the noise is the limit.
    Family("long negative chambers", positive=(1.35, 2.0), negative=(0.4, 0.7), friction=(0.0, 0.06), start=0.28),
    Family("middling chambers", positive=(1.3, 1.8), negative=(0.35, 0.6), friction=(0.0, 0.05), start=0.28),
)


def draw_spring(end: str, family: Family, rng: np.random.Generator) -> tuple[Spring, float]:
    """Draw a spring and the pressure somebody would start at."""
    front = end == "front"
    target = rng.uniform(0.15, 0.25) if front else rng.uniform(0.25, 0.33)
    pressure = rng.uniform(45, 110) * PSI_KPA if front else rng.uniform(100, 240) * PSI_KPA
    unloaded = Spring(
        end=end,
        travel_mm=rng.uniform(100, 180) if front else rng.uniform(40, 75),
        target=target,
        positive=rng.uniform(*family.positive),
        negative=rng.uniform(*family.negative),
        area_ratio=rng.uniform(*family.area_ratio),
        outside=rng.uniform(*family.outside),
        load=0.0,
        friction=rng.uniform(*family.friction),
        posture=rng.uniform(0.03, 0.07) if front else rng.uniform(0.01, 0.03),
    )
    spring = replace(unloaded, load=(pressure + unloaded.outside * OUTSIDE_KPA) * unloaded.pull(target))
    return spring, pressure * float(np.exp(rng.normal(0, family.start)))


Rule = Callable[[Spring, list[SagReading]], float]


def five_psi(spring: Spring, readings: list[SagReading]) -> float:
    """Five psi up or down until within half a point."""
    last = readings[-1]
    off = last.sag_mm / spring.travel_mm - spring.target
    return last.pressure_kpa + (0.0 if abs(off) < 0.005 else np.sign(off) * 5 * PSI_KPA)


def proportional(spring: Spring, readings: list[SagReading]) -> float:
    """Pressure in proportion to sag."""
    last = readings[-1]
    return last.pressure_kpa * last.sag_mm / spring.travel_mm / spring.target


@dataclass
class Tally:
    """What came of one rule."""

    hits: np.ndarray = field(default_factory=lambda: np.zeros(READINGS))
    covered: np.ndarray = field(default_factory=lambda: np.zeros(READINGS))
    width: np.ndarray = field(default_factory=lambda: np.zeros(READINGS))
    said: int = 0
    said_right: int = 0
    said_ever: int = 0
    runs: int = 0


def ride(spring: Spring, start: float, rule: Rule, rng: np.random.Generator, tally: Tally) -> None:
    """Measure three times, each time at the pressure the rule gave."""
    readings: list[SagReading] = []
    pressure = start
    for number in range(READINGS):
        readings.append(spring.reading(pressure, rng))
        pressure = max(rule(spring, readings), 10.0)
        tally.hits[number] += abs(spring.true_sag(pressure) - spring.target) <= 0.01
    tally.runs += 1


def ride_with_advice(spring: Spring, start: float, rng: np.random.Generator, tally: Tally) -> None:
    """The same with next_pressure, noting interval and settled too."""
    readings: list[SagReading] = []
    pressure = start
    is_said = False
    for number in range(READINGS):
        readings.append(spring.reading(pressure, rng))
        advice: PressureAdvice = next_pressure(
            readings, travel_mm=spring.travel_mm, target=spring.target, end=spring.end
        )
        pressure = advice.pressure_kpa
        true = spring.true_sag(pressure)
        tally.hits[number] += abs(true - spring.target) <= 0.01
        tally.covered[number] += advice.sag_low <= true <= advice.sag_high
        tally.width[number] += advice.sag_high - advice.sag_low
        if advice.settled:
            tally.said += 1
            tally.said_right += abs(true - spring.target) <= 0.015
            is_said = True
    tally.said_ever += is_said
    tally.runs += 1


def oracle(spring: Spring, readings: list[SagReading]) -> float:
    """Know the shape, average the loads."""
    loads = [
        (reading.pressure_kpa + spring.outside * OUTSIDE_KPA) * spring.pull(reading.sag_mm / spring.travel_mm)
        for reading in readings
    ]
    return float(np.mean(loads)) / spring.pull(spring.target) - spring.outside * OUTSIDE_KPA


def typical(spring: Spring, readings: list[SagReading]) -> float:
    """Take one shape for all springs, average the loads."""
    return oracle(replace(spring, positive=1.5, negative=0.4, area_ratio=1.0, outside=1.0), readings)


def percent(values: np.ndarray, runs: int) -> str:
    """Show shares."""
    return " ".join(f"{100 * value / runs:5.1f}" for value in values)


RULES: dict[str, Rule] = {
    "5 psi steps": five_psi,
    "proportional": proportional,
    "one shape": typical,
    "knows the shape": oracle,
}


def run(family: Family, riders: int, seed: int) -> dict[tuple[str, str], Tally]:
    """Let every rule work on the same springs and the same scatter."""
    tallies = {(name, end): Tally() for name in (*RULES, "next_pressure") for end in ("front", "rear")}
    for end in ("front", "rear"):
        for number in range(riders):
            rng = np.random.default_rng([seed, number, end == "front"])
            spring, start = draw_spring(end, family, rng)
            for name, rule in RULES.items():
                ride(spring, start, rule, np.random.default_rng([seed, number, 7]), tallies[name, end])
            ride_with_advice(spring, start, np.random.default_rng([seed, number, 7]), tallies["next_pressure", end])
    return tallies


def report(family: Family, tallies: dict[tuple[str, str], Tally]) -> None:
    """Print the table of one family."""
    print(f"\n{family.name}: true sag within 1.0 point of the target after 1, 2, 3 readings, %")
    print(f"{'':18}{'front':>18}{'rear':>19}{'both':>19}")
    for name in (*RULES, "next_pressure"):
        front, rear = tallies[name, "front"], tallies[name, "rear"]
        shares = (percent(front.hits, front.runs), percent(rear.hits, rear.runs))
        print(f"{name:18} {shares[0]}  {shares[1]}  {percent(front.hits + rear.hits, front.runs + rear.runs)}")
    for end in ("front", "rear"):
        tally = tallies["next_pressure", end]
        print(
            f"{end:6} interval covers {percent(tally.covered, tally.runs)}, wide {percent(tally.width, tally.runs)}; "
            f"settled: right {100 * tally.said_right / max(tally.said, 1):.1f}, "
            f"said by the third {100 * tally.said_ever / tally.runs:.1f}"
        )


def main(riders: int, seed: int) -> None:
    """Run all rules over all families."""
    started = time.perf_counter()
    for family in FAMILIES:
        report(family, run(family, riders, seed))
    print(f"\n{riders} riders an end and family, seed {seed}, {time.perf_counter() - started:.0f} s")


if __name__ == "__main__":
    main(*(int(word) for word in (sys.argv[1:] + ["500", "20"][len(sys.argv) - 1 :])))
