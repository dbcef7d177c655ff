"""Carry a setup to another day: what to set here, what it will show there, what to leave alone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.desk import Desk
from workbench.actions.spring import SpringRecords, spring_records
from workbench.model.errors import InputError
from workbench.model.unit import Unit
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.carry_rows import SIZES_FIRST, CarryRow, CarryWay, carry_rows, spacers_key, spacers_now
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_sizes import chamber_of

__all__ = ["CarryInput", "CarryRow", "CarryState", "CarryViewModel", "CarryWay"]

LABELS = {
    "here_c": ("Temperature here", "temperature"),
    "there_c": ("Temperature at the ride", "temperature"),
    "here_m": ("Altitude here", "altitude"),
    "there_m": ("Altitude at the ride", "altitude"),
    "rider_kg": ("Rider ready to ride, then", "mass"),
}
LIMITS = {"temperature": (-40.0, 60.0), "altitude": (-400.0, 6000.0), "mass": (5.0, 300.0)}
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


class CarryViewModel(ViewModel[CarryState]):
    """Computes only: nothing here is a record."""

    station = "card"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._typed: dict[str, str] = {}
        super().__init__(desk, bench)

    def read(self) -> CarryState:
        """Read what is on the bike and carry it over."""
        if not self.bike_id:
            return CarryState()
        return resolve(
            self._desk.ask(spring_records(self.bike_id, self._bench.rider_id)), self._typed, self._bench.units
        )

    def set_text(self, name: str, text: str) -> None:
        """Take one entry as typed."""
        self._typed[name] = text
        self.refresh()


def resolve(records: SpringRecords, typed: dict[str, str], units: Units) -> CarryState:
    """Carry every pressure of the bike over to where the ride is."""
    inputs, values = [], {}
    for name, (label, quantity) in LABELS.items():
        text = typed.get(name, _first_text(records, name, units))
        given = CarryInput(name, label, text, units.unit(quantity).replace("deg", "°"))
        entry, values[name] = _entry(given, quantity, LIMITS[quantity], units)
        inputs.append(entry)
    spacers, offered = _spacers(records, typed, units)
    inputs += offered
    if values.get("here_c") is None or values.get("there_c") is None:
        return CarryState(tuple(inputs), hint="Enter the temperature here and at the ride.")
    note = "" if offered or not _airs(records) else SIZES_FIRST
    return CarryState(tuple(inputs), carry_rows(records, values, spacers, units), note=note)


def _entry(
    entry: CarryInput, quantity: str, limits: tuple[float, float], units: Units
) -> tuple[CarryInput, float | None]:
    """Read one entry; what is wrong with it is said at its field and its value left out."""
    try:
        return entry, _read(entry.label, entry.text, quantity, limits, units)
    except InputError as error:
        return replace(entry, problem=f"Allowed is {error.allowed}."), None


def _airs(records: SpringRecords) -> list[Unit]:
    return [unit for unit in records.sag.parts.units if unit.spring == "air"]


def _spacers(records: SpringRecords, typed: dict[str, str], units: Units) -> tuple[dict[str, int], list[CarryInput]]:
    """Give the spacers asked for by unit, and the entries for them where the sizes are known."""
    asked, inputs = {}, []
    for unit in _airs(records):
        present = spacers_now(records, unit)
        if present is None:
            continue
        name = spacers_key(unit)
        given = CarryInput(name, f"Volume spacers in the {unit.kind}, then", typed.get(name, f"{present}"), "")
        entry, count = _entry(given, "count", (0, _most_spacers(unit)), units)
        inputs.append(entry)
        if count is not None:
            asked[unit.id] = round(count)
    return asked, inputs


def _most_spacers(unit: Unit) -> int:
    """Give how many spacers go in: the maker's limit, and no more than leave the piston its travel."""
    most = MOST_SPACERS if unit.spacer_limit is None else unit.spacer_limit
    while most:
        try:
            chamber_of(unit, most)
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


def _read(label: str, text: str, quantity: str, limits: tuple[float, float], units: Units) -> float | None:
    if not text.strip():
        return None
    value, (low, high) = units.parse(text, quantity), limits
    if not low <= value <= high:
        raise InputError(label, text, f"{units.text(low, quantity)} to {units.text(high, quantity)}")
    return value
