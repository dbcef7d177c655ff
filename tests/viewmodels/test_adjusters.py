"""The adjusters' sheet over a real library: counting, leaving, coming back, undoing."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.actions.adjusters import adjuster_records
from workbench.actions.edit import edit
from workbench.actions.garage import start_generation
from workbench.actions.on_bike import set_item
from workbench.actions.sag import note_as_found
from workbench.model.adjuster import Adjuster
from workbench.model.setting import Item
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_count import Stage
from workbench.viewmodels.bench import Bench


class Sheet:
    """The view-model with a bike on the bench, and all it said."""

    def __init__(self, desk, bike_id=None):
        self.desk = desk
        self.bench = Bench(desk)
        if bike_id is not None:
            self.bench.put_bike(bike_id)
        self.model = AdjustersViewModel(desk, self.bench)
        self.problems, self.kept, self.discarded = [], [], []
        self.model.refused.connect(self.problems.append)
        self.model.kept.connect(self.kept.append)
        self.model.discarded.connect(lambda label, key: self.discarded.append((label, key)))
        self.model.show()

    @property
    def state(self):
        return self.model.state

    @property
    def records(self):
        return self.desk.ask(adjuster_records(self.bench.bike_id))

    @property
    def rows(self):
        return {row.adjuster_id: row for group in self.state.groups for row in group.rows}

    @property
    def ids(self):
        return tuple(self.rows)

    def item(self, group, label):
        rows = next(one for one in self.state.groups if one.key == group).items
        return next(row for row in rows if row.label == label)

    def log(self, adjuster_id):
        return [(line.value, line.how) for line in self.records.log if line.subject_id == adjuster_id]

    def count_through(self, adjuster_id, found, steps):
        self.model.count(adjuster_id)
        self.model.set_count(found)
        self.model.keep_as_found()
        self.model.set_count(steps)
        self.model.keep_range()

    def fact(self, adjuster_id, **facts):
        for name, value in facts.items():
            self.desk.do("Fact", edit(Adjuster, adjuster_id, name, value), bike_id=self.bench.bike_id, station="")


@pytest.fixture
def sheet(tmp_path):
    with make_desk(tmp_path) as desk:
        yield Sheet(desk, a_bike(desk).id)


@pytest.fixture
def rebound(sheet):
    return sheet.ids[1]


def test_one_pass_intake_with_the_makers_chart_and_a_recount(sheet, rebound):
    sheet.fact(rebound, chart_steps=7, chart_from="open")
    assert sheet.rows[rebound].advice == "7 clicks from open (maker), not converted until counted"
    sheet.model.count(rebound)
    for _ in range(6):
        sheet.model.clicked()
    assert sheet.state.count.verb == "Keep as found 6"
    assert sheet.model.keep_as_found()
    assert sheet.log(rebound) == [(6.0, "counted"), (0.0, "closed")]
    for _ in range(13):
        sheet.model.clicked()
    assert sheet.state.count.verb == "Keep range 13"
    assert sheet.model.keep_range()
    row = sheet.rows[rebound]
    assert (row.as_found, row.range) == ("6 clicks from closed", "13 clicks, 14 positions")
    assert row.advice == "6 clicks from closed (maker: 7 from open)"
    assert row.now == "fully open, for sag"
    (step,) = sheet.state.put_back
    assert step.text == "Fork: low-speed rebound: fully closed, then open 6 clicks"
    assert step.remark == "7 clicks in from where it stands"
    assert sheet.model.take_step(step.key)
    assert not sheet.model.take_step(step.key)
    assert sheet.rows[rebound].now == "6 clicks from closed"

    first = sheet.records.parts.range_of(rebound)
    sheet.count_through(rebound, 6, 14)
    row = sheet.rows[rebound]
    assert row.advice == "7 clicks from closed (maker: 7 from open)"
    assert row.note == "Counted 13 before: one detent more or less at the open end is normal."
    assert not row.is_fault
    old = next(count for count in sheet.records.parts.ranges if count.id == first.id)
    assert old == first
    assert (old.as_found, old.steps) == (6, 13)
    assert sheet.problems == []


def test_two_detents_of_difference_ask_for_a_look(sheet, rebound):
    sheet.count_through(rebound, 6, 13)
    sheet.count_through(rebound, 6, 15)
    assert sheet.rows[rebound].is_fault
    assert "have the adjuster looked at" in sheet.rows[rebound].note


def test_a_recount_of_an_open_knob_needs_no_count_inwards_and_forgets_nothing(sheet, rebound):
    sheet.count_through(rebound, 6, 13)
    sheet.model.count(rebound)
    count = sheet.state.count
    assert (count.verb, count.counts, count.as_found_text) == ("It is closed", False, "6 clicks from closed")
    sheet.model.keep_as_found()
    assert sheet.state.count.stage == Stage.OPEN
    sheet.model.set_count(14)
    sheet.model.keep_range()
    assert sheet.records.parts.range_of(rebound).as_found == 6
    assert sheet.state.put_back[0].text.endswith(": fully closed, then open 6 clicks")


def test_after_one_range_the_next_adjuster_in_order_is_up(sheet):
    assert sheet.state.next_text == "Count fork low-speed compression"
    sheet.model.count(sheet.state.next_id)
    for expected in ("Fork low-speed rebound", "Shock low-speed compression", "Shock low-speed rebound"):
        sheet.model.set_count(3)
        sheet.model.keep_as_found()
        sheet.model.set_count(12)
        sheet.model.keep_range()
        assert sheet.state.count.title == expected
        assert sheet.state.count.last_kept.endswith("range 12 clicks kept.")
    sheet.model.set_count(3)
    sheet.model.keep_as_found()
    assert sheet.state.count.last_kept == ""
    sheet.model.set_count(12)
    sheet.model.keep_range()
    assert sheet.state.count is None
    assert (sheet.state.next_text, sheet.state.next_station) == ("Measure sag", "sag")
    assert sheet.state.progress == "4 of 4 counted"
    assert len(sheet.state.put_back) == 4
    assert sheet.model.take_all_steps()
    assert (sheet.state.next_text, sheet.state.put_back) == ("Measure sag", ())


def test_a_killed_program_goes_on_at_the_same_stage_with_the_same_count(tmp_path):
    with make_desk(tmp_path) as desk:
        sheet = Sheet(desk, a_bike(desk).id)
        sheet.model.count(sheet.ids[1])
        for _ in range(4):
            sheet.model.clicked()
    with make_desk(tmp_path) as desk:
        sheet = Sheet(desk)
        assert (sheet.state.count.stage, sheet.state.count.count) == (Stage.CLOSE, 4)
        sheet.model.clicked()
        sheet.model.clicked()
        sheet.model.keep_as_found()
        sheet.model.set_count(5)
    with make_desk(tmp_path) as desk:
        sheet = Sheet(desk)
        assert (sheet.state.count.stage, sheet.state.count.count) == (Stage.OPEN, 5)
        assert sheet.state.count.as_found_text == "6 clicks from closed"
        sheet.model.set_count(13)
        sheet.model.keep_range()
        assert sheet.rows[sheet.ids[1]].range == "13 clicks, 14 positions"


def test_discarding_half_way_leaves_the_put_back_due(sheet, rebound):
    sheet.model.count(rebound)
    sheet.model.set_count(6)
    sheet.model.keep_as_found()
    sheet.model.discard()
    assert sheet.state.count is None
    (label, key), *_ = sheet.discarded
    assert label == "Count of fork low-speed rebound discarded"
    assert sheet.rows[rebound].now == "fully closed, for counting"
    assert sheet.state.put_back[0].text.endswith(": fully closed, then open 6 clicks")
    sheet.model.take_back_draft(key)
    assert (sheet.state.count.stage, sheet.state.count.as_found_text) == (Stage.OPEN, "6 clicks from closed")


def test_a_knob_left_closed_is_counted_on_from_there(sheet, rebound):
    sheet.model.count(rebound)
    sheet.model.set_count(6)
    sheet.model.keep_as_found()
    sheet.model.discard()
    sheet.model.count(rebound)
    assert (sheet.state.count.stage, sheet.state.count.count) == (Stage.OPEN, 0)
    sheet.model.set_count(13)
    sheet.model.keep_range()
    assert sheet.records.parts.range_of(rebound).as_found == 6


def test_leaving_keeps_the_count_and_going_on_finds_it(sheet, rebound):
    sheet.model.count(rebound)
    sheet.model.set_count(4)
    sheet.model.leave()
    assert sheet.state.count is None
    assert sheet.state.next_text == "Go on with fork low-speed rebound"
    assert sheet.rows[rebound].verb == "Go on counting"
    sheet.model.count(sheet.state.next_id)
    assert sheet.state.count.count == 4


def test_undoing_a_range_brings_the_count_back(sheet, rebound):
    sheet.count_through(rebound, 6, 13)
    sheet.model.leave()
    sheet.desk.undo()
    assert (sheet.state.count.adjuster_id, sheet.state.count.count) == (rebound, 13)
    sheet.desk.undo()
    assert (sheet.state.count.stage, sheet.state.count.count) == (Stage.CLOSE, 6)
    assert sheet.log(rebound) == []
    sheet.desk.redo()
    sheet.desk.redo()
    assert sheet.rows[rebound].range == "13 clicks, 14 positions"


def test_undoing_a_range_right_away_goes_back_to_the_adjuster_before(sheet):
    first, second = sheet.ids[:2]
    sheet.count_through(first, 3, 12)
    assert sheet.state.count.adjuster_id == second
    sheet.desk.undo()
    assert (sheet.state.count.adjuster_id, sheet.state.count.count) == (first, 12)


def test_an_unreachable_range_is_said_at_the_count(sheet, rebound):
    sheet.model.count(rebound)
    sheet.model.set_count(6)
    sheet.model.keep_as_found()
    for wrong in (0, 3):
        sheet.model.set_count(wrong)
        assert not sheet.model.keep_range()
    assert [one.field for one in sheet.problems] == ["count", "count"]
    assert sheet.rows[rebound].range == "not counted"


def test_a_count_cannot_leave_what_a_knob_can_have(sheet, rebound):
    sheet.model.count(rebound)
    assert not sheet.state.count.can_be_discarded
    sheet.model.clicked(-1)
    assert sheet.state.count.count == 0
    sheet.model.set_count(10**9)
    assert sheet.state.count.count == 200


def test_fully_closed_as_found_needs_no_click(sheet, rebound):
    sheet.model.count(rebound)
    assert (sheet.state.count.verb, sheet.state.count.can_be_closed) == ("Keep as found", True)
    assert not sheet.model.keep_as_found()
    assert sheet.problems[0].field == "count"
    assert sheet.log(rebound) == []
    assert sheet.model.keep_as_found(was_closed=True)
    sheet.model.set_count(13)
    sheet.model.keep_range()
    assert sheet.rows[rebound].as_found == "fully closed"
    assert sheet.state.put_back[0].text.endswith(": fully closed")


def test_a_place_that_cannot_be_known_is_kept_as_not_known(sheet, rebound):
    sheet.model.count(rebound)
    sheet.model.keep_as_found(is_known=False)
    assert sheet.log(rebound) == [(None, "unknown"), (0.0, "closed")]
    sheet.model.set_count(13)
    sheet.model.keep_range()
    assert sheet.rows[rebound].as_found == "not known"
    assert sheet.state.put_back[0].remark == "as found is not known: the middle of its range"


def test_turns_are_counted_in_quarters(sheet, rebound):
    sheet.fact(rebound, counting="turns", chart_steps=6, chart_from="open")
    sheet.model.count(rebound)
    sheet.model.set_count(5)
    assert sheet.state.count.verb == "Keep as found 1 1/4 turns"
    sheet.model.keep_as_found()
    sheet.model.set_count(14)
    sheet.model.keep_range()
    row = sheet.rows[rebound]
    assert (row.as_found, row.range) == ("1 1/4 turns from closed", "3 1/2 turns")
    assert row.advice == "2 turns from closed (maker: 1 1/2 turns from open)"
    assert sheet.state.put_back[0].text.endswith(": fully closed, then open 1 1/4 turns")


def test_named_positions_are_picked_and_never_counted(sheet, rebound):
    sheet.fact(rebound, counting="positions", position_names="firm|middle|open", kind="lever", speed="")
    sheet.model.count(rebound)
    assert (sheet.state.count.picks, sheet.state.count.count) == (("firm", "middle", "open"), None)
    assert not sheet.model.keep_as_found()
    assert sheet.problems[0].field == "count"
    sheet.model.set_count(1)
    assert sheet.state.count.verb == "Keep as found: middle"
    sheet.model.keep_as_found()
    assert sheet.log(rebound) == [(1.0, "counted")]
    assert (sheet.state.count.verb, sheet.state.count.counts) == ("It stands at open", False)
    sheet.model.keep_range()
    assert sheet.rows[rebound].range == "3 positions"
    assert sheet.log(rebound)[-1] == (2.0, "opened")
    assert sheet.state.put_back[0].text.endswith(": set to middle")
    sheet.model.count(rebound)
    assert sheet.state.count.stage == Stage.OPEN


def test_positions_without_names_ask_for_them(sheet, rebound):
    sheet.fact(rebound, counting="positions")
    sheet.model.count(rebound)
    assert not sheet.model.keep_as_found()
    assert sheet.problems[0].field == "position_names"
    assert sheet.log(rebound) == []


def test_which_way_closes_is_asked_once(sheet, rebound):
    sheet.model.count(rebound)
    assert (sheet.state.count.asks_turn, sheet.state.count.closes) == (True, "clockwise")
    assert sheet.state.count.drawing_note == "usually: look at the knob's face"
    sheet.model.set_count(6)
    sheet.model.set_turn("anticlockwise")
    assert (sheet.state.count.asks_turn, sheet.state.count.closes) == (False, "anticlockwise")
    assert "Turn it in anticlockwise" in sheet.state.count.instruction
    sheet.model.keep_as_found()
    assert sheet.state.count.opens
    assert sheet.state.count.drawing_note == "out to the open end, without force"


def test_passing_one_over_wants_a_reason_and_goes_on(sheet):
    first, second = sheet.ids[:2]
    sheet.model.count(first)
    assert not sheet.model.skip("  ")
    assert sheet.problems[0].field == "reason"
    assert sheet.model.skip("Knob missing or stuck")
    assert sheet.state.count.adjuster_id == second
    assert sheet.rows[first].skipped == "Knob missing or stuck"
    assert sheet.state.progress == "0 of 4 counted, 1 passed over"
    sheet.count_through(first, 2, 9)
    assert sheet.rows[first].skipped == ""


def test_springs_and_tyres_are_entered_in_the_readers_units(sheet):
    pressure = sheet.item("fork", "Air pressure")
    assert (pressure.unit, pressure.value) == ("psi", None)
    assert sheet.model.set_item(pressure.item, pressure.subject_id, 565.4)
    assert sheet.item("fork", "Air pressure").note == "as attached, 14 May 2031"
    assert sheet.desk.undo_label() == "Fork: air pressure 82\u2009psi as found"
    assert not sheet.model.set_item(pressure.item, pressure.subject_id, -1.0)
    assert sheet.problems[0].field == pressure.key
    tyre = sheet.item("tyres", "Front tyre pressure")
    assert sheet.model.set_item(tyre.item, tyre.subject_id, 150.0)


def test_leaving_a_field_unchanged_is_no_deed(sheet):
    row = sheet.item("fork", "Volume spacers")
    sheet.model.set_item(row.item, row.subject_id, 2)
    label = sheet.desk.undo_step().id
    assert sheet.model.set_item(row.item, row.subject_id, 2)
    assert sheet.desk.undo_step().id == label


def test_text_that_cannot_be_read_is_shown_again(tmp_path):
    with make_desk(tmp_path) as desk:
        sheet = Sheet(desk, a_bike(desk).id)
        row = sheet.item("fork", "Air pressure")
        sheet.model.keep_text(row.key, "about eighty")
    with make_desk(tmp_path) as desk:
        sheet = Sheet(desk)
        row = sheet.item("fork", "Air pressure")
        assert row.typed == "about eighty"
        sheet.model.set_item(row.item, row.subject_id, 550.0)
        assert sheet.item("fork", "Air pressure").typed == ""
        assert sheet.desk.drafts(sheet.bench.bike_id) == ()


def test_too_much_pressure_says_what_to_do(sheet):
    from workbench.model.unit import Unit

    row = sheet.item("fork", "Air pressure")
    sheet.desk.do("Fact", edit(Unit, row.subject_id, "maximum_kpa", 900.0), bike_id=sheet.bench.bike_id, station="")
    sheet.model.set_item(row.item, row.subject_id, 1000.0)
    row = sheet.item("fork", "Air pressure")
    assert row.is_care
    assert row.note.endswith("Let air out slowly before anything else.")


def test_facts_are_edited_in_place(sheet, rebound):
    sheet.model.open_facts(rebound)
    names = [row.name for row in sheet.state.edit.rows]
    assert "closed_turn" in names
    assert "position_names" not in names
    assert sheet.model.edit(rebound, "name", "Return <b>")
    assert sheet.rows[rebound].title == "Return <b>"
    assert sheet.state.next_text == "Count fork low-speed compression"
    sheet.model.edit(rebound, "counting", "positions")
    assert "position_names" in [row.name for row in sheet.state.edit.rows]
    sheet.model.open_facts(rebound)
    assert sheet.state.edit is None


def test_counted_in_cannot_change_once_counted(sheet, rebound):
    sheet.count_through(rebound, 6, 13)
    sheet.model.leave()
    assert not sheet.model.edit(rebound, "counting", "turns")
    assert sheet.problems[0].field == "counting"


def test_adjusters_come_and_go_and_change_places(sheet):
    fork = sheet.state.groups[0]
    sheet.model.add(fork.unit_id)
    added = sheet.state.edit.adjuster_id
    assert [row.adjuster_id for row in sheet.state.groups[0].rows][-1] == added
    sheet.model.move_up(added)
    assert [row.adjuster_id for row in sheet.state.groups[0].rows][1] == added
    sheet.model.edit(added, "depends_on", sheet.ids[0])
    sheet.model.count(added)
    assert sheet.state.count.notes == ("Have fork low-speed compression fully open meanwhile.",)
    sheet.model.leave()
    sheet.model.remove(added)
    assert added not in sheet.rows
    sheet.desk.undo()
    assert added in sheet.rows


def test_labels_stay_short_enough_for_the_menu(sheet, rebound):
    sheet.fact(rebound, name="x" * 200)
    sheet.count_through(rebound, 6, 13)
    assert all(len(label) <= 60 for label in sheet.kept)
    assert sheet.kept[0].startswith("Keep as found 6 clicks, fork xxx")


def test_an_advice_beyond_the_range_is_said_and_not_converted(sheet, rebound):
    sheet.fact(rebound, chart_steps=15, chart_from="open")
    sheet.count_through(rebound, 6, 13)
    assert sheet.rows[rebound].advice == "15 clicks from open (maker) lies beyond the counted range"


def test_after_new_hardware_it_says_why_a_place_is_not_known(sheet, rebound):
    bike_id = sheet.bench.bike_id
    sheet.count_through(rebound, 6, 13)
    sheet.desk.do("Set", set_item(bike_id, Item.ADJUSTER, rebound, 6.0, "set_to"), bike_id=bike_id)
    unit_id = sheet.records.parts.adjuster(rebound).unit_id
    sheet.desk.do("Oil", start_generation(unit_id, "oil"), bike_id=bike_id)
    assert sheet.rows[rebound].now == "not known since the hardware changed"


def test_without_a_bike_there_is_an_empty_sheet(tmp_path):
    with make_desk(tmp_path) as desk:
        assert Sheet(desk).state.groups == ()


def test_an_undone_bike_leaves_an_empty_sheet(sheet):
    sheet.desk.undo()
    assert sheet.state.groups == ()


def test_the_ruler_marks_what_is_known(sheet, rebound):
    sheet.fact(rebound, chart_steps=7, chart_from="open")
    assert sheet.rows[rebound].marks == ()
    sheet.count_through(rebound, 6, 13)
    marks = [(mark.position, mark.word, mark.is_now) for mark in sheet.rows[rebound].marks]
    assert marks == [(6, "as found, maker", False), (13, "now", True)]


def test_a_ruler_of_turns_is_numbered_in_whole_turns(sheet, rebound):
    sheet.fact(rebound, counting="turns")
    sheet.count_through(rebound, 2, 6)
    assert sheet.rows[rebound].names == ("0", "", "", "", "1", "", "")


def test_a_place_noted_for_sag_while_a_count_waits_does_not_pass_for_closed(sheet):
    first = sheet.ids[0]
    sheet.model.count(first)
    sheet.model.set_count(3)
    sheet.desk.do("Note", note_as_found(sheet.bench.bike_id, first, 5), bike_id=sheet.bench.bike_id)
    assert sheet.state.count.stage == Stage.CLOSE
    assert sheet.state.count.count == 3
