"""Suspension units: fork and shock, their valves, springs, hardware generations and leverage."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

SPRINGS = {"air": "Air", "coil": "Coil", "air_coil": "Air with coil"}
NEGATIVES = {"self": "Fills itself", "separate": "Own valve", "coil": "Coil"}
SPRING_HOWS = {
    "printed": "as printed on it",
    "pressed": "measured by pressing it",
    "wire": "reckoned from the wire",
}  # how the rate of a coil spring is known
GENERATION_REASONS = {
    "new": "First seen",
    "service": "Service",
    "oil": "Oil change",
    "retune": "Retune",
    "spring": "Other spring kind",
    "travel": "Travel changed",
    "chip": "Frame chip moved",
    "mount": "Mounting moved",
    "wheel": "Other wheel size",
    "exchange": "Other unit fitted",
}
RENEWALS = {key: words for key, words in GENERATION_REASONS.items() if key not in ("new", "exchange")}  # of one unit
FILL_ORDERS = {"main_first": "Main, then second", "second_first": "Second, then main"}  # the maker says which
VALVES = {
    "main": "Main air chamber",
    "second": "Second positive chamber",
    "negative": "Negative chamber",
    "damper_gas": "Damper gas charge: do not touch",
}


@dataclass(frozen=True, slots=True)
class Unit:
    """A fork or a shock.

    ``travel_mm`` is the unit's own: travel of a fork, stroke of a shock. Chamber sizes are optional.
    """

    id: str
    bike_id: str
    end: str  # front or rear
    kind: str  # fork or shock
    name: str = ""
    spring: str = "air"
    travel_mm: float | None = None
    minimum_kpa: float | None = None
    maximum_kpa: float | None = None
    negative: str = "self"
    has_second_positive: bool = False
    second_minimum_kpa: float | None = None
    second_maximum_kpa: float | None = None
    fill_order: str | None = None  # one of FILL_ORDERS; None: main first
    spacer_volume_mm3: float | None = None
    spacer_limit: int | None = None
    area_mm2: float | None = None
    positive_mm3: float | None = None
    negative_mm3: float | None = None
    spring_stroke_mm: float | None = None  # usable stroke of the coil before it binds
    preload_limit_mm: float | None = None
    preload_pitch_mm: float | None = None
    maker_sag_low: float | None = None  # fraction of own travel
    maker_sag_high: float | None = None
    maker_posture: str = ""
    maker_table: str = ""  # pressure by rider mass, as printed, with units
    is_dual_crown: bool = False
    is_inverted: bool = False
    damper_in_one_leg: bool = False
    exposed_nominal_mm: float | None = None
    eye_to_eye_mm: float | None = None  # of a shock at full extension
    mounting: str | None = None  # the mounting position it is in, in the words of its survey; None: not said
    serial: str = ""
    note: str = ""
    removed_at: str | None = None  # since when it is no longer on the bike; what was measured on it stays its own


@dataclass(frozen=True, slots=True)
class Generation:
    """A stretch of a unit's life in which clicks and sag may be compared."""

    id: str
    unit_id: str
    number: int
    reason: str
    started_at: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Valve:
    """One valve and what it is for; some are not the rider's to touch."""

    id: str
    unit_id: str
    purpose: str
    place: str = ""
    minimum_kpa: float | None = None
    maximum_kpa: float | None = None


@dataclass(frozen=True, slots=True)
class Spring:
    """A coil spring at hand for a unit."""

    id: str
    unit_id: str
    rate_n_per_mm: float
    stroke_mm: float | None = None
    label: str = ""
    how: str | None = None  # one of SPRING_HOWS; None: printed on it
    curve: str | None = None  # travel and force from slack-free contact, as JSON pairs, if it is no straight line


@dataclass(frozen=True, slots=True)
class LeverageSurvey:
    """Shock stroke against wheel travel, read at the bench in one mounting position."""

    id: str
    bike_id: str
    unit_id: str
    mounting: str = ""
    reading_sd_mm: float = 1.0
    made_at: str = ""


@dataclass(frozen=True, slots=True)
class LeveragePoint:
    """One pair of a leverage survey."""

    id: str
    survey_id: str
    stroke_mm: float
    wheel_mm: float


def mountings(surveys: Sequence[LeverageSurvey], unit: Unit) -> tuple[LeverageSurvey, ...]:
    """Give the newest survey of each mounting position of a unit, newest first; surveys come newest first."""
    newest: dict[str, LeverageSurvey] = {}
    for survey in surveys:
        if survey.unit_id == unit.id:
            newest.setdefault(survey.mounting.casefold(), survey)
    return tuple(newest.values())


def survey_in_use(surveys: Sequence[LeverageSurvey], unit: Unit) -> LeverageSurvey | None:
    """Give the survey of the mounting a unit is in; the newest of all where nobody said which one that is."""
    found = mountings(surveys, unit)
    if unit.mounting is None:
        return found[0] if found else None
    return next((one for one in found if one.mounting.casefold() == unit.mounting.casefold()), None)


@dataclass(frozen=True, slots=True)
class Pump:
    """A pump and how finely it reads."""

    id: str
    name: str
    kind: str = "suspension"
    division_kpa: float | None = None
    hose_note: str = ""
    archived_at: str | None = None
