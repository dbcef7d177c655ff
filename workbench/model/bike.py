"""Bikes, who rides them, their tyres and pictures."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Station(StrEnum):
    """The stations of the job in the order they are usually walked."""

    GARAGE = "garage"
    CHECKIN = "checkin"
    ADJUSTERS = "adjusters"
    SAG = "sag"
    BASELINE = "baseline"
    RIDE = "ride"
    REVIEW = "review"
    CARD = "card"


class StationState(StrEnum):
    """How a station stands for one bike."""

    NOW = "now"
    DUE = "due"
    DONE = "done"
    SKIPPED = "skipped"
    BLOCKED = "blocked"


END_WORDS = {"front": "front", "rear": "rear"}

RIGID = "rigid"
FRONTS = {"air": "Air fork", "coil": "Coil fork", "mix": "Fork with air and coil", "rigid": "Rigid fork"}
REARS = {"air": "Air shock", "coil": "Coil shock", "rigid": "Rigid rear"}
SPRING_OF = {"air": "air", "coil": "coil", "mix": "air_coil"}  # the spring of a unit, by what was chosen for its end


def layout_of(front: str, rear: str) -> str:
    """Give the layout with these ends."""
    return "hardtail" if (front, rear) == ("air", "rigid") else f"{front}_{rear}"


def ends_of(layout: str) -> tuple[str, str]:
    """Give what a layout has in front and at the rear."""
    return next((front, rear) for front in FRONTS for rear in REARS if layout_of(front, rear) == layout)


def _layout_words(front: str, rear: str) -> str:
    fork, shock = FRONTS[front].lower(), REARS[rear].lower()
    if front == rear == "rigid":
        return "Rigid: tyres are the only spring"
    if rear == "rigid":
        return f"Hardtail: {fork}"
    return f"Rear suspension only: {shock}" if front == "rigid" else f"Full suspension: {fork}, {shock}"


LAYOUTS = {layout_of(front, rear): _layout_words(front, rear) for front in FRONTS for rear in REARS}

DISCIPLINES = {
    "cross_country": "Cross-country",
    "trail": "Trail",
    "enduro": "Enduro",
    "downhill": "Downhill",
    "dirt_jump": "Dirt jump",
}


@dataclass(frozen=True, slots=True)
class Bike:
    """A bike in the garage."""

    id: str
    name: str
    layout: str = "air_air"
    discipline: str = "trail"
    is_ebike: bool = False
    rear_travel_mm: float | None = None  # at the wheel
    head_angle_deg: float | None = None
    wheelbase_mm: float | None = None
    bb_drop_mm: float | None = None
    tags: str = ""
    note: str = ""
    created_at: str = ""
    template_at: str | None = None  # since when it is kept only to start others from
    archived_at: str | None = None


@dataclass(frozen=True, slots=True)
class BikeRider:
    """One rider of one bike; the main rider is the one whose setup opens first."""

    id: str
    bike_id: str
    person_id: str
    is_main: bool = True


@dataclass(frozen=True, slots=True)
class Tyre:
    """The tyre at one end; its pressure is part of what is on the bike."""

    id: str
    bike_id: str
    end: str
    name: str = ""
    width_mm: float | None = None
    is_tubeless: bool = True
    has_insert: bool = False
    minimum_kpa: float | None = None
    maximum_kpa: float | None = None


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture kept as a file named by its SHA-256."""

    id: str
    bike_id: str
    sha256: str
    name: str = ""
    taken_at: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Skip:
    """A station passed over on purpose, and why."""

    id: str
    bike_id: str
    station: str
    reason: str
    at: str
    person_id: str | None = None
