"""The big figures of a card: what a mechanic checks before a ride, from two metres away."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.exchange.card_lines import CardFigure
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.reading import Units
from workbench.model.sag import SagMeasurement
from workbench.model.setting import Item

SMALL_PRINT = (Item.SPACERS, Item.PRELOAD)


def strip_of(
    parts: BikeParts,
    values: Mapping[tuple[str, str], float | None],
    ranges: Mapping[str, int],
    sag: tuple[SagMeasurement, ...],
    units: Units,
) -> tuple[CardFigure, ...]:
    """Pick pressures, rates, sag and positions, front before rear."""
    figures = []
    for item, subject_id in settable_items(parts):
        value = values.get((item, subject_id))
        if value is None or item in SMALL_PRINT:
            continue
        title, adjuster = parts.subject_title(item, subject_id), parts.adjuster(subject_id)
        end = _end(parts, subject_id)
        if adjuster is None:
            figures.append(CardFigure(end, title, units.text(value, ITEM_QUANTITIES[item])))
        else:
            steps = ranges.get(subject_id)
            note = "from closed" if steps is None else f"from closed, of {steps}"
            figures.append(CardFigure(end, title, f"{value:g}", note))
    for one in sag:
        unit = next((unit for unit in parts.units if unit.id == one.unit_id), None)
        if unit is not None:
            percent = f"{100 * one.sag_mm / one.travel_mm:.0f}\u2009%"
            place = max((at + 1 for at, kept in enumerate(figures) if _is_spring(kept, unit.end)), default=len(figures))
            sag_mm = units.text(one.sag_mm, "length")
            figures.insert(place, CardFigure(unit.end, f"{unit.kind.capitalize()}: static sag", percent, sag_mm))
    return tuple(sorted(figures, key=lambda one: one.end != "front"))


def _is_spring(figure: CardFigure, end: str) -> bool:
    return figure.end == end and not figure.note and "yre" not in figure.label


def _end(parts: BikeParts, subject_id: str) -> str:
    adjuster = parts.adjuster(subject_id)
    unit_id = adjuster.unit_id if adjuster else subject_id
    ends = {unit.id: unit.end for unit in parts.units} | {tyre.id: tyre.end for tyre in parts.tyres}
    return str(ends.get(unit_id or "", "front"))
