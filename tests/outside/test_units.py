"""Unit factors against NIST and exact definitions."""

from __future__ import annotations

import pytest

from workbench.model.units import from_unit, parse, to_unit

# NIST Special Publication 811 (2008), Appendix B.8, as printed there (seven figures; the tolerance is half a
# unit of the last one), unless another origin is noted.
NIST_FACTORS = [
    ("1 psi", "pressure", 6.894757, 1e-7),
    ("1 lbf/in", "spring_rate", 0.1751268, 3e-7),
    ("1 in", "length", 25.4, 0),
    ("1 lbf", "force", 4.448222, 1e-7),
    ("1 lb", "mass", 0.45359237, 0),  # international yard and pound agreement, 1959: exact
    ("1 kgf", "force", 9.80665, 0),  # standard gravity, exact
    ("1 bar", "pressure", 100.0, 0),  # SI brochure: exact
    ("1 ft", "altitude", 0.3048, 0),  # exact
]

# pint 0.25.3 and scipy.constants 1.17.1, computed.
COMPUTED_FACTORS = [
    ("1 psi", "pressure", 6.894757293168, 1e-12),
    ("1 lbf/in", "spring_rate", 0.1751268352465, 1e-12),
    ("1 lbf", "force", 4.4482216152605, 1e-14),
]


@pytest.mark.parametrize(("text", "quantity", "inside", "tolerance"), NIST_FACTORS + COMPUTED_FACTORS)
def test_a_unit_has_its_published_size(text, quantity, inside, tolerance):
    unit = text.split()[1]
    assert parse(text, quantity, default_unit=unit) == pytest.approx(inside, rel=tolerance or 1e-15)


def test_one_bar_in_psi():
    assert to_unit(100.0, "pressure", "psi") == pytest.approx(14.503773773, rel=1e-10)  # pint 0.25.3


def test_a_round_trip_through_bar():
    inside = from_unit(120, "pressure", "psi")
    assert to_unit(inside, "pressure", "bar") == pytest.approx(8.2737087518, rel=1e-10)  # pint 0.25.3
    assert to_unit(inside, "pressure", "psi") == pytest.approx(120, rel=1e-12)


# Fixed points of the temperature scales: NIST SP 811, B.8 and B.9 (degF = 1.8 degC + 32; K = degC + 273.15).
@pytest.mark.parametrize(("degf", "degc"), [(32, 0), (212, 100), (-40, -40), (68, 20)])
def test_fahrenheit(degf, degc):
    assert from_unit(degf, "temperature", "degF") == pytest.approx(degc, abs=1e-12)
