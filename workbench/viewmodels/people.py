"""Everybody the garage knows: what they weigh and read, which bikes they ride, who was put away."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from workbench.actions.people import (
    add_person,
    archive_person,
    bikes_by_rider,
    bring_back_person,
    people_found,
    person,
)
from workbench.model.bike import Station
from workbench.model.errors import WorkbenchError
from workbench.model.person import Person
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.fact_rows import FactRow, fact_rows
from workbench.viewmodels.shown import Units

MOST = 20  # people listed, so that the facts of the one picked are not far below; others are found by name


@dataclass(frozen=True, slots=True)
class PersonRow:
    """One person of the list."""

    person_id: str
    name: str
    does: str
    mass: str
    bikes: str
    is_away: bool = False


@dataclass(frozen=True, slots=True)
class PeopleState:
    """The sheet of people, and the one picked."""

    rows: tuple[PersonRow, ...] = ()
    text: str = ""  # what is looked for in the names
    can_find: bool = False  # there are more than are listed
    said: str = ""
    picked: str = ""
    name: str = ""  # of the one picked
    facts: tuple[FactRow, ...] = ()
    bikes: tuple[tuple[str, str], ...] = ()
    is_away: bool = False
    can_be_put_away: bool = False


def resolve(
    listed: tuple[Person, ...],
    bikes: dict[str, tuple[tuple[str, str], ...]],
    one: Person | None,
    units: Units,
    at_bench: str | None,
) -> PeopleState:
    """Lay out the people listed, and the facts of the one picked, who need not be among them."""
    return PeopleState(
        rows=tuple(_row(person, bikes.get(person.id, ()), units) for person in listed),
        picked=one.id if one else "",
        name=one.name if one else "",
        facts=fact_rows(one, units) if one else (),
        bikes=bikes.get(one.id, ()) if one else (),
        is_away=one is not None and one.archived_at is not None,
        can_be_put_away=one is not None and one.archived_at is None and one.id != at_bench,
    )


def found_words(text: str, listed: int, found: int) -> str:
    """Say what the list leaves out; empty when it is whole."""
    if not found:
        return f"Nobody is called “{text}”." if text else ""
    how = "Type more of the name" if text else "Type part of a name"
    return f"The first {listed} of {found} people. {how} to find the others." if listed < found else ""


def _row(person: Person, bikes: tuple[tuple[str, str], ...], units: Units) -> PersonRow:
    does = [words for words, is_so in (("rides", person.rides), ("works here", person.works_here)) if is_so]
    return PersonRow(
        person.id,
        person.name,
        "put away" if person.archived_at else ", ".join([*does, "a child"] if person.is_child else does),
        units.text(person.mass_kg, "mass") if person.mass_kg is not None else "–",
        ", ".join(name for _, name in bikes) or "–",
        person.archived_at is not None,
    )


class PeopleViewModel(ViewModel[PeopleState]):
    """The sheet of people and its deeds."""

    station = "garage"
    watched = frozenset({"person", "bike", "bike_rider"})
    _picked = ""
    _text = ""

    def read(self) -> PeopleState:
        """Read the people found and their bikes, as far as they are listed."""
        listed, found = self._desk.ask(people_found(self._text, most=MOST))
        one = self._desk.ask(person(self._picked)) if self._picked else None
        bikes = self._desk.ask(bikes_by_rider(tuple({*(some.id for some in listed), self._picked})))
        state = resolve(listed, bikes, one, self._bench.units, self._desk.person_id)
        can_find = bool(self._text) or found > MOST
        return replace(state, text=self._text, can_find=can_find, said=found_words(self._text, len(listed), found))

    def find(self, text: str) -> None:
        """List the people in whose names all these words occur."""
        self._text = " ".join(text.split())
        self.refresh()

    def pick(self, person_id: str) -> None:
        """Open the facts of somebody."""
        self._picked = person_id
        self.refresh()

    def add(self, name: str) -> bool:
        """Add somebody who rides, and open their facts."""
        try:
            deed = add_person(name, like=self._bench.person)
        except WorkbenchError as error:
            self.refused.emit(Problem(str(error), "new_person"))
            return False
        added = self.act(f"Add {name.strip()[:40]}", deed)
        if added is not None:
            self.pick(added.id)
        return added is not None

    def set_fact(self, name: str, value: Any) -> bool:
        """Change one fact of the one picked."""
        row = next((row for row in self.state.facts if row.name == name), None)
        if row is None or row.value == value:
            return True
        return self.edit_fact(Person, row.record_id, name, value, f"{self.state.name[:30]}: {row.label.lower()}")

    def put_away(self) -> None:
        """Put the one picked away, or bring them back."""
        state = self.state
        if state.is_away:
            self.act(f"Bring back {state.name[:40]}", bring_back_person(state.picked))
        elif state.can_be_put_away:
            self.act(f"Put away {state.name[:40]}", archive_person(state.picked))

    def open_bike(self, bike_id: str) -> None:
        """Put a bike of the one picked on the bench, as theirs."""
        self._bench.put_bike(bike_id, rider_id=self.state.picked)
        self._bench.go_to(Station.GARAGE)
