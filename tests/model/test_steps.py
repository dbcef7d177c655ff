"""From what is on the bike to a setup: fork first, springs before knobs, tyres last."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from tests.model.bikes import ADJUSTERS, COIL, FORK, a_log, parts_of
from workbench.model.parts import settable_items
from workbench.model.steps import steps_to, values_now

WANTED = {
    ("tyre_pressure", "rt"): 170.0,
    ("adjuster", "sr"): 4.0,
    ("adjuster", "fr"): 6.0,
    ("pressure", "fork"): 520.0,
    ("spacers", "fork"): 1.0,
    ("adjuster", "fc"): 3.0,
}


def test_steps_come_in_setting_order():
    titles = [step.title for step in steps_to(parts_of(), WANTED)]
    assert titles == [
        "Fork: volume spacers",
        "Fork: air pressure",
        "Fork: low-speed compression",
        "Fork: low-speed rebound",
        "Shock: low-speed rebound",
        "Rear tyre pressure",
    ]


def test_what_already_stands_is_left_out_but_a_place_not_known_is_set():
    log = a_log(
        ("adjuster", "fr", 6.0, "set_to"),
        ("adjuster", "fc", None, "unknown"),
        ("pressure", "fork", 520.3, "as_pumped"),
    )
    steps = {(step.item, step.subject_id): step for step in steps_to(parts_of(log=log), WANTED)}
    assert ("adjuster", "fr") not in steps
    assert ("pressure", "fork") not in steps
    assert steps["adjuster", "fc"].relative == "where it stands now is not known"


def test_the_way_to_a_place_is_said_from_closed_with_the_move_in_small_print():
    log = a_log(("adjuster", "fr", 9.0, "set_to"))
    step = next(one for one in steps_to(parts_of(log=log), WANTED) if one.subject_id == "fr")
    assert step.text == "fully closed, then open 6 clicks"
    assert step.relative == "3 clicks in from where it stands"
    assert step.range_id == "r-fr"


def test_an_item_the_setup_does_not_know_is_left_alone():
    assert steps_to(parts_of(), {("pressure", "fork"): None, ("adjuster", "gone"): 3.0}) == ()


def test_a_coil_is_set_before_its_knobs_and_a_second_chamber_after_the_first():
    fork = replace(FORK, has_second_positive=True, negative="separate")
    items = settable_items(parts_of(units=(fork, COIL), adjusters=ADJUSTERS))
    assert [key[0] for key in items] == [
        "spacers",
        "pressure",
        "second_pressure",
        "negative_pressure",
        "adjuster",
        "adjuster",
        "spring_rate",
        "preload",
        "adjuster",
        "tyre_pressure",
        "tyre_pressure",
    ]


@given(st.dictionaries(st.sampled_from(sorted(WANTED)), st.integers(0, 12).map(float)))
def test_once_every_step_is_taken_no_step_is_left(wanted):
    steps = steps_to(parts_of(), wanted)
    log = a_log(*((step.item, step.subject_id, step.value, "set_to") for step in steps))
    parts = parts_of(log=log)
    assert steps_to(parts, wanted) == ()
    now = values_now(parts)
    assert {key: now[key] for key in wanted} == wanted
