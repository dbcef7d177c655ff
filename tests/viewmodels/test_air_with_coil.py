"""Forks with air and a coil, and with a coil in place of the negative chamber: no sheet leaves the coil out unsaid."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike
from tests.viewmodels.sheets import shown
from tests.viewmodels.test_carry import PSI, SIZES, SPACERS, carried, plain
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.model.unit import Unit
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.card import CardViewModel
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_draft import Stage
from workbench.viewmodels.spring import SpringViewModel

RATE = 3.0
COIL = {"rate_n_per_mm": RATE, "preload_mm": 4.0}


def a_fork(desk, *, layout="mix_air", **facts):
    bike = a_bike(desk, layout=layout, fork_travel_mm=160.0)
    fork = desk.ask(sag_records(bike.id)).parts.unit("front")
    for name, value in facts.items():
        desk.do("Fact", edit(Unit, fork.id, name, value))
    return bike, fork


def at_advice(desk, *, pressure="60", reading="42", coil=COIL, layout="mix_air", **facts):
    """The sag sheet of a fork with 42 mm of 160 at 60 psi."""
    bike, _ = a_fork(desk, layout=layout, **facts)
    view_model, heard = shown(SagViewModel, desk, bike.id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.set_field("target_low", 0.18)
    view_model.set_field("target_high", 0.22)
    assert view_model.next(), heard.problems
    view_model.set_text("pressure_kpa", pressure)
    for name, value in coil.items():
        view_model.set_field(name, value)
    view_model.set_field("spacers", 0)
    assert view_model.next(), heard.problems
    for _ in range(2):
        view_model.add_reading(reading)
    assert view_model.next(), heard.problems
    return view_model, heard


def psi(view_model):
    return float(view_model.state.guide.advice.number)


def measured(desk, *, coil=COIL, **facts):
    """A fork at 60 psi with 40 mm of sag, kept."""
    bike, fork = a_fork(desk, **facts)
    rider = desk.ask(sag_records(bike.id)).rider
    one = SagRound((40.0, 40.0), "standing", "helper", desk.now(), 60 * PSI, spacers=0, **coil)
    desk.do("Keep sag", keep_sag(bike.id, rider.id, fork.id, (one,), Band(0.18, 0.22, "own")))
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def spring(desk, bench):
    view_model = SpringViewModel(desk, bench)
    view_model.show()
    return view_model


def test_the_sag_sheet_asks_for_pressure_and_coil(desk):
    bike, _ = a_fork(desk)
    view_model, _ = shown(SagViewModel, desk, bike.id)
    view_model.start("front")
    guide = view_model.state.guide
    assert (guide.is_air, guide.has_coil) == (True, True)
    view_model.go_to_stage(Stage.SPRING)
    assert "rate and preload of the coil" in view_model.state.guide.spring_ask


def test_with_a_coil_beside_it_the_air_has_to_change_by_more(desk):
    with_coil, _ = at_advice(desk, **SIZES)
    advice = with_coil.state.guide.advice
    assert "The coil beside the air is reckoned with." in advice.reason
    beside = psi(with_coil)
    # 42 mm at 60 psi with 3 N/mm from 4 mm on: 138 N of the load are the coil's.
    without, _ = at_advice(desk, layout="air_air", coil={}, **SIZES)
    assert beside > psi(without) + 3


def test_without_sizes_the_coil_is_reckoned_with_and_the_range_is_wider(desk):
    with_coil, _ = at_advice(desk)
    without, _ = at_advice(desk, layout="air_air", coil={})
    one, other = with_coil.state.guide.advice, without.state.guide.advice
    assert "piston's area" in one.reason
    assert one.predicted_high_mm - one.predicted_low_mm > other.predicted_high_mm - other.predicted_low_mm


def test_a_coil_of_unknown_rate_is_said_to_be_left_out_and_no_range_is_claimed(desk):
    view_model, _ = at_advice(desk, coil={})
    advice = view_model.state.guide.advice
    assert "its rate is not stated" in advice.reason
    assert advice.expected == ""
    assert advice.predicted_low_mm is None
    assert "Settled" not in advice.outcome


def test_a_negative_coil_asks_for_less_and_says_why_the_range_is_wide(desk):
    back, _ = at_advice(desk, layout="air_air", coil={}, negative="coil")
    chamber, _ = at_advice(desk, layout="air_air", coil={})
    assert 60 < psi(back) < psi(chamber)
    assert "in place of the negative chamber" in back.state.guide.advice.reason


def test_too_much_preload_and_coil_bind_hold_beside_air_too(desk):
    bike, _ = a_fork(desk, preload_limit_mm=5.0)
    view_model, heard = shown(SagViewModel, desk, bike.id)
    view_model.start("front")
    view_model.set_field("as_they_stand", True)
    view_model.next()
    view_model.set_text("pressure_kpa", "60")
    view_model.set_field("preload_mm", 6.0)
    assert not view_model.next()
    assert heard.field == "preload_mm"
    view_model.set_field("preload_mm", 4.0)
    view_model.set_field("spring_stroke_mm", 150.0)
    assert not view_model.next()
    assert heard.field == "spring_stroke_mm"


def test_the_curve_holds_the_coil_and_lets_its_rate_be_tried(desk):
    bench = measured(desk, **SIZES)
    view_model = spring(desk, bench)
    curve = view_model.state.curve
    assert curve.in_newton
    assert curve.force[0] == pytest.approx(RATE * 4.0)
    assert curve.sag_mm == pytest.approx(40.0, abs=0.01)
    assert "The coil beside the air is reckoned with." in view_model.state.remarks
    view_model.try_value("rate_n_per_mm", 5)
    assert view_model.state.curve.sag_mm < 40.0
    assert view_model.state.curve.load == pytest.approx(curve.load)


@pytest.mark.parametrize(
    ("facts", "coil", "words"),
    [
        ({}, COIL, "piston's area"),
        ({}, {}, "its rate is not stated"),
        ({"negative": "coil"}, COIL, "in place of the negative chamber"),
        (SIZES, {}, "its rate is not stated"),
    ],
)
def test_the_spring_sheet_says_how_far_the_coil_is_reckoned_with(desk, facts, coil, words):
    state = spring(desk, measured(desk, coil=coil, **facts)).state
    assert not state.curve.in_newton
    assert words in " ".join(state.remarks)


def test_another_rider_changes_the_air_by_more_than_the_load(desk):
    bench = measured(desk, **SIZES, **SPACERS)
    plain_fork = carried(desk, bench, rider_kg="93").rows[0]
    assert "of the load as before; the air takes all of the change" in plain_fork.reasons
    assert float(plain(plain_fork.set_here).split()[0]) > 60 + 0.1 * (60 + 14.7) + 2


def test_without_sizes_the_carry_sheet_says_that_the_coil_asks_for_more(desk):
    row = carried(desk, measured(desk), rider_kg="93").rows[0]
    assert "answers nothing to another rider" in row.reasons
    assert "answers nothing" not in carried(desk, measured(desk), there_c="0").rows[0].reasons


def test_spacers_beside_a_coil_keep_the_sag(desk):
    as_it_is, linked, left, _ = carried(desk, measured(desk, **SIZES, **SPACERS), spacers_front="2").rows[0].ways
    assert as_it_is.sag == linked.sag
    assert float(left.sag.split("\u2009")[0]) < 40


def test_the_card_says_to_measure_where_a_coil_carries_part_of_a_heavier_rider(desk):
    bench = measured(desk, **SIZES)
    a_baseline(desk, desk.ask(bike_parts(bench.bike_id)).bike)
    card = CardViewModel(desk, bench).read().card
    lines = {plain(one.found): one for section in card.sections for one in section.lines if "Fork" in one.label}
    assert (lines["with 5 kg more"].left, lines["with 5 kg more"].remark) == (
        "measure sag",
        "a coil beside the air carries part of the load",
    )
