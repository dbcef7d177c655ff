"""The same deeds done twice: by the library, and on plain dictionaries that know nothing of it."""

from __future__ import annotations

import random
from dataclasses import dataclass, field, replace

import pytest

from tests.library.garden import Bike, Part, Reading, Ride
from workbench.actions.desk import Desk
from workbench.model.errors import LibraryError

MANY_BIKES = 8
PLACES = ("front", "rear", "post")
# Written by hand, not read off the tables: field, the type it points to, whether it is owned by it.
REFS = {
    Bike: (("main_part_id", Part, False), ("twin_id", Bike, False)),
    Part: (("bike_id", Bike, True),),
    Reading: (("part_id", Part, True),),
    Ride: (("bike_id", Bike, False), ("part_id", Part, False)),
}

Records = dict[tuple[type, str], object]


class Stop(Exception):
    """A deed gives up half-way."""


@dataclass
class Shadow:
    """What the library should hold."""

    records: Records = field(default_factory=dict)
    past: list[tuple[str, Records, Records]] = field(default_factory=list)
    future: list[tuple[str, Records, Records]] = field(default_factory=list)

    def of(self, kind: type) -> list:
        """All records of a type."""
        found = [record for (record_type, _), record in self.records.items() if record_type is kind]
        return sorted(found, key=lambda record: record.id)

    def done(self, label: str, after: Records) -> None:
        """A deed that was kept."""
        if after != self.records:
            self.past.append((label, self.records, after))
            self.future.clear()
            self.records = after

    def undone(self) -> str | None:
        """The last deed, taken back."""
        if not self.past or len(self.future) >= 100:
            return None
        step = self.past.pop()
        self.future.append(step)
        self.records = step[1]
        return step[0]

    def redone(self) -> str | None:
        """The last undone deed, done again."""
        if not self.future:
            return None
        step = self.future.pop()
        self.past.append(step)
        self.records = step[2]
        return step[0]


def points_at(record, kind: type, row_id: str, owned: bool) -> bool:
    """Whether the record refers to this row by a reference of the given sort."""
    return any(
        target is kind and owner is owned and getattr(record, name) == row_id
        for name, target, owner in REFS[type(record)]
    )


def without(records: Records, kind: type, row_id: str) -> Records | None:
    """The records without this one and all it owns; None if something else still refers to one of them."""
    doomed = {(kind, row_id)}
    grown = True
    while grown:
        more = {key for key, r in records.items() if any(points_at(r, *one, True) for one in doomed)} - doomed
        doomed |= more
        grown = bool(more)
    left = {key: record for key, record in records.items() if key not in doomed}
    used = any(points_at(record, *one, False) for record in left.values() for one in doomed)
    return None if used else left


class Walk:
    """One seeded walk of deeds, undos and redos, checked after every step."""

    def __init__(self, seed: int, desk: Desk) -> None:
        self.chance = random.Random(seed)
        self.desk = desk
        self.shadow = Shadow()
        self.number = 0

    def step(self) -> None:
        """One random move."""
        moves = (self.grow, self.change, self.swap, self.tie, self.cut, self.fail, self.dangle, self.nothing)
        crowded = len(self.shadow.of(Bike)) > MANY_BIKES
        weights = (1 if crowded else 5, 6, 2, 3, 6 if crowded else 2, 2, 1, 1)
        roll = self.chance.random()
        if roll < 0.2:
            step = self.desk.undo()
            assert (step.label if step else None) == self.shadow.undone()
        elif roll < 0.35:
            step = self.desk.redo()
            assert (step.label if step else None) == self.shadow.redone()
        else:
            self.chance.choices(moves, weights)[0]()

    def grow(self) -> None:
        """A new bike with parts and readings, children first as well as last."""
        bike = Bike(self.fresh(), self.name(), mass_kg=self.chance.choice([None, 12.5, 1e-300, -0.0]))
        parts = [Part(self.fresh(), bike.id, place) for place in self.chance.sample(PLACES, self.chance.randint(0, 3))]
        readings = [Reading(self.fresh(), part.id, self.chance.uniform(0, 200)) for part in parts]
        rides = [Ride(self.fresh(), bike.id)] if self.chance.random() < 0.3 else []
        new = [bike, *parts, *readings, *rides]
        self.chance.shuffle(new)
        self.put("grow", *new)

    def change(self) -> None:
        """Some records get other values; one may be touched twice."""
        bikes, parts = self.some(Bike), self.some(Part)
        changed = [replace(bike, name=self.name(), archived=not bike.archived) for bike in bikes]
        changed += [
            replace(part, position=self.chance.randint(0, 20), photo=self.chance.randbytes(5)) for part in parts
        ]
        twice = [replace(bike, name=self.name()) for bike in bikes[:1]]
        self.put("change", *changed, then=twice)

    def swap(self) -> None:
        """Two parts of a bike change places, though a place can be taken only once."""
        parts = self.shadow.of(Part)
        for one in parts:
            other = next((p for p in parts if p.bike_id == one.bike_id and p.id != one.id), None)
            if other is not None:
                self.put("swap", replace(one, place=other.place), replace(other, place=one.place))
                return

    def tie(self) -> None:
        """A bike points to its part or to a twin, perhaps itself: cycles."""
        for bike in self.some(Bike):
            own = [part.id for part in self.shadow.of(Part) if part.bike_id == bike.id]
            main = self.chance.choice([None, *own])
            twin = self.chance.choice([None, bike.id, *(b.id for b in self.shadow.of(Bike))])
            self.put("tie", replace(bike, main_part_id=main, twin_id=twin))

    def cut(self) -> None:
        """A record goes with all it owns, or is refused because it is used."""
        kind = self.chance.choice([Bike, Bike, Part, Reading, Ride])
        for record in self.some(kind)[:1]:
            left = without(self.shadow.records, kind, record.id)
            if left is not None:
                self.desk.do("cut", lambda gate, r=record: gate.delete(kind, r.id))
                self.shadow.done("cut", left)
                continue
            with pytest.raises(LibraryError, match="still used by"):
                self.desk.do("cut", lambda gate, r=record: gate.delete(kind, r.id))

    def fail(self) -> None:
        """A deed writes, deletes and then gives up."""

        def deed(gate) -> None:
            gate.put(Bike(self.fresh(), "never"), *[replace(bike, name="never") for bike in self.some(Bike)])
            for reading in self.some(Reading):
                gate.delete(Reading, reading.id)
            raise Stop

        with pytest.raises(Stop):
            self.desk.do("fail", deed)

    def dangle(self) -> None:
        """A reference to nothing is found out only at the end, and takes the whole deed with it."""
        new = (Bike(self.fresh(), "n"), Reading(self.fresh(), "nowhere", 1.0))
        with pytest.raises(LibraryError, match="does not fit"):
            self.desk.do("dangle", lambda gate: gate.put(*new))

    def nothing(self) -> None:
        """A deed that comes out even is no step."""

        def deed(gate) -> None:
            gate.put(*self.shadow.of(Bike))
            gate.put(Bike("passing", "x"))
            gate.delete(Bike, "passing")

        self.desk.do("nothing", deed)

    def put(self, label: str, *records, then=()) -> None:
        """The records, put by the desk and by the shadow."""

        def deed(gate) -> None:
            gate.put(*records)
            gate.put(*then)

        self.desk.do(label, deed)
        after = self.shadow.records | {(type(record), record.id): record for record in (*records, *then)}
        self.shadow.done(label, after)

    def some(self, kind: type) -> list:
        """A few records of a type."""
        known = self.shadow.of(kind)
        return self.chance.sample(known, min(len(known), self.chance.randint(0, 3)))

    def fresh(self) -> str:
        """An id not used before."""
        self.number += 1
        return f"{self.chance.randrange(16**4):04x}-{self.number}"

    def name(self) -> str:
        """A name of the kind people type."""
        odd = ["Äsche", "💥", "<b>", "'; --", "a\nb", "\u202eabc", ""]
        return self.chance.choice(odd) + str(self.chance.randrange(99))
