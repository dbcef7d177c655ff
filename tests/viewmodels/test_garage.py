"""The bike's own sheet: facts in sections, each kept as it is left."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_session, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.model.bike import Station, StationState
from workbench.model.job import job_marks
from workbench.viewmodels.garage import GarageState, GarageViewModel


def sheet_of(desk, **about):
    bike = a_bike(desk, **about)
    return (bike, *shown(GarageViewModel, desk, bike.id))


def row(view_model, section, name):
    part = next(one for one in view_model.state.sections if section in (one.key, one.title))
    return next(one for one in part.rows if one.name == name), part.key


@pytest.mark.parametrize(
    ("layout", "titles"),
    [
        ("hardtail", ["Rider", "Bike", "Fork", "Front tyre", "Rear tyre"]),
        ("air_coil", ["Rider", "Bike", "Fork", "Shock", "Front tyre", "Rear tyre"]),
    ],
)
def test_a_layout_has_its_sections(desk, layout, titles):
    _, view_model, _ = sheet_of(desk, layout=layout)
    assert [one.title for one in view_model.state.sections] == titles
    names = {one.name for part in view_model.state.sections for one in part.rows}
    assert ("rear_travel_mm" in names) == (layout != "hardtail")
    assert ("preload_limit_mm" in names) == (layout == "air_coil")


def test_a_fact_is_kept_under_a_label_that_says_which(desk):
    _, view_model, _ = sheet_of(desk)
    assert view_model.set_fact(row(view_model, "Fork", "travel_mm")[1], "travel_mm", 160.0)
    assert row(view_model, "Fork", "travel_mm")[0].value == 160.0
    assert desk.undo_label() == "Fork: travel"
    desk.undo()
    assert row(view_model, "Fork", "travel_mm")[0].value == 150.0


def test_a_fact_left_as_it_was_is_no_deed(desk):
    _, view_model, _ = sheet_of(desk)
    label = desk.undo_label()
    assert view_model.set_fact("bike", "name", "Larch 150")
    assert desk.undo_label() == label


@pytest.mark.parametrize(
    ("section", "name", "value"),
    [
        ("Bike", "name", "x" * 10_000),
        ("Bike", "name", ""),
        ("Rider", "mass_kg", float("nan")),
        ("Fork", "travel_mm", -5.0),
        ("Fork", "spacer_limit", 2.5),
        ("Front tyre", "width_mm", 9e9),
    ],
    ids=["too long", "empty", "nan", "negative", "half a spacer", "absurd"],
)
def test_a_value_that_cannot_be_used_is_refused_at_its_field_and_changes_nothing(desk, section, name, value):
    _, view_model, heard = sheet_of(desk)
    before = everything(desk)
    key = row(view_model, section, name)[1]
    assert not view_model.set_fact(key, name, value)
    assert heard.field == f"{key}/{name}"
    assert everything(desk) == before


def test_a_lowest_pressure_above_the_highest_is_refused_at_its_field(desk):
    _, view_model, heard = sheet_of(desk)
    key = row(view_model, "Fork", "maximum_kpa")[1]
    assert view_model.set_fact(key, "maximum_kpa", 900.0)
    assert not view_model.set_fact(key, "minimum_kpa", 1000.0)
    assert heard.field == "fork/minimum_kpa"


def test_what_is_still_needed_before_sag_is_said(desk):
    _, view_model, _ = sheet_of(desk, rider="", mass_kg=None, fork_travel_mm=None)
    assert view_model.state.missing == "Still needed before sag: a rider, the fork's travel."
    _, view_model, _ = sheet_of(desk, mass_kg=None, shock_stroke_mm=None)
    assert view_model.state.missing == ("Still needed before sag: the rider's mass ready to ride, the shock's stroke.")
    _, view_model, _ = sheet_of(desk)
    assert view_model.state.missing == ""


def test_riders_are_chosen_and_added(desk):
    bike, view_model, heard = sheet_of(desk)
    other = desk.do("Add", add_person("J. Okoye"))
    assert view_model.state.others == ((other.id, "J. Okoye"),)
    view_model.choose_rider(other.id)
    assert [name for _, name in view_model.state.riders] == ["M. Anders", "J. Okoye"]
    assert [row.is_on_bench for row in view_model.state.rider_rows] == [False, True]
    assert next(part for part in view_model.state.sections if part.key == "rider").rows[0].value == "J. Okoye"
    view_model.make_main(other.id)
    assert [name for _, name in view_model.state.riders] == ["J. Okoye", "M. Anders"]
    view_model.add_new_rider("S. Tamm")
    assert len(desk.ask(bike_parts(bike.id)).riders) == 3
    assert not view_model.add_new_rider("x" * 10_000)
    assert heard.field == "rider"


def test_other_hardware_makes_counts_fall_due(desk):
    bike = a_counted_bike(desk)
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    view_model.new_hardware(fork.id, "oil")
    assert heard.labels == ["Oil change: counts and sag fall due"]
    assert "hardware no. 2" in row(view_model, "Fork", "travel_mm")[0].help + next(
        one.note for one in view_model.state.sections if one.title == "Fork"
    )
    marks = {mark.station: mark.state for mark in job_marks(desk.ask(job_records(bike.id)))}
    assert marks[Station.ADJUSTERS] == StationState.NOW


@pytest.mark.parametrize(("reason", "is_said"), [("oil", False), ("travel", True), ("chip", True), ("wheel", True)])
def test_hardware_that_moves_the_travel_asks_for_clearance_at_full_travel(desk, reason, is_said):
    bike = a_counted_bike(desk)
    view_model, _ = shown(GarageViewModel, desk, bike.id)
    view_model.new_hardware(desk.ask(bike_parts(bike.id)).unit("front").id, reason)
    fork = next(one for one in view_model.state.sections if one.title == "Fork")
    assert ("press it to full travel" in fork.parts.travel_care) is is_said


def test_a_bike_that_went_away_with_an_undone_step_leaves_an_empty_sheet(desk):
    _, view_model, heard = sheet_of(desk)
    desk.undo()
    assert view_model.state == GarageState()
    assert heard.problems == []


def test_a_sheet_out_of_sight_reads_only_when_shown_again(desk):
    _, view_model, heard = sheet_of(desk)
    view_model.hide()
    before = len(heard.states)
    desk.do("Other", add_person("J. Okoye"))
    assert len(heard.states) == before
    view_model.show()
    assert [name for _, name in heard.states[-1].others] == ["J. Okoye"]


def test_text_that_cannot_be_read_is_kept_and_shown_again(tmp_path):
    with make_desk(tmp_path) as desk:
        bike, view_model, _ = sheet_of(desk)
        found, key = row(view_model, "Fork", "travel_mm")
        view_model.keep_text(key, "travel_mm", "about 15 cm or so")
        label = desk.undo_label()
    with make_desk(tmp_path) as desk:
        view_model, _ = shown(GarageViewModel, desk, bike.id)
        assert row(view_model, "Fork", "travel_mm")[0].typed == "about 15 cm or so"
        assert row(view_model, "Fork", "travel_mm")[0].value == found.value
        assert desk.undo_label() == label, "what cannot be read is no deed"


def test_another_shock_is_fitted_and_what_hung_there_before_stands_below_it(desk):
    bike = a_counted_bike(desk)
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    rear = next(one for one in view_model.state.fits if one.end == "rear")
    assert (rear.kind, dict(rear.choices)) == ("air", {"air": "Air shock", "coil": "Coil shock", "rigid": "Rigid rear"})
    assert view_model.fit("rear", "coil", 65.0, "Marl coil")
    assert heard.labels == ["Fit another shock: Marl coil"]
    shock = next(one for one in view_model.state.sections if one.key == "shock")
    assert shock.parts.hardware == (
        "No. 2, 14 May 2031: Other unit fitted",
        "Before, until 14 May 2031: air shock, 60\u2009mm",
    )
    assert shock.parts.due == "Due on this hardware: count low-speed compression, low-speed rebound; measure rear sag."
    assert shock.parts.travel_care
    desk.undo()
    assert next(one for one in view_model.state.sections if one.key == "shock").parts.hardware[0].startswith("No. 1")


def test_a_hardtail_is_offered_a_shock_and_no_taking_off(desk):
    _, view_model, _ = sheet_of(desk, layout="hardtail")
    front, rear = view_model.state.fits
    assert (front.verb, rear.verb) == ("Exchange the fork ...", "Fit a shock ...")
    assert "rigid" not in dict(rear.choices)


def test_what_keeps_a_unit_from_being_fitted_is_said_at_its_field(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    assert not view_model.fit("front", "air", 4.0, "")
    assert heard.field == "fit_travel"
    assert not view_model.fit("front", "air", 150.0, "x" * 500)
    assert heard.field == "fit_name"
    a_session(desk, bike)
    assert not view_model.fit("front", "air", 150.0, "")
    assert (heard.field, "session is open" in heard.problems[-1].text) == ("fit_kind", True)


def test_a_count_half_done_on_the_old_unit_is_closed_with_it(desk):
    bike = a_counted_bike(desk)
    parts = desk.ask(bike_parts(bike.id))
    for adjuster in (parts.adjusters[0], parts.adjusters[-1]):
        desk.keep_draft("count", "{}", bike_id=bike.id, subject=adjuster.id)
    view_model, _ = shown(GarageViewModel, desk, bike.id)
    view_model.keep_text("fork", "travel_mm", "a hundred")
    view_model.keep_text("shock", "travel_mm", "sixty")
    desk.keep_draft("adjusters_typed", '{"spacers_fork": "two"}', bike_id=bike.id)
    assert view_model.fit("front", "air", 150.0, "")
    left = {one.subject for one in desk.drafts(bike.id)}
    assert left == {parts.adjusters[-1].id, f"{parts.unit('rear').id}/travel_mm"}


def test_the_earlier_fork_is_offered_back_by_its_name(desk):
    bike = a_counted_bike(desk)
    view_model, heard = shown(GarageViewModel, desk, bike.id)
    view_model.set_fact("fork", "name", "Tern 150")
    assert view_model.fit("front", "coil", 120.0, "")
    front = view_model.state.fits[0]
    key, words = front.choices[-1]
    assert words == "Back: Tern 150, air fork, 150\u2009mm"
    assert "its setups again" in front.note
    assert view_model.fit("front", key, None, "")
    assert heard.labels[-1] == "Fit the earlier fork again"
    assert desk.ask(bike_parts(bike.id)).unit("front").name == "Tern 150"
