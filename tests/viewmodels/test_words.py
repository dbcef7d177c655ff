"""Steps, changes and facts in the words of the person at the bench."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.model.bikes import ADJUSTERS, FORK, a_log, parts_of
from workbench.model.setting import Change
from workbench.model.steps import steps_to
from workbench.viewmodels.change_words import change_text, changes_text
from workbench.viewmodels.fact_rows import fact_row, fact_rows
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import step_lines

LEVER = replace(ADJUSTERS[0], counting="positions", position_names="firm|open", name="Lever <b>")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (Change("adjuster", "fr", 6.0, 9.0), "Fork: low-speed rebound 3 clicks out"),
        (Change("adjuster", "fr", 9.0, 8.0), "Fork: low-speed rebound 1 click in"),
        (Change("adjuster", "fc", 0.0, 1.0), "Fork: Lever <b> to open"),
        (Change("pressure", "fork", 551.58, 565.37), "Fork: air pressure 80\u2009psi to 82\u2009psi"),
        (Change("spacers", "fork", 1.0, 2.0), "Fork: volume spacers 1 to 2"),
        (Change("tyre_pressure", "ft", None, 172.4), "Front tyre pressure – to 25\u2009psi"),
    ],
)
def test_a_change_is_said_with_what_moved_and_how_far(change, said):
    parts = parts_of(adjusters=(LEVER, *ADJUSTERS[1:]))
    assert change_text(parts, change, Units()) == said


def test_no_change_says_so_and_several_are_listed():
    parts = parts_of()
    before = {("adjuster", "fr"): 6.0, ("spacers", "fork"): 1.0}
    assert changes_text(parts, before, before, Units()) == "no change"
    after = {("adjuster", "fr"): 7.0, ("spacers", "fork"): 2.0}
    assert changes_text(parts, before, after, Units()).count("; ") == 1


def test_steps_say_the_value_and_what_stands_there_now():
    log = a_log(("pressure", "fork", 551.58, "as_pumped"))
    wanted = {("pressure", "fork"): 565.37, ("spacers", "fork"): 0.0, ("tyre_pressure", "ft"): 172.4}
    said = [(line.text, line.remark) for line in step_lines(steps_to(parts_of(log=log), wanted), Units())]
    assert said == [
        (
            "Fork: volume spacers: none",
            "not known what is there now; first let the air of every chamber out; if it stays short, do not open it",
        ),
        ("Fork: air pressure: 82\u2009psi", "now 80\u2009psi"),
        ("Front tyre pressure: 25\u2009psi", "not known what is there now"),
    ]


def test_facts_become_rows_in_the_order_asked_for():
    rows = fact_rows(FORK, Units(pressure="bar"), names=("maximum_kpa", "name"), labels={"name": "Call it"})
    assert [(row.name, row.label, row.kind, row.unit) for row in rows] == [
        ("maximum_kpa", "Highest pressure allowed", "quantity", "bar"),
        ("name", "Call it", "text", ""),
    ]
    assert rows[0].value == 900.0


def test_an_odd_value_is_asked_about_in_place_of_the_help():
    from workbench.model.facts import field_of
    from workbench.model.person import Person

    field = field_of(Person, "mass_kg")
    assert "unusual" in fact_row(field, Person("p", "A", mass_kg=12.0), Units()).help
    assert fact_row(field, Person("p", "A", mass_kg=80.0), Units()).help == field.help
