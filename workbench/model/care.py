"""What can hurt somebody, in sentences said at the place where the work is done."""

from __future__ import annotations

from workbench.model.adjuster import Adjuster
from workbench.model.setting import Item

VENTING = (
    "Vent slowly, cycling all the while. If it pulls itself short, or is shorter than it was, stop: a charged negative"
    " chamber is trapped, do not unscrew anything."
)
OPENING = (
    "Before the spring is opened, let the air of every chamber out, slowly, cycling. If it stays short, a charged"
    " negative chamber is trapped: do not unscrew anything. No more spacers than the maker allows."
)
OPENING_SHORT = "first let the air of every chamber out; if it stays short, do not open it"
PUMPING = "Stay within the maker's lowest and highest pressure. Touch no valve of a damper's gas charge."
COLLAR = "Never more preload than the maker allows, the collar never loose, the coil never pressed solid."
PITCHING = "A fast rear rebound together with a slow front one can pitch a rider forward."
CLEARANCE = "After anything that changes travel, check the clearance through the full travel before riding."


def care_for(item: str, adjuster: Adjuster | None = None) -> str:
    """Say what to take care of when an item is changed; empty where nothing needs saying."""
    if item == Item.ADJUSTER:
        return PITCHING if adjuster is not None and adjuster.kind == "rebound" else ""
    if item == Item.SPACERS:
        return OPENING
    if item in (Item.PRESSURE, Item.SECOND_PRESSURE, Item.NEGATIVE_PRESSURE):
        return f"{PUMPING} {VENTING}"
    if item in (Item.SPRING_RATE, Item.PRELOAD):
        return COLLAR
    return ""
