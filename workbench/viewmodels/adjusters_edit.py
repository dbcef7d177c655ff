"""The facts of one adjuster, opened in the list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.model.adjuster import Adjuster, adjuster_title
from workbench.model.parts import BikeParts
from workbench.viewmodels.adjusters_count import full_title
from workbench.viewmodels.fact_rows import FactRow, fact_rows
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_facts import with_typed

DEPENDS_ON = "depends_on"


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
    return EditState(adjuster.id, full_title(parts, adjuster), with_typed(tuple(rows), typed))
