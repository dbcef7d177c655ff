"""Static sag as measured, and what it aims at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

POSTURES = {"standing": "Standing, attack position", "seated": "Seated"}
SETTLED = {"above": "from above", "below": "from below"}
METHODS = {
    "helper": "A helper reads the indicator",
    "rider": "The rider slides it",
    "alone": "Alone, against a wall",
    "length": "No indicator: a length, off the floor and with the rider on",
}
# How far one reading of a method lies off, beside the rider's own scatter: common practice, no source.
METHOD_SD_MM = {"helper": 0.2, "rider": 0.7, "alone": 1.0, "length": 1.5}
METHOD_READINGS = {"helper": 2}  # so many suffice when they agree; three for every other method
TARGET_ORIGINS = {"maker": "the maker", "common_practice": "common practice", "own": "own choice"}

# Common practice, no source: a starting band for a standing rider, as a fraction of the unit's own travel.
STARTING_SAG = {
    "cross_country": {"front": (0.15, 0.18), "rear": (0.20, 0.25)},
    "trail": {"front": (0.18, 0.22), "rear": (0.27, 0.30)},
    "enduro": {"front": (0.20, 0.24), "rear": (0.28, 0.32)},
    "downhill": {"front": (0.22, 0.28), "rear": (0.30, 0.35)},
    "dirt_jump": {"front": (0.10, 0.15), "rear": (0.20, 0.25)},
}
HARDTAIL_FRONT = (0.15, 0.20)
BAND_HALF_WIDTH = {"front": 0.02, "rear": 0.015}
REPEAT_LIMIT_MM = {"fork": 2.0, "shock": 1.0}  # two readings this close suffice


@dataclass(frozen=True, slots=True)
class SagTarget:
    """The sag aimed at for one rider on one unit, and where it comes from."""

    id: str
    bike_id: str
    rider_id: str
    unit_id: str
    target: float
    low: float
    high: float
    origin: str = "common_practice"
    posture: str = "standing"


@dataclass(frozen=True, slots=True)
class SagMeasurement:
    """One spring setting with the rider on: the centre of several readings."""

    id: str
    bike_id: str
    rider_id: str
    unit_id: str
    measured_at: str
    posture: str
    travel_mm: float
    sag_mm: float
    spread_mm: float
    target: float
    target_low: float
    target_high: float
    target_origin: str
    is_kept: bool = True  # the one that ends the measuring, not one on the way
    method: str = "helper"
    generation_id: str | None = None
    pressure_kpa: float | None = None
    pressure_how: str = "as_pumped"
    second_kpa: float | None = None
    negative_kpa: float | None = None  # of a negative chamber with a valve of its own
    rate_n_per_mm: float | None = None
    preload_mm: float | None = None
    spacers: int | None = None
    temperature_c: float | None = None
    rider_mass_kg: float | None = None
    pump_id: str | None = None
    person_id: str | None = None
    note: str = ""

    @property
    def is_met(self) -> bool:
        """Tell whether the sag lies in the band aimed at."""
        return self.target_low - 1e-9 <= self.sag_mm / self.travel_mm <= self.target_high + 1e-9


@dataclass(frozen=True, slots=True)
class SagReading:
    """One mounting of the rider, one distance read."""

    id: str
    measurement_id: str
    number: int
    sag_mm: float
    settled_from: str = ""  # above or below, where friction was looked at


def starting_band(discipline: str, end: str, *, hardtail: bool) -> tuple[float, float]:
    """Give a starting sag band as fractions of travel (common practice, no source)."""
    if hardtail and end == "front" and discipline != "dirt_jump":
        return HARDTAIL_FRONT
    return STARTING_SAG.get(discipline, STARTING_SAG["trail"])[end]


def centre_mm(readings: tuple[float, ...]) -> float:
    """Give the median, which one slip cannot drag away."""
    ordered = sorted(readings)
    middle = len(ordered) // 2
    if len(ordered) % 2:
        return ordered[middle]
    return (ordered[middle - 1] + ordered[middle]) / 2


def settled_centre_mm(readings: Sequence[float], ways: Sequence[str]) -> float:
    """Give the centre between readings settled from above and from below; the plain one where either is missing."""
    above, below = of_way(readings, ways, "above"), of_way(readings, ways, "below")
    if not above or not below:
        return centre_mm(tuple(readings))
    return (centre_mm(above) + centre_mm(below)) / 2


def of_way(readings: Sequence[float], ways: Sequence[str], way: str) -> tuple[float, ...]:
    """Give the readings that were settled one way; ``ways`` may be shorter, for readings taken as they came."""
    return tuple(reading for place, reading in enumerate(readings) if place < len(ways) and ways[place] == way)


def settled_gap_mm(readings: Sequence[float], ways: Sequence[str]) -> float | None:
    """Give by how much the sag settled from below exceeds that from above; None where either is missing."""
    above, below = of_way(readings, ways, "above"), of_way(readings, ways, "below")
    return centre_mm(below) - centre_mm(above) if above and below else None


def spread_mm(readings: Sequence[float], ways: Sequence[str]) -> float:
    """Give how far readings lie apart that should be the same: those settled the same way."""
    groups: list[list[float]] = [[], [], []]
    for place, reading in enumerate(readings):
        way = ways[place] if place < len(ways) else ""
        groups[("", "above", "below").index(way)].append(reading)
    return max(max(group) - min(group) for group in groups if group)


def readings_agree(readings: tuple[float, ...], kind: str) -> bool:
    """Tell whether two of the readings lie close enough together to stop."""
    ordered = sorted(readings)
    return any(b - a <= REPEAT_LIMIT_MM[kind] for a, b in pairwise(ordered))
