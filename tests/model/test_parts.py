"""A bike read together: what belongs to what, and how it is called."""

from __future__ import annotations

from dataclasses import replace

from tests.model.bikes import ADJUSTERS, FORK, parts_of
from workbench.model.adjuster import RangeCount
from workbench.model.unit import Generation


def test_the_newest_count_on_the_present_hardware_holds():
    parts = parts_of()
    later = RangeCount("later", "fr", "g-fork", 18, None, "")
    assert replace(parts, ranges=(*parts.ranges, later)).range_of("fr") == later
    serviced = replace(parts, generations=(*parts.generations, Generation("g2", "fork", 2, "oil", "")))
    assert serviced.range_of("fr") is None
    assert serviced.range_of("sr").steps == 12
    assert parts.range_of("gone") is None


def test_everything_is_called_by_its_end_and_part():
    named = tuple(replace(one, name="HSC") if one.id == "fc" else one for one in ADJUSTERS)
    parts = parts_of(adjusters=named)
    assert parts.subject_title("adjuster", "fc") == "Fork: HSC"
    assert parts.subject_title("adjuster", "sr") == "Shock: low-speed rebound"
    assert parts.subject_title("pressure", "shock") == "Shock: air pressure"
    assert parts.subject_title("tyre_pressure", "ft") == "Front tyre pressure"
    assert parts.subject_title("tyre_pressure", "gone") == "tyre pressure"


def test_a_bike_without_a_rear_unit_has_none():
    parts = parts_of(units=(FORK,))
    assert parts.unit("rear") is None
    assert {one.unit_id for one in parts.adjusters} == {"fork"}
    assert parts.unit_of(parts.adjusters[0]) == FORK
