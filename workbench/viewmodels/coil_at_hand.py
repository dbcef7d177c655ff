"""The springs that could be fitted, the nearest to the target first: sag, preload force and coil bind of each."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from workbench.model.coil import curve_rows, how_known, pitch_of, preload_of_turns_mm, turns_of
from workbench.model.errors import InputError
from workbench.model.item_facts import maker_limits
from workbench.model.sag import METHOD_SD_MM
from workbench.model.sag_rules import most_preload_mm, preload_needed_mm
from workbench.model.setting import HOWS, Item, OnBike
from workbench.model.unit import Spring, Unit
from workbench.model.units import from_unit
from workbench.viewmodels.coil_sheets import CoilSheet, Load, SpringLine, percent, rate_interval, rate_parts
from workbench.viewmodels.coil_typed import CoilDraft, CoilField, Entry, finely, number, read, read_all
from workbench.viewmodels.coil_wire import LABEL, STROKE
from workbench.viewmodels.shown import Units

if TYPE_CHECKING:
    from workbench.physics.coil_choice import Fitted

DRAFT = "coil_at_hand"
LISTS = (("25", "Steps of 25 lbf/in"), ("50", "Steps of 50 lbf/in"), ("own", "At hand"))
RATE = Entry("rate", "Rate", "spring_rate", 1, 500)
ADDS = (RATE, STROKE, replace(LABEL, label="Name"))
PRELOAD = Entry("preload_mm", "Preload", "length", 0, 50, help="From slack-free contact.")
TURNS = Entry("preload_turns", "In turns of the collar", "turns", 0, 50)
SAG_FIRST = "Measure sag first: then the sag each spring gives stands beside it, the nearest first."


@dataclass(frozen=True, slots=True)
class OnUnit:
    """What the sheet is about: the unit, the springs at hand for it, what stands on the bike, and the load."""

    unit: Unit
    at_hand: tuple[Spring, ...]
    rate_line: OnBike | None
    preload_mm: float | None  # as on the bike
    load: Load | None


@dataclass(frozen=True, slots=True)
class TriedPreload:
    """Preload as last typed, in one of its two fields; nothing typed: as on the bike."""

    name: str = ""
    text: str = ""


def read_preload(tried: TriedPreload, about: OnUnit, units: Units) -> tuple[float, tuple[CoilField, ...]]:
    """Give the preload to reckon with, and both of its fields, each showing the other's value."""
    unit, on_bike = about.unit, about.preload_mm or 0.0
    value, problem = on_bike, ""
    if tried.name:
        try:
            value = _typed_preload(tried, unit, units)
        except InputError as error:
            problem = str(error)
    pitch = f"{finely(pitch_of(unit), units)} a turn"
    pitch += ", as stated in the garage." if unit.preload_pitch_mm else " is assumed; state it in the garage."
    shown = {
        PRELOAD.name: finely(value, units).partition("\u2009")[0],
        TURNS.name: number(turns_of(value, unit), "turns", units),
    }
    if tried.name:
        shown[tried.name] = tried.text
        if problem:
            shown[TURNS.name if tried.name == PRELOAD.name else PRELOAD.name] = ""
    return value, tuple(
        CoilField(
            entry.name,
            entry.label,
            shown[entry.name],
            units.length if entry is PRELOAD else "",
            problem if entry.name == tried.name else "",
            pitch if entry is TURNS else entry.help,
        )
        for entry in (PRELOAD, TURNS)
    )


def _typed_preload(tried: TriedPreload, unit: Unit, units: Units) -> float:
    _, most = maker_limits(Item.PRELOAD, unit)
    most_mm = PRELOAD.high if most is None else most
    entry = (
        replace(PRELOAD, high=most_mm) if tried.name == PRELOAD.name else replace(TURNS, high=turns_of(most_mm, unit))
    )
    typed = read(replace(entry, high=entry.high + 1e-9), tried.text, units) or 0.0
    return typed if tried.name == PRELOAD.name else preload_of_turns_mm(typed, unit)


def resolve_at_hand(about: OnUnit, choice: str, tried: TriedPreload, adds: CoilDraft, units: Units) -> CoilSheet:
    """Lay the list out: every spring with what it would do, the nearest to the target first."""
    preload_mm, fields = read_preload(tried, about, units)
    add_fields, _ = read_all(ADDS, dict(adds.texts), units)
    on_bike_mm = about.preload_mm or 0.0
    sheet = CoilSheet(
        choice=choice,
        choices=LISTS,
        preload_fields=fields,
        preload_words=_preload_words(about, preload_mm, units),
        can_set_preload=abs(preload_mm - on_bike_mm) > 1e-6 and not any(one.problem for one in fields),
        adds=add_fields if choice == "own" else (),
        springs=_lines(about, _candidates(about, choice, preload_mm), preload_mm, units),
    )
    if about.load is None:
        return replace(sheet, hint=SAG_FIRST)
    return replace(
        sheet,
        load_words=_load_words(about.load, about.unit, preload_mm, units),
        exact=rate_parts(_exact(about.load, preload_mm), units),
    )


def _exact(load: Load, preload_mm: float) -> float:
    from workbench.physics.coil_choice import rate_for_n_per_mm

    return rate_for_n_per_mm(load.load_n, stroke_mm=load.stroke_mm, target=load.target, preload_mm=preload_mm)


def _load_words(load: Load, unit: Unit, preload_mm: float, units: Units) -> str:
    from workbench.physics.coil_choice import load_interval_n

    sag, exact = load.sag, _exact(load, preload_mm)
    ends = load_interval_n(
        load.load_n,
        compressed_mm=sag.sag_mm + (sag.preload_mm or 0.0),
        end=unit.end,
        reading_sd_mm=METHOD_SD_MM.get(sag.method, METHOD_SD_MM["helper"]),
    )
    low, high = (exact * one / load.load_n for one in ends)
    return (
        f"Load {load.load_n:.0f}\u2009N: {units.text(sag.sag_mm, 'length')} of sag on"
        f" {units.text(sag.rate_n_per_mm, 'spring_rate')} with {units.text(sag.preload_mm or 0.0, 'length')} preload."
        f" Target {percent(load.target)} of {units.text(load.stroke_mm, 'length')}."
        f" The exact rate: {rate_interval(low, high, units)[:1].lower()}{rate_interval(low, high, units)[1:]}"
    )


def _preload_words(about: OnUnit, preload_mm: float, units: Units) -> str:
    """Say what preload alone would take, and what it does and does not do."""
    most_mm, origin = most_preload_mm(about.unit)
    most = f"{finely(most_mm, units)} ({origin})"
    words = []
    if preload_mm > most_mm + 1e-9:
        words.append(f"More preload than the most to use, {most}: a stiffer spring is wanted.")
    load = about.load
    if load is not None and load.sag.rate_n_per_mm:
        needed_mm = preload_needed_mm(load.load_n, load.sag.rate_n_per_mm, load.target * load.stroke_mm)
        spring = units.text(load.sag.rate_n_per_mm, "spring_rate")
        if needed_mm > most_mm:
            needed, limit = finely(needed_mm, units), "" if words else f": the most is {most}"
            words.append(
                f"Preload alone: {percent(load.target)} on {spring} would need {needed}. Refused{limit}."
                " Preload lifts the start of the stroke, the rate stays."
            )
        elif needed_mm < 0:
            words.append(f"Even without preload {spring} sags less than the target: too stiff.")
    return " ".join(words)


def _candidates(about: OnUnit, choice: str, preload_mm: float) -> tuple[Spring, ...]:
    """Give the springs of a list; steps lie around the exact rate, or around what is on the bike."""
    from workbench.physics.coil_choice import stock_rates_n_per_mm

    if choice == "own":
        return about.at_hand
    line = about.rate_line
    middle = _exact(about.load, preload_mm) if about.load is not None else line.value if line else None
    if middle is None:
        return ()
    step = from_unit(float(choice), "spring_rate", "lbf/in")
    return tuple(Spring("", about.unit.id, rate) for rate in stock_rates_n_per_mm(middle, step))


def _lines(about: OnUnit, springs: tuple[Spring, ...], preload_mm: float, units: Units) -> tuple[SpringLine, ...]:
    found = [(_line(about, spring, preload_mm, units), _miss(about, spring, preload_mm)) for spring in springs]
    ordered = [line for line, _ in sorted(found, key=lambda pair: pair[1])]
    first = next((place for place, line in enumerate(ordered) if not line.is_refused), None)
    is_known = about.load is not None
    return tuple(replace(line, is_nearest=is_known and place == first) for place, line in enumerate(ordered))


def _miss(about: OnUnit, spring: Spring, preload_mm: float) -> float:
    """Give how far a spring's sag lies from the target; without a load, its rate from the one on the bike."""
    if about.load is not None:
        there = _fitted(about, spring, preload_mm, about.load.load_n)
        return abs(there.sag_fraction - about.load.target) + (0.0 if there.carries else 1.0)
    now = about.rate_line.value if about.rate_line else None
    return abs(spring.rate_n_per_mm - now) if now is not None else spring.rate_n_per_mm


def _fitted(about: OnUnit, spring: Spring, preload_mm: float, load_n: float) -> Fitted:
    from workbench.physics.coil_choice import fitted, fitted_table
    from workbench.physics.spring_table import spring_table

    stroke_mm = about.unit.travel_mm or 1.0
    rows = curve_rows(spring)
    if rows:
        return fitted_table(
            load_n, spring_table(rows), stroke_mm=stroke_mm, preload_mm=preload_mm, spring_stroke_mm=spring.stroke_mm
        )
    return fitted(
        load_n,
        rate_n_per_mm=spring.rate_n_per_mm,
        stroke_mm=stroke_mm,
        preload_mm=preload_mm,
        spring_stroke_mm=spring.stroke_mm,
    )


def _line(about: OnUnit, spring: Spring, preload_mm: float, units: Units) -> SpringLine:
    load = about.load
    there = _fitted(about, spring, preload_mm, load.load_n if load else 1.0)
    is_curved = spring.curve is not None
    rate = there.rate_n_per_mm if is_curved and load is not None else spring.rate_n_per_mm
    text = units.text(rate, "spring_rate")
    line = about.rate_line
    is_on = line is not None and line.value is not None and abs(line.value - rate) < 0.05
    known = [] if not spring.id else [spring.label] if spring.label else []
    known += [] if not spring.id else [f"progressive, {how_known(spring)}" if is_curved else how_known(spring)]
    if is_on and line is not None:
        known.append("on the bike" + (f", {HOWS[line.how]}" if line.how in ("pressed", "wire", "table") else ""))
    if is_curved and load is not None:
        known.append("as force over compression at the rider's load")
    return SpringLine(
        key=spring.id or f"{rate:.6f}",
        name=text,
        known="; ".join(known),
        sag=_sag_words(there, load, units),
        force=f"{there.preload_force_n:.0f}\u2009N",
        bind=_bind_words(there, spring, about.unit, units),
        rate_n_per_mm=rate,
        stroke_mm=spring.stroke_mm,
        how=spring.how or "printed",
        is_table=is_curved,
        is_refused=there.binds,
        is_on_bike=is_on,
        can_remove=bool(spring.id),
    )


def _sag_words(there: Fitted, load: Load | None, units: Units) -> str:
    if load is None:
        return "\u2013"
    if not there.carries:
        return "pressed to the end"
    return f"{percent(there.sag_fraction)}, {units.text(there.sag_mm, 'length')}"


def _bind_words(there: Fitted, spring: Spring, unit: Unit, units: Units) -> str:
    if unit.travel_mm is None:
        return "stroke of the unit not stated"
    if spring.stroke_mm is None and not spring.curve:
        return f"not stated; {units.text(there.needed_mm, 'length')} are needed"
    if spring.stroke_mm is None:
        return "coil bind: do not fit" if there.binds else ""
    has, needs = units.text(spring.stroke_mm, "length"), units.text(there.needed_mm, "length")
    return f"coil bind: has {has}, needs {needs}. Do not fit" if there.binds else f"no bind: has {has}, needs {needs}"
