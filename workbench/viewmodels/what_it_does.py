"""Where the page on what each adjuster does speaks of an item: its headings, by what is set."""

from __future__ import annotations

from workbench.model.adjuster import Adjuster
from workbench.model.setting import Item

PAGE = "what_it_does"
_SPRING = "Spring pressure, or the rate of a coil"
HEADINGS: dict[str, str] = {
    "rebound": "Rebound",
    "compression": "Compression",
    "lever": "Lockout or climb lever",
    "end_stroke": "End-stroke adjuster",
    Item.PRESSURE: _SPRING,
    Item.SECOND_PRESSURE: _SPRING,
    Item.NEGATIVE_PRESSURE: _SPRING,
    Item.SPRING_RATE: _SPRING,
    Item.PRELOAD: "Preload of a coil",
    Item.SPACERS: "Volume spacers",
    Item.TYRE_PRESSURE: "Tyre pressure",
}


def heading_of(item: str, adjuster: Adjuster | None = None) -> str:
    """Give the heading about an item, of an adjuster by what it adjusts; empty where the page says nothing."""
    return HEADINGS.get(adjuster.kind if adjuster is not None else item, "")
