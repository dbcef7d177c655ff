"""From what is on the bike to a setup: what to do, in which order."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.adjuster import Adjuster, restore_text, steps_text
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.setting import Item, is_same


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to set. ``text`` holds for adjusters; other items are said from ``value`` and ``quantity``."""

    item: str
    subject_id: str
    title: str
    value: float
    quantity: str
    before: float | None  # what is on the bike now; None: not known
    text: str = ""
    relative: str = ""
    range_id: str | None = None


def steps_to(parts: BikeParts, wanted: dict[tuple[str, str], float | None]) -> tuple[Step, ...]:
    """List the steps from the bike as it is to the wanted values, in setting order; what already stands is left out."""
    steps = []
    for item, subject_id in settable_items(parts):
        value = wanted.get((item, subject_id))
        if value is None:
            continue
        before = parts.value(item, subject_id)
        if is_same(item, before, value):  # the same air reads otherwise on a colder day: that stands already
            continue
        steps.append(_step(parts, item, subject_id, value, before))
    return tuple(steps)


def _step(parts: BikeParts, item: str, subject_id: str, value: float, before: float | None) -> Step:
    text = relative = ""
    range_id = None
    adjuster = parts.adjuster(subject_id)
    if item == Item.ADJUSTER and adjuster is not None:
        text = restore_text(adjuster, round(value))
        relative = relative_text(adjuster, before, value)
        count = parts.range_of(subject_id)
        range_id = count.id if count else None
    return Step(
        item=item,
        subject_id=subject_id,
        title=parts.subject_title(item, subject_id),
        value=value,
        quantity=ITEM_QUANTITIES[item],
        before=before,
        text=text,
        relative=relative,
        range_id=range_id,
    )


def relative_text(adjuster: Adjuster, before: float | None, after: float) -> str:
    """Say the move from where the adjuster stands, for small print."""
    if before is None:
        return "where it stands now is not known"
    move = round(after - before)
    if adjuster.counting == "positions" or move == 0:
        return ""
    return f"{steps_text(adjuster, abs(move))} {'out' if move > 0 else 'in'} from where it stands"


def values_now(parts: BikeParts) -> dict[tuple[str, str], float | None]:
    """Give what every settable item stands at now."""
    return {key: parts.value(*key) for key in settable_items(parts)}
