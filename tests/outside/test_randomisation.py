"""Exact randomisation tests against published exact probabilities."""

from __future__ import annotations

from itertools import product

import pytest

from workbench.evidence.blind import block_orders, randomisation_p


def ranks(values):
    order = sorted(values)
    return [order.index(value) + (order.count(value) + 1) / 2 for value in values]


def test_mann_whitney_example_of_hollander_and_wolfe():
    # Hollander & Wolfe (1999), Nonparametric Statistical Methods, 2nd ed., example 4.2: W = 106, p = 0.00186
    control = [1042, 1617, 1180, 973, 1552, 1251, 1151, 728, 1079, 951, 1319]
    treated = [874, 389, 612, 798, 1152, 893, 541, 741, 1064, 862, 213]
    p = randomisation_p(ranks(control + treated), "C" * 11 + "T" * 11)
    assert p == pytest.approx(0.00186, abs=5e-6)


def test_paired_sign_flips_of_the_statxact_manual():
    # StatXact manual p. 183, AIDS antigen data, quoted in the tests of the R package exactRankTests: two-sided 0.0021
    differences = [-149, 51, 0, 126, -106, -20, 0, -52, -292, 0, -103, 0, -84, -89, -159, -404, -500, -259, -14, -2600]
    kept = [difference for difference in differences if difference]  # a zero is the same either way round
    values = [part for difference in kept for part in (0.0, float(difference))]
    orders = [tuple(label for pair in pairs for label in pair) for pairs in product(("AB", "BA"), repeat=len(kept))]
    p = randomisation_p(values, "AB" * len(kept), allowed_orders=orders)
    assert p == pytest.approx(0.0021, abs=5e-5)


def test_sum_of_signed_ranks_of_hollander_and_wolfe():
    # Hollander & Wolfe, depression scale: V = 5 of 9 pairs, two-sided p = 0.03906
    x = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3]
    y = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29]
    gaps = [b - a for a, b in zip(x, y, strict=True)]
    size = ranks([abs(gap) for gap in gaps])
    values = [part for gap, rank in zip(gaps, size, strict=True) for part in (0.0, rank if gap > 0 else -rank)]
    p = randomisation_p(values, "AB" * 9, allowed_orders=block_orders("AB", blocks=9))
    assert p == pytest.approx(0.03906, abs=5e-6)


def test_tea_tasting():
    # Fisher (1935), The Design of Experiments, chapter 2: 1 of 70 orders one-sided, hence 2 of 70 two-sided
    assert randomisation_p([1, 1, 0, 0, 1, 0, 1, 0], "MMTTMTMT") == pytest.approx(2 / 70)


def test_a_pure_trend_is_no_effect_in_alternating_blocks():
    # the series 1..10 of Tarlow (2017): phases AAAAABBBBB separate it wholly (Tau = 1), alternation does not
    trend = list(range(1, 11))
    assert randomisation_p(trend, "AAAAABBBBB") == pytest.approx(2 / 252)
    assert randomisation_p(trend, "ABBAABBABA", allowed_orders=block_orders("AB", blocks=5)) > 0.5
