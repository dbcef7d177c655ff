"""The maker's limits of a second chamber and of a negative one: stated in the garage, kept wherever a pressure is."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from tests.viewmodels.sheets import shown
from tests.viewmodels.test_carry import PSI, SIZES, plain
from workbench.actions.edit import edit
from workbench.actions.garage_parts import limit_valve
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.baseline import baseline_question
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.spring import SpringViewModel


@pytest.fixture
def bike(desk):
    """A fork with a second chamber, 100 to 140 psi, and a negative one with its own valve, 60 to 90 psi."""
    bike = a_bike(desk, fork_travel_mm=160.0)
    fork = unit(desk, bike)
    facts = {
        **SIZES,
        "negative": "separate",
        "has_second_positive": True,
        "second_minimum_kpa": 100 * PSI,
        "second_maximum_kpa": 140 * PSI,
    }
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, fork.id, name, value))
    for name, psi in (("minimum_kpa", 60), ("maximum_kpa", 90)):
        desk.do("Limit", limit_valve(fork.id, "negative", name, psi * PSI))
    return bike


def unit(desk, bike):
    return desk.ask(bike_parts(bike.id)).unit("front")


def fork_rows(view_model):
    return {row.name: row for part in view_model.state.sections if part.key == "fork" for row in part.rows}


def test_the_garage_takes_the_limits_of_a_negative_valve_and_undoes_them(desk):
    bike = a_bike(desk)
    view_model, _ = shown(GarageViewModel, desk, bike.id)
    assert "negative_minimum_kpa" not in fork_rows(view_model)
    view_model.set_fact("fork", "negative", "separate")
    rows = fork_rows(view_model)
    assert list(rows)[list(rows).index("negative") + 1 :][:2] == ["negative_minimum_kpa", "negative_maximum_kpa"]
    assert view_model.set_fact("fork", "negative_maximum_kpa", 90 * PSI)
    assert fork_rows(view_model)["negative_maximum_kpa"].value == pytest.approx(90 * PSI)
    desk.undo()
    assert fork_rows(view_model)["negative_maximum_kpa"].value is None


@pytest.mark.parametrize("value", [-1.0, 4000.0, float("nan"), float("inf")])
def test_a_limit_that_cannot_be_is_refused_at_its_field(desk, bike, value):
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    assert not view_model.set_fact("fork", "negative_maximum_kpa", value)
    assert heard.field == "fork/negative_maximum_kpa"
    assert "Negative chamber, highest allowed" in heard.problems[-1].text


@pytest.mark.parametrize(
    ("name", "psi", "words"),
    [
        ("negative_maximum_kpa", 50, "Negative chamber, highest allowed"),
        ("negative_minimum_kpa", 95, "not above the negative chamber, highest allowed"),
        ("second_maximum_kpa", 90, "not below the second chamber, lowest allowed"),
    ],
)
def test_a_highest_below_the_lowest_is_refused_with_the_other_one_named(desk, bike, name, psi, words):
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    assert not view_model.set_fact("fork", name, psi * PSI)
    assert heard.field == f"fork/{name}"
    assert words in heard.problems[-1].text


@pytest.mark.parametrize(
    ("field", "psi", "said"),
    [
        (
            "second_kpa",
            "150",
            "Second chamber: above the highest pressure allowed for this fork. Allowed is 100 psi to",
        ),
        ("second_kpa", "90", "Second chamber: below the lowest pressure allowed for this fork."),
        (
            "negative_kpa",
            "95",
            "Negative chamber: above the highest pressure allowed for this fork. Allowed is 60 psi to",
        ),
        ("negative_kpa", "50", "Negative chamber: below the lowest pressure allowed for this fork."),
    ],
)
def test_the_sag_sheet_refuses_a_chamber_beyond_its_limits_at_its_field(desk, bike, field, psi, said):
    view_model, heard = shown(SagViewModel, desk, bike.id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    view_model.set_text("pressure_kpa", "80")
    view_model.set_text("second_kpa", "120")
    view_model.set_text("negative_kpa", "80")
    view_model.set_text(field, psi)
    assert not view_model.next()
    assert heard.field == field
    assert plain(heard.problems[-1].text).startswith(said)
    view_model.set_text(field, {"second_kpa": "120", "negative_kpa": "80"}[field])
    assert view_model.next()


def test_setups_and_the_adjusters_sheet_know_them_too(desk, bike):
    parts = desk.ask(bike_parts(bike.id))
    fork = parts.unit("front")
    question = plain(baseline_question(parts, Item.NEGATIVE_PRESSURE, fork.id, 95 * PSI))
    assert question == "Above the highest pressure the maker allows. Allowed is 60 psi to 90 psi."
    assert "Allowed is 100 psi" in plain(baseline_question(parts, Item.SECOND_PRESSURE, fork.id, 90 * PSI))
    assert baseline_question(parts, Item.NEGATIVE_PRESSURE, fork.id, 75 * PSI) == ""
    desk.do("Set", set_item(bike.id, Item.NEGATIVE_PRESSURE, fork.id, 95 * PSI, "set_to"))
    view_model, _ = shown(AdjustersViewModel, desk, bike.id)
    notes = [plain(item.note) for group in view_model.state.groups for item in group.items if item.is_care]
    assert any("Above the maker's highest, 90 psi." in note for note in notes)


def test_a_chamber_carried_beyond_its_limit_is_marked(desk, bike):
    fork = unit(desk, bike)
    desk.do("Set", set_item(bike.id, Item.NEGATIVE_PRESSURE, fork.id, 85 * PSI, "set_to"))
    view_model, _ = shown(CarryViewModel, desk, bike.id)
    for name, text in (("here_c", "22"), ("there_c", "-10")):
        view_model.set_text(name, text)
    (row,) = view_model.state.rows
    assert row.title == "Fork: negative chamber pressure"
    assert "above the highest pressure the maker allows" in row.care
    view_model.set_text("there_c", "60")
    assert view_model.state.rows[0].care == ""


def test_the_slider_of_the_negative_chamber_stops_at_its_limits(desk, bike):
    fork, rider = unit(desk, bike), desk.ask(sag_records(bike.id)).rider
    one = SagRound((32.0, 32.0), "standing", "helper", desk.now(), 80 * PSI, negative_kpa=75 * PSI, spacers=0)
    desk.do("Sag", keep_sag(bike.id, rider.id, fork.id, (one,), Band(0.18, 0.22, "own")))
    view_model, _ = shown(SpringViewModel, desk, bike.id)
    slider = next(one for one in view_model.state.sliders if one.name == "negative_kpa")
    assert (slider.low, slider.high) == (round(60 * PSI), round(90 * PSI))
