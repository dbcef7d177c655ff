"""Sag: read what is known of it, keep a measuring, put its entry aside, open adjusters for it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from workbench.actions.checkin import refuse_if_stopped
from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.pumps import find_pumps, pressure_log
from workbench.actions.put_back import adjuster_log
from workbench.library.gate import Gate, Reader
from workbench.model.coil import Rows, fitted_rows
from workbench.model.errors import NotEnoughData
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.put_back import line_before_measuring
from workbench.model.sag import SagMeasurement, SagReading, SagTarget, spread_mm
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item, OnBike
from workbench.model.unit import LeveragePoint, LeverageSurvey, Pump, Spring, Unit, survey_in_use


@dataclass(frozen=True, slots=True)
class SagRecords:
    """What the sag sheet is made from."""

    parts: BikeParts
    rider: Person | None
    measurements: tuple[SagMeasurement, ...]  # of this rider, oldest first
    readings: tuple[SagReading, ...]
    targets: tuple[SagTarget, ...]
    recorded: frozenset[str]  # adjusters whose place before measuring is on record
    leverage: tuple[LeveragePoint, ...] = ()  # of the mounting the shock is in, by stroke
    leverage_sd_mm: float = 1.0
    pumps: tuple[Pump, ...] = ()
    pressures: tuple[OnBike, ...] = ()  # every line about a main pressure, oldest first
    springs: tuple[Spring, ...] = ()  # coil springs at hand, softest first
    table_rates: dict[str, frozenset[float]] = field(default_factory=dict)
    # unit -> rates noted by fitting a spring with a table of travel and force
    elsewhere: dict[str, tuple[tuple[float, float], ...]] = field(default_factory=dict)
    # unit -> rider mass and pressure at target on other bikes with the same unit


def sag_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], SagRecords]:
    """Give the query for everything known about the sag of a bike with one rider, the main one by default."""

    def query(reader: Reader) -> SagRecords:
        parts = read_parts(reader, bike_id)
        rider = parts.rider(rider_id)
        rider_key = rider.id if rider else ""
        measurements = reader.find(
            SagMeasurement, bike_id=bike_id, rider_id=rider_key, order_by=("measured_at", "is_kept")
        )
        keys = tuple(one.id for one in measurements)
        log = adjuster_log(reader, bike_id)
        recorded = {adjuster.id for adjuster in parts.adjusters if line_before_measuring(log, adjuster.id) is not None}
        survey = _survey(reader, parts)
        return SagRecords(
            leverage=reader.find(LeveragePoint, survey_id=survey.id, order_by=("stroke_mm",)) if survey else (),
            leverage_sd_mm=survey.reading_sd_mm if survey else 1.0,
            parts=parts,
            rider=rider,
            measurements=measurements,
            readings=reader.find(SagReading, measurement_id=keys, order_by=("number",)),
            targets=reader.find(SagTarget, bike_id=bike_id, rider_id=rider_key),
            recorded=frozenset(recorded),
            pumps=find_pumps(reader),
            pressures=pressure_log(reader, bike_id),
            springs=reader.find(
                Spring, unit_id=tuple(unit.id for unit in parts.units), order_by=("rate_n_per_mm", "id")
            ),
            table_rates=_table_rates(reader, parts),
            elsewhere={unit.id: _elsewhere(reader, unit) for unit in parts.units if unit.name.strip()},
        )

    return query


def _table_rates(reader: Reader, parts: BikeParts) -> dict[str, frozenset[float]]:
    noted = reader.find(OnBike, bike_id=parts.bike.id, item=Item.SPRING_RATE, how="table")
    return {
        unit.id: frozenset(line.value for line in noted if line.subject_id == unit.id and line.value is not None)
        for unit in parts.units
    }


def rows_of(records: SagRecords, unit: Unit, rate_n_per_mm: float | None) -> Rows:
    """Give the table of the progressive spring a rate on a unit stands for; empty for a spring of one rate."""
    return fitted_rows(unit, records.springs, records.table_rates.get(unit.id, frozenset()), rate_n_per_mm)


def _survey(reader: Reader, parts: BikeParts) -> LeverageSurvey | None:
    shock = parts.unit("rear")
    if shock is None:
        return None
    return survey_in_use(reader.find(LeverageSurvey, unit_id=shock.id, order_by=("-made_at",)), shock)


def _elsewhere(reader: Reader, unit: Unit) -> tuple[tuple[float, float], ...]:
    """Give rider mass and pressure where a unit of the same name met its target on another bike, one pair a bike."""
    name = unit.name.strip().casefold()
    same = [one for one in reader.find(Unit, kind=unit.kind) if one.name.strip().casefold() == name]
    pairs: dict[str, tuple[float, float]] = {}
    others = tuple(one.id for one in same if one.bike_id != unit.bike_id)
    for one in reader.find(SagMeasurement, unit_id=others, is_kept=True, order_by=("measured_at",)):
        if one.is_met and one.rider_mass_kg and one.pressure_kpa:
            pairs[one.bike_id] = (one.rider_mass_kg, one.pressure_kpa)
    return tuple(pairs.values())


def keep_sag(
    bike_id: str,
    rider_id: str,
    unit_id: str,
    rounds: tuple[SagRound, ...],
    band: Band,
    *,
    draft_id: str | None = None,
) -> Callable[[Gate], SagMeasurement]:
    """Give the deed that keeps a measuring: every round, the last one as what holds, with spring and target."""
    if not rounds or not all(one.readings_mm for one in rounds):
        raise NotEnoughData("There is no reading to keep yet. Measure at least once.")

    def deed(gate: Gate) -> SagMeasurement:
        refuse_if_stopped(gate, bike_id)
        unit = gate.need(Unit, unit_id)
        parts = read_parts(gate, bike_id)
        for number, one in enumerate(rounds):
            kept = _measurement(gate, parts, unit, rider_id, one, band, is_kept=number == len(rounds) - 1)
            gate.put(kept, *_readings(kept.id, one))
        _log_spring(gate, parts, unit, rounds[-1])
        _put_target(gate, unit, rider_id, band)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return kept

    return deed


def _measurement(
    gate: Gate, parts: BikeParts, unit: Unit, rider_id: str, one: SagRound, band: Band, *, is_kept: bool
) -> SagMeasurement:
    if unit.travel_mm is None:
        raise NotEnoughData("The travel of this unit is not known, so its sag has no percentage. State it first.")
    generation = parts.generation(unit.id)
    rider = gate.need(Person, rider_id)
    return SagMeasurement(
        id=new_id(),
        bike_id=unit.bike_id,
        rider_id=rider_id,
        unit_id=unit.id,
        measured_at=one.measured_at or gate.now,
        posture=one.posture,
        travel_mm=unit.travel_mm,
        sag_mm=one.sag_mm,
        spread_mm=spread_mm(one.readings_mm, one.settled),
        target=band.middle,
        target_low=band.low,
        target_high=band.high,
        target_origin=band.origin,
        is_kept=is_kept,
        method=one.method,
        generation_id=generation.id if generation else None,
        pressure_kpa=one.pressure_kpa,
        pressure_how=one.pressure_how,
        second_kpa=one.second_kpa,
        negative_kpa=one.negative_kpa,
        rate_n_per_mm=one.rate_n_per_mm,
        preload_mm=one.preload_mm,
        spacers=one.spacers,
        temperature_c=one.temperature_c,
        rider_mass_kg=rider.mass_kg,
        pump_id=_pump_id(gate, one),
        person_id=gate.person_id,
    )


def _readings(measurement_id: str, one: SagRound) -> tuple[SagReading, ...]:
    ways = one.settled + ("",) * len(one.readings_mm)
    return tuple(
        SagReading(new_id(), measurement_id, number, sag_mm, ways[number - 1])
        for number, sag_mm in enumerate(one.readings_mm, 1)
    )


def _log_spring(gate: Gate, parts: BikeParts, unit: Unit, one: SagRound) -> None:
    """Write what the spring stands at; a pressure is a fresh reading each time, the rest only where it differs."""
    if one.pressure_kpa is not None:
        _log_pressure(gate, unit, Item.PRESSURE, one.pressure_kpa, one)
    if one.second_kpa is not None:
        _log_pressure(gate, unit, Item.SECOND_PRESSURE, one.second_kpa, one)
    if one.negative_kpa is not None:
        _log_pressure(gate, unit, Item.NEGATIVE_PRESSURE, one.negative_kpa, one)
    stated = (
        (Item.SPRING_RATE, one.rate_n_per_mm),
        (Item.PRELOAD, one.preload_mm),
        (Item.SPACERS, None if one.spacers is None else float(one.spacers)),
    )
    for item, value in stated:
        if value is not None and parts.value(item, unit.id) != value:
            how = "table" if item == Item.SPRING_RATE and one.is_table else "set_to"
            log_line(gate, unit.bike_id, item, unit.id, value, how)


def _log_pressure(gate: Gate, unit: Unit, item: Item, kpa: float, one: SagRound) -> None:
    pump_id, temperature_c = _pump_id(gate, one), one.temperature_c
    log_line(gate, unit.bike_id, item, unit.id, kpa, one.pressure_how, temperature_c=temperature_c, pump_id=pump_id)


def _pump_id(gate: Gate, one: SagRound) -> str | None:
    """Give the pump a round was read with; None when it went away with an undone step."""
    return one.pump_id if one.pump_id and gate.get(Pump, one.pump_id) is not None else None


def _put_target(gate: Gate, unit: Unit, rider_id: str, band: Band) -> None:
    known = gate.find(SagTarget, bike_id=unit.bike_id, rider_id=rider_id, unit_id=unit.id)
    new = SagTarget(
        id=known[0].id if known else new_id(),
        bike_id=unit.bike_id,
        rider_id=rider_id,
        unit_id=unit.id,
        target=band.middle,
        low=band.low,
        high=band.high,
        origin=band.origin,
        posture=band.posture,
    )
    if not known or known[0] != new:
        gate.put(new)


def discard_sag(draft_id: str, bike_id: str, unit_id: str, last: SagRound | None) -> Callable[[Gate], None]:
    """Give the deed that puts an entry aside; what was pumped or fitted on the way is on the bike all the same."""

    def deed(gate: Gate) -> None:
        if last is not None:
            _log_spring(gate, read_parts(gate, bike_id), gate.need(Unit, unit_id), last)
        gate.remove_draft(draft_id)

    return deed


def note_as_found(bike_id: str, adjuster_id: str, position: int | None) -> Callable[[Gate], None]:
    """Give the deed that records where an adjuster stood before anything is opened."""

    def deed(gate: Gate) -> None:
        count = read_parts(gate, bike_id).range_of(adjuster_id)
        how = "unknown" if position is None else "counted"
        value = None if position is None else float(position)
        log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, value, how, range_id=count.id if count else None)

    return deed


def open_fully(bike_id: str, adjuster_ids: tuple[str, ...]) -> Callable[[Gate], None]:
    """Give the deed that says adjusters have been turned fully open for measuring."""

    def deed(gate: Gate) -> None:
        parts = read_parts(gate, bike_id)
        for adjuster_id in adjuster_ids:
            count = parts.range_of(adjuster_id)
            value = float(count.steps) if count else None
            log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, value, "opened", range_id=count.id if count else None)

    return deed
