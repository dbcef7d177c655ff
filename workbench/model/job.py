"""How far the job is on one bike: the state of every station, and what is due next."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.bike import Station, StationState
from workbench.model.checkin import ATTEND, OpenItem, stop_words, stopping
from workbench.model.counting import skip_key, uncounted
from workbench.model.parts import BikeParts
from workbench.model.reading import how_many
from workbench.model.ride import Run, Session
from workbench.model.sag import SagMeasurement
from workbench.model.sag_rules import mass_drift_kg
from workbench.model.service import CardIssue
from workbench.model.setting import Item, Setup

# The stations this version has, in order.
STATIONS = (
    Station.GARAGE,
    Station.CHECKIN,
    Station.ADJUSTERS,
    Station.SAG,
    Station.BASELINE,
    Station.RIDE,
    Station.REVIEW,
    Station.CARD,
)

PUT_BACK = "clicks to put back"
STOPPED = (Station.SAG, Station.RIDE)  # what nobody does on a bike that is not to be ridden

STATION_WORDS = {
    Station.GARAGE: "Garage",
    Station.CHECKIN: "Check-in",
    Station.ADJUSTERS: "Adjusters",
    Station.SAG: "Sag",
    Station.BASELINE: "Baseline",
    Station.RIDE: "Ride",
    Station.REVIEW: "Review",
    Station.CARD: "Card",
}


@dataclass(frozen=True, slots=True)
class JobRecords:
    """What the state of the job is judged from."""

    parts: BikeParts
    sag: tuple[SagMeasurement, ...] = ()
    setups: tuple[Setup, ...] = ()
    current: Setup | None = None  # the setup that stands on the bike now, if one does
    in_no_setup: tuple[str, ...] = ()  # fork or shock that was fitted later and that no setup sets anything of
    sessions: tuple[Session, ...] = ()
    runs: tuple[Run, ...] = ()
    cards: tuple[CardIssue, ...] = ()
    skips: dict[str, str] | None = None  # station -> reason
    drafts: tuple[str, ...] = ()  # stations with an entry under way
    was_checked: bool = False  # a check-in was filed
    open_items: tuple[OpenItem, ...] = ()  # found at check-ins and not closed
    services: tuple[str, ...] = ()  # parts whose service falls due and is on no hand-over list
    sag_again: tuple[str, ...] = ()  # ends that are ridden in since they were new or serviced
    is_concealed: bool = False  # a blind test is under way: what stands on the bike is said nowhere


@dataclass(frozen=True, slots=True)
class Mark:
    """How one station stands, and why in a few words."""

    station: Station
    state: StationState
    why: str


def job_marks(records: JobRecords) -> tuple[Mark, ...]:
    """Judge every station. The first one that is due becomes the one to do now."""
    judged = [_mark(station, records) for station in STATIONS]
    for place, mark in enumerate(judged):
        if mark.state == StationState.DUE:
            judged[place] = Mark(mark.station, StationState.NOW, mark.why)
            break
    return tuple(judged)


def next_due(marks: tuple[Mark, ...]) -> str:
    """Say the next thing due, for the garage list."""
    for mark in marks:
        if mark.state == StationState.NOW:
            return f"{STATION_WORDS[mark.station].lower()}: {mark.why}"
    return "done"


def put_back_due(parts: BikeParts) -> tuple[str, ...]:
    """List the adjusters that stand open or closed from measuring and are to go back to their place."""
    return tuple(
        adjuster.id
        for adjuster in parts.adjusters
        if (line := parts.line(Item.ADJUSTER, adjuster.id)) is not None and line.how in ("opened", "closed")
    )


def _mark(station: Station, records: JobRecords) -> Mark:
    state, why = _JUDGES[station](records)
    if station in STOPPED and (stopped := stop_reason(records)):
        return Mark(station, StationState.BLOCKED, stopped)  # a skip says nothing against it
    skipped = (records.skips or {}).get(station)
    if skipped is not None and state in (StationState.DUE, StationState.BLOCKED):
        return Mark(station, StationState.SKIPPED, skipped)
    if station in records.drafts and state != StationState.BLOCKED:
        return Mark(station, StationState.DUE, "entry under way")
    return Mark(station, state, why)


def _garage(records: JobRecords) -> tuple[StationState, str]:
    parts = records.parts
    if not parts.riders:
        return StationState.DUE, "choose a rider"
    if parts.riders[0].mass_kg is None:
        return StationState.DUE, "rider's mass missing"
    for unit in parts.units:
        if unit.travel_mm is None:
            return StationState.DUE, f"{'fork travel' if unit.kind == 'fork' else 'shock stroke'} missing"
    return StationState.DONE, ""


def stop_reason(records: JobRecords) -> str:
    """Say why nobody is to ride this bike; empty where nothing speaks against it."""
    return stop_words(stopping(records.open_items))


def _checkin(records: JobRecords) -> tuple[StationState, str]:
    if stopped := stop_reason(records):
        return StationState.DUE, stopped
    if records.services:
        more = f" and {len(records.services) - 1} more" if len(records.services) > 1 else ""
        return StationState.DUE, f"service due: {records.services[0].lower()}{more}"
    if not records.was_checked:
        if _work_went_on(records):
            return StationState.SKIPPED, "no check-in, work went on"
        return StationState.DUE, "not looked over yet"
    declined = sum(one.item.is_declined for one in records.open_items)
    attend = sum(one.item.severity == ATTEND and not one.item.is_declined for one in records.open_items)
    said = [f"{attend} to attend"] if attend else []
    said += [f"{declined} declined"] if declined else []
    return StationState.DONE, ", ".join(said)


def _work_went_on(records: JobRecords) -> bool:
    """Tell whether something later was begun: then the look-over is a thing of the past, and nobody is sent back."""
    return bool(records.parts.now or records.parts.ranges or records.sag or records.setups or records.sessions)


def _adjusters(records: JobRecords) -> tuple[StationState, str]:
    parts = records.parts
    if not parts.adjusters:
        return StationState.DONE, "none on this bike"
    passed_over = {one.id for one in parts.adjusters if skip_key(one.id) in (records.skips or {})}
    left = uncounted(parts, passed_over)
    if left:
        counted = sum(parts.range_of(adjuster.id) is not None for adjuster in parts.adjusters)
        return StationState.DUE, f"{counted} of {len(parts.adjusters)} counted"
    return StationState.DONE, ""


def sag_left(parts: BikeParts, sag: tuple[SagMeasurement, ...]) -> tuple[str, ...]:
    """List the ends whose sag is not measured on the present hardware."""
    left = []
    for unit in parts.units:
        generation = parts.generation(unit.id)
        present = generation.id if generation else None
        if not any(one.unit_id == unit.id and one.is_kept and one.generation_id == present for one in sag):
            left.append(unit.end)
    return tuple(left)


def _sag(records: JobRecords) -> tuple[StationState, str]:
    left = sag_left(records.parts, records.sag)
    if not left and put_back_due(records.parts):
        return StationState.DUE, PUT_BACK
    if not left and records.sag_again:
        return StationState.DUE, f"{records.sag_again[0]} again, it is ridden in"
    if not left and (drift := sag_drift(records.parts, records.sag)):
        return (
            StationState.DUE,
            f"{drift[0]} again, rider {abs(drift[1]):.1f} kg {'heavier' if drift[1] > 0 else 'lighter'}",
        )
    return (StationState.DUE, f"{left[0]} due") if left else (StationState.DONE, "")


def sag_drift(parts: BikeParts, sag: tuple[SagMeasurement, ...]) -> tuple[str, float] | None:
    """Give the first end whose sag was kept with the main rider at another mass, and by how much."""
    rider = parts.rider()
    for unit in parts.units:
        kept = [one for one in sag if one.unit_id == unit.id and one.is_kept and rider and one.rider_id == rider.id]
        drift = mass_drift_kg(rider.mass_kg if rider else None, kept[-1] if kept else None)
        if drift:
            return unit.end, drift
    return None


def _baseline(records: JobRecords) -> tuple[StationState, str]:
    if not records.setups:
        return StationState.DUE, "no setup yet"
    if records.in_no_setup:
        return StationState.DUE, f"no setup with this {records.in_no_setup[0]} yet"
    return StationState.DONE, ""


def _ride(records: JobRecords) -> tuple[StationState, str]:
    if not records.setups:
        return StationState.BLOCKED, "needs a baseline"
    runs = how_many(len(records.runs), "run")
    if records.is_concealed:
        return StationState.DUE, "blind test under way"
    if any(session.ended_at is None for session in records.sessions):
        return StationState.DUE, f"session open, {runs}"
    if not records.runs:
        return StationState.DUE, "no runs yet"
    return StationState.DONE, runs


def _review(records: JobRecords) -> tuple[StationState, str]:
    if not records.runs:
        return StationState.BLOCKED, "needs runs"
    return StationState.DONE, how_many(len(records.runs), "run")


def _card(records: JobRecords) -> tuple[StationState, str]:
    if not records.setups:
        return StationState.BLOCKED, "needs a setup"
    if records.is_concealed:
        return StationState.BLOCKED, "blind test under way"
    holds = records.current or max(records.setups, key=lambda setup: setup.number)
    if any(card.setup_id == holds.id for card in records.cards):
        return StationState.DONE, ""
    return StationState.DUE, f"setup {holds.number} has no card yet"


_JUDGES = {
    Station.GARAGE: _garage,
    Station.CHECKIN: _checkin,
    Station.ADJUSTERS: _adjusters,
    Station.SAG: _sag,
    Station.BASELINE: _baseline,
    Station.RIDE: _ride,
    Station.REVIEW: _review,
    Station.CARD: _card,
}
