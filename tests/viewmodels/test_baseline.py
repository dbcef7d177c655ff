"""The baseline's sheet: write setup no. 1, then the steps to it."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.baseline import baseline_records
from workbench.actions.edit import edit
from workbench.actions.garage import start_generation
from workbench.actions.people import add_person
from workbench.actions.setups import setup_values, setups_of
from workbench.model.person import Person
from workbench.model.setting import Item, OnBike
from workbench.viewmodels.baseline import BaselineViewModel


@pytest.fixture
def bike(desk):
    return a_counted_bike(desk)


@pytest.fixture
def sheet(desk, bike):
    return shown(BaselineViewModel, desk, bike.id)


def row(view_model, title):
    return next(one for one in view_model.state.rows if one.title == title)


def only_setup(desk, bike):
    (setup,) = desk.ask(setups_of(bike.id))
    return setup, desk.ask(setup_values(setup.id))


def test_every_setting_says_what_it_is_and_where_it_comes_from(sheet):
    view_model, _ = sheet
    rebound = row(view_model, "Fork: low-speed rebound")
    assert (rebound.text, rebound.unit, rebound.origin) == ("6", "clicks from closed", "as found")
    assert rebound.said == "fully closed, then open 6 clicks"
    pressure = row(view_model, "Fork: air pressure")
    assert (pressure.text, pressure.unit, pressure.origin) == ("75.4", "psi", "on the bike now")
    assert view_model.state.verb == "Keep setup no. 1"


def test_a_baseline_kept_as_proposed_stores_the_very_numbers_not_their_rounding(desk, bike, sheet):
    view_model, heard = sheet
    assert view_model.keep()
    setup, values = only_setup(desk, bike)
    fork = desk.ask(baseline_records(bike.id)).parts.unit("front")
    assert values[Item.PRESSURE, fork.id] == 520.0
    assert setup.origin == "baseline"
    assert heard.labels == ["Keep setup no. 1"]
    assert not view_model.state.is_writing
    assert view_model.state.title == "Setup no. 1"


def test_own_choices_are_kept_as_typed_until_the_setup_is(desk, bike, sheet):
    view_model, _ = sheet
    rebound, pressure = row(view_model, "Fork: low-speed rebound"), row(view_model, "Fork: air pressure")
    view_model.set_value(rebound.key, "8")
    view_model.set_value(pressure.key, "5,6 bar")
    assert row(view_model, "Fork: low-speed rebound").origin == "own choice"
    assert row(view_model, "Fork: air pressure").text == "5,6 bar"
    assert view_model.keep()
    _, values = only_setup(desk, bike)
    assert (values[tuple(rebound.key.split("/"))], values[tuple(pressure.key.split("/"))]) == (8.0, 560.0)
    assert desk.open_draft("baseline", bike_id=bike.id) is None


def test_an_empty_field_means_not_known(desk, bike, sheet):
    view_model, _ = sheet
    key = row(view_model, "Front tyre pressure").key
    view_model.set_value(key, "")
    assert view_model.keep()
    assert only_setup(desk, bike)[1][tuple(key.split("/"))] is None


@pytest.mark.parametrize(
    ("title", "text", "said"),
    [
        ("Fork: low-speed rebound", "18", "From 0 (closed) to 17 (open)."),
        ("Fork: low-speed rebound", "-1", "Allowed is"),
        ("Fork: low-speed rebound", "6.5", "Allowed is"),
        ("Fork: low-speed rebound", "9" * 5000, "Allowed is"),
        ("Fork: low-speed rebound", "nan", "Allowed is"),
        ("Fork: air pressure", "inf", "Allowed is"),
        ("Fork: air pressure", "99999 psi", "Far outside"),
        ("Fork: air pressure", "-3", "Not below 0."),
        ("Fork: air pressure", "30 mm", "Allowed is"),
        ("Fork: volume spacers", "400", "Far outside"),
    ],
    ids=lambda one: one[:24],
)
def test_a_setting_that_cannot_be_is_said_at_its_field_and_nothing_is_kept(desk, bike, sheet, title, text, said):
    view_model, heard = sheet
    before = everything(desk)
    key = row(view_model, title).key
    view_model.set_value(key, text)
    assert row(view_model, title).problem.startswith(said)
    assert not view_model.keep()
    assert heard.field == key
    assert row(view_model, title).text == text
    assert everything(desk) == before


def test_the_entry_goes_on_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        view_model, _ = shown(BaselineViewModel, desk, bike.id)
        view_model.set_value(row(view_model, "Fork: low-speed rebound").key, "8")
    with make_desk(tmp_path) as desk:
        view_model, _ = shown(BaselineViewModel, desk, bike.id)
        assert row(view_model, "Fork: low-speed rebound").text == "8"
        assert view_model.state.has_draft


def test_keeping_undone_opens_the_entry_again(desk, bike, sheet):
    view_model, _ = sheet
    view_model.set_value(row(view_model, "Fork: low-speed rebound").key, "8")
    view_model.keep()
    desk.undo()
    assert view_model.state.is_writing
    assert row(view_model, "Fork: low-speed rebound").text == "8"


def test_a_bike_without_a_rider_cannot_keep_a_setup_and_says_so(desk):
    bike = a_bike(desk, rider="")
    view_model, heard = shown(BaselineViewModel, desk, bike.id)
    assert not view_model.keep()
    assert "no rider yet" in heard.problems[-1].text


def test_steps_are_ticked_one_by_one_or_all_at_once(desk, bike, sheet):
    view_model, _ = sheet
    view_model.keep()
    steps = view_model.state.steps
    assert steps[0].text == "Fork: volume spacers: none"
    view_model.take_step(steps[0].key)
    assert view_model.state.steps == steps[1:]
    view_model.take_all()
    assert view_model.state.steps == ()
    assert view_model.state.steps_done == "The bike stands as this setup says."
    desk.undo()
    assert view_model.state.steps == steps[1:]
    lines = desk.ask(lambda reader: reader.find(OnBike, bike_id=bike.id))
    assert all(line.value is None or line.value >= 0 for line in lines)


def test_another_baseline_gets_the_next_number_and_can_be_left(desk, bike):
    a_baseline(desk, bike)
    view_model, _ = shown(BaselineViewModel, desk, bike.id)
    view_model.write_anew()
    assert view_model.state.verb == "Keep setup no. 2"
    view_model.leave_writing()
    assert view_model.state.title == "Setup no. 1"
    view_model.write_anew()
    assert view_model.keep()
    assert [setup.number for setup in desk.ask(setups_of(bike.id))] == [1, 2]


def test_all_settings_of_the_newest_setup_are_said_in_the_units_of_the_bench(desk, bike):
    a_baseline(desk, bike)
    view_model, _ = shown(BaselineViewModel, desk, bike.id)
    words = dict(view_model.state.settings)
    assert words["Fork: low-speed rebound"] == "6 clicks from closed"
    assert words["Fork: air pressure"] == "75.4\u2009psi"
    assert words["Fork: volume spacers"] == "0"


def test_a_pressure_typed_in_bar_stays_one_when_somebody_reading_psi_comes_to_the_bench(desk, bike, sheet):
    view_model, _ = sheet
    people = []
    for unit in ("bar", "psi"):
        person = desk.do("Add", add_person(f"Reads {unit}", works_here=True, rides=False), station="garage")
        desk.do("Units", edit(Person, person.id, "pressure_unit", unit), station="garage")
        people.append(person)
    view_model._bench.seat(people[0].id)
    view_model.set_value(row(view_model, "Fork: air pressure").key, "5.6")
    view_model._bench.seat(people[1].id)
    assert row(view_model, "Fork: air pressure").text == "5.6 bar"
    view_model.set_value(row(view_model, "Rear tyre pressure").key, "24")
    assert view_model.keep()
    _, values = only_setup(desk, bike)
    parts = desk.ask(baseline_records(bike.id)).parts
    assert values[Item.PRESSURE, parts.unit("front").id] == pytest.approx(560.0)
    assert values[Item.TYRE_PRESSURE, parts.tyres[1].id] == pytest.approx(165.47, abs=0.01)


def test_clicks_of_a_setup_on_earlier_hardware_are_shown_as_that(desk, bike, sheet):
    view_model, _ = sheet
    a_baseline(desk, bike)
    fork = desk.ask(baseline_records(bike.id)).parts.unit("front")
    desk.do("Oil", start_generation(fork.id, "oil"), bike_id=bike.id)
    settings = dict(view_model.state.settings)
    assert settings["Fork: low-speed rebound"] == "6 clicks from closed, counted on earlier hardware"
    assert settings["Shock: low-speed rebound"] == "7 clicks from closed"
