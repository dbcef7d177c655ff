"""The sheet for a new bike: typed text is kept as typed, adding is one deed."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.edit import edit
from workbench.actions.garage import garage_rows
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.model.bike import Bike
from workbench.model.person import Person
from workbench.viewmodels.new_bike import NewBikeDraft, NewBikeViewModel, problem
from workbench.viewmodels.shown import Units

HOSTILE = ("<b>Larch</b>", "<img src=x onerror=1>", "דוד", "🚵 150", "a & b")


@pytest.fixture
def sheet(desk):
    return shown(NewBikeViewModel, desk)


def fill(view_model, **texts):
    for name, text in texts.items():
        view_model.set_field(name, text)


def test_a_name_is_enough_and_the_bike_lies_on_the_bench(desk, sheet):
    view_model, heard = sheet
    fill(view_model, name="Heron 140")
    assert view_model.add()
    assert [row.bike.name for row in desk.ask(garage_rows())] == ["Heron 140"]
    assert view_model.bike_id == desk.ask(garage_rows())[0].bike.id
    assert heard.labels == ["Add Heron 140"]
    assert view_model.state.draft == NewBikeDraft(), "the next bike begins empty"


def test_what_was_typed_is_read_in_the_units_given(desk, sheet):
    view_model, _ = sheet
    fill(view_model, name="Heron", rider="M. Anders", rider_mass="186 lb", fork_travel="5.5 in", shock_stroke="57,5")
    assert view_model.add()
    parts = desk.ask(bike_parts(desk.ask(garage_rows())[0].bike.id))
    assert parts.riders[0].mass_kg == pytest.approx(84.37, abs=0.01)
    assert [unit.travel_mm for unit in parts.units] == [pytest.approx(139.7), 57.5]


def test_text_that_cannot_be_read_is_refused_at_its_field_and_stays_as_typed(desk, sheet):
    view_model, heard = sheet
    before = everything(desk)
    fill(view_model, name="Heron", shock_stroke="abc")
    assert not view_model.add()
    assert heard.field == "shock_stroke"
    assert view_model.state.draft.shock_stroke == "abc"
    assert everything(desk) == before


@pytest.mark.parametrize(
    ("draft", "field"),
    [
        ({}, "name"),
        ({"name": "x" * 10_000}, "name"),
        ({"name": "Heron", "rider": "y" * 10_000}, "rider"),
        ({"name": "Heron", "rider_mass": "nan"}, "rider_mass"),
        ({"name": "Heron", "rider_mass": "-70"}, "rider_mass"),
        ({"name": "Heron", "rider_mass": "70 psi"}, "rider_mass"),
        ({"name": "Heron", "fork_travel": "1e9"}, "fork_travel"),
        ({"name": "Heron", "fork_travel": "4 mm"}, "fork_travel"),
        ({"name": "Heron", "rear_travel": "9" * 5000}, "rear_travel"),
        ({"name": "Heron", "layout": "hardtail", "rear_travel": "abc"}, None),
        ({"name": "Heron"}, None),
    ],
    ids=lambda one: str(one)[:40],
)
def test_the_first_field_that_cannot_be_used_is_named(draft, field):
    found = problem(NewBikeDraft(**draft), Units())
    assert (found.field if found else None) == field
    if found:
        assert len(found.text) < 400


def test_ten_thousand_characters_are_refused_and_nothing_typed_is_lost(sheet):
    view_model, heard = sheet
    fill(view_model, name="x" * 10_000, rider="M. Anders")
    assert not view_model.add()
    assert heard.field == "name"
    assert view_model.state.draft == NewBikeDraft(name="x" * 10_000, rider="M. Anders")


@pytest.mark.parametrize("name", HOSTILE)
def test_a_name_is_kept_as_it_was_typed(desk, sheet, name):
    view_model, _ = sheet
    fill(view_model, name=name, rider=name)
    assert view_model.add()
    row = desk.ask(garage_rows())[0]
    assert (row.bike.name, row.riders) == (name, (name,))


def test_a_rider_the_garage_knows_is_seated_whatever_the_case(desk):
    bike = a_bike(desk)
    rider = desk.ask(bike_parts(bike.id)).riders[0]
    view_model, _ = shown(NewBikeViewModel, desk)
    assert view_model.state.riders == ("M. Anders",)
    fill(view_model, name="Heron", rider="m. anders")
    assert view_model.add()
    other = next(row.bike for row in desk.ask(garage_rows()) if row.bike.name == "Heron")
    assert desk.ask(bike_parts(other.id)).riders == (rider,)


def test_the_entry_is_there_again_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        fill(shown(NewBikeViewModel, desk)[0], name="Heron", fork_travel="14")
    with make_desk(tmp_path) as desk:
        state = shown(NewBikeViewModel, desk)[0].state
        assert state.draft == NewBikeDraft(name="Heron", fork_travel="14")
        assert state.is_kept


def test_what_was_discarded_can_be_taken_back(sheet):
    view_model, heard = sheet
    fill(view_model, name="Heron")
    view_model.discard()
    ((_, draft_id),) = heard.discarded
    assert view_model.state.draft == NewBikeDraft()
    view_model.take_back_draft(draft_id)
    assert view_model.state.draft.name == "Heron"
    for _ in range(2):
        view_model.discard()
    assert len(heard.discarded) == 2, "there is nothing left to discard"


def test_adding_undone_opens_the_entry_again_and_is_filed_under_the_new_bike(desk, sheet):
    view_model, _ = sheet
    fill(view_model, name="Heron")
    view_model.add()
    bike = desk.ask(garage_rows())[0].bike
    assert desk.undo_step().bike_id == bike.id
    desk.undo()
    assert everything(desk)[Bike] == ()
    assert view_model.state.draft.name == "Heron"
    desk.redo()
    assert desk.ask(garage_rows())[0].bike == bike


def test_a_draft_from_a_later_version_is_read_as_far_as_it_is_known():
    assert NewBikeDraft.from_json('{"name": "Heron", "colour": "red"}') == NewBikeDraft(name="Heron")


def test_a_mass_typed_in_kilograms_stays_one_when_somebody_reading_pounds_comes_to_the_bench(desk, sheet):
    view_model, _ = sheet
    fill(view_model, name="Heron 140", rider="R. Osei", rider_mass="80")
    pounds = desk.do("Add", add_person("B. Ito", works_here=True, rides=False), station="garage")
    desk.do("Units", edit(Person, pounds.id, "mass_unit", "lb"), station="garage")
    view_model._bench.seat(pounds.id)
    assert view_model.state.draft.rider_mass == "80 kg"
    fill(view_model, fork_travel="150")
    assert view_model.add()
    parts = desk.ask(bike_parts(desk.ask(garage_rows())[0].bike.id))
    assert (parts.riders[0].mass_kg, parts.units[0].travel_mm) == (80.0, 150.0)
