"""What can be set on a bike: the items, the log of what is on it now, and setups."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from workbench.model.warmth import as_shown_beside


class Item(StrEnum):
    """A kind of thing that can be set. The subject is an adjuster, a unit or a tyre."""

    ADJUSTER = "adjuster"  # steps from closed; subject: adjuster
    PRESSURE = "pressure"  # kPa gauge, main chamber; subject: unit
    SECOND_PRESSURE = "second_pressure"  # kPa gauge; subject: unit
    NEGATIVE_PRESSURE = "negative_pressure"  # kPa gauge; subject: unit
    SPRING_RATE = "spring_rate"  # N/mm; subject: unit
    PRELOAD = "preload"  # mm; subject: unit
    SPACERS = "spacers"  # count; subject: unit
    TYRE_PRESSURE = "tyre_pressure"  # kPa gauge; subject: tyre


PRESSURE_ITEMS = frozenset({Item.PRESSURE, Item.SECOND_PRESSURE, Item.NEGATIVE_PRESSURE, Item.TYRE_PRESSURE})

HOWS = {
    "counted": "counted",
    "opened": "turned fully open",
    "closed": "turned fully closed",
    "set_to": "set to",
    "as_pumped": "as pumped",
    "as_attached": "as attached",
    "stated": "as stated",
    "pressed": "measured by pressing it",
    "wire": "reckoned from the wire",
    "table": "by its table of travel and force",
    "unknown": "not known",
    "renewed": "not known since the hardware changed",
    "concealed": "kept from everybody until a blind test is revealed",
}


@dataclass(frozen=True, slots=True)
class OnBike:
    """One line of the log of what is on the bike: the latest line of an item is what is there now."""

    id: str
    bike_id: str
    at: str
    sequence: int  # rises by one per line and bike, so that equal times keep their order
    item: str
    subject_id: str
    value: float | None  # None: not known
    how: str
    range_id: str | None = None
    temperature_c: float | None = None
    pump_id: str | None = None
    person_id: str | None = None
    deed_id: str = ""


@dataclass(frozen=True, slots=True)
class Setup:
    """A numbered, complete state of a bike for one rider."""

    id: str
    bike_id: str
    rider_id: str
    number: int
    origin: str  # baseline, as_found, change, restored
    made_at: str
    name: str = ""
    parent_id: str | None = None
    is_confounded: bool = False
    temperature_c: float | None = None
    person_id: str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class SetupValue:
    """One setting of a setup."""

    id: str
    setup_id: str
    item: str
    subject_id: str
    value: float | None
    how: str = "set_to"
    range_id: str | None = None
    temperature_c: float | None = None  # at which a pressure was set; it reads otherwise on a colder day


@dataclass(frozen=True, slots=True)
class Change:
    """One item that differs between two setups."""

    item: str
    subject_id: str
    before: float | None
    after: float | None


GAUGE_KPA = 3.5  # half a psi: what a suspension gauge can be read to (common practice, no source)
_HARDWARE_MARK = "#"

LINKED = (
    frozenset({Item.SPACERS, Item.PRESSURE}),
    frozenset({Item.SPRING_RATE, Item.PRELOAD}),
    frozenset({Item.PRESSURE, Item.SECOND_PRESSURE}),
)


def latest(log: tuple[OnBike, ...]) -> dict[tuple[str, str], OnBike]:
    """Give the line that holds now for every item and subject."""
    now: dict[tuple[str, str], OnBike] = {}
    for line in sorted(log, key=lambda entry: entry.sequence):
        now[line.item, line.subject_id] = line
    return now


def on_other_hardware(adjuster_id: str, generation: int) -> str:
    """Give the subject of what was set on hardware that is no longer there: another thing than the present one.

    So no such position is ever compared with, or restored on, what is there now; nor any setting of a unit that was
    taken off, whose generation is 0.
    """
    return f"{adjuster_id}{_HARDWARE_MARK}{generation}"


def adjuster_of(subject_id: str) -> str:
    """Give the adjuster a subject is about, on whichever hardware."""
    return subject_id.partition(_HARDWARE_MARK)[0]


def is_on_other_hardware(subject_id: str) -> bool:
    """Tell whether a subject is a position counted on hardware that is no longer there."""
    return _HARDWARE_MARK in subject_id


def is_same(item: str, old: float | None, new: float | None) -> bool:
    """Tell whether two values are one to whoever sets them.

    Pressures are, as far as a gauge can tell, and where the temperature they were set at explains the difference.
    """
    if old is None or new is None:
        return old is new
    if item not in PRESSURE_ITEMS:
        return abs(new - old) < 1e-9
    return abs(new - old) < GAUGE_KPA or abs(new - as_shown_beside(old, new)) < GAUGE_KPA


def changes_between(
    before: Mapping[tuple[str, str], float | None], after: Mapping[tuple[str, str], float | None]
) -> tuple[Change, ...]:
    """List what differs. Positions counted on two kinds of hardware are a change with no before and no after.

    Two on the same earlier hardware are compared as they were then.
    """
    found: dict[tuple[str, str], Change] = {}
    for item, subject_id in sorted(before.keys() | after.keys()):
        old, new = before.get((item, subject_id)), after.get((item, subject_id))
        if is_same(item, old, new):
            continue
        if is_on_other_hardware(subject_id) and (old is None or new is None):
            old = new = None
        subject_id = adjuster_of(subject_id)
        found[item, subject_id] = Change(item, subject_id, old, new)
    return tuple(found.values())


def without_removed(
    values: Mapping[tuple[str, str], float | None], now: Mapping[tuple[str, str], float | None]
) -> dict[tuple[str, str], float | None]:
    """Give values without those of adjusters that were taken off the bike's list since; ``now`` has every item left."""
    return {key: value for key, value in values.items() if key in now or is_on_other_hardware(key[1])}


def matching_setup(
    setups: Iterable[Setup],
    values: Mapping[str, Mapping[tuple[str, str], float | None]],
    now: Mapping[tuple[str, str], float | None],
) -> Setup | None:
    """Give the newest setup that stands on the bike: nothing it sets differs from what is there.

    ``setups`` come in number order, ``values`` are by setup.
    """
    for setup in reversed(tuple(setups)):
        there = without_removed(values[setup.id], now)
        wanted = {key: value for key, value in there.items() if value is not None}
        if not changes_between(wanted, {key: now.get(key) for key in wanted}):
            return setup
    return None


def free_changes(changes: tuple[Change, ...]) -> int:
    """Count how many independent things changed: linked ones on one unit are one."""
    items = {(change.item, change.subject_id) for change in changes}
    groups: list[set[tuple[str, str]]] = [{item} for item in items]
    for first, second in ((a, b) for a in items for b in items if a < b):
        linked = first[1] == second[1] and any({first[0], second[0]} <= pair for pair in LINKED)
        if linked:
            joined = [group for group in groups if first in group or second in group]
            groups = [group for group in groups if group not in joined]
            groups.append(set().union(*joined))
    return len(groups)
