"""The names that scripts rely on: what is listed here may grow keywords with defaults, never lose any."""

from __future__ import annotations

import inspect
import subprocess
import sys
from dataclasses import FrozenInstanceError, fields

import pytest

from workbench.model import units
from workbench.physics import air, atmosphere, balance, coil, geometry, leverage, sag

EMPTY = inspect.Parameter.empty
# Function, then its parameters in order: a plain name, "*" before keywords, name=default.
SURFACE = [
    (units.parse, "text quantity * default_unit"),
    (units.show, "value quantity * unit locale='en'"),
    (sag.next_pressure, "readings * travel_mm target end minimum_kpa=None maximum_kpa=None chamber=None"),
    (sag.wheel_sag, "shock_sag_mm leverage"),
    (air.force_n, "chamber * pressure_kpa travel_mm n=1.0 second_kpa=None negative_kpa=None"),
    (air.rate_n_per_mm, "chamber * pressure_kpa travel_mm n=1.0 second_kpa=None negative_kpa=None"),
    (air.energy_j, "chamber * pressure_kpa travel_mm n=1.0 second_kpa=None negative_kpa=None"),
    (air.static_travel_mm, "chamber * pressure_kpa load_n n=1.0 second_kpa=None negative_kpa=None"),
    (
        coil.next_rate,
        "* rate_n_per_mm sag_mm stroke_mm target preload_mm=0.0 stock_step_n_per_mm=None spring_stroke_mm=None",
    ),
    (coil.wire_rate_n_per_mm, "* wire_mm mean_diameter_mm active_coils shear_modulus_gpa"),
    (coil.fit_rate, "travel_mm force_n"),
    (leverage.survey, "stroke_mm wheel_mm * reading_sd_mm=1.0"),
    (leverage.wheel_rate_n_per_mm, "leverage * wheel_mm shock_rate_n_per_mm shock_force_n"),
    (atmosphere.carry_pressure, "pressure_kpa * from_c to_c from_m=0.0 to_m=0.0"),
    (atmosphere.standard_pressure_kpa, "altitude_m"),
    (balance.ride_frequency_hz, "rate_n_per_mm load_n"),
    (balance.damping_from_decay, "x0 xn cycles"),
    (geometry.at_sag, "* wheelbase_mm head_angle_deg fork_sag_mm rear_axle_up_mm bb_drop_mm=None"),
]
RECORDS = [
    (sag.SagReading, "pressure_kpa sag_mm"),
    (
        sag.PressureAdvice,
        "pressure_kpa sag_fraction sag_low sag_high settled limited reason",
    ),
    (air.AirChamber, "area_mm2 positive_mm3 negative_mm3 travel_mm spacer_mm3 second_positive_mm3"),
    (coil.RateAdvice, "load_n rate_n_per_mm stock reason"),
    (geometry.GeometryAtSag, "head_angle_deg wheelbase_mm bb_drop_mm"),
]


@pytest.mark.parametrize(("function", "promised"), SURFACE, ids=lambda value: getattr(value, "__name__", ""))
def test_a_function_keeps_its_parameters(function, promised):
    promise = promised.split()
    keywords = promise[promise.index("*") + 1 :] if "*" in promise else []
    plain = promise[: promise.index("*")] if "*" in promise else promise
    found = inspect.signature(function).parameters
    assert [name for name, one in found.items() if one.kind is one.POSITIONAL_OR_KEYWORD] == plain
    for word in keywords:
        name, _, default = word.partition("=")
        assert found[name].kind is inspect.Parameter.KEYWORD_ONLY
        assert (found[name].default is EMPTY) if not default else repr(found[name].default) == default
    later = [one for name, one in found.items() if name not in {word.partition("=")[0] for word in (*plain, *keywords)}]
    assert all(one.default is not EMPTY for one in later)


@pytest.mark.parametrize(("record", "promised"), RECORDS, ids=lambda value: getattr(value, "__name__", ""))
def test_a_record_keeps_its_fields_and_is_frozen(record, promised):
    names = [field.name for field in fields(record)]
    assert names[: len(promised.split())] == promised.split()
    assert record.__dataclass_params__.frozen


def test_a_stock_spring_unpacks():
    rate, share, binds = coil.next_rate(rate_n_per_mm=80, sag_mm=20, stroke_mm=60, target=0.3).stock[0]
    assert (rate > 0, 0 < share < 1, binds) == (True, True, False)


def test_a_reading_cannot_be_changed():
    with pytest.raises(FrozenInstanceError):
        sag.SagReading(500, 30).sag_mm = 31


def test_leverage_answers_what_is_promised():
    curve = leverage.survey([0, 20, 40, 60], [0, 60.5, 114, 161])
    for name in ("ratio", "wheel", "stroke", "interval"):
        assert callable(getattr(curve, name))
    assert curve.mean > 0
    assert -1 < curve.progression < 1


def test_asking_for_a_pressure_loads_no_scipy():
    code = (
        "import sys; from workbench.physics.sag import SagReading, next_pressure; "
        "next_pressure([SagReading(500, 30)], travel_mm=160, target=0.2, end='front'); "
        "sys.exit(any(name.startswith('scipy') for name in sys.modules))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
