"""Facts are declared once and checked there, whoever enters them."""

from __future__ import annotations

from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.model.bike import Bike
from workbench.model.errors import InputError
from workbench.model.facts import FACTS, check_field, check_limits, clean_text, field_of, question, read_whole
from workbench.model.person import Person
from workbench.model.unit import Unit

MASS = field_of(Person, "mass_kg")
NAME = field_of(Bike, "name")
SPACERS = field_of(Unit, "spacer_limit")
EVERY_FACT = [(record, field) for record, declared in FACTS.items() for field in declared]


@pytest.mark.parametrize(("record", "field"), EVERY_FACT, ids=lambda one: getattr(one, "name", "") or one.__name__)
def test_every_declared_fact_is_a_field_of_its_record(record, field):
    assert field.name in {one.name for one in fields(record)}
    assert field.label
    if field.ask_low is not None and field.low is not None:
        assert field.low <= field.ask_low
    if field.ask_high is not None and field.high is not None:
        assert field.ask_high <= field.high


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf"), -5.0, 1e12])
def test_a_number_no_bike_has_is_refused_by_name_and_range(value):
    with pytest.raises(InputError, match="Mass ready to ride") as refused:
        check_field(MASS, value)
    assert refused.value.allowed in ("5 to 300", "a finite number")


def test_a_value_that_is_possible_but_odd_is_asked_about_not_refused():
    assert check_field(MASS, 14.0) == 14.0
    assert "unusual" in question(MASS, 14.0)
    assert question(MASS, 84.5) == ""
    assert question(MASS, None) == ""


def test_a_count_is_a_whole_number():
    assert check_field(SPACERS, 3.0) == 3
    assert isinstance(check_field(SPACERS, 3.0), int)
    with pytest.raises(InputError, match="whole number"):
        check_field(SPACERS, 2.5)


def test_a_text_keeps_markup_emoji_and_right_to_left_words_as_typed():
    for text in ("<b>Larch</b>", "<img src=x>", "דוד & בן", "🚵\u200d♀️ Fells", "O’Neil"):
        assert check_field(NAME, f"  {text}  ") == text


@given(st.text())
def test_a_cleaned_text_holds_no_character_that_hides_or_turns_others(text):
    cleaned = clean_text(text)
    assert clean_text(cleaned) == cleaned
    assert not set(cleaned) & {"\u202e", "\u2066", "\x00", "\x1b", "\u200b", "\ud800"}


@pytest.mark.parametrize("name", ["", "  ", "\u202e", "\x00\x07", None])
def test_a_name_nobody_could_read_is_refused(name):
    with pytest.raises(InputError, match="Name of the bike"):
        check_field(NAME, name)


def test_ten_thousand_characters_are_refused_with_their_number_and_a_short_sentence():
    with pytest.raises(InputError, match="This has 10000") as refused:
        check_field(NAME, "x" * 10_000)
    assert len(str(refused.value)) < 300
    assert check_field(field_of(Bike, "note"), "x" * 4000) == "x" * 4000


def test_a_choice_outside_the_list_is_refused():
    field = field_of(Bike, "discipline")
    assert check_field(field, "enduro") == "enduro"
    with pytest.raises(InputError, match="Cross-country, Trail"):
        check_field(field, "tricycle")


def test_limits_in_order_or_alone_are_fine():
    for limits in ((300.0, 900.0), (None, 900.0), (300.0, None), (300.0, 300.0)):
        check_limits(Unit("u", "b", "front", "fork", minimum_kpa=limits[0], maximum_kpa=limits[1]), "minimum_kpa")


@pytest.mark.parametrize(("text", "number"), [("0", 0), (" 12 ", 12), ("٧", 7), ("0009", 9)])
def test_a_whole_number_is_read(text, number):
    assert read_whole("Runs", text, 0, 50) == number


@pytest.mark.parametrize("text", ["", "-1", "51", "3.0", "1e1", "²", "0000009999", "9" * 5000, "nan", "1_0"])
def test_what_is_no_whole_number_within_range_is_refused(text):
    with pytest.raises(InputError, match="0 to 50"):
        read_whole("Runs", text, 0, 50)
