"""The sag sheet without a window: entries, stages, rounds, keeping."""

from __future__ import annotations

from contextlib import contextmanager

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.actions.edit import edit
from workbench.actions.garage import start_generation
from workbench.actions.on_bike import set_item
from workbench.actions.people import add_person, add_rider
from workbench.actions.sag import sag_records
from workbench.actions.spring import keep_survey, state_mounting
from workbench.model.bike import Bike
from workbench.model.person import Person
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.model.units import from_unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_draft import Stage

GAP = "\u2009"


@contextmanager
def opened_again(folder):
    """The same library after the program was closed or killed."""
    with make_desk(folder) as desk:
        yield desk


def sheet(desk, bike_id):
    """A view-model in sight, and what it refuses."""
    bench = Bench(desk)
    bench.put_bike(bike_id)
    view_model = SagViewModel(desk, bench)
    refused = []
    view_model.refused.connect(refused.append)
    view_model.show()
    return view_model, refused


def ready(desk, *, layout="air_air", end="front", **bike):
    """A bike whose end is at the spring stage, adjusters open."""
    added = a_bike(desk, layout=layout, **bike)
    view_model, refused = sheet(desk, added.id)
    view_model.start(end)
    for adjuster in view_model.state.guide.adjusters:
        view_model.note_place(adjuster.adjuster_id, "6")
    view_model.open_adjusters()
    assert view_model.next(), refused
    return added, view_model, refused


def measure(view_model, pressure, *readings):
    view_model.set_text("pressure_kpa", pressure)
    assert view_model.next()
    for reading in readings:
        assert view_model.add_reading(reading)
    assert view_model.next()


def records(desk, bike):
    return desk.ask(sag_records(bike.id))


def test_both_ends_are_due_at_first_and_the_front_is_the_next_step(desk):
    view_model, _ = sheet(desk, a_bike(desk).id)
    assert [(end.status, end.is_due, end.is_next) for end in view_model.state.ends] == [
        ("due", True, True),
        ("due", True, False),
    ]


def test_an_end_of_unknown_travel_points_to_the_garage(desk):
    view_model, refused = sheet(desk, a_bike(desk, shock_stroke_mm=None).id)
    rear = view_model.state.ends[1]
    assert "stroke is not stated" in rear.blocked
    assert rear.verb == ""
    view_model.start("rear")
    assert view_model.state.guide is None
    assert "garage" in refused[0].text


def test_a_bike_without_a_rider_says_so(desk):
    view_model, _ = sheet(desk, a_bike(desk, rider="").id)
    assert "rider" in view_model.state.blocked


def test_adjusters_that_are_not_open_are_asked_about_once(desk):
    view_model, refused = sheet(desk, a_bike(desk).id)
    view_model.start("front")
    assert "Count" in view_model.state.guide.count_link
    assert not view_model.next()
    assert refused[-1].field == "as_they_stand"
    view_model.set_field("as_they_stand", True)
    assert view_model.next()
    assert view_model.state.guide.stage == Stage.SPRING


def test_a_place_recorded_here_is_what_the_adjuster_goes_back_to(desk):
    _, view_model, _ = ready(desk)
    view_model.go_to_stage(Stage.PUT_BACK)
    assert [step.text for step in view_model.state.guide.put_back] == ["fully closed, then open 6 clicks"] * 2
    view_model.take_step(0)
    assert len(view_model.state.guide.put_back) == 1


@pytest.mark.parametrize("text", ["x", "-1", "1e3", "401", "6.5"])
def test_a_place_that_is_no_count_is_refused_at_its_field(desk, text):
    view_model, refused = sheet(desk, a_bike(desk).id)
    view_model.start("front")
    adjuster = view_model.state.guide.adjusters[0]
    assert not view_model.note_place(adjuster.adjuster_id, text)
    assert refused[-1].field == f"place_{adjuster.adjuster_id}"
    assert view_model.state.guide.adjusters[0].asks_place


def test_a_pressure_past_the_makers_limit_is_refused_in_words(desk):
    bike, view_model, refused = ready(desk)
    fork = records(desk, bike).parts.unit("front")
    desk.do("Limit", edit(Unit, fork.id, "maximum_kpa", 600.0), bike_id=bike.id)
    view_model.set_text("pressure_kpa", "100")
    assert not view_model.next()
    assert "highest pressure allowed" in refused[-1].text
    assert refused[-1].field == "pressure_kpa"


@pytest.mark.parametrize("text", ["", "abc", "nan", "-5", "9999", "<b>7</b>"])
def test_a_pressure_that_cannot_be_stays_as_typed_and_is_refused(desk, text):
    _, view_model, refused = ready(desk)
    view_model.set_text("pressure_kpa", text)
    assert not view_model.next()
    assert refused[-1].field == "pressure_kpa"
    typed = view_model.state.guide.draft.text("pressure_kpa")
    assert (typed.text if typed else "") == text


def test_two_readings_that_agree_suffice_and_two_that_do_not_ask_for_a_third(desk):
    _, view_model, refused = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    view_model.next()
    view_model.add_reading("30")
    assert not view_model.next()
    assert "once more" in refused[-1].text
    view_model.add_reading("33")
    assert not view_model.next()
    assert "third" in refused[-1].text
    view_model.add_reading("31")
    assert view_model.next()
    assert view_model.state.guide.ruler.sag_mm == 31.0


def test_a_shock_asks_for_readings_closer_together_than_a_fork(desk):
    _, view_model, _ = ready(desk, end="rear")
    view_model.set_text("pressure_kpa", "170")
    view_model.next()
    view_model.add_reading("17")
    view_model.add_reading("18.5")
    assert "take a third" in view_model.state.guide.agreement


@pytest.mark.parametrize("text", ["", "0", "151", "-3", "inf", "x"])
def test_a_reading_that_cannot_be_is_refused_and_stays_in_the_field(desk, text):
    _, view_model, refused = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    view_model.next()
    assert not view_model.add_reading(text)
    assert refused[-1].field == "reading"
    assert view_model.state.guide.readings == ()


def test_a_reading_can_be_taken_out(desk):
    _, view_model, _ = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    view_model.next()
    for text in ("30", "45", "31"):
        view_model.add_reading(text)
    view_model.remove_reading(1)
    assert [one.text for one in view_model.state.guide.readings] == [f"30{GAP}mm", f"31{GAP}mm"]


def test_next_takes_a_reading_that_was_typed_but_not_entered(desk):
    _, view_model, _ = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    view_model.next()
    view_model.add_reading("30")
    view_model.set_text("reading", "30.5")
    assert view_model.next()
    assert view_model.state.guide.draft.readings_mm == (30.0, 30.5)


def test_too_much_sag_asks_for_more_air_and_the_next_round_keeps_the_first_as_a_tick(desk):
    _, view_model, refused = ready(desk)
    measure(view_model, "70", "37", "38")
    advice = view_model.state.guide.advice
    assert not advice.is_met
    assert float(advice.number) > 70
    assert "Too much sag" in advice.verdict
    assert view_model.state.guide.verb == f"Set {advice.number} psi and measure again"
    assert advice.large_move
    assert not view_model.another_round()
    assert refused[-1].field == "move_confirmed"
    view_model.set_field("move_confirmed", True)
    assert view_model.another_round()
    guide = view_model.state.guide
    assert guide.stage == Stage.SPRING
    assert guide.rounds[0].sag == f"37.5{GAP}mm (25{GAP}%)"
    assert 37.5 in guide.ruler.ticks_mm
    assert "Vent slowly" not in guide.limits


def test_where_air_is_let_out_the_stage_itself_says_how(desk):
    _, view_model, _ = ready(desk)
    measure(view_model, "70", "25", "25.5")
    view_model.set_field("move_confirmed", True)
    assert view_model.another_round()
    guide = view_model.state.guide
    assert guide.draft.pressure_kpa < guide.draft.rounds[-1].pressure_kpa
    assert "Vent slowly" in guide.limits
    assert "do not unscrew" in guide.limits


def test_a_small_move_needs_no_tick(desk):
    _, view_model, _ = ready(desk)
    measure(view_model, "70", "33.5", "34")
    assert view_model.state.guide.advice.large_move == ""
    assert view_model.another_round()


def test_sag_in_the_band_is_kept_with_everything_in_one_step(desk):
    bike, view_model, _ = ready(desk)
    measure(view_model, "70", "37", "38")
    view_model.set_field("move_confirmed", True)
    view_model.press_verb()
    view_model.set_field("temperature_c", 21.0)
    view_model.next()
    for text in ("30", "30.5"):
        view_model.add_reading(text)
    view_model.next()
    label = view_model.state.guide.verb
    assert label == f"Keep front sag 30.2{GAP}mm (20{GAP}%)"
    view_model.press_verb()
    kept = records(desk, bike).measurements
    assert [(one.is_kept, one.sag_mm) for one in kept] == [(False, 37.5), (True, 30.25)]
    assert desk.undo_label() == label
    assert view_model.state.guide.stage == Stage.PUT_BACK
    assert not view_model.state.guide.has_draft
    line = records(desk, bike).parts.line(Item.PRESSURE, kept[-1].unit_id)
    assert (line.how, line.temperature_c) == ("as_pumped", 21.0)
    assert view_model.state.guide.verb == "Measure rear sag"
    desk.undo()
    assert records(desk, bike).measurements == ()
    assert view_model.state.guide.stage == Stage.ADVICE
    assert len(view_model.state.guide.rounds) == 1


def test_at_the_makers_limit_it_says_limited_and_does_not_call_it_met(desk):
    bike, view_model, _ = ready(desk)
    fork = records(desk, bike).parts.unit("front")
    most = from_unit(72, "pressure", "psi")
    desk.do("Limit", edit(Unit, fork.id, "maximum_kpa", most), bike_id=bike.id)
    measure(view_model, "72", "40", "40")
    advice = view_model.state.guide.advice
    assert advice.outcome.startswith("Limited")
    assert not advice.is_met
    assert advice.number == "72"
    assert view_model.state.guide.verb.startswith("Keep")


@pytest.mark.parametrize(
    ("name", "psi", "reading", "bound", "way_out"),
    [
        ("minimum_kpa", 40, "12", "lowest", "ask a mechanic about a lighter spring or a retune."),
        ("maximum_kpa", 72, "40", "highest", "ask a mechanic about a firmer spring."),
    ],
)
def test_what_is_kept_at_a_limit_stays_said_as_not_met_with_the_way_out(desk, name, psi, reading, bound, way_out):
    bike, view_model, _ = ready(desk, mass_kg=28.0)
    fork = records(desk, bike).parts.unit("front")
    desk.do("Limit", edit(Unit, fork.id, name, from_unit(psi, "pressure", "psi")), bike_id=bike.id)
    measure(view_model, f"{psi}", reading, reading)
    advice = view_model.state.guide.advice
    assert advice.outcome == f"Limited: the {bound} pressure the maker allows. The band is not met there; {way_out}"
    assert "fits" not in advice.reason
    assert view_model.keep()
    (notes,) = [end.notes for end in view_model.state.ends if end.end == "front"]
    assert notes.startswith("Limited, not met: ")
    assert notes.endswith(f"at the {bound} pressure the maker allows; {way_out}")


def test_what_is_kept_beside_the_band_with_pressure_left_to_set_says_so(desk):
    _, view_model, _ = ready(desk)
    measure(view_model, "72", "40", "40")
    view_model.keep()
    assert view_model.state.ends[0].status.endswith(", not met")
    assert view_model.state.ends[0].notes == f"Not met: 27{GAP}%, aimed at is 18 to 22{GAP}%."


def test_a_second_chamber_names_the_order_in_which_they_are_filled(desk):
    bike, view_model, _ = ready(desk)
    fork = records(desk, bike).parts.unit("front")
    for name, value in (("has_second_positive", True), ("fill_order", "second_first")):
        desk.do("Fact", edit(Unit, fork.id, name, value), bike_id=bike.id)
    assert "Fill the second chamber, then the main one" in view_model.state.guide.cycle_words


def test_advice_stops_at_the_limit_and_never_past_it(desk):
    bike, view_model, _ = ready(desk)
    fork = records(desk, bike).parts.unit("front")
    most = from_unit(75.4, "pressure", "psi")
    desk.do("Limit", edit(Unit, fork.id, "maximum_kpa", most), bike_id=bike.id)
    measure(view_model, "70", "40", "40")
    advice = view_model.state.guide.advice
    assert advice.options[0].pressure_kpa <= most
    assert "Limited" in advice.outcome


def test_killed_at_any_point_it_goes_on_where_it_was(tmp_path):
    with make_desk(tmp_path) as desk:
        bike, view_model, _ = ready(desk)
        view_model.set_text("pressure_kpa", "70,5 p")
    with opened_again(tmp_path) as desk:
        view_model, _ = sheet(desk, bike.id)
        guide = view_model.state.guide
        assert (guide.end, guide.stage) == ("front", Stage.SPRING)
        assert guide.draft.text("pressure_kpa").text == "70,5 p"
        view_model.set_text("pressure_kpa", "70")
        view_model.next()
        view_model.add_reading("30")
        view_model.set_text("reading", "3")
    with opened_again(tmp_path) as desk:
        view_model, _ = sheet(desk, bike.id)
        guide = view_model.state.guide
        assert (guide.stage, guide.draft.readings_mm) == (Stage.MEASURE, (30.0,))
        assert guide.draft.text("reading").text == "3"
        assert guide.draft.pressure_kpa == pytest.approx(from_unit(70, "pressure", "psi"))


def test_text_typed_in_psi_is_still_psi_for_somebody_who_reads_bar(desk):
    _, view_model, _ = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    person = desk.do("Add", add_person("B. Holm", works_here=True), bike_id=None)
    desk.do("Bar", edit(Person, person.id, "pressure_unit", "bar"), bike_id=None)
    view_model._bench.seat(person.id)
    assert view_model.next()
    assert view_model.state.guide.draft.pressure_kpa == pytest.approx(from_unit(70, "pressure", "psi"))


def test_switching_ends_keeps_both_entries(desk):
    _, view_model, _ = ready(desk)
    view_model.set_text("pressure_kpa", "70")
    view_model.switch_end()
    assert view_model.state.guide.end == "rear"
    view_model.set_field("as_they_stand", True)
    view_model.switch_end()
    guide = view_model.state.guide
    assert (guide.end, guide.stage) == ("front", Stage.SPRING)
    assert guide.draft.text("pressure_kpa").text == "70"
    view_model.switch_end()
    assert view_model.state.guide.draft.as_they_stand


def test_a_discarded_entry_leaves_the_put_back_due_and_can_be_taken_back(desk):
    bike, view_model, _ = ready(desk)
    measure(view_model, "70", "37", "38")
    view_model.discard()
    assert view_model.state.guide is None
    assert "Put back before riding" in view_model.state.put_back_words
    fork = records(desk, bike).parts.unit("front")
    assert records(desk, bike).parts.value(Item.PRESSURE, fork.id) == pytest.approx(from_unit(70, "pressure", "psi"))
    desk.undo()
    view_model.start("front")
    assert view_model.state.guide.draft.readings_mm == (37.0, 38.0)


def test_another_posture_begins_another_round_and_is_not_compared(desk):
    _, view_model, _ = ready(desk)
    measure(view_model, "70", "37", "38")
    view_model.set_field("posture", "seated")
    draft = view_model.state.guide.draft
    assert draft.readings_mm == ()
    assert draft.rounds[0].posture == "standing"


def test_a_changed_band_is_the_riders_own_and_kept_with_the_sag(desk):
    bike, view_model, _ = ready(desk)
    view_model.go_to_stage(Stage.PREPARE)
    view_model.set_text("target_low", "16")
    view_model.set_field("target_high", 0.2)
    assert view_model.next()
    assert view_model.state.guide.draft.target_origin == "own"
    measure(view_model, "70", "27", "27")
    assert view_model.keep()
    (target,) = records(desk, bike).targets
    assert (target.low, target.high, target.origin) == (pytest.approx(0.16), 0.2, "own")
    view_model.both_ends()
    assert "16 to 20" in view_model.state.ends[0].ruler.band_words


def test_an_odd_stroke_is_asked_about_before_measuring(desk):
    view_model, refused = sheet(desk, a_bike(desk, shock_stroke_mm=120.0).id)
    view_model.start("rear")
    view_model.set_field("as_they_stand", True)
    assert "Stroke or wheel travel" in view_model.state.guide.question
    assert not view_model.next()
    assert refused[-1].field == "travel_confirmed"
    view_model.set_field("travel_confirmed", True)
    assert view_model.next()


def coil_at_advice(desk, *, preload_mm=1.0, stroke=None, readings=("21", "21")):
    bike, view_model, refused = ready(desk, layout="air_coil", end="rear", shock_stroke_mm=57.5)
    view_model.go_to_stage(Stage.PREPARE)
    view_model.set_field("target_low", 0.285)
    view_model.set_field("target_high", 0.315)
    view_model.next()
    view_model.set_text("rate_n_per_mm", "450")
    view_model.set_field("preload_mm", preload_mm)
    view_model.set_field("spring_stroke_mm", stroke)
    assert view_model.next(), refused
    for text in readings:
        view_model.add_reading(text)
    view_model.next()
    return bike, view_model, refused


def test_a_coil_is_answered_with_stock_rates_and_the_sag_each_gives(desk):
    _, view_model, _ = coil_at_advice(desk)
    advice = view_model.state.guide.advice
    assert (advice.number, advice.number_unit) == ("542", "lbf/in")
    assert [(one.title, one.detail) for one in advice.options] == [
        (
            f"525{GAP}lbf/in",
            f"gives 31.1{GAP}% sag, in the band; preload force 92{GAP}N; needs 58.5{GAP}mm of usable stroke",
        ),
        (
            f"550{GAP}lbf/in",
            f"gives 29.6{GAP}% sag, in the band; preload force 96{GAP}N; needs 58.5{GAP}mm of usable stroke",
        ),
    ]
    assert view_model.state.guide.verb == f"Fit 550{GAP}lbf/in and measure again"
    assert "does not mend a wrong spring" in advice.care


def test_preload_beyond_two_turns_is_refused_with_the_reason(desk):
    _, view_model, _ = coil_at_advice(desk)
    assert "4.8" in view_model.state.guide.advice.preload
    assert "Refused" in view_model.state.guide.advice.preload
    assert not any(one.preload_mm for one in view_model.state.guide.advice.options)


def test_a_little_more_preload_is_offered(desk):
    _, view_model, _ = coil_at_advice(desk, readings=("18.3", "18.3"))
    (offered,) = [one for one in view_model.state.guide.advice.options if one.preload_mm]
    assert offered.preload_mm == pytest.approx(18.3 + 1.0 - 0.3 * 57.5, abs=0.02)


def test_coil_bind_blocks_the_way_on(desk):
    _, view_model, refused = ready(desk, layout="air_coil", end="rear", shock_stroke_mm=57.5)
    view_model.set_text("rate_n_per_mm", "550")
    view_model.set_field("preload_mm", 1.0)
    view_model.set_field("spring_stroke_mm", 57.0)
    assert not view_model.next()
    assert "Coil bind" in refused[-1].text
    assert "58.5" in refused[-1].text


def test_a_fitted_spring_begins_a_round_whose_usable_stroke_is_asked_again(desk):
    _, view_model, _ = coil_at_advice(desk, stroke=60.0)
    view_model.press_verb()
    draft = view_model.state.guide.draft
    assert draft.rate_n_per_mm == pytest.approx(from_unit(550, "spring_rate", "lbf/in"))
    assert draft.spring_stroke_mm is None


def test_a_known_pressure_is_told_but_not_taken_for_what_is_in_there_now(desk):
    bike = a_bike(desk)
    fork = records(desk, bike).parts.unit("front")
    desk.do("Note", set_item(bike.id, Item.PRESSURE, fork.id, 500.0, "as_attached"), bike_id=bike.id)
    view_model, _ = sheet(desk, bike.id)
    view_model.start("front")
    assert "Last known" in view_model.state.guide.spring_known
    assert view_model.state.guide.draft.pressure_kpa is None


def test_an_entry_belongs_to_the_rider_it_was_begun_with(desk):
    bike, view_model, _ = ready(desk)
    first = records(desk, bike).rider
    other = desk.do("Add", add_person("B. Holm", mass_kg=60.0), bike_id=None)
    desk.do("Rides too", add_rider(bike.id, other.id), bike_id=bike.id)
    view_model._bench.put_bike(bike.id, rider_id=other.id)
    assert view_model.state.rider_words.startswith("B. Holm")
    assert view_model.state.guide.title == "Front sag, M. Anders"
    measure(view_model, "85", "30", "30")
    assert view_model.keep()
    (kept,) = records(desk, bike).measurements
    assert (kept.rider_id, kept.rider_mass_kg) == (first.id, 84.5)


def test_the_usual_band_is_said_to_be_for_a_standing_rider(desk):
    view_model, _ = sheet(desk, a_bike(desk).id)
    view_model.start("front")
    view_model.set_field("posture", "seated")
    assert "standing rider" in view_model.state.guide.origin_words


@pytest.mark.parametrize("readings", [("0.5", "0.5"), ("140", "141"), ("150", "150"), ("3", "140", "70")])
def test_absurd_readings_get_a_sentence_and_never_a_pressure_past_the_limits(desk, readings):
    bike, view_model, _ = ready(desk)
    fork = records(desk, bike).parts.unit("front")
    desk.do("Limit", edit(Unit, fork.id, "minimum_kpa", 300.0), bike_id=bike.id)
    desk.do("Limit", edit(Unit, fork.id, "maximum_kpa", 900.0), bike_id=bike.id)
    measure(view_model, "70", *readings)
    advice = view_model.state.guide.advice
    assert advice.verdict
    assert all(300.0 <= one.pressure_kpa <= 900.0 for one in advice.options)


def test_letting_air_out_comes_with_a_word_of_care(desk):
    _, view_model, _ = ready(desk)
    measure(view_model, "90", "20", "20")
    assert "Vent slowly" in view_model.state.guide.advice.care


def test_a_hardtail_has_one_end_and_its_own_usual_band(desk):
    _, view_model, _ = ready(desk, layout="hardtail")
    assert len(view_model.state.ends) == 1
    assert view_model.state.guide.other_end == ""
    assert view_model.state.guide.practice_words == f"15 to 20{GAP}%"


def test_an_ebike_has_its_motor_off(desk):
    bike, view_model, _ = ready(desk)
    desk.do("E-bike", edit(Bike, bike.id, "is_ebike", True), bike_id=bike.id)
    assert "motor off" in view_model.state.guide.instruction


def test_new_hardware_makes_the_sag_due_again(desk):
    bike, view_model, _ = ready(desk)
    measure(view_model, "85", "30", "30")
    view_model.keep()
    view_model.both_ends()
    assert not view_model.state.ends[0].is_due
    fork = records(desk, bike).parts.unit("front")
    desk.do("Oil", start_generation(fork.id, "oil"), bike_id=bike.id)
    assert view_model.state.ends[0].is_due


def at_coil_spring(desk, **facts):
    bike, view_model, refused = ready(desk, layout="air_coil", end="rear", shock_stroke_mm=57.5)
    shock = desk.ask(sag_records(bike.id)).parts.unit("rear")
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, shock.id, name, value), bike_id=bike.id)
    view_model.next()
    return view_model, refused


def test_preload_typed_in_turns_is_the_length_it_makes_and_the_other_way_round(desk):
    view_model, _ = at_coil_spring(desk, preload_pitch_mm=1.25)
    view_model.set_turns("2 1/2")
    assert view_model.state.guide.draft.text("preload_mm").text == "3.12 mm"
    assert view_model.state.guide.preload.turns == 2.5
    view_model.set_text("preload_mm", "1")
    assert view_model.state.guide.preload.turns == 0.8
    assert "1.25\u2009mm a turn" in view_model.state.guide.preload.pitch


def test_half_typed_turns_leave_the_length_alone_and_empty_ones_take_it_away(desk):
    view_model, _ = at_coil_spring(desk)
    view_model.set_text("preload_mm", "3")
    view_model.set_turns("1 1/")
    assert view_model.state.guide.preload.turns == 2.0
    assert view_model.state.guide.preload.typed == "1 1/"
    view_model.set_text("preload_mm", "2")
    assert view_model.state.guide.preload.typed is None
    view_model.set_turns("")
    assert view_model.state.guide.preload.turns is None


def test_turns_beyond_the_maker_s_preload_are_refused_at_the_length(desk):
    view_model, refused = at_coil_spring(desk, preload_limit_mm=2.0)
    view_model.set_text("rate_n_per_mm", "450")
    view_model.set_turns("3")
    assert not view_model.next()
    assert refused[-1].field == "preload_mm"
    assert "Turn the collar back" in refused[-1].text


def test_settled_from_above_and_below_the_middle_is_the_reading_and_the_gap_is_friction(desk):
    bike, view_model, refused = ready(desk, layout="air_coil", end="rear")
    view_model.set_text("rate_n_per_mm", "80 N/mm")
    view_model.set_text("preload_mm", "0")
    assert view_model.next()
    view_model.set_field("both_ways", True)
    assert "from above" in view_model.state.guide.entry_label
    assert view_model.add_reading("16")
    assert not view_model.next()
    assert "from below" in refused[-1].text
    assert view_model.add_reading("18")
    guide = view_model.state.guide
    assert [one.way for one in guide.readings] == ["from above", "from below"]
    assert f"17{GAP}mm" in guide.agreement
    assert guide.friction.words == f"Friction about 80{GAP}N, 6{GAP}% of the load."  # half of 2 mm at 80 N/mm
    assert not guide.friction.care
    assert view_model.next()
    assert view_model.keep()
    known = records(desk, bike)
    assert known.measurements[-1].sag_mm == 17.0
    assert known.measurements[-1].spread_mm == 0.0
    assert [one.settled_from for one in known.readings] == ["above", "below"]
    view_model.both_ends()
    assert "Friction about" in view_model.state.ends[1].notes


def test_friction_above_a_tenth_of_the_load_is_to_be_attended_to(desk):
    _, view_model, _ = ready(desk, layout="air_coil", end="rear")
    view_model.set_text("rate_n_per_mm", "80 N/mm")
    view_model.set_text("preload_mm", "0")
    assert view_model.next()
    view_model.set_field("both_ways", True)
    for text in ("15", "19"):
        assert view_model.add_reading(text)
    assert "qualified mechanic" in view_model.state.guide.friction.care


def test_settled_the_wrong_way_round_is_said_and_nothing_is_lost(desk):
    _, view_model, refused = ready(desk, end="rear")
    view_model.set_text("pressure_kpa", "180")
    assert view_model.next()
    view_model.set_field("both_ways", True)
    for text in ("20", "15"):
        assert view_model.add_reading(text)
    assert not view_model.next()
    assert "the larger one" in refused[-1].text
    assert view_model.state.guide.draft.readings_mm == (20.0, 15.0)
    view_model.remove_reading(0)
    assert "from above" in view_model.state.guide.entry_label


def test_a_draft_keeps_which_way_each_reading_was_settled_over_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike, view_model, _ = ready(desk, end="rear")
        view_model.set_text("pressure_kpa", "180")
        assert view_model.next()
        view_model.set_field("both_ways", True)
        assert view_model.add_reading("15")
    with opened_again(tmp_path) as desk:
        view_model, _ = sheet(desk, bike.id)
        assert view_model.state.guide.draft.settled == ("above",)
        assert "from below" in view_model.state.guide.entry_label


def test_readings_taken_at_rest_stay_as_a_round_of_their_own_when_friction_is_looked_at(desk):
    _, view_model, _ = ready(desk, end="rear")
    view_model.set_text("pressure_kpa", "180")
    assert view_model.next()
    assert view_model.add_reading("16")
    view_model.set_field("both_ways", True)
    draft = view_model.state.guide.draft
    assert draft.readings_mm == ()
    assert draft.rounds[0].readings_mm == (16.0,)


def test_every_measurement_and_the_next_one_stand_against_the_target(desk):
    _, view_model, _ = ready(desk, end="rear")
    measure(view_model, "150", "20", "20.5")
    told = view_model.state.guide.history
    assert [row.kind for row in told.rows] == ["now", "predicted"]
    now, after = told.rows
    assert now.at == pytest.approx(20.25 / 60)
    assert after.low < after.at < after.high < now.at
    assert (told.low, told.high) == pytest.approx((0.27, 0.30))
    view_model.set_field("move_confirmed", True)
    assert view_model.another_round()
    assert view_model.next()
    for text in ("17", "17.5"):
        assert view_model.add_reading(text)
    assert view_model.next()
    assert [row.kind for row in view_model.state.guide.history.rows][:2] == ["round", "now"]
    assert view_model.keep()
    view_model.start("rear")
    view_model.set_field("as_they_stand", True)
    assert view_model.next()
    measure(view_model, "165", "17", "17.5")
    assert [row.kind for row in view_model.state.guide.history.rows][:3] == ["earlier", "earlier", "now"]


def test_a_shocks_sag_is_told_at_the_wheel_where_its_mounting_was_surveyed(desk):
    bike, view_model, _ = ready(desk, end="rear")
    shock = records(desk, bike).parts.unit("rear")
    pairs = [(stroke, 2.5 * stroke) for stroke in (15.0, 30.0, 45.0, 60.0)]
    desk.do("Survey", keep_survey(bike.id, shock.id, "", pairs, reading_sd_mm=0.05), bike_id=bike.id)
    measure(view_model, "180", "17", "17")
    assert view_model.state.guide.wheel_words == f"28{GAP}% at the wheel (42.5{GAP}mm)"
    assert view_model.keep()
    view_model.both_ends()
    assert "at the wheel" in view_model.state.ends[1].notes
    desk.do("Elsewhere", state_mounting(shock.id, "another"), bike_id=bike.id)
    assert view_model.state.ends[1].notes == ""


def test_a_negative_chamber_of_its_own_is_entered_kept_and_reckoned_with(desk):
    bike, view_model, _ = ready(desk, end="rear")
    shock = records(desk, bike).parts.unit("rear")
    assert not view_model.state.guide.has_negative
    facts = {"negative": "separate", "area_mm2": 1450.0, "positive_mm3": 1450.0 * 95, "negative_mm3": 1450.0 * 22}
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, shock.id, name, value), bike_id=bike.id)
    assert view_model.state.guide.has_negative
    view_model.set_text("negative_kpa", "150")
    measure(view_model, "180", "20", "20")
    low = view_model.state.guide.advice.options[0].pressure_kpa
    assert "Typical chamber sizes" not in view_model.state.guide.advice.reason
    view_model.set_field("negative_kpa", 150 * 6.894757)
    assert view_model.keep()
    known = records(desk, bike)
    assert known.measurements[-1].negative_kpa == pytest.approx(1034.2, abs=0.1)
    assert known.parts.value(Item.NEGATIVE_PRESSURE, shock.id) == pytest.approx(1034.2, abs=0.1)
    assert low > 180 * 6.894757


def test_the_spring_sheet_is_told_which_end_it_was_asked_for(desk):
    bike, view_model, _ = ready(desk, end="rear")
    view_model.show_spring("rear")
    assert desk.setting(f"spring/end/{bike.id}", "") == "rear"
