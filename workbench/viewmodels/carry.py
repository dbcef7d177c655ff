"""Carry a setup to another day: what to set here, what it will show there, what to leave alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from workbench.actions.desk import Desk
from workbench.actions.spring import SpringRecords, spring_records
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.unit import Unit
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.carry_plan import ENTRIES, PLANNED, CarryPlan, plan_from_json
from workbench.viewmodels.carry_row import CarryRow, CarryWay
from workbench.viewmodels.carry_rows import SIZES_FIRST, carry_rows, spacers_key, spacers_now
from workbench.viewmodels.coil_typed import Entry, read, unit_words
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_sizes import chamber_of

__all__ = ["CarryInput", "CarryRow", "CarryState", "CarryViewModel", "CarryWay", "resolve"]

MOST_SPACERS = 30


@dataclass(frozen=True, slots=True)
class CarryInput:
    """One entry: its label, text as typed, unit, and what is wrong with it."""

    name: str
    label: str
    text: str
    unit: str
    problem: str = ""


@dataclass(frozen=True, slots=True)
class CarryState:
    """The whole sheet."""

    inputs: tuple[CarryInput, ...] = ()
    rows: tuple[CarryRow, ...] = ()
    hint: str = ""
    note: str = ""
    values: Mapping[str, float] = field(default_factory=dict)  # what could be read, in internal units
    is_on_card: bool = False
    has_draft: bool = False


class CarryViewModel(ViewModel[CarryState]):
    """Computes only: what is typed is kept as a draft and can stand on the card, and is no record."""

    station = "card"

    def read(self) -> CarryState:
        """Read what is on the bike and carry it over."""
        if not self.bike_id:
            return CarryState()
        records, plan, draft_id = self._read()
        state = resolve(records, plan, self._bench.units)
        return replace(state, has_draft=draft_id is not None)

    def set_text(self, name: str, text: str) -> None:
        """Take one entry as typed."""
        self._keep(self._read()[1].with_text(name, text))

    def put_on_card(self, is_wanted: bool) -> None:
        """Say whether the card is to tell what to set for that day."""
        self._keep(replace(self._read()[1], is_on_card=is_wanted))

    def discard(self) -> None:
        """Put what was typed aside; its notice takes it back."""
        draft_id = self._read()[2]
        if draft_id is not None:
            self.discard_draft("Discarded what was to be carried over", draft_id)

    def _read(self) -> tuple[SpringRecords, CarryPlan, str | None]:
        records = self._desk.ask(spring_records(self.bike_id, self._bench.rider_id))
        plan, draft_id = plan_of(self._desk, self.bike_id, _rider_id(records), self._bench.units)
        return records, plan, draft_id

    def _keep(self, plan: CarryPlan) -> None:
        records = self._desk.ask(spring_records(self.bike_id, self._bench.rider_id))
        try:
            self._desk.keep_draft(
                PLANNED, plan.to_json(self._bench.units), bike_id=self.bike_id, subject=_rider_id(records)
            )
        except WorkbenchError as error:
            self.refuse(error)


def plan_of(desk: Desk, bike_id: str, rider_id: str | None, units: Units) -> tuple[CarryPlan, str | None]:
    """Give what is planned for a bike with one rider, and its draft's key if there is one."""
    kept = desk.open_draft(PLANNED, bike_id=bike_id, subject=rider_id)
    return (CarryPlan(), None) if kept is None else (plan_from_json(kept.body, units), kept.id)


def _rider_id(records: SpringRecords) -> str | None:
    return records.sag.rider.id if records.sag.rider else None


def resolve(records: SpringRecords, plan: CarryPlan, units: Units) -> CarryState:
    """Carry every pressure of the bike over to where the ride is."""
    typed, inputs, values = dict(plan.texts), [], {}
    for entry in ENTRIES:
        shown, value = _entry(entry, typed.get(entry.name, _first_text(records, entry.name, units)), units)
        inputs.append(shown)
        if value is not None:
            values[entry.name] = value
    offered = _spacers(records, typed, units)
    inputs += [shown for _, shown, _ in offered]
    spacers = {unit.id: count for unit, _, count in offered if count is not None}
    state = CarryState(tuple(inputs), hint=_wrong(inputs), values=values, is_on_card=plan.is_on_card)
    lacking = [entry.label.lower() for entry in ENTRIES if entry.is_needed and entry.name not in values]
    if lacking:
        return replace(state, hint=state.hint or f"Still to enter: {', '.join(lacking)}.")
    note = "" if offered or not any(unit.spring == "air" for unit in records.sag.parts.units) else SIZES_FIRST
    return replace(state, rows=carry_rows(records, values, spacers, units), note=note)


def _entry(entry: Entry, text: str, units: Units) -> tuple[CarryInput, float | None]:
    """Read one entry; what is wrong with it is said at its field and its value left out."""
    shown = CarryInput(entry.name, entry.label, text, unit_words(entry, units).replace("deg", "°"))
    try:
        return shown, read(entry, text, units)
    except InputError as error:
        return replace(shown, problem=str(error)), None


def _wrong(inputs: list[CarryInput]) -> str:
    wrong = ", ".join(one.label.removesuffix(", then").lower() for one in inputs if one.problem)
    return f"To be put right, and left out until then: {wrong}." if wrong else ""


def _spacers(
    records: SpringRecords, typed: Mapping[str, str], units: Units
) -> list[tuple[Unit, CarryInput, int | None]]:
    """Give the entries for spacers where the sizes are known, and what was asked for."""
    offered = []
    for unit in records.sag.parts.units:
        present = spacers_now(records, unit)
        if present is None:
            continue
        entry = Entry(spacers_key(unit), f"Volume spacers in the {unit.kind}, then", "count", 0, _most_spacers(unit))
        shown, count = _entry(entry, typed.get(entry.name, f"{present}"), units)
        offered.append((unit, shown, None if count is None else round(count)))
    return offered


def _most_spacers(unit: Unit) -> int:
    """Give how many spacers go in: the maker's limit, and no more than leave the piston its travel."""
    most = MOST_SPACERS if unit.spacer_limit is None else unit.spacer_limit
    while most:
        try:
            chamber_of(unit, most, 0.0, rate_n_per_mm=0.0)
        except InputError:
            most -= 1
        else:
            break
    return most


def _first_text(records: SpringRecords, name: str, units: Units) -> str:
    """Begin with the temperature the pressure was set at, sea level, and the rider's mass."""
    if name in ("here_m", "there_m"):
        return "0"
    if name == "rider_kg":
        rider = records.sag.rider
        return units.text(rider.mass_kg, "mass").split("\u2009")[0] if rider and rider.mass_kg else ""
    if name == "here_c":
        known = [line.temperature_c for line in records.sag.parts.now if line.temperature_c is not None]
        return units.text(known[0], "temperature").split("\u2009")[0] if known else ""
    return ""
