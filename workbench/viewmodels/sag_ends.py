"""Both ends side by side: the sag last kept, what it aims at, due or done."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.sag import SagRecords, rows_of
from workbench.model.sag import TARGET_ORIGINS, SagMeasurement
from workbench.model.sag_rules import Band, first_band, mass_drift_kg
from workbench.model.setting import GAUGE_KPA, HOWS
from workbench.model.unit import SPRINGS, Unit
from workbench.model.units import to_unit
from workbench.viewmodels.sag_advice import WAYS_OUT, band_text, percent
from workbench.viewmodels.sag_draft import SagDraft, Stage
from workbench.viewmodels.sag_friction import friction_shown, round_of
from workbench.viewmodels.shown import Units, short_date
from workbench.viewmodels.wheel import wheel_sag_words


@dataclass(frozen=True, slots=True)
class Ruler:
    """The travel drawn to scale with the band and every reading; lengths in mm."""

    travel_mm: float
    low_mm: float = 0.0
    high_mm: float = 0.0
    band_words: str = ""
    ticks_mm: tuple[float, ...] = ()
    sag_mm: float | None = None
    sag_words: str = ""
    predicted_mm: float | None = None
    predicted_words: str = ""
    title: str = ""
    shown_per_mm: float = 1.0
    unit: str = "mm"


@dataclass(frozen=True, slots=True)
class EndShown:
    """One end on the first page."""

    end: str
    title: str
    unit_words: str
    status: str
    is_due: bool
    number: str = ""
    number_unit: str = ""
    percent: str = ""
    spring_words: str = ""
    blocked: str = ""  # what has to be stated in the garage first
    verb: str = ""
    is_next: bool = False
    notes: str = ""  # sag at the wheel, friction
    has_curve: bool = False
    ruler: Ruler | None = None


def end_shown(records: SagRecords, unit: Unit, draft: SagDraft | None, units: Units) -> EndShown:
    """Lay out one end of the first page."""
    kept = last_kept(records, unit)
    target = next((one for one in records.targets if one.unit_id == unit.id), None)
    band = draft.band() if draft else None
    band = band or first_band(records.parts.bike, unit, target)
    length = "Fork travel" if unit.kind == "fork" else "Shock stroke"
    if unit.travel_mm is None:
        blocked = f"{length} is not stated yet, and sag is a part of it."
        return EndShown(
            unit.end, end_title(unit), _unit_words(unit, units), "needs the garage first", True, blocked=blocked
        )
    number, _, number_unit = units.text(kept.sag_mm, "length").partition("\u2009") if kept else ("", "", "")
    return EndShown(
        end=unit.end,
        title=end_title(unit),
        unit_words=_unit_words(unit, units),
        status=_status(kept, draft),
        is_due=kept is None or draft is not None,
        number=number,
        number_unit=number_unit,
        percent=percent(kept.sag_mm / kept.travel_mm) if kept else "",
        spring_words=_spring_words(kept, units) if kept else "",
        notes=_notes(records, unit, kept, units),
        has_curve=kept is not None or unit.spring == "coil",
        verb=f"Go on with the {unit.end}"
        if draft
        else f"Measure the {unit.end} again"
        if kept
        else f"Measure {unit.end} sag",
        ruler=_end_ruler(records, unit, kept, band, units),
    )


def last_kept(records: SagRecords, unit: Unit) -> SagMeasurement | None:
    """Give the newest kept measurement on the present hardware."""
    generation = records.parts.generation(unit.id)
    present = generation.id if generation else None
    found = [
        one for one in records.measurements if one.unit_id == unit.id and one.is_kept and one.generation_id == present
    ]
    return found[-1] if found else None


def _notes(records: SagRecords, unit: Unit, kept: SagMeasurement | None, units: Units) -> str:
    """Say what else the kept sag tells: the sag at the wheel, and friction where it was looked at."""
    if kept is None:
        return ""
    friction = friction_shown(round_of(kept, records.readings), unit, rows_of(records, unit, kept.rate_n_per_mm))
    words = [
        _drift_words(records, kept, units),
        _missed_words(kept, unit),
        wheel_sag_words(records, unit, kept.sag_mm, units),
        friction.words,
        friction.care,
    ]
    return ". ".join(one.removesuffix(".") for one in words if one) + "." if any(words) else ""


def _drift_words(records: SagRecords, kept: SagMeasurement, units: Units) -> str:
    """Ask for another measuring once the rider is not as heavy as they were."""
    drift_kg = mass_drift_kg(records.rider.mass_kg if records.rider else None, kept)
    if not drift_kg:
        return ""
    word = "heavier" if drift_kg > 0 else "lighter"
    more = "deeper" if drift_kg > 0 else "less deep"
    return f"The rider is {units.text(abs(drift_kg), 'mass')} {word} than then: sag will be {more}, measure again"


def _missed_words(kept: SagMeasurement, unit: Unit) -> str:
    """Say that the band was not met, and the way out where the pressure could go no further."""
    if kept.is_met:
        return ""
    sag = kept.sag_mm / kept.travel_mm
    is_little = sag < kept.target_low
    word, bound = ("lowest", unit.minimum_kpa) if is_little else ("highest", unit.maximum_kpa)
    kpa, band = kept.pressure_kpa, Band(kept.target_low, kept.target_high, kept.target_origin)
    aimed = f"{percent(sag)}, aimed at is {band_text(band)}"
    if kpa is None or bound is None or abs(kpa - bound) > GAUGE_KPA:
        return f"Not met: {aimed}"
    way_out = WAYS_OUT["minimum" if is_little else "maximum"]
    return f"Limited, not met: {aimed}, at the {word} pressure the maker allows; {way_out}"


def end_title(unit: Unit) -> str:
    return "Front" if unit.end == "front" else "Rear"


def _unit_words(unit: Unit, units: Units) -> str:
    name = unit.name or ("Fork" if unit.kind == "fork" else "Shock")
    length = "" if unit.travel_mm is None else f", {units.text(unit.travel_mm, 'length')}"
    return f"{name}, {SPRINGS[unit.spring].lower()}{length}"


def _status(kept: SagMeasurement | None, draft: SagDraft | None) -> str:
    if draft is not None:
        return f"under way: step {draft.stage} of {len(Stage)}"
    if kept is None:
        return "due"
    return f"done {short_date(kept.measured_at)}" + ("" if kept.is_met else ", not met")


def _spring_words(kept: SagMeasurement, units: Units) -> str:
    if kept.pressure_kpa is not None:
        warmth = "" if kept.temperature_c is None else f", {units.text(kept.temperature_c, 'temperature')}"
        return f"at {units.text(kept.pressure_kpa, 'pressure')} {HOWS[kept.pressure_how]}{warmth}"
    if kept.rate_n_per_mm is not None:
        return f"with {units.text(kept.rate_n_per_mm, 'spring_rate')}, preload {units.text(kept.preload_mm, 'length')}"
    return ""


def _end_ruler(records: SagRecords, unit: Unit, kept: SagMeasurement | None, band: Band, units: Units) -> Ruler:
    travel = unit.travel_mm or 0.0
    taken = [one.sag_mm for one in records.readings if kept is not None and one.measurement_id == kept.id]
    return Ruler(
        travel_mm=travel,
        low_mm=band.low * travel,
        high_mm=band.high * travel,
        band_words=f"target {band_text(band)} ({TARGET_ORIGINS[band.origin]}, {band.posture})",
        ticks_mm=tuple(taken),
        sag_mm=kept.sag_mm if kept else None,
        sag_words=percent(kept.sag_mm / kept.travel_mm) if kept else "",
        title=travel_words(unit, units),
        shown_per_mm=to_unit(1.0, "length", units.length),
        unit=units.length,
    )


def travel_words(unit: Unit, units: Units) -> str:
    return f"{'Travel' if unit.kind == 'fork' else 'Stroke'} {units.text(unit.travel_mm, 'length')}"
