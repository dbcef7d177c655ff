"""What a coil's sag asks for: the exact rate, the springs at hand or in the shops, and what preload can do."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from workbench.model.coil import Rows, curve_rows
from workbench.model.sag import METHOD_SD_MM
from workbench.model.sag_rules import Band, most_preload_mm, preload_needed_mm
from workbench.model.unit import Spring, Unit
from workbench.model.units import from_unit
from workbench.viewmodels.coil_sheets import coil_load_n, rate_interval
from workbench.viewmodels.coil_typed import CoilField
from workbench.viewmodels.sag_advised import Advice, Option, verdict_words
from workbench.viewmodels.sag_draft import SagDraft
from workbench.viewmodels.sag_springs import SPRINGS, read_springs
from workbench.viewmodels.shown import Units

if TYPE_CHECKING:
    from workbench.physics.coil_choice import Fitted

CARE = "Preload does not mend a wrong spring: it lifts the start of the stroke, the rate stays."
HELP = "As 450, 500, 525; with the usable stroke where it is printed, as 450x65."
SAME_N_PER_MM = 1e-6


@dataclass(frozen=True, slots=True)
class CoilKnown:
    """What is known of coils beside the entry: those at hand for the unit, and the table of the one that is in."""

    at_hand: tuple[Spring, ...] = ()
    rows: Rows = ()


def coil_advice(draft: SagDraft, unit: Unit, band: Band, sag: float, known: CoilKnown, units: Units) -> Advice:
    """Give the exact rate for the load that was measured, and what each spring that could be fitted would give."""
    from workbench.physics.coil import next_rate
    from workbench.physics.coil_choice import load_interval_n

    stroke_mm, preload_mm = unit.travel_mm or 0.0, draft.preload_mm or 0.0
    pressed_mm, rate = draft.sag_mm + preload_mm, draft.rate_n_per_mm or 0.0
    found = next_rate(
        rate_n_per_mm=coil_load_n(rate, pressed_mm, known.rows) / pressed_mm,
        sag_mm=draft.sag_mm,
        stroke_mm=stroke_mm,
        target=band.middle,
        preload_mm=preload_mm,
        stock_step_n_per_mm=from_unit(25.0, "spring_rate", "lbf/in"),
    )
    entry, typed = springs_entry(draft, unit, units)
    own = (*known.at_hand, *typed)
    steps = tuple(Spring("", unit.id, one.rate_n_per_mm, None, "not at hand" if own else "") for one in found.stock)
    judged = [(spring, judge(spring, unit, found.load_n, preload_mm)) for spring in own]
    judged.sort(key=lambda one: abs(one[1].sag_fraction - band.middle) + (0.0 if one[1].carries else 1.0))
    if not any(band.holds(there.sag_fraction) and not there.binds for _, there in judged):
        judged += [(spring, judge(spring, unit, found.load_n, preload_mm)) for spring in steps]
    options = tuple(_option(spring, there, band, units) for spring, there in judged)
    is_met = band.holds(sag)
    chosen = None if is_met else _nearest([there for _, there in judged], band.middle, rate)
    low_n, high_n = load_interval_n(
        found.load_n,
        compressed_mm=pressed_mm,
        end=unit.end,
        reading_sd_mm=METHOD_SD_MM.get(draft.method, METHOD_SD_MM["helper"]),
    )
    ends = (
        [judge(judged[chosen][0], unit, load, preload_mm).sag_mm for load in (low_n, high_n)]
        if chosen is not None
        else []
    )
    needed = preload_needed_mm(found.load_n, found.load_n / pressed_mm, band.middle * stroke_mm)
    preload_words, preload_option = _preload(needed, unit, band, is_met, units)
    number, _, number_unit = units.text(found.rate_n_per_mm, "spring_rate").partition("\u2009")
    return Advice(
        verdict=verdict_words(sag, band),
        is_met=is_met,
        lead="This spring fits; exact would be" if is_met else "Exact rate at this preload",
        number=number,
        number_unit=number_unit,
        also=f"load {found.load_n:.0f}\u2009N",
        known_to=rate_interval(
            found.rate_n_per_mm * low_n / found.load_n, found.rate_n_per_mm * high_n / found.load_n, units
        ),
        outcome="Settled: the spring on it is in the band." if is_met else "",
        care=CARE,
        preload=preload_words,
        options=options + preload_option,
        springs=entry,
        shows_options=True,
        chosen=chosen,
        predicted_mm=judged[chosen][1].sag_mm if chosen is not None else None,
        predicted_low_mm=ends[0] if ends else None,
        predicted_high_mm=ends[1] if ends else None,
    )


def springs_entry(draft: SagDraft, unit: Unit, units: Units) -> tuple[CoilField, tuple[Spring, ...]]:
    """Give the entry for the springs at hand as typed, with what is wrong in it, and the springs that could be read."""
    typed = draft.text(SPRINGS)
    text = typed.text if typed is not None else ""
    found, problem = read_springs(text, typed.unit if typed is not None else "", units)
    springs = tuple(Spring("", unit.id, rate, stroke_mm) for rate, stroke_mm in found)
    label = "Springs at hand"
    return CoilField(SPRINGS, label, text, units.unit("spring_rate"), problem, HELP), springs


def judge(spring: Spring, unit: Unit, load_n: float, preload_mm: float) -> Fitted:
    """Give what a spring does on the unit under a load, by its table where it has one."""
    from workbench.physics.coil_choice import fitted, fitted_table
    from workbench.physics.spring_table import spring_table

    rows, stroke_mm = curve_rows(spring), unit.travel_mm or 1.0
    told = {"stroke_mm": stroke_mm, "preload_mm": preload_mm, "spring_stroke_mm": spring.stroke_mm}
    if rows:
        return fitted_table(load_n, spring_table(rows), **told)  # type: ignore[arg-type]
    return fitted(load_n, rate_n_per_mm=spring.rate_n_per_mm, **told)  # type: ignore[arg-type]


def _option(spring: Spring, there: Fitted, band: Band, units: Units) -> Option:
    name, sag = units.text(there.rate_n_per_mm, "spring_rate"), there.sag_fraction
    where = "in" if band.holds(sag) else "above" if sag > band.high else "below"
    force = f"{there.preload_force_n:.0f}\u2009N"
    needs, has = _strokes(spring, there, units)
    about = [said for said in (spring.label, "progressive" if spring.curve else "") if said]
    words = [f"gives {100 * sag:.1f}\u2009% sag, {where} the band" if there.carries else "pressed to the end: too soft"]
    words += [f"preload force {force}"] if there.preload_force_n else []
    if not has:
        words.append(f"needs {needs} of usable stroke")
    else:
        words.append(f"{'coil bind: blocked' if there.binds else 'no bind'}, has {has}, needs {needs}")
    place = f"{where} band" if where == "in" else where
    cells = (
        f"{100 * sag:.1f}\u2009%, {place}" if there.carries else "too soft",
        force,
        "; ".join((f"{'coil bind: ' if there.binds else ''}{has}, needs {needs}" if has else f"needs {needs}", *about)),
    )
    return Option(
        f"Fit {name} and measure again",
        name,
        "; ".join((*words, *about)),
        is_refused=there.binds,
        cells=cells,
        rate_n_per_mm=there.rate_n_per_mm,
        spring_stroke_mm=spring.stroke_mm,
        is_table=spring.curve is not None,
    )


def _strokes(spring: Spring, there: Fitted, units: Units) -> tuple[str, str]:
    """Say what stroke and preload need, and what the spring has; that is empty where it is not known."""
    needs = units.text(there.needed_mm, "length")
    if spring.stroke_mm is None and not spring.curve:
        return needs, ""
    has_mm = spring.stroke_mm if spring.stroke_mm is not None else curve_rows(spring)[-1][0]
    return needs, units.text(has_mm, "length")


def _nearest(springs: Sequence[Fitted], target: float, rate: float) -> int | None:
    usable = [
        place
        for place, one in enumerate(springs)
        if not one.binds and one.carries and abs(one.rate_n_per_mm - rate) > SAME_N_PER_MM
    ]
    return min(usable, key=lambda place: abs(springs[place].sag_fraction - target), default=None)


def _preload(needed_mm: float, unit: Unit, band: Band, is_met: bool, units: Units) -> tuple[str, tuple[Option, ...]]:
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
