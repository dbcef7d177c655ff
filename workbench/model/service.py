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
    note: str = ""


@dataclass(frozen=True, slots=True)
class CheckItem:
    """One thing looked at."""

    id: str
    checkin_id: str
    code: str
    severity: str  # fine, advise, attend, stop, not_looked_at
    note: str = ""
    is_declined: bool = False
    override_reason: str = ""
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
