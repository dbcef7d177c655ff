"""Whatever a script passes by mistake is refused by the name of its field, never half computed."""

from __future__ import annotations

import math
from functools import partial

import numpy as np
import pytest

from workbench.model.errors import InputError, NotEnoughData
from workbench.model.units import parse, show
from workbench.physics.air import AirChamber, energy_j, force_n, rate_n_per_mm, static_travel_mm
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa
from workbench.physics.balance import damping_from_decay, ride_frequency_hz
from workbench.physics.coil import fit_rate, next_rate, wire_rate_n_per_mm
from workbench.physics.geometry import at_sag
from workbench.physics.leverage import survey, wheel_rate_n_per_mm
from workbench.physics.sag import SagReading, next_pressure, wheel_sag

SPRING = AirChamber(850, 850 * 200, 850 * 45, 160, second_positive_mm3=60_000)
CURVE = survey([0, 10, 20, 30, 40, 50, 60], [0, 31, 60.5, 88, 114, 138.5, 161])
FILLED = {"pressure_kpa": 500.0, "n": 1.2, "second_kpa": 900.0, "negative_kpa": 300.0}
ASKED = [
    (AirChamber, {"area_mm2": 850.0, "positive_mm3": 2e5, "negative_mm3": 4e4, "travel_mm": 160.0, "spacer_mm3": 0.0}),
    (partial(force_n, SPRING), {**FILLED, "travel_mm": 30.0}),
    (partial(rate_n_per_mm, SPRING), {**FILLED, "travel_mm": 30.0}),
    (partial(energy_j, SPRING), {**FILLED, "travel_mm": 30.0}),
    (partial(static_travel_mm, SPRING), {**FILLED, "load_n": 300.0}),
    (
        partial(next_pressure, [SagReading(500.0, 40.0)], end="front"),
        {"travel_mm": 160.0, "target": 0.2, "minimum_kpa": 200.0, "maximum_kpa": 900.0},
    ),
    (partial(wheel_sag, leverage=CURVE), {"shock_sag_mm": 18.0}),
    (next_rate, {"rate_n_per_mm": 80.0, "sag_mm": 18.0, "stroke_mm": 60.0, "target": 0.3, "preload_mm": 1.0}),
    (
        wire_rate_n_per_mm,
        {"wire_mm": 12.0, "mean_diameter_mm": 50.0, "active_coils": 5.0, "shear_modulus_gpa": 79.0},
    ),
    (partial(survey, [0, 10, 20, 30], [0, 30, 58, 85]), {"reading_sd_mm": 1.0}),
    (
        partial(wheel_rate_n_per_mm, CURVE),
        {"wheel_mm": 50.0, "shock_rate_n_per_mm": 80.0, "shock_force_n": 1500.0},
    ),
    (CURVE.ratio, {"wheel_mm": 50.0}),
    (CURVE.wheel, {"stroke_mm": 20.0}),
    (CURVE.stroke, {"wheel_mm": 50.0}),
    (CURVE.interval, {"wheel_mm": 50.0}),
    (carry_pressure, {"pressure_kpa": 500.0, "from_c": 20.0, "to_c": 0.0, "from_m": 0.0, "to_m": 100.0}),
    (standard_pressure_kpa, {"altitude_m": 100.0}),
    (ride_frequency_hz, {"rate_n_per_mm": 10.0, "load_n": 300.0}),
    (damping_from_decay, {"x0": 10.0, "xn": 2.0, "cycles": 3.0}),
    (at_sag, {"wheelbase_mm": 1200.0, "head_angle_deg": 65.0, "fork_sag_mm": 30.0, "rear_axle_up_mm": 40.0}),
]
FIELDS = [(function, asked, field) for function, asked in ASKED for field in asked]
NO_NUMBERS = [math.nan, math.inf, -math.inf, True, "5", "abc", [], [1.0, "x"], {}, 1e308, 10**400, 1j, object()]


def called(case: object) -> str:
    """The name of a function, also of one with arguments filled in."""
    return getattr(case, "__name__", "") or getattr(getattr(case, "func", None), "__name__", "")


@pytest.mark.parametrize(("function", "asked", "field"), FIELDS, ids=lambda part: part if isinstance(part, str) else "")
def test_what_is_no_number_is_refused_by_the_name_of_its_field(function, asked, field):
    function(**asked)
    for wrong in NO_NUMBERS:
        if isinstance(wrong, list) and not wrong and "travel_mm" in asked and called(function) != "AirChamber":
            continue  # an empty array of travels has an empty answer
        with pytest.raises(InputError) as caught:
            function(**{**asked, field: wrong})
        assert caught.value.field == field
        assert str(caught.value).startswith(f"{field}: ")
        assert "allowed is" in str(caught.value)


@pytest.mark.parametrize("rows", [None, 5.0, "1234", b"12", [1, [2, 3], 4, 5], [1, 2, None, 4], [0, 1, True, 3], {}])
def test_a_row_that_is_no_row_of_numbers_is_refused(rows):
    for function, name in ((fit_rate, "travel_mm"), (survey, "stroke_mm")):
        with pytest.raises(InputError) as caught:
            function(rows, [0.0, 30.0, 58.0, 85.0])
        assert caught.value.field == name


def test_arrays_and_numpy_numbers_are_numbers():
    travel = np.float32(32.0)
    assert force_n(SPRING, **{**FILLED, "travel_mm": travel}) == pytest.approx(
        force_n(SPRING, **{**FILLED, "travel_mm": 32.0})
    )
    assert ride_frequency_hz(np.int64(10), np.array(300.0)) == ride_frequency_hz(10, 300)
    assert fit_rate(np.array([0, 1, 2]), np.array([0.0, 80, 160]))[0] == pytest.approx(80)


def test_pressure_exponent_and_travel_may_all_be_arrays_that_fit_together():
    pressure, travel = np.array([[300.0], [500.0]]), np.array([0.0, 40.0, 160.0])
    whole = force_n(SPRING, pressure_kpa=pressure, travel_mm=travel, n=[1.0, 1.2, 1.4], second_kpa=900.0)
    assert whole.shape == (2, 3)
    for row, kpa in enumerate((300.0, 500.0)):
        for column, n in enumerate((1.0, 1.2, 1.4)):
            alone = force_n(SPRING, pressure_kpa=kpa, travel_mm=float(travel[column]), n=n, second_kpa=900.0)
            assert whole[row, column] == pytest.approx(alone, rel=1e-12)
    with pytest.raises(InputError, match="fit together"):
        force_n(SPRING, pressure_kpa=[300.0, 400.0], travel_mm=travel, second_kpa=900.0)
    with pytest.raises(InputError, match="second_kpa"):
        force_n(SPRING, pressure_kpa=[300.0, 1000.0], travel_mm=10.0, second_kpa=900.0)


def test_a_pressure_for_a_chamber_that_is_not_there_is_a_contradiction():
    plain = AirChamber(850, 850 * 230, 0.0, 160)
    for field in ("second_kpa", "negative_kpa"):
        with pytest.raises(InputError, match=f"{field}.*has no") as caught:
            force_n(plain, pressure_kpa=500, travel_mm=10, **{field: 700})
        assert caught.value.field == field
    open_below = force_n(plain, pressure_kpa=500, travel_mm=10, negative_kpa=0)
    assert open_below == force_n(plain, pressure_kpa=500, travel_mm=10)


def test_spacers_just_under_their_limit_are_allowed_and_at_it_refused():
    limit = 850 * 70
    assert force_n(AirChamber(850, 850 * 230, 0, 160, limit - 1), pressure_kpa=500, travel_mm=160.0) > 1e5
    with pytest.raises(InputError, match=r"spacer_mm3: .* allowed is 0 to below 59500 mm3"):
        AirChamber(850, 850 * 230, 0, 160, limit)


def test_the_load_at_full_travel_is_still_carried():
    for n in (1.0, 1.1, 1.2, 1.3, 1.35, 1.4):
        most = force_n(SPRING, **{**FILLED, "n": n}, travel_mm=np.linspace(0, 160, 33))[-1]
        assert static_travel_mm(SPRING, **{**FILLED, "n": n}, load_n=most) == pytest.approx(160)


def test_the_stated_range_of_the_atmosphere():
    for altitude in (-2000, 11_000):
        assert standard_pressure_kpa(altitude) > 0
    for altitude in (-2001, 11_001):
        with pytest.raises(InputError, match="at least -2000 and at most 11000"):
            standard_pressure_kpa(altitude)


@pytest.mark.parametrize("strokes", [[], [0.0], [0.0, 20.0], [20.0, 40.0], [0.0, 20.0, 40.0], [20.0, 20.0, 40.0]])
def test_a_survey_of_too_few_points_asks_for_more(strokes):
    with pytest.raises(NotEnoughData, match="three strokes"):
        survey(strokes, [2.6 * stroke for stroke in strokes])


def test_a_survey_of_three_points_beside_full_extension_answers_widely():
    few, many = (
        survey(strokes, 2.9 * strokes - 0.006 * strokes**2)
        for strokes in (np.linspace(0, 60, 4), np.linspace(0, 60, 13))
    )
    assert np.ptp(few.interval(30)) > 2 * np.ptp(many.interval(30))


def test_the_last_wheel_reading_belongs_to_the_curve():
    strokes = np.linspace(0, 60, 7)
    wheels = 2.9 * strokes - 0.006 * strokes**2 + np.array([0, 0.8, -0.7, 0.5, -0.9, -0.8, 1.5])
    curve = survey(strokes, wheels)
    assert curve.travel_mm < wheels[-1]
    assert curve.stroke(wheels[-1]) == 60
    assert curve.ratio(wheels[-1]) == curve.ratio(curve.travel_mm)


@pytest.mark.parametrize("apart", [4.0, 5.5])
def test_two_readings_at_one_stroke_contradict_in_either_order(apart):
    for pair in ((50.0, 50.0 + apart), (50.0 + apart, 50.0)):
        asked = ([0, 20, 20, 40, 60], [0, *pair, 105, 150])
        if apart > 5:
            with pytest.raises(InputError, match="wheel_mm"):
                survey(*asked)
        else:
            assert survey(*asked).mean == pytest.approx(2.5, rel=0.02)


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"quantity": "colour"}, "quantity"),
        ({"quantity": None}, "quantity"),
        ({"default_unit": "furlong"}, "default_unit"),
        ({"default_unit": None}, "default_unit"),
        ({"text": 82}, "Pressure"),
        ({"text": None}, "Pressure"),
    ],
)
def test_reading_a_text_names_what_is_wrong(asked, field):
    with pytest.raises(InputError) as caught:
        parse(**{"text": "82", "quantity": "pressure", "default_unit": "psi", **asked})
    assert caught.value.field == field


@pytest.mark.parametrize(("unit", "same"), [("PSI", "psi"), ("lb/in2", "psi"), ("BAR", "bar")])
def test_a_unit_may_be_named_in_any_way_it_is_written(unit, same):
    assert parse("82", "pressure", default_unit=unit) == parse("82", "pressure", default_unit=same)
    assert show(560, "pressure", unit=unit) == show(560, "pressure", unit=same)


@pytest.mark.parametrize("value", ["5", None, True, [], 10**400, 1j])
def test_only_a_number_is_shown(value):
    with pytest.raises(InputError):
        show(value, "pressure", unit="psi")
