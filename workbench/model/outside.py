"""What a record from outside must keep to before it is taken: what entry by hand would have kept to as well."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import fields
from datetime import datetime
from typing import Any

from workbench.model.adjuster import DEPENDS, PUSH_TESTS, Adjuster, RangeCount
from workbench.model.bike import DISCIPLINES, FRONTS, LAYOUTS, REARS, SPRING_OF, Bike
from workbench.model.errors import InputError
from workbench.model.facts import FACTS, LIMIT_PAIRS, check_field, check_limits
from workbench.model.ride import Run, RunRating, Session
from workbench.model.setting import Item, OnBike, Setup, SetupValue
from workbench.model.unit import FILL_ORDERS, GENERATION_REASONS, NEGATIVES, SPRINGS, VALVES, Generation, Unit, Valve

MOMENTS = ("at",)
_WORDS: dict[tuple[type, str], Collection[str]] = {
    (Bike, "layout"): LAYOUTS,
    (Bike, "discipline"): DISCIPLINES,
    (Unit, "spring"): SPRINGS,
    (Unit, "negative"): NEGATIVES,
    (Unit, "fill_order"): FILL_ORDERS,
    (Valve, "purpose"): VALVES,
    (Generation, "reason"): GENERATION_REASONS,
    (Adjuster, "depends_how"): DEPENDS,
    (RangeCount, "push_felt"): PUSH_TESTS,
    (OnBike, "item"): tuple(Item),
    (SetupValue, "item"): tuple(Item),
}
_RANGES: dict[tuple[type, str], tuple[int, int]] = {
    (Adjuster, "depends_position"): (0, 200),
    (RangeCount, "steps"): (0, 200),
    (RangeCount, "as_found"): (0, 200),
    (Setup, "number"): (1, 1_000_000),
    (Run, "number"): (1, 1_000_000),
    (Generation, "number"): (1, 1_000_000),
    (Run, "liking"): (1, 9),
    (Run, "direction"): (-2, 2),
    (Run, "compared"): (-1, 1),
    (RunRating, "score"): (-9, 9),
    (Session, "planned_runs"): (0, 10_000),
}
LARGEST = 1e9  # no length, pressure, mass or count of a bike comes near it
_REQUIRED_MOMENTS = ("started_at", "made_at", "at", "counted_at", "ridden_at", "typed_at", "measured_at")


def check_record(record: Any) -> None:
    """Refuse, at its field, what nobody could have entered."""
    kind = type(record)
    declared = {one.name: one for one in FACTS.get(kind, ())}
    for one in fields(record):
        value = getattr(record, one.name)
        if value is None:
            continue
        if one.name in declared:
            check_field(declared[one.name], value)
        if isinstance(value, str) and (one.name.endswith("_at") or one.name in MOMENTS):
            _check_moment(one.name, value)
        if (kind, one.name) in _WORDS and value not in _WORDS[kind, one.name]:
            raise InputError(one.name, value, "one of the words known here")
        if isinstance(value, int | float) and not isinstance(value, bool):
            low, high = _RANGES.get((kind, one.name), (-LARGEST, LARGEST))
            if not low <= value <= high:
                raise InputError(one.name, value, f"{low:g} to {high:g}")
    if isinstance(record, Unit):
        kinds = FRONTS if record.end == "front" else REARS
        if record.spring not in {SPRING_OF.get(key) for key in kinds}:  # no layout could name such a bike
            raise InputError("spring", record.spring, f"a spring that hangs at the {record.end}")
    for low_name, _high_name in LIMIT_PAIRS.get(kind, ()):
        check_limits(record, low_name)


def _check_moment(name: str, value: str) -> None:
    if not value and name not in _REQUIRED_MOMENTS:
        return
    try:
        moment = datetime.fromisoformat(value)
    except ValueError:
        raise InputError(name, value, "a time such as 2031-05-14T09:00:00+00:00") from None
    if not 1900 <= moment.year <= 9000:
        raise InputError(name, value, "a year from 1900 to 9000")
