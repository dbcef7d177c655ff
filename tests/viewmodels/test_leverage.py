"""The leverage survey: how it is read, and mountings side by side."""

from __future__ import annotations

import re

import pytest

from tests.fixtures import a_bike
from tests.viewmodels.sheets import shown
from workbench.actions.sag import keep_sag, sag_records
from workbench.actions.spring import keep_survey, state_mounting
from workbench.model.sag_rules import Band, SagRound
from workbench.model.unit import Unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.leverage import LeverageViewModel
from workbench.viewmodels.leverage_draft import SurveyDraft, read_other_way, read_survey
from workbench.viewmodels.shown import Units

STROKES = (10.0, 20.0, 30.0, 40.0, 50.0, 60.0)


def a_sheet(desk, *ratios, with_sag=True):
    """A coil bike with one straight survey a ratio, named by it, oldest first."""
    bike = a_bike(desk, layout="air_coil")
    records = desk.ask(sag_records(bike.id))
    shock = records.parts.unit("rear")
    for ratio in ratios:
        pairs = [(stroke, ratio * stroke) for stroke in STROKES]
        desk.do("Keep", keep_survey(bike.id, shock.id, str(ratio), pairs, reading_sd_mm=0.05), bike_id=bike.id)
    if with_sag:
        one = SagRound((16.0, 16.0), "standing", "helper", desk.now(), rate_n_per_mm=80.0)
        desk.do("Sag", keep_sag(bike.id, records.rider.id, shock.id, (one,), Band(0.25, 0.3, "own")), bike_id=bike.id)
    bench = Bench(desk)
    bench.put_bike(bike.id)
    view_model = LeverageViewModel(desk, bench)
    view_model.show()
    return view_model


def row(view_model, name):
    return next(one for one in view_model.state.mountings.rows if one.name == name)


def typed(view_model, pairs):
    for line, pair in enumerate(pairs):
        for column, text in enumerate(pair):
            view_model.set_pair(line, column, text)


def test_mountings_stand_side_by_side_with_the_sag_each_would_give(desk):
    view_model = a_sheet(desk, 2.75, 2.5)
    state = view_model.state.mountings
    assert "Nobody has said" in state.remark
    there = row(view_model, "2.75").cells
    assert there[0] == "2.75"
    assert there[2].startswith("17.6")  # 16 mm times 2.75 / 2.5, by virtual work
    assert "\u221217" in there[4]  # the wheel rate goes with 1 / R^2
    assert [line.is_strong for line in view_model.state.ratio.lines] == [True, False]
    assert [line.name for line in view_model.state.ratio.lines] == ["2.5", "2.75"]


def test_saying_the_mounting_is_one_step_and_moves_nothing(desk):
    view_model = a_sheet(desk, 2.75, 2.5)
    view_model.state_mounting(row(view_model, "2.75").survey_id)
    assert desk.undo_label() == "Shock is in mounting 2.75"
    assert row(view_model, "2.75").is_in_use
    assert row(view_model, "2.75").cells[2].startswith("16")
    assert row(view_model, "2.5").move_verb
    desk.undo()
    assert not row(view_model, "2.75").is_in_use


def test_moving_the_shock_makes_sag_due_and_says_so(desk):
    view_model = a_sheet(desk, 2.75, 2.5)
    view_model.state_mounting(row(view_model, "2.5").survey_id)
    view_model.move_mounting(row(view_model, "2.75").survey_id)
    assert "sag fall due" in desk.undo_label()
    assert row(view_model, "2.75").is_in_use
    assert "Measure the rear sag" in view_model.state.mountings.remark
    assert row(view_model, "2.5").cells[2] == "–"


def test_without_a_kept_sag_the_mountings_are_compared_by_ratio_alone(desk):
    view_model = a_sheet(desk, 2.75, 2.5, with_sag=False)
    assert row(view_model, "2.75").cells[0] == "2.75"
    assert row(view_model, "2.75").cells[2:] == ("–", "–", "–")


def test_a_spring_that_would_not_carry_the_rider_is_said_in_its_row(desk):
    view_model = a_sheet(desk, 9.5, 2.5)
    assert "all of its travel" in row(view_model, "9.5").cells[2]


def test_the_survey_of_the_mounting_in_use_is_the_one_shown(desk):
    view_model = a_sheet(desk, 2.75, 2.5)
    assert view_model.state.mounting == "2.5"
    view_model.look_at(row(view_model, "2.75").survey_id)
    assert view_model.state.mounting == "2.75"
    assert view_model.state.ratio.lines[0].name == "2.75"


def test_points_go_in_in_any_order_and_by_the_shocks_length(desk):
    view_model = a_sheet(desk, with_sag=False)
    view_model.read_by("length")
    view_model.set_extended("210")
    typed(view_model, (("150", "155"), ("200", "28.5"), ("170", "107.7"), ("190", "56")))
    assert "155" in view_model.state.said
    assert view_model.keep()
    assert desk.ask(lambda r: r.find(Unit, kind="shock"))[0].eye_to_eye_mm == 210.0
    assert [pair[0] for pair in view_model.state.pairs][:4] == ["10\u2009mm", "20\u2009mm", "40\u2009mm", "60\u2009mm"]


def test_the_length_at_no_wheel_travel_is_full_extension(desk):
    view_model = a_sheet(desk, with_sag=False)
    view_model.read_by("length")
    typed(view_model, (("190", "56"), ("150", "155"), ("170", "107.7")))
    assert "Extended, eye to eye" in view_model.state.said
    assert view_model.state.is_wrong
    view_model.set_pair(3, 0, "210")
    view_model.set_pair(3, 1, "0")
    assert not view_model.state.is_wrong


def test_a_length_beyond_full_extension_is_named_by_its_line(desk):
    view_model = a_sheet(desk, with_sag=False)
    view_model.read_by("length")
    view_model.set_extended("200")
    typed(view_model, (("190", "28"), ("205", "40")))
    assert view_model.state.wrong_line == 1
    assert "Line 2" in view_model.state.said


@pytest.mark.parametrize("order", [(0, 1, 2, 3, 4, 5), (5, 2, 0, 4, 3, 1), (3, 5, 1, 0, 2, 4)])
def test_a_wheel_that_goes_back_is_named_by_the_line_it_was_typed_in(desk, order):
    view_model = a_sheet(desk, with_sag=False)
    pairs = [(stroke, 2.6 * stroke) for stroke in STROKES]
    pairs[3] = (40.0, 20.0)
    typed(view_model, [tuple(map(str, pairs[place])) for place in order])
    assert view_model.state.wrong_line == order.index(3)
    assert "cannot go back" in view_model.state.said
    assert not view_model.keep()
    assert view_model.state.pairs[order.index(3)] == ("40.0", "20.0")
    assert view_model.state.travel.odd == order.index(3)


def test_turning_from_stroke_to_length_turns_the_numbers_over_where_that_can_be():
    units = Units()
    draft = SurveyDraft((("10", "28"), ("x", "3")), extended="210")
    turned = read_other_way(draft, units)
    assert turned.by_length
    assert turned.pairs == (("200\u2009mm", "28"), ("x", "3"))
    assert read_survey(SurveyDraft(turned.pairs[:1], by_length=True, extended="210"), units).stroke_mm == (10.0,)
    unknown = read_other_way(SurveyDraft((("10", "28"),)), units)
    assert unknown.pairs == (("10", "28"),)


def test_how_exactly_the_wheel_was_read_is_kept_and_widens_the_band(desk):
    view_model = a_sheet(desk, with_sag=False)
    typed(view_model, [(str(stroke), str(2.6 * stroke)) for stroke in STROKES])
    narrow = view_model.state.ratio.lines[0]
    view_model.set_exact_to("3")
    wide = view_model.state.ratio.lines[0]
    assert wide.high[0] - wide.low[0] > narrow.high[0] - narrow.low[0]
    view_model.set_exact_to("90")
    assert "Wheel read to within" in view_model.state.said
    view_model.set_exact_to("3")
    assert view_model.keep()
    assert view_model.state.exact_to.startswith("3")


def test_a_draft_of_before_lengths_were_read_still_opens():
    assert SurveyDraft.from_json('{"pairs": [["10", "28"]], "mounting": "long"}') == SurveyDraft(
        (("10", "28"),), "long"
    )


def test_a_discarded_survey_can_be_taken_back(desk):
    view_model = a_sheet(desk, with_sag=False)
    typed(view_model, (("10", "28"),))
    found = []
    view_model.discarded.connect(lambda label, key: found.append(key))
    view_model.discard()
    assert not view_model.state.has_draft
    view_model.take_back_draft(found[0])
    assert view_model.state.pairs[0] == ("10", "28")


def test_air_sizes_unknown_still_compare_by_share(desk):
    bike = a_bike(desk)
    records = desk.ask(sag_records(bike.id))
    shock = records.parts.unit("rear")
    for ratio in (2.4, 2.7):
        pairs = [(stroke, ratio * stroke) for stroke in STROKES]
        desk.do("Keep", keep_survey(bike.id, shock.id, str(ratio), pairs), bike_id=bike.id)
    desk.do("Say", state_mounting(shock.id, "2.4"), bike_id=bike.id)
    one = SagRound((17.0, 17.0), "standing", "helper", desk.now(), 1240.0)
    desk.do("Sag", keep_sag(bike.id, records.rider.id, shock.id, (one,), Band(0.25, 0.3, "own")), bike_id=bike.id)
    bench = Bench(desk)
    bench.put_bike(bike.id)
    view_model = LeverageViewModel(desk, bench)
    assert row(view_model, "2.7").cells[4].endswith("%")
    assert float(row(view_model, "2.7").cells[2].split()[0]) > 17.0


def test_a_mounting_with_an_endless_name_is_refused_and_kept_as_typed(desk):
    view_model = a_sheet(desk, with_sag=False)
    typed(view_model, [(str(stroke), str(2.6 * stroke)) for stroke in STROKES])
    view_model.set_mounting("x" * 500)
    refused = []
    view_model.refused.connect(refused.append)
    assert not view_model.keep()
    assert refused[0].field == "mounting"
    assert view_model.state.mounting == "x" * 500
    view_model.set_mounting("<b>low</b>")
    assert view_model.keep()
    assert view_model.state.mountings.rows[0].name == "<b>low</b>"


def test_while_half_a_pair_is_typed_the_curve_of_the_others_stays(desk):
    view_model = a_sheet(desk, with_sag=False)
    typed(view_model, [(str(stroke), str(2.6 * stroke)) for stroke in STROKES])
    before = view_model.state.ratio
    view_model.set_pair(6, 0, "65")
    assert view_model.state.ratio.lines == before.lines
    assert "Line 7 has only one" in view_model.state.said
    assert not view_model.state.is_wrong
    refused = []
    view_model.refused.connect(refused.append)
    assert not view_model.keep()
    assert refused[0].field == "line_6"


def test_a_curve_is_said_with_how_far_its_ends_are_known(desk):
    view_model, _ = shown(LeverageViewModel, desk, a_bike(desk).id)
    for line, pair in enumerate(((10, 28.5), (20, 56.0), (30, 82.4), (40, 107.7), (50, 131.9), (60, 155.0))):
        for column, value in enumerate(pair):
            view_model.set_pair(line, column, str(value))
    assert "From start to end the ratio falls by" in view_model.state.said
    assert re.search(
        r"nine times in ten it begins at 2\.\d\d to 3\.\d\d and ends at \d\.\d\d to", view_model.state.said
    )
