"""The window around the sheets: garage list, head, job line, title block, undo."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal

from workbench.actions.desk import Desk, Step, Touched
from workbench.actions.garage import archive_bike, bring_back_bike, find_bike
from workbench.actions.job import job_records, skip_station, unskip_station
from workbench.actions.people import add_person, people
from workbench.model.bike import Station, StationState
from workbench.model.errors import WorkbenchError
from workbench.model.facts import clean_text
from workbench.model.job import PUT_BACK, STATION_WORDS, JobRecords, job_marks, next_due, put_back_due
from workbench.model.person import Person
from workbench.viewmodels.base import Problem
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.garage_list import GarageList
from workbench.viewmodels.shown import short_time
from workbench.viewmodels.under_way import known_drafts, under_way_text
from workbench.viewmodels.window_hints import HintDeeds
from workbench.viewmodels.window_state import (
    BACKUPS,
    BUNDLE,
    CARRY,
    DRAFT_STATIONS,
    HISTORY,
    LAP_TRACK,
    LEVERAGE,
    NEW_BIKE,
    PEOPLE,
    SESSION_NOTES,
    SHEETS,
    SPRING,
    TEMPLATES,
    WITHOUT_BIKE,
    ListRow,
    WindowState,
    resolve_cells,
    resolve_rows,
    rider_text,
    stop_text,
)

__all__ = [
    "BACKUPS",
    "BUNDLE",
    "CARRY",
    "DRAFT_STATIONS",
    "HISTORY",
    "LAP_TRACK",
    "LEVERAGE",
    "NEW_BIKE",
    "PEOPLE",
    "SESSION_NOTES",
    "SHEETS",
    "SPRING",
    "TEMPLATES",
    "WITHOUT_BIKE",
    "ListRow",
    "WindowState",
    "WindowViewModel",
    "resolve_cells",
    "resolve_rows",
]


class WindowViewModel(HintDeeds):
    """The window's state and deeds."""

    undo_offered = Signal(str)  # a step from an earlier start: say what it is before undoing it

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._garage = GarageList(desk)
        self._search = ""
        self._tag = ""
        self._shows_archive = False
        self._due: dict[str, str] = {}
        self._under_way: dict[str, tuple[tuple[str, str | None], ...]] = {}  # entries under way, by bike
        self._offered = ""  # the step from an earlier start that was last offered
        super().__init__(desk, bench)

    def read(self) -> WindowState:
        """Read the garage and the bike on the bench."""
        desk, bench = self._desk, self._bench
        tags = self._garage.tags(archived=self._shows_archive)
        self._tag = self._tag if self._tag in tags else ""
        rows = self._garage.found(self._search, archived=self._shows_archive, tag=self._tag)
        at_work = desk.ask(people(only_here=True))
        records = self._records()
        rider = self._rider(records)
        person = bench.person
        units = bench.units
        marks = job_marks(records) if records else ()
        return WindowState(
            rows=rows,
            search=self._search,
            garage_is_empty=not rows and not self._search and not self._tag,
            tags=tags,
            tag=self._tag,
            shows_archive=self._shows_archive,
            bike_id=records.parts.bike.id if records else None,
            bike_name=records.parts.bike.name if records else "",
            rider_text=rider_text(rider, units) if records else "",
            is_archived=bool(records and records.parts.bike.archived_at),
            can_skip=records is not None and bench.station not in SHEETS,
            is_skipped=records is not None and bench.station in (records.skips or {}),
            marks=marks,
            station=bench.station,
            stop=stop_text(records, bench.station) if records else "",
            hint=self.hint_of(marks) if records else "",
            cells=resolve_cells(records, rider, bench.station, person, desk.now()),
            people=tuple((one.id, one.name) for one in at_work),
            person_id=desk.person_id,
            undo_text=desk.undo_label() or "",
            redo_text=desk.redo_label() or "",
        )

    def _records(self) -> JobRecords | None:
        bike_id = self._bench.bike_id
        if bike_id is None:
            return None
        try:
            drafts = self._draft_stations(bike_id)
            asked = job_records(bike_id, drafts, rider_id=self._bench.rider_id, now=self._desk.now())
            return self._desk.ask(asked)
        except WorkbenchError:  # the bike went away with an undone step
            return None

    def _rider(self, records: JobRecords | None) -> Person | None:
        return records.parts.rider(self._bench.rider_id) if records else None

    def _draft_stations(self, bike_id: str) -> tuple[str, ...]:
        return tuple(sorted(DRAFT_STATIONS[draft.kind] for draft in known_drafts(self._desk.drafts(bike_id))))

    def _entries(self, bike_id: str) -> tuple[tuple[str, str | None], ...]:
        return tuple((draft.kind, draft.subject) for draft in known_drafts(self._desk.drafts(bike_id)))

    def hear(self, touched: Touched) -> None:
        """Every deed may change the list, the job line or the undo texts; a letter typed into an entry changes none."""
        has_moved = self._draft_moved(touched)
        if touched.tables <= {"setting"} and not has_moved:  # where the bench stands is told by the bench itself
            return
        if touched.bikes and "person" not in touched.tables:  # a rider may ride several bikes
            for bike_id in touched.bikes:
                self._due.pop(bike_id, None)
        else:
            self._due.clear()
        self.refresh()

    def _draft_moved(self, touched: Touched) -> bool:
        """Tell whether an entry was begun, closed or taken up again, so that the list says something else."""
        before = {bike_id: self._under_way.get(bike_id) for bike_id in touched.bikes}
        self._under_way.update({bike_id: self._entries(bike_id) for bike_id in touched.bikes})
        return any(entries != self._under_way[bike_id] for bike_id, entries in before.items())

    def due_as_read(self, bike_id: str) -> str | None:
        """Say the next thing due on a bike as far as that was read; None where it was not, or no longer holds."""
        return self._due.get(bike_id)

    def due(self, bike_id: str) -> str:
        """Say the next thing due on a bike; read when its row has come into sight."""
        if bike_id not in self._due:
            records = self._desk.ask(job_records(bike_id, self._draft_stations(bike_id), now=self._desk.now()))
            text = next_due(job_marks(records))
            if put_back_due(records.parts) and not records.drafts and PUT_BACK not in text:
                left = text.removeprefix("adjusters: ")
                text = f"{left}; {PUT_BACK}" if text != "done" else PUT_BACK
            self._due[bike_id] = under_way_text(self._desk.drafts(bike_id), records.parts) or text
        return self._due[bike_id]

    def search(self, text: str) -> None:
        """Narrow the list while typing."""
        self._search = text
        self.refresh()

    def pick_tag(self, tag: str) -> None:
        """List only the bikes with a tag; all of them for an empty one."""
        self._tag = tag
        self.refresh()

    def show_archive(self, on: bool) -> None:
        """Show the bikes that were put away instead."""
        self._shows_archive = on
        self.refresh()

    def open_bike(self, bike_id: str) -> None:
        """Put a bike on the bench, where an entry was left, else at the station that is due."""
        if bike_id == self._bench.bike_id and self._bench.station not in WITHOUT_BIKE:
            return
        if entries := self._entries(bike_id):
            self._bench.put_bike(bike_id, station=DRAFT_STATIONS[entries[0][0]])
            return
        records = self._desk.ask(job_records(bike_id, self._draft_stations(bike_id), now=self._desk.now()))
        marks = job_marks(records)
        station = next((mark.station for mark in marks if mark.state == StationState.NOW), Station.CARD)
        self._bench.put_bike(bike_id, station=station)

    def open_station(self, station: str) -> None:
        """Open a station's sheet for the bike on the bench, or one that needs no bike."""
        if self._bench.bike_id is not None or station in (*WITHOUT_BIKE, Station.GARAGE):
            self._bench.go_to(station)

    def new_bike(self) -> None:
        """Open the sheet for a new bike."""
        self._bench.go_to(NEW_BIKE)

    def archive(self, bike_id: str = "") -> None:
        """Put a bike away, the one on the bench unless another is named; one that is away is brought back."""
        bike = self._desk.ask(find_bike(bike_id or self._bench.bike_id))
        if bike is None:
            return
        if bike.archived_at is not None:
            self.act(f"Bring back {bike.name}", bring_back_bike(bike.id), bike_id=bike.id)
            return
        self.act(f"Put away {bike.name}", archive_bike(bike.id), bike_id=bike.id)
        if bike.id == self._bench.bike_id:
            self._bench.put_bike(None)
            self._bench.go_to(Station.GARAGE)

    def skip(self, station: str, reason: str) -> None:
        """Pass a station over."""
        if self._bench.bike_id is not None and station not in SHEETS:
            self.act(
                f"Skip {STATION_WORDS[Station(station)].lower()}", skip_station(self._bench.bike_id, station, reason)
            )

    def unskip(self, station: str) -> None:
        """Take a skipped station up again."""
        if self._bench.bike_id is not None:
            self.act(f"Take up {STATION_WORDS[Station(station)].lower()}", unskip_station(self._bench.bike_id, station))

    def seat(self, person_id: str) -> None:
        """Say who stands at the bench."""
        self._bench.seat(person_id)

    def add_bench_person(self, name: str) -> bool:
        """Add somebody who works here and seat them."""
        try:
            deed = add_person(name, rides=False, works_here=True, like=self._bench.person)
        except WorkbenchError as error:
            self.refuse(error, "name")
            return False
        added = self.act(f"Add {name.strip()[:40]}", deed)
        if added is not None:
            self._bench.seat(added.id)
        return added is not None

    def undo(self, *, offered: bool = True) -> None:
        """Undo the last step; one from an earlier start is offered in words first."""
        step = self._desk.undo_step()
        if step is None:
            return
        if step.from_earlier_start and offered:
            self._offered = step.id
            self.undo_offered.emit(self._offer_text(step))
        elif not offered and step.id != self._offered:
            self._refuse_older()
        else:
            self._move(self._desk.undo)

    def undo_named(self, label: str) -> None:
        """Undo the step a notice speaks of, if it is still the last one."""
        if self._desk.undo_label() == clean_text(label):
            self.undo()
        else:
            self._refuse_older()

    def _refuse_older(self) -> None:
        self.refused.emit(Problem("Something else was done since. The Edit menu undoes step by step."))

    def redo(self) -> None:
        """Do the last undone step again."""
        self._move(self._desk.redo)

    def _move(self, move: Callable[[], Step | None]) -> None:
        try:
            step = move()
        except WorkbenchError as error:
            self.refuse(error)
            return
        if step is not None:
            self._follow(step)

    def _follow(self, step: Step) -> None:
        """Go to the bike and station the step belongs to, so that what changed is in sight."""
        if self._desk.ask(find_bike(step.bike_id)) is not None:
            self._bench.put_bike(step.bike_id)
            if step.station:
                self._bench.go_to(step.station)
        elif self._desk.ask(find_bike(self._bench.bike_id)) is None:
            self._bench.put_bike(None)
        self.refresh()

    def _offer_text(self, step: Step) -> str:
        bike = self._desk.ask(find_bike(step.bike_id))
        where = f" on {bike.name}" if bike is not None else ""
        return f"Undo “{step.label}”{where}, {short_time(step.at)}? It was done before this start."

    def start_over(self) -> None:
        """The library holds something else: nothing noted of it holds any more."""
        self._garage.forget()
        self._hints.forget()
        self._due.clear()
        self._under_way.clear()
        self._bench.read_again()

    def library_path(self) -> str:
        """Say where the data lies."""
        return self._desk.library_path
