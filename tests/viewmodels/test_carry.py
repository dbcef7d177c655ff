"""What the carry-over sheet says about spacers, riders and the worse way."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from workbench.actions.edit import edit
from workbench.actions.on_bike import set_item
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.carry_rows import TOO_FAR

PSI = 6.894757293168
SIZES = {"area_mm2": 850.0, "positive_mm3": 850.0 * 230, "negative_mm3": 850.0 * 45}
SPACERS = {"spacer_volume_mm3": 10_000.0, "spacer_limit": 4}


def measured(desk, **facts):
    """A fork at 75 psi with 32 mm of sag of 160, kept."""
    bike = a_bike(desk, fork_travel_mm=160.0)
    records = desk.ask(sag_records(bike.id))
    unit = records.parts.unit("front")
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, unit.id, name, value))
    one = SagRound((32.0, 32.0), "standing", "helper", desk.now(), 75 * PSI, spacers=0)
    desk.do("Keep sag", keep_sag(bike.id, records.rider.id, unit.id, (one,), Band(0.18, 0.22, "own")))
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def carried(desk, bench, **typed):
    """Carry over with what was typed, both ends of the way at 20 degrees unless said."""
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    for name, text in {"here_c": "20", "there_c": "20", **typed}.items():
        view_model.set_text(name, text)
    return view_model.state


def entry(state, name):
    """One entry of the sheet."""
    return next(one for one in state.inputs if one.name == name)


def plain(text):
    """The text with ordinary spaces."""
    return text.replace("\u2009", " ")


def test_one_spacer_with_its_pressure_keeps_the_sag_and_pressure_alone_is_the_worse_way(desk):
    state = carried(desk, measured(desk, **SIZES, **SPACERS), spacers_front="1")
    fork = state.rows[0]
    assert plain(fork.set_here) == "73.4 psi"
    assert "one change" in fork.reasons
    as_it_is, linked, left, alone = (
        (plain(way.pressure), plain(way.sag), plain(way.end_force), way.is_advised) for way in fork.ways
    )
    assert as_it_is == ("75 psi", "32 mm (20 %)", "2550 N", False)
    assert linked == ("73.4 psi", "32 mm (20 %)", "3010 N", True)
    assert left == ("75 psi", "31.3 mm (20 %)", "3060 N", False)
    assert alone == ("91 psi", "25.7 mm (16 %)", "3010 N", False)
    assert "worse" in fork.ways[3].title


def test_a_pressure_alone_above_the_makers_limit_is_marked(desk):
    state = carried(desk, measured(desk, **SIZES, **SPACERS, maximum_kpa=85 * PSI), spacers_front="1")
    assert [bool(way.care) for way in state.rows[0].ways] == [False, False, False, True]


def test_the_spacers_begin_as_they_are_and_say_nothing(desk):
    state = carried(desk, measured(desk, **SIZES, **SPACERS))
    assert (entry(state, "spacers_front").text, entry(state, "spacers_front").unit) == ("0", "")
    assert state.rows[0].ways == ()
    assert plain(state.rows[0].set_here) == "75 psi"
    assert state.note == ""


@pytest.mark.parametrize("text", ["5", "-1", "1.5", "many"])
def test_spacers_that_cannot_be_are_said_at_their_field_and_the_rest_still_answers(desk, text):
    state = carried(desk, measured(desk, **SIZES, **SPACERS), spacers_front=text)
    assert entry(state, "spacers_front").problem
    assert entry(state, "spacers_front").text == text
    assert plain(state.rows[0].set_here) == "75 psi"


def test_without_a_makers_limit_the_travel_limits_the_spacers(desk):
    bench = measured(desk, **SIZES, spacer_volume_mm3=10_000.0)
    assert not entry(carried(desk, bench, spacers_front="5"), "spacers_front").problem
    assert "0 to 5" in entry(carried(desk, bench, spacers_front="6"), "spacers_front").problem


def test_a_pressure_set_since_the_sag_is_reckoned_with(desk):
    bench = measured(desk, **SIZES, **SPACERS)
    unit = desk.ask(sag_records(bench.bike_id)).parts.unit("front")
    desk.do("Set", set_item(bench.bike_id, Item.PRESSURE, unit.id, 80 * PSI, "set_to"))
    as_it_is, linked, *_ = carried(desk, bench, spacers_front="1").rows[0].ways
    assert plain(as_it_is.pressure) == "80 psi"
    assert as_it_is.sag == linked.sag
    assert plain(as_it_is.sag) == "29.8 mm (19 %)"


def test_without_sizes_there_is_no_entry_for_spacers_and_the_sheet_says_what_it_takes(desk):
    state = carried(desk, measured(desk))
    assert not any(one.name.startswith("spacers") for one in state.inputs)
    assert "volume of one spacer" in state.note


def test_a_heavier_pack_asks_for_pressure_and_a_little_rebound_and_moves_no_click(desk):
    bench = measured(desk, **SIZES)
    mass = float(entry(carried(desk, bench), "rider_kg").text)
    fork = carried(desk, bench, rider_kg=f"{mass * 1.1:.1f}").rows[0]
    assert float(plain(fork.set_here).split()[0]) == pytest.approx(75 + 0.1 * (75 + 14.7), abs=0.2)
    assert "more rebound damping" in fork.reasons
    assert "No click is changed" in fork.reasons


def test_spacer_cold_and_rider_add_up_and_the_ways_stay_those_of_the_setup(desk):
    bench = measured(desk, **SIZES, **SPACERS)
    alone = carried(desk, bench, spacers_front="1")
    all_three = carried(desk, bench, spacers_front="1", there_c="-5", rider_kg="95")
    assert all_three.rows[0].ways == alone.rows[0].ways
    assert all_three.rows[0].set_here != alone.rows[0].set_here
    assert "slower rebound" in all_three.rows[0].reasons


def filled(desk, psi, *, tyre_psi=None):
    """A fork at a pressure, and a front tyre where it counts; no sag kept."""
    bike = a_bike(desk)
    parts = desk.ask(sag_records(bike.id)).parts
    desk.do("Fill", set_item(bike.id, Item.PRESSURE, parts.unit("front").id, psi * PSI, "set_to"))
    if tyre_psi is not None:
        desk.do("Tyre", set_item(bike.id, Item.TYRE_PRESSURE, parts.tyres[0].id, tyre_psi * PSI, "set_to"))
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def reasons(state, place=0):
    return plain(state.rows[place].reasons)


def tyre(state):
    return next(plain(row.reasons) for row in state.rows if "yre" in row.title)


def test_a_hot_spring_is_left_alone_and_letting_it_down_is_called_another_setup(desk):
    state = carried(desk, filled(desk, 165), there_c="55")
    assert "that is normal: do not let out." in reasons(state)
    assert "Left alone it shows 186.5 psi there." in reasons(state)
    assert "If 165 psi were let down to there, 145.8 psi would remain at 20 °C" in reasons(state)
    assert "changed setup, and so are the runs after it." in reasons(state)


def test_in_the_mountains_the_spring_is_left_and_the_tyre_let_down(desk):
    state = carried(desk, filled(desk, 80, tyre_psi=23), here_c="15", there_c="15", there_m="2300")
    assert "the force is unchanged: leave it." in reasons(state)
    assert "It shows 83.6 psi there: leave it." in reasons(state)
    assert tyre(state).endswith("Left alone it shows 26.6 psi there: let it down to 23 psi.")


def test_on_a_cold_morning_the_spring_is_set_for_it_and_no_click_is_changed(desk):
    state = carried(desk, filled(desk, 80, tyre_psi=22), here_c="22", there_c="-3")
    assert plain(state.rows[0].set_here) == "88.8 psi"
    assert "Left alone it shows 72 psi there; to have 80 psi there, set it there after a soak" in reasons(state)
    assert "expect slower rebound. No click is changed for that here." in reasons(state)
    assert tyre(state).endswith("Left alone it shows 18.9 psi there: pump it up to 22 psi.")


def test_the_same_day_at_the_same_place_leaves_nothing_to_say(desk):
    state = carried(desk, filled(desk, 80, tyre_psi=22))
    assert reasons(state) == ""
    assert "Left alone" not in tyre(state)


def test_without_a_sag_another_rider_is_said_not_to_be_reckoned_with(desk):
    bench = filled(desk, 80)
    assert "another rider is not reckoned with" in reasons(carried(desk, bench, rider_kg="95"))
    assert "another rider" not in reasons(carried(desk, bench, rider_kg=""))


def test_a_rider_so_light_that_less_than_no_pressure_is_asked_for_is_left_out_and_said(desk):
    bench = measured(desk)
    carried(desk, bench, rider_kg="9")
    again = CarryViewModel(desk, bench)  # what was typed is kept, so the sheet has to open with it
    again.show()
    fork = again.state.rows[0]
    assert entry(again.state, "rider_kg").text == "9"
    assert plain(fork.set_here) == "75 psi"
    assert TOO_FAR in fork.reasons
    assert fork.why == ("for the rider and the spacers as they are",)
