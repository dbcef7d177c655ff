"""How the settable things of a bike are called in a session written down as text."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from workbench.model.adjuster import Adjuster, adjuster_words
from workbench.model.counting import position_names
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.setting import Item

ENDS = {"front": ("fork", "front"), "rear": ("shock", "rear")}
SHORT_KINDS = {
    "rebound": ("reb", "r"),
    "compression": ("comp", "c"),
    "lever": ("lever",),
    "end_stroke": ("end-stroke",),
}
SHORT_SPEEDS = {"low": ("low-speed", "low speed", "ls"), "high": ("high-speed", "high speed", "hs")}
THING_WORDS: Mapping[str, tuple[str, ...]] = {
    Item.PRESSURE: ("pressure", "air pressure", "air"),
    Item.SECOND_PRESSURE: ("second chamber", "second chamber pressure"),
    Item.NEGATIVE_PRESSURE: ("negative chamber", "negative chamber pressure"),
    Item.SPRING_RATE: ("spring", "spring rate"),
    Item.PRELOAD: ("preload",),
    Item.SPACERS: ("spacers", "volume spacers"),
    Item.TYRE_PRESSURE: ("tyre", "tyre pressure", "tire"),
}


@dataclass(frozen=True, slots=True)
class Thing:
    """One thing that can be set, with the words it is called by, the longest first."""

    item: str
    subject_id: str
    title: str
    words: tuple[str, ...]
    quantity: str
    adjuster: Adjuster | None = None
    steps: int | None = None
    positions: tuple[str, ...] = ()


def things_of(parts: BikeParts) -> tuple[Thing, ...]:
    """List what can be set on a bike and how it may be called; a name that fits two things is left out."""
    found = [_thing(parts, item, subject_id) for item, subject_id in settable_items(parts)]
    calls = [word for thing in found for word in thing.words]
    return tuple(
        Thing(
            one.item,
            one.subject_id,
            one.title,
            tuple(sorted((word for word in one.words if calls.count(word) == 1), key=lambda word: (-len(word), word))),
            one.quantity,
            one.adjuster,
            one.steps,
            one.positions,
        )
        for one in found
    )


def _thing(parts: BikeParts, item: str, subject_id: str) -> Thing:
    title, quantity = parts.subject_title(item, subject_id), ITEM_QUANTITIES[item]
    adjuster = parts.adjuster(subject_id)
    if adjuster is None:
        end = next((unit.end for unit in parts.units if unit.id == subject_id), "")
        end = end or next((tyre.end for tyre in parts.tyres if tyre.id == subject_id), "")
        return Thing(item, subject_id, title, _with_ends(end, THING_WORDS[item]), quantity)
    count = parts.range_of(subject_id)
    return Thing(
        item,
        subject_id,
        title,
        _with_ends(parts.unit_of(adjuster).end, _adjuster_calls(adjuster)),
        quantity,
        adjuster,
        count.steps if count else None,
        tuple(name.casefold() for name in position_names(adjuster)),
    )


def _adjuster_calls(adjuster: Adjuster) -> tuple[str, ...]:
    kinds = (adjuster.kind.replace("_", "-"), *SHORT_KINDS.get(adjuster.kind, ()))
    speeds = SHORT_SPEEDS.get(adjuster.speed, ())
    calls = [adjuster_words(adjuster).casefold(), *(kind for kind in kinds if len(kind) > 1)]
    for speed in speeds:
        is_short = len(speed) == 2  # "lsr", but "low-speed rebound"
        some = [kind for kind in kinds if (len(kind) == 1) == is_short]
        calls += [f"{speed}{kind}" if is_short else f"{speed} {kind}" for kind in some]
    return tuple(dict.fromkeys(calls))


def _with_ends(end: str, calls: Iterable[str]) -> tuple[str, ...]:
    """Every call with and without its end; both "fork rebound" and "rebound fork" are said."""
    ends = ENDS.get(end, ())
    found: list[str] = []
    for call in calls:
        found += [call, *(f"{word} {call}" for word in ends), *(f"{call} {word}" for word in ends)]
    return tuple(dict.fromkeys(found))
