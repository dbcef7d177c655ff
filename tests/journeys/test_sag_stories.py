"""Stories about springs at the bench: a child, a second chamber, a pump's hose, a heavier rider; in the real window."""

from __future__ import annotations

from typing import Any

import pytest

from tests.fixtures import a_baseline, a_counted_bike
from tests.journeys.hand import Hand, Sight, draft
from tests.journeys.openings import PSI, opening, put_on_bench
from tests.journeys.walks import begin_sag, read_sag, tick_all
from tests.journeys.ways import BothHands
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag
from workbench.model.sag_rules import Band, SagRound
from workbench.model.unit import Unit

pytestmark = [pytest.mark.window, pytest.mark.journey]


def psi(kpa: float) -> float:
    """A pressure as a gauge in psi shows it."""
    return round(kpa / PSI, 1)


def test_a_child_at_the_lowest_pressure_is_limited_and_not_met_and_shown_a_way_out(hand):
    with opening(hand) as desk:
        bike = a_counted_bike(desk, rider="T. Anders", mass_kg=28.0)
        fork = desk.ask(bike_parts(bike.id)).unit("front")
        desk.do("Limit", edit(Unit, fork.id, "minimum_kpa", 40 * PSI), bike_id=bike.id)
        put_on_bench(desk, bike, "garage")
    work = BothHands(hand)
    hand.start()
    work.tick("facts_rider_is_child")
    begin_sag(work, "front")
    work.enter("sag_pressure_kpa_entry", "35 psi", "sag_guide_verb")
    hand.sees("Air pressure: below the lowest pressure allowed for this fork. Allowed is at least 40 psi.")
    work.enter("sag_pressure_kpa_entry", "40 psi", "sag_guide_verb")
    read_sag(work, ("12 mm", "12.5 mm"))
    hand.sees(
        "Too little sag: 8 %, aimed at is 18 to 22 %.",
        "Limited: the lowest pressure the maker allows.",
        "The band is not met there; ask a mechanic about a lighter spring or a retune.",
    )
    work.press("sag_guide_verb")
    hand.wait_for("sag_put_back_stage")
    work.press("sag_both_ends")
    hand.sees(
        "done 14 May 2031, not met",
        "Limited, not met: 8 %, aimed at is 18 to 22 %, at the lowest pressure the maker allows",
    )
    records = hand.quit()
    (kept,) = records["sag_measurement"]
    assert (kept["sag_mm"], psi(kept["pressure_kpa"]), kept["rider_mass_kg"]) == (12.25, 40.0, 28.0)
    assert kept["sag_mm"] / kept["travel_mm"] < kept["target_low"], "kept as it is, and not as met"
    assert [bool(one["is_child"]) for one in records["person"]] == [True]


def test_a_second_positive_chamber_is_filled_in_the_makers_order_and_stands_above_the_main_one(hand):
    with opening(hand) as desk:
        put_on_bench(desk, a_counted_bike(desk), "garage")
    work = BothHands(hand)
    hand.start()
    work.tick("facts_fork_has_second_positive")
    work.press("facts_fork_fill_order_main_first")
    hand.sees("Fill the main chamber, then the second one; the second always stands above the main one.")
    begin_sag(work, "front")
    work.fill("sag_second_kpa_entry", "60 psi")
    work.enter("sag_pressure_kpa_entry", "75 psi", "sag_guide_verb")
    hand.sees("Second chamber: 60 psi is not above the 75 psi of the main one. Fill in the maker's order.")
    work.fill("sag_second_kpa_entry", "130 psi")
    work.press("sag_guide_verb")
    read_sag(work, ("30 mm", "31 mm"))
    hand.sees("In the band: 20 %.")
    work.press("sag_guide_verb")
    hand.wait_for("sag_put_back_stage")
    tick_all(work, "sag_put_back_")
    work.go("baseline")
    work.press("baseline_keep")
    hand.sees("Setup no. 1", "Fork: second chamber pressure", "130 psi")
    records = hand.quit()
    (kept,) = records["sag_measurement"]
    assert (psi(kept["pressure_kpa"]), psi(kept["second_kpa"])) == (75.0, 130.0)
    (unit,) = [one for one in records["unit"] if one["kind"] == "fork"]
    assert (bool(unit["has_second_positive"]), unit["fill_order"]) == (True, "main_first")
    setting = {one["item"]: one["value"] for one in records["setup_value"] if one["subject_id"] == unit["id"]}
    assert (psi(setting["pressure"]), psi(setting["second_pressure"])) == (75.0, 130.0)


def test_what_a_hose_takes_is_no_leak_and_what_it_does_not_explain_is_one(hand):
    with opening(hand) as desk:
        put_on_bench(desk, a_counted_bike(desk), "sag")
    work = BothHands(hand)
    hand.start()
    begin_sag(work, "rear")
    work.enter("sag_pump_name", "Long hose", "sag_pump_add")
    work.fill("sag_again_kpa_entry", "173 psi")
    work.enter("sag_pressure_kpa_entry", "180 psi", "sag_guide_verb")
    hand.wait_for("sag_measure_stage")
    work.press("sag_guide_back")
    hand.sees("This hose takes 3.9 %, learned from two attachments.")
    work.fill("sag_pressure_kpa_entry", "166 psi")
    hand.kill_and_start(lambda content: "166 psi" in draft(content, "sag"))
    hand.wait_text("sag_pressure_kpa_entry", "166 psi")
    work.fill("sag_pressure_kpa_entry", "166 psi")
    hand.keys("Tab")
    hand.sees("The hose explains it; no sign of a leak.")
    work.fill("sag_pressure_kpa_entry", "140 psi")
    hand.keys("Tab")
    hand.sees("less than the hose explains: a leak is suspected.")
    work.press("sag_guide_verb")
    read_sag(work, ("17 mm", "17.5 mm"))
    work.press("sag_guide_verb")
    hand.wait_for("sag_put_back_stage")
    _holds_every_attachment(hand.quit())


def _holds_every_attachment(records: dict[str, Any]) -> None:
    (pump,) = records["pump"]
    assert pump["name"] == "Long hose"
    told = sorted((one for one in records["on_bike"] if one["pump_id"]), key=lambda one: one["sequence"])
    assert [(psi(one["value"]), one["how"]) for one in told] == [
        (180.0, "as_pumped"), (173.0, "as_attached"), (140.0, "as_attached"),
    ]  # fmt: skip
    (kept,) = records["sag_measurement"]
    assert (psi(kept["pressure_kpa"]), kept["pressure_how"], kept["pump_id"]) == (140.0, "as_attached", pump["id"])


def test_a_rider_two_kilos_heavier_is_asked_to_measure_again_and_rides_a_setup_of_its_own_number(hand):
    _measured_and_set(hand)
    work = BothHands(hand)
    hand.start()
    work.fill("facts_rider_mass_kg_entry", "86.5 kg")
    hand.keys("Tab")
    hand.hears("job_line_sag", "front again, rider 2.0 kg heavier")
    work.go("sag")
    hand.sees("The rider is 2 kg heavier than then: sag will be deeper, measure again.")
    hand.keys("ctrl+r")
    hand.wait_text("carry_rider_kg", "86.5")
    work.fill("carry_there_c", "20")
    hand.sees("77.1 psi", "184.6 psi", "The rider is 2 % heavier, so is the load: measure the sag again.")
    work.go("baseline")
    work.press("baseline_anew")
    work.fill(_line_of(hand, "Fork: air pressure"), "77.1 psi")
    work.fill(_line_of(hand, "Shock: air pressure"), "184.6 psi")
    work.press("baseline_keep")
    hand.sees("Setup no. 2", "Fork: air pressure: 77.1 psi", "Shock: air pressure: 184.6 psi")
    work.press("baseline_all")
    hand.sees("The bike stands as this setup says.")
    _holds_both_setups(hand.quit())


def _line_of(hand: Hand, title: str) -> str:
    """The line of a setting on the baseline's sheet."""
    sight = hand.wait(lambda sight: _line_in(sight, title), title)
    return _line_in(sight, title)


def _line_in(sight: Sight, title: str) -> str:
    lines = (one for one in sight["things"] if one["name"].startswith("baseline_value_"))
    return next((str(one["name"]) for one in lines if one["spoken"].startswith(title)), "")


def _holds_both_setups(records: dict[str, Any]) -> None:
    assert [one["mass_kg"] for one in records["person"]] == [86.5]
    assert {one["rider_mass_kg"] for one in records["sag_measurement"]} == {84.5}, "measured with the lighter rider"
    number = {one["id"]: one["number"] for one in records["setup"]}
    ends = {one["id"]: one["end"] for one in records["unit"]}
    stood = {
        (number[one["setup_id"]], ends[one["subject_id"]]): psi(one["value"])
        for one in records["setup_value"]
        if one["item"] == "pressure"
    }
    assert stood == {(1, "front"): 75.0, (1, "rear"): 180.0, (2, "front"): 77.1, (2, "rear"): 184.6}


def _measured_and_set(hand: Hand) -> None:
    """A bike whose sag was right for a rider of 84.5 kg, with setup no. 1 set."""
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        parts = desk.ask(bike_parts(bike.id))
        for unit, kpa, sag_mm, band in zip(
            parts.units, (75 * PSI, 180 * PSI), (30.0, 17.0), (Band(0.18, 0.22, "own"), Band(0.27, 0.3, "own")),
            strict=True,
        ):  # fmt: skip
            one = SagRound((sag_mm, sag_mm), "standing", "helper", desk.now(), kpa, temperature_c=20.0)
            desk.do("Keep sag", keep_sag(bike.id, parts.riders[0].id, unit.id, (one,), band), bike_id=bike.id)
        a_baseline(desk, bike)
        put_on_bench(desk, bike, "garage")
