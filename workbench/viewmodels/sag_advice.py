"""What to do after a round of readings: stay, set another pressure, fit another spring."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from workbench.model.errors import WorkbenchError
from workbench.model.sag import METHOD_SD_MM, SagMeasurement
from workbench.model.sag_rules import (
    LARGE_MOVE,
    Band,
    SagRound,
    most_preload_mm,
    move_fraction,
    preload_needed_mm,
    rounded_pressure,
)
from workbench.model.unit import Unit
from workbench.model.units import from_unit
from workbench.viewmodels.sag_draft import SagDraft, sag_fraction
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_sizes import chamber_of, own_kpa

VENTING = (
    "Vent slowly, cycling all the while. If it pulls itself short, or is shorter than it was, stop: a charged negative"
    " chamber is trapped, do not unscrew anything."
)

# What a gauge can be read to, in its own unit (common practice, no source).
DIVISIONS = {"psi": 1.0, "bar": 0.1, "kPa": 5.0}


@dataclass(frozen=True, slots=True)
class Option:
    """One thing that can be set before measuring again."""

    verb: str  # "Set 172 psi and measure again"
    title: str
    detail: str
    is_refused: bool = False
    pressure_kpa: float | None = None
    rate_n_per_mm: float | None = None
    preload_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Advice:
    """What follows from the readings so far."""

    verdict: str = ""
    is_met: bool = False
    lead: str = ""
    number: str = ""
    number_unit: str = ""
    also: str = ""
    expected: str = ""
    outcome: str = ""  # settled or limited, in words
    reason: str = ""
    limits: str = ""
    large_move: str = ""
    care: str = ""
    preload: str = ""
    options: tuple[Option, ...] = ()
    shows_options: bool = False  # more than one way: list them
    chosen: int | None = None  # the option that comes next; None: keep what is
    predicted_mm: float | None = None
    predicted_low_mm: float | None = None  # nine times in ten the sag lies between these
    predicted_high_mm: float | None = None
    problem: str = ""


def percent(fraction: float) -> str:
    """Say a sag in whole percent."""
    return f"{100 * fraction:.0f}\u2009%"


def band_text(band: Band) -> str:
    """Say a band in percent, with a half where it has one."""
    low, high = (f"{100 * end:.1f}".removesuffix(".0") for end in (band.low, band.high))
    return f"{low}\u2009%" if low == high else f"{low} to {high}\u2009%"


def advise(draft: SagDraft, unit: Unit, band: Band, earlier: Sequence[SagMeasurement], units: Units) -> Advice:
    """Give the advice after the round under way."""
    sag = sag_fraction(draft, unit)
    if sag is None:
        return Advice(problem="There is no reading yet. Measure first.")
    try:
        if unit.spring == "coil":
            return _coil(draft, unit, band, sag, units)
        return _air(draft, unit, band, sag, earlier, units)
    except WorkbenchError as error:
        return Advice(verdict=_verdict(sag, band), is_met=band.holds(sag), problem=str(error))


def _verdict(sag: float, band: Band) -> str:
    if band.holds(sag):
        return f"In the band: {percent(sag)}."
    word = "Too little sag" if sag < band.low else "Too much sag"
    return f"{word}: {percent(sag)}, aimed at is {band_text(band)}."


def _air(
    draft: SagDraft, unit: Unit, band: Band, sag: float, earlier: Sequence[SagMeasurement], units: Units
) -> Advice:
    from workbench.physics.sag import SagReading, next_pressure

    chamber = chamber_of(unit, draft.spacers, draft.negative_kpa)
    pairs = [
        *((one.pressure_kpa, one.sag_mm) for one in earlier if _is_same_filling(one, draft)),
        *((one.pressure_kpa, one.sag_mm) for one in draft.all_rounds() if _is_alike(one, draft)),
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
    )
    now_kpa, travel_mm = draft.pressure_kpa or 0.0, unit.travel_mm or 0.0
    division = from_unit(DIVISIONS[units.pressure], "pressure", units.pressure)
    kpa = rounded_pressure(found.pressure_kpa, division, unit.minimum_kpa, unit.maximum_kpa)
    stays = abs(kpa - now_kpa) < 0.75 * division or (band.holds(sag) and found.settled)
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
        verdict=_verdict(sag, band),
        is_met=is_met,
        lead="Stay at" if stays or is_met else "Set",
        number=_parts(now_kpa, units)[0] if is_met else number,
        number_unit=number_unit,
        also=_other_unit(now_kpa if is_met else shown_kpa, units, draft.temperature_c),
        expected=_expected(found.sag_fraction, found.sag_low, found.sag_high) if goes_on else "",
        outcome=_outcome(found.settled, found.limited, is_met, stays, units),
        reason=found.reason,
        limits=_limits(unit, units),
        large_move=_large(move, now_kpa, kpa) if not stays and move > LARGE_MOVE else "",
        care=VENTING if goes_on and kpa < now_kpa else "",
        options=() if stays else (option,),
        chosen=0 if goes_on else None,
        predicted_mm=found.sag_fraction * travel_mm if goes_on else None,
        predicted_low_mm=found.sag_low * travel_mm if goes_on else None,
        predicted_high_mm=found.sag_high * travel_mm if goes_on else None,
    )


def _is_alike(one: SagRound, draft: SagDraft) -> bool:
    """Tell whether a round of this entry tells of the same load on the same chambers."""
    return one.posture == draft.posture and _filling(one) == _filling(draft)


def _is_same_filling(one: SagMeasurement, draft: SagDraft) -> bool:
    return _filling(one) == _filling(draft)


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
        tail = "The band is not met there; ask a mechanic about another spring." if stays else "It goes no further."
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


def _coil(draft: SagDraft, unit: Unit, band: Band, sag: float, units: Units) -> Advice:
    from workbench.physics.coil import next_rate

    stroke_mm, preload_mm = unit.travel_mm or 0.0, draft.preload_mm or 0.0
    rate = draft.rate_n_per_mm or 0.0
    found = next_rate(
        rate_n_per_mm=rate,
        sag_mm=draft.sag_mm,
        stroke_mm=stroke_mm,
        target=band.middle,
        preload_mm=preload_mm,
        stock_step_n_per_mm=from_unit(25.0, "spring_rate", "lbf/in"),
        spring_stroke_mm=draft.spring_stroke_mm,
    )
    options = tuple(_spring_option(stock, band, units) for stock in found.stock)
    is_met = band.holds(sag)
    chosen = None if is_met else _nearest(found.stock, band.middle, rate)
    needed = preload_needed_mm(found.load_n, rate, band.middle * stroke_mm)
    preload_words, preload_option = _preload(needed, preload_mm, unit, band, is_met, units)
    number, _, number_unit = units.text(found.rate_n_per_mm, "spring_rate").partition("\u2009")
    return Advice(
        verdict=_verdict(sag, band),
        is_met=is_met,
        lead="This spring fits; exact would be" if is_met else "Exact rate",
        number=number,
        number_unit=number_unit,
        also=f"load {found.load_n:.0f}\u2009N with {units.text(preload_mm, 'length')} preload",
        outcome="Settled: the spring on it is in the band." if is_met else "",
        care="Preload does not mend a wrong spring: it lifts the start of the stroke, the rate stays.",
        preload=preload_words,
        options=options + preload_option,
        shows_options=True,
        chosen=chosen,
        predicted_mm=found.stock[chosen][1] * stroke_mm if chosen is not None else None,
    )


def _spring_option(stock: tuple[float, float, bool], band: Band, units: Units) -> Option:
    rate, sag, binds = stock
    name = units.text(rate, "spring_rate")
    where = "in the band" if band.holds(sag) else "above the band" if sag > band.high else "below the band"
    detail = f"gives {100 * sag:.1f}\u2009% sag, {where}"
    if binds:
        detail = f"{detail}; coil bind with a spring of this usable stroke: blocked"
    return Option(f"Fit {name} and measure again", name, detail, is_refused=binds, rate_n_per_mm=rate)


def _nearest(stock: Sequence[tuple[float, float, bool]], target: float, rate: float) -> int | None:
    usable = [index for index, one in enumerate(stock) if not one[2] and abs(one[0] - rate) > 1e-6]
    return min(usable, key=lambda index: abs(stock[index][1] - target), default=None)


def _preload(
    needed_mm: float, now_mm: float, unit: Unit, band: Band, is_met: bool, units: Units
) -> tuple[str, tuple[Option, ...]]:
    """Say what preload alone would take, and offer it only where it stays within what a spring should be given."""
    if is_met:
        return "", ()
    amount, target = units.text(max(needed_mm, 0.0), "length"), f"{100 * band.middle:.0f}\u2009%"
    most, origin = most_preload_mm(unit)
    if needed_mm < 0:
        return f"Even without preload this spring gives less than {target}: too stiff.", ()
    if needed_mm > most:
        limit = units.text(most, "length")
        return f"Preload alone: {target} would need {amount}. Refused, the most is {limit} ({origin}).", ()
    verb = f"Set {amount} preload and measure again"
    detail = f"gives about {target}; within {units.text(most, 'length')} ({origin})"
    return "", (Option(verb, f"{amount} preload", detail, preload_mm=needed_mm),)
