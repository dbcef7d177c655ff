"""What was planned on the carry-over sheet, on the card."""

from __future__ import annotations

from tests.fixtures import a_baseline
from tests.viewmodels.sheets import Heard
from tests.viewmodels.test_carry import PSI, SIZES, SPACERS, measured, plain
from workbench.actions.edit import edit
from workbench.actions.fit_unit import fit_unit
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.model.person import Person
from workbench.model.setting import Item
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.card import CardViewModel
from workbench.viewmodels.card_planned import PLANNED
from workbench.viewmodels.carry import CarryViewModel


def planned(desk, bench, *, on_card=True, **typed):
    """Type a plan, and put it on the card."""
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    for name, text in {"here_c": "20", "there_c": "20", **typed}.items():
        view_model.set_text(name, text)
    if on_card:
        view_model.put_on_card(True)
    return view_model


def a_setup(desk, **facts):
    """A measured fork at 75 psi that is part of setup no. 1."""
    bench = measured(desk, **{**SIZES, **SPACERS, **facts})
    a_baseline(desk, desk.ask(bike_parts(bench.bike_id)).bike)
    return bench


def section(desk, bench):
    """What the card says was planned; nothing where it does not."""
    card = CardViewModel(desk, bench).read().card
    return next((one for one in card.sections if one.title == PLANNED), None)


def lines(desk, bench):
    """The planned lines as texts."""
    found = section(desk, bench)
    return [tuple(map(plain, (one.label, one.found, one.left, one.remark))) for one in found.lines]


def test_spacers_with_their_pressure_stand_on_the_card_with_the_reason(desk):
    bench = a_setup(desk)
    planned(desk, bench, spacers_front="1")
    assert lines(desk, bench)[:2] == [
        ("For", "", "20 °C", "set here, at 20 °C"),
        (
            "Fork: air pressure",
            "shows 75 psi",
            "1 spacer in: set 73.4 psi",
            "one change with its pressure: the sag stays 32 mm, the end of the travel holds 3010 N in a hit instead of"
            " 2550 N",
        ),
    ]


def test_weather_altitude_and_rider_stand_in_the_line_that_says_what_it_is_for(desk):
    bench = a_setup(desk)
    planned(desk, bench, here_c="22", there_c="-3", there_m="1200", rider_kg="101.5")
    first, fork = lines(desk, bench)[:2]
    assert first == ("For", "", "-3 °C, 1200 m, rider 101.5 kg", "set here, at 22 °C, 0 m")
    assert fork[1].startswith("shows ")
    assert fork[2].startswith("set ")
    assert fork[3] == "measure sag; rebound about 20 % more; shows 95 psi there"


def test_nothing_is_on_the_card_unless_asked_for_or_while_an_entry_is_wrong(desk):
    bench = a_setup(desk)
    view_model = planned(desk, bench, on_card=False, spacers_front="1")
    assert section(desk, bench) is None
    view_model.put_on_card(True)
    assert section(desk, bench) is not None
    for name, text in (("spacers_front", "9"), ("there_m", "1e9"), ("rider_kg", "nan")):
        view_model.set_text(name, text)
        assert section(desk, bench) is None, name
        view_model.set_text(name, {"spacers_front": "1", "there_m": "0", "rider_kg": ""}[name])
    assert section(desk, bench) is not None


def test_a_plan_outlives_the_window_and_can_be_put_aside_and_taken_back(desk):
    bench = a_setup(desk)
    planned(desk, bench, spacers_front="1")
    anew = CarryViewModel(desk, bench)
    anew.show()
    heard = Heard(anew)
    assert next(one.text for one in anew.state.inputs if one.name == "spacers_front") == "1"
    anew.discard()
    assert section(desk, bench) is None
    assert not anew.state.has_draft
    anew.take_back_draft(heard.discarded[0][1])
    assert lines(desk, bench)[1][2] == "1 spacer in: set 73.4 psi"


def test_the_card_goes_by_the_setup_and_not_by_what_was_tried_on_the_bike_since(desk):
    bench = a_setup(desk)
    fork = desk.ask(bike_parts(bench.bike_id)).unit("front")
    desk.do("Set", set_item(bench.bike_id, Item.PRESSURE, fork.id, 90 * PSI, "set_to"))
    planned(desk, bench, spacers_front="1")
    assert lines(desk, bench)[1][1:3] == ("shows 75 psi", "1 spacer in: set 73.4 psi")


def test_a_plan_beyond_the_makers_limits_is_called_so(desk):
    bench = a_setup(desk, minimum_kpa=60 * PSI, maximum_kpa=80 * PSI)
    view_model = planned(desk, bench, there_c="-20")
    assert lines(desk, bench)[1][2] == "above the maker's highest"
    view_model.set_text("there_c", "20")
    view_model.set_text("rider_kg", "40")
    assert lines(desk, bench)[1][2] == "below the maker's lowest"
    assert "do not set it" in view_model.state.rows[0].care


def test_a_plan_typed_in_one_persons_units_means_the_same_on_a_card_in_anothers(desk):
    bench = a_setup(desk)
    planned(desk, bench, there_c="10", rider_kg="101.5")
    rider = desk.ask(bike_parts(bench.bike_id)).rider()
    desk.do("Units", edit(Person, rider.id, "mass_unit", "lb"))
    desk.do("Units", edit(Person, rider.id, "temperature_unit", "degF"))
    assert lines(desk, bench)[0][2:] == ("50 °F, rider 223.8 lb", "set here, at 68 °F")


def test_spacers_changed_since_the_sag_are_what_a_plan_begins_from(desk):
    bench = measured(desk, **SIZES, **SPACERS)
    fork = desk.ask(bike_parts(bench.bike_id)).unit("front")
    desk.do("Set", set_item(bench.bike_id, Item.SPACERS, fork.id, 1.0, "set_to"))
    desk.do("Set", set_item(bench.bike_id, Item.PRESSURE, fork.id, 73.4 * PSI, "set_to"))
    state = planned(desk, bench).state
    assert next(one.text for one in state.inputs if one.name == "spacers_front") == "1"
    back = planned(desk, bench, spacers_front="0").state.rows[0]
    assert plain(back.set_here) == "75 psi"
    assert plain(back.ways[0].title) == "As it is, 1 spacer"


def test_a_bike_with_nobody_named_keeps_its_plan_too(desk):
    bench = Bench(desk)
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    assert not view_model.state.has_draft


def test_of_a_fork_fitted_since_the_setup_nothing_is_planned(desk):
    bench = a_setup(desk)
    planned(desk, bench, there_c="0")
    assert any(label == "Fork: air pressure" for label, *_ in lines(desk, bench))
    fork = desk.do("Fit", fit_unit(bench.bike_id, "front", "air", travel_mm=150.0), bike_id=bench.bike_id)
    pump = set_item(bench.bike_id, Item.PRESSURE, fork.id, 80 * PSI, "set_to", temperature_c=20.0)
    desk.do("Pump", pump, bike_id=bench.bike_id)
    found = section(desk, bench)
    assert not found or not any(one.label == "Fork: air pressure" for one in found.lines)
