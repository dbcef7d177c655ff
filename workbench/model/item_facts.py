"""What may be entered for a spring or tyre on the bike: declared once, checked wherever it is entered."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.model.facts import Field
from workbench.model.reading import Units
from workbench.model.setting import Item
from workbench.model.unit import Unit, Valve

ITEM_FIELDS: dict[str, Field] = {
    Item.PRESSURE: Field(
        "pressure",
        "Air pressure",
        "pressure",
        low=0,
        high=3500,
        help="As the pump reads once attached: the hose has taken its share. Never at a damper's gas valve.",
    ),
    Item.SECOND_PRESSURE: Field("second_pressure", "Second chamber", "pressure", low=0, high=3500),
    Item.NEGATIVE_PRESSURE: Field("negative_pressure", "Negative chamber", "pressure", low=0, high=3500),
    Item.SPACERS: Field("spacers", "Volume spacers", "count", low=0, high=30),
    Item.SPRING_RATE: Field("spring_rate", "Spring rate", "spring_rate", low=1, high=500),
    Item.PRELOAD: Field("preload", "Preload", "length", low=0, high=50, help="From slack-free contact of the collar."),
    Item.TYRE_PRESSURE: Field("tyre_pressure", "Tyre pressure", "pressure", low=0, high=700, ask_low=55, ask_high=415),
}


def maker_limits(item: str, unit: Unit, valves: Sequence[Valve] = ()) -> tuple[float | None, float | None]:
    """Give the lowest and highest value the maker of a unit allows for an item; None where none is known.

    ``valves`` are those on record; the limits of a negative chamber with a valve of its own stand with that valve.
    """
    limits: dict[str, tuple[float | None, float | None]] = {
        Item.PRESSURE: (unit.minimum_kpa, unit.maximum_kpa),
        Item.SECOND_PRESSURE: (unit.second_minimum_kpa, unit.second_maximum_kpa),
        Item.NEGATIVE_PRESSURE: _own_valve(unit, valves),
        Item.SPACERS: (None, unit.spacer_limit),
        Item.PRELOAD: (None, unit.preload_limit_mm),
    }
    return limits.get(item, (None, None))


def _own_valve(unit: Unit, valves: Sequence[Valve]) -> tuple[float | None, float | None]:
    if unit.negative != "separate":
        return None, None
    own = next((one for one in valves if one.unit_id == unit.id and one.purpose == "negative"), None)
    return (own.minimum_kpa, own.maximum_kpa) if own is not None else (None, None)


def allowed_words(item: str, unit: Unit, valves: Sequence[Valve], units: Units) -> str:
    """Say the range the maker allows for an item; empty where nothing is known."""
    low, high = maker_limits(item, unit, valves)
    quantity = ITEM_FIELDS[item].quantity
    if low is not None and high is not None:
        return f"{units.text(low, quantity)} to {units.text(high, quantity)}"
    if low is None and high is None:
        return ""
    return f"at least {units.text(low, quantity)}" if high is None else f"at most {units.text(high, quantity)}"
