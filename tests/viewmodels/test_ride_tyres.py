"""Tyres read on a run: named, noted, and the run set aside where one lost air."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.ride import end_session, ride_records
from workbench.viewmodels.review_export import runs_csv
from workbench.viewmodels.review_sessions import resolve_sides
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.shown import Units


@pytest.fixture
def bike(desk):
    """Both tyres are set to 160 kPa, 23.2 psi."""
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    return bike


@pytest.fixture
def riding(desk, bike):
    a_session(desk, bike)
    return shown(RideViewModel, desk, bike.id)


def last_run(desk, bike):
    return desk.ask(ride_records(bike.id)).sessions[-1].runs[-1]


def keep(view_model, **read):
    for name, text in {"liking": 6, **read}.items():
        view_model.set_run(name, text)
    return view_model.keep_run()


def test_a_reading_within_a_psi_is_kept_and_nothing_is_said(desk, bike, riding):
    view_model, _ = riding
    view_model.set_run("tyre_front", "23")
    assert view_model.state.session.entry.tyres == ""
    assert keep(view_model, tyre_rear="24 psi")
    run = last_run(desk, bike)
    assert run.tyre_front_kpa == pytest.approx(158.6, abs=0.1)
    assert run.tyre_rear_kpa == pytest.approx(165.5, abs=0.1)
    assert not run.is_set_aside


def test_a_tyre_that_lost_air_is_named_while_typing_and_sets_the_run_aside(desk, bike, riding):
    view_model, _ = riding
    view_model.set_run("tyre_rear", "20")
    said = view_model.state.session.entry.tyres
    assert said.startswith("Rear tyre 3.2\u2009psi below what it was set to. The run is set aside")
    assert keep(view_model)
    run = last_run(desk, bike)
    assert (run.is_set_aside, run.set_aside_reason) == (True, "Rear tyre lost air")
    assert "rear tyre 3.2\u2009psi below what it was set to" in view_model.state.session.runs[0].said
    view_model.set_aside(run.id, "")
    assert not last_run(desk, bike).is_set_aside


def test_a_tyre_warmed_by_riding_is_named_and_counts(desk, bike, riding):
    view_model, _ = riding
    assert keep(view_model, tyre_front="26")
    assert not last_run(desk, bike).is_set_aside
    assert "front tyre 2.8\u2009psi above" in view_model.state.session.runs[0].said


def test_both_tyres_that_lost_air_are_one_reason(desk, bike, riding):
    view_model, _ = riding
    assert keep(view_model, tyre_front="20", tyre_rear="19")
    assert last_run(desk, bike).set_aside_reason == "Front and rear tyre lost air"


@pytest.mark.parametrize("text", ["round", "-3", "1e9", "nan"])
def test_what_is_no_pressure_is_refused_at_its_field(riding, text):
    view_model, heard = riding
    assert not keep(view_model, tyre_front=text)
    assert heard.field == "tyre_front"
    assert view_model.state.session.entry.tyres == ""


def test_a_run_that_counts_with_a_drifted_tyre_is_named_beside_sessions_and_in_the_table(desk, bike):
    for read in (None, 185.0):
        session = a_session(desk, bike)
        a_run(desk, session, liking=6, tyre_front_kpa=read)
        desk.do("End", end_session(session.id), bike_id=bike.id)
    records = desk.ask(ride_records(bike.id))
    told = "The front tyre read more than 1 psi off on run 1 of 14 May 2031."
    assert resolve_sides(records, Units()).cautions[-1] == told
    heads, first, second = (line.split(",") for line in runs_csv(records, records.sessions).splitlines())
    place = heads.index("tyre_front_kpa")
    assert (first[place], second[place]) == ("", "185.0")
