"""A customer declines a service, a spoke stops the bike, and it comes back after an oil change: in the real window."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from typing import Any

import pytest

from tests.fixtures import a_baseline, a_counted_bike, make_desk
from tests.journeys.hand import export
from tests.journeys.ways import Keyboard, Mouse, Way
from workbench.actions.desk import Desk
from workbench.actions.garage import garage_rows
from workbench.actions.job import job_records
from workbench.actions.wear import set_last_service, tell_hours
from workbench.model.bike import Station, StationState
from workbench.model.job import Mark, job_marks

pytestmark = [pytest.mark.window, pytest.mark.journey]


@pytest.mark.parametrize("way", [Mouse, Keyboard])
def test_a_service_is_declined_on_the_card_and_an_oil_change_makes_count_and_sag_due(hand, way: type[Way], tmp_path):
    _a_bike_at_the_shop(hand.library)
    work, card = way(hand), tmp_path / "card.pdf"
    hand.start()
    work.go("checkin")
    work.press("checkin_begin")
    _look_it_over(work)
    _ride_waits(work)
    _print(work, card)
    printed = subprocess.run(["pdftotext", str(card), "-"], capture_output=True, text=True, check=True).stdout
    said = " ".join(printed.split())
    assert "Service: Fork lower legs, is due: recommended and declined." in said
    assert "Pushed home only" in said
    work.go("checkin")
    work.press("wear_damper_front_serviced")
    work.go("adjusters")
    hand.wait_for("adjusters_next")
    hand.keys("ctrl+q")
    assert hand.wait_for_end() == 0
    assert hand.trouble() == ""
    _holds_what_was_agreed(export(hand.library)["records"])
    marks = _marks(hand.library)
    assert marks[Station.ADJUSTERS].why == "2 of 4 counted"
    assert marks[Station.SAG].why == "front due"


def _a_bike_at_the_shop(library: Path) -> None:
    """A bike with a setup, 152 hours ridden, its lower legs serviced at 100."""
    before = library.parent / "before"
    before.mkdir()
    with make_desk(before) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        desk.do("Hours", tell_hours(bike.id, 152.0), bike_id=bike.id, station="checkin")
        last = set_last_service(bike.id, "lowers", "front", 100.0)
        desk.do("Last service", last, bike_id=bike.id, station="checkin")
        desk.set_setting("bench/bike", bike.id)
    (before / "bench.trailbench").rename(library)


def _look_it_over(work: Way) -> None:
    """Half of it, a kill, and the rest; then it is filed."""
    hand = work.hand
    work.fill("checkin_bothers", "Knocks when braking")
    work.rate("check_frame_severity", 1)
    work.rate("check_headset_severity", 3)
    hand.wait_for("check_headset_note")
    work.fill("check_headset_note", "lower bearing")
    before = export(hand.library)
    assert "lower bearing" in _draft(before)
    hand.kill()
    assert export(hand.library) == before
    hand.start()
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


def _print(work: Way, card: Path) -> None:
    hand = work.hand
    work.go("card")
    work.press("card_pdf")
    hand.wait_focus("fileNameEdit")
    hand.keys("ctrl+a")
    hand.type(str(card))
    hand.wait_text("fileNameEdit", str(card))
    hand.keys("Return")
    hand.sees("Written to")


def _draft(content: dict[str, Any]) -> str:
    return json.dumps([one["body"] for one in content["drafts"] if not one["closed_by"]])


def _holds_what_was_agreed(records: dict[str, Any]) -> None:
    assert [one["bothers"] for one in records["check_in"]] == ["Knocks when braking"]
    items = {one["code"]: one for one in records["check_item"]}
    assert (items["wheels"]["overruled_by"], items["wheels"]["override_reason"]) == ("A. Weber", "Pushed home only")
    assert bool(items["service/lowers/front"]["is_declined"])
    assert items["headset"]["note"] == "lower bearing"
    assert items["stanchions"]["severity"] == "fine"
    (oil,) = [one for one in records["generation"] if one["number"] == 2]
    assert oil["reason"] == "oil"


def _marks(library: Path) -> dict[Station, Mark]:
    again = library.parent / "again"
    again.mkdir()
    library.rename(again / "bench.trailbench")
    with make_desk(again) as desk:
        return _judged(desk)


def _judged(desk: Desk) -> dict[Station, Mark]:
    (row,) = desk.ask(garage_rows())
    marks = {mark.station: mark for mark in job_marks(desk.ask(job_records(row.bike.id, now=desk.now())))}
    assert marks[Station.CHECKIN].state == StationState.DONE
    return marks
