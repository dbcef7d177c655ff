"""Progressive and dual springs: force over travel typed as pairs, or two springs in a row with a stop."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from workbench.model.errors import InputError, NotEnoughData
from workbench.viewmodels.coil_sheets import CoilPlot, CoilResult, CoilSheet, Load, percent, rate_parts
from workbench.viewmodels.coil_typed import (
    CoilDraft,
    Entry,
    half_line,
    hint_words,
    line_of,
    missing,
    read_all,
    read_pairs,
    with_free_line,
    with_problem,
)
from workbench.viewmodels.coil_wire import LABEL
from workbench.viewmodels.shown import Units

if TYPE_CHECKING:
    from workbench.physics.spring_table import SpringTable

DRAFT = "coil_table"
KINDS = (("pairs", "Travel and force"), ("two", "Two springs and a stop"))
PAIRS_INTRO = "Travel from slack-free contact and the force there, in any order; nothing at nothing is understood."
TWO_INTRO = (
    "Two springs, one behind the other, of which one is held by a stop: soft together, then the other one alone."
)
TWO = (
    Entry("stopped_rate", "Stopped spring", "spring_rate", 1, 500),
    Entry("stop_mm", "Travel to its stop", "length", 0.5, 100),
    Entry("other_rate", "The other spring", "spring_rate", 1, 500),
    Entry("both_mm", "Stroke of both", "length", 10, 200),
    LABEL,
)


def resolve_table(draft: CoilDraft, load: Load | None, preload_mm: float, units: Units) -> CoilSheet:
    """Lay the sheet out, with curve and rate as soon as the spring is known."""
    sheet, spring = _two(draft, units) if draft.choice == "two" else _pairs(draft, units)
    if spring is None:
        return sheet
    label = dict(draft.texts).get("label", "").strip()
    plot, words = _plot(spring, load, preload_mm), _words(spring, load, preload_mm, units)
    return replace(sheet, result=_result(spring, sheet.choice, label, words, units), plot=plot, plot_words=words[0])


def _pairs(draft: CoilDraft, units: Units) -> tuple[CoilSheet, SpringTable | None]:
    from workbench.physics.spring_table import spring_from_contact

    fields, _ = read_all((LABEL,), dict(draft.texts), units)
    found, problems = read_pairs(draft.pairs, units)
    lines = with_free_line(draft.pairs)
    shown = (*problems, *("" for _ in lines[len(problems) :]))
    heads = (f"Travel, {units.length}", "Force, N")
    sheet = CoilSheet(PAIRS_INTRO, "", "pairs", KINDS, fields, heads, lines, shown)
    half = half_line(draft.pairs)
    if half is not None:
        sheet = replace(sheet, hint=f"Line {half + 1} lacks its travel or its force: it is not counted.")
    try:
        return sheet, spring_from_contact(found)
    except NotEnoughData:
        return replace(
            sheet, hint=sheet.hint or "One pair gives a straight line; three or more show how it rises."
        ), None
    except InputError as error:
        column = 0 if error.field == "travel_mm" else 1
        said = f"{('Travel', 'Force')[column]}: {error.value:g} cannot be used; allowed is {error.allowed}."
        wrong = line_of(draft.pairs, column, error.value, units)
        marked = tuple(said if place == wrong else text for place, text in enumerate(sheet.pair_problems))
        return replace(sheet, hint=said, pair_problems=marked), None


def _two(draft: CoilDraft, units: Units) -> tuple[CoilSheet, SpringTable | None]:
    from workbench.physics.spring_table import dual_spring

    texts = dict(draft.texts)
    fields, values = read_all(TWO, texts, units)
    sheet = CoilSheet(TWO_INTRO, "", "two", KINDS, fields)
    lacking = missing(TWO, values)
    if lacking:
        return replace(sheet, hint=hint_words(fields, lacking)), None
    try:
        return sheet, dual_spring(
            stopped_rate_n_per_mm=values["stopped_rate"],
            stop_mm=values["stop_mm"],
            other_rate_n_per_mm=values["other_rate"],
            stroke_mm=values["both_mm"],
        )
    except InputError:
        met_mm = values["stop_mm"] * (1 + values["stopped_rate"] / values["other_rate"])
        limit = f"more than {units.text(met_mm, 'length')}, where the stop is met"
        said = str(InputError("Stroke of both", texts["both_mm"], limit))
        return replace(sheet, fields=with_problem(fields, "both_mm", said), hint=said), None


def _rates(spring: SpringTable) -> tuple[float, ...]:
    return tuple((f1 - f0) / (x1 - x0) for (x0, f0), (x1, f1) in pairwise(spring.rows))


def _plot(spring: SpringTable, load: Load | None, preload_mm: float) -> CoilPlot:
    rows = spring.rows
    at = None
    if load is not None and load.load_n < rows[-1][1]:
        at = (max(spring.travel_mm(load.load_n), min(preload_mm, rows[-1][0])), load.load_n)
    return CoilPlot(tuple(x for x, _ in rows), tuple(f for _, f in rows), rows, _rates(spring), at)


def _words(spring: SpringTable, load: Load | None, preload_mm: float, units: Units) -> tuple[str, ...]:
    from workbench.physics.coil_choice import fitted_table

    rates, (last_mm, last_n) = _rates(spring), spring.rows[-1]
    first, last = (units.text(rate, "spring_rate") for rate in (rates[0], rates[-1]))
    words = [
        f"{first} at the start, {last} at the end; {last_n:.0f}\u2009N at {units.text(last_mm, 'length')}.",
    ]
    if load is None:
        return (*words, "Measure sag first: then the sag on this spring stands here.")
    there = fitted_table(load.load_n, spring, stroke_mm=load.stroke_mm, preload_mm=preload_mm)
    if not there.carries:
        words.append(f"The {load.load_n:.0f}\u2009N of the rider press it to the end: too soft.")
    else:
        rate = spring.rate_n_per_mm(max(min(there.sag_mm + preload_mm, last_mm), 1e-9))
        words.append(
            f"With {units.text(preload_mm, 'length')} preload ({there.preload_force_n:.0f}\u2009N) the rider sags"
            f" {units.text(there.sag_mm, 'length')}, {percent(there.sag_fraction)}; there it has"
            f" {units.text(rate, 'spring_rate')}."
        )
    if there.binds:
        words.append(f"Coil bind: {units.text(there.needed_mm, 'length')} are needed. Do not fit it.")
    return tuple(words)


def _result(spring: SpringTable, kind: str, label: str, words: tuple[str, ...], units: Units) -> CoilResult:
    last_mm, last_n = spring.rows[-1]
    rate = last_n / last_mm
    number, unit, also = rate_parts(rate, units)
    return CoilResult(
        rate_n_per_mm=rate,
        lead="On the whole, force over travel",
        number=number,
        unit=unit,
        also=also,
        notes=words,
        how="pressed" if kind == "pairs" else "printed",
        rows=spring.rows,
        stroke_mm=last_mm if 10 <= last_mm <= 200 else None,
        label=label,
    )
