from __future__ import annotations

from dataclasses import replace

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, everything, make_desk
from workbench.actions.checkin import Found, checkin_records, file_checkin
from workbench.actions.desk import Search
from workbench.actions.edit import edit
from workbench.actions.people import add_person
from workbench.model.bike import Bike
from workbench.model.ride import BlindPlan
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.history import PAGE, SEALED, HistoryViewModel


class Sheet:
    def __init__(self, desk):
        self.desk = desk
        self.model = HistoryViewModel(desk, Bench(desk))
        self.problems = []
        self.model.refused.connect(self.problems.append)
        self.model.show()

    @property
    def state(self):
        return self.model.state

    def pick(self, words):
        self.model.pick(next(row.key for row in self.state.rows if words in row.what))


@pytest.fixture
def sheet(tmp_path):
    with make_desk(tmp_path) as desk:
        yield Sheet(desk)


def test_an_empty_history_says_so(sheet):
    assert sheet.state.empty == "Nothing has been done yet."


def test_a_row_says_when_who_which_bike_what_and_where(sheet):
    ada = sheet.desk.do("Add Ada", add_person("Ada", works_here=True), station="garage")
    sheet.desk.person_id = ada.id
    bike = a_bike(sheet.desk, name="Larch 150")
    sheet.desk.do("Set tags", edit(Bike, bike.id, "tags", "shop"), bike_id=bike.id, station="sag")
    row = sheet.state.rows[0]
    assert row.when.startswith("14 May 2031, 09:")
    assert (row.who, row.bike, row.what, row.station) == ("Ada", "Larch 150", "Set tags", "Sag")


def test_the_list_is_narrowed_by_bike_person_and_words_and_opened_again(sheet):
    first, second = a_bike(sheet.desk, name="Larch"), a_bike(sheet.desk, name="Fell", rider="Bo")
    for bike in (first, second):
        sheet.desk.do(f"Tag {bike.name}", edit(Bike, bike.id, "tags", "x"), bike_id=bike.id, station="garage")
    sheet.model.set_bike(second.id)
    assert [row.what for row in sheet.state.rows] == ["Tag Fell"]
    assert sheet.state.bikes == (("", "Every bike"), (second.id, "Fell"), (first.id, "Larch"))
    sheet.model.set_bike("")
    sheet.model.set_text("add fell")
    assert [row.what for row in sheet.state.rows] == ["Add Fell"]
    sheet.model.set_text("nowhere")
    assert sheet.state.empty == "Nothing like this was done."


def test_pages_are_turned_there_and_back(sheet):
    for number in range(PAGE + 5):
        sheet.desk.do(f"Add {number}", add_person(f"P{number}"))
    assert (sheet.state.can_go_newer, sheet.state.can_go_older) == (False, True)
    newest = sheet.state.rows
    sheet.model.older()
    assert [row.what for row in sheet.state.rows] == [f"Add {number}" for number in range(4, -1, -1)]
    assert (sheet.state.can_go_newer, sheet.state.can_go_older) == (True, False)
    sheet.model.older()
    assert len(sheet.state.rows) == 5
    sheet.model.newer()
    assert sheet.state.rows == newest
    sheet.model.newer()
    assert sheet.state.rows == newest


def test_what_a_deed_changed_is_said_in_words_and_units(sheet):
    bike = a_bike(sheet.desk)
    desk = sheet.desk
    for name, value, said in (
        ("tags", "shop", "Bike “Larch 150”: tags – → “shop”"),
        ("rear_travel_mm", 150.0, "Bike “Larch 150”: rear wheel travel 145\u2009mm → 150\u2009mm"),
        ("is_ebike", True, "Bike “Larch 150”: e-bike no → yes"),
        ("discipline", "enduro", "Bike “Larch 150”: ridden as trail → enduro"),
    ):
        desk.do(f"Set {name}", edit(Bike, bike.id, name, value), bike_id=bike.id)
        sheet.pick(f"Set {name}")
        assert sheet.state.changed == (said,)


def test_clicks_pressures_and_runs_are_named_as_on_the_bench(sheet):
    bike = a_counted_bike(sheet.desk)
    a_baseline(sheet.desk, bike)
    session = a_session(sheet.desk, bike)
    a_run(sheet.desk, session, liking=6, note="arms tired")
    sheet.pick("As found")
    assert any("Shock low-speed rebound" in line or "Fork low-speed" in line for line in sheet.state.changed)
    assert any("from closed, counted" in line for line in sheet.state.changed)
    sheet.pick("Keep run")
    assert sheet.state.changed[0].startswith("Run 1 added: liking 6")
    assert "“arms tired”" in sheet.state.changed[0]
    sheet.pick("Found")
    assert "On the bike, Rear tyre pressure: 23.2\u2009psi" in sheet.state.changed[0]
    sheet.pick("Keep setup")
    assert len(sheet.state.changed) == 7
    assert sheet.state.changed[-1].startswith("and ")


def test_a_blind_test_stays_sealed_until_it_is_revealed(sheet):
    desk = sheet.desk
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    plan = BlindPlan("p", session.id, "{}", "AB", 7, "digest", desk.now())
    desk.do("Draw", lambda gate: gate.put(plan), bike_id=bike.id, station="ride")
    a_run(desk, session, liking=6)
    for label in ("Draw", "Keep run"):
        sheet.pick(label)
        assert sheet.state.changed == (SEALED,)
    sheet.pick("Keep setup")
    assert sheet.state.changed != (SEALED,)
    desk.do("Reveal", lambda gate: gate.put(replace(plan, revealed_at=gate.now)), bike_id=bike.id)
    sheet.pick("Keep run")
    assert sheet.state.changed != (SEALED,)


def test_undoing_back_to_a_deed_is_asked_about_and_done_as_a_whole(sheet):
    desk = sheet.desk
    desk.do("Add Ada", add_person("Ada"))
    before = everything(desk)
    for name in ("Bo", "Cy"):
        desk.do(f"Add {name}", add_person(name))
    sheet.pick("Add Ada")
    assert sheet.state.undo_text == "Undo the 2 steps done after this"
    sheet.model.ask_undo()
    assert sheet.state.question == "Undo the 2 steps done after this? Redo brings them back."
    sheet.model.leave_it()
    assert sheet.state.question == ""
    assert sheet.model.undo_to_here()
    assert everything(desk) == before
    assert [row.what for row in sheet.state.rows] == ["Add Cy (undone)", "Add Bo (undone)", "Add Ada"]
    assert sheet.state.why_not == "This is the last step: nothing was done after it."
    sheet.pick("Add Cy")
    assert sheet.state.why_not == "This step was undone."


def test_undo_reaches_no_further_than_the_menu_does(sheet):
    for number in range(103):
        sheet.desk.do(f"Add {number}", add_person(f"P{number}"))
    sheet.model.set_text("Add 1")
    sheet.model.pick(sheet.desk.history.page(Search(text="Add 1"), most=200)[-1].id)
    assert sheet.state.undo_text == ""
    assert "A backup reaches further." in sheet.state.why_not


def test_a_refusal_is_said_and_nothing_is_undone(sheet):
    desk = sheet.desk
    bike = a_bike(desk)
    desk.do("Tag", edit(Bike, bike.id, "tags", "shop"), bike_id=bike.id)
    desk.do("Add Bo", add_person("Bo"))
    with desk._library.raw:
        desk._library.raw.execute("UPDATE bike SET tags = 'written past the gate'")
    before = everything(desk)
    sheet.pick("Add Larch")
    assert not sheet.model.undo_to_here()
    assert "has changed since" in sheet.problems[-1].text
    assert everything(desk) == before


def test_a_check_in_reads_in_the_words_of_its_sheet(sheet):
    bike = a_bike(sheet.desk)
    found = (Found("frame", "attend", "Crack"), Found("headset", "not_looked_at"))
    filed = sheet.desk.do("File", file_checkin(bike.id, "quick", found), bike_id=bike.id)
    sheet.pick("File")
    assert tuple(sorted(sheet.state.changed)) == (
        "Check-in added: depth quick intake",
        "Check-in point, frame and swingarm added: severity attend, reason “Crack”",
        "Check-in point, headset added: severity not looked at",
    )
    item = sheet.desk.ask(checkin_records(bike.id)).open_items[0].item
    sheet.desk.do("Worse", lambda gate: gate.put(replace(item, severity="stop")), bike_id=bike.id)
    sheet.pick("Worse")
    assert sheet.state.changed == ("Check-in point, frame and swingarm: severity attend → do not ride",)
    assert filed.depth == "quick"
