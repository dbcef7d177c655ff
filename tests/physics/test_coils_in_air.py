"""Air springs with a coil in them: beside the air, or in place of the negative chamber."""

from __future__ import annotations

import numpy as np
import pytest

from workbench.model.errors import InputError
from workbench.physics.air import (
    AirChamber,
    energy_j,
    force_n,
    pressure_for_sag_kpa,
    rate_n_per_mm,
    static_travel_mm,
)
from workbench.physics.band import force_band
from workbench.physics.sag import Coils, SagReading, believe, next_pressure
from workbench.physics.shapes import load_at, rows_of, sag_at
from workbench.physics.spacers import change_spacers

AIR = {"area_mm2": 850, "positive_mm3": 850 * 230, "negative_mm3": 850 * 45, "travel_mm": 160}
PLAIN = AirChamber(**AIR)
BESIDE = AirChamber(**AIR, coil_n_per_mm=3.0, coil_preload_mm=4.0)
BACK = AirChamber(850, 850 * 230, 0, 160, negative_coil_n_per_mm=12.0, negative_coil_reach_mm=34.0)


def advice(*readings, **changes):
    return next_pressure(readings, **{"travel_mm": 160, "target": 0.20, "end": "front", **changes})


@pytest.mark.parametrize("x", [0.0, 32.0, 160.0])
@pytest.mark.parametrize("n", [1.0, 1.35])
def test_a_coil_beside_the_air_adds_its_own_force_rate_and_energy(x, n):
    at = {"pressure_kpa": 400, "travel_mm": x, "n": n}
    assert force_n(BESIDE, **at) - force_n(PLAIN, **at) == pytest.approx(3.0 * (4.0 + x))
    assert rate_n_per_mm(BESIDE, **at) - rate_n_per_mm(PLAIN, **at) == pytest.approx(3.0)
    assert energy_j(BESIDE, **at) - energy_j(PLAIN, **at) == pytest.approx(3.0 * (4.0 * x + x**2 / 2) / 1000)


def test_the_pressure_for_a_sag_leaves_the_coil_its_share():
    kpa = pressure_for_sag_kpa(BESIDE, load_n=320, sag_mm=32)
    assert static_travel_mm(BESIDE, pressure_kpa=kpa, load_n=320) == pytest.approx(32)
    assert kpa < pressure_for_sag_kpa(PLAIN, load_n=320, sag_mm=32)


@pytest.mark.parametrize("name", ["coil_n_per_mm", "coil_preload_mm"])
@pytest.mark.parametrize("value", [-1.0, float("nan"), float("inf"), "3"])
def test_a_coil_that_cannot_be_is_refused_by_name(name, value):
    with pytest.raises(InputError) as refused:
        AirChamber(**AIR, **{name: value})
    assert refused.value.field == name


def test_with_sizes_and_coil_known_the_first_answer_is_right():
    load = float(force_n(BESIDE, pressure_kpa=420, travel_mm=40.0))
    found = advice(SagReading(420, 40.0), chamber=BESIDE)
    assert static_travel_mm(BESIDE, pressure_kpa=found.pressure_kpa, load_n=load) == pytest.approx(32, abs=0.6)
    assert advice(SagReading(420, 40.0), chamber=PLAIN).pressure_kpa < found.pressure_kpa - 5, "a coil answers nothing"


@pytest.mark.parametrize("end", ["front", "rear"])
def test_a_coil_beside_air_of_unknown_sizes_asks_for_a_larger_change_and_is_less_sure(end):
    seen = SagReading(400, 42.0)
    plain, beside = (advice(seen, end=end, coils=coils) for coils in (Coils(), Coils(rate_n_per_mm=3.0)))
    assert beside.pressure_kpa > plain.pressure_kpa
    true = AirChamber(**{**AIR, "area_mm2": 850}, coil_n_per_mm=3.0)
    load = float(force_n(true, pressure_kpa=400, travel_mm=42.0))
    reached = static_travel_mm(true, pressure_kpa=beside.pressure_kpa, load_n=load) / 160
    assert beside.sag_low <= reached <= beside.sag_high


def test_a_negative_coil_of_unknown_size_asks_for_far_less_pressure_than_a_negative_chamber():
    seen = SagReading(400, 42.0)
    chamber, coil = (advice(seen, coils=coils) for coils in (Coils(), Coils(is_negative=True)))
    assert 400 < coil.pressure_kpa < chamber.pressure_kpa
    assert coil.sag_high - coil.sag_low > chamber.sag_high - chamber.sag_low, "its reach is not known"


@pytest.mark.parametrize("reach", [22.0, 34.0, 46.0])
def test_the_interval_with_a_negative_coil_holds_what_such_forks_do(reach):
    rate = 0.85 * 0.85 * 400 / reach
    fork = AirChamber(850, 850 * 230, 0, 160, negative_coil_n_per_mm=rate, negative_coil_reach_mm=reach)
    load = float(force_n(fork, pressure_kpa=400, travel_mm=42.0))
    found = advice(SagReading(400, 42.0), coils=Coils(is_negative=True))
    reached = static_travel_mm(fork, pressure_kpa=found.pressure_kpa, load_n=load) / 160
    assert found.sag_low <= reached <= found.sag_high


def test_more_readings_narrow_a_spring_with_a_negative_coil_too():
    load = float(force_n(BACK, pressure_kpa=400, travel_mm=42.0))
    seen = [SagReading(kpa, static_travel_mm(BACK, pressure_kpa=kpa, load_n=load)) for kpa in (400, 412, 425)]
    one, three = advice(seen[0], coils=Coils(is_negative=True)), advice(*seen, coils=Coils(is_negative=True))
    assert three.sag_high - three.sag_low < one.sag_high - one.sag_low
    reached = static_travel_mm(BACK, pressure_kpa=three.pressure_kpa, load_n=load) / 160
    assert reached == pytest.approx(0.20, abs=0.02)


def test_a_band_of_forces_knows_the_coils():
    at = (0.0, 16.0, 42.0, 100.0)
    plain, beside, back = (
        force_band([SagReading(400, 42.0)], travel_mm=160, end="front", pressure_kpa=400, at_mm=at, coils=coils)
        for coils in (Coils(), Coils(rate_n_per_mm=3.0, preload_mm=5.0), Coils(is_negative=True))
    )
    assert plain.middle[0] == pytest.approx(0, abs=1e-6)
    assert beside.middle[0] > 0.03, "preload pushes at full extension"
    for found in (beside, back):
        assert found.middle[2] == pytest.approx(1.0, abs=0.02)
        assert np.all(np.diff(found.middle) > 0)


@pytest.mark.parametrize(
    "coils", [Coils(is_negative=True), Coils(rate_n_per_mm=3.0, preload_mm=8.0), Coils(True, 6.0, 2.0)]
)
@pytest.mark.parametrize(("seen", "kpa"), [((400, 42.0), 60.0), ((900, 12.0), 300.0), ((90, 120.0), 1500.0)])
def test_the_sag_of_every_possibility_carries_its_load(coils, seen, kpa):
    belief = believe([SagReading(*seen)], travel_mm=160, end="front", coils=coils)
    sag = sag_at(belief, kpa)
    of = rows_of(belief.shapes, np.arange(len(belief.shapes.a))[:, None])
    carried = load_at(of, kpa, sag)
    inside = (sag > 0) & (sag < 1)
    assert carried[inside] == pytest.approx(belief.load[inside], rel=1e-6)
    assert (carried[sag >= 1] <= belief.load[sag >= 1]).all()
    assert (carried[sag <= 0] >= belief.load[sag <= 0]).all()


@pytest.mark.parametrize("coils", [Coils(rate_n_per_mm=-1.0), Coils(rate_n_per_mm=3.0, preload_mm=float("nan"))])
def test_coils_that_cannot_be_are_refused_by_name(coils):
    with pytest.raises(InputError) as refused:
        advice(SagReading(400, 42.0), coils=coils)
    assert refused.value.field in ("rate_n_per_mm", "preload_mm")


def test_spacers_beside_a_coil_keep_the_sag_and_move_it_less_when_the_pressure_is_left():
    sag = static_travel_mm(BESIDE, pressure_kpa=420, load_n=320)
    change = change_spacers(BESIDE, pressure_kpa=420, sag_mm=sag, spacer_mm3=20_000)
    then = AirChamber(**AIR, spacer_mm3=20_000, coil_n_per_mm=3.0, coil_preload_mm=4.0)
    assert static_travel_mm(then, pressure_kpa=change.pressure_kpa, load_n=320) == pytest.approx(sag)
    assert change.left_sag_mm < sag
