"""Which checks a bike is given, and what a length measured means."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.model.bikes import COIL, FORK, SHOCK, parts_of
from workbench.model.check_list import CHECKS
from workbench.model.checks import AREAS, checks_for, measured_verdict, nominal_mm


def codes(parts, depth="full"):
    return [check.code for check in checks_for(parts, depth)]


def test_a_full_inspection_holds_the_quick_one_and_goes_by_area():
    quick, full = (checks_for(parts_of(), depth) for depth in ("quick", "full"))
    assert set(quick) < set(full)
    assert len(quick) <= 14
    areas = [check.area for check in full]
    assert areas == sorted(areas, key=list(AREAS).index)


@pytest.mark.parametrize(
    ("units", "absent", "present"),
    [
        (
            (SHOCK,),
            {"crown", "stanchions", "fork_seals", "fork_damping", "exposed_front", "travel_front"},
            "rigid_fork",
        ),
        ((FORK,), {"shaft", "shock_seals", "shock_damping", "pivots", "exposed_rear", "travel_rear"}, "stanchions"),
        ((FORK, SHOCK), {"coil_collar", "rigid_fork", "crown_bolts", "sliders", "fork_damping_leg", "motor"}, "crown"),
        ((FORK, COIL), {"rigid_fork"}, "coil_collar"),
        ((replace(FORK, is_dual_crown=True), SHOCK), {"sliders"}, "crown_bolts"),
        ((replace(FORK, is_inverted=True), SHOCK), {"stanchions", "exposed_front"}, "sliders"),
        ((replace(FORK, damper_in_one_leg=True), SHOCK), {"fork_damping"}, "fork_damping_leg"),
    ],
)
def test_what_a_bike_does_not_have_is_not_asked(units, absent, present):
    asked = set(codes(parts_of(units=units)))
    assert not absent & asked
    assert present in asked


def test_an_e_bike_is_asked_about_its_motor():
    parts = parts_of()
    assert "motor" in codes(replace(parts, bike=replace(parts.bike, is_ebike=True)))


def test_every_check_says_how_it_is_done_and_what_is_often_wrong():
    assert len({check.code for check in CHECKS}) == len(CHECKS)
    for check in CHECKS:
        assert check.how.endswith("."), check.code
        assert check.reasons, check.code
        assert len(check.how) < 160, check.code


@pytest.mark.parametrize(
    ("measured", "severity", "words"),
    [(160.0, "", "As it should be."), (157.0, "", "As it should be."), (156.9, "attend", "sucked down")],
)
def test_more_than_three_millimetres_in_sight_too_few_are_to_be_mended_first(measured, severity, words):
    said = measured_verdict("exposed_front", measured, 160.0)
    assert said[0] == severity
    assert words in said[1]


def test_true_travel_is_compared_both_ways_and_with_nothing_where_nothing_is_known():
    assert measured_verdict("travel_front", 146.0, 150.0)[0] == "attend"
    assert "more than stated" in measured_verdict("travel_front", 156.0, 150.0)[1]
    assert measured_verdict("travel_rear", 58.0, 60.0) == ("", "As stated.")
    assert measured_verdict("exposed_rear", 58.0, None)[0] == ""


def test_each_length_is_compared_with_the_fact_of_its_own_end():
    parts = parts_of(units=(replace(FORK, exposed_nominal_mm=171.0), replace(SHOCK, exposed_nominal_mm=62.0)))
    wanted = {"exposed_front": 171.0, "exposed_rear": 62.0, "travel_front": 150.0, "travel_rear": 60.0, "frame": None}
    assert {code: nominal_mm(parts, code) for code in wanted} == wanted
