"""Check-in, service intervals, riding hours, and cards handed over."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CheckIn:
    """One look over the bike."""

    id: str
    bike_id: str
    made_at: str
    depth: str = "quick"
    person_id: str | None = None
    bothers: str | None = None  # what bothers the rider, in their words
    last_done: str | None = None  # what was done to the bike last
    note: str = ""


@dataclass(frozen=True, slots=True)
class CheckItem:
    """One thing looked at; it stays open until it is closed or looked at again."""

    id: str
    checkin_id: str
    code: str
    severity: str  # fine, advise, attend, stop, not_looked_at
    note: str = ""
    is_declined: bool = False
    override_reason: str = ""
    reason: str | None = None  # as picked
    measured_mm: float | None = None
    overruled_by: str | None = None
    overruled_at: str | None = None
    closed_at: str | None = None
    closed_how: str | None = None
    photo_id: str | None = None


@dataclass(frozen=True, slots=True)
class ServicePart:
    """A part that falls due by riding hours or months."""

    id: str
    bike_id: str
    part: str
    unit_id: str | None = None
    interval_hours: float | None = None
    interval_months: int | None = None
    last_hours: float | None = None
    last_at: str | None = None
    origin: str = "common_practice"


@dataclass(frozen=True, slots=True)
class RidingHours:
    """Hours ridden up to a day, and where the figure comes from."""

    id: str
    bike_id: str
    at: str
    hours: float
    source: str = "stated"


@dataclass(frozen=True, slots=True)
class CardIssue:
    """A card handed over."""

    id: str
    bike_id: str
    rider_id: str
    setup_id: str
    made_at: str
    person_id: str | None = None
    note: str = ""
