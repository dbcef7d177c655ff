"""Adjusters opened or closed for measuring go back to where they stood, or to the setup that holds."""

from __future__ import annotations

from workbench.model.adjuster import Adjuster, restore_text
from workbench.model.counting import advice_within
from workbench.model.job import put_back_due
from workbench.model.parts import ITEM_QUANTITIES, BikeParts
from workbench.model.setting import Item, OnBike
from workbench.model.steps import Step, relative_text

RENEWED = "renewed"
MEASURING_HOWS = frozenset({"opened", "closed"})


def line_before_measuring(log: tuple[OnBike, ...], adjuster_id: str) -> OnBike | None:
    """Give the last line of an adjuster that is not merely turned open or closed for measuring.

    What was logged on hardware that is no longer there is none.
    """
    lines = [
        line
        for line in log
        if line.item == Item.ADJUSTER and line.subject_id == adjuster_id and line.how not in MEASURING_HOWS
    ]
    last = max(lines, key=lambda line: line.sequence, default=None)
    return None if last is None or last.how == RENEWED else last


def put_back_steps(
    parts: BikeParts,
    log: tuple[OnBike, ...],
    setup_values: dict[tuple[str, str], float | None] | None,
) -> tuple[Step, ...]:
    """List the steps that take every adjuster standing open or closed from measuring back to its place.

    The place is the setup's, if there is one, else where it stood before. An adjuster whose earlier place is not
    known goes to the maker's advice, else to the middle of its range: never left fully open to ride on.
    """
    due = set(put_back_due(parts))
    return tuple(
        step
        for adjuster in parts.adjusters
        if adjuster.id in due and (step := _step(parts, adjuster, log, setup_values or {})) is not None
    )


def _step(
    parts: BikeParts,
    adjuster: Adjuster,
    log: tuple[OnBike, ...],
    wanted: dict[tuple[str, str], float | None],
) -> Step | None:
    before = parts.value(Item.ADJUSTER, adjuster.id)
    place = wanted.get((Item.ADJUSTER, adjuster.id))
    earlier = line_before_measuring(log, adjuster.id)
    if place is None and earlier is not None:
        place = earlier.value
    small_print = ""
    if place is None:
        place, small_print = _place_of_no_record(parts, adjuster)
    if place is None:
        return None
    count = parts.range_of(adjuster.id)
    return Step(
        item=Item.ADJUSTER,
        subject_id=adjuster.id,
        title=parts.subject_title(Item.ADJUSTER, adjuster.id),
        value=place,
        quantity=ITEM_QUANTITIES[Item.ADJUSTER],
        before=before,
        text=restore_text(adjuster, round(place)),
        relative=small_print or relative_text(adjuster, before, place),
        range_id=count.id if count else None,
    )


def _place_of_no_record(parts: BikeParts, adjuster: Adjuster) -> tuple[float | None, str]:
    count = parts.range_of(adjuster.id)
    if count is None:
        return None, ""
    advice = advice_within(adjuster, count.steps)
    if advice is not None:
        return float(advice), "as found is not known: the maker's advice"
    return float(count.steps // 2), "as found is not known: the middle of its range"
