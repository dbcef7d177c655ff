"""The bike's own sheet: what it is, what hangs on it, who rides it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from workbench.actions.garage_parts import MoreParts, limit_valve, more_parts
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.people import bikes_of, open_session_rider, rider_names
from workbench.model.bike import LAYOUTS, Bike, Station, StationState, Tyre, ends_of
from workbench.model.errors import WorkbenchError
from workbench.model.job import job_marks
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.unit import SPRINGS, Unit, Valve
from workbench.viewmodels.fact_rows import FactRow, fact_rows
from workbench.viewmodels.garage_deeds import GarageDeeds, GarageState, Section
from workbench.viewmodels.garage_fit import fit_rows
from workbench.viewmodels.garage_rows import photo_rows, rider_rows, unit_parts
from workbench.viewmodels.shown import Units, short_date
from workbench.viewmodels.typed_facts import keep_typed, typed_key, typed_texts, with_typed

_SIZES = ("area_mm2", "positive_mm3", "negative_mm3")
_AIR_FACTS = (
    "minimum_kpa",
    "maximum_kpa",
    "maker_table",
    "has_second_positive",
    "second_minimum_kpa",
    "second_maximum_kpa",
    "fill_order",
    "negative",
    "spacer_limit",
    "spacer_volume_mm3",
    *_SIZES,
)
_COIL_FACTS = ("spring_stroke_mm", "preload_limit_mm", "preload_pitch_mm")
_SECOND = ("second_minimum_kpa", "second_maximum_kpa", "fill_order")  # only where there is a second chamber
_SPRING_FACTS = {"air": _AIR_FACTS, "coil": _COIL_FACTS, "air_coil": _AIR_FACTS + _COIL_FACTS}
_TAIL_FACTS = ("maker_sag_low", "maker_sag_high", "serial", "note")


_OWN_VALVE = {"negative_minimum_kpa": "minimum_kpa", "negative_maximum_kpa": "maximum_kpa"}
NOTHING_MORE = MoreParts()


def resolve(
    parts: BikeParts,
    known: tuple[tuple[str, str], ...],
    units: Units,
    typed: Mapping[str, str],
    more: MoreParts = NOTHING_MORE,
    rider: Person | None = None,
) -> GarageState:
    """Lay out the bike's facts by section; ``known`` are all who ride, ``typed`` texts that could not be read."""
    ridden_by = {person.id for person in parts.riders}
    rider = rider or parts.rider()
    sections = [_rider_section(rider, units)] if rider else []
    sections.append(
        Section("bike", "Bike", fact_rows(parts.bike, units, names=_bike_facts(parts.bike)), LAYOUTS[parts.bike.layout])
    )
    sections.extend(
        replace(_unit_section(parts, unit, units), parts=unit_parts(parts, more, unit, units)) for unit in parts.units
    )
    sections.extend(_tyre_section(tyre, units) for tyre in parts.tyres)
    return GarageState(
        bike_id=parts.bike.id,
        title=parts.bike.name,
        layout=LAYOUTS[parts.bike.layout],
        sections=tuple(replace(section, rows=with_typed(section.rows, typed)) for section in sections),
        riders=tuple((person.id, person.name) for person in parts.riders),
        others=tuple(one for one in known if one[0] not in ridden_by),
        missing=_missing(parts, rider),
        photos=photo_rows(more),
        is_template=parts.bike.template_at is not None,
        fits=fit_rows(parts, units),
    )


def _bike_facts(bike: Bike) -> tuple[str, ...]:
    rear = () if ends_of(bike.layout)[1] == "rigid" else ("rear_travel_mm",)
    return ("name", "discipline", "is_ebike", *rear, "head_angle_deg", "wheelbase_mm", "bb_drop_mm", "tags", "note")


def _rider_section(rider: Person, units: Units) -> Section:
    names = ("name", "mass_kg", "is_child", "pressure_unit", "length_unit", "mass_unit", "rate_unit")
    return Section("rider", "Rider", fact_rows(rider, units, names=names), "The card is printed in the rider's units.")


def _unit_section(parts: BikeParts, unit: Unit, units: Units) -> Section:
    is_air = unit.spring != "coil"
    length = ("eye_to_eye_mm",) if unit.kind == "shock" else ()
    made = ("is_dual_crown", "is_inverted", "damper_in_one_leg") if unit.kind == "fork" else ()
    spring = tuple(name for name in _SPRING_FACTS[unit.spring] if unit.has_second_positive or name not in _SECOND)
    names = ("name", "travel_mm", *length, *spring, "exposed_nominal_mm", *made, *_TAIL_FACTS)
    generation = parts.generation(unit.id)
    since = f"hardware no. {generation.number} since {short_date(generation.started_at)}" if generation else ""
    labels = {"travel_mm": "Travel" if unit.kind == "fork" else "Stroke"}
    care = (
        "Stay within the maker's lowest and highest pressure. Touch only the valves the maker gives to the rider:"
        " some hold a damper's gas charge."
        if is_air
        else "Never more preload than the maker allows; the collar is never loose."
    )
    return Section(
        unit.kind,
        "Fork" if unit.kind == "fork" else "Shock",
        _with_own_valve(parts, unit, fact_rows(unit, units, names=names, labels=labels), units),
        f"{SPRINGS[unit.spring]} spring, {since}",
        care,
        unit.id,
    )


def _with_own_valve(parts: BikeParts, unit: Unit, rows: tuple[FactRow, ...], units: Units) -> tuple[FactRow, ...]:
    """Put the limits of a negative chamber with its own valve after the line that says it has one."""
    place = next((at for at, row in enumerate(rows, 1) if row.name == "negative"), None)
    if unit.negative != "separate" or place is None:
        return rows
    kept = (one for one in parts.valves if one.unit_id == unit.id and one.purpose == "negative")
    valve = next(kept, Valve("", unit.id, "negative"))
    own = tuple(
        replace(row, record_id=unit.id, name=f"negative_{row.name}")
        for row in fact_rows(valve, units, names=("minimum_kpa", "maximum_kpa"))
    )
    return (*rows[:place], *own, *rows[place:])


def _tyre_section(tyre: Tyre, units: Units) -> Section:
    return Section(f"{tyre.end}_tyre", f"{tyre.end.capitalize()} tyre", fact_rows(tyre, units))


def _missing(parts: BikeParts, rider: Person | None) -> str:
    wanted = []
    if rider is None:
        wanted.append("a rider")
    elif rider.mass_kg is None:
        wanted.append("the rider's mass ready to ride")
    wanted.extend(
        "the fork's travel" if unit.kind == "fork" else "the shock's stroke"
        for unit in parts.units
        if unit.travel_mm is None
    )
    return f"Still needed before sag: {', '.join(wanted)}." if wanted else ""


class GarageViewModel(GarageDeeds):
    """The bike's sheet and its deeds."""

    station = "garage"
    watched = frozenset(
        {
            "bike",
            "bike_rider",
            "person",
            "unit",
            "generation",
            "tyre",
            "valve",
            "photo",
            "range_count",
            "adjuster",
            "sag_measurement",
            "session",
        }
    )

    def read(self) -> GarageState:
        """Read the bike on the bench."""
        if not self.bike_id:
            return GarageState()
        try:
            parts = self._desk.ask(bike_parts(self.bike_id))
        except WorkbenchError:  # the bike went away with an undone step
            return GarageState()
        typed = typed_texts(self._desk, self.bike_id)
        more, rider = self._desk.ask(more_parts(self.bike_id)), parts.rider(self._bench.rider_id)
        state = resolve(parts, self._desk.ask(rider_names()), self._bench.units, typed, more, rider)
        bikes = {one.id: tuple(bike.name for bike in self._desk.ask(bikes_of(one.id))) for one in parts.riders}
        busy = self._desk.ask(open_session_rider(self.bike_id))
        return replace(state, rider_rows=rider_rows(parts, rider, bikes, busy))

    def next_station(self) -> str:
        """Give the station to go on to: the one that is due, the card when none is."""
        if not self.state.bike_id:
            return Station.CHECKIN
        marks = job_marks(
            self._desk.ask(job_records(self.bike_id, (), rider_id=self._bench.rider_id, now=self._desk.now()))
        )
        due = next((mark.station for mark in marks if mark.state == StationState.NOW), Station.CARD)
        return Station.CHECKIN if due == Station.GARAGE else due

    def set_fact(self, section: str, name: str, value: Any) -> bool:
        """Change one fact; the label says which."""
        row = next(
            (row for part in self.state.sections if part.key == section for row in part.rows if row.name == name), None
        )
        if row is None or row.value == value:
            return True
        title = next(part.title for part in self.state.sections if part.key == section)
        label = f"{title}: {row.label.lower()}"
        place = f"{section}/{name}"
        if name in _OWN_VALVE:
            return self._limit_own_valve(row.record_id, _OWN_VALVE[name], value, label, place)
        return self.edit_fact(_RECORDS.get(title, Unit), row.record_id, name, value, label, field=place)

    def _limit_own_valve(self, unit_id: str, name: str, value: Any, label: str, place: str) -> bool:
        try:
            deed = limit_valve(unit_id, "negative", name, value)
            self._desk.do(label, deed, bike_id=self.bike_id, station=self.station)
        except WorkbenchError as error:
            self.refuse(error, place)
            return False
        return True

    def keep_text(self, section: str, name: str, text: str) -> None:
        """Keep text that could not be read, to show it again."""
        row = next(
            (row for part in self.state.sections if part.key == section for row in part.rows if row.name == name), None
        )
        if row is not None:
            keep_typed(self._desk, self.bike_id, typed_key(row.record_id, name), text)

    def show_spring(self, unit_id: str) -> None:
        """Say which end the spring sheet opens at."""
        unit = next((one for one in self._desk.ask(bike_parts(self.bike_id)).units if one.id == unit_id), None)
        if unit is not None:
            self._desk.set_setting(f"spring/end/{self.bike_id}", unit.end)


_RECORDS: dict[str, type] = {"Rider": Person, "Bike": Bike, "Front tyre": Tyre, "Rear tyre": Tyre}
