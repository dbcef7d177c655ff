"""The facts of one adjuster, opened in the list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.model.adjuster import DEPENDS, PUSH_TESTS, Adjuster, adjuster_title, steps_text
from workbench.model.counting import position_names
from workbench.model.parts import BikeParts
from workbench.viewmodels.adjusters_count import can_be_pushed, full_title
from workbench.viewmodels.fact_rows import FactRow, fact_rows
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_facts import with_typed

DEPENDS_ON = "depends_on"
DEPENDS_HOW = "depends_how"
DEPENDS_POSITION = "depends_position"
PUSH = "push_felt"


@dataclass(frozen=True, slots=True)
class EditState:
    """An adjuster whose facts are open."""

    adjuster_id: str
    title: str
    rows: tuple[FactRow, ...]


def resolve_edit(parts: BikeParts, adjuster: Adjuster, units: Units, typed: Mapping[str, str]) -> EditState:
    """Lay out the facts that apply to the way this adjuster is counted."""
    by_counting = ("position_names",) if adjuster.counting == "positions" else ("closed_turn",)
    names = ("kind", "speed", "name", "counting", *by_counting, "chart_steps", "chart_from", "note")
    labels = {"chart_steps": "The maker's advice, in quarter turns"} if adjuster.counting == "turns" else {}
    rows = list(fact_rows(adjuster, units, names=names, labels=labels))
    others = [one for one in parts.adjusters_of(adjuster.unit_id) if one.id != adjuster.id]
    if others:
        choices = (("", "None"), *((one.id, adjuster_title(one)) for one in others))
        rows.insert(
            -1,
            FactRow(
                record_id=adjuster.id,
                name=DEPENDS_ON,
                label="Stands open meanwhile",
                kind="choice",
                value=adjuster.depends_on or "",
                choices=choices,
                help="Some adjusters drag or gate one another: the other is left open while this one is counted.",
            ),
        )
    rows[-1:-1] = [*_depends_rows(parts, adjuster), *_push_row(parts, adjuster)]
    return EditState(adjuster.id, full_title(parts, adjuster), with_typed(tuple(rows), typed))


def _depends_rows(parts: BikeParts, adjuster: Adjuster) -> list[FactRow]:
    other = parts.adjuster(adjuster.depends_on) if adjuster.depends_on else None
    if other is None:
        return []
    how = adjuster.depends_how or "gates"
    rows = [
        FactRow(
            adjuster.id,
            DEPENDS_HOW,
            "The other one",
            "choice",
            how,
            choices=tuple(DEPENDS.items()),
            help="Either way the other one is counted first.",
        )
    ]
    if how == "gates":
        count = parts.range_of(other.id)
        names = position_names(other) if other.counting == "positions" else ()
        most = len(names) - 1 if names else count.steps if count else 0
        places = ((str(step), names[step] if names else steps_text(other, step)) for step in range(most + 1))
        rows.append(
            FactRow(
                adjuster.id,
                DEPENDS_POSITION,
                "It stands meanwhile",
                "choice",
                "" if adjuster.depends_position is None else str(adjuster.depends_position),
                choices=(("", "Fully open"), *places),
                help="Counted from closed. It is noted beside the count.",
            )
        )
    return rows


def _push_row(parts: BikeParts, adjuster: Adjuster) -> list[FactRow]:
    count = parts.range_of(adjuster.id)
    if count is None or not can_be_pushed(adjuster):
        return []
    choices = (("", "Not tried"), *PUSH_TESTS.items())
    said = "The bike pushed down once with it closed and once with it open."
    row = FactRow(adjuster.id, PUSH, "Push test", "choice", count.push_felt or "", choices=choices, help=said)
    return [row]
