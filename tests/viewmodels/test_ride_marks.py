"""Several runs put right at once, a start ticked off, and the setup to switch to; without a window."""

from __future__ import annotations

from tests.fixtures import a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.ride import end_session, ride_records
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_start import STILL_LOOK, VERIFY


def test_three_runs_with_the_lever_closed_are_marked_and_shown(desk, bike):
    session = a_session(desk, bike)
    for liking in (5, 6, 4, 7):
        a_run(desk, session, liking=liking)
    riding, _ = shown(RideViewModel, desk, bike.id)
    kept = []
    riding.kept.connect(kept.append)
    assert riding.mark_runs("3", "1", "lever:rear closed")
    assert kept == ["Rear lever closed for 3 runs"]
    rows = riding.state.session.runs
    assert [row.is_set_aside for row in rows] == [False, True, True, True]
    assert "set aside: Rear lever closed by mistake" in rows[1].said
    assert riding.mark_runs("1", "3", "count")
    assert not any(row.is_set_aside for row in riding.state.session.runs)


def test_a_run_nobody_rode_is_said_at_its_field(desk, bike):
    a_run(desk, a_session(desk, bike), liking=5)
    riding, heard = shown(RideViewModel, desk, bike.id)
    assert not riding.mark_runs("1", "9", "reason:Tyre lost air")
    assert heard.field == "mark_last"
    assert "reason:Tyre lost air" in [key for key, _ in riding.state.session.marks]


def test_a_run_entered_with_the_lever_wrong_is_kept_and_set_aside(desk, bike):
    a_session(desk, bike)
    riding, _ = shown(RideViewModel, desk, bike.id)
    riding.set_run("liking", 4)
    riding.set_run("lever", "rear middle")
    assert riding.keep_run()
    (run,) = desk.ask(ride_records(bike.id)).sessions[0].runs
    assert (run.lever, run.is_set_aside) == ("rear middle", True)
    assert run.set_aside_reason == "Rear lever in the middle by mistake"


# Before the first run


def test_what_is_not_ticked_is_asked_for_by_name(desk, bike):
    riding, heard = shown(RideViewModel, desk, bike.id)
    riding.set_start("new_course", "Quarry loop")
    for key in VERIFY:
        if key != "brakes":
            riding.check_start(key, True)
    assert not riding.start_session()
    assert heard.field == "verified"
    assert VERIFY["brakes"] in heard.problems[-1].text
    riding.check_start("brakes", True)
    assert riding.state.start.draft.verified_at
    assert riding.start_session()


def test_a_tick_taken_back_takes_the_verification_back(desk, bike):
    riding, _ = shown(RideViewModel, desk, bike.id)
    riding.set_start("verified", True)
    assert riding.state.start.draft.checked == tuple(VERIFY)
    riding.check_start("axles", False)
    assert not riding.state.start.draft.verified


def test_a_reason_does_not_stand_in_for_brakes_and_axles(desk, bike):
    riding, _ = shown(RideViewModel, desk, bike.id)
    riding.set_start("not_verified", "No time")
    assert riding.state.start.care == STILL_LOOK
    for key in ("rolls", "brakes", "axles"):
        riding.check_start(key, True)
    assert riding.state.start.care == ""


# Named setups


def two_setups(desk, bike):
    """Ride setup 1, change a click, ride setup 2."""
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    riding, _ = shown(RideViewModel, desk, bike.id)
    key = riding.state.session.choices[1].key
    riding.change_by_hand(key, "79")
    a_run(desk, session, liking=6)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    return shown(RideViewModel, desk, bike.id)


def test_a_named_setup_is_found_first_and_leads_to_its_steps(desk, bike):
    riding, _ = two_setups(desk, bike)
    start = riding.state.start
    assert start.setups[0][1] == "Setup no. 2, on the bike now"
    assert start.steps == ()
    riding.set_start("verified", True)
    riding.set_start("setup_id", start.setups[1][0])
    assert riding.name_setup("wet roots")
    start = riding.state.start
    assert start.setups[0][1] == "Setup no. 1 “wet roots”"
    assert len(start.steps) == 1
    assert not start.draft.verified
    riding.take_all_steps()
    assert riding.state.start.steps == ()
    assert desk.ask(ride_records(bike.id)).current.name == "wet roots"


def test_a_name_that_is_too_long_is_said_at_its_field(desk, bike):
    riding, heard = shown(RideViewModel, desk, bike.id)
    assert not riding.name_setup("x" * 10_000)
    assert heard.field == "setup_name"
