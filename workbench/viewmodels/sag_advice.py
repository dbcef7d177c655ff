"""What to do after a round of readings: stay, set another pressure, fit another spring."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.model.care import VENTING
from workbench.model.errors import WorkbenchError
from workbench.model.sag import METHOD_SD_MM, SagMeasurement
from workbench.model.sag_rules import LARGE_MOVE, Band, SagRound, move_fraction, rounded_pressure
from workbench.model.unit import Unit
from workbench.model.units import from_unit
from workbench.viewmodels.sag_advised import Advice, Option, band_text, percent, verdict_words
from workbench.viewmodels.sag_coil import CoilKnown, coil_advice
from workbench.viewmodels.sag_draft import SagDraft, sag_fraction
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_sizes import chamber_at, coil_filling, coil_words, coils_of, leaves_coil_out, own_kpa

__all__ = ["Advice", "CoilKnown", "Option", "advise", "band_text", "percent"]

# What a mechanic can do where a pressure is at its limit and the band is not met.
WAYS_OUT = {
    "minimum": "ask a mechanic about a lighter spring or a retune",
    "maximum": "ask a mechanic about a firmer spring",
}

# What a gauge can be read to, in its own unit (common practice, no source).
DIVISIONS = {"psi": 1.0, "bar": 0.1, "kPa": 5.0}


def advise(
    draft: SagDraft,
    unit: Unit,
    band: Band,
    earlier: Sequence[SagMeasurement],
    units: Units,
    coil: CoilKnown | None = None,
) -> Advice:
    """Give the advice after the round under way; ``coil`` is what is known of the springs at hand."""
    sag = sag_fraction(draft, unit)
    if sag is None:
        return Advice(problem="There is no reading yet. Measure first.")
    try:
        if unit.spring == "coil":
            return coil_advice(draft, unit, band, sag, coil or CoilKnown(), units)
        return _air(draft, unit, band, sag, earlier, units)
    except WorkbenchError as error:
        return Advice(verdict=verdict_words(sag, band), is_met=band.holds(sag), problem=str(error))


def _air(
    draft: SagDraft, unit: Unit, band: Band, sag: float, earlier: Sequence[SagMeasurement], units: Units
) -> Advice:
    from workbench.physics.sag import SagReading, next_pressure

    chamber = chamber_at(unit, draft)
    pairs = [
        *((one.pressure_kpa, one.sag_mm) for one in earlier if _is_same_filling(one, draft, unit)),
        *((one.pressure_kpa, one.sag_mm) for one in draft.all_rounds() if _is_alike(one, draft, unit)),
    ]
    readings = [SagReading(pressure, sag_mm) for pressure, sag_mm in pairs if pressure is not None]
    found = next_pressure(
        readings,
        travel_mm=unit.travel_mm or 0.0,
        target=band.middle,
        end=unit.end,
        minimum_kpa=unit.minimum_kpa,
        maximum_kpa=unit.maximum_kpa,
        chamber=chamber,
        negative_kpa=own_kpa(unit, draft.negative_kpa) if chamber is not None else None,
        reading_sd_mm=METHOD_SD_MM.get(draft.method, METHOD_SD_MM["helper"]),
        coils=coils_of(unit, draft),
    )
    is_sure = not leaves_coil_out(unit, draft)  # else range and settling would be those of another spring
    now_kpa, travel_mm = draft.pressure_kpa or 0.0, unit.travel_mm or 0.0
    division = from_unit(DIVISIONS[units.pressure], "pressure", units.pressure)
    kpa = rounded_pressure(found.pressure_kpa, division, unit.minimum_kpa, unit.maximum_kpa)
    stays = abs(kpa - now_kpa) < 0.75 * division or (band.holds(sag) and found.settled and is_sure)
    shown_kpa = now_kpa if stays else kpa
    number, number_unit = _parts(shown_kpa, units)
    is_met = band.holds(sag)
    move = move_fraction(now_kpa, kpa)
    option = Option(
        verb=f"Set {number} {number_unit} and measure again",
        title=units.text(kpa, "pressure"),
        detail=found.reason,
        pressure_kpa=kpa,
    )
    goes_on = not stays and not is_met
    return Advice(
        verdict=verdict_words(sag, band),
        is_met=is_met,
        lead="Stay at" if stays or is_met else "Set",
        number=_parts(now_kpa, units)[0] if is_met else number,
        number_unit=number_unit,
        also=_other_unit(now_kpa if is_met else shown_kpa, units, draft.temperature_c),
        expected=_expected(found.sag_fraction, found.sag_low, found.sag_high) if goes_on and is_sure else "",
        outcome=_outcome(found.settled and is_sure, found.limited, is_met, stays, units),
        reason=" ".join(
            words for words in (found.reason, coil_words(unit, draft, is_known=chamber is not None)) if words
        ),
        limits=_limits(unit, units),
        large_move=_large(move, now_kpa, kpa) if not stays and move > LARGE_MOVE else "",
        care=VENTING if goes_on and kpa < now_kpa else "",
        options=() if stays else (option,),
        chosen=0 if goes_on else None,
        predicted_mm=found.sag_fraction * travel_mm if goes_on else None,
        predicted_low_mm=found.sag_low * travel_mm if goes_on and is_sure else None,
        predicted_high_mm=found.sag_high * travel_mm if goes_on and is_sure else None,
    )


def _is_alike(one: SagRound, draft: SagDraft, unit: Unit) -> bool:
    """Tell whether a round of this entry tells of the same load on the same chambers."""
    return one.posture == draft.posture and _is_same_filling(one, draft, unit)


def _is_same_filling(one: SagRound | SagMeasurement, draft: SagDraft, unit: Unit) -> bool:
    return _filling(one) == _filling(draft) and coil_filling(unit, one) == coil_filling(unit, draft)


def _filling(one: SagRound | SagMeasurement | SagDraft) -> tuple[float | None, float | None, int | None]:
    """Give what must be alike for two readings to tell of the same spring."""
    return one.second_kpa, one.negative_kpa, one.spacers


def _parts(kpa: float, units: Units) -> tuple[str, str]:
    number, _, unit = units.text(kpa, "pressure").partition("\u2009")
    return number, unit


def _other_unit(kpa: float, units: Units, temperature_c: float | None) -> str:
    """Say a pressure in the other common unit, and the temperature it was set at."""
    other = Units(pressure="psi" if units.pressure == "bar" else "bar").text(kpa, "pressure")
    return other if temperature_c is None else f"{other}, {units.text(temperature_c, 'temperature')}"


def _expected(sag: float, low: float, high: float) -> str:
    return f"Sag expected there: {percent(sag)} (nine times in ten {100 * low:.0f} to {percent(high)})."


def _outcome(settled: bool, limited: str | None, is_met: bool, stays: bool, units: Units) -> str:
    if limited is not None and not is_met:
        end = "lowest" if limited == "minimum" else "highest"
        tail = f"The band is not met there; {WAYS_OUT[limited]}." if stays else "It goes no further."
        return f"Limited: the {end} pressure the maker allows. {tail}"
    if is_met and (settled or stays):
        return "Settled: no further measurement is needed."
    if settled and not stays:
        return "Settled: one more measurement there would only confirm it."
    return ""


def _limits(unit: Unit, units: Units) -> str:
    low, high = unit.minimum_kpa, unit.maximum_kpa
    if low is None and high is None:
        return f"The limits of this {unit.kind} are not stated yet: see the maker's manual before you pump."
    if low is None or high is None:
        word = "At most" if low is None else "At least"
        return f"{word} {units.text(high if low is None else low, 'pressure')} in this {unit.kind}."
    return f"Limits of this {unit.kind}: {units.text(low, 'pressure')} to {units.text(high, 'pressure')}."


def _large(move: float, before_kpa: float, after_kpa: float) -> str:
    way = "up" if after_kpa > before_kpa else "down"
    return f"That is {percent(move)} {way} at once: go in steps, cycle at each, and cycle again at the end."
