"""The curve of a progressive or dual spring: its table, where the rider sits in it, and where it ends."""

from __future__ import annotations

import pytest

from tests.viewmodels.test_coil import coil_bike, opened, plain, typed
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.viewmodels.coil_entries import TABLE
from workbench.viewmodels.spring import SpringViewModel

STOP_MM = 10 + 800 / 120  # where the stopped spring meets its stop, at 800 N


def fitted(desk, *, both_mm="62", sag_mm=23.45, preload_mm=1.0):
    """A dual spring on the shock, fitted by its sheet, and sag measured with it."""
    bench = coil_bike(desk)
    view_model = opened(desk, bench, TABLE)
    view_model.choose("two")
    typed(view_model, stopped_rate="80 N/mm", stop_mm="10", other_rate="120 N/mm", both_mm=both_mm)
    assert view_model.fit_result()
    about = view_model._entries.about()
    rider = desk.ask(sag_records(bench.bike_id)).rider
    rate = about.rate_line.value
    one = SagRound((sag_mm,) * 2, "standing", "helper", desk.now(), rate_n_per_mm=rate, preload_mm=preload_mm)
    desk.do("Sag", keep_sag(bench.bike_id, rider.id, about.unit.id, (one,), Band(0.28, 0.32, "own")))
    return bench


def sheet(desk, bench):
    view_model = SpringViewModel(desk, bench)
    view_model.show()
    view_model.pick_end("rear")
    return view_model


def found(view_model):
    return {plain(label): plain(text) for label, text in view_model.state.findings}


def test_the_curve_is_the_table_and_bends_where_the_stop_is_met(desk):
    curve = sheet(desk, fitted(desk)).state.curve
    force = dict(zip(curve.travel_mm, curve.force, strict=True))
    assert force[0.0] == pytest.approx(48.0)  # 1 mm of preload on both in a row, 48 N/mm
    assert force[STOP_MM - 1] == pytest.approx(800.0)
    assert curve.force[-1] == pytest.approx(800 + (57.5 + 1 - STOP_MM) * 120)
    assert curve.quick == curve.force
    assert curve.ends_mm is None


def test_sag_rate_and_end_force_are_read_off_the_table(desk):
    view_model = sheet(desk, fitted(desk))
    curve = view_model.state.curve
    assert curve.sag_mm == pytest.approx(23.45)
    assert curve.load == pytest.approx(800 + (24.45 - STOP_MM) * 120)
    assert curve.rate_at_sag == pytest.approx(120.0)
    assert found(view_model)["Preload force"] == "48 N"
    assert found(view_model)["End force"] == f"{curve.force[-1]:.0f} N"


def test_a_table_that_ends_before_the_stroke_is_said_with_the_place(desk):
    view_model = sheet(desk, fitted(desk, both_mm="58.5"))
    assert view_model.state.curve.ends_mm is None, "58.5 mm are just enough for 57.5 mm and 1 mm of preload"


def test_a_table_too_short_for_the_preload_ends_early_and_the_curve_with_it(desk):
    bench = fitted(desk, both_mm="58.5", preload_mm=3.0, sag_mm=20.0)
    view_model = sheet(desk, bench)
    assert view_model.state.curve.travel_mm[-1] == pytest.approx(55.5)
    assert "At 55.5 mm, its table's end" in found(view_model)
    assert "End force" not in found(view_model)
    assert "table ends before the stroke" in " ".join(view_model.state.remarks)


def test_another_rate_on_paper_is_a_straight_line_beside_the_table(desk):
    view_model = sheet(desk, fitted(desk))
    view_model.try_value("rate_n_per_mm", 90)
    curve, kept = view_model.state.curve, view_model.state.kept
    assert curve.force[-1] == pytest.approx(90 * 58.5)
    assert curve.load == kept.load
    assert curve.sag_mm == pytest.approx(curve.load / 90 - 1)
    assert kept.rate_at_sag == pytest.approx(120.0)


def test_a_rate_too_soft_for_the_rider_has_no_sag_and_says_so(desk):
    view_model = sheet(desk, fitted(desk))
    view_model.try_value("rate_n_per_mm", 20)
    assert view_model.state.curve.sag_mm is None
    assert "Sag here" not in found(view_model)
    assert "too soft" in " ".join(view_model.state.remarks)


def test_a_table_taken_from_the_list_leaves_a_straight_line(desk):
    bench = fitted(desk)
    coil = opened(desk, bench, "at_hand")
    coil.choose("own")
    coil.remove(coil.state.sheet.springs[0].key)
    curve = sheet(desk, bench).state.curve
    rises = {round(b - a, 9) for a, b in zip(curve.force, curve.force[1:], strict=False)}
    assert len(rises) == 1


def test_a_spring_of_one_rate_fitted_afterwards_is_straight_again(desk):
    bench = fitted(desk)
    rider = desk.ask(sag_records(bench.bike_id)).rider
    shock = desk.ask(sag_records(bench.bike_id)).parts.unit("rear")
    one = SagRound((20.0, 20.0), "standing", "helper", desk.now(), rate_n_per_mm=88.0, preload_mm=1.0)
    desk.do("Sag", keep_sag(bench.bike_id, rider.id, shock.id, (one,), Band(0.28, 0.32, "own")))
    assert sheet(desk, bench).state.curve.rate_at_sag == 88.0
