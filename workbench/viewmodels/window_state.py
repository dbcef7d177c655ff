"""What the window shows around the sheets, resolved from records."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from workbench.actions.garage import GarageRow
from workbench.model.bike import Station
from workbench.model.job import STATION_WORDS, STOPPED, JobRecords, Mark, stop_reason
from workbench.model.person import Person
from workbench.viewmodels.shown import Units, short_date

NEW_BIKE = "new_bike"
SPRING = "spring"
LEVERAGE = "leverage"
CARRY = "carry"
BACKUPS = "backups"
HISTORY = "history"
BUNDLE = "bundle"
SESSION_NOTES = "session_notes"
LAP_TRACK = "lap_track"
PEOPLE = "people"
TEMPLATES = "templates"
SHEETS = {
    NEW_BIKE: "New bike",
    SPRING: "Spring",
    LEVERAGE: "Leverage",
    CARRY: "Carry over",
    BACKUPS: "Backups",
    HISTORY: "History",
    BUNDLE: "In and out",
    SESSION_NOTES: "From notes",
    LAP_TRACK: "Lap times",
    PEOPLE: "People",
    TEMPLATES: "Templates",
}  # sheets that are no station
WITHOUT_BIKE = frozenset(
    {NEW_BIKE, BACKUPS, HISTORY, BUNDLE, PEOPLE, TEMPLATES}
)  # those that need no bike on the bench
DRAFT_STATIONS = {
    "typed": Station.GARAGE,
    "leverage": Station.SAG,
    "coil_at_hand": Station.SAG,
    "coil_wire": Station.SAG,
    "coil_pressed": Station.SAG,
    "coil_table": Station.SAG,
    "checkin": Station.CHECKIN,
    "adjusters_typed": Station.ADJUSTERS,
    "count": Station.ADJUSTERS,
    "sag": Station.SAG,
    "baseline": Station.BASELINE,
    "session": Station.RIDE,
    "run": Station.RIDE,
    "session_notes": Station.RIDE,
    "blind_plan": Station.RIDE,
    "blind_run": Station.RIDE,
    "blind_guess": Station.RIDE,
}


@dataclass(frozen=True, slots=True)
class ListRow:
    """One bike in the garage list."""

    bike_id: str
    name: str
    rider: str


@dataclass(frozen=True, slots=True)
class WindowState:
    """Everything around the sheet."""

    rows: tuple[ListRow, ...] = ()
    search: str = ""
    garage_is_empty: bool = True
    shows_archive: bool = False
    tags: tuple[str, ...] = ()
    tag: str = ""  # only bikes with it are listed
    bike_id: str | None = None
    bike_name: str = ""
    rider_text: str = ""
    is_archived: bool = False
    can_skip: bool = False
    is_skipped: bool = False
    marks: tuple[Mark, ...] = ()
    station: str = Station.GARAGE
    stop: str = ""  # why nobody is to ride this bike, where somebody would
    hint: str = ""  # what the open station is for and what to do first, the first time somebody works there
    cells: tuple[tuple[str, str], ...] = ()
    people: tuple[tuple[str, str], ...] = ()
    person_id: str | None = None
    undo_text: str = ""
    redo_text: str = ""


def tags_of(text: str) -> tuple[str, ...]:
    """Give the tags of a bike, as they were typed with commas between."""
    return tuple(tag for part in text.split(",") if (tag := " ".join(part.split())))


@dataclass(frozen=True, slots=True)
class Findable:
    """A row of the list with what is looked through for it."""

    row: ListRow
    text: str  # name, riders and tags, capitals and small letters alike
    tags: tuple[str, ...]


def findable(row: GarageRow) -> Findable:
    """Lay a bike out for the list and for finding it there."""
    rider = ", ".join(name for name in row.riders if name)
    text = f"{row.bike.name} {rider} {row.bike.tags}".casefold()
    return Findable(ListRow(row.bike.id, row.bike.name, rider or "no rider yet"), text, tags_of(row.bike.tags))


def all_tags(bikes: Iterable[Findable]) -> tuple[str, ...]:
    """Give every tag once, however it was capitalised, in order."""
    found: dict[str, str] = {}
    for bike in bikes:
        for tag in bike.tags:
            found.setdefault(tag.casefold(), tag)
    return tuple(found[key] for key in sorted(found))


def resolve_rows(bikes: Iterable[Findable], search: str, tag: str = "") -> tuple[ListRow, ...]:
    """Keep the bikes with the tag in whose name, riders or tags every searched word occurs."""
    words = search.casefold().split()
    if tag:
        wanted = tag.casefold()
        bikes = (bike for bike in bikes if wanted in (one.casefold() for one in bike.tags))
    for word in words:
        bikes = [bike for bike in bikes if word in bike.text]
    return tuple([bike.row for bike in bikes])


def stop_text(records: JobRecords, station: str) -> str:
    """Say above the open sheet why it waits, where a rider would sit on a bike that is not to be ridden."""
    reason = stop_reason(records)
    if not reason or station not in STOPPED:
        return ""
    return f"{reason[:1].upper()}{reason[1:]}. Mend it first, or look again at check-in."


def _setup_text(records: JobRecords) -> str:
    """Name the setup that stands on the bike, else the newest one; none while a blind test is under way."""
    if records.is_concealed:
        return "concealed"
    holds = records.current or max(records.setups, key=lambda setup: setup.number, default=None)
    return f"no. {holds.number}" if holds else "before no. 1"


def resolve_cells(
    records: JobRecords | None, rider: Person | None, station: str, person: Person | None, today: str
) -> tuple[tuple[str, str], ...]:
    """Fill the title block at the foot of the sheet."""
    setup_text = _setup_text(records) if records else "–"
    sheet = SHEETS[station] if station in SHEETS else STATION_WORDS[Station(station)]
    return (
        ("Bike", records.parts.bike.name if records else "–"),
        ("Rider", rider.name if rider else "–"),
        ("Sheet", sheet),
        ("Setup", setup_text),
        ("Date", short_date(today)),
        ("By", person.name if person else "choose"),
        ("Units", person.pressure_unit if person else "psi"),
    )


def rider_text(rider: Person | None, units: Units) -> str:
    if rider is None:
        return "no rider yet"
    if rider.mass_kg is None:
        return rider.name
    return f"{rider.name}, {units.text(rider.mass_kg, 'mass')} ready to ride"
