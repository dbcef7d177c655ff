"""The linear part against certified values of the NIST Statistical Reference Datasets."""

from __future__ import annotations

import csv
import json
from pathlib import Path

import numpy as np
import pytest

from workbench.evidence.linear import gaussian_posterior, least_squares, one_way

NIST = Path(__file__).parent / "data" / "nist"


def rows(name):
    lines = (NIST / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def certified(name):
    return json.loads((NIST / f"{name}.certified.json").read_text(encoding="utf-8"))


def design(name):
    table = rows(name)
    y = np.array([float(row["y"]) for row in table])
    xs = [np.array([float(row[column]) for row in table]) for column in table[0] if column != "y"]
    one = np.ones_like(y)
    if name == "NoInt1":
        return xs[0][:, None], y
    if name == "Pontius":
        return np.stack([one, xs[0], xs[0] ** 2], axis=1), y
    if name == "Wampler1":
        return np.stack([xs[0] ** power for power in range(6)], axis=1), y
    return np.stack([one, *xs], axis=1), y


@pytest.mark.parametrize(("name", "digits"), [("Norris", 1e-9), ("NoInt1", 1e-9), ("Pontius", 1e-8), ("Longley", 1e-7)])
def test_least_squares_reaches_the_certified_values(name, digits):
    fit, truth = least_squares(*design(name)), certified(name)
    for found, error, wanted in zip(fit.coefficients, fit.errors, truth["estimate_and_sd"].values(), strict=True):
        assert found == pytest.approx(wanted[0], rel=digits)
        assert error == pytest.approx(wanted[1], rel=digits)
    assert fit.residual_sd == pytest.approx(truth["residual_sd"], rel=digits)
    assert fit.r_squared == pytest.approx(truth["r_squared"], rel=1e-9)


def test_a_steep_polynomial_keeps_seven_digits():
    fit = least_squares(*design("Wampler1"))
    assert fit.coefficients == pytest.approx(np.ones(6), rel=1e-7)


@pytest.mark.parametrize(("name", "digits"), [("SiRstv", 1e-8), ("SmLs01", 1e-9), ("SmLs04", 1e-6)])
def test_analysis_of_variance_reaches_the_certified_values(name, digits):
    groups: dict[str, list[float]] = {}
    for row in rows(name):
        groups.setdefault(row["group"], []).append(float(row["y"]))
    found, truth = one_way(list(groups.values())), certified(name)
    assert found.f == pytest.approx(truth["F"], rel=digits)
    assert (found.between_df, found.within_df) == (truth["between"][0], truth["within"][0])
    assert found.residual_sd == pytest.approx(truth["residual_sd"], rel=digits)


def test_eight_rides_up_a_hill_with_seven_changes():
    # Box, Hunter & Hunter (1978) p. 391: two of seven changes matter (dynamo 12 s, gear 22.5 s)
    table = rows("BOXBIKE2")
    names = [column for column in table[0] if column != "time_s"]
    x = np.array([[1.0, *(float(row[name]) for name in names)] for row in table])
    fit = least_squares(x, np.array([float(row["time_s"]) for row in table]))
    assert fit.coefficients[0] == pytest.approx(66.5)
    assert 2 * fit.coefficients[1:] == pytest.approx([3.5, 12.0, 1.0, 22.5, 0.5, 1.0, 2.5])


@pytest.mark.parametrize("name", ["Norris", "NoInt1"])
def test_the_posterior_without_a_prior_is_least_squares(name):
    x, y = design(name)
    truth = certified(name)
    sd = truth["residual_sd"]
    weight = np.full((1, y.size), 1 / sd**2)
    none = np.zeros((1, x.shape[1]))
    mean, covariance = gaussian_posterior(x, none, none, weight, weight * y)
    for index, wanted in enumerate(truth["estimate_and_sd"].values()):
        assert mean[0, index] == pytest.approx(wanted[0], rel=1e-8)
        assert np.sqrt(covariance[0, index, index]) == pytest.approx(wanted[1], rel=1e-8)
