"""Stories from a day of riding: a hot shock, a lever left closed, a spacer with its pressure; in the real window."""

from __future__ import annotations

from typing import Any

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.journeys.hand import words_of
from tests.journeys.openings import PSI, opening, put_on_bench
from tests.journeys.walks import change_by_hand, rate_run
from tests.journeys.ways import BothHands
from workbench.actions.edit import edit
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings
from workbench.actions.sag import keep_sag
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item
from workbench.model.unit import Unit

pytestmark = [pytest.mark.window, pytest.mark.journey]


def in_order(runs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Runs by their number."""
    return sorted(runs, key=lambda run: run["number"])


def test_a_shock_that_reads_more_when_hot_is_left_alone_and_once_let_out_it_is_another_setup(hand):
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        shock = desk.ask(bike_parts(bike.id)).unit("rear")
        cold = set_item(bike.id, Item.PRESSURE, shock.id, 165 * PSI, "set_to", temperature_c=20.0)
        desk.do("Set", cold, bike_id=bike.id)
        a_baseline(desk, bike)
        session = a_session(desk, bike, temperature_c=20.0)
        a_run(desk, session, liking=6)
        put_on_bench(desk, bike, "ride")
    work = BothHands(hand)
    hand.start()
    hand.wait_text("run_title", "Run 2")
    hand.keys("ctrl+r")
    hand.wait_for("carry_sheet")
    hand.wait_text("carry_here_c", "20")
    work.fill("carry_there_c", "55")
    hand.sees(
        "A can that is hot from riding shows more: that is normal, let nothing out.",
        "Left alone it shows 186.5 psi there.",
        "145.8 psi would remain at 20 °C: that is a changed setup, and so are the runs after it.",
    )
    work.go("ride")
    rate_run(work, 2, 6)
    change_by_hand(work, "Shock: air pressure", "165 psi")
    hand.sees("It stands at 165 psi already. If some was let out while it was hot, enter what remains once it is cold")
    change_by_hand(work, "Shock: air pressure", "145.8 psi")
    hand.sees("Changed: Shock: air pressure 165 psi to 145.8 psi. Ride it now.")
    rate_run(work, 3, 5)
    records = hand.quit()
    numbers = {one["id"]: one["number"] for one in records["setup"]}
    assert [numbers[run["setup_id"]] for run in in_order(records["run"])] == [1, 1, 2]
    stood = {
        numbers[one["setup_id"]]: (round(one["value"] / PSI, 1), one["temperature_c"])
        for one in records["setup_value"]
        if (one["item"], one["subject_id"]) == ("pressure", shock.id)
    }
    assert stood == {1: (165.0, 20.0), 2: (145.8, 20.0)}


FIRM, OPEN = (5, 5, 5, 5), (8, 8, 8, 1, 1, 1)  # the last three with the lever left closed


def test_three_runs_with_the_lever_left_closed_are_set_aside_and_the_verdict_goes_without_them(hand):
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        session = a_session(desk, bike)
        for liking in FIRM:
            a_run(desk, session, liking=liking)
        rebound = desk.ask(bike_parts(bike.id)).adjusters[1]
        rider_id = session.rider_id
        out = change_settings(bike.id, rider_id, {(Item.ADJUSTER.value, rebound.id): 10.0}, session_id=session.id)
        desk.do("Out", out, bike_id=bike.id)
        for liking in OPEN:
            a_run(desk, session, liking=liking)
        put_on_bench(desk, bike, "review")
    work = BothHands(hand)
    hand.start()
    hand.sees("10 runs in 1 session.", "perhaps rated higher with no. 2 than with no. 1", "not settled")
    work.go("ride")
    work.press("run_marks")
    work.choose("mark_first", "8")
    work.choose("mark_last", "10")
    work.choose("mark_what", "Rear lever closed by mistake")
    work.press("mark_take")
    hand.sees("liking 1, set aside: Rear lever closed by mistake")
    work.go("review")
    hand.sees("10 runs in 1 session, 3 set aside.", "probably rated higher with no. 2 than with no. 1")
    records = hand.quit()
    runs = in_order(records["run"])
    assert [run["liking"] for run in runs] == [*FIRM, *OPEN], "nothing is deleted"
    assert [(bool(run["is_set_aside"]), run["lever"]) for run in runs] == [(False, "")] * 7 + [
        (True, "rear closed")
    ] * 3


SIZES = {"area_mm2": 850.0, "positive_mm3": 850.0 * 230, "negative_mm3": 850.0 * 45}
SPACERS = {"spacer_volume_mm3": 10_000.0, "spacer_limit": 4}


def test_a_spacer_and_the_pressure_that_goes_with_it_are_one_change(hand):
    with opening(hand) as desk:
        bike = a_counted_bike(desk, fork_travel_mm=160.0)
        parts = desk.ask(bike_parts(bike.id))
        fork = parts.unit("front")
        for name, value in {**SIZES, **SPACERS}.items():
            desk.do("Fact", edit(Unit, fork.id, name, value), bike_id=bike.id)
        one = SagRound((32.0, 32.0), "standing", "helper", desk.now(), 75 * PSI, spacers=0, temperature_c=20.0)
        sag = keep_sag(bike.id, parts.riders[0].id, fork.id, (one,), Band(0.18, 0.22, "own"))
        desk.do("Keep sag", sag, bike_id=bike.id)
        a_baseline(desk, bike)
        a_run(desk, a_session(desk, bike, temperature_c=20.0), liking=6)
        put_on_bench(desk, bike, "ride")
    work = BothHands(hand)
    hand.start()
    hand.wait_text("run_title", "Run 2")
    hand.keys("ctrl+r")
    work.fill("carry_there_c", "20")
    work.fill("carry_spacers_front", "1")
    hand.sees("1 spacer and this pressure, one change", "73.4 psi")
    work.go("ride")
    change_by_hand(work, "Fork: volume spacers", "1")
    hand.sees("Changed: Fork: volume spacers 0 to 1. Ride it now.")
    hand.kill_and_start(lambda content: len(content["records"]["setup"]) == 2)
    hand.sees("Changed: Fork: volume spacers 0 to 1. Ride it now.")
    change_by_hand(work, "Fork: air pressure", "73.4 psi")
    hand.sees("Changed: Fork: air pressure 75 psi to 73.4 psi; Fork: volume spacers 0 to 1. Ride it now.")
    change_by_hand(work, "Fork: low-speed rebound", "10")
    hand.sees("allowed is one change between two runs")
    rate_run(work, 2, 7)
    hand.sees("Fork: air pressure 75 psi to 73.4 psi; Fork: volume spacers 0 to 1")
    assert "2 things at once" not in words_of(hand.look()), "that was about the run before"
    records = hand.quit()
    first, second = in_order(records["run"])
    assert not second["is_confounded"], "linked, so one change"
    stood = {
        (one["setup_id"], one["item"]): one["value"] for one in records["setup_value"] if one["subject_id"] == fork.id
    }
    assert round(stood[first["setup_id"], "pressure"] / PSI, 1) == 75.0
    assert round(stood[second["setup_id"], "pressure"] / PSI, 1) == 73.4
    assert [stood[run["setup_id"], "spacers"] for run in (first, second)] == [0.0, 1.0]
