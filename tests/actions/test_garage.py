"""Adding, changing and putting away bikes, each one deed that can be taken back."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.fixtures import a_bike, a_counted_bike, check_there_and_back, everything
from workbench.actions.garage import (
    NewBike,
    add_adjuster,
    add_bike,
    archive_bike,
    bring_back_bike,
    garage_rows,
    remove_adjuster,
    start_generation,
)
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.model.bike import Station, StationState
from workbench.model.errors import InputError
from workbench.model.job import job_marks


def parts_of(desk, bike):
    return desk.ask(bike_parts(bike.id))


@pytest.mark.parametrize(
    ("layout", "springs"),
    [("hardtail", ["air"]), ("air_air", ["air", "air"]), ("air_coil", ["air", "coil"])],
)
def test_a_layout_brings_its_units_adjusters_and_tyres(desk, layout, springs):
    bike = check_there_and_back(desk, "Add bike", add_bike(NewBike("Larch", layout, rider_name="M. Anders")))
    parts = parts_of(desk, bike)
    assert [unit.spring for unit in parts.units] == springs
    assert [unit.end for unit in parts.units] == ["front", "rear"][: len(springs)]
    assert [one.kind for one in parts.adjusters] == ["compression", "rebound"] * len(springs)
    assert [tyre.end for tyre in parts.tyres] == ["front", "rear"]
    assert all(parts.generation(unit.id).number == 1 for unit in parts.units)
    assert [person.name for person in parts.riders] == ["M. Anders"]


def test_a_name_is_enough(desk):
    bike = desk.do("Add", add_bike(NewBike("Larch")))
    parts = parts_of(desk, bike)
    assert parts.riders == ()
    assert {unit.travel_mm for unit in parts.units} == {None}


def test_a_known_rider_is_seated_and_weighed_anew_not_doubled(desk):
    rider = desk.do("Add", add_person("M. Anders", mass_kg=80.0))
    bike = desk.do("Add", add_bike(NewBike("Larch", rider_id=rider.id, rider_mass_kg=84.5)))
    assert [(one.id, one.mass_kg) for one in parts_of(desk, bike).riders] == [(rider.id, 84.5)]


def test_a_new_rider_reads_the_units_of_the_person_at_the_bench(desk):
    like = replace(desk.do("Add", add_person("B. Halloran", works_here=True)), pressure_unit="bar", mass_unit="lb")
    bike = desk.do("Add", add_bike(NewBike("Larch", rider_name="M. Anders"), like=like))
    rider = parts_of(desk, bike).riders[0]
    assert (rider.pressure_unit, rider.mass_unit, rider.works_here) == ("bar", "lb", False)


@pytest.mark.parametrize(
    "wrong",
    [
        {"name": ""},
        {"name": "   "},
        {"name": "x" * 10_000},
        {"layout": "tricycle"},
        {"fork_travel_mm": float("nan")},
        {"fork_travel_mm": -1.0},
        {"shock_stroke_mm": 1e9},
        {"rear_travel_mm": float("inf")},
    ],
    ids=str,
)
def test_what_cannot_be_a_bike_is_refused_and_leaves_nothing(desk, wrong):
    before = everything(desk)
    with pytest.raises(InputError):
        desk.do("Add", add_bike(NewBike(**{"name": "Larch", **wrong})))
    assert everything(desk) == before
    assert desk.undo_label() is None


def test_a_bike_put_away_leaves_the_list_and_comes_back_whole(desk):
    bike = a_counted_bike(desk)
    before = everything(desk)
    check_there_and_back(desk, "Put away", archive_bike(bike.id), bike_id=bike.id)
    assert desk.ask(garage_rows()) == ()
    assert [row.bike.id for row in desk.ask(garage_rows(archived=True))] == [bike.id]
    check_there_and_back(desk, "Bring back", bring_back_bike(bike.id), bike_id=bike.id)
    assert everything(desk) == before


def test_bikes_are_listed_by_name_whatever_its_case(desk):
    for name in ("larch", "Cinder", "Éclair", "birch"):
        a_bike(desk, name=name)
    assert [row.bike.name for row in desk.ask(garage_rows())] == ["birch", "Cinder", "larch", "Éclair"]


def test_an_adjuster_added_is_counted_last(desk):
    bike = a_bike(desk)
    fork = parts_of(desk, bike).unit("front")
    added = check_there_and_back(desk, "Add adjuster", add_adjuster(fork.id), bike_id=bike.id)
    assert parts_of(desk, bike).adjusters_of(fork.id)[-1] == added


def test_an_adjuster_taken_off_the_list_keeps_what_was_counted(desk):
    bike = a_counted_bike(desk)
    gone = parts_of(desk, bike).adjusters[0]
    counts = everything(desk)
    check_there_and_back(desk, "Remove", remove_adjuster(gone.id), bike_id=bike.id)
    assert gone.id not in {one.id for one in parts_of(desk, bike).adjusters}
    kept = [one for records in everything(desk).values() for one in records]
    assert all(one in kept for records in counts.values() for one in records if one != gone)


def test_other_hardware_makes_counts_fall_due_but_never_rewrites_them(desk):
    bike = a_counted_bike(desk)
    fork = parts_of(desk, bike).unit("front")
    counted = parts_of(desk, bike).ranges
    generation = check_there_and_back(desk, "Oil", start_generation(fork.id, "oil"), bike_id=bike.id)
    parts = parts_of(desk, bike)
    assert generation.number == 2
    assert parts.ranges == counted
    assert all(parts.range_of(one.id) is None for one in parts.adjusters_of(fork.id))
    assert all(parts.range_of(one.id) is not None for one in parts.adjusters_of(parts.unit("rear").id))
    marks = {mark.station: mark for mark in job_marks(desk.ask(job_records(bike.id)))}
    assert marks[Station.ADJUSTERS].state == StationState.NOW
    assert marks[Station.ADJUSTERS].why == "2 of 4 counted"


@pytest.mark.parametrize(
    ("layout", "ends"),
    [
        ("rigid_rigid", []),
        ("rigid_coil", [("rear", "coil")]),
        ("mix_rigid", [("front", "air_coil")]),
        ("coil_coil", [("front", "coil"), ("rear", "coil")]),
    ],
)
def test_a_rigid_end_has_no_unit_and_still_its_tyre(desk, layout, ends):
    bike = desk.do("Add", add_bike(NewBike("Larch", layout=layout)))
    parts = desk.ask(bike_parts(bike.id))
    assert [(unit.end, unit.spring) for unit in parts.units] == ends
    assert [tyre.end for tyre in parts.tyres] == ["front", "rear"]


def test_a_fork_is_added_as_it_is_built_and_a_coil_has_no_chambers(desk):
    told = {"is_dual_crown": True, "is_inverted": True, "has_second_positive": True, "negative": "separate"}
    for layout, has_air in (("air_air", True), ("coil_air", False)):
        bike = desk.do("Add", add_bike(NewBike("Larch", layout=layout, is_ebike=True, **told)))
        parts = desk.ask(bike_parts(bike.id))
        fork, shock = parts.units
        assert (parts.bike.is_ebike, fork.is_dual_crown, fork.is_inverted) == (True, True, True)
        assert (fork.has_second_positive, fork.negative) == (has_air, "separate" if has_air else "self")
        assert not shock.is_dual_crown
