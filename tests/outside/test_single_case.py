"""Overlap measures against published single-case examples, and the trap of a pure trend."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from workbench.evidence.effects import Caution, RunRecord, Verdict, judge_changes
from workbench.evidence.overlap import corrected_tau, nap, tau, tau_u

DATA = Path(__file__).parent / "data" / "single_case_series.csv"


def phases(series):
    lines = DATA.read_text(encoding="utf-8").splitlines()
    rows = [
        row for row in csv.DictReader(line for line in lines if not line.startswith("#")) if row["series"] == series
    ]
    return tuple([float(row["value"]) for row in rows if row["phase"] == phase] for phase in "AB")


def test_parker_vannest_and_davis_2011():
    # NAP 0.9167, Tau 0.8333; first example
    before, after = phases("pvd2011_ex1")
    assert nap(before, after) == pytest.approx(0.91666667)
    assert tau(before, after) == pytest.approx(0.83333333)


def test_parker_vannest_davis_and_sauber_2011():
    # Tau 16/20, Tau-U 11/20
    before, after = phases("pvd2011_ex2")
    assert tau(before, after) == pytest.approx(16 / 20)
    assert tau_u(before, after) == pytest.approx(11 / 20)


def test_parker_and_vannest_2009():
    # NAP 0.96
    assert round(nap(*phases("pv2009")), 2) == 0.96


def test_a_fall_is_read_by_turning_the_phases_round():
    # documentation of the R package scan, nap: 94 % for a wanted decrease
    before, after = phases("gretchen_decrease")
    assert nap(after, before) == pytest.approx(0.9375)


def test_baseline_corrected_tau_of_a_falling_baseline():
    # documentation of the R package scan, corrected_tau: 0.70 after correction
    assert corrected_tau(*phases("scan_corrected_tau")) == pytest.approx(0.70, abs=0.005)


def test_a_pure_trend_is_sold_by_the_simple_measure_only():
    # Tarlow (2017): Tau 1.0, Tau-U 0.6, baseline corrected Tau 0.0
    before, after = phases("tarlow_linear")
    assert tau(before, after) == 1.0
    assert tau_u(before, after) == pytest.approx(0.6)
    assert corrected_tau(before, after) == 0.0


def test_the_session_model_does_not_sell_a_pure_trend_either():
    before, after = phases("tarlow_linear")
    runs = [RunRecord("A", value) for value in before] + [RunRecord("B", value) for value in after]
    for scale in (None, (0, 11, 1)):
        (row,) = judge_changes(runs, scale=scale)
        assert row.verdict not in (Verdict.HELPED, Verdict.HURT)
        assert row.low < 0 < row.high
        assert Caution.NO_RETURN in row.cautions
