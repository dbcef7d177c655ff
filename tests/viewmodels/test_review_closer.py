"""The review looked at closely: all answers to a change, lap times, trend, looks, what suits, and all in words."""

from __future__ import annotations

from dataclasses import replace
from math import log

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings, end_session, keep_run, ride_records, set_run_aside
from workbench.model.ride import Run
from workbench.model.setting import Item
from workbench.viewmodels.review import ReviewViewModel
from workbench.viewmodels.review_looks import looks_at


class Day:
    """A session on one bike, ridden run by run."""

    def __init__(self, desk, **about):
        self.desk = desk
        self.bike = a_counted_bike(desk)
        a_baseline(desk, self.bike)
        self.session = a_session(desk, self.bike)
        if about:
            changed = replace(self.session, **about)
            desk.do("About", lambda gate: gate.put(changed), bike_id=self.bike.id)
        self.parts = desk.ask(bike_parts(self.bike.id))
        self.rebound = self.parts.adjusters[1]

    def move(self, position, place=1, **more):
        wanted = {(Item.ADJUSTER.value, self.parts.adjusters[place].id): float(position)}
        rider = self.parts.riders[0].id
        deed = change_settings(self.bike.id, rider, wanted, session_id=self.session.id, **more)
        self.desk.do("Change", deed, bike_id=self.bike.id)

    def run(self, liking=None, *, way=None, ratings=(), **said):
        current = self.desk.ask(ride_records(self.bike.id)).current
        of = self.rebound.id if way is not None else None
        run = Run("", self.session.id, 0, current.id, "", "", liking=liking, direction=way, direction_of=of, **said)
        return self.desk.do("Keep run", keep_run(run, ratings=ratings), bike_id=self.bike.id)

    def end(self):
        self.desk.do("End", end_session(self.session.id), bike_id=self.bike.id)

    def sheet(self):
        return shown(ReviewViewModel, self.desk, self.bike.id)[0]


def a_b_a(day, first=(5, 5, 5, 4), second=(7, 8, 7), **second_said):
    """Two and two, back to two, and one more: first setup, second setup."""
    for liking in first[:2]:
        day.run(liking, way=-1, lap_s=165.0)
    day.move(10)
    for liking in second[:2]:
        day.run(liking, way=0, **{"lap_s": 162.0, **second_said})
    day.move(6)
    for liking in first[2:]:
        day.run(liking, way=-1, lap_s=164.5)
    day.move(10)
    for liking in second[2:]:
        day.run(liking, way=0, **{"lap_s": 161.5, **second_said})


def picked(day):
    view_model = day.sheet()
    view_model.pick_change("1-2")
    return view_model.state


# A change looked at closely


def test_a_picked_change_has_twenty_dots_that_say_what_its_row_says(desk):
    day = Day(desk)
    a_b_a(day)
    state = picked(day)
    (row,) = state.effects.rows
    assert len(state.closer.dots) == 20
    assert sum(state.closer.dots) / 20 == pytest.approx(row.effect, abs=0.1)
    assert state.closer.dots_said.startswith("At least 19 of 20 say better")
    assert "A single further run" in state.closer.next_said
    assert state.strong == {row.before_id, row.after_id}


def test_a_weak_change_counts_its_dots_on_both_sides(desk):
    day = Day(desk)
    a_b_a(day, (5, 6, 5, 6), (6, 6, 5))
    closer = picked(day).closer
    better = sum(dot > 0 for dot in closer.dots)
    assert 0 < better < 20
    assert f"{better} of 20 say better" in closer.dots_said


def test_every_answer_stands_beside_the_one_judged_by_and_they_are_read_together(desk):
    day = Day(desk)
    a_b_a(day)
    closer = picked(day).closer
    assert [line.split(":")[0] for line in closer.joint] == ["Liking", "Direction", "Lap time", "Seen, not judged"]
    assert "nearer to just right (chance about 19 in 20)" in closer.joint[1]
    assert "quicker" in closer.joint[2]
    assert "s quicker on a lap of 2:44.8" in closer.joint[2]
    assert "%" in closer.joint[2]
    assert "12 of 12 pairs" in closer.joint[3]
    assert closer.joint_said == "So far: together they speak for no. 2 (chance about 19 in 20)."


def test_quicker_but_liked_less_is_said_at_the_change_and_gets_no_joint_verdict(desk):
    day = Day(desk)
    a_b_a(day, (7, 8, 7, 8), (4, 4, 5), lap_s=155.0)
    state = picked(day)
    (row,) = state.effects.rows
    assert "The answers disagree: rated lower, but" in row.joint_note
    assert "quicker" in row.joint_note
    assert "What counts is for the rider to say." in state.closer.joint_said
    assert row.joint_note in state.read_out


def test_better_or_worse_than_the_run_before_is_an_answer_of_its_own_and_read_once(desk):
    day = Day(desk)
    for _ in range(2):
        day.run(5, compared=0)
        day.move(10)
        day.run(7, compared=1)
        day.run(7, compared=0)
        day.move(6)
        day.run(5, compared=-1)
    lines = picked(day).closer.joint
    assert lines[0].startswith("Liking alone: rated higher")
    assert lines[1].startswith("Against the run before: called better")


def test_with_nothing_else_answered_there_is_nothing_to_join(desk):
    day = Day(desk)
    for position in (6, 10, 6, 10):
        day.move(position)
        day.run(5)
    assert picked(day).closer.joint_said.startswith("Nothing else was answered")


def test_two_changes_at_once_are_not_read_together(desk):
    day = Day(desk)
    day.run(5, lap_s=160.0)
    day.move(9)
    day.move(2, place=0, say_confounded=True)
    day.run(7, lap_s=150.0)
    view_model = day.sheet()
    view_model.pick_change(view_model.state.effects.rows[0].key)
    assert view_model.state.closer.joint_said.startswith("More than one thing changed")
    assert view_model.state.effects.rows[0].joint_note == ""


def test_a_run_picked_in_a_picture_picks_the_change_that_led_to_it(desk):
    day = Day(desk)
    a_b_a(day)
    view_model = day.sheet()
    after = next(point for point in view_model.state.timeline.points if point.mark == "open")
    view_model.pick_run(after.run_id)
    assert view_model.state.picked == "1-2"
    assert view_model.state.along.response.adjuster_id == day.rebound.id


# Judged by lap time


def test_a_session_judged_by_lap_time_is_told_in_percent_and_seconds(desk):
    day = Day(desk, response="lap_s")
    a_b_a(day)
    state = day.sheet().state
    (row,) = state.effects.rows
    assert row.effect == pytest.approx(1.6, abs=0.5)
    assert (row.effect_text.endswith(" %"), row.clock_text.endswith("s quicker")) == (True, True)
    assert "quicker with no. 2 than with no. 1" in row.verdict
    assert "percent" in state.effects.axis
    assert state.summary.startswith("7 runs in 1 session. Judged by lap time, as named before riding.")
    assert state.effects.steady.startswith("Ridden again unchanged, a lap time scatters by about")


def test_lap_times_stand_below_the_ratings_at_their_runs(desk):
    day = Day(desk)
    day.run(5, lap_s=165.0)
    day.run(6)
    day.run(7, lap_s=160.0, is_warmup=True)
    laps = day.sheet().state.timeline.laps
    assert [(lap.place, lap.lap_s) for lap in laps] == [(1, 165.0), (3, 160.0)]
    assert laps[0].said == "run 1, setup no. 1, lap 2:45.0"
    assert day.sheet().state.timeline.laps_said == "1 lap time, middle 2:45.0; equal steps are equal shares"


# Looked at, not judged


def test_attributes_are_shown_by_side_and_never_judged(desk):
    day = Day(desk)
    day.run(5, ratings=(("grip", 5, "front"), ("support", 4, "rear")), is_warmup=True)
    day.run(5, ratings=(("grip", 5, "front"), ("support", 4, "rear")))
    day.run(5, ratings=(("grip", 6, "front"),))
    day.move(10)
    spoilt = day.run(7, ratings=(("grip", 1, "front"),), lap_s=160.0)
    desk.do("Aside", set_run_aside(spoilt.id, "Fell or stopped"), bike_id=day.bike.id)
    day.run(7, ratings=(("grip", 8, "front"),), way=0)
    looked = picked(day).looked
    assert looked.title == "Looked at 3 things beside the liking"
    assert "None of these is a verdict" in looked.said
    assert [row.said for row in looked.rows] == [
        "Grip, front: before 5, 6; after 8",
        "Support, rear: before 4; after not rated",
    ]
    assert [(dot.score, dot.count, dot.side) for dot in looked.rows[0].dots] == [
        (5, 1, "before"),
        (6, 1, "before"),
        (8, 1, "after"),
    ]
    assert [row.said for row in day.sheet().state.looked.rows] == ["Grip, front: 5, 6, 8", "Support, rear: 4"]


def test_nothing_looked_at_takes_no_room(desk):
    day = Day(desk)
    day.run(5)
    assert day.sheet().state.looked.title == ""


# The trend


def test_the_trend_is_drawn_only_when_asked_for_and_the_ratings_stay_where_they_were(desk):
    day = Day(desk)
    for liking in (3, 4, 5, 5, 6, 7):
        day.run(liking)
    view_model = day.sheet()
    assert view_model.state.timeline.trend == ()
    view_model.show_trend(True)
    timeline = view_model.state.timeline
    assert [point.liking for point in timeline.points] == [3, 4, 5, 5, 6, 7]
    (line,) = timeline.trend
    assert line[-1].value - line[0].value > 2
    without = [point.without for point in line]
    assert max(without) - min(without) < 2
    assert all(point.low <= point.value <= point.high for point in line)
    view_model.show_trend(False)
    assert view_model.state.timeline.trend == ()


def test_with_three_runs_the_trend_says_that_it_is_too_little(desk):
    day = Day(desk)
    for liking in (3, 4, 5):
        day.run(liking)
    view_model = day.sheet()
    view_model.show_trend(True)
    assert view_model.state.timeline.trend == ()
    assert "at least 4 rated runs" in view_model.state.timeline.trend_said


def test_the_trend_of_lap_times_stands_on_the_lap_times(desk):
    day = Day(desk, response="lap_s")
    for lap in (170.0, 167.0, 165.0, 164.0, 163.0):
        day.run(5, lap_s=lap)
    view_model = day.sheet()
    view_model.show_trend(True)
    timeline = view_model.state.timeline
    (line,) = timeline.trend
    assert timeline.trend_of_laps
    assert line[0].value > line[-1].value, "slower at first"
    spread = [log(max(times) / min(times)) for times in ((170.0, 163.0), [point.without for point in line])]
    assert spread[1] < spread[0]


# So far, and looks


def test_before_the_planned_end_every_verdict_reads_so_far(desk):
    day = Day(desk, planned_runs=8)
    a_b_a(day)
    assert all(row.verdict.startswith("So far: ") for row in day.sheet().state.effects.rows)
    day.run(7)
    assert not any("So far" in row.verdict for row in day.sheet().state.effects.rows)


def test_an_ended_session_is_no_longer_so_far_and_says_when_it_stopped_early(desk):
    day = Day(desk, planned_runs=10)
    a_b_a(day)
    day.end()
    state = day.sheet().state
    assert not any("So far" in row.verdict for row in state.effects.rows)
    assert "Ended after 7 of 10 planned runs." in state.summary


def test_looks_before_the_end_are_noted_once_a_run_and_outlive_the_window(desk):
    day = Day(desk, planned_runs=10)
    day.run(5)
    view_model = day.sheet()
    view_model.refresh()
    day.sheet()
    assert looks_at(desk, day.session.id) == (1,)
    assert "Looked at 1 time before the planned end." in view_model.state.summary
    day.run(6)
    day.run(6)
    assert looks_at(desk, day.session.id) == (1, 2, 3), "the sheet stood open while they were ridden"
    day.end()
    day.sheet()
    assert looks_at(desk, day.session.id) == (1, 2, 3)
    assert "Looked at 3 times before the planned end." in day.sheet().state.summary


def test_a_look_is_no_deed_that_undo_would_take_back(desk):
    day = Day(desk)
    day.run(5)
    before = desk.undo_step().label
    day.sheet()
    assert desk.undo_step().label == before


# What suits


def test_the_setup_that_suits_is_named_with_its_chance_and_leads_back_to_the_bike(desk):
    day = Day(desk)
    a_b_a(day)
    day.move(6)
    view_model = day.sheet()
    suited = view_model.state.suited
    assert suited.title == "Most likely to suit so far: no. 2"
    assert "Chance about 19 in 20" in suited.sure
    assert "already made smaller for the luck of being the highest of 2" in suited.sure
    assert suited.advice == "One more run of any of them is not expected to change the choice."
    view_model.pick_setup(view_model.state.setups[0][0])
    view_model.pick_suited()
    assert view_model.state.setup_id == suited.setup_id
    assert "open 10 clicks" in view_model.state.steps[0].text


def test_one_setup_alone_is_too_early_and_the_cheapest_way_on_is_said(desk):
    day = Day(desk)
    day.run(5)
    day.run(6)
    suited = day.sheet().state.suited
    assert (suited.title, suited.setup_id) == ("Too early to name a setup that suits", "")
    assert "Ride two, and come back to the first" in suited.advice


def test_the_highest_of_several_single_runs_is_to_be_ridden_again(desk):
    day = Day(desk)
    for position, liking in ((6, 5), (10, 6), (12, 5), (15, 8)):
        day.move(position)
        day.run(liking)
    suited = day.sheet().state.suited
    assert suited.title.startswith("Most likely to suit so far: no. 4")
    assert suited.advice.startswith("Re-ride it: one more run on no. 4 would tell most")


def test_setups_rated_alike_are_not_ranked(desk):
    day = Day(desk)
    for position in (6, 10, 12, 6, 10, 12):
        day.move(position)
        day.run(6)
    suited = day.sheet().state.suited
    assert "Most likely" not in suited.title


# Along an adjuster


def test_the_curve_lies_between_the_positions_ridden_and_the_ruler_counts_twenty_chances(desk):
    day = Day(desk)
    for position, liking, way in ((6, 5, -1), (10, 8, 0), (14, 6, 1), (10, 7, 0)):
        day.move(position)
        day.run(liking, way=way)
    response = day.sheet().state.along.response
    assert response.ridden == (6, 14)
    assert response.curve.positions == tuple(range(6, 15))
    assert len(response.peaks) == 20
    assert response.low <= response.likely <= response.high
    assert all(dot.is_strong for dot in response.dots)


def test_a_picked_change_stands_out_along_its_adjuster(desk):
    day = Day(desk)
    for position, liking in ((6, 5), (10, 8), (14, 6)):
        day.move(position)
        day.run(liking)
    dots = picked(day).along.response.dots
    assert [(dot.position, dot.is_strong) for dot in dots] == [(6, True), (10, True), (14, False)]


def test_runs_along_an_adjuster_are_found_also_after_another_one_was_moved(desk):
    day = Day(desk)
    for position, liking in ((6, 5), (10, 8), (14, 6)):
        day.move(position)
        day.run(liking)
    day.move(8, place=2)
    day.run(7)
    response = day.sheet().state.along.response
    assert [dot.position for dot in response.dots] == [6, 10, 14]
    assert "Everything else as in setup no. 3, not as it stands now." in response.said


# In words


def test_all_of_it_can_be_read_out(desk):
    day = Day(desk, temperature_c=14.0)
    a_b_a(day)
    view_model = day.sheet()
    view_model.pick_change("1-2")
    text = view_model.state.read_out
    lines = text.splitlines()
    assert lines[0] == "Larch 150 for M. Anders: what the runs say."
    assert lines[1].startswith("14 May 2031, Quarry loop, 7 runs, dry, 14")
    assert lines[2].startswith("Judged by the liking, one thing named before riding.")
    assert view_model.state.effects.rows[0].verdict in text
    assert "What lowers certainty: the rider knew the setting" in text
    assert view_model.state.suited.title in text
    assert not {"best", "optimal", "significant", "proven"} & set(text.lower().replace(",", " ").split())


def test_no_difference_between_a_run_and_the_one_before_is_ever_told(desk):
    day = Day(desk)
    day.run(2)
    day.move(10)
    day.run(7)
    state = day.sheet().state
    assert "+5" not in state.read_out
    assert abs(state.effects.rows[0].effect) < 4, "a change after a poor run is not the jump between two ratings"


def test_the_tables_carry_attributes_and_what_was_judged_by(desk):
    day = Day(desk, response="lap_s")
    day.run(5, lap_s=165.0, ratings=(("grip", 7, "front"), ("composure", 3, "rear")))
    day.move(10)
    day.run(7, lap_s=160.0)
    view_model = day.sheet()
    heads, first, second = (line.split(",") for line in view_model.runs_csv().splitlines())
    told = dict(zip(heads, first, strict=True))
    assert (told["judged_by"], told["grip_front"], told["composure_rear"], told["grip_rear"]) == ("lap_s", "7", "3", "")
    assert dict(zip(heads, second, strict=True))["grip_front"] == ""
    changes = view_model.effects_csv().splitlines()
    assert changes[0].startswith("change,unit,difference")
    assert ",percent," in changes[1]
