"""A customer declines a service and a spoke stops the bike; it comes back after an oil change: in the real window."""

from __future__ import annotations

import subprocess
from pathlib import Path
from typing import Any

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session
from tests.journeys.hand import Hand, draft
from tests.journeys.openings import opening, put_on_bench
from tests.journeys.walks import count, rate_run, write_card
from tests.journeys.ways import BothHands, Keyboard, Mouse, Way
from workbench.actions.wear import set_last_service, tell_hours
from workbench.model.unit import Unit

pytestmark = [pytest.mark.window, pytest.mark.journey]


@pytest.mark.parametrize("way", [Mouse, Keyboard])
def test_a_declined_service_stays_due_and_stands_on_the_card_as_declined(hand, way: type[Way], tmp_path):
    _a_bike_at_the_shop(hand)
    work, card = way(hand), tmp_path / "card.pdf"
    hand.start()
    hand.hears("job_line_checkin", "service due: fork lower legs")
    work.press("checkin_begin")
    _look_it_over(work)
    _ride_waits(work)
    write_card(work, card)
    said = _printed(card)
    assert "Service: Fork lower legs, is due: recommended and declined." in said
    assert "52 of 50 h due now" in said
    assert "Pushed home only" in said
    work.go("checkin")
    hand.sees("Due: 52 of 50 h.")
    hand.hears("job_line_checkin", "1 declined")
    _holds_what_was_agreed(hand.quit())


def _printed(card: Path) -> str:
    printed = subprocess.run(["pdftotext", "-layout", str(card), "-"], capture_output=True, text=True, check=True)
    return " ".join(printed.stdout.split())


def _a_bike_at_the_shop(hand: Hand) -> None:
    """A bike with a setup, 152 hours ridden, its lower legs serviced at 100."""
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        desk.do("Hours", tell_hours(bike.id, 152.0), bike_id=bike.id, station="checkin")
        last = set_last_service(bike.id, "lowers", "front", 100.0)
        desk.do("Last service", last, bike_id=bike.id, station="checkin")
        put_on_bench(desk, bike, "checkin")


def _look_it_over(work: Way) -> None:
    """Half of it, a kill, and the rest; then it is filed."""
    hand = work.hand
    work.fill("checkin_bothers", "Knocks when braking")
    work.rate("check_frame_severity", 1)
    work.rate("check_headset_severity", 3)
    hand.wait_for("check_headset_note")
    work.fill("check_headset_note", "lower bearing")
    hand.kill_and_start(lambda content: "lower bearing" in draft(content, "checkin"))
    hand.wait_text("check_headset_note", "lower bearing")
    work.rate("check_wheels_severity", 4)
    hand.wait_for("check_wheels_note")
    work.fill("check_wheels_note", "a spoke is gone")
    work.tick("check_service_lowers_front_declined")
    work.press("checkin_rest")
    work.press("checkin_file")
    hand.wait_for("open_wheels_overrule")
    hand.sees("Do not ride: wheels and axles")


def _ride_waits(work: Way) -> None:
    """Nobody rides until somebody takes it on themselves, by name and with a reason."""
    work.go("ride")
    work.hand.wait_for("window_stop")
    work.go("checkin")
    work.press("open_wheels_overrule")
    work.hand.wait_for("overrule_by")
    work.fill("overrule_by", "A. Weber")
    work.fill("overrule_reason", "Pushed home only")
    work.press("overrule_keep")
    work.hand.sees("A. Weber lets it be ridden nevertheless: Pushed home only")
    work.go("ride")
    work.hand.wait(lambda sight: not any(one["name"] == "window_stop" for one in sight["things"]), "no stop")


def _holds_what_was_agreed(records: dict[str, Any]) -> None:
    assert [one["bothers"] for one in records["check_in"]] == ["Knocks when braking"]
    items = {one["code"]: one for one in records["check_item"]}
    assert (items["wheels"]["overruled_by"], items["wheels"]["override_reason"]) == ("A. Weber", "Pushed home only")
    assert bool(items["service/lowers/front"]["is_declined"])
    assert items["headset"]["note"] == "lower bearing"
    assert items["stanchions"]["severity"] == "fine"
    (lowers,) = [one for one in records["service_part"] if one["part"] == "lowers"]
    assert (lowers["last_hours"], lowers["last_at"]) == (100.0, None), "declined is not done"
    assert {one["number"] for one in records["generation"]} == {1}


def test_a_bike_back_after_an_oil_change_is_counted_and_measured_anew_and_its_old_clicks_are_not_compared(hand):
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        a_run(desk, a_session(desk, bike), liking=6)
        fork = put_on_bench(desk, bike, "checkin").unit("front")
    work = BothHands(hand)
    hand.start()
    work.press("wear_damper_front_serviced")
    hand.hears("job_line_adjusters", "2 of 4 counted")
    hand.hears("job_line_sag", "front due")
    work.go("adjusters")
    hand.sees("not known since the hardware changed")
    work.press("adjusters_next")
    count(work, 2, 5)
    count(work, 3, 6)
    work.go("baseline")
    hand.sees(
        "Its clicks that were counted on earlier hardware are not restored: write a new baseline for those.",
        "6 clicks from closed, counted on earlier hardware",
    )
    work.press("baseline_fresh")
    work.press("baseline_keep")
    work.press("baseline_all")
    work.go("ride")
    hand.sees("Fork: low-speed rebound: counted on other hardware, not compared")
    rate_run(work, 2, 7)
    _holds_two_hardwares(hand.quit(), fork)


def _holds_two_hardwares(records: dict[str, Any], fork: Unit) -> None:
    mine = sorted((one for one in records["generation"] if one["unit_id"] == fork.id), key=lambda one: one["number"])
    assert [(one["number"], one["reason"]) for one in mine] == [(1, "new"), (2, "oil")]
    hardware = {one["id"]: one["generation_id"] for one in records["range_count"]}
    knobs = {one["id"] for one in records["adjuster"] if one["unit_id"] == fork.id}
    number = {one["id"]: one["number"] for one in records["setup"]}
    counted_on = {
        (number[one["setup_id"]], hardware[one["range_id"]])
        for one in records["setup_value"]
        if one["subject_id"] in knobs
    }
    assert counted_on == {(1, mine[0]["id"]), (2, mine[1]["id"])}, "no old click is carried over"
    first, second = sorted(records["run"], key=lambda run: run["number"])
    assert (number[first["setup_id"]], number[second["setup_id"]]) == (1, 2)
    assert second["is_confounded"], "no verdict across hardware"
