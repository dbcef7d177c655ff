"""Strengths from paired choices against Agresti's baseball example."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from workbench.evidence.paired import strengths

DATA = Path(__file__).parent / "data" / "bradley_terry_baseball.csv"

# Agresti (2002), Categorical Data Analysis, section 10.6; vignette of the R package BradleyTerry2 1.1.3
WITH_HOME = {
    "Boston": (1.1438027, 0.3378422),
    "Cleveland": (0.7046945, 0.3350014),
    "Detroit": (1.4753572, 0.3445518),
    "Milwaukee": (1.619555, 0.3473653),
    "New York": (1.2813404, 0.3404034),
    "Toronto": (1.3271104, 0.3403222),
}
# statsmodels 0.15.0 and choix 0.4.1
WITHOUT_HOME = {
    "Boston": 1.1076977,
    "Cleveland": 0.68385277,
    "Detroit": 1.4364084,
    "Milwaukee": 1.5813559,
    "New York": 1.2476178,
    "Toronto": 1.2944851,
}


def games():
    lines = DATA.read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [(row["home"], row["away"], int(row["home_wins"]), int(row["away_wins"])) for row in rows]


def test_strengths_with_an_order_effect():
    found = strengths(games(), reference="Baltimore")
    for team, (strength, error) in WITH_HOME.items():
        assert found.strength[team] == pytest.approx(strength, abs=1e-5)
        assert found.error[team] == pytest.approx(error, abs=1e-5)
    assert found.order == pytest.approx(0.3023, abs=1e-4)
    assert found.order_error == pytest.approx(0.1309, abs=1e-4)
    assert found.deviance == pytest.approx(38.643, abs=1e-3)


def test_strengths_without_an_order_effect():
    found = strengths(games(), reference="Baltimore", order_effect=False)
    for team, strength in WITHOUT_HOME.items():
        assert found.strength[team] == pytest.approx(strength, abs=1e-5)
