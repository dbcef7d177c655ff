"""The rate of a spring that carries no figure, from its wire."""

from __future__ import annotations

from dataclasses import replace

from workbench.model.errors import InputError
from workbench.viewmodels.coil_sheets import CoilResult, CoilSheet, rate_interval, rate_parts
from workbench.viewmodels.coil_typed import CoilDraft, Entry, hint_words, missing, read_all, with_problem
from workbench.viewmodels.shown import Units

DRAFT = "coil_wire"
MODULUS_GPA = 77.2  # of chrome-silicon and oil-tempered wire, 11.2 Mpsi: Shigley, table 10-5
USUAL_INDEX = (4.0, 12.0)  # coil diameter over wire: Shigley, ch. 10
INTRO = (
    "For a spring with no figure on it. Measure the wire at several places with a caliper, off the paint: one percent"
    " more wire is four percent more rate."
)
MEASURED = (("mean", "Centre to centre"), ("outer", "Outside"))
STROKE = Entry("stroke_mm", "Usable stroke", "length", 10, 200, is_needed=False, help="If it is known.")
LABEL = Entry("label", "Name in the list", "text", is_needed=False)
ENTRIES = (
    Entry("wire_mm", "Wire diameter", "length", 2, 25),
    Entry("diameter_mm", "Coil diameter", "length", 10, 200),
    Entry("coils", "Active coils", "ratio", 1, 30, help="Those that move: closed ends do not count."),
    Entry(
        "modulus",
        "Shear modulus",
        "modulus",
        20,
        120,
        usual=f"{MODULUS_GPA:g}",
        help=f"{MODULUS_GPA:g} is assumed: chrome-silicon or oil-tempered steel. Other spring steels: up to 82.",
    ),
    STROKE,
    LABEL,
)


def resolve_wire(draft: CoilDraft, units: Units) -> CoilSheet:
    """Lay the sheet out, with the rate as soon as the sizes are there."""
    fields, values = read_all(ENTRIES, dict(draft.texts), units)
    choice = draft.choice or "mean"
    sheet = CoilSheet(intro=INTRO, choice=choice, choices=MEASURED, fields=fields)
    lacking = missing(ENTRIES, values)
    if lacking:
        return replace(sheet, hint=hint_words(fields, lacking))
    try:
        return replace(sheet, result=_result(values, choice, dict(draft.texts).get("label", ""), units))
    except InputError as error:
        wire = units.text(values["wire_mm"] * (2 if choice == "outer" else 1), "length")
        said = InputError("Coil diameter", dict(draft.texts)["diameter_mm"], f"more than {wire} with this wire")
        is_diameter = error.field in ("mean_diameter_mm", "wire_mm")
        shown = with_problem(fields, "diameter_mm", str(said)) if is_diameter else fields
        return replace(sheet, fields=shown, hint=str(said if is_diameter else error))


def _result(values: dict[str, float], choice: str, label: str, units: Units) -> CoilResult:
    from workbench.physics.coil import wire_rate_n_per_mm
    from workbench.physics.coil_choice import wire_rate_interval

    wire_mm = values["wire_mm"]
    mean_mm = values["diameter_mm"] - (wire_mm if choice == "outer" else 0.0)
    sizes = {"mean_diameter_mm": mean_mm, "active_coils": values["coils"], "shear_modulus_gpa": values["modulus"]}
    rate = wire_rate_n_per_mm(wire_mm=wire_mm, **sizes)
    low, high = wire_rate_interval(wire_mm=wire_mm, **sizes)
    thicker = wire_rate_n_per_mm(wire_mm=wire_mm + 0.1, **sizes) if wire_mm + 0.1 < mean_mm else rate
    index = mean_mm / wire_mm
    notes = [f"With 0.1\u2009mm more wire it would be {units.text(thicker, 'spring_rate')}."]
    if not USUAL_INDEX[0] <= index <= USUAL_INDEX[1]:
        notes.append(f"The coil is {index:.1f} wires across; 4 to 12 is usual. Look at both figures again.")
    number, unit, also = rate_parts(rate, units)
    return CoilResult(
        rate_n_per_mm=rate,
        lead="Rate, reckoned from the wire",
        number=number,
        unit=unit,
        also=also,
        interval=rate_interval(low, high, units),
        notes=tuple(notes),
        how="wire",
        stroke_mm=values.get("stroke_mm"),
        label=label.strip(),
    )
