"""Where a baseline begins, and what it may not hold."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.model.bikes import ADJUSTERS, COIL, FORK, a_log, parts_of
from workbench.model.baseline import (
    AS_FOUND,
    MAKER,
    MIDDLE,
    NONE_FITTED,
    NOT_COUNTED,
    NOT_KNOWN,
    baseline_question,
    propose_baseline,
)


def proposal(log=(), **about):
    return {
        (one.item, one.subject_id): (one.value, one.origin) for one in propose_baseline(parts_of(log=log, **about), log)
    }


def advised(steps, counted_from="closed"):
    return tuple(
        replace(one, chart_steps=steps, chart_from=counted_from) if one.id == "fr" else one for one in ADJUSTERS
    )


def test_the_makers_advice_comes_first_then_as_found_then_the_middle():
    log = a_log(("adjuster", "fr", 6.0, "counted"), ("adjuster", "fr", 17.0, "opened"))
    assert proposal(log, adjusters=advised(7, "open"))["adjuster", "fr"] == (10.0, MAKER)
    assert proposal(log)["adjuster", "fr"] == (6.0, AS_FOUND)
    assert proposal()["adjuster", "fr"] == (8.0, MIDDLE)


def test_advice_or_a_find_beyond_the_counted_range_is_not_taken():
    log = a_log(("adjuster", "fr", 30.0, "stated"))
    assert proposal(log, adjusters=advised(40))["adjuster", "fr"] == (8.0, MIDDLE)


def test_what_is_not_known_is_left_open_and_says_so():
    found = proposal(ranges={})
    assert found["adjuster", "fr"] == (None, NOT_COUNTED)
    assert found["pressure", "fork"] == (None, NOT_KNOWN)
    assert found["spacers", "fork"] == (0.0, NONE_FITTED)


def test_a_coil_assumes_no_preload_but_never_a_rate():
    found = proposal(units=(FORK, COIL))
    assert found["preload", "shock"] == (0.0, NONE_FITTED)
    assert found["spring_rate", "shock"] == (None, NOT_KNOWN)


@pytest.mark.parametrize(
    ("item", "subject", "value", "said"),
    [
        ("adjuster", "fr", 18.0, "From 0 (closed) to 17 (open)."),
        ("adjuster", "fr", 17.0, ""),
        ("pressure", "fork", 299.0, "Below the lowest pressure"),
        ("pressure", "fork", 300.0, ""),
        ("pressure", "fork", 901.0, "Above the highest pressure"),
        ("pressure", "shock", 5000.0, "Far outside"),
        ("pressure", "shock", -1.0, "Not below 0."),
        ("spacers", "fork", 4.0, "No more than 3 spacers"),
        ("spacers", "shock", 31.0, "Far outside"),
        ("tyre_pressure", "rt", 900.0, "Far outside"),
        ("tyre_pressure", "rt", 170.0, ""),
        ("pressure", "fork", None, ""),
    ],
)
def test_what_cannot_be_set_is_said(item, subject, value, said):
    found = baseline_question(parts_of(), item, subject, value)
    assert found.startswith(said)
    assert bool(found) == bool(said)


def test_preload_beyond_the_makers_limit_is_refused():
    assert "preload" in baseline_question(parts_of(units=(FORK, COIL)), "preload", "shock", 3.5)


def test_a_second_chamber_has_limits_of_its_own():
    fork = replace(FORK, maximum_kpa=800.0, has_second_positive=True, second_maximum_kpa=1200.0)
    parts = parts_of(units=(fork, COIL))
    assert baseline_question(parts, "second_pressure", "fork", 1100.0) == ""
    assert "highest" in baseline_question(parts, "second_pressure", "fork", 1300.0)
    assert "highest" in baseline_question(parts, "pressure", "fork", 1100.0)
