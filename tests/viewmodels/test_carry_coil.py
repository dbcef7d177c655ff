"""A coil on the carry-over sheet and on the card: left alone by the weather, another one for another rider."""

from __future__ import annotations

from tests.fixtures import a_baseline
from tests.viewmodels.test_carry import carried, plain
from tests.viewmodels.test_coil import coil_bike, opened, typed
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.model.setting import Item
from workbench.viewmodels.card import CardViewModel
from workbench.viewmodels.card_planned import PLANNED
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.coil_entries import TABLE


def row(state):
    return next(one for one in state.rows if one.is_coil)


def test_the_weather_leaves_a_coil_alone(desk):
    coil = row(carried(desk, coil_bike(desk), there_c="-10", there_m="2000"))
    assert (coil.title, plain(coil.now), plain(coil.set_here)) == ("Shock: spring rate", "450 lbf/in", "450 lbf/in")
    assert "leave it" in coil.reasons


def test_a_heavier_rider_asks_for_a_stiffer_spring_and_more_rebound(desk):
    coil = row(carried(desk, coil_bike(desk), rider_kg="92.95"))  # 84.5 kg and a tenth more
    assert plain(coil.set_here) == "about 495 lbf/in"
    # 1734 N and a tenth more on 78.81 N/mm, 1 mm of it preload: 23.2 mm of 57.5.
    assert plain(coil.if_left) == "sag 23.2 mm, 40 %"
    assert "10 % heavier" in plain(coil.reasons)
    assert "Preload does not make up for it" in coil.reasons
    assert "more rebound damping" in coil.reasons


def test_a_rider_far_too_heavy_is_said_to_press_it_to_the_end(desk):
    assert row(carried(desk, coil_bike(desk), rider_kg="240")).if_left == "pressed to the end"


def test_a_progressive_spring_is_asked_for_in_shares_and_its_sag_read_off_its_table(desk):
    bench = coil_bike(desk)
    view_model = opened(desk, bench, TABLE)
    view_model.choose("two")
    typed(view_model, stopped_rate="80 N/mm", stop_mm="10", other_rate="120 N/mm", both_mm="62")
    assert view_model.fit_result()
    coil = row(carried(desk, bench, rider_kg="92.95"))
    assert plain(coil.set_here) == "10 % stiffer"
    # 1907 N: 800 N at 16.67 mm and 1107 N more at 120 N/mm, 1 mm of it preload.
    assert plain(coil.if_left) == f"sag {16.667 + 1107.2 / 120 - 1:.1f} mm, 43 %"


def test_a_coil_without_a_sag_has_no_sag_to_tell_and_no_rate_no_row(desk):
    assert not any(one.is_coil for one in carried(desk, coil_bike(desk, has_sag=False)).rows)


def test_a_coil_on_record_without_a_sag_says_that_another_rider_is_not_reckoned_with(desk):
    bench = coil_bike(desk, has_sag=False)
    shock = desk.ask(bike_parts(bench.bike_id)).unit("rear")
    desk.do("Fit", set_item(bench.bike_id, Item.SPRING_RATE, shock.id, 78.8, "set_to"))
    assert "another rider is not reckoned with" in row(carried(desk, bench, rider_kg="95")).reasons


def test_the_card_says_the_spring_for_a_heavier_rider_and_what_was_planned(desk):
    bench = coil_bike(desk)
    a_baseline(desk, desk.ask(bike_parts(bench.bike_id)).bike)
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    for name, text in (("here_c", "20"), ("there_c", "20"), ("rider_kg", "92.95")):
        view_model.set_text(name, text)
    view_model.put_on_card(True)
    card = CardViewModel(desk, bench).read().card
    heavier = next(one for part in card.sections for one in part.lines if plain(one.found) == "with 5 kg more")
    assert (heavier.label, plain(heavier.left)) == ("Shock: spring rate", "fit 477 lbf/in")
    planned = next(one for one in card.sections if one.title == PLANNED)
    line = next(one for one in planned.lines if one.label == "Shock: spring rate")
    assert (plain(line.found), plain(line.left)) == ("sag 23.2 mm, 40 %", "about 495 lbf/in")
    assert plain(line.remark) == "for the same sag at this preload; measure it; rebound about 10 % more"
