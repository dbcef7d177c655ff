"""Another fork or shock on the bike's sheet: what may be fitted at each end, and reading what was entered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from workbench.actions.desk import Draft
from workbench.actions.fit_unit import NOUNS
from workbench.model.bike import FRONTS, REARS, RIGID
from workbench.model.parts import BikeParts
from workbench.model.unit import SPRINGS, Unit
from workbench.viewmodels.shown import Units

FALLS_DUE = (
    "Its clicks are counted, its sag measured and a baseline written anew. What was ridden and measured on the old one"
    " stays on record and is not compared."
)
COMES_BACK = "One that comes back as it was taken off has its counts, its sag and its setups again."
BACK = "back/"  # begins the key of a choice that hangs back what was taken off
FITTED_CARE = (
    "Fitting belongs to the maker's manual and a qualified mechanic: length, mount, steerer, brake and axle must suit"
    " this frame. Press it to full travel without air or spring before it is ridden, and see that nothing touches."
)


@dataclass(frozen=True, slots=True)
class FitRow:
    """What can hang at one end."""

    end: str
    verb: str  # what the key says that opens it
    title: str
    choices: tuple[tuple[str, str], ...]
    kind: str  # proposed: as what hangs there
    length_label: str
    length_unit: str
    note: str = FALLS_DUE
    care: str = FITTED_CARE


def fit_rows(parts: BikeParts, units: Units) -> tuple[FitRow, ...]:
    """List both ends with what can be fitted there; taking off is offered only where something hangs."""
    rows = []
    for end, kinds in (("front", FRONTS), ("rear", REARS)):
        present, noun = parts.unit(end), NOUNS[end]
        choices = tuple((key, words) for key, words in kinds.items() if key != RIGID or present is not None)
        back = tuple(
            (f"{BACK}{unit.id}", f"Back: {unit_words(unit, units)}") for unit in parts.former if unit.end == end
        )
        spring = {"air_coil": "mix"}.get(present.spring, present.spring) if present else "air"
        rows.append(
            FitRow(
                end,
                f"Exchange the {noun} ..." if present else f"Fit a {noun} ...",
                f"Another {noun}, or none" if present else f"A {noun} for this bike",
                (*choices, *back),
                spring if spring in kinds else "air",
                "Travel" if end == "front" else "Stroke",
                units.unit("length"),
                f"{FALLS_DUE} {COMES_BACK}" if back else FALLS_DUE,
            )
        )
    return tuple(rows)


def unit_words(unit: Unit, units: Units) -> str:
    """Say what a unit is: its name, kind, length and serial number, as far as they are known."""
    length = units.text(unit.travel_mm, "length") if unit.travel_mm else ""
    serial = f"serial {unit.serial}" if unit.serial else ""
    what = (unit.name, f"{SPRINGS[unit.spring].lower()} {unit.kind}", length, serial)
    return ", ".join(one for one in what if one)


def fit_label(end: str, kind: str, name: str) -> str:
    """Say the deed."""
    if kind.startswith(BACK):
        return f"Fit the earlier {NOUNS[end]} again"
    if kind == RIGID:
        return f"Take the {NOUNS[end]} off"
    return f"Fit another {NOUNS[end]}{f': {name.strip()}' if name.strip() else ''}"[:60]


def drafts_of_unit(drafts: Sequence[Draft], parts: BikeParts, end: str) -> tuple[str, ...]:
    """List the entries under way about what hangs at an end: its own, those of its adjusters, and texts in both.

    Texts that could not be read on the adjusters' sheet lie together, so they go together.
    """
    unit = parts.unit(end)
    if unit is None:
        return ()
    about = {unit.id, *(one.id for one in parts.adjusters_of(unit.id))}
    subjects = {draft.id: (draft.subject or "").partition("/")[0] for draft in drafts}
    return tuple(draft.id for draft in drafts if subjects[draft.id] in about or draft.kind == "adjusters_typed")
