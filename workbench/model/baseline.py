"""Where a baseline begins: the maker's advice, else what was found, else the middle of the range."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.counting import advice_within
from workbench.model.item_facts import ITEM_FIELDS, allowed_words, maker_limits
from workbench.model.parts import BikeParts, settable_items
from workbench.model.put_back import line_before_measuring
from workbench.model.reading import Units
from workbench.model.setting import PRESSURE_ITEMS, Item, OnBike
from workbench.model.unit import Unit

MAKER = "the maker's advice"
AS_FOUND = "as found"
MIDDLE = "the middle of its range (common practice)"
MEASURED = "on the bike now"
NOT_COUNTED = "not counted yet"
NOT_KNOWN = "not known yet"
_TOO_HIGH = "Above the highest pressure the maker allows."
_USUAL_UNITS = Units()
NONE_FITTED = "none fitted (assumed)"


@dataclass(frozen=True, slots=True)
class Proposed:
    """One setting of a baseline before it is kept, and where it comes from."""

    item: str
    subject_id: str
    value: float | None
    origin: str


def propose_baseline(parts: BikeParts, log: tuple[OnBike, ...]) -> tuple[Proposed, ...]:
    """Propose every setting of setup no. 1, in setting order."""
    return tuple(_propose(parts, log, item, subject_id) for item, subject_id in settable_items(parts))


def _propose(parts: BikeParts, log: tuple[OnBike, ...], item: str, subject_id: str) -> Proposed:
    if item == Item.ADJUSTER:
        return _propose_adjuster(parts, log, subject_id)
    value = parts.value(item, subject_id)
    if value is None and item in (Item.SPACERS, Item.PRELOAD):
        return Proposed(item, subject_id, 0.0, NONE_FITTED)
    return Proposed(item, subject_id, value, MEASURED if value is not None else NOT_KNOWN)


def _propose_adjuster(parts: BikeParts, log: tuple[OnBike, ...], adjuster_id: str) -> Proposed:
    adjuster, count = parts.adjuster(adjuster_id), parts.range_of(adjuster_id)
    if adjuster is None or count is None:
        return Proposed(Item.ADJUSTER, adjuster_id, None, NOT_COUNTED)
    advice = advice_within(adjuster, count.steps)
    if advice is not None:
        return Proposed(Item.ADJUSTER, adjuster_id, float(advice), MAKER)
    found = line_before_measuring(log, adjuster_id)
    if found is not None and found.value is not None and 0 <= found.value <= count.steps:
        return Proposed(Item.ADJUSTER, adjuster_id, found.value, AS_FOUND)
    return Proposed(Item.ADJUSTER, adjuster_id, float(count.steps // 2), MIDDLE)


def baseline_question(
    parts: BikeParts, item: str, subject_id: str, value: float | None, units: Units = _USUAL_UNITS
) -> str:
    """Say what cannot be set: beyond the unit's limits or the counted range. Empty when there is nothing to say."""
    if value is None:
        return ""
    if item == Item.ADJUSTER:
        count = parts.range_of(subject_id)
        if count is not None and not 0 <= value <= count.steps:
            return f"From 0 (closed) to {count.steps} (open)."
        return ""
    unit = next((unit for unit in parts.units if unit.id == subject_id), None)
    if value < 0:
        return "Not below 0."
    field = ITEM_FIELDS[item]
    if (field.high is not None and value > field.high) or (field.low is not None and value < field.low):
        return "Far outside what this can be set to. Check the number and its unit."
    if unit is None:
        return ""
    said = _beyond_the_maker(item, unit, value, parts)
    allowed = allowed_words(item, unit, parts.valves, units) if said and item in PRESSURE_ITEMS else ""
    return f"{said} Allowed is {allowed}." if allowed else said


def _beyond_the_maker(item: str, unit: Unit, value: float, parts: BikeParts) -> str:
    low, high = maker_limits(item, unit, parts.valves)
    slack = 0.05 if item in PRESSURE_ITEMS else 1e-9
    if low is not None and value < low - slack:
        return "Below the lowest pressure the maker allows."
    if high is None or value <= high + slack:
        return ""
    if item == Item.SPACERS:
        return f"No more than {high:g} spacers are allowed."
    return "More preload than the maker allows." if item == Item.PRELOAD else _TOO_HIGH
