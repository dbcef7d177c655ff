"""What the carry-over sheet planned, on the card: what to set for that day and place, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from workbench.actions.spring import SpringRecords
from workbench.exchange.card import ABOVE_HIGHEST, CardLine, CardSection, CardSheet
from workbench.model.setting import OnBike
from workbench.model.warmth import Pressure
from workbench.viewmodels.carry import CarryState, resolve
from workbench.viewmodels.carry_plan import CarryPlan
from workbench.viewmodels.carry_row import CarryRow
from workbench.viewmodels.carry_rows import OVER_MAXIMUM, UNDER_MINIMUM
from workbench.viewmodels.shown import Units

PLANNED = "As planned"
HEADS = ("If left alone", "Set instead")
BELOW_LOWEST = "below the maker's lowest"
NOTABLE_METRES = 1.0

Key = tuple[str, str]


def with_planned(
    card: CardSheet, records: SpringRecords, values: Mapping[Key, float | None], plan: CarryPlan, units: Units
) -> CardSheet:
    """Add what the setup asks for on the day that was planned, where the card is to tell it.

    ``values`` is what the setup sets; ``units`` are those the card speaks. Nothing is added while an entry of the plan
    has to be put right.
    """
    if not plan.is_on_card:
        return card
    state = resolve(_as_set(records, values), plan, units)
    if not state.rows or any(one.problem for one in state.inputs):
        return card
    lines = (_conditions(records, state, units), *(_line(row) for row in state.rows))
    return replace(card, sections=(*card.sections, CardSection(PLANNED, lines, HEADS)))


def _as_set(records: SpringRecords, values: Mapping[Key, float | None]) -> SpringRecords:
    """Give the records as if the bike stood on a setup; of what it does not set, as of a fork fitted since, nothing."""
    parts = records.sag.parts
    now = tuple(_line_as_set(line, values) for line in parts.now)
    return replace(records, sag=replace(records.sag, parts=replace(parts, now=now)))


def _line_as_set(line: OnBike, values: Mapping[Key, float | None]) -> OnBike:
    value = values.get((line.item, line.subject_id))
    if value is None:
        return replace(line, value=None, temperature_c=None)
    warmth = value.temperature_c if isinstance(value, Pressure) else line.temperature_c
    return replace(line, value=value, temperature_c=warmth)


def _conditions(records: SpringRecords, state: CarryState, units: Units) -> CardLine:
    """Say what the plan is for, and from where it was carried."""
    here, there = ([units.text(state.values[f"{end}_c"], "temperature")] for end in ("here", "there"))
    if abs(state.values["there_m"] - state.values["here_m"]) >= NOTABLE_METRES:
        here.append(units.text(state.values["here_m"], "altitude"))
        there.append(units.text(state.values["there_m"], "altitude"))
    rider_kg, rider = state.values.get("rider_kg"), records.sag.rider
    if rider_kg is not None and (rider is None or rider.mass_kg is None or abs(rider_kg - rider.mass_kg) > 0.05):
        there.append(f"rider {units.text(rider_kg, 'mass')}")
    return CardLine("For", "", ", ".join(there), f"set here, at {', '.join(here)}")


def _line(row: CarryRow) -> CardLine:
    if row.is_coil:
        wanted = "leave it" if row.set_here == row.now else row.set_here
        return CardLine(row.title, row.if_left, wanted, "; ".join(row.why))
    put = {OVER_MAXIMUM: ABOVE_HIGHEST, UNDER_MINIMUM: BELOW_LOWEST}.get(row.care, f"set {row.set_here}")
    spacers = f"{row.spacers} in: " if row.spacers else ""
    shows = (f"shows {row.shows_there} there",) if row.shows_there != row.set_here else ()
    return CardLine(row.title, f"shows {row.if_left}", f"{spacers}{put}", "; ".join((*row.why, *shows)))
