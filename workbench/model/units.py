"""The only conversions: from what people write to the units used inside, and back.

Inside are mm, N, N/mm, kPa (gauge), kg, s and degC. A text with its own unit ("82 psi") is read in that unit, one
without in the default unit. What can be read in two ways is asked about, never guessed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from math import isfinite

from workbench.model.errors import InputError
from workbench.model.numerals import Unreadable, plain_text, read_number

THIN_SPACE = "\u2009"


@dataclass(frozen=True, slots=True)
class UnitOf:
    """One unit of a quantity: inside = written x factor + offset."""

    factor: Fraction
    decimals: int
    symbol: str
    also: tuple[str, ...] = ()
    offset: Fraction = Fraction(0)


def _unit(factor: str | Fraction, decimals: int, symbol: str, *also: str, offset: Fraction = Fraction(0)) -> UnitOf:
    return UnitOf(Fraction(factor), decimals, symbol, also, offset)


_INCH_MM = Fraction("25.4")
_POUND_KG = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_LBF_N = _POUND_KG * _GRAVITY
_MINUTE_S = 60
_HOUR_S = 3600

# The first unit of each quantity is the one used inside. All factors are exact by definition (NIST SP 811, App. B).
UNITS: dict[str, dict[str, UnitOf]] = {
    "pressure": {
        "kPa": _unit("1", 0, "kPa"),
        "psi": _unit(_LBF_N / _INCH_MM**2 * 1000, 1, "psi", "lb/in2", "lbf/in2", "psig"),
        "bar": _unit("100", 2, "bar", "bars", "barg"),
        "MPa": _unit("1000", 4, "MPa"),
    },
    "length": {
        "mm": _unit("1", 1, "mm"),
        "cm": _unit("10", 2, "cm"),
        "in": _unit(_INCH_MM, 2, "in", '"', "\u201d", "\u2033", "''", "inch", "inches"),
    },
    "mass": {
        "kg": _unit("1", 1, "kg", "kgs"),
        "lb": _unit(_POUND_KG, 1, "lb", "lbs", "pound", "pounds"),
        "st": _unit(_POUND_KG * 14, 2, "st", "stone"),
    },
    "spring_rate": {
        "N/mm": _unit("1", 1, "N/mm"),
        "lbf/in": _unit(_LBF_N / _INCH_MM, 0, "lbf/in", "lb/in", "lbs/in", "lbf/inch", "lb/inch", "lbs/inch"),
        "kgf/mm": _unit(_GRAVITY, 2, "kgf/mm", "kg/mm"),
    },
    "temperature": {
        "degC": _unit("1", 1, "\u00b0C", "c", "\u2103", "deg c", "celsius"),
        "degF": _unit(Fraction(5, 9), 1, "\u00b0F", "f", "\u2109", "deg f", "fahrenheit", offset=Fraction(-160, 9)),
        "K": _unit("1", 1, "K", "kelvin", offset=Fraction("-273.15")),
    },
    "duration": {
        "s": _unit("1", 2, "s", "sec", "second", "seconds"),
        "min": _unit(Fraction(_MINUTE_S), 2, "min", "m", "minute", "minutes"),
        "h": _unit(Fraction(_HOUR_S), 2, "h", "hr", "hour", "hours"),
    },
    "angle": {"deg": _unit("1", 1, "\u00b0", "degree", "degrees")},
    "volume": {
        "mm3": _unit("1", 0, "mm\u00b3"),
        "cm3": _unit("1000", 1, "cm\u00b3", "ml", "cc", "ccm"),
    },
    "area": {"mm2": _unit("1", 0, "mm\u00b2"), "cm2": _unit("100", 2, "cm\u00b2")},
    "force": {
        "N": _unit("1", 0, "N"),
        "lbf": _unit(_LBF_N, 1, "lbf", "lb", "lbs"),
        "kgf": _unit(_GRAVITY, 1, "kgf", "kp"),
    },
    "modulus": {
        "GPa": _unit("1", 1, "GPa", "kN/mm2", "kN/mm\u00b2"),
        "MPa": _unit("0.001", 0, "MPa", "N/mm2", "N/mm\u00b2"),
    },
    "altitude": {
        "m": _unit("1", 0, "m"),
        "ft": _unit(_INCH_MM * 12 / 1000, 0, "ft", "feet", "foot"),
    },
    "frequency": {"Hz": _unit("1", 2, "Hz")},
    "fraction": {"": _unit("1", 4, ""), "%": _unit("0.01", 1, "%", "percent")},
    "ratio": {"": _unit("1", 2, "", ":1", "to 1")},
    "count": {"": _unit("1", 0, "", "click", "clicks")},
    "turns": {"turn": _unit("1", 2, "turns", "turn")},
}

_NUMBER_THEN_UNIT = re.compile(r"([-+]? ?[.,\u066b]?\d(?:[\d.,' \u066b/-]*\d)?) ?(.*)", re.DOTALL)
_CLOCK = re.compile(r"(?:(\d{1,3}):)?(\d{1,3}):(\d{2}(?:[.,\u066b]\d{1,6})?)")
_MINUTES_AND_SECONDS = re.compile(
    r"(?:(\d{1,3}) ?h(?:r|our|ours)? ?)?(\d{1,3}) ?m(?:in)? ?(\d{1,2}(?:[.,]\d{1,2})?) ?s(?:ec)?"
)
_COMMA_LANGUAGES = re.compile(
    "bg|ca|cs|da|de|el|es|et|fi|fr|hr|hu|id|is|it|lt|lv|nb|nl|nn|no|pl|pt|ro|ru|sk|sl|sr|sv|tr|uk|vi"
)
_POINT_REGIONS = frozenset({"CH", "LI", "MX"})


def units_of(quantity: str) -> tuple[str, ...]:
    """Give the names of the units a quantity can be written in, the one used inside first."""
    return tuple(UNITS[quantity])


def symbol_of(quantity: str, unit: str) -> str:
    """Give how a unit is written on screen and paper."""
    return UNITS[quantity][unit].symbol


def to_unit(value: float, quantity: str, unit: str) -> float:
    """Give a value from inside in the named unit."""
    return _outside(value, UNITS[quantity][unit])


def _outside(value: float, kind: UnitOf) -> float:
    return (value - float(kind.offset)) / float(kind.factor)


def from_unit(value: float, quantity: str, unit: str) -> float:
    """Give a value in the named unit as it is held inside."""
    kind = UNITS[quantity][unit]
    return value * float(kind.factor) + float(kind.offset)


def parse(text: str, quantity: str, *, default_unit: str) -> float:
    """Read what a person wrote as a value in the units used inside.

    Parameters
    ----------
    text
        A number with or without a unit, as ``82 psi``, ``5,6 bar``, ``1 1/8 in``, ``2:41.3``.
    quantity
        One of the quantities of `UNITS`.
    default_unit
        The unit meant when none is written, one of ``units_of(quantity)``.

    Returns
    -------
    float
        The value in the first unit of the quantity.

    Raises
    ------
    InputError
        If the text is no number, has an unknown unit, or could mean two values a thousand times apart; or if there
        is no such quantity or unit.

    Examples
    --------
    >>> parse("5,6 bar", "pressure", default_unit="psi")
    560.0
    """
    default = unit_named(quantity, default_unit, "default_unit")
    units = UNITS[quantity]
    if not isinstance(text, str):
        raise InputError(_spoken(quantity), text, _allowed(quantity), "Give it as text.")
    try:
        plain = plain_text(text)
        clock = _read_clock(plain) if quantity == "duration" else None
        exact = clock if clock is not None else _read_quantity(plain, units, default)
    except Unreadable as problem:
        raise InputError(_spoken(quantity), text, _allowed(quantity), str(problem)) from None
    _check_possible(exact, quantity, text)
    return float(exact)


def show(value: float, quantity: str, *, unit: str, locale: str = "en") -> str:
    """Write a value from inside as a person reads it, with at most the decimals that make sense for the unit.

    Raises
    ------
    InputError
        If the value is not a finite number, or there is no such quantity or unit.

    Examples
    --------
    >>> show(827.37, "pressure", unit="bar", locale="de").replace(THIN_SPACE, " ")
    '8,27 bar'
    """
    kind = unit_named(quantity, unit, "unit")
    number = show_number(value, quantity, unit=unit, locale=locale)
    if quantity == "turns" and number == "1":
        return f"1{THIN_SPACE}turn"
    glue = "" if not kind.symbol or quantity == "angle" else THIN_SPACE
    return f"{number}{glue}{kind.symbol}"


def show_number(value: float, quantity: str, *, unit: str, locale: str = "en") -> str:
    """Write a value from inside in the named unit, without the unit's symbol."""
    kind = unit_named(quantity, unit, "unit")
    if not _is_number(value):
        raise InputError(_spoken(quantity), value, "a finite number")
    text = f"{_outside(float(value), kind):.{kind.decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    whole, _, part = text.partition(".")
    if len(part) == 3 and whole.lstrip("-") != "0":
        text += "0"  # three decimals could be taken for a grouping when read again
    if text == "-0":
        text = "0"
    return text.replace(".", ",") if _has_decimal_comma(locale) else text


def _has_decimal_comma(locale: str) -> bool:
    language, _, region = locale.replace("-", "_").partition("_")
    return _COMMA_LANGUAGES.fullmatch(language.lower()) is not None and region.upper() not in _POINT_REGIONS


def _read_clock(text: str) -> Fraction | None:
    """Read 2:41.3, 1:02:03 or 2 min 41 s as seconds; None when the text is none of these."""
    found = _CLOCK.fullmatch(text) or _MINUTES_AND_SECONDS.fullmatch(text.casefold())
    if found is None:
        return None
    hours, minutes, seconds = found.groups()
    # Beside a colon the point can only be a decimal mark.
    exact = Fraction(seconds.replace(",", ".").replace("\u066b", "."))
    if exact >= _MINUTE_S or (hours is not None and int(minutes) >= _MINUTE_S):
        raise Unreadable("Minutes and seconds go up to 59.")
    return int(hours or 0) * _HOUR_S + int(minutes) * _MINUTE_S + exact


def _read_quantity(text: str, units: dict[str, UnitOf], default: UnitOf) -> Fraction:
    found = _NUMBER_THEN_UNIT.fullmatch(text)
    if found is None:
        raise Unreadable("Write a number, as 82 or 5.6." if text else "Nothing is written here.")
    kind = _find_unit(found[2], units, default)
    return read_number(found[1]) * kind.factor + kind.offset


def unit_named(quantity: str, unit: str, field: str) -> UnitOf:
    """Give a unit of a quantity by its name or any way of writing it.

    Raises
    ------
    InputError
        If there is no such quantity or unit.
    """
    units = UNITS.get(quantity) if isinstance(quantity, str) else None
    if units is None:
        raise InputError("quantity", quantity, f"one of {', '.join(UNITS)}")
    found = units.get(unit) or _written(unit, units) if isinstance(unit, str) else None
    if found is None:
        raise InputError(field, unit, f"one of {', '.join(name or 'an empty text' for name in units)}")
    return found


def _is_number(value: object) -> bool:
    try:
        return not isinstance(value, bool) and isfinite(value)  # type: ignore[arg-type]
    except (TypeError, OverflowError):
        return False


def _written(text: str, units: dict[str, UnitOf]) -> UnitOf | None:
    """Give the unit that is written so in any case of letters."""
    wanted = text.strip().casefold()
    spelled = ((kind, {name.casefold(), kind.symbol.casefold(), *kind.also}) for name, kind in units.items())
    return next((kind for kind, ways in spelled if wanted in ways), None)


def _find_unit(text: str, units: dict[str, UnitOf], default: UnitOf) -> UnitOf:
    if not text.strip():
        return default
    if found := _written(text, units):
        return found
    known = ", ".join(kind.symbol for kind in units.values() if kind.symbol)
    raise Unreadable(f"The unit is not known here; {f'write {known}' if known else 'write the number alone'}.")


def _check_possible(exact: Fraction, quantity: str, text: str) -> None:
    if quantity == "count" and exact.denominator != 1:
        raise InputError(_spoken(quantity), text, "a whole number")
    if quantity == "duration" and exact < 0:
        raise InputError(_spoken(quantity), text, "a time of zero or more")
    if quantity == "temperature" and exact < Fraction("-273.15"):
        raise InputError(_spoken(quantity), text, "a temperature above absolute zero (-273.15 \u00b0C)")


def _spoken(quantity: str) -> str:
    return quantity.replace("_", " ").capitalize()


def _allowed(quantity: str) -> str:
    if quantity == "duration":
        return "a time as 2:41.3, 61.3 s or 3 min"
    symbols = [kind.symbol for kind in UNITS[quantity].values() if kind.symbol]
    return f"a number in {' or '.join(symbols)}" if symbols else "a number"
