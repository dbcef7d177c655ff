"""Optima of response surfaces: published fits, and the click search on ratings a parabola was fitted to.

Sources: Myers, Montgomery & Anderson-Cook (2009), Response Surface Methodology, 3rd ed., Table 7.6, the fit and the
stationary point printed in the article on the R package rsm; Box, Hunter & Hunter (2005), Statistics for Experimenters,
Table 10.17 (values as read in that package). The intervals are by Fieller's theorem, computed with statsmodels 0.15.0;
so are all figures of the ratings, which are constructed.
"""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from workbench.evidence.linear import least_squares
from workbench.evidence.search import ClickSearch, Trial

DATA = Path(__file__).parent / "data" / "rsm_chemreact.csv"
CLICKS = (10, 12, 14, 16, 18, 20, 22, 24)
RATINGS = (5.5, 6.2, 7.0, 7.6, 7.4, 7.7, 6.9, 6.3)
FIELLER = (17.39631, 18.628071)
PEAK = 17.9401709


def parabola(x, y):
    return least_squares(np.stack([np.ones(len(x)), np.array(x), np.array(x) ** 2], axis=1), np.array(y)).coefficients


def test_a_second_order_fit_in_two_blocks_gives_the_published_stationary_point():
    lines = [line for line in DATA.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    one, two = (
        np.array([(float(row[name]) - zero) / 5 for row in rows]) for name, zero in (("Time", 85), ("Temp", 175))
    )
    block = np.array([float(row["Block"] == "B2") for row in rows])
    design = np.stack([np.ones(len(rows)), block, one, two, one * two, one**2, two**2], axis=1)
    fit = least_squares(design, np.array([float(row["Yield"]) for row in rows])).coefficients
    assert fit == pytest.approx([84.095427, -4.45753, 0.932541, 0.577712, 0.125, -1.308555, -0.933442], abs=1e-5)
    bend = np.array([[2 * fit[5], fit[4]], [fit[4], 2 * fit[6]]])
    assert np.linalg.solve(bend, -fit[2:4]) == pytest.approx([0.3722954, 0.3343802], abs=1e-5)


def test_a_parabola_through_six_values_peaks_where_published():
    level, slope, bend = parabola([-1, -1, 0, 0, 1, 1], [80.9, 78, 80.1, 81.4, 68.9, 66])
    assert (level, slope, bend) == pytest.approx((80.75, -6.0, -7.3))
    assert -slope / (2 * bend) == pytest.approx(-0.410958904, rel=1e-6)


def test_the_click_search_finds_the_best_click_a_parabola_finds_in_the_same_ratings():
    fit = parabola(CLICKS, RATINGS)
    assert -fit[1] / (2 * fit[2]) == pytest.approx(PEAK, rel=1e-6)
    found = ClickSearch(30).estimate([Trial(click, rating) for click, rating in zip(CLICKS, RATINGS, strict=True)])
    assert FIELLER[0] - 0.5 <= found.position <= FIELLER[1] + 0.5
    assert found.low < PEAK < found.high


def test_the_click_search_claims_less_than_an_interval_that_takes_the_shape_for_granted():
    found = ClickSearch(30).estimate([Trial(click, rating) for click, rating in zip(CLICKS, RATINGS, strict=True)])
    assert found.high - found.low > FIELLER[1] - FIELLER[0]
