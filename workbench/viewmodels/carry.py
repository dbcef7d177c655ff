"""Carry a setup to another day: what to set here, what it will show there, what to leave alone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.desk import Desk
from workbench.actions.spring import SpringRecords, spring_records
from workbench.model.errors import InputError
from workbench.model.setting import Item
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_curves import kept_sag

LABELS = {
    "here_c": ("Temperature here", "temperature"),
    "there_c": ("Temperature at the ride", "temperature"),
    "here_m": ("Altitude here", "altitude"),
    "there_m": ("Altitude at the ride", "altitude"),
    "rider_kg": ("Rider ready to ride, then", "mass"),
}
LIMITS = {"temperature": (-40.0, 60.0), "altitude": (-400.0, 6000.0), "mass": (5.0, 300.0)}


@dataclass(frozen=True, slots=True)
class CarryInput:
    """One entry: its label, text as typed, unit, and what is wrong with it."""

    name: str
    label: str
    text: str
    unit: str
    problem: str = ""


@dataclass(frozen=True, slots=True)
class CarryRow:
    """What to do about one spring or tyre."""

    title: str
    now: str
    set_here: str
    shows_there: str
    if_left: str
    reasons: str
    care: str = ""


@dataclass(frozen=True, slots=True)
class CarryState:
    """The whole sheet."""

    inputs: tuple[CarryInput, ...] = ()
    rows: tuple[CarryRow, ...] = ()
    hint: str = ""


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
        entry = CarryInput(name, label, text, units.unit(quantity).replace("deg", "°"))
        try:
            values[name] = _read(label, text, quantity, units)
        except InputError as error:
            entry = replace(entry, problem=f"Allowed is {error.allowed}.")
        inputs.append(entry)
    if values.get("here_c") is None or values.get("there_c") is None:
        return CarryState(tuple(inputs), hint="Enter the temperature here and at the ride.")
    return CarryState(tuple(inputs), _rows(records, values, units))


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


def _read(label: str, text: str, quantity: str, units: Units) -> float | None:
    if not text.strip():
        return None
    value = units.parse(text, quantity)
    low, high = LIMITS[quantity]
    if not low <= value <= high:
        raise InputError(label, text, f"{units.text(low, quantity)} to {units.text(high, quantity)}")
    return value


def _rows(records: SpringRecords, values: dict[str, float | None], units: Units) -> tuple[CarryRow, ...]:
    from workbench.physics.carry import CarryOver, carry_spring, carry_tyre

    parts, rows = records.sag.parts, []
    here_c, there_c = values["here_c"] or 0.0, values["there_c"] or 0.0
    here_m, there_m = values.get("here_m") or 0.0, values.get("there_m") or 0.0

    def row(title: str, kpa: float, carried: CarryOver) -> CarryRow:
        care = (
            "That is above the highest pressure the maker allows: set it at the ride." if carried.over_maximum else ""
        )
        return CarryRow(
            title,
            units.text(kpa, "pressure"),
            units.text(carried.set_here_kpa, "pressure"),
            units.text(carried.shows_there_kpa, "pressure"),
            units.text(carried.if_left_kpa, "pressure"),
            " ".join(carried.reasons),
            care,
        )

    for unit in parts.units:
        kpa = parts.value(Item.PRESSURE, unit.id)
        if kpa is None:
            continue
        sag = kept_sag(records, unit)
        old_kg = sag.rider_mass_kg if sag else None
        new_kg = values.get("rider_kg")
        heavier = old_kg is not None and new_kg is not None and abs(new_kg - old_kg) > 0.05
        carried = carry_spring(
            kpa,
            here_c=here_c,
            there_c=there_c,
            here_m=here_m,
            there_m=there_m,
            old_rider_kg=old_kg if heavier else None,
            new_rider_kg=new_kg if heavier else None,
            maximum_kpa=unit.maximum_kpa,
        )
        rows.append(row(parts.subject_title(Item.PRESSURE, unit.id), kpa, carried))
    for tyre in parts.tyres:
        kpa = parts.value(Item.TYRE_PRESSURE, tyre.id)
        if kpa is not None:
            carried = carry_tyre(kpa, here_c=here_c, there_c=there_c, here_m=here_m, there_m=there_m)
            rows.append(row(parts.subject_title(Item.TYRE_PRESSURE, tyre.id), kpa, carried))
    return tuple(rows)
