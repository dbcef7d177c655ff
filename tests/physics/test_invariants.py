"""What must hold of springs and surroundings for any values: order, units, ways there and back, limits."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from workbench.model.units import parse, show
from workbench.physics.air import AirChamber, energy_j, force_n, rate_n_per_mm, static_travel_mm, with_spacers
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa
from workbench.physics.balance import damping_from_decay, ride_frequency_hz
from workbench.physics.coil import fit_rate, next_rate, wire_rate_n_per_mm
from workbench.physics.geometry import at_sag
from workbench.physics.leverage import survey, wheel_rate_n_per_mm
from workbench.physics.sag import SagReading, next_pressure, wheel_sag

FEW = settings(max_examples=25)
PSI, INCH = 6.894757293168361, 25.4
exponents = st.floats(1.0, 1.4)
pressures = st.floats(50, 2500)
shares = st.floats(0.02, 0.98)


@st.composite
def springs(draw) -> tuple[AirChamber, dict[str, float]]:
    """Any sensible spring with what it is filled with, own negative or second positive chamber now and then."""
    area, travel = draw(st.floats(300, 2500)), draw(st.floats(30, 220))
    swept = area * travel
    chamber = AirChamber(
        area,
        swept * draw(st.floats(1.1, 4)),
        swept * draw(st.floats(0.05, 2)),
        travel,
        draw(st.floats(0, 0.05)) * swept,
        draw(st.sampled_from([0.0, 0.3])) * swept,
        draw(st.sampled_from([None, 0.9 * area])),
    )
    kpa = draw(pressures)
    filled = {"pressure_kpa": kpa}
    if chamber.second_positive_mm3:
        filled["second_kpa"] = kpa * draw(st.floats(1.0, 4))
    if draw(st.booleans()):
        filled["negative_kpa"] = kpa * draw(st.floats(0.0, 1.2))
    return chamber, filled


# --- order


@FEW
@given(springs(), exponents)
def test_force_and_energy_rise_and_the_rate_is_above_zero(spring, n):
    chamber, filled = spring
    x = np.linspace(0, chamber.travel_mm, 33)
    assert (np.diff(force_n(chamber, travel_mm=x, n=n, **filled)) > 0).all()
    assert (rate_n_per_mm(chamber, travel_mm=x, n=n, **filled) > 0).all()
    energy = energy_j(chamber, travel_mm=x, n=n, **filled)
    assert energy[0] == 0
    assert (np.diff(energy, 2) > 0).all()  # its slope is the force, which rises


@FEW
@given(springs(), shares, shares, exponents)
def test_more_load_rests_deeper(spring, one, other, n):
    chamber, filled = spring
    assume(abs(one - other) > 1e-3)
    shallow, deep = sorted((one, other))
    loads = [force_n(chamber, travel_mm=share * chamber.travel_mm, n=n, **filled) for share in (shallow, deep)]
    assume(loads[0] > 0)
    rests = [static_travel_mm(chamber, load_n=load, n=n, **filled) for load in loads]
    assert rests[0] < rests[1]


@FEW
@given(springs(), st.floats(1.01, 2), st.floats(0.1, 0.9))
def test_more_pressure_everywhere_rests_shallower(spring, factor, share):
    chamber, filled = spring
    filled = {name: kpa for name, kpa in filled.items() if name != "negative_kpa"}
    load = force_n(chamber, travel_mm=share * chamber.travel_mm, **filled)
    assume(load > 0)
    harder = {name: kpa * factor for name, kpa in filled.items()}
    assert static_travel_mm(chamber, load_n=load, **harder) < static_travel_mm(chamber, load_n=load, **filled)


@FEW
@given(springs(), st.floats(0.01, 0.1), exponents)
def test_a_spacer_raises_force_and_energy_everywhere_and_the_rate_of_one_chamber(spring, share, n):
    chamber, filled = spring
    more = with_spacers(chamber, chamber.spacer_mm3 + share * 0.3 * chamber.area_mm2 * chamber.travel_mm)
    x = np.linspace(0.1, 1, 12) * chamber.travel_mm
    parts = [force_n, energy_j]
    if not chamber.second_positive_mm3:
        parts.append(rate_n_per_mm)  # with a second one it joins earlier, and is softer from there
    for part in parts:
        assert (part(more, travel_mm=x, n=n, **filled) >= part(chamber, travel_mm=x, n=n, **filled)).all()


@FEW
@given(st.floats(2, 20), st.floats(25, 150), st.floats(2, 12), st.floats(40, 90), st.floats(1.01, 1.5))
def test_thicker_wire_smaller_coils_and_fewer_of_them_are_stiffer(wire, diameter, coils, modulus, factor):
    assume(wire * factor < diameter)
    asked = {"wire_mm": wire, "mean_diameter_mm": diameter, "active_coils": coils, "shear_modulus_gpa": modulus}
    rate = wire_rate_n_per_mm(**asked)
    for name, power in (("wire_mm", 4), ("mean_diameter_mm", -3), ("active_coils", -1), ("shear_modulus_gpa", 1)):
        other = wire_rate_n_per_mm(**{**asked, name: asked[name] * factor})
        assert other == pytest.approx(rate * factor**power, rel=1e-9)


@FEW
@given(st.floats(20, 200), st.floats(3, 30), st.floats(0.15, 0.45), st.floats(0, 5), st.floats(1.01, 1.5))
def test_more_sag_asks_for_a_stiffer_coil_and_a_deeper_target_for_a_softer_one(rate, sag, target, preload, factor):
    asked = {"rate_n_per_mm": rate, "sag_mm": sag, "stroke_mm": 60.0, "target": target, "preload_mm": preload}
    exact = next_rate(**asked).rate_n_per_mm
    assert next_rate(**{**asked, "sag_mm": sag * factor}).rate_n_per_mm > exact
    assert next_rate(**{**asked, "target": target * factor}).rate_n_per_mm < exact


@FEW
@given(st.floats(-2000, 10_900), st.floats(1, 100))
def test_the_air_thins_with_height(altitude, higher):
    assert standard_pressure_kpa(altitude + higher) < standard_pressure_kpa(altitude)


@FEW
@given(st.floats(0.1, 100), st.floats(0.01, 0.99), st.floats(0.01, 0.99), st.floats(0.5, 20))
def test_a_faster_decay_is_more_damping(peak, one, other, cycles):
    assume(abs(one - other) > 1e-6)
    slow, fast = (damping_from_decay(peak, peak * left, cycles) for left in sorted((one, other), reverse=True))
    assert slow < fast
    assert damping_from_decay(peak, peak, cycles) == (0.0, 0.0)


# --- units


@FEW
@given(st.integers(40, 250), st.integers(18, 60), st.sampled_from(["front", "rear"]), st.floats(0.15, 0.35))
def test_the_advice_is_the_same_however_pressure_and_sag_were_written(psi, sag_mm, end, target):
    in_psi = parse(f"{psi} psi", "pressure", default_unit="psi")
    in_bar = parse(f"{psi * PSI / 100:.8f} bar", "pressure", default_unit="psi")
    in_kpa = parse(f"{psi * PSI:.6f}", "pressure", default_unit="kPa")
    in_inches = parse(f"{sag_mm / INCH:.10f} in", "length", default_unit="mm")
    asked = {"travel_mm": 160.0, "target": target, "end": end}
    first = next_pressure([SagReading(in_psi, float(sag_mm))], **asked)
    for other in (SagReading(in_bar, float(sag_mm)), SagReading(in_kpa, in_inches)):
        advice = next_pressure([other], **asked)
        assert advice.pressure_kpa == pytest.approx(first.pressure_kpa, rel=1e-6)
        assert (advice.settled, advice.limited) == (first.settled, first.limited)
        assert advice.sag_low == pytest.approx(first.sag_low, abs=5e-4)  # steps of the grid
        assert show(advice.pressure_kpa, "pressure", unit="psi") == show(first.pressure_kpa, "pressure", unit="psi")


@FEW
@given(springs(), shares, exponents, st.floats(0.01, 100))
def test_the_length_of_the_millimetre_is_no_matter(spring, share, n, scale):
    """Lengths by a factor, areas by its square and volumes by its cube: force by the square, rate by the factor."""
    chamber, filled = spring
    bigger = replace(
        chamber,
        area_mm2=chamber.area_mm2 * scale**2,
        positive_mm3=chamber.positive_mm3 * scale**3,
        negative_mm3=chamber.negative_mm3 * scale**3,
        travel_mm=chamber.travel_mm * scale,
        spacer_mm3=chamber.spacer_mm3 * scale**3,
        second_positive_mm3=chamber.second_positive_mm3 * scale**3,
        negative_area_mm2=None if chamber.negative_area_mm2 is None else chamber.negative_area_mm2 * scale**2,
    )
    x = share * chamber.travel_mm
    for part, power in ((force_n, 2), (rate_n_per_mm, 1), (energy_j, 3)):
        small, large = part(chamber, travel_mm=x, n=n, **filled), part(bigger, travel_mm=x * scale, n=n, **filled)
        assert large == pytest.approx(small * scale**power, rel=1e-6, abs=1e-9 * scale**power)


SURVEY = ([0, 8, 20, 31, 44, 52, 60], [0, 25, 60.5, 91, 126, 145, 163])


def test_a_survey_in_inches_has_the_same_ratios():
    in_mm = survey(*SURVEY)
    in_inches = survey(*([value / INCH for value in row] for row in SURVEY), reading_sd_mm=1 / INCH)
    assert in_inches.mean == pytest.approx(in_mm.mean, rel=1e-9)
    assert in_inches.progression == pytest.approx(in_mm.progression, rel=1e-7)
    for wheel in (10, 80, 150):
        assert in_inches.ratio(wheel / INCH) == pytest.approx(in_mm.ratio(wheel), rel=1e-8)
        assert in_inches.interval(wheel / INCH) == pytest.approx(in_mm.interval(wheel), rel=1e-7)
        assert wheel_sag(20 / INCH, in_inches) == pytest.approx(wheel_sag(20, in_mm), rel=1e-9)


@FEW
@given(st.floats(0.2, 5), st.floats(60, 78), st.floats(0, 60), st.floats(0, 80))
def test_a_bike_of_another_size_turns_by_the_same_angle(scale, angle, fork, rear):
    bike = {"wheelbase_mm": 1220.0, "fork_sag_mm": fork, "rear_axle_up_mm": rear, "bb_drop_mm": 25.0}
    wheels = {"rear_centre_mm": 440.0, "front_radius_mm": 370.0, "rear_radius_mm": 350.0}
    one = at_sag(head_angle_deg=angle, **bike, **wheels)
    other = at_sag(head_angle_deg=angle, **{name: mm * scale for name, mm in (bike | wheels).items()})
    assert other.head_angle_deg == pytest.approx(one.head_angle_deg, abs=1e-9)
    assert other.wheelbase_mm == pytest.approx(one.wheelbase_mm * scale)
    assert other.bb_drop_mm == pytest.approx(one.bb_drop_mm * scale)


@FEW
@given(st.floats(0.01, 100), st.floats(0.01, 100))
def test_a_fit_follows_the_units_of_its_readings(long, strong):
    travel, force = [5, 12, 20, 31, 40], [450, 1010, 1660, 2530, 3270]
    plain = np.array(fit_rate(travel, force))
    scaled = fit_rate([x * long for x in travel], [f * strong for f in force])
    assert scaled == pytest.approx(tuple(plain * strong / long), rel=1e-9)


# --- there and back


@FEW
@given(springs(), shares, exponents)
def test_from_travel_to_load_and_back(spring, share, n):
    chamber, filled = spring
    load = force_n(chamber, travel_mm=share * chamber.travel_mm, n=n, **filled)
    assume(load > 0)
    rest = static_travel_mm(chamber, load_n=load, n=n, **filled)
    assert rest == pytest.approx(share * chamber.travel_mm, rel=1e-6, abs=1e-6)
    assert force_n(chamber, travel_mm=rest, n=n, **filled) == pytest.approx(load, rel=1e-6)


@FEW
@example(1.8046875, 0.3125, 0.125, 40.0, 0.0)
@given(st.floats(1.8, 3.6), st.floats(-0.4, 0.4), st.floats(-0.3, 0.3), st.floats(40, 75), st.floats(0, 1))
def test_from_wheel_to_stroke_and_back_on_any_curve(start, slope, bend, stroke, share):
    u = np.linspace(0, 1, 9)
    wheel = stroke * start * (u + slope * u**2 / 2 + bend * (u**2 / 2 - u**3 / 3))
    curve = survey(stroke * u, wheel)
    at = share * curve.travel_mm
    assert curve.wheel(curve.stroke(at)) == pytest.approx(at, abs=1e-7 * curve.travel_mm)
    assert curve.stroke(curve.wheel(share * stroke)) == pytest.approx(share * stroke, abs=1e-7 * stroke)
    assert wheel_sag(curve.stroke(at), curve) == pytest.approx(share, abs=1e-7)
    low, high = curve.interval(at)
    assert low < curve.ratio(at) < high


@FEW
@given(pressures, *(st.floats(-40, 80) for _ in range(3)), *(st.floats(-400, 4000) for _ in range(3)))
def test_a_way_round_by_a_third_place_is_the_straight_way(kpa, c1, c2, c3, m1, m2, m3):
    straight = carry_pressure(kpa, from_c=c1, to_c=c3, from_m=m1, to_m=m3)
    half = carry_pressure(kpa, from_c=c1, to_c=c2, from_m=m1, to_m=m2)
    round_about = carry_pressure(half, from_c=c2, to_c=c3, from_m=m2, to_m=m3)
    assert round_about == pytest.approx(straight, rel=1e-9, abs=1e-9)


# --- limits


@FEW
@given(st.floats(300, 2500), st.floats(30, 220), pressures, exponents, shares)
def test_huge_chambers_are_a_straight_line(area, travel, kpa, n, share):
    """F = A P0 n x (1/L+ + 1/L-) to first order; the next term is smaller by x/L."""
    length = 1e6 * travel
    chamber = AirChamber(area, area * length, area * length, travel)
    x = share * travel
    rate = 2e-3 * n * area * (kpa + 101.325) / length
    asked = {"pressure_kpa": kpa, "n": n}
    assert rate_n_per_mm(chamber, travel_mm=x, **asked) == pytest.approx(rate, rel=1e-5)
    assert force_n(chamber, travel_mm=x, **asked) == pytest.approx(rate * x, rel=1e-5)
    assert energy_j(chamber, travel_mm=x, **asked) == pytest.approx(rate * x**2 / 2000, rel=1e-3, abs=1e-9)


@FEW
@given(springs(), exponents)
def test_a_second_chamber_never_reached_or_next_to_nothing_is_no_change(spring, n):
    chamber, filled = spring
    alone = replace(chamber, second_positive_mm3=0.0)
    filled = {name: kpa for name, kpa in filled.items() if name != "second_kpa"}
    x = np.linspace(0, alone.travel_mm, 9)
    plain = force_n(alone, travel_mm=x, n=n, **filled)
    most = filled["pressure_kpa"] * 1e6
    for second_mm3, kpa in ((0.3 * alone.positive_mm3, most), (1e-9 * alone.positive_mm3, filled["pressure_kpa"])):
        with_second = replace(alone, second_positive_mm3=second_mm3)
        found = force_n(with_second, travel_mm=x, n=n, second_kpa=kpa, **filled)
        assert found == pytest.approx(plain, rel=1e-5, abs=1e-6)


@FEW
@given(springs(), shares)
def test_the_exponent_goes_to_one_without_a_step(spring, share):
    chamber, filled = spring
    x = share * chamber.travel_mm
    for part in (force_n, rate_n_per_mm, energy_j):
        at_one, near = (part(chamber, travel_mm=x, n=n, **filled) for n in (1.0, 1.0 + 1e-9))
        assert near == pytest.approx(at_one, rel=1e-6, abs=1e-6)


@FEW
@given(springs(), exponents)
def test_no_spacer_is_no_change(spring, n):
    chamber, filled = spring
    same = with_spacers(chamber, chamber.spacer_mm3)
    x = np.linspace(0, chamber.travel_mm, 9)
    for part in (force_n, rate_n_per_mm, energy_j):
        assert (part(same, travel_mm=x, n=n, **filled) == part(chamber, travel_mm=x, n=n, **filled)).all()


@FEW
@given(st.floats(1.5, 4), st.floats(20, 200), st.floats(0, 3000), st.floats(0.05, 0.95))
def test_an_even_ratio_divides_the_rate_by_its_square(ratio, rate, force, share):
    strokes = np.linspace(0, 60, 7)
    curve = survey(strokes, ratio * strokes, reading_sd_mm=0.01)
    found = wheel_rate_n_per_mm(curve, wheel_mm=share * curve.travel_mm, shock_rate_n_per_mm=rate, shock_force_n=force)
    assert found == pytest.approx(rate / ratio**2, rel=1e-6, abs=1e-6)
    assert ride_frequency_hz(rate / ratio**2, 500) == pytest.approx(ride_frequency_hz(rate, 500) / ratio)


def test_a_reading_twice_is_no_other_curve_and_a_surer_one():
    once = survey(*SURVEY)
    twice = survey(*(row * 2 for row in SURVEY))
    for wheel in (10, 80, 150):
        assert twice.ratio(wheel) == pytest.approx(once.ratio(wheel), rel=0.01)
        assert np.ptp(twice.interval(wheel)) < np.ptp(once.interval(wheel))
    assert math.isclose(once.mean, twice.mean, rel_tol=0.002)
