"""Facts about records, declared once: what a field is called, what it may hold, what to say about it."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite
from typing import Any

from workbench.model import adjuster, bike, maker_table, unit
from workbench.model.adjuster import Adjuster
from workbench.model.bike import Bike, Skip, Tyre
from workbench.model.errors import InputError
from workbench.model.person import Person
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import Setup
from workbench.model.unit import Generation, Pump, Unit, Valve

TEXT_LIMIT = 200
NOTE_LIMIT = 5000


@dataclass(frozen=True, slots=True)
class Field:
    """One fact of a record.

    ``quantity`` is a quantity of ``model.units`` or one of "text", "note", "choice", "flag", "count".
    ``low`` and ``high`` are the limits that refuse, ``ask_low`` and ``ask_high`` those that only ask.
    """

    name: str
    label: str
    quantity: str = "text"
    low: float | None = None
    high: float | None = None
    ask_low: float | None = None
    ask_high: float | None = None
    choices: Mapping[str, str] | None = None
    help: str = ""
    is_required: bool = False


PRESSURE_UNITS = {"psi": "psi", "bar": "bar", "kPa": "kPa"}
LENGTH_UNITS = {"mm": "mm", "in": "in"}
MASS_UNITS = {"kg": "kg", "lb": "lb"}
RATE_UNITS = {"lbf/in": "lbf/in", "N/mm": "N/mm"}
TEMPERATURE_UNITS = {"degC": "°C", "degF": "°F"}

FACTS: dict[type, tuple[Field, ...]] = {
    Person: (
        Field("name", "Name", is_required=True),
        Field("rides", "Rides", "flag"),
        Field("works_here", "Works at this bench", "flag"),
        Field(
            "mass_kg",
            "Mass ready to ride",
            "mass",
            low=5,
            high=300,
            ask_low=15,
            ask_high=160,
            help="With helmet, shoes, pack and water: sag is measured with all of it on.",
        ),
        Field("is_child", "A child", "flag"),
        Field("pressure_unit", "Pressure in", "choice", choices=PRESSURE_UNITS),
        Field("length_unit", "Length in", "choice", choices=LENGTH_UNITS),
        Field("mass_unit", "Mass in", "choice", choices=MASS_UNITS),
        Field("rate_unit", "Spring rate in", "choice", choices=RATE_UNITS),
        Field("temperature_unit", "Temperature in", "choice", choices=TEMPERATURE_UNITS),
        Field("note", "Note", "note"),
    ),
    Bike: (
        Field("name", "Name of the bike", is_required=True),
        Field("discipline", "Ridden as", "choice", choices=bike.DISCIPLINES, help="Sets where the sag target starts."),
        Field("is_ebike", "E-bike", "flag"),
        Field("rear_travel_mm", "Rear wheel travel", "length", low=20, high=400, ask_low=60, ask_high=260),
        Field("head_angle_deg", "Head angle", "angle", low=45, high=85, ask_low=60, ask_high=75),
        Field("wheelbase_mm", "Wheelbase", "length", low=500, high=2000, ask_low=900, ask_high=1400),
        Field("bb_drop_mm", "Bottom bracket below the axles", "length", low=-150, high=150),
        Field("tags", "Tags", help="Words to find it by, with commas between."),
        Field("note", "Note", "note"),
    ),
    Unit: (
        Field("name", "Name", help="As you would call it on a job sheet."),
        Field(
            "travel_mm",
            "Travel",
            "length",
            low=10,
            high=400,
            help="The unit's own: travel of a fork, stroke of a shock.",
        ),
        Field(
            "minimum_kpa",
            "Lowest pressure allowed",
            "pressure",
            low=0,
            high=3500,
            help="From the maker's manual. Advice never goes below it.",
        ),
        Field(
            "maximum_kpa",
            "Highest pressure allowed",
            "pressure",
            low=10,
            high=3500,
            help="From the maker's manual. Advice never goes above it.",
        ),
        Field("has_second_positive", "Second positive chamber", "flag"),
        Field(
            "second_minimum_kpa",
            "Second chamber, lowest allowed",
            "pressure",
            low=0,
            high=3500,
        ),
        Field("second_maximum_kpa", "Second chamber, highest allowed", "pressure", low=10, high=3500),
        Field(
            "fill_order",
            "Filled in the order",
            "choice",
            choices=unit.FILL_ORDERS,
            help="The maker's manual says which; the second stands above the main one.",
        ),
        Field("negative", "Negative chamber", "choice", choices=unit.NEGATIVES),
        Field(
            "eye_to_eye_mm",
            "Eye to eye, extended",
            "length",
            low=50,
            high=500,
            help="A leverage survey can then be read by the shock's length.",
        ),
        Field("spacer_limit", "Most spacers allowed", "count", low=0, high=30),
        Field("spacer_volume_mm3", "Volume of one spacer", "volume", low=100, high=100_000),
        Field("spring_stroke_mm", "Usable stroke of the spring", "length", low=10, high=200),
        Field("preload_limit_mm", "Most preload allowed", "length", low=0, high=50),
        Field(
            "preload_pitch_mm",
            "One turn of the preload collar",
            "length",
            low=0.3,
            high=5,
            help="How far it moves the collar: the pitch of its thread.",
        ),
        Field(
            "area_mm2",
            "Piston area",
            "area",
            low=50,
            high=10_000,
            help="If the sizes are known the spring is computed from them; else typical ones are assumed.",
        ),
        Field("positive_mm3", "Positive chamber, extended", "volume", low=1_000, high=2_000_000),
        Field("negative_mm3", "Negative chamber, extended", "volume", low=100, high=2_000_000),
        Field("maker_table", maker_table.LABEL, "pressure_table", help=f"Write {maker_table.HOW}."),
        Field("maker_sag_low", "Maker's sag, from", "fraction", low=0.02, high=0.6),
        Field("maker_sag_high", "Maker's sag, to", "fraction", low=0.02, high=0.6),
        Field("is_dual_crown", "Dual crown", "flag"),
        Field("is_inverted", "Inverted", "flag"),
        Field("damper_in_one_leg", "Damper in one leg", "flag"),
        Field(
            "exposed_nominal_mm",
            "In sight when extended",
            "length",
            low=10,
            high=400,
            help="From the seal to the crown or the shaft's end, as it should be. Check-in compares with it.",
        ),
        Field("serial", "Serial number"),
        Field("note", "Note", "note"),
    ),
    Adjuster: (
        Field("kind", "Adjusts", "choice", choices=adjuster.KINDS),
        Field("speed", "Speed", "choice", choices=adjuster.SPEEDS),
        Field("name", "Name on the unit"),
        Field("counting", "Counted in", "choice", choices=adjuster.COUNTINGS),
        Field("position_names", "Positions, closed first", help="Part the names with | as in: firm|middle|open"),
        Field(
            "closed_turn",
            "Closes when turned",
            "choice",
            choices=adjuster.CLOSED_TURNS,
            help="Look at the knob's face. Usually clockwise, not always.",
        ),
        Field("chart_steps", "The maker's advice", "count", low=0, high=200),
        Field("chart_from", "Counted from", "choice", choices={"closed": "Closed", "open": "Open"}),
        Field("note", "Note", "note"),
    ),
    Generation: (Field("note", "What was done", "note"),),
    Valve: (
        Field("place", "Where the valve is"),
        Field(
            "minimum_kpa",
            "Negative chamber, lowest allowed",
            "pressure",
            low=0,
            high=3500,
            help="From the maker's manual: of the negative chamber's own valve.",
        ),
        Field("maximum_kpa", "Negative chamber, highest allowed", "pressure", low=10, high=3500),
    ),
    Tyre: (
        Field("name", "Tyre"),
        Field("width_mm", "Width", "length", low=20, high=150),
        Field("is_tubeless", "Tubeless", "flag"),
        Field("has_insert", "With an insert", "flag"),
    ),
    Course: (
        Field("name", "Name", is_required=True),
        Field(
            "has_heavy_hit",
            "Has one heavy hit",
            "flag",
            help="Without one, travel used says nothing about the end of the stroke.",
        ),
        Field("typical_s", "Takes about", "duration", low=5, high=7200, ask_low=30, ask_high=600),
        Field("note", "Note", "note"),
    ),
    Setup: (Field("name", "Name of the setup"), Field("note", "Note", "note")),
    Session: (Field("not_verified_reason", "Why it is not verified"),),
    Run: (Field("note", "Note", "note"), Field("set_aside_reason", "Why it is set aside")),
    Skip: (Field("reason", "Reason", is_required=True),),
    Pump: (
        Field("name", "Name", is_required=True),
        Field("division_kpa", "Smallest division", "pressure", low=0.1, high=200),
    ),
}

SPRING_LABELS = unit.SPRINGS


def field_of(record_type: type, name: str) -> Field:
    """Give the declaration of one field."""
    for field in FACTS[record_type]:
        if field.name == name:
            return field
    raise KeyError(f"{record_type.__name__}.{name}")


def clean_text(text: str) -> str:
    """Drop control and direction-override characters, which could make a name lie about itself."""
    return without_controls(text).strip()


def without_controls(text: str) -> str:
    """Give the text without such characters, its edges as they are."""
    return "".join(char for char in text if char in "\n\t" or not _is_control(char))


def _is_control(char: str) -> bool:
    joiners = "\u200c\u200d"  # without them some scripts and many emoji fall apart
    return unicodedata.category(char) in ("Cc", "Cf", "Cs") and char not in joiners


def _check_text(field: Field, value: Any) -> str:
    text = clean_text(str(value or ""))
    limit = NOTE_LIMIT if field.quantity == "note" else TEXT_LIMIT
    if field.is_required and not text:
        raise InputError(field.label, "", "a name of at least one letter or figure")
    if len(text) > limit:
        raise InputError(field.label, text, f"up to {limit} characters", f"This has {len(text)}.")
    return text


def check_field(field: Field, value: Any) -> Any:
    """Give the value as it may be stored, or raise InputError at the field."""
    if field.quantity in ("text", "note", "pressure_table"):
        text = _check_text(field, value)
        if field.quantity == "pressure_table":
            maker_table.read_table(text)
        return text
    if field.quantity == "choice":
        if field.choices is not None and value not in field.choices:
            raise InputError(field.label, value, ", ".join(field.choices.values()))
        return value
    if field.quantity == "flag":
        return bool(value)
    if value is None:
        if field.is_required:
            raise InputError(field.label, "", "a value")
        return None
    return _check_number(field, value)


def _check_number(field: Field, value: Any) -> Any:
    number = float(value)
    if not isfinite(number):
        raise InputError(field.label, value, "a finite number")
    low = field.low if field.low is not None else float("-inf")
    high = field.high if field.high is not None else float("inf")
    if not low <= number <= high:
        raise InputError(field.label, value, f"{low:g} to {high:g}")
    if field.quantity != "count":
        return number
    if not number.is_integer():
        raise InputError(field.label, value, "a whole number")
    return int(number)


# Facts of one record that are a lower and an upper limit of the same thing.
LIMIT_PAIRS: dict[type, tuple[tuple[str, str], ...]] = {
    Unit: (
        ("minimum_kpa", "maximum_kpa"),
        ("second_minimum_kpa", "second_maximum_kpa"),
        ("maker_sag_low", "maker_sag_high"),
    ),
    Valve: (("minimum_kpa", "maximum_kpa"),),
}


def check_limits(record: Any, changed: str) -> None:
    """Refuse a record whose lower limit lies above its upper one, at the field that was changed."""
    for low, high in LIMIT_PAIRS.get(type(record), ()):
        lowest, highest = getattr(record, low), getattr(record, high)
        if changed in (low, high) and lowest is not None and highest is not None and lowest > highest:
            is_low = changed == low
            other = field_of(type(record), high if is_low else low).label.lower()
            allowed = f"not {'above' if is_low else 'below'} the {other}"
            raise InputError(field_of(type(record), changed).label, "this value", allowed)


def read_whole(label: str, text: str, low: int, high: int) -> int:
    """Read a typed whole number within its range."""
    shown = text.strip()
    if not shown.isdecimal() or len(shown) > 9 or not low <= int(shown) <= high:
        raise InputError(label, text, f"{low} to {high}")
    return int(shown)


def question(field: Field, value: float | None) -> str:
    """Ask about a value that is possible but unusual; empty when there is nothing to ask."""
    if value is None:
        return ""
    if (field.ask_low is not None and value < field.ask_low) or (field.ask_high is not None and value > field.ask_high):
        return f"{field.label}: unusual. Keep it if it is right."
    return ""
