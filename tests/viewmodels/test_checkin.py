"""The check-in's sheet without a window: entered, kept at every entry, filed, and what stays open."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, everything, make_desk
from tests.viewmodels.sheets import shown
from workbench.actions.checkin import checkin_records
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.model.service import CheckIn
from workbench.model.unit import Unit
from workbench.viewmodels.checkin import CheckInViewModel


@pytest.fixture
def bike(desk):
    return a_counted_bike(desk)


@pytest.fixture
def sheet(desk, bike):
    return shown(CheckInViewModel, desk, bike.id)


def row(view_model, code):
    return next(one for one in view_model.state.rows if one.code == code)


def open_row(view_model, code):
    return next(one for one in view_model.state.open_rows if one.code == code)


def filed(view_model, **found):
    view_model.begin("full")
    for code, entry in found.items():
        view_model.set_entry(code, **entry)
    assert view_model.file()


def test_every_entry_is_kept_and_there_again_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        view_model, _ = shown(CheckInViewModel, desk, bike.id)
        view_model.begin("quick")
        view_model.set_words("bothers", "Kno")
        view_model.set_entry("headset", severity="attend", reason="Knocks", note="lou", is_declined=True)
        view_model.set_entry("exposed_front", measured="150.")
    with make_desk(tmp_path) as desk:
        view_model, _ = shown(CheckInViewModel, desk, bike.id)
        assert (view_model.state.is_writing, view_model.state.bothers) == (True, "Kno")
        kept = row(view_model, "headset")
        assert (kept.severity, kept.reason, kept.note, kept.is_declined) == ("attend", "Knocks", "lou", True)
        assert row(view_model, "exposed_front").measured == "150."


def test_the_rest_is_fine_answers_what_has_no_answer_and_leaves_what_is_open_from_earlier(sheet):
    view_model, _ = sheet
    filed(view_model, headset={"severity": "attend", "reason": "Knocks"})
    view_model.begin("quick")
    assert row(view_model, "headset").carried == "Open since 14 May 2031: attend (Knocks)"
    view_model.set_entry("wheels", severity="advise")
    view_model.rest_is_fine()
    assert row(view_model, "headset").severity == ""
    assert row(view_model, "wheels").severity == "advise"
    assert row(view_model, "frame").severity == "fine"
    assert view_model.state.left == 1
    assert view_model.file()
    assert [one.title for one in view_model.state.open_rows] == ["Headset", "Wheels and axles"]


def test_one_deed_files_it_and_undo_opens_the_entries_again(desk, bike, sheet):
    view_model, heard = sheet
    view_model.begin("quick")
    view_model.set_words("last_done", "New fork oil")
    view_model.rest_is_fine()
    before = everything(desk)
    assert view_model.file()
    assert heard.labels == ["File the check-in"]
    assert ("Done last", "New fork oil") in view_model.state.last
    desk.undo()
    assert everything(desk) == before
    assert view_model.state.is_writing
    assert view_model.state.last_done == "New fork oil"


def test_nothing_looked_at_cannot_be_filed_and_neither_can_do_not_ride_without_a_word_why(desk, sheet):
    view_model, heard = sheet
    view_model.begin("quick")
    assert not view_model.file()
    assert heard.field == "frame"
    view_model.set_entry("wheels", severity="stop")
    assert not view_model.file()
    assert heard.field == "wheels"
    assert desk.ask(lambda reader: reader.find(CheckIn)) == ()
    view_model.set_entry("wheels", note="two spokes gone")
    assert view_model.file()


def test_a_quick_intake_goes_on_to_the_full_inspection_with_nothing_lost(sheet):
    view_model, _ = sheet
    view_model.begin("quick")
    view_model.set_entry("frame", severity="fine")
    few = len(view_model.state.rows)
    view_model.begin("full")
    assert len(view_model.state.rows) > few
    assert row(view_model, "frame").severity == "fine"


def test_a_short_stanchion_asks_to_be_attended_to_and_a_length_that_is_none_says_so_at_its_line(desk, bike, sheet):
    view_model, heard = sheet
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    desk.do("Nominal", edit(Unit, fork.id, "exposed_nominal_mm", 160.0), bike_id=bike.id)
    view_model.begin("quick")
    assert "should read 160\u2009mm" in row(view_model, "exposed_front").how
    view_model.set_entry("exposed_front", measured="155")
    assert row(view_model, "exposed_front").severity == "attend"
    assert "5\u2009mm short" in row(view_model, "exposed_front").said
    view_model.set_entry("exposed_front", measured="abc")
    assert row(view_model, "exposed_front").problem
    assert not view_model.file()
    assert heard.field == "exposed_front"
    assert row(view_model, "exposed_front").measured == "abc", "nothing typed is lost"


def test_a_length_is_meant_in_the_unit_of_whoever_typed_it(desk, bike, sheet):
    view_model, _ = sheet
    view_model.begin("quick")
    view_model.set_entry("exposed_front", measured="155")
    inches = desk.do("Person", add_person("A. Weber", rides=False, works_here=True))
    desk.do("Unit", edit(type(inches), inches.id, "length_unit", "in"))
    desk.person_id = inches.id
    view_model.refresh()
    assert row(view_model, "exposed_front").measured == "155 mm"


def test_discarding_leaves_no_record_and_can_be_taken_back(desk, sheet):
    view_model, heard = sheet
    view_model.begin("quick")
    view_model.set_words("bothers", "Knocks")
    view_model.discard()
    assert not view_model.state.is_writing
    view_model.take_back_draft(heard.discarded[0][1])
    assert view_model.state.bothers == "Knocks"


def test_what_stays_open_is_closed_declined_and_overruled_from_the_list(desk, sheet):
    view_model, heard = sheet
    filed(
        view_model,
        headset={"severity": "attend", "reason": "Knocks"},
        wheels={"severity": "stop", "reason": "Spoke broken"},
        frame={"severity": "stop", "reason": "Crack"},
    )
    assert view_model.state.stop.startswith("Do not ride: ")
    view_model.decline(open_row(view_model, "headset").item_id)
    assert open_row(view_model, "headset").remark.startswith("On the card: Headset, knocks: to be attended to, and")
    view_model.decline(open_row(view_model, "headset").item_id)
    assert not open_row(view_model, "headset").is_declined
    assert open_row(view_model, "frame").is_grave_stop
    wheels = open_row(view_model, "wheels")
    assert wheels.can_overrule
    assert not view_model.overrule(wheels.item_id, "", "It holds")
    assert heard.field == "overrule_by"
    assert not view_model.overrule(wheels.item_id, "A. Weber", "")
    assert heard.field == "overrule_reason"
    assert view_model.overrule(wheels.item_id, "A. Weber", "Pushed home only")
    assert "A. Weber lets it be ridden" in open_row(view_model, "wheels").remark
    view_model.close(open_row(view_model, "frame").item_id)
    assert view_model.state.stop == ""
    assert heard.labels[-1] == "Seen to: Frame and swingarm"


def test_a_service_that_falls_due_stands_on_the_list_to_be_attended_to_unless_it_is_said_otherwise(sheet):
    view_model, _ = sheet
    view_model.set_last("lowers_front", 100 * 3600.0)
    view_model.tell_hours(152 * 3600.0, "log")
    assert view_model.state.hours == "152\u2009h from a ride log or computer on 14 May 2031."
    view_model.begin("quick")
    due = row(view_model, "service/lowers/front")
    assert (due.severity, due.reason, due.how) == ("attend", "Is due", "Due: 52 of 50\u2009h.")
    view_model.set_entry("service/lowers/front", is_declined=True)
    view_model.rest_is_fine()
    assert view_model.file()
    (left,) = view_model.state.open_rows
    assert (left.title, left.is_declined) == ("Service: Fork lower legs", True)
    view_model.serviced("lowers_front")
    assert view_model.state.open_rows == ()


def test_intervals_and_hours_that_cannot_be_are_said_at_their_field(sheet):
    view_model, heard = sheet
    view_model.set_interval("lowers_front", "interval", 0.0)
    assert heard.field == "wear_lowers_front_interval"
    view_model.set_interval("lowers_front", "months", 0.0)
    assert heard.field == "wear_lowers_front_months"
    assert not view_model.tell_hours(None, "stated")
    assert heard.field == "hours"
    view_model.set_interval("lowers_front", "interval", 30 * 3600.0)
    wear = next(one for one in view_model.state.wear if one.key == "lowers_front")
    assert (wear.interval_s, wear.origin) == (30 * 3600.0, "Interval: the maker's manual.")


def test_the_positions_found_are_asked_for_before_anything_is_opened(desk):
    bike = a_bike(desk)
    view_model, _ = shown(CheckInViewModel, desk, bike.id)
    view_model.begin("quick")
    assert (view_model.state.positions, view_model.state.positions_left) == ("0 of 4 adjusters noted as found.", True)


def test_hostile_words_are_filed_as_plain_text(desk, bike, sheet):
    view_model, _ = sheet
    view_model.begin("quick")
    view_model.set_words("bothers", "<b>x</b> \u202e=1+1")
    view_model.set_entry("frame", severity="advise", note="<img src=x>")
    assert view_model.file()
    records = desk.ask(checkin_records(bike.id))
    assert records.checkins[-1].bothers == "<b>x</b> =1+1"
    assert records.open_items[0].item.note == "<img src=x>"


def test_a_bike_away_with_an_undone_step_leaves_an_empty_sheet(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        view_model, _ = shown(CheckInViewModel, desk, bike.id)
        desk.undo()
        assert view_model.state.rows == ()


def test_a_setup_that_stands_is_no_business_of_check_in(desk, bike, sheet):
    view_model, _ = sheet
    before = view_model.state
    a_baseline(desk, bike)
    assert view_model.state == before


PNG = b"\x89PNG\r\n\x1a\n"


def a_file(folder, name, content=PNG):
    path = folder / name
    path.write_bytes(content)
    return path


def test_a_picture_is_kept_with_its_entry_filed_and_carried_forward(desk, bike, sheet, tmp_path):
    view_model, _ = sheet
    view_model.begin("quick")
    view_model.set_entry("frame", severity="attend")
    assert view_model.add_picture("frame", a_file(tmp_path, "mark.png"))
    kept = row(view_model, "frame")
    assert (kept.is_photo_new, view_model.picture(kept.photo)) == (True, PNG)
    assert view_model.file()
    assert open_row(view_model, "frame").photo == kept.photo
    view_model.begin("quick")
    view_model.set_entry("frame", severity="attend", note="larger")
    carried = row(view_model, "frame")
    assert (carried.photo, carried.is_photo_new) == (kept.photo, False)
    assert view_model.file()
    assert open_row(view_model, "frame").photo == kept.photo
    assert open_row(view_model, "frame").found.startswith("larger")


def test_a_find_that_is_fine_now_carries_no_picture(sheet, tmp_path):
    view_model, _ = sheet
    view_model.begin("quick")
    view_model.set_entry("frame", severity="attend")
    view_model.add_picture("frame", a_file(tmp_path, "mark.png"))
    view_model.set_entry("frame", severity="fine")
    assert row(view_model, "frame").photo == ""
    view_model.set_entry("frame", severity="advise")
    assert row(view_model, "frame").is_photo_new
    view_model.leave_picture("frame")
    assert row(view_model, "frame").photo == ""


def test_what_is_no_picture_is_refused_at_its_line(sheet, tmp_path):
    view_model, heard = sheet
    view_model.begin("quick")
    assert not view_model.add_picture("frame", a_file(tmp_path, "words.png", b"words"))
    assert (heard.field, heard.problems[-1].text[:9]) == ("frame", "words.png")
    assert not view_model.add_picture("frame", tmp_path / "nowhere.png")
    assert "could not be read" in heard.problems[-1].text
    assert row(view_model, "frame").photo == ""


def test_something_open_gets_its_picture_on_the_hand_over_list(desk, sheet, tmp_path):
    view_model, heard = sheet
    filed(view_model, frame={"severity": "attend"})
    item_id = open_row(view_model, "frame").item_id
    assert view_model.picture_open(item_id, a_file(tmp_path, "mark.png"))
    assert heard.labels[-1] == f"Picture: {open_row(view_model, 'frame').title}"
    assert view_model.picture(open_row(view_model, "frame").photo) == PNG
    view_model.unpicture_open(item_id)
    assert open_row(view_model, "frame").photo == ""
    desk.undo()
    assert open_row(view_model, "frame").photo
