"""Coil springs as records."""

from __future__ import annotations

from workbench.model.coil import curve_text, fitted_rows
from workbench.model.unit import Spring, Unit

SHOCK = Unit("shock", "bike", "rear", "shock", spring="coil", spring_stroke_mm=65.0)
SOFT = ((0.0, 0.0), (20.0, 1000.0), (60.0, 4200.0))  # force over compression 50 to 70 N/mm
HARD = ((0.0, 0.0), (20.0, 1300.0), (60.0, 5400.0))  # 65 to 90


def spring(key, rows, stroke_mm):
    return Spring(key, "shock", rows[-1][1] / rows[-1][0], stroke_mm, curve=curve_text(rows))


def test_a_rate_noted_by_fitting_a_table_stands_for_that_table():
    assert fitted_rows(SHOCK, [spring("a", SOFT, 65.0)], {60.0}, 60.0) == SOFT


def test_a_rate_nobody_noted_so_is_a_spring_of_one_rate():
    assert fitted_rows(SHOCK, [spring("a", SOFT, 65.0)], {61.0}, 60.0) == ()
    assert fitted_rows(SHOCK, [spring("a", SOFT, 65.0)], {60.0}, None) == ()


def test_a_table_that_has_the_rate_nowhere_is_not_the_one():
    assert fitted_rows(SHOCK, [spring("a", SOFT, 65.0), spring("b", HARD, 70.0)], {85.0}, 85.0) == HARD
    assert fitted_rows(SHOCK, [spring("a", SOFT, 65.0)], {85.0}, 85.0) == ()


def test_of_two_tables_that_have_the_rate_the_usable_stroke_noted_with_the_unit_tells():
    both = [spring("a", SOFT, 70.0), spring("b", HARD, 65.0)]
    assert fitted_rows(SHOCK, both, {68.0}, 68.0) == HARD


def test_springs_of_other_units_do_not_count():
    other = Spring("c", "fork", 70.0, 65.0, curve=curve_text(SOFT))
    assert fitted_rows(SHOCK, [other], {60.0}, 60.0) == ()
