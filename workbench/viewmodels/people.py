"""Everybody the garage knows: what they weigh and read, which bikes they ride, who was put away."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from workbench.actions.people import add_person, archive_person, bikes_by_rider, bring_back_person, people
from workbench.model.bike import Station
from workbench.model.errors import WorkbenchError
from workbench.model.person import Person
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.fact_rows import FactRow, fact_rows
from workbench.viewmodels.shown import Units


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
    picked: str = ""
    facts: tuple[FactRow, ...] = ()
    bikes: tuple[tuple[str, str], ...] = ()
    is_away: bool = False
    can_be_put_away: bool = False


def resolve(
    everybody: tuple[Person, ...],
    bikes: dict[str, tuple[tuple[str, str], ...]],
    picked: str,
    units: Units,
    at_bench: str | None,
) -> PeopleState:
    """Lay out the list, those put away last, and the facts of the one picked."""
    one = next((person for person in everybody if person.id == picked), None)
    in_order = sorted(everybody, key=lambda person: person.archived_at is not None)
    return PeopleState(
        rows=tuple(_row(person, bikes.get(person.id, ()), units) for person in in_order),
        picked=one.id if one else "",
        facts=fact_rows(one, units) if one else (),
        bikes=bikes.get(one.id, ()) if one else (),
        is_away=one is not None and one.archived_at is not None,
        can_be_put_away=one is not None and one.archived_at is None and one.id != at_bench,
    )


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

    def read(self) -> PeopleState:
        """Read everybody and their bikes."""
        everybody = self._desk.ask(people(archived=True))
        return resolve(
            everybody, self._desk.ask(bikes_by_rider()), self._picked, self._bench.units, self._desk.person_id
        )

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
        who = next(one.name for one in self.state.rows if one.person_id == row.record_id)
        return self.edit_fact(Person, row.record_id, name, value, f"{who[:30]}: {row.label.lower()}")

    def put_away(self) -> None:
        """Put the one picked away, or bring them back."""
        row = next((one for one in self.state.rows if one.person_id == self.state.picked), None)
        if row is None:
            return
        if row.is_away:
            self.act(f"Bring back {row.name[:40]}", bring_back_person(row.person_id))
        elif self.state.can_be_put_away:
            self.act(f"Put away {row.name[:40]}", archive_person(row.person_id))

    def open_bike(self, bike_id: str) -> None:
        """Put a bike of the one picked on the bench, as theirs."""
        self._bench.put_bike(bike_id, rider_id=self.state.picked)
        self._bench.go_to(Station.GARAGE)
