"""Values said to somebody: their units, dates and counts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from workbench.model.adjuster import Adjuster
from workbench.model.errors import InputError
from workbench.model.person import Person
from workbench.model.reading import Units, from_open_text, how_many, position_text, short_date, short_time, units_of

REBOUND = Adjuster("a", "fork", "rebound", "low")
LEVER = replace(REBOUND, counting="positions", position_names="firm|open")


def test_everybody_reads_their_own_units():
    metric = units_of(Person("p", "A", pressure_unit="bar", length_unit="in", temperature_unit="degF"))
    assert metric.text(551.6, "pressure") == "5.52\u2009bar"
    assert units_of(None) == Units()
    assert Units().text(None, "pressure") == "–"
    assert Units().text(2.0, "count") == "2"


def test_a_number_without_a_unit_is_read_in_the_readers_own():
    assert Units(pressure="bar").parse("5,6", "pressure") == pytest.approx(560.0)
    assert Units(pressure="bar").parse("82 psi", "pressure") == pytest.approx(565.37, abs=0.01)
    with pytest.raises(InputError):
        Units().parse("a lot", "pressure")


def test_a_place_is_said_from_closed_and_from_open():
    assert position_text(REBOUND, 6.0) == "6 clicks from closed"
    assert position_text(REBOUND, 0.0) == "fully closed"
    assert position_text(REBOUND, None) == "not known"
    assert position_text(LEVER, 1.0) == "open"
    assert from_open_text(REBOUND, 6.0, 13) == "7 clicks from open"
    assert from_open_text(REBOUND, 13.0, 13) == "fully open"
    assert from_open_text(REBOUND, 14.0, 13) == ""
    assert from_open_text(LEVER, 1.0, 1) == ""


def test_days_and_counts_are_said_in_words():
    assert short_date("2031-05-04T09:00:00+00:00") == "4 May 2031"
    assert short_time("2031-05-04T09:05:00+00:00") == "4 May 2031, 09:05"
    assert (short_date(""), short_time("")) == ("–", "–")
    assert [how_many(count, "run") for count in (0, 1, 2)] == ["0 runs", "1 run", "2 runs"]
