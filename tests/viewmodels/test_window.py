"""The window's state: the list, the job line, the title block, undo."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.fixtures import Clock, a_bike, a_counted_bike, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.edit import edit
from workbench.actions.garage import GarageRow, ListedBike, NewBike, add_bike
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.model.bike import Bike, Station, StationState
from workbench.model.person import Person
from workbench.viewmodels import window
from workbench.viewmodels.window import DRAFT_STATIONS, NEW_BIKE, SHEETS, WindowViewModel, resolve_rows
from workbench.viewmodels.window_state import findable


def names(rows):
    return [row.name for row in rows]


ROWS = (
    GarageRow(ListedBike("1", "Larch 150", tags="customer, red"), ("M. Anders",)),
    GarageRow(ListedBike("2", "Tarn <b>"), ("J. Okoye", "M. Anders")),
    GarageRow(ListedBike("3", "Straße"), ()),
)


@pytest.mark.parametrize(
    ("search", "found"),
    [
        ("", ["Larch 150", "Tarn <b>", "Straße"]),
        ("anders", ["Larch 150", "Tarn <b>"]),
        ("ANDERS okoye", ["Tarn <b>"]),
        ("red 150", ["Larch 150"]),
        ("strasse", ["Straße"]),
        ("<b>", ["Tarn <b>"]),
        ("nothing", []),
        ("%", []),
    ],
)
def test_every_word_searched_for_occurs_in_name_rider_or_tags(search, found):
    assert names(resolve_rows(map(findable, ROWS), search)) == found


def test_a_bike_without_rider_says_so():
    assert resolve_rows(map(findable, ROWS), "")[2].rider == "no rider yet"


def test_an_empty_garage_and_a_search_without_a_find_are_two_things(desk):
    view_model, _ = shown(WindowViewModel, desk)
    assert view_model.state.garage_is_empty
    a_bike(desk)
    assert not view_model.state.garage_is_empty
    view_model.search("nothing like it")
    assert view_model.state.rows == ()
    assert not view_model.state.garage_is_empty


def test_a_bike_opens_at_the_station_that_is_due(desk):
    bike = a_counted_bike(desk)
    view_model, _ = shown(WindowViewModel, desk)
    view_model.open_bike(bike.id)
    state = view_model.state
    assert (state.bike_name, state.station) == ("Larch 150", Station.SAG)
    assert state.rider_text.startswith("M. Anders")
    assert "84.5" in state.rider_text
    assert dict(state.cells)["Setup"] == "before no. 1"
    assert [mark.station for mark in state.marks if mark.state == StationState.NOW] == [Station.SAG]


def test_what_is_due_is_said_for_the_list_and_forgotten_when_it_changes(desk):
    bike = a_counted_bike(desk)
    view_model, _ = shown(WindowViewModel, desk)
    assert view_model.due(bike.id) == "sag: front due; clicks to put back"
    desk.do("Skip", lambda gate: gate.put(_skip(bike.id)), bike_id=bike.id)
    assert view_model.due(bike.id).startswith("baseline: no setup yet")


def _skip(bike_id):
    from workbench.model.bike import Skip

    return Skip("s", bike_id, Station.SAG, "Done elsewhere", "2031-05-14T09:00:00+00:00")


def test_the_bike_and_station_are_there_again_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        shown(WindowViewModel, desk)[0].open_bike(bike.id)
    with make_desk(tmp_path) as desk:
        state = shown(WindowViewModel, desk)[0].state
        assert (state.bike_id, state.station) == (bike.id, Station.CHECKIN)


def test_undo_within_one_start_is_done_at_once_and_goes_to_the_bike_it_belongs_to(desk):
    bike, other = a_bike(desk), a_bike(desk, name="Fell 130", rider="A. Lindqvist")
    view_model, heard = shown(WindowViewModel, desk, other.id)
    desk.do("Bike: tags", edit(Bike, bike.id, "tags", "red"), bike_id=bike.id, station="garage")
    assert view_model.state.undo_text == "Bike: tags"
    view_model.undo()
    state = view_model.state
    assert (state.bike_id, state.station, state.redo_text) == (bike.id, "garage", "Bike: tags")
    view_model.redo()
    assert view_model.state.undo_text == "Bike: tags"
    assert heard.problems == []


def test_a_step_from_an_earlier_start_is_offered_in_words_before_it_is_undone(tmp_path):
    clock = Clock()
    with make_desk(tmp_path, now=clock) as desk:
        bike = a_bike(desk)
        desk.do("Bike: tags", edit(Bike, bike.id, "tags", "red"), bike_id=bike.id, station="garage")
    with make_desk(tmp_path, now=clock) as desk:
        view_model, _ = shown(WindowViewModel, desk)
        offers = []
        view_model.undo_offered.connect(offers.append)
        view_model.undo()
        assert len(offers) == 1
        assert offers[0].startswith("Undo “Bike: tags” on Larch 150, 14 May 2031")
        assert desk.ask(lambda reader: reader.get(Bike, bike.id)).tags == "red"
        view_model.undo(offered=False)
        assert desk.ask(lambda reader: reader.get(Bike, bike.id)).tags == ""


def test_undoing_the_bike_on_the_bench_clears_the_bench(desk):
    bike = a_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    view_model.undo()
    assert view_model.state.bike_id is None
    assert heard.problems == []
    view_model.redo()
    assert names(view_model.state.rows) == ["Larch 150"]


def test_undo_and_redo_with_nothing_to_do_do_nothing(desk):
    view_model, heard = shown(WindowViewModel, desk)
    view_model.undo()
    view_model.redo()
    assert heard.problems == []


def test_a_bike_put_away_is_listed_in_the_archive_only_and_comes_back(desk):
    bike = a_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    view_model.archive()
    assert (view_model.state.rows, view_model.state.bike_id) == ((), None)
    view_model.show_archive(True)
    assert names(view_model.state.rows) == ["Larch 150"]
    view_model.open_bike(bike.id)
    assert view_model.state.is_archived
    view_model.archive()
    view_model.show_archive(False)
    assert names(view_model.state.rows) == ["Larch 150"]
    assert heard.labels == ["Put away Larch 150", "Bring back Larch 150"]


def test_a_station_is_skipped_with_a_reason_and_taken_up_again(desk):
    bike = a_counted_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    view_model.skip(Station.SAG, "Done elsewhere")
    marks = {mark.station: mark for mark in view_model.state.marks}
    assert (marks[Station.SAG].state, marks[Station.SAG].why) == (StationState.SKIPPED, "Done elsewhere")
    view_model.unskip(Station.SAG)
    assert {mark.station: mark for mark in view_model.state.marks}[Station.SAG].state == StationState.NOW
    assert heard.labels == ["Skip sag", "Take up sag"]
    view_model.skip(Station.SAG, "x" * 10_000)
    assert heard.problems


def test_whoever_works_here_can_stand_at_the_bench_and_sets_the_units(desk):
    bike = a_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    assert dict(view_model.state.cells)["By"] == "choose"
    assert view_model.add_bench_person("B. Halloran")
    assert dict(view_model.state.cells)["By"] == "B. Halloran"
    assert [name for _, name in view_model.state.people] == ["B. Halloran"]
    other = desk.do("Add", add_person("Second", works_here=True))
    view_model.seat(other.id)
    assert view_model.state.person_id == other.id
    assert not view_model.add_bench_person("x" * 10_000)
    assert heard.field == "name"


def test_a_new_bike_is_entered_on_a_sheet_of_its_own(desk):
    view_model, _ = shown(WindowViewModel, desk)
    view_model.new_bike()
    assert view_model.state.station == NEW_BIKE
    assert dict(view_model.state.cells)["Sheet"] == "New bike"


def test_an_entry_under_way_calls_back_to_its_station(desk):
    bike = a_counted_bike(desk)
    view_model, _ = shown(WindowViewModel, desk, bike.id)
    desk.keep_draft("baseline", "{}", bike_id=bike.id)
    marks = {mark.station: mark.why for mark in view_model.state.marks}
    assert marks[Station.BASELINE] == "entry under way"
    assert "clicks to put back" not in view_model.due(bike.id)


def test_a_skipped_station_says_so_and_a_sheet_that_is_no_station_cannot_be_skipped(desk):
    bike = a_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    view_model.open_station(Station.SAG)
    view_model.skip(Station.SAG, "No time")
    assert (view_model.state.can_skip, view_model.state.is_skipped) == (True, True)
    view_model.unskip(Station.SAG)
    assert not view_model.state.is_skipped
    kept = len(heard.labels)
    for sheet in SHEETS:
        view_model.open_station(sheet)
        assert not view_model.state.can_skip
        view_model.skip(sheet, "No time")
    assert len(heard.labels) == kept


def test_a_rider_changed_on_one_bike_changes_what_is_due_on_the_others(desk):
    first = a_bike(desk, mass_kg=None)
    rider = desk.ask(bike_parts(first.id)).riders[0]
    second = desk.do("Add", add_bike(NewBike("Fell 130", rider_id=rider.id)), station="garage")
    view_model, _ = shown(WindowViewModel, desk, first.id)
    assert view_model.due(second.id) == "garage: rider's mass missing"
    desk.do("Mass", edit(Person, rider.id, "mass_kg", 80.0), bike_id=first.id)
    assert view_model.due(second.id) == "garage: fork travel missing"


def test_every_kind_of_entry_calls_back_to_a_station():
    folder = Path(window.__file__).parent
    found = (
        re.findall(r'^(?:\w+_)?(?:DRAFT|COUNT|TYPED) = "(\w+)"$', path.read_text(encoding="utf-8"), re.MULTILINE)
        for path in folder.glob("*.py")
    )
    kinds = {kind for some in found for kind in some} - {"new_bike"}  # an entry of no bike yet
    assert len(kinds) >= 8
    assert kinds == set(DRAFT_STATIONS)


def test_a_notice_undoes_the_step_it_speaks_of_or_none(desk):
    bike = a_bike(desk)
    view_model, heard = shown(WindowViewModel, desk, bike.id)
    desk.do("Keep range", edit(Bike, bike.id, "note", "counted"), bike_id=bike.id, station="garage")
    desk.do("Bike: tags", edit(Bike, bike.id, "tags", "red"), bike_id=bike.id, station="garage")
    view_model.undo_named("Keep range")
    assert desk.undo_label() == "Bike: tags"
    assert "Something else" in heard.problems[-1].text
    view_model.undo_named("Bike: tags")
    assert desk.undo_label() == "Keep range"


def test_an_offer_to_undo_does_not_take_back_what_was_done_after_it(tmp_path):
    clock = Clock()
    with make_desk(tmp_path, now=clock) as desk:
        bike = a_bike(desk)
    with make_desk(tmp_path, now=clock) as desk:
        view_model, heard = shown(WindowViewModel, desk, bike.id)
        view_model.undo()
        desk.do("Bike: tags", edit(Bike, bike.id, "tags", "red"), bike_id=bike.id, station="garage")
        view_model.undo(offered=False)
        assert desk.undo_label() == "Bike: tags"
        assert len(heard.problems) == 1


def test_a_letter_typed_into_an_entry_reads_nothing_anew_but_an_entry_begun_or_closed_does(desk, monkeypatch):
    bike = a_counted_bike(desk)
    view_model, _ = shown(WindowViewModel, desk, bike.id)
    reads = []
    monkeypatch.setattr(view_model, "refresh", lambda: reads.append(1))
    draft = desk.keep_draft("sag", "{}", bike_id=bike.id, subject="fork")
    assert len(reads) == 1
    desk.keep_draft("sag", '{"a": 1}', bike_id=bike.id, subject="fork")
    assert len(reads) == 1
    desk.do("Close it", lambda gate: gate.remove_draft(draft.id), bike_id=bike.id)
    desk.keep_draft("sag", "{}", bike_id=bike.id, subject="fork")
    assert len(reads) == 3


def test_the_list_is_narrowed_to_a_tag_however_it_is_written(desk):
    for name, tags in (("Larch", "Shop, red"), ("Tarn", "shop"), ("Heron", "")):
        bike = a_bike(desk, name=name)
        desk.do("Tag", edit(Bike, bike.id, "tags", tags), bike_id=bike.id)
    model, _ = shown(WindowViewModel, desk)
    assert model.state.tags == ("red", "Shop")
    model.pick_tag("Shop")
    assert names(model.state.rows) == ["Larch", "Tarn"]
    model.search("tarn")
    assert names(model.state.rows) == ["Tarn"]
    model.search("")
    model.pick_tag("")
    assert len(model.state.rows) == 3
