"""The rate of a spring from pressing it: travel and force line by line, the straight line through them."""

from __future__ import annotations

from dataclasses import replace

from workbench.model.errors import InputError, NotEnoughData
from workbench.viewmodels.coil_sheets import CoilPlot, CoilResult, CoilSheet, rate_interval, rate_parts
from workbench.viewmodels.coil_typed import CoilDraft, half_line, read_all, read_pairs, with_free_line
from workbench.viewmodels.coil_wire import LABEL, STROKE
from workbench.viewmodels.shown import Units

DRAFT = "coil_pressed"
INTRO = (
    "Press the spring in steps, in any order, and read travel and force each time. Neither has to begin at nothing."
    " A force may be written with its unit: 180 lbf, 82 kgf."
)
CARE = "A pressed spring stores enough to break a hand: guide it, stand aside, never press it to solid."
ENTRIES = (STROKE, LABEL)


def resolve_pressed(draft: CoilDraft, units: Units) -> CoilSheet:
    """Lay the sheet out, with the rate as soon as three readings are there."""
    fields, values = read_all(ENTRIES, dict(draft.texts), units)
    found, problems = read_pairs(draft.pairs, units)
    lines = with_free_line(draft.pairs)
    sheet = CoilSheet(
        intro=INTRO,
        care=CARE,
        fields=fields,
        heads=(f"Travel, {units.length}", "Force, N"),
        pairs=lines,
        pair_problems=(*problems, *("" for _ in lines[len(problems) :])),
    )
    half = half_line(draft.pairs)
    if half is not None:
        sheet = replace(sheet, hint=f"Line {half + 1} lacks its travel or its force: it is not counted.")
    try:
        return _with_result(sheet, found, values.get("stroke_mm"), dict(draft.texts).get("label", ""), units)
    except NotEnoughData:
        hint = sheet.hint or "Three readings at different travels give a rate; more make it surer."
        return replace(sheet, hint=hint, plot=CoilPlot((), (), tuple(found)) if found else None)
    except InputError:
        hint = "The force does not rise with the travel. Look for a slip, or two figures in the wrong columns."
        return replace(sheet, hint=hint, plot=CoilPlot((), (), tuple(found)))


def _with_result(
    sheet: CoilSheet, found: list[tuple[float, float]], stroke_mm: float | None, label: str, units: Units
) -> CoilSheet:
    from workbench.physics.coil import fit_rate

    travels, forces = [one for one, _ in found], [one for _, one in found]
    rate, low, high = fit_rate(travels, forces)
    middle_mm, middle_n = sum(travels) / len(found), sum(forces) / len(found)
    ends = (min(travels), max(travels))
    line = tuple(middle_n + rate * (at - middle_mm) for at in ends)
    off = max(range(len(found)), key=lambda one: abs(forces[one] - middle_n - rate * (travels[one] - middle_mm)))
    off_n = forces[off] - middle_n - rate * (travels[off] - middle_mm)
    words, unit, also = rate_parts(rate, units)
    result = CoilResult(
        rate_n_per_mm=rate,
        lead=f"Rate, measured with {len(found)} readings",
        number=words,
        unit=unit,
        also=also,
        interval=rate_interval(max(low, 0.0), high, units),
        notes=(
            f"Farthest off the line: {forces[off]:.0f}\u2009N at {units.text(travels[off], 'length')},"
            f" by {abs(off_n):.0f}\u2009N.",
        ),
        how="pressed",
        stroke_mm=stroke_mm,
        label=label.strip(),
    )
    said = f"{len(found)} readings and the line through them, {words} {unit}"
    return replace(sheet, result=result, plot=CoilPlot(ends, line, tuple(found)), plot_words=said)
