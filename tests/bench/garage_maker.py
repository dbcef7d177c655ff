"""A garage of thousands of bikes and their seasons, always the same one, written past the gate.

The rows are records of the real schema, checked as the gate checks them, each with the deed that made it in the
journal, so that the library is sound in every respect. They are written visit by visit over all bikes, as a shop would,
so that the rows of one bike lie far apart in the file.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random
from typing import Any
from uuid import UUID

from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.bike import Bike, BikeRider, Tyre
from workbench.model.person import Person
from workbench.model.ride import Course, Run, RunRating, Session
from workbench.model.sag import SagMeasurement, SagReading, SagTarget
from workbench.model.service import CardIssue, RidingHours, ServicePart
from workbench.model.setting import Item, OnBike, Setup, SetupValue
from workbench.model.unit import Generation, Unit

VERSION = 2  # raise it when these rows or the indexes change; columns are seen by themselves
BIKES, RUNS = 5_000, 200_000
EVERY, MUCH_RIDDEN = 100, 400  # every so-manieth bike has so many runs
RUNS_A_SESSION = 10
DEEDS_AT_ONCE = 2_000
START = datetime(2030, 3, 1, 8, 0, tzinfo=UTC)
TREES = ("Larch", "Alder", "Rowan", "Hazel", "Birch", "Maple", "Aspen", "Linden", "Sorrel", "Juniper")
NAMES = ("Anders", "Brandt", "Cordes", "Demir", "Egger", "Falk", "Grube", "Hansen", "Ilic", "Jansen")
Record = Any


@dataclass(slots=True)
class Deed:
    """One step of the journal: its words and what it wrote, each with what stood there before."""

    label: str
    bike_id: str | None
    station: str
    records: list[tuple[Record, Record | None]]


def big_garage(folder: Path, *, bikes: int = BIKES, runs: int = RUNS) -> Path:
    """Give the garage's file, made if this version of it is not in the folder yet."""
    from workbench.library.schema import fingerprint

    path = folder / f"garage-{VERSION}-{fingerprint(schema)}-{bikes}-{runs}.trailbench"
    if not path.exists():
        folder.mkdir(parents=True, exist_ok=True)
        half = path.with_suffix(".half")
        for file in folder.glob(f"{half.name}*"):
            file.unlink()
        _make(half, bikes, runs)
        half.rename(path)
    return path


def _make(path: Path, bikes: int, runs: int) -> None:
    library = open_library(path, schema, now=lambda: START.isoformat())
    library.raw.execute("PRAGMA synchronous = OFF")
    library.raw.execute("PRAGMA foreign_keys = OFF")  # looked at as a whole at the end
    writer = Writer(library)
    for deeds in in_turn(bikes, runs):
        writer.keep(deeds)
    writer.finish()
    library.raw.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
    broken = library.raw.execute("PRAGMA foreign_key_check").fetchall()
    assert not broken, broken[:3]
    library.close()


def in_turn(bikes: int, runs: int) -> Iterator[list[Deed]]:
    """Give the deeds visit by visit: the first visit of every bike, the second of every bike, and so on."""
    much = len(range(0, bikes, EVERY))
    rest = bikes - much
    share, over = divmod(max(runs - much * MUCH_RIDDEN, 0), rest)
    courses = [Course(key(Random(10**9 + n)), f"{TREES[n % 10]} loop {n}", n % 2 == 0, 90.0 + n) for n in range(40)]
    yield [Deed(f"Add {one.name}", None, "ride", [(one, None)]) for one in courses]
    seasons, riders = [], 0
    for number in range(bikes):
        is_much = number % EVERY == 0
        count = MUCH_RIDDEN if is_much else share + (riders < over)
        riders += not is_much
        seasons.append(BikeSeason(number, count, courses).visits())
    while seasons:
        left = []
        for season in seasons:
            deeds = next(season, None)
            if deeds is not None:
                yield deeds
                left.append(season)
        seasons = left


def key(chance: Random) -> str:
    """Give an id as the program makes them, though always the same."""
    return str(UUID(int=chance.getrandbits(128), version=4))


class BikeSeason:
    """One bike from the day it is added to its last session."""

    def __init__(self, number: int, runs: int, courses: list[Course]) -> None:
        self.chance = Random(number + 1)
        self.number, self.runs, self.courses = number, runs, courses
        self.at = START + timedelta(minutes=number)
        self.bike = Bike(
            key(self.chance),
            f"{TREES[number % 10]} {120 + number % 6 * 10} no. {number}",
            created_at=self.moment(),
            tags=f"shelf {number % 70}",
            rear_travel_mm=140.0,
        )
        self.rider = Person(key(self.chance), f"{NAMES[number // 7 % 10]} {number // 3}", mass_kg=60.0 + number % 40)
        self.units = [
            Unit(key(self.chance), self.bike.id, "front", "fork", travel_mm=150.0, maximum_kpa=900.0),
            Unit(key(self.chance), self.bike.id, "rear", "shock", travel_mm=60.0, maximum_kpa=2000.0),
        ]
        self.tyres = [Tyre(key(self.chance), self.bike.id, end) for end in ("front", "rear")]
        self.sequence = self.setup_number = 0
        self.values: dict[tuple[str, str], float] = {}
        self.known: dict[tuple[float, ...], Setup] = {}
        self.counts: dict[str, RangeCount] = {}
        self.adjusters: list[Adjuster] = []

    def moment(self, minutes: float = 0.0) -> str:
        """Give the present instant of this bike and move on by so many minutes."""
        now = self.at.isoformat()
        self.at += timedelta(minutes=minutes)
        return now

    def deed(self, label: str, station: str, *records: Record) -> Deed:
        """Give a deed on this bike that writes new records."""
        return Deed(label, self.bike.id, station, [(one, None) for one in records])

    def visits(self) -> Iterator[list[Deed]]:
        """Give what is done at one visit after the other: added, counted, sag, baseline, then sessions."""
        yield [*self._added(), *self._counted(), *self._sag(), *self._baseline()]
        ridden = session = 0
        while ridden < self.runs:
            count = min(RUNS_A_SESSION, self.runs - ridden)
            yield list(self._session(session, count, is_last=ridden + count == self.runs))
            ridden, session = ridden + count, session + 1
            self.at += timedelta(days=6, hours=self.number % 5)

    def _added(self) -> Iterator[Deed]:
        records: list[Record] = [self.bike, self.rider, BikeRider(key(self.chance), self.bike.id, self.rider.id)]
        for unit in self.units:
            kinds = (("compression", "low"), ("rebound", "low"))
            own = [
                Adjuster(key(self.chance), unit.id, kind, speed, counting_order=place)
                for place, (kind, speed) in enumerate(kinds)
            ]
            self.adjusters += own
            records += [unit, Generation(key(self.chance), unit.id, 1, "new", self.moment()), *own]
        yield self.deed(f"Add {self.bike.name}", "garage", *records, *self.tyres)
        note = replace(self.bike, note=f"Came in as number {self.number}")
        yield Deed("Bike: note", self.bike.id, "garage", [(note, self.bike)])
        self.bike = note
        hours = RidingHours(key(self.chance), self.bike.id, self.moment(), 20.0)
        service = ServicePart(key(self.chance), self.bike.id, "lowers", self.units[0].id, 50.0, None, 10.0, None)
        yield self.deed("Riding hours", "checkin", hours, service)

    def _counted(self) -> Iterator[Deed]:
        for adjuster, steps in zip(self.adjusters, (14, 17, 12, 13), strict=True):
            found = self.chance.randint(3, steps - 3)
            count = RangeCount(key(self.chance), adjuster.id, None, steps, found, self.moment(2), None)
            self.counts[adjuster.id] = count
            lines = [self.line(Item.ADJUSTER, adjuster.id, float(found), "counted")]
            yield self.deed(f"Keep range {steps} clicks", "adjusters", count, *lines)
        for unit, kpa in zip(self.units, (520.0, 1240.0), strict=True):
            yield self.deed("Pressure found", "adjusters", self.line(Item.PRESSURE, unit.id, kpa, "as_attached"))
        for tyre in self.tyres:
            yield self.deed("Tyre found", "adjusters", self.line(Item.TYRE_PRESSURE, tyre.id, 160.0, "stated"))

    def line(self, item: Item, subject_id: str, value: float, how: str) -> OnBike:
        """Give the next line of the log of what is on the bike."""
        self.sequence += 1
        self.values[item, subject_id] = value
        count = self.counts.get(subject_id)
        range_id = count.id if count else None
        return OnBike(
            key(self.chance), self.bike.id, self.moment(), self.sequence, item, subject_id, value, how, range_id
        )

    def _sag(self) -> Iterator[Deed]:
        for unit, target in zip(self.units, (0.2, 0.29), strict=True):
            wanted = SagTarget(key(self.chance), self.bike.id, self.rider.id, unit.id, target, target - 0.02, 0.3)
            yield self.deed("Sag target", "sag", wanted)
            for turn in range(3):
                kpa = self.values[Item.PRESSURE, unit.id] * (1.0 + 0.04 * turn)
                sag = unit.travel_mm * (target + 0.02 - 0.01 * turn)
                measured = self._measured(unit, target, kpa, sag, is_kept=turn == 2)
                readings = [SagReading(key(self.chance), measured.id, n + 1, sag + n - 1.0) for n in range(3)]
                log = self.line(Item.PRESSURE, unit.id, kpa, "as_pumped")
                yield self.deed(f"Sag {sag:.0f} mm", "sag", measured, *readings, log)

    def _measured(self, unit: Unit, target: float, kpa: float, sag: float, *, is_kept: bool) -> SagMeasurement:
        return SagMeasurement(
            key(self.chance),
            self.bike.id,
            self.rider.id,
            unit.id,
            self.moment(4),
            "standing",
            unit.travel_mm,
            sag,
            2.0,
            target,
            target - 0.02,
            0.3,
            "common_practice",
            is_kept,
            pressure_kpa=kpa,
            temperature_c=18.0,
            rider_mass_kg=self.rider.mass_kg,
        )

    def _baseline(self) -> Iterator[Deed]:
        _, records = self._setup("baseline")
        yield self.deed("Keep setup no. 1", "baseline", *records)

    def _setup(self, origin: str) -> tuple[Setup, list[Record]]:
        """Give the setup that stands on the bike: the one it was before, or a new one with its values."""
        stands = tuple(self.values[one] for one in sorted(self.values))
        if stands in self.known:
            return self.known[stands], []
        self.setup_number += 1
        setup = Setup(key(self.chance), self.bike.id, self.rider.id, self.setup_number, origin, self.moment())
        self.known[stands] = setup
        values = [
            SetupValue(
                key(self.chance),
                setup.id,
                item,
                subject,
                value,
                range_id=self.counts[subject].id if subject in self.counts else None,
            )
            for (item, subject), value in sorted(self.values.items())
        ]
        return setup, [setup, *values]

    def _session(self, number: int, count: int, *, is_last: bool) -> Iterator[Deed]:
        course = self.courses[(self.number + number // 3) % len(self.courses)]
        setup, _ = self._setup("change")
        session = Session(
            key(self.chance),
            self.bike.id,
            self.rider.id,
            course.id,
            self.moment(10),
            "dry",
            12.0 + number % 9,
            setup.id,
        )
        yield self.deed("Start a session", "ride", session)
        adjuster = self.adjusters[number % len(self.adjusters)]
        home = self.values[Item.ADJUSTER, adjuster.id]
        away = max(0.0, home + self.chance.choice((-2.0, -1.0, 1.0, 2.0)))
        worth = self.chance.choice((-1.0, 0.0, 0.0, 1.0, 2.0))
        for place in range(count):
            wanted = away if place // 2 % 2 else home  # two runs each way, there and back
            if self.values[Item.ADJUSTER, adjuster.id] != wanted:
                line = self.line(Item.ADJUSTER, adjuster.id, wanted, "set_to")
                setup, records = self._setup("change")
                yield self.deed("Change one thing", "ride", line, *records)
            yield self._run(session, place + 1, setup, 5.0 + worth * (wanted == away))
        if is_last:
            issue = CardIssue(key(self.chance), self.bike.id, self.rider.id, setup.id, self.moment())
            yield self.deed("Card", "card", issue)
        ended = replace(session, ended_at=self.moment())
        yield Deed("End the session", self.bike.id, "ride", [(ended, session)])

    def _run(self, session: Session, number: int, setup: Setup, middle: float) -> Deed:
        at = self.moment(6)
        liking = round(min(9.0, max(1.0, self.chance.gauss(middle, 0.9))))
        lap = round(session_pace(session) + self.chance.gauss(0.0, 1.5), 1)
        run = Run(
            key(self.chance), session.id, number, setup.id, at, at, is_warmup=number == 1, liking=liking, lap_s=lap
        )
        ratings = (
            [RunRating(key(self.chance), run.id, "grip", self.chance.randint(2, 5), "front")] if number % 2 else []
        )
        return self.deed(f"Keep run {number}", "ride", run, *ratings)


def session_pace(session: Session) -> float:
    """Give the lap time to be expected of a session."""
    return 100.0 + (session.temperature_c or 0.0)


class Writer:
    """Writes deeds and their rows straight into the file, thousands at once."""

    def __init__(self, library: Library) -> None:
        self._raw: sqlite3.Connection = library.raw
        self._shapes = {shape.spec.record_type: shape for shape in library.shapes.values()}
        self._schema_number = library.schema_number
        self._chance = Random(0)
        self._number = 0
        self._waiting: list[Deed] = []

    def keep(self, deeds: list[Deed]) -> None:
        """Take deeds; they are written when there are enough."""
        self._waiting += deeds
        if len(self._waiting) >= DEEDS_AT_ONCE:
            self.finish()

    def finish(self) -> None:
        """Write what waits."""
        heads, images = [], []
        rows: dict[type, list[tuple[object, ...]]] = {}
        for deed in self._waiting:
            self._number += 1
            deed_id = key(self._chance)
            at = (START + timedelta(minutes=self._number)).isoformat()
            head = (self._number, deed_id, at, None, deed.label, deed.bike_id, deed.station, "done", self._number)
            heads.append((*head, self._schema_number, "bench", None))
            for record, before in deed.records:
                shape = self._shapes[type(record)]
                row = shape.row(record)
                rows.setdefault(type(record), []).append((*row.values(), self._number))
                old = None if before is None else shape.encode(shape.row(before))
                images.append((deed_id, shape.table.name, record.id, old, shape.encode(row)))
        self._raw.execute("BEGIN")
        self._many("deed", heads)
        self._many("deed_row", images)
        for record_type, values in rows.items():
            self._many(self._shapes[record_type].table.name, values)
        self._raw.execute("COMMIT")
        self._waiting = []

    def _many(self, table: str, rows: list[tuple[object, ...]]) -> None:
        if rows:
            places = ", ".join("?" * len(rows[0]))
            self._raw.executemany(f"INSERT OR REPLACE INTO {table} VALUES ({places})", rows)
