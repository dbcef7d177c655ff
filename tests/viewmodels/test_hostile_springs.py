"""What cannot be is named at its field with its range: sizes, limits, surveys, sag, weather, springs."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from tests.viewmodels.sheets import shown
from tests.viewmodels.test_carry import PSI, SIZES, entry, measured, plain
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.model.unit import Unit
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.coil import CoilViewModel
from workbench.viewmodels.coil_entries import PRESSED, TABLE, WIRE
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.leverage import LeverageViewModel
from workbench.viewmodels.sag import SagViewModel

NO_NUMBERS = ("nan", "-inf", "1e999", "12,5,3", "1.250", "<b>9</b>")
HUGE = "9" * 50


def sized(desk, **facts):
    """A fork of 160 mm with sizes that go together, 60 mm of stroke at the shock."""
    bike = a_bike(desk, fork_travel_mm=160.0)
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    limits = {"minimum_kpa": 45 * PSI, "maximum_kpa": 120 * PSI, "spacer_limit": 3, "spacer_volume_mm3": 10_000.0}
    for name, value in {**SIZES, **limits, **facts}.items():
        desk.do("Fact", edit(Unit, fork.id, name, value))
    return bike


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("positive_mm3", 850 * 150.0, "127.5 cm³' cannot be used; allowed is above 136.0 cm³, what the piston sweeps"),
        ("positive_mm3", 850 * 170.0, "leaves more than 30.0 cm³ for the spacers"),
        ("area_mm2", 1300.0, "'1300' cannot be used; allowed is below 1222 mm²"),
        ("spacer_volume_mm3", 20_000.0, "'20.0 cm³' cannot be used; allowed is below 19.8 cm³, with 3 of them"),
        ("spacer_limit", 6, "'6' cannot be used; allowed is 0 to 5 spacers of 10.0 cm³"),
    ],
)
def test_a_size_that_does_not_go_with_the_others_is_refused_at_its_field(desk, name, value, said):
    view_model, heard = shown(GarageViewModel, desk, sized(desk).id)
    assert not view_model.set_fact("fork", name, value)
    assert heard.field == f"fork/{name}"
    assert said in heard.problems[-1].text


def test_a_travel_may_change_before_its_chamber_and_a_second_chamber_takes_up_the_air(desk):
    view_model, heard = shown(GarageViewModel, desk, sized(desk).id)
    assert view_model.set_fact("fork", "travel_mm", 200.0)
    assert view_model.set_fact("fork", "has_second_positive", True)
    assert view_model.set_fact("fork", "positive_mm3", 850 * 100.0)
    assert heard.problems == []


@pytest.mark.parametrize("text", ["", *NO_NUMBERS, HUGE, "0", "-5", "60.5 %", "1"])
@pytest.mark.parametrize("name", ["target_low", "target_high"])
def test_a_target_that_cannot_be_is_named_at_its_figure(desk, name, text):
    view_model, heard = shown(SagViewModel, desk, sized(desk).id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.set_field(name, None)
    view_model.set_text(name, text)
    assert not view_model.next()
    assert heard.field == name


def test_a_band_turned_round_names_both_figures(desk):
    view_model, heard = shown(SagViewModel, desk, sized(desk).id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.set_text("target_low", "30")
    view_model.set_text("target_high", "22,5")
    assert not view_model.next()
    assert heard.field == "target_high"
    assert plain(heard.problems[-1].text).startswith("Sag, to: 22.5 % lies below where the band begins, 30 %.")


SPRING = {"pressure_kpa": "80", "temperature_c": "20", "spacers": "1"}


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        *((name, text, "cannot be used; allowed is") for name in SPRING for text in (*NO_NUMBERS, HUGE)),
        ("pressure_kpa", "0", "allowed is 1 psi to 507.6 psi"),
        ("pressure_kpa", "-80", "allowed is 1 psi to 507.6 psi"),
        (
            "pressure_kpa",
            "44",
            "Air pressure: below the lowest pressure allowed for this fork. Allowed is 45 psi to 120",
        ),
        ("pressure_kpa", "9 bar", "Air pressure: above the highest pressure allowed for this fork."),
        ("temperature_c", "-60", "allowed is -40 °C to 60 °C"),
        ("spacers", "-1", "allowed is 0 to 30"),
        ("spacers", "1,5", "cannot be used"),
        ("spacers", "4", "Volume spacers: 4 are too many. Allowed in this fork is 0 to 3."),
    ],
)
def test_what_a_spring_cannot_stand_at_is_named_at_its_field(desk, name, text, said):
    view_model, heard = shown(SagViewModel, desk, sized(desk).id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    for field, usual in SPRING.items():
        view_model.set_text(field, usual)
    view_model.set_text(name, text)
    assert not view_model.next()
    assert heard.field == name
    assert said in plain(heard.problems[-1].text)
    assert len(heard.problems[-1].text) < 400


@pytest.mark.parametrize("text", ["", *NO_NUMBERS, HUGE, "0", "-3", "160,5", "17 cm"])
def test_a_reading_that_cannot_be_is_refused_at_the_reading(desk, text):
    view_model, heard = shown(SagViewModel, desk, sized(desk).id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    view_model.set_text("pressure_kpa", "80")
    view_model.next()
    assert not view_model.add_reading(text)
    assert heard.field == "reading"
    assert view_model.add_reading("32,5")


@pytest.mark.parametrize(
    ("line", "pair", "said"),
    [
        (1, ("20", "20"), "Line 2: '20 mm' cannot be used; allowed is above 25 mm, the reading at 10 mm of stroke."),
        (2, ("63", "150"), "Line 3: '63' cannot be used; allowed is up to 60 mm of stroke, as stated in the garage."),
        *((1, (text, "50"), "Line 2") for text in (*NO_NUMBERS, HUGE, "-20")),
        *((1, ("20", text), "Line 2") for text in (*NO_NUMBERS, "-50", "")),
    ],
)
def test_a_survey_that_cannot_be_is_refused_at_its_line(desk, line, pair, said):
    view_model, heard = shown(LeverageViewModel, desk, a_bike(desk).id)
    pairs = [("10", "25"), ("20", "50"), ("30", "74,5"), ("40", "98")]
    pairs[line] = pair
    for place, texts in enumerate(pairs):
        for column, text in enumerate(texts):
            view_model.set_pair(place, column, text)
    assert not view_model.keep()
    assert heard.field == f"line_{line}"
    assert said in plain(heard.problems[-1].text)


def test_a_stroke_read_a_little_beyond_the_stated_one_is_taken(desk):
    view_model, heard = shown(LeverageViewModel, desk, a_bike(desk).id)
    for place, texts in enumerate((("15", "38"), ("30", "74"), ("45", "110"), ("61", "148"))):
        for column, text in enumerate(texts):
            view_model.set_pair(place, column, text)
    assert view_model.keep(), heard.problems


@pytest.mark.parametrize("text", [*NO_NUMBERS, HUGE, "-500"])
@pytest.mark.parametrize("name", ["here_c", "there_c", "here_m", "there_m", "rider_kg", "spacers_front"])
def test_what_cannot_be_carried_over_is_named_with_its_range_and_shown_as_typed(desk, name, text):
    bench = measured(desk, **SIZES, spacer_volume_mm3=10_000.0, spacer_limit=4)
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    for field, usual in (("here_c", "20"), ("there_c", "5"), (name, text)):
        view_model.set_text(field, usual)
    shown_entry = entry(view_model.state, name)
    assert shown_entry.text == text
    assert shown_entry.problem.startswith(f"{shown_entry.label}: ")
    assert "allowed is" in shown_entry.problem
    assert "To be put right" in view_model.state.hint
    is_weather = name not in ("rider_kg", "spacers_front")
    assert bool(view_model.state.rows) != is_weather, "no figure is given for weather that could not be read"


def test_a_decimal_comma_and_a_unit_are_understood_when_carrying_over(desk):
    view_model = CarryViewModel(desk, measured(desk))
    view_model.show()
    for field, text in (("here_c", "68 °F"), ("there_c", "-2,5"), ("there_m", "3937 ft")):
        view_model.set_text(field, text)
    assert view_model.state.values["here_c"] == pytest.approx(20.0)
    assert view_model.state.values["there_c"] == -2.5
    assert view_model.state.values["there_m"] == pytest.approx(1200, abs=0.1)


@pytest.mark.parametrize("text", [*NO_NUMBERS, "0", "-12", HUGE])
@pytest.mark.parametrize("name", ["wire_mm", "diameter_mm", "coils"])
def test_a_wire_that_cannot_be_is_named_at_its_entry(desk, name, text):
    bike = a_bike(desk, layout="air_coil")
    view_model, heard = shown(CoilViewModel, desk, bike.id)
    view_model.pick_view(WIRE)
    names = [one.name for one in view_model.state.sheet.fields]
    assert name in names, names
    view_model.set_text(name, text)
    problem = next(one.problem for one in view_model.state.sheet.fields if one.name == name)
    assert "cannot be used; allowed is" in problem
    assert not view_model.keep_result()
    assert heard.field == name


@pytest.mark.parametrize("view", [PRESSED, TABLE])
@pytest.mark.parametrize("text", [*NO_NUMBERS, "-5", HUGE])
def test_a_pressed_pair_that_cannot_be_is_named_at_its_line(desk, view, text):
    bike = a_bike(desk, layout="air_coil")
    view_model, heard = shown(CoilViewModel, desk, bike.id)
    view_model.pick_view(view)
    for line, pair in enumerate((("10", "400"), (text, "800"), ("30", "1500"), ("40", "2000"))):
        for column, one in enumerate(pair):
            view_model.set_pair(line, column, one)
    assert "cannot be used; allowed is" in view_model.state.sheet.pair_problems[1]
    assert not view_model.keep_result()
    assert heard.field == "line_2"
