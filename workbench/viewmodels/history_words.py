"""What a deed changed, in plain words: which thing, which fact, from what to what."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from workbench.actions.desk import RowChange
from workbench.model.adjuster import Adjuster
from workbench.model.bike import Bike, Skip, Tyre
from workbench.model.checkin import DEPTHS, SEVERITIES, UNSEEN, title_of
from workbench.model.errors import InputError
from workbench.model.facts import FACTS, Field
from workbench.model.parts import ITEM_QUANTITIES, ITEM_WORDS
from workbench.model.person import Person
from workbench.model.responses import ATTRIBUTES
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import HOWS, Item, Setup
from workbench.model.unit import Pump, Unit
from workbench.viewmodels.shown import Units, short_time

NOUNS = {
    "on_bike": "On the bike",
    "setup_value": "Setup value",
    "range_count": "Range",
    "bike_rider": "Rider of a bike",
    "run_rating": "Rating",
    "run_symptom": "Symptom",
    "check_in": "Check-in",
    "check_item": "Check-in point",
    "sag_reading": "Sag reading",
    "sag_measurement": "Sag",
    "card_issue": "Card",
    "photo": "Picture",
}
TYPES: dict[str, type] = {
    "bike": Bike,
    "person": Person,
    "unit": Unit,
    "adjuster": Adjuster,
    "tyre": Tyre,
    "course": Course,
    "session": Session,
    "run": Run,
    "setup": Setup,
    "skip": Skip,
    "pump": Pump,
}
ENDINGS = {
    "_n_per_mm": "spring_rate",
    "_kpa": "pressure",
    "_mm": "length",
    "_kg": "mass",
    "_c": "temperature",
    "_s": "duration",
    "_deg": "angle",
    "_mm2": "area",
    "_mm3": "volume",
}
SAID: dict[str, Mapping[Any, str]] = {  # what stands for an answer in a row, by the name of its fact
    "direction": {-2: "far too closed", -1: "too closed", 0: "just right", 1: "too open", 2: "far too open"},
    "compared": {-1: "worse than the run before", 0: "the same as the run before", 1: "better than the run before"},
    "attribute": ATTRIBUTES,
    "end": {"front": "front", "rear": "rear"},
    "severity": {**SEVERITIES, UNSEEN: "not looked at"},
    "depth": DEPTHS,
}
UNTOLD = ("id", "version", "code", "sequence", "item", "subject_id", "range_id", "deed_id")
MOST = 6
LONGEST = 60
NOTHING = "–"


def changes_words(changes: tuple[RowChange, ...], names: Mapping[str, str], units: Units) -> tuple[str, ...]:
    """Say what a deed changed, a line a row; ``names`` are those of things other rows point at."""
    lines = [_line(change, names, units) for change in changes[:MOST]]
    if len(changes) > MOST:
        lines.append(f"and {len(changes) - MOST} more")
    return tuple(lines)


def _line(change: RowChange, names: Mapping[str, str], units: Units) -> str:
    image = change.after or change.before
    if image is None:
        return f"{_noun(change.table)}: written under an earlier version, not shown"
    title = _title(change.table, image, names, units)
    if change.before is None:
        told = _facts(change.table, image, names, units)
        verb = "" if change.table == "on_bike" else " added"
        return f"{title}{verb}: {told}" if told else f"{title}{verb}"
    if change.after is None:
        return f"{title} removed"
    return f"{title}: {_differences(change, names, units)}"


def _title(table: str, image: Mapping[str, Any], names: Mapping[str, str], units: Units) -> str:
    noun = _noun(table)
    if table in ("on_bike", "setup_value"):
        subject = names.get(str(image["subject_id"]).partition("#")[0], "")
        thing = ITEM_WORDS.get(str(image["item"]), str(image["item"])).removeprefix("tyre ")
        is_named = image["item"] == Item.ADJUSTER and bool(subject)
        return f"{noun}, {subject}" if is_named else f"{noun}, {f'{subject} {thing}'.strip()}"
    if table == "check_item":
        return f"{noun}, {title_of(str(image['code'])).lower()}"
    if image.get("name"):
        return f"{noun} “{_short(image['name'])}”"
    if image.get("number"):
        return f"{noun} {'no. ' if table == 'setup' else ''}{image['number']}"
    owner = names.get(str(image.get("adjuster_id") or image.get("unit_id") or ""), "")
    return f"{noun}, {owner}" if owner else noun


def _facts(table: str, image: Mapping[str, Any], names: Mapping[str, str], units: Units) -> str:
    if table in ("on_bike", "setup_value"):
        value = _item_value(image, units)
        how = HOWS.get(str(image.get("how")), "")
        return f"{value}, {how}" if table == "on_bike" and how else value
    told = [
        f"{_label(table, name)} {_shown(table, name, value, names, units)}"
        for name, value in image.items()
        if _is_told(name) and value not in (None, "", False) and name not in ("name", "number")
    ]
    return ", ".join(told[:5])


def _differences(change: RowChange, names: Mapping[str, str], units: Units) -> str:
    before, after = change.before or {}, change.after or {}
    if change.table in ("on_bike", "setup_value") and before.get("value") != after.get("value"):
        return f"{_item_value(before, units)} → {_item_value(after, units)}"
    told = [
        f"{_label(change.table, name)} {_shown(change.table, name, before.get(name), names, units)}"
        f" → {_shown(change.table, name, value, names, units)}"
        for name, value in after.items()
        if before.get(name) != value and (_is_told(name) or name.endswith("_at"))
    ]
    return "; ".join(told[:6]) or "kept under another key"


def _item_value(image: Mapping[str, Any], units: Units) -> str:
    value, item = image.get("value"), str(image.get("item"))
    if value is None:
        return "not known"
    if item == Item.ADJUSTER:
        return f"{value:g} from closed"
    return units.text(value, ITEM_QUANTITIES.get(item, "count"))


def _is_told(name: str) -> bool:
    return name not in UNTOLD and not name.endswith(("_id", "_at")) and name not in ("at", "digest", "seed", "sha256")


def _label(table: str, name: str) -> str:
    field = _field(table, name)
    if field is not None:
        return field.label.lower()
    ending = next((one for one in ENDINGS if name.endswith(one)), "")
    return name.removesuffix(ending).removeprefix("is_").removeprefix("has_").replace("_", " ")


def _shown(table: str, name: str, value: Any, names: Mapping[str, str], units: Units) -> str:
    if value is None or value == "":
        return NOTHING
    field = _field(table, name)
    if field is not None and field.choices is not None:
        return str(field.choices.get(value, value)).lower()
    if value in SAID.get(name, ()):
        return SAID[name][value].lower()
    if name.endswith("_at"):
        return short_time(str(value))
    if name.startswith(("is_", "has_", "rides", "works")) or (field is not None and field.quantity == "flag"):
        return "yes" if value else "no"
    quantity = field.quantity if field is not None and field.quantity not in ("text", "note") else _quantity(name)
    if isinstance(value, int | float) and quantity in ENDINGS.values():
        return _in_units(value, quantity, units)
    if isinstance(value, float):
        return f"{value:g}"
    return names.get(str(value), "") or (f"“{_short(value)}”" if isinstance(value, str) else str(value))


def _in_units(value: float, quantity: str, units: Units) -> str:
    try:
        return units.text(value, quantity)
    except InputError:
        return f"{value:g}"


def _quantity(name: str) -> str:
    return next((quantity for ending, quantity in ENDINGS.items() if name.endswith(ending)), "")


def _field(table: str, name: str) -> Field | None:
    kind = TYPES.get(table)
    return next((one for one in FACTS.get(kind, ()) if one.name == name), None) if kind is not None else None


def _noun(table: str) -> str:
    return NOUNS.get(table, table.replace("_", " ").capitalize())


def _short(text: object) -> str:
    shown = " ".join(str(text).split())
    return shown if len(shown) <= LONGEST else f"{shown[: LONGEST - 1]}…"
