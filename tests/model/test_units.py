"""What people write is read right or asked about; what is shown can be read again."""

from __future__ import annotations

import doctest
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model import units
from workbench.model.errors import InputError
from workbench.model.units import THIN_SPACE, UNITS, from_unit, parse, show, show_number, to_unit, units_of

EVERY_UNIT = [(quantity, unit) for quantity, kinds in UNITS.items() for unit in kinds]
PSI = 6.894757293168361


@pytest.mark.parametrize(
    ("text", "quantity", "default", "inside"),
    [
        ("82 psi", "pressure", "bar", 82 * PSI),
        ("82psi", "pressure", "bar", 82 * PSI),
        ("82", "pressure", "psi", 82 * PSI),
        ("5.6 bar", "pressure", "psi", 560),
        ("5,6 bar", "pressure", "psi", 560),
        ("5,6", "pressure", "bar", 560),
        ("0.56 MPa", "pressure", "psi", 560),
        ("560 KPA", "pressure", "psi", 560),
        ("28 mm", "length", "in", 28),
        ("2,8cm", "length", "in", 28),
        ("1 1/8 in", "length", "mm", 28.575),
        ("1-1/8 in", "length", "mm", 28.575),
        ('1/2"', "length", "mm", 12.7),
        ("1\u00bd in", "length", "mm", 38.1),
        ("1\u2009250 mm", "length", "mm", 1250),
        ("180 lb", "mass", "kg", 81.6466266),
        ("12 st", "mass", "kg", 76.20351816),
        ("450 lbs/in", "spring_rate", "N/mm", 450 * 4.4482216152605 / 25.4),
        ("450 lb/in", "spring_rate", "N/mm", 450 * 4.4482216152605 / 25.4),
        ("450", "spring_rate", "lbf/in", 450 * 4.4482216152605 / 25.4),
        ("8 kg/mm", "spring_rate", "N/mm", 78.4532),
        ("\u22123 \u00b0C", "temperature", "degC", -3),
        ("-3", "temperature", "degC", -3),
        ("50 F", "temperature", "degC", 10),
        ("293.15 K", "temperature", "degC", 20),
        ("2:41.3", "duration", "s", 161.3),
        ("2:41,3", "duration", "min", 161.3),
        ("2:41.350", "duration", "s", 161.35),
        ("1:02:03", "duration", "s", 3723),
        ("61.3 s", "duration", "min", 61.3),
        ("3 min", "duration", "s", 180),
        ("2 min 41.3 s", "duration", "s", 161.3),
        ("1.5 h", "duration", "s", 5400),
        ("65.5\u00b0", "angle", "deg", 65.5),
        ("10 cc", "volume", "mm3", 10_000),
        ("10 cm\u00b3", "volume", "mm3", 10_000),
        ("8.5 cm2", "area", "mm2", 850),
        ("10 kgf", "force", "N", 98.0665),
        ("1000 ft", "altitude", "m", 304.8),
        ("30 %", "fraction", "", 0.3),
        ("30", "fraction", "%", 0.3),
        ("2.7:1", "ratio", "", 2.7),
        ("13 clicks", "count", "", 13),
        ("1 1/4 turns", "turns", "turn", 1.25),
        ("\u0668\u0662 psi", "pressure", "bar", 82 * PSI),
        ("\u0661\u066b\u0662\u0665\u0660", "pressure", "bar", 125),
        ("\u200f12.5\u200e", "pressure", "bar", 1250),
    ],
)
def test_what_people_write_is_read(text, quantity, default, inside):
    assert parse(text, quantity, default_unit=default) == pytest.approx(inside, rel=1e-14)


# The same texts from writers of en, de, fr, ar: a number read must be right for all of them, else it is asked about.
@pytest.mark.parametrize(
    ("text", "bar"),
    [
        ("12.5", 12.5),
        ("12,5", 12.5),
        ("1.250", None),
        ("1,250", None),
        ("-1.250", None),
        ("12.500", None),
        ("123,456", None),
        ("0.250", 0.25),
        (",250", 0.25),
        ("1250.125", 1250.125),
        ("1.2500", 1.25),
        ("1 250", 1250),
        ("1\u00a0250", 1250),
        ("1\u202f250,5", 1250.5),
        ("1'250", 1250),
        ("1\u2019250.5", 1250.5),
        ("1,234.5", 1234.5),
        ("1.234,5", 1234.5),
        ("1.250.000", 1250000),
        ("1,250,000.5", 1250000.5),
        ("\u0661\u066c\u0662\u0665\u0660", 1250),
        ("\u0661\u060c\u0662\u0665\u0660", None),
        ("1 25", None),
        ("1,25,000", None),
        ("0,234.5", None),
    ],
)
def test_no_text_is_wrong_by_a_thousand_anywhere(text, bar):
    if bar is None:
        with pytest.raises(InputError, match="Pressure"):
            parse(text, "pressure", default_unit="bar")
    else:
        assert parse(text, "pressure", default_unit="bar") == pytest.approx(bar * 100, rel=1e-14)


def test_the_question_says_what_to_write():
    with pytest.raises(InputError, match=r"Write 1\.2500 or 1250\."):
        parse("1,250", "length", default_unit="mm")
    assert parse("1.2500", "length", default_unit="mm") == 1.25


@pytest.mark.parametrize("quantity", UNITS)
@pytest.mark.parametrize(
    "text",
    [
        "",
        "   ",
        "NaN",
        "inf",
        "-Infinity",
        "1e999",
        "1e3",
        "9" * 5000,
        "0x10",
        "--3",
        "5..6",
        "5.",
        "82 furlongs",
        "<b>82</b>",
        "\U0001f6b2",
        "5\u00b2",
        "1/0",
        "1 9/8",
        "82 psi bar",
        "12;5",
        "\u202e28",
        "2:71",
        "1:75:00",
        "\x00",
    ],
)
def test_what_is_no_value_is_refused_by_name(text, quantity):
    with pytest.raises(InputError, match=quantity.replace("_", " ").capitalize()):
        parse(text, quantity, default_unit=units_of(quantity)[0])


@pytest.mark.parametrize(
    ("text", "quantity"),
    [("82 kg", "pressure"), ("28 psi", "length"), ("5 m", "length"), ("6.5", "count"), ("-300", "temperature")],
)
def test_a_unit_or_value_of_another_kind_is_refused(text, quantity):
    with pytest.raises(InputError):
        parse(text, quantity, default_unit=units_of(quantity)[0])


def test_a_time_below_zero_is_refused():
    with pytest.raises(InputError, match="zero or more"):
        parse("-3 s", "duration", default_unit="s")


@given(st.text(max_size=80), st.sampled_from(EVERY_UNIT))
def test_any_text_gives_a_finite_number_or_an_input_error(text, pair):
    quantity, unit = pair
    try:
        value = parse(text, quantity, default_unit=unit)
    except InputError:
        return
    assert math.isfinite(value)


@pytest.mark.parametrize(
    ("value", "quantity", "unit", "locale", "shown"),
    [
        (120 * PSI, "pressure", "psi", "en", "120 psi"),
        (120 * PSI, "pressure", "bar", "en", "8.27 bar"),
        (560, "pressure", "bar", "de_DE", "5,6 bar"),
        (560, "pressure", "bar", "fr", "5,6 bar"),
        (560, "pressure", "bar", "de-CH", "5.6 bar"),
        (123.4, "pressure", "MPa", "en", "0.1234 MPa"),
        (1234, "pressure", "MPa", "en", "1.2340 MPa"),
        (28, "length", "mm", "en", "28 mm"),
        (1250, "length", "mm", "de", "1250 mm"),
        (-0.0001, "temperature", "degC", "en", "0 \u00b0C"),
        (-3, "temperature", "degC", "en", "-3 \u00b0C"),
        (10, "temperature", "degF", "en", "50 \u00b0F"),
        (0.3, "fraction", "%", "en", "30 %"),
        (65.5, "angle", "deg", "en", "65.5\u00b0"),
        (13, "count", "", "en", "13"),
        (1.25, "turns", "turn", "en", "1.25 turns"),
        (1, "turns", "turn", "en", "1 turn"),
        (95.0, "spring_rate", "lbf/in", "en", "542 lbf/in"),
        (161.3, "duration", "s", "en", "161.3 s"),
    ],
)
def test_values_are_shown_with_sensible_decimals(value, quantity, unit, locale, shown):
    assert show(value, quantity, unit=unit, locale=locale).replace(THIN_SPACE, " ") == shown


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_is_never_shown(value):
    with pytest.raises(InputError):
        show(value, "pressure", unit="psi")


@given(st.floats(0.01, 1e6), st.sampled_from(EVERY_UNIT), st.sampled_from(["en", "de", "fr", "ar"]))
def test_what_is_shown_reads_back_within_the_decimals_shown(amount, pair, locale):
    quantity, unit = pair
    inside = from_unit(amount, quantity, unit)
    back = parse(show(inside, quantity, unit=unit, locale=locale), quantity, default_unit=units_of(quantity)[0])
    half_digit = 0.5 * 10.0 ** -UNITS[quantity][unit].decimals
    assert to_unit(back, quantity, unit) == pytest.approx(amount, abs=half_digit * 1.0001, rel=1e-12)


@given(st.integers(1, 500))
def test_a_pressure_in_psi_is_the_same_after_a_look_in_bar(psi):
    inside = parse(f"{psi} psi", "pressure", default_unit="bar")
    show(inside, "pressure", unit="bar")
    assert show(inside, "pressure", unit="psi") == f"{psi}{THIN_SPACE}psi"


@given(st.floats(-200, 1e6), st.sampled_from(EVERY_UNIT))
def test_to_a_unit_and_back_is_no_change(value, pair):
    quantity, unit = pair
    assert from_unit(to_unit(value, quantity, unit), quantity, unit) == pytest.approx(value, rel=1e-12, abs=1e-9)


@given(st.floats(-1e9, 1e9), st.sampled_from(EVERY_UNIT))
def test_nothing_is_shown_as_minus_zero(value, pair):
    quantity, unit = pair
    assert show_number(value, quantity, unit=unit) != "-0"


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(units).failed == 0
