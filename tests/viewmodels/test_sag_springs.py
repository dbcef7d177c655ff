"""The springs at hand in the sag sheet: a short list as typed, and what each would give."""

from __future__ import annotations

import pytest

from tests.viewmodels.sheets import Heard
from tests.viewmodels.test_coil import plain
from tests.viewmodels.test_sag import coil_at_advice
from workbench.actions.coil import keep_spring
from workbench.actions.parts import bike_parts
from workbench.model.setting import Item
from workbench.model.units import from_unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_springs import read_springs
from workbench.viewmodels.shown import Units

IMPERIAL, METRIC = Units(), Units(spring_rate="N/mm")


def rates(text, units=IMPERIAL, unit=None):
    found, problem = read_springs(text, unit or units.spring_rate, units)
    assert not problem
    return [round(rate / from_unit(1, "spring_rate", units.spring_rate), 2) for rate, _ in found]


@pytest.mark.parametrize(
    "text",
    ["450, 500, 525", "450,500,525", "450;500;525", "450, 500 and 525", " 450 ,500; 525 lbf/in,", "450, 500, 450, 525"],
)
def test_a_list_is_read_however_its_springs_are_parted(text):
    assert rates(text) == [450, 500, 525]


def test_a_decimal_comma_stays_one_spring():
    assert rates("78,8", METRIC) == [78.8]
    assert rates("78,81; 87,5", METRIC) == [78.81, 87.5]
    assert rates("78,8, 87,5", METRIC) == [78.8, 87.5]


def test_the_usable_stroke_may_stand_beside_the_rate_in_millimetres_or_inches():
    found, problem = read_springs("450x65, 500 x 2.75, 525x60 mm", "lbf/in", IMPERIAL)
    assert [stroke for _, stroke in found] == pytest.approx([65.0, 69.85, 60.0])
    assert not problem


def test_a_list_means_what_it_meant_to_whoever_typed_it():
    found, _ = read_springs("450, 500", "lbf/in", METRIC)
    assert [rate for rate, _ in found] == pytest.approx([78.807, 87.563], abs=0.001)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("450, soft", "Springs at hand: 'soft' cannot be used"),
        ("450, 0", "Springs at hand: '0' cannot be used; allowed is 6 lbf/in to 2855 lbf/in."),
        ("450, -500", "Springs at hand: '-500' cannot be used"),
        ("450, 9e9", "Springs at hand: '9e9' cannot be used"),
        ("450, nan", "Springs at hand: 'nan' cannot be used"),
        ("450, 500 psi", "Springs at hand: '500 psi' cannot be used"),
        ("450, 500x900", "Usable stroke of a spring at hand: '900 mm' cannot be used; allowed is 10 mm to 200 mm."),
        ("450, x65", "Springs at hand: 'x65' cannot be used; allowed is a rate, as 450."),
    ],
)
def test_a_spring_that_cannot_be_is_named_with_its_range_and_the_others_count(text, said):
    found, problem = read_springs(text, "lbf/in", IMPERIAL)
    assert len(found) == 1
    assert plain(problem).startswith(said)


def test_a_list_longer_than_a_shelf_is_said_so():
    found, problem = read_springs(", ".join(str(rate) for rate in range(300, 700, 25)), "lbf/in", IMPERIAL)
    assert len(found) == 12
    assert "up to 12 springs" in problem


def details(view_model):
    return {plain(one.title): plain(one.detail) for one in view_model.state.guide.advice.options}


def test_typed_springs_take_the_place_of_the_steps_with_sag_preload_force_and_bind_of_each(desk):
    _, view_model, _ = coil_at_advice(desk)
    view_model.set_springs("springs", "500x57, 525x65, 550")
    assert details(view_model) == {
        "500 lbf/in": "gives 32.7 % sag, above the band; preload force 88 N;"
        " coil bind: blocked, has 57 mm, needs 58.5 mm",
        "525 lbf/in": "gives 31.1 % sag, in the band; preload force 92 N; no bind, has 65 mm, needs 58.5 mm",
        "550 lbf/in": "gives 29.6 % sag, in the band; preload force 96 N; needs 58.5 mm of usable stroke",
    }
    assert [one.is_refused for one in view_model.state.guide.advice.options] == [False, False, True], "nearest first"
    assert plain(view_model.state.guide.verb) == "Fit 550 lbf/in and measure again"


def test_where_no_spring_at_hand_meets_the_band_the_steps_follow_as_not_at_hand(desk):
    _, view_model, _ = coil_at_advice(desk)
    view_model.set_springs("springs", "400, 650")
    found = details(view_model)
    assert list(found) == ["650 lbf/in", "400 lbf/in", "525 lbf/in", "550 lbf/in"]
    assert "not at hand" in found["525 lbf/in"]
    assert "not at hand" not in found["400 lbf/in"]


def test_a_spring_far_too_soft_is_called_so_and_never_chosen(desk):
    _, view_model, _ = coil_at_advice(desk)
    view_model.set_springs("springs", "100")
    assert details(view_model)["100 lbf/in"].startswith("pressed to the end: too soft")
    assert "100 lbf/in" not in plain(view_model.state.guide.verb)


def test_the_list_is_kept_in_the_entry_and_a_fault_stands_at_it(desk):
    bike, view_model, _ = coil_at_advice(desk)
    view_model.set_springs("springs", "525x65, ???")
    bench = Bench(desk)
    bench.put_bike(bike.id)
    anew = SagViewModel(desk, bench)
    anew.show()
    entry = anew.state.guide.advice.springs
    assert entry.text == "525x65, ???"
    assert "'???' cannot be used" in entry.problem
    assert "525 lbf/in" in details(anew)
    anew.another_round(0)
    assert anew.state.guide.draft.text("springs").text == "525x65, ???", "the next round still knows the shelf"


def test_a_fitted_spring_brings_its_usable_stroke_along(desk):
    _, view_model, _ = coil_at_advice(desk)
    view_model.set_springs("springs", "525x65")
    view_model.press_verb()
    assert view_model.state.guide.draft.spring_stroke_mm == 65.0


def test_a_spring_that_binds_is_refused_with_both_lengths(desk):
    _, view_model, _ = coil_at_advice(desk)
    heard = Heard(view_model)
    view_model.set_springs("springs", "525x57")
    assert not view_model.another_round(0)
    assert "has 57 mm, needs 58.5 mm" in plain(heard.problems[-1].text)


def test_springs_on_record_are_offered_without_typing_and_a_progressive_one_by_its_table(desk):
    bike, view_model, _ = coil_at_advice(desk)
    shock = desk.ask(bike_parts(bike.id)).unit("rear")
    rows = ((0.0, 0.0), (15.0, 1200.0), (65.0, 7200.0))
    desk.do("Add", keep_spring(shock.id, 7200 / 65, stroke_mm=65.0, label="blue tape", rows=rows))
    detail = next(iter(details(view_model).values()))
    # 1734 N: 15 mm to 1200 N, and 534 N more at 120 N/mm; 1 mm of it is preload.
    assert detail.startswith(
        f"gives {100 * (15 + 533.8 / 120 - 1) / 57.5:.1f} % sag, above the band; preload force 80 N"
    )
    assert detail.endswith("no bind, has 65 mm, needs 58.5 mm; blue tape; progressive")
    view_model.another_round(0)
    assert view_model.state.guide.draft.this_round().is_table
    view_model.next()
    for _ in range(2):
        view_model.add_reading("18.5")
    view_model.next()
    # The load is read off the table: 19.5 mm of compression.
    load = 1200 + 4.5 * 120
    assert f"load {load:.0f} N" in plain(view_model.state.guide.advice.also)
    view_model.keep()
    assert desk.ask(bike_parts(bike.id)).line(Item.SPRING_RATE, shock.id).how == "table"


def test_the_exact_rate_and_the_expected_sag_come_with_how_far_they_are_known(desk):
    _, view_model, _ = coil_at_advice(desk)
    advice = view_model.state.guide.advice
    # 1.81 % of scatter of a rider at the rear, 0.2 mm of a reading over 22 mm: 2.02 %, and 1.645 times that each way.
    assert plain(advice.known_to) == "Nine times in ten between 524 and 561 lbf/in."
    assert advice.predicted_low_mm < advice.predicted_mm < advice.predicted_high_mm
    assert advice.predicted_high_mm - advice.predicted_low_mm == pytest.approx(
        2 * 0.0333 * (advice.predicted_mm + 1), rel=0.02
    )
    view_model.set_field("method", "alone")
    wider = view_model.state.guide.advice
    assert wider.predicted_high_mm - wider.predicted_low_mm > advice.predicted_high_mm - advice.predicted_low_mm
