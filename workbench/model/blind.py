"""A blind test: two setups that differ in one thing, ridden in an order that nobody on the bike knows."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from workbench.model.adjuster import Adjuster
from workbench.model.parts import BikeParts
from workbench.model.ride import BlindPlan, Run
from workbench.model.setting import PRESSURE_ITEMS, Change, Item, changes_between, free_changes

LETTERS = ("A", "B")
FEWEST_PAIRS = 3  # fewer can show nothing, whatever comes out
MOST_PAIRS = 12
MOST_APART = 0.15  # of a pressure: more is not met unprepared (common practice, no source)
ENDS = (
    "Fully closed and fully open are never ridden blind, since nobody would know what to be ready for. "
    "Choose positions between the ends."
)
FIRMEST = (
    "The firmest position of a lever is never ridden blind, since nobody would know what to be ready for. "
    "Compare the positions above it: a lever with two positions has none to compare."
)
CONCEALED = "concealed"  # how the bike's log speaks of what is under test until the reveal

Values = Mapping[tuple[str, str], float | None]


def labels_text(a_id: str, b_id: str) -> str:
    """Write down which setup each letter stands for."""
    return json.dumps({"A": a_id, "B": b_id})


def setups_of(plan: BlindPlan) -> dict[str, str]:
    """Give the setup each letter stands for."""
    return {str(letter): str(setup_id) for letter, setup_id in json.loads(plan.labels).items()}


def is_concealed(plan: BlindPlan | None) -> bool:
    """Tell whether the order, and what was said of it, is still to be kept from everybody."""
    return plan is not None and plan.revealed_at is None


def valid(runs: Sequence[Run]) -> tuple[Run, ...]:
    """Give the runs that take a place in the order: a run set aside is ridden again."""
    return tuple(run for run in runs if not run.is_set_aside)


def pairs_of(runs: Sequence[Run]) -> tuple[tuple[Run, Run], ...]:
    """Give the pairs ridden to the end: each has both setups, in an order drawn for it."""
    kept = valid(runs)
    return tuple(zip(kept[::2], kept[1::2], strict=False))


def letter_at(plan: BlindPlan, place: int) -> str:
    """Give the letter due at a place of the order; empty beyond its end."""
    return plan.order[place : place + 1]


def tested(before: Values, after: Values) -> tuple[Change, ...]:
    """List what two setups differ in."""
    return changes_between(before, after)


def unfit(parts: BikeParts, before: Values, after: Values) -> str:
    """Say why two setups cannot be ridden blind against each other; empty when they can."""
    changes = tested(before, after)
    if not changes:
        return "A and B are the same, so there is nothing to compare. Choose another B."
    if free_changes(changes) > 1:
        return f"A and B differ in {len(changes)} things. A blind test compares one: choose a B that differs in one."
    if any(change.before is None or change.after is None for change in changes):
        return "What A and B differ in is not known for both, or was counted on other hardware. Choose another B."
    for change in changes:
        if change.item == Item.ADJUSTER and (refused := _unfit_positions(parts, change)):
            return refused
        if change.item in PRESSURE_ITEMS and _is_far(change):
            return "Pressures more than 15 % apart are not ridden blind. Choose a smaller step."
    return ""


def _unfit_positions(parts: BikeParts, change: Change) -> str:
    """Say why an adjuster is not ridden blind at the positions asked; empty when it may be."""
    adjuster, count = parts.adjuster(change.subject_id), parts.range_of(change.subject_id)
    if adjuster is None or count is None:
        return "The adjuster has not been counted on this hardware. Count its range on the adjusters' sheet first."
    ridden = {round(value or 0) for value in (change.before, change.after)}
    if is_lever(adjuster):
        return "" if 0 not in ridden else FIRMEST
    return ENDS if ridden & {0, count.steps} else ""


def is_lever(adjuster: Adjuster) -> bool:
    """Tell whether an adjuster has named positions of which the open one is how the bike is ridden otherwise."""
    return adjuster.counting == "positions" and adjuster.kind in ("lever", "compression")


def _is_far(change: Change) -> bool:
    before, after = change.before or 0.0, change.after or 0.0
    return abs(after - before) > MOST_APART * before
