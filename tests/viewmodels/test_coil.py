"""The coil's sheets: what each spring would do, a rate from wire or readings, progressive springs, preload twice."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.actions.coil import coil_records
from workbench.actions.edit import edit
from workbench.actions.people import people
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.person import Person
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.model.units import from_unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.coil import CoilViewModel
from workbench.viewmodels.coil_entries import AT_HAND, PRESSED, TABLE, WIRE

RATE = from_unit(450, "spring_rate", "lbf/in")


def coil_bike(desk, *, has_sag=True, **facts) -> Bench:
    """A shock of 57.5 mm that sags 21 mm on 450 lbf/in with 1 mm of preload; the target is 30 %."""
    bike = a_bike(desk, layout="air_coil", shock_stroke_mm=57.5)
    records = desk.ask(sag_records(bike.id))
    shock = records.parts.unit("rear")
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, shock.id, name, value), bike_id=bike.id)
    if has_sag:
        one = SagRound((21.0, 21.0), "standing", "helper", desk.now(), rate_n_per_mm=RATE, preload_mm=1.0)
        band = Band(0.28, 0.32, "own")
        desk.do("Keep sag", keep_sag(bike.id, records.rider.id, shock.id, (one,), band), bike_id=bike.id)
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def opened(desk, bench, view) -> CoilViewModel:
    view_model = CoilViewModel(desk, bench)
    view_model.show()
    view_model.pick_view(view)
    return view_model


def typed(view_model, **texts) -> CoilViewModel:
    for name, text in texts.items():
        view_model.set_text(name, text)
    return view_model


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def field(view_model, name):
    sheet = view_model.state.sheet
    return next(one for one in (*sheet.fields, *sheet.adds, *sheet.preload_fields) if one.name == name)


def on_bike(desk, bench, item):
    parts = desk.ask(coil_records(bench.bike_id)).spring.sag.parts
    return parts.line(item, parts.unit("rear").id)


def heard(view_model):
    problems = []
    view_model.refused.connect(problems.append)
    return problems


def test_an_air_shock_has_no_coil_sheet(desk):
    bench = Bench(desk)
    bench.put_bike(a_bike(desk).id)
    assert CoilViewModel(desk, bench).state.unit_id == ""


def test_the_springs_to_fit_stand_nearest_first_with_sag_force_and_exact_rate(desk):
    sheet = opened(desk, coil_bike(desk), AT_HAND).state.sheet
    assert "Load 1734 N" in plain(sheet.load_words)
    assert [plain(part) for part in sheet.exact] == ["542", "lbf/in", "95 N/mm"]
    first, second = sheet.springs[:2]
    assert (plain(first.name), first.is_nearest) == ("550 lbf/in", True)
    assert plain(first.sag).startswith("29.6 %")
    assert plain(second.name) == "525 lbf/in"
    assert plain(second.sag).startswith("31.1 %")
    assert plain(first.force) == "96 N"


def test_preload_instead_of_a_spring_is_refused_with_the_reason(desk):
    words = plain(opened(desk, coil_bike(desk), AT_HAND).state.sheet.preload_words)
    assert "30.0 % on 450 lbf/in would need 4.75 mm. Refused: the most is 3 mm (two turns" in words


def test_a_spring_of_the_list_that_would_bind_says_what_it_lacks_and_cannot_be_fitted(desk):
    bench = coil_bike(desk)
    view_model = opened(desk, bench, AT_HAND)
    view_model.choose("own")
    assert typed(view_model, rate="550", stroke_mm="57", label="spare").add()
    line = view_model.state.sheet.springs[0]
    assert line.is_refused
    assert plain(line.bind) == "coil bind: has 57 mm, needs 58.5 mm. Do not fit"
    problems = heard(view_model)
    assert not view_model.fit(line.key)
    assert "Coil bind" in problems[-1].text
    assert on_bike(desk, bench, Item.SPRING_RATE).value == pytest.approx(RATE)


def test_fitting_from_the_list_is_one_step_with_the_preload_tried(desk):
    bench = coil_bike(desk)
    view_model = typed(opened(desk, bench, AT_HAND), preload_turns="1")
    assert view_model.fit(view_model.state.sheet.springs[0].key)
    assert on_bike(desk, bench, Item.PRELOAD).value == pytest.approx(1.5)
    assert on_bike(desk, bench, Item.SPRING_RATE).value == pytest.approx(from_unit(525, "spring_rate", "lbf/in"))
    assert any(line.is_on_bike for line in view_model.state.sheet.springs)
    assert plain(desk.undo().label) == "Fit 525 lbf/in"
    assert on_bike(desk, bench, Item.PRELOAD).value == 1.0


def test_preload_as_length_and_as_turns_show_one_another(desk):
    view_model = opened(desk, coil_bike(desk, preload_pitch_mm=1.25), AT_HAND)
    assert (field(view_model, "preload_mm").text, field(view_model, "preload_turns").text) == ("1", "0.8")
    typed(view_model, preload_turns="2")
    assert field(view_model, "preload_mm").text == "2.5"
    typed(view_model, preload_mm="0,5")
    assert (field(view_model, "preload_mm").text, field(view_model, "preload_turns").text) == ("0,5", "0.4")
    assert view_model.set_preload()
    assert not view_model.state.sheet.can_set_preload


def test_more_preload_than_the_maker_allows_is_said_at_the_field_typed_with_its_range(desk):
    view_model = typed(opened(desk, coil_bike(desk, preload_limit_mm=2.0), AT_HAND), preload_mm="3")
    assert plain(field(view_model, "preload_mm").problem) == ("Preload: '3' cannot be used; allowed is 0 mm to 2 mm.")
    assert not view_model.set_preload()
    typed(view_model, preload_turns="9")
    assert "0 turns to 1.33 turns" in plain(field(view_model, "preload_turns").problem)
    assert field(view_model, "preload_mm").problem == ""


def test_without_a_sag_the_list_says_what_to_do_first_and_still_judges_bind(desk):
    view_model = opened(desk, coil_bike(desk, has_sag=False), AT_HAND)
    assert "Measure sag first" in view_model.state.sheet.hint
    view_model.choose("own")
    assert typed(view_model, rate="450 lbf/in", stroke_mm="57").add()
    assert view_model.state.sheet.springs[0].is_refused


SIZES = {"wire_mm": "12", "diameter_mm": "150", "coils": "10", "modulus": "80 GPa"}


def test_a_rate_from_the_wire_is_reckoned_as_typed_with_how_far_it_is_known(desk):
    view_model = typed(opened(desk, coil_bike(desk, has_sag=False), WIRE), **SIZES)
    result = view_model.state.sheet.result
    assert result.rate_n_per_mm == pytest.approx(6.144)  # Bhavikatti, Strength of Materials, example 6.22: 6.14
    assert plain(result.also) == "6.1 N/mm"
    assert "Nine times in ten between" in result.interval
    typed(view_model, diameter_mm="162")
    view_model.choose("outer")
    assert view_model.state.sheet.result.rate_n_per_mm == pytest.approx(6.144)


def test_the_modulus_assumed_is_said_and_can_be_changed(desk):
    view_model = typed(opened(desk, coil_bike(desk), WIRE), wire_mm="11.5", diameter_mm="46", coils="6")
    assert field(view_model, "modulus").text == "77.2"
    assert "is assumed" in field(view_model, "modulus").help
    before = view_model.state.sheet.result.rate_n_per_mm
    typed(view_model, modulus="40")
    assert view_model.state.sheet.result.rate_n_per_mm == pytest.approx(before * 40 / 77.2)


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("wire_mm", "120", "Wire diameter: '120' cannot be used; allowed is 2 mm to 25 mm."),
        ("wire_mm", "thick", "Wire diameter: 'thick' cannot be used; allowed is a number in mm or cm or in."),
        ("diameter_mm", "11", "Coil diameter: '11' cannot be used; allowed is more than 12 mm with this wire."),
        ("coils", "-2", "Active coils: '-2' cannot be used; allowed is 1 to 30."),
        ("modulus", "900", "Shear modulus: '900' cannot be used; allowed is 20 GPa to 120 GPa."),
        ("stroke_mm", "5", "Usable stroke: '5' cannot be used; allowed is 10 mm to 200 mm."),
    ],
)
def test_a_size_that_cannot_be_is_named_at_its_field_with_its_range(desk, name, text, said):
    view_model = typed(opened(desk, coil_bike(desk), WIRE), **SIZES)
    problems = heard(view_model)
    typed(view_model, **{name: text})
    assert plain(field(view_model, name).problem) == said
    assert not view_model.keep_result()
    assert problems[-1].field == name
    assert field(view_model, name).text == text


def test_what_is_missing_is_named(desk):
    view_model = typed(opened(desk, coil_bike(desk), WIRE), wire_mm="12")
    problems = heard(view_model)
    assert not view_model.fit_result()
    assert problems[-1].text == "Still to enter: coil diameter, active coils."
    assert problems[-1].field == "diameter_mm"


def test_a_rate_from_the_wire_joins_the_list_and_says_how_it_is_known(desk):
    view_model = typed(opened(desk, coil_bike(desk), WIRE), **{**SIZES, "diameter_mm": "60"}, label="Grey one")
    assert view_model.keep_result()
    state = view_model.state
    assert state.view == AT_HAND
    assert state.sheet.springs[0].known.startswith("Grey one; ")
    assert "reckoned from the wire" in state.sheet.springs[0].known
    desk.undo()
    view_model.pick_view(WIRE)
    assert field(view_model, "wire_mm").text == "12"


def test_a_spring_on_the_bike_says_how_its_rate_is_known_and_keeps_its_usable_stroke(desk):
    bench = coil_bike(desk, spring_stroke_mm=65.0)
    view_model = typed(opened(desk, bench, WIRE), **{**SIZES, "diameter_mm": "60"})
    assert view_model.fit_result()
    assert on_bike(desk, bench, Item.SPRING_RATE).how == "wire"
    assert desk.ask(coil_records(bench.bike_id)).spring.sag.parts.unit("rear").spring_stroke_mm == 65.0


READINGS = (("30", "2405"), ("0", "5"), ("20", "1601"), ("10", "803"))


def pressed(desk, readings=READINGS, **facts):
    view_model = opened(desk, coil_bike(desk, **facts), PRESSED)
    for line, pair in enumerate(readings):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)
    return view_model


def test_readings_in_any_order_give_a_rate_with_its_interval_and_a_line(desk):
    sheet = pressed(desk).state.sheet
    assert sheet.result.rate_n_per_mm == pytest.approx(79.98, abs=0.005)
    assert plain(sheet.result.interval) == "Nine times in ten between 455 and 458 lbf/in."
    assert len(sheet.plot.points) == 4
    assert sheet.plot.travel_mm == (0.0, 30.0)


def test_a_force_may_be_written_in_its_own_unit_and_a_bad_one_is_named_in_its_line(desk):
    view_model = pressed(desk, (("1 cm", "100 kgf"), ("20", "200 kgf"), ("30", "300 kgf"), ("40", "heavy")))
    sheet = view_model.state.sheet
    assert sheet.result.rate_n_per_mm == pytest.approx(98.0665)
    assert "Force: 'heavy'" in sheet.pair_problems[3]
    problems = heard(view_model)
    assert not view_model.keep_result()
    assert problems[-1].field == "line_4"


def test_half_a_line_and_a_falling_force_are_said(desk):
    assert "Line 2 lacks" in pressed(desk, (("10", "800"), ("20", ""))).state.sheet.hint


def test_a_force_that_falls_gives_no_rate(desk):
    sheet = pressed(desk, (("10", "800"), ("20", "600"), ("30", "100"))).state.sheet
    assert sheet.result is None
    assert "does not rise" in sheet.hint


def test_a_pressed_spring_is_taken_over_as_measured(desk):
    view_model = pressed(desk)
    assert view_model.keep_result()
    assert "measured by pressing it" in view_model.state.sheet.springs[0].known


def test_typed_lists_survive_a_kill(tmp_path):
    with make_desk(tmp_path) as desk:
        bike_id = pressed(desk)._bench.bike_id
    with make_desk(tmp_path) as desk:
        bench = Bench(desk)
        bench.put_bike(bike_id)
        state = CoilViewModel(desk, bench).state
    assert state.view == PRESSED
    assert state.sheet.pairs[:4] == READINGS
    assert state.sheet.has_draft


def test_a_discarded_list_can_be_taken_back(desk):
    view_model = pressed(desk)
    discarded = []
    view_model.discarded.connect(lambda label, key: discarded.append(key))
    view_model.discard()
    assert not any(any(pair) for pair in view_model.state.sheet.pairs)
    view_model.take_back_draft(discarded[0])
    assert view_model.state.sheet.pairs[:4] == READINGS


def test_what_was_typed_in_millimetres_stays_so_for_somebody_who_reads_inches(desk):
    bench = coil_bike(desk)
    view_model = opened(desk, bench, PRESSED)
    for line, pair in enumerate(READINGS):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)
    person = desk.ask(people())[0]
    desk.do("Units", edit(Person, person.id, "length_unit", "in"))
    bench.seat(person.id)
    sheet = view_model.state.sheet
    assert sheet.heads[0] == "Travel, in"
    assert sheet.pairs[0] == ("30 mm", "2405")
    assert sheet.result.rate_n_per_mm == pytest.approx(79.98, abs=0.005)


def dual(desk, **facts):
    view_model = opened(desk, coil_bike(desk, **facts), TABLE)
    view_model.choose("two")
    return typed(view_model, stopped_rate="80 N/mm", stop_mm="10", other_rate="120 N/mm", both_mm="62")


def test_two_springs_with_a_stop_show_curve_rates_and_sag(desk):
    sheet = dual(desk).state.sheet
    assert sheet.plot.rate_n_per_mm == pytest.approx((48.0, 120.0))
    assert sheet.plot.travel_mm == pytest.approx((0.0, 10 + 800 / 120, 62.0))
    words = plain(" ".join(sheet.result.notes))
    # The stop is met at 16.67 mm and 800 N, the other 934 N press the second spring 7.78 mm more; 1 mm is preload.
    assert "sags 23.4 mm, 40.8 %" in words


def test_a_stroke_that_ends_before_the_stop_is_said_at_its_field(desk):
    view_model = typed(dual(desk), both_mm="15")
    assert "more than 16.7 mm, where the stop is met" in plain(field(view_model, "both_mm").problem)
    assert view_model.state.sheet.result is None


def test_pairs_of_a_progressive_spring_are_kept_and_judged_in_the_list(desk):
    bench = coil_bike(desk)
    view_model = opened(desk, bench, TABLE)
    for line, pair in enumerate((("60", "4200"), ("20", "1000"))):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)
    assert view_model.keep_result()
    line = view_model.state.sheet.springs[0]
    assert "progressive, measured" in line.known
    assert "28.2 mm" in plain(line.sag)  # 1734 N lie 9.17 mm beyond 20 mm, less 1 mm of preload
    assert view_model.fit(line.key)
    # It counts so that rate times sag and preload is the rider's load again.
    assert on_bike(desk, bench, Item.SPRING_RATE).value * (28.1725 + 1) == pytest.approx(1733.8, abs=0.5)


def test_a_pair_that_goes_back_is_named(desk):
    view_model = opened(desk, coil_bike(desk), TABLE)
    for line, pair in enumerate((("20", "1000"), ("30", "900"))):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)
    sheet = view_model.state.sheet
    assert "allowed is above 1000 N, the force at 20 mm" in sheet.pair_problems[1]
    assert sheet.pair_problems[0] == ""
    problems = heard(view_model)
    assert not view_model.keep_result()
    assert problems[-1].field == "line_2"


def test_a_travel_that_stands_twice_is_named_in_the_later_line(desk):
    view_model = opened(desk, coil_bike(desk), TABLE)
    for line, pair in enumerate((("2 cm", "1000"), ("20", "900"))):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)
    assert "Travel: 20 cannot be used; allowed is each travel once" in view_model.state.sheet.pair_problems[1]


def test_a_progressive_spring_is_fitted_before_any_sag_and_the_sag_then_tells_the_load_by_its_table(desk):
    view_model = dual(desk, has_sag=False)
    assert view_model.fit_result()
    about = view_model._entries.about()
    line = about.rate_line
    assert (line.how, line.value) == ("table", pytest.approx((800 + (62 - 10 - 800 / 120) * 120) / 62))
    assert len(about.at_hand) == 1
    records = desk.ask(sag_records(about.unit.bike_id))
    one = SagRound((23.45, 23.45), "standing", "helper", desk.now(), rate_n_per_mm=line.value, preload_mm=1.0)
    keep = keep_sag(about.unit.bike_id, records.rider.id, about.unit.id, (one,), Band(0.28, 0.32, "own"))
    desk.do("Keep sag", keep, bike_id=about.unit.bike_id)
    # 24.45 mm of compression: 800 N where the stop is met, and 120 N/mm for the 7.78 mm after it.
    assert view_model._entries.about().load.load_n == pytest.approx(800 + (24.45 - 10 - 800 / 120) * 120)


def test_a_spring_is_taken_from_the_list_and_comes_back_with_undo(desk):
    view_model = opened(desk, coil_bike(desk), AT_HAND)
    view_model.choose("own")
    typed(view_model, rate="500").add()
    view_model.remove(view_model.state.sheet.springs[0].key)
    assert view_model.state.sheet.springs == ()
    desk.undo()
    assert len(view_model.state.sheet.springs) == 1


def test_a_spring_without_a_rate_is_refused_at_the_rate(desk):
    view_model = opened(desk, coil_bike(desk), AT_HAND)
    problems = heard(view_model)
    assert not view_model.add()
    typed(view_model, rate="0")
    assert not view_model.add()
    assert [one.field for one in problems] == ["rate", "rate"]
    assert "allowed is" in problems[1].text
