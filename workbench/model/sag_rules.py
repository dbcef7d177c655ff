"""Rules around a sag measurement: what to ask, what to aim at, what to refuse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from workbench.model.bike import Bike, ends_of
from workbench.model.sag import BAND_HALF_WIDTH, SagMeasurement, SagTarget, settled_centre_mm, starting_band
from workbench.model.unit import Unit

# Soft limits, common practice, no source: beyond them the two lengths are easily mistaken for one another.
FORK_TRAVEL_MM = (60.0, 220.0)
SHOCK_STROKE_MM = (25.0, 95.0)
LEVERAGE = (1.8, 3.5)

LARGE_MOVE = 0.15  # of the present pressure; common practice, no source
MASS_DRIFT_KG = 2.0  # of a rider since sag was measured, from which on it is asked for again; common practice
SIMILAR_MASS_KG = 2.0  # readings of the same rider within this mass tell of the same load
MOST_PRELOAD_TURNS = 2.0  # from slack-free contact; common practice, no source
USUAL_PITCH_MM = 1.5  # of a preload collar's thread where none is stated; common practice, no source


@dataclass(frozen=True, slots=True)
class SagRound:
    """One spring setting of a measuring in the making: what was set, and the readings taken with it."""

    readings_mm: tuple[float, ...]
    posture: str
    method: str
    measured_at: str
    pressure_kpa: float | None = None
    pressure_how: str = "as_pumped"
    second_kpa: float | None = None
    negative_kpa: float | None = None
    temperature_c: float | None = None
    spacers: int | None = None
    rate_n_per_mm: float | None = None
    is_table: bool = False  # the rate stands for a spring at hand with a table of travel and force
    preload_mm: float | None = None
    pump_id: str = ""
    settled: tuple[str, ...] = ()  # above or below, one a reading, where friction is looked at

    @property
    def sag_mm(self) -> float:
        """The sag these readings tell."""
        return settled_centre_mm(self.readings_mm, self.settled)


def mass_drift_kg(mass_kg: float | None, kept: SagMeasurement | None) -> float:
    """Give how much heavier the rider is than when sag was measured, if that is enough to measure again; else 0."""
    if mass_kg is None or kept is None or kept.rider_mass_kg is None:
        return 0.0
    drift_kg = mass_kg - kept.rider_mass_kg
    return drift_kg if abs(drift_kg) >= MASS_DRIFT_KG - 1e-9 else 0.0


@dataclass(frozen=True, slots=True)
class Band:
    """The sag aimed at, as fractions of the unit's own travel, and where it comes from."""

    low: float
    high: float
    origin: str
    posture: str = "standing"

    @property
    def middle(self) -> float:
        """The sag in the middle of the band, which advice aims at."""
        return (self.low + self.high) / 2

    def holds(self, sag: float) -> bool:
        """Tell whether a sag lies in the band."""
        return self.low - 1e-9 <= sag <= self.high + 1e-9


def first_band(bike: Bike, unit: Unit, kept: SagTarget | None = None) -> Band:
    """Give the band to start from: the rider's own, else the maker's, else common practice."""
    if kept is not None:
        return Band(kept.low, kept.high, kept.origin, kept.posture)
    maker = maker_band(unit)
    return maker if maker is not None else practice_band(bike, unit)


def maker_band(unit: Unit) -> Band | None:
    """Give the maker's band; a single figure gets the usual width."""
    ends = {end for end in (unit.maker_sag_low, unit.maker_sag_high) if end is not None}
    if not ends:
        return None
    half = BAND_HALF_WIDTH[unit.end] if len(ends) == 1 else 0.0
    return Band(min(ends) - half, max(ends) + half, "maker", unit.maker_posture or "standing")


def practice_band(bike: Bike, unit: Unit) -> Band:
    """Give the usual band for the way the bike is ridden."""
    low, high = starting_band(bike.discipline, unit.end, hardtail=ends_of(bike.layout)[1] == "rigid")
    return Band(low, high, "common_practice")


def travel_question(unit: Unit, bike: Bike) -> str:
    """Ask whether the stated length is the unit's own, where it looks like the other one; empty if it does not."""
    if unit.travel_mm is None:
        return ""
    if unit.kind == "fork":
        low, high = FORK_TRAVEL_MM
        return "" if low <= unit.travel_mm <= high else "Is that the travel of the fork itself?"
    low, high = SHOCK_STROKE_MM
    ratio = bike.rear_travel_mm / unit.travel_mm if bike.rear_travel_mm else None
    odd_ratio = ratio is not None and not LEVERAGE[0] <= ratio <= LEVERAGE[1]
    if low <= unit.travel_mm <= high and not odd_ratio:
        return ""
    reason = f" Wheel travel would be {ratio:.1f} times as much." if ratio is not None and odd_ratio else ""
    return f"Stroke or wheel travel? Sag is taken of the shock's own stroke.{reason}"


def similar_rounds(
    kept: Sequence[SagMeasurement], *, posture: str, mass_kg: float | None, generation_id: str | None
) -> tuple[SagMeasurement, ...]:
    """Pick earlier measurements that tell of the same load on the same hardware, oldest first."""

    def is_alike(one: SagMeasurement) -> bool:
        if one.posture != posture or one.generation_id != generation_id:
            return False
        if mass_kg is None or one.rider_mass_kg is None:
            return mass_kg is one.rider_mass_kg
        return abs(mass_kg - one.rider_mass_kg) <= SIMILAR_MASS_KG

    return tuple(sorted((one for one in kept if is_alike(one)), key=lambda one: (one.measured_at, one.id)))


def move_fraction(before_kpa: float, after_kpa: float) -> float:
    """Give the size of a pressure move as a fraction of the present gauge pressure."""
    return abs(after_kpa - before_kpa) / before_kpa if before_kpa > 0 else float("inf")


def rounded_pressure(kpa: float, division_kpa: float, minimum_kpa: float | None, maximum_kpa: float | None) -> float:
    """Round advice to what a pump can be read to, never past the unit's limits."""
    rounded = round(kpa / division_kpa) * division_kpa
    if maximum_kpa is not None and rounded > maximum_kpa:
        rounded = maximum_kpa
    if minimum_kpa is not None and rounded < minimum_kpa:
        rounded = minimum_kpa
    return rounded


def preload_needed_mm(load_n: float, rate_n_per_mm: float, sag_mm: float) -> float:
    """Give the preload that would bring a spring to a sag under a load: x0 = F / k - x. May be negative."""
    return load_n / rate_n_per_mm - sag_mm


def most_preload_mm(unit: Unit) -> tuple[float, str]:
    """Give the most preload to use on a unit, and in words where that limit comes from."""
    turns_mm = MOST_PRELOAD_TURNS * (unit.preload_pitch_mm or USUAL_PITCH_MM)
    if unit.preload_limit_mm is not None and unit.preload_limit_mm <= turns_mm:
        return unit.preload_limit_mm, "the maker's limit"
    pitch = "" if unit.preload_pitch_mm else f" of about {USUAL_PITCH_MM:g} mm"
    return turns_mm, f"two turns{pitch}, common practice"


def coil_bind_short_mm(spring_stroke_mm: float | None, stroke_mm: float, preload_mm: float) -> float:
    """Give by how much a spring's usable stroke falls short of shock stroke and preload together; 0 if it does not."""
    if spring_stroke_mm is None:
        return 0.0
    return max(0.0, stroke_mm + preload_mm - spring_stroke_mm)
