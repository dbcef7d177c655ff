"""The adjusters of a bike as the sheet lists them, with springs and tyres as found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.actions.adjusters import AdjusterRecords
from workbench.model.adjuster import Adjuster, RangeCount, adjuster_title, recount_note, steps_text
from workbench.model.counting import advice_within, position_names
from workbench.model.facts import question
from workbench.model.item_facts import ITEM_FIELDS, maker_limits
from workbench.model.parts import BikeParts, settable_items
from workbench.model.put_back import line_before_measuring
from workbench.model.setting import HOWS, Item, OnBike
from workbench.model.unit import Unit
from workbench.viewmodels.adjusters_count import range_text
from workbench.viewmodels.shown import Units, position_text, short_date
from workbench.viewmodels.what_it_does import heading_of

NO_EFFECT = "Push test: no difference, closed against open. That is a damper fault: have it looked at before it is set."


@dataclass(frozen=True, slots=True)
class RulerMark:
    """One marked place of an adjuster's ruler, counted from closed."""

    position: int
    word: str
    is_now: bool = False


@dataclass(frozen=True, slots=True)
class AdjusterRow:
    """One adjuster of the list."""

    adjuster_id: str
    key: str  # the name of the row within the sheet
    title: str
    as_found: str
    range: str
    now: str
    advice: str = ""
    note: str = ""
    is_fault: bool = False  # the note asks for a look, it is not merely said
    skipped: str = ""  # why it was passed over
    verb: str = "Count"
    steps: int | None = None
    marks: tuple[RulerMark, ...] = ()
    names: tuple[str, ...] = ()  # what the ruler writes at its places, where bare numbers would mislead
    can_move_up: bool = False
    about: str = ""  # the heading of the help that says what it does


@dataclass(frozen=True, slots=True)
class ItemRow:
    """One spring item or tyre pressure to enter as found."""

    key: str  # the name of the row within the sheet
    item: str
    subject_id: str
    title: str  # in full: which end, which part
    label: str
    quantity: str
    unit: str
    value: float | None
    low: float | None
    high: float | None
    help: str = ""
    note: str = ""
    is_care: bool = False  # the note warns
    typed: str = ""  # text that could not be read, as it was left


@dataclass(frozen=True, slots=True)
class Group:
    """One unit with its adjusters and spring, or the tyres."""

    key: str
    title: str
    name: str = ""
    unit_id: str = ""
    rows: tuple[AdjusterRow, ...] = ()
    items: tuple[ItemRow, ...] = ()


def resolve_groups(
    records: AdjusterRecords, drafts: frozenset[str], units: Units, typed: Mapping[str, str]
) -> tuple[Group, ...]:
    """List fork, shock, tyres; ``drafts`` holds the adjusters with a count under way."""
    parts = records.parts
    groups = [
        Group(
            key=unit.kind,
            title=unit.kind.capitalize(),
            name=unit.name,
            unit_id=unit.id,
            rows=tuple(_row(records, one, drafts) for one in parts.adjusters_of(unit.id)),
            items=_items(parts, unit.id, unit, unit.kind, units, typed),
        )
        for unit in parts.units
    ]
    tyres = tuple(row for tyre in parts.tyres for row in _items(parts, tyre.id, None, tyre.end, units, typed))
    return (*groups, Group("tyres", "Tyres", items=tyres))


def stands_text(adjuster: Adjuster, line: OnBike | None, count: RangeCount | None) -> str:
    """Say where an adjuster stands now."""
    if line is None:
        return "not recorded"
    if line.how == "opened":
        return "fully open, for sag"
    if line.how == "closed":
        return "fully closed, for counting"
    if line.how == "renewed":
        return HOWS[line.how]
    if count is not None and adjuster.counting != "positions" and line.value == count.steps:
        return "fully open"
    return position_text(adjuster, line.value)


def advice_text(adjuster: Adjuster, count: RangeCount | None) -> str:
    """Say the maker's advice, counted from closed as soon as the range allows."""
    if adjuster.chart_steps is None:
        return ""
    steps = steps_text(adjuster, adjuster.chart_steps)
    if adjuster.counting == "positions":
        return f"{steps} (maker)"
    if count is not None and adjuster.chart_steps > count.steps:
        return f"{steps} from {adjuster.chart_from} (maker) lies beyond the counted range"
    if adjuster.chart_from == "closed":
        return f"{steps} from closed (maker)"
    if count is None:
        return f"{steps} from open (maker), not converted until counted"
    place = steps_text(adjuster, advice_within(adjuster, count.steps) or 0)
    return (
        f"{place} from closed (maker: {adjuster.chart_steps} from open)"
        if adjuster.counting == "clicks"
        else (f"{place} from closed (maker: {steps} from open)")
    )


def _row(records: AdjusterRecords, adjuster: Adjuster, drafts: frozenset[str]) -> AdjusterRow:
    parts = records.parts
    count = parts.range_of(adjuster.id)
    line = records.latest(adjuster.id)
    note, is_fault = _count_note(parts, adjuster, count)
    order = [one.id for one in parts.adjusters_of(adjuster.unit_id)]
    verb = "Go on counting" if adjuster.id in drafts else "Count again" if count else "Count"
    return AdjusterRow(
        adjuster_id=adjuster.id,
        key=f"{parts.unit_of(adjuster).kind}_{order.index(adjuster.id) + 1}",
        title=adjuster_title(adjuster),
        as_found=_as_found_text(records, adjuster, count),
        range=range_text(adjuster, count) if count else "not counted",
        now=stands_text(adjuster, line, count),
        advice=advice_text(adjuster, count),
        note=note,
        is_fault=is_fault,
        skipped=(records.skipped or {}).get(adjuster.id, ""),
        verb=verb,
        steps=count.steps if count else None,
        marks=_marks(records, adjuster, count, line),
        names=_ruler_names(adjuster, count),
        can_move_up=order.index(adjuster.id) > 0,
        about=heading_of(Item.ADJUSTER, adjuster),
    )


def _as_found_text(records: AdjusterRecords, adjuster: Adjuster, count: RangeCount | None) -> str:
    if count is not None:
        return position_text(adjuster, count.as_found)
    line = line_before_measuring(records.log, adjuster.id)
    return position_text(adjuster, line.value) if line else "–"


def _count_note(parts: BikeParts, adjuster: Adjuster, count: RangeCount | None) -> tuple[str, bool]:
    if count is None:
        return "", False
    if count.push_felt == "same":
        return NO_EFFECT, True
    counts = [one for one in parts.ranges if (one.adjuster_id, one.generation_id) == (adjuster.id, count.generation_id)]
    if len(counts) < 2:
        return count.note, False
    before = counts[-2].steps
    return recount_note(before, count.steps), abs(before - count.steps) >= 2


def _marks(
    records: AdjusterRecords, adjuster: Adjuster, count: RangeCount | None, line: OnBike | None
) -> tuple[RulerMark, ...]:
    """Mark as found, the advice and where it stands; places that coincide share one mark."""
    if count is None:
        return ()
    words: dict[int, list[str]] = {}
    if count.as_found is not None:
        words.setdefault(count.as_found, []).append("as found")
    if (advice := advice_within(adjuster, count.steps)) is not None:
        words.setdefault(advice, []).append("maker")
    now = round(line.value) if line is not None and line.value is not None and line.value <= count.steps else None
    if now is not None:
        words.setdefault(now, []).append("now")
    return tuple(RulerMark(place, ", ".join(said), place == now) for place, said in sorted(words.items()))


def _ruler_names(adjuster: Adjuster, count: RangeCount | None) -> tuple[str, ...]:
    """Name positions; write whole turns only, since the steps are quarters."""
    if count is None or adjuster.counting == "clicks":
        return ()
    if adjuster.counting == "positions":
        return position_names(adjuster)
    return tuple(f"{step // 4}" if step % 4 == 0 else "" for step in range(count.steps + 1))


def _items(
    parts: BikeParts, subject_id: str, unit: Unit | None, place: str, units: Units, typed: Mapping[str, str]
) -> tuple[ItemRow, ...]:
    return tuple(
        _item(parts, item, subject_id, unit, f"{place}_{item}", units, typed)
        for item, owner_id in settable_items(parts)
        if owner_id == subject_id and item != Item.ADJUSTER
    )


def _item(
    parts: BikeParts, item: str, subject_id: str, unit: Unit | None, key: str, units: Units, typed: Mapping[str, str]
) -> ItemRow:
    field = ITEM_FIELDS[item]
    line = parts.line(item, subject_id)
    value = line.value if line else None
    care = _limit_note(item, value, unit, parts, units)
    said = f"{HOWS[line.how]}, {short_date(line.at)}" if line is not None and value is not None else ""
    return ItemRow(
        key=key,
        item=item,
        subject_id=subject_id,
        title=parts.subject_title(item, subject_id),
        label=field.label if unit else parts.subject_title(item, subject_id),
        quantity=field.quantity,
        unit=units.unit(field.quantity),
        value=value,
        low=field.low,
        high=field.high,
        help=field.help,
        note=care or question(field, value) or said,
        is_care=bool(care),
        typed=typed.get(key, ""),
    )


def _limit_note(item: str, value: float | None, unit: Unit | None, parts: BikeParts, units: Units) -> str:
    if value is None or unit is None:
        return ""
    low, high = maker_limits(item, unit, parts.valves)
    quantity = ITEM_FIELDS[item].quantity
    if high is not None and value > high:
        return f"Above the maker's highest, {units.text(high, quantity)}. {_TOO_MUCH[item]}"
    if low is not None and value < low:
        return f"Below the maker's lowest, {units.text(low, quantity)}: do not ride it like this."
    return ""


_TOO_MUCH: dict[str, str] = {
    Item.PRESSURE: "Let air out slowly before anything else.",
    Item.NEGATIVE_PRESSURE: "Let air out slowly before anything else.",
    Item.SECOND_PRESSURE: "Let air out slowly before anything else.",
    Item.SPACERS: "Have some taken out before it is ridden.",
    Item.PRELOAD: "Turn the collar back before it is ridden.",
}
