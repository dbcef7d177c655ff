"""What changed between two setups, in words."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.model.adjuster import steps_text
from workbench.model.parts import ITEM_QUANTITIES, BikeParts
from workbench.model.setting import Change, changes_between
from workbench.viewmodels.shown import Units, position_text

OTHER_UNIT = {"fork": "Another fork: not compared", "shock": "Another shock: not compared"}
Values = Mapping[tuple[str, str], float | None]


def change_text(parts: BikeParts, change: Change, units: Units) -> str:
    """Say one change: the item and from what to what."""
    title = parts.subject_title(change.item, change.subject_id)
    adjuster = parts.knob(change.subject_id)
    if adjuster is not None and change.before is None and change.after is None:
        return f"{title}: counted on other hardware, not compared"
    if adjuster is not None and change.before is not None and change.after is not None:
        move = round(change.after - change.before)
        if adjuster.counting == "positions":
            return f"{title} to {position_text(adjuster, change.after)}"
        way = "out" if move > 0 else "in"
        return f"{title} {steps_text(adjuster, abs(move))} {way}"
    quantity = ITEM_QUANTITIES.get(change.item, "count")
    before, after = units.text(change.before, quantity), units.text(change.after, quantity)
    return f"{title} {before} to {after}"


def changes_text(parts: BikeParts, before: Values, after: Values, units: Units) -> str:
    """Say all changes between two setups; "no change" when there is none. A unit taken off is said once."""
    told = []
    for change in changes_between(before, after):
        former = parts.former_unit(change.subject_id)
        is_apart = former is not None and change.before is None and change.after is None
        told.append(OTHER_UNIT[former.kind] if is_apart and former else change_text(parts, change, units))
    return "; ".join(dict.fromkeys(told)) or "no change"
