"""What is typed about coil springs: drafts as typed, entries with their ranges, and the problem at each field."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace

from workbench.model.errors import InputError
from workbench.model.units import show_number, to_unit
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import TypedIn, as_meant, texts_as_meant, typed_in

FIRST_LINES = 6  # lines offered at first; a new one appears when the last is used
Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a sheet: its name, what it is called, and what it may be."""

    name: str
    label: str
    quantity: str
    low: float = 0.0
    high: float = 0.0
    is_needed: bool = True
    help: str = ""
    usual: str = ""  # stands there until something else is typed


@dataclass(frozen=True, slots=True)
class CoilField:
    """One entry as shown: text as typed, the unit of a bare number, and what is wrong with it."""

    name: str
    label: str
    text: str
    unit: str = ""
    problem: str = ""
    help: str = ""


@dataclass(frozen=True, slots=True)
class CoilDraft:
    """One sheet's typing, as typed; pairs are lines of travel and force."""

    texts: tuple[tuple[str, str], ...] = ()
    pairs: Pairs = ()
    choice: str = ""
    typed_in: TypedIn = ()

    def text(self, name: str) -> str | None:
        """Give what stands typed in a field; None where nothing ever was."""
        return dict(self.texts).get(name)

    def with_text(self, name: str, text: str) -> CoilDraft:
        """Note what is typed in a field."""
        return replace(self, texts=tuple({**dict(self.texts), name: text}.items()))

    def with_pair(self, line: int, column: int, text: str) -> CoilDraft:
        """Note what is typed in one line."""
        lines = [list(pair) for pair in with_free_line(self.pairs)]
        lines[line][column] = text
        while lines and not any(one.strip() for one in lines[-1]):
            lines.pop()
        return replace(self, pairs=tuple((first, second) for first, second in lines))

    def to_json(self, units: Units) -> str:
        """Write the draft for keeping, with the units its bare numbers are meant in."""
        body = {"texts": dict(self.texts), "pairs": self.pairs, "choice": self.choice, "typed_in": typed_in(units)}
        return json.dumps(body, ensure_ascii=False)


def draft_from_json(body: str, quantities: Mapping[str, str], units: Units) -> CoilDraft:
    """Read a kept draft as it was meant, whoever reads it now."""
    known = json.loads(body)
    noted = tuple(str(one) for one in known.get("typed_in", ()))
    texts = {str(name): str(text) for name, text in known.get("texts", {}).items()}
    pairs = tuple((str(first), str(second)) for first, second in known.get("pairs", ()))
    if len(noted) == len(typed_in(units)):
        then = Units(*noted).length
        pairs = tuple((as_meant(travel, then, units.length) if travel else "", force) for travel, force in pairs)
    meant = texts_as_meant(texts, quantities, noted, units)
    return CoilDraft(tuple(meant.items()), pairs, str(known.get("choice", "")), noted)


def with_free_line(pairs: Pairs) -> Pairs:
    """Give the lines with at least one free at their end."""
    lines = list(pairs)
    while len(lines) < FIRST_LINES or any(one.strip() for one in lines[-1]):
        lines.append(("", ""))
    return tuple(lines)


def read(entry: Entry, text: str, units: Units) -> float | None:
    """Read one entry within its range; empty text is no value. Raises InputError with the entry's label."""
    if not text.strip():
        return None
    try:
        value = units.parse(text, entry.quantity)
    except InputError as error:
        raise InputError(entry.label, text, error.allowed) from None
    if not entry.low <= value <= entry.high:
        raise InputError(entry.label, text, allowed(entry, units))
    return value


def allowed(entry: Entry, units: Units) -> str:
    """Say the range of an entry."""
    return f"{units.text(entry.low, entry.quantity)} to {units.text(entry.high, entry.quantity)}"


def read_all(
    entries: tuple[Entry, ...], texts: Mapping[str, str], units: Units
) -> tuple[tuple[CoilField, ...], dict[str, float]]:
    """Show the entries with what is wrong at each, and give the values that could be read."""
    fields, values = [], {}
    for entry in entries:
        text = texts.get(entry.name, entry.usual)
        problem = ""
        if entry.quantity != "text":
            try:
                value = read(entry, text, units)
                if value is not None:
                    values[entry.name] = value
            except InputError as error:
                problem = str(error)
        fields.append(CoilField(entry.name, entry.label, text, unit_words(entry, units), problem, entry.help))
    return tuple(fields), values


def missing(entries: tuple[Entry, ...], values: Mapping[str, float]) -> tuple[Entry, ...]:
    """List the entries a result still needs."""
    return tuple(one for one in entries if one.is_needed and one.quantity != "text" and one.name not in values)


def hint_words(fields: tuple[CoilField, ...], lacking: tuple[Entry, ...]) -> str:
    """Say what a result still needs: a figure to be put right, or entries to be made."""
    wrong = [one.label.lower() for one in fields if one.problem]
    if wrong:
        return f"To be put right: {', '.join(wrong)}."
    return f"Still to enter: {', '.join(one.label.lower() for one in lacking)}."


def with_problem(fields: tuple[CoilField, ...], name: str, problem: str) -> tuple[CoilField, ...]:
    """Say a problem at one field."""
    return tuple(replace(one, problem=problem) if one.name == name else one for one in fields)


def unit_words(entry: Entry, units: Units) -> str:
    """Give the unit a bare number of this entry is read in."""
    return "" if entry.quantity in ("text", "ratio") else units.unit(entry.quantity).replace("turn", "turns")


def number(value: float, quantity: str, units: Units) -> str:
    """Give a value as it would be typed, without its unit."""
    return show_number(value, quantity, unit=units.unit(quantity))


def finely(value_mm: float, units: Units) -> str:
    """Say a length to a hundredth of a millimetre, or near it."""
    decimals = 2 if units.length == "mm" else 4
    shown = f"{to_unit(value_mm, 'length', units.length):.{decimals}f}".rstrip("0").rstrip(".")
    return f"{shown}\u2009{units.length}"


def read_pairs(pairs: Pairs, units: Units) -> tuple[list[tuple[float, float]], tuple[str, ...]]:
    """Read the lines; gives those that are whole, and for every line what is wrong with it."""
    found, problems = [], []
    for travel, force in pairs:
        problem = ""
        if travel.strip() and force.strip():
            try:
                found.append((_positive("Travel", travel, "length", units), _positive("Force", force, "force", units)))
            except InputError as error:
                problem = str(error)
        problems.append(problem)
    return found, tuple(problems)


def line_of(pairs: Pairs, column: int, value: object, units: Units) -> int | None:
    """Give the place of the last whole line with that travel (0) or force (1); None if there is none."""
    quantity = ("length", "force")[column]
    for place in reversed(range(len(pairs))):
        try:
            if all(one.strip() for one in pairs[place]) and units.parse(pairs[place][column], quantity) == value:
                return place
        except InputError:
            continue
    return None


_MOST = {"length": 300.0, "force": 30_000.0}


def _positive(label: str, text: str, quantity: str, units: Units) -> float:
    value = read(Entry(label, label, quantity, 0.0, _MOST[quantity]), text, units)
    assert value is not None
    return value


def half_line(pairs: Pairs) -> int | None:
    """Give the place of the first line of which only one half is typed."""
    return next((place for place, pair in enumerate(pairs) if sum(bool(one.strip()) for one in pair) == 1), None)
