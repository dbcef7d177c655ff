import pytest

from tests.fixtures import a_bike
from workbench.actions.edit import edit
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.model.unit import Unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.leverage import LeverageViewModel
from workbench.viewmodels.spring import SpringViewModel
from workbench.viewmodels.spring_curves import crossing

PSI = 6.894757293168


def measured(desk, end="front", kpa=75 * PSI, sag_mm=32.0, negative_kpa=None, **facts):
    bike = a_bike(desk, fork_travel_mm=160.0)
    records = desk.ask(sag_records(bike.id))
    unit = records.parts.unit(end)
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, unit.id, name, value))
    one = SagRound((sag_mm, sag_mm), "standing", "helper", desk.now(), kpa, spacers=0, negative_kpa=negative_kpa)
    desk.do("Keep sag", keep_sag(bike.id, records.rider.id, unit.id, (one,), Band(0.18, 0.22, "own")))
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def sizes():
    return {"area_mm2": 850.0, "positive_mm3": 850.0 * 230, "negative_mm3": 850.0 * 45}


def test_without_a_kept_sag_the_sheet_says_what_to_do_first(desk):
    bench = Bench(desk)
    bench.put_bike(a_bike(desk).id)
    assert "Measure sag first" in SpringViewModel(desk, bench).state.blocked


def test_with_known_sizes_the_curve_passes_through_what_was_measured(desk):
    state = SpringViewModel(desk, measured(desk, **sizes())).state
    assert state.curve.in_newton
    assert state.curve.load == pytest.approx(303, abs=1)
    assert crossing(state.curve.travel_mm, state.curve.force, state.curve.load) == pytest.approx(32.0, abs=0.1)


def test_one_spacer_firms_the_end_and_the_measured_curve_stays_beside_it(desk):
    spacers = {"spacer_volume_mm3": 10_000.0, "spacer_limit": 4}
    view_model = SpringViewModel(desk, measured(desk, **sizes(), **spacers))
    before = view_model.state.curve
    view_model.try_value("spacers", 1)
    view_model.show()
    tried = view_model.state
    assert tried.curve.sag_mm == pytest.approx(31.3, abs=0.1)
    assert before.end_force == pytest.approx(2550, abs=15)
    assert tried.curve.end_force == pytest.approx(3060, abs=15)
    assert tried.kept == before


def test_unknown_sizes_give_a_band_in_loads_and_say_so(desk):
    state = SpringViewModel(desk, measured(desk)).state
    assert not state.curve.in_newton
    assert crossing(state.curve.travel_mm, state.curve.force, 1.0) == pytest.approx(32.0, abs=1.5)
    assert all(low <= high for low, high in zip(state.curve.low, state.curve.high, strict=True))
    assert "Typical chamber sizes are assumed" in state.remarks[0]


def test_more_pressure_on_paper_gives_less_sag_and_changes_no_record(desk):
    view_model = SpringViewModel(desk, measured(desk))
    label = desk.undo_label()
    view_model.show()
    view_model.try_value("pressure_kpa", round(85 * PSI))
    assert view_model.state.curve.sag_mm < view_model.state.kept.sag_mm
    assert desk.undo_label() == label
    view_model.as_measured()
    assert view_model.state.kept is None


def test_a_cold_morning_asks_for_more_here_and_leaves_the_clicks(desk):
    bench = measured(desk, kpa=80 * PSI)
    view_model = CarryViewModel(desk, bench)
    view_model.show()
    for name, text in (("here_c", "22"), ("there_c", "-3")):
        view_model.set_text(name, text)
    fork = view_model.state.rows[0]
    assert fork.set_here.replace("\u2009", " ") == "88.8 psi"
    assert fork.if_left.replace("\u2009", " ") == "72 psi"
    assert "slower rebound" in fork.reasons


def test_up_a_mountain_the_fork_is_left_alone(desk):
    view_model = CarryViewModel(desk, measured(desk, kpa=80 * PSI))
    view_model.show()
    for name, text in (("here_c", "15"), ("there_c", "15"), ("there_m", "2300")):
        view_model.set_text(name, text)
    fork = view_model.state.rows[0]
    assert fork.set_here.replace("\u2009", " ") == "80 psi"
    assert fork.shows_there.replace("\u2009", " ") == "83.6 psi"
    assert "leave it" in fork.reasons


def test_a_temperature_that_cannot_be_is_said_at_its_field(desk):
    view_model = CarryViewModel(desk, measured(desk))
    view_model.show()
    view_model.set_text("there_c", "900")
    entry = next(one for one in view_model.state.inputs if one.name == "there_c")
    assert (
        entry.problem.replace("\u2009", " ")
        == "Temperature at the ride: '900' cannot be used; allowed is -40 °C to 60 °C."
    )
    assert entry.text == "900"


PAIRS = ((10, 28.5), (20, 56.0), (30, 82.4), (40, 107.7), (50, 131.9), (60, 155.0))


def surveyed(desk):
    bench = Bench(desk)
    bench.put_bike(a_bike(desk).id)
    view_model = LeverageViewModel(desk, bench)
    view_model.show()
    for line, pair in enumerate(PAIRS):
        for column, value in enumerate(pair):
            view_model.set_pair(line, column, str(value))
    return view_model


def test_a_survey_is_fitted_as_it_is_typed_and_kept_as_one_step(desk):
    view_model = surveyed(desk)
    assert view_model.state.ratio is not None
    assert "falls" in view_model.state.said
    assert view_model.keep()
    assert desk.undo_label() == "Keep leverage survey, 6 points"
    assert not view_model.state.has_draft
    desk.undo()
    assert view_model.state.has_draft


def test_a_wheel_that_goes_back_is_named_and_nothing_typed_is_lost(desk):
    view_model = surveyed(desk)
    view_model.set_pair(3, 1, "20")
    assert view_model.state.wrong_line == 3
    assert not view_model.keep()
    assert view_model.state.pairs[3] == ("40", "20")


def test_half_a_pair_is_named_by_its_line(desk):
    view_model = surveyed(desk)
    view_model.set_pair(2, 1, "")
    assert "Line 3" in view_model.state.said


def test_a_negative_chamber_of_its_own_is_drawn_with_its_pressure_and_can_be_tried(desk):
    bench = measured(desk, negative_kpa=60 * PSI, **sizes(), negative="separate")
    view_model = SpringViewModel(desk, bench)
    view_model.show()
    measured_curve = view_model.state.curve
    assert measured_curve.in_newton
    assert [slider.name for slider in view_model.state.sliders] == ["pressure_kpa", "negative_kpa"]
    view_model.try_value("negative_kpa", round(90 * PSI))
    assert view_model.state.curve.sag_mm > measured_curve.sag_mm  # it pulls the unit into its travel
    assert view_model.state.kept == measured_curve
    assert view_model.state.curve.load == measured_curve.load


def test_without_the_negative_pressure_typical_sizes_are_assumed_and_it_says_why(desk):
    state = SpringViewModel(desk, measured(desk, **sizes(), negative="separate")).state
    assert not state.curve.in_newton
    assert "put in with the sag" in " ".join(state.remarks)


def test_the_sheet_opens_at_the_end_that_was_asked_for(desk):
    bench = measured(desk, end="rear", sag_mm=17.0)
    desk.set_setting(f"spring/end/{bench.bike_id}", "rear")
    assert SpringViewModel(desk, bench).state.end == "rear"
