"""Coil springs at hand: added, taken away, fitted; each is one step that can be undone."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, check_there_and_back
from workbench.actions.coil import coil_records, fit_spring, keep_spring, remove_spring
from workbench.actions.edit import edit
from workbench.model.coil import curve_rows, how_known
from workbench.model.errors import InputError
from workbench.model.setting import HOWS, Item
from workbench.model.unit import Unit


@pytest.fixture
def bike(desk):
    return a_bike(desk, layout="air_coil", shock_stroke_mm=57.5)


def shock_of(desk, bike) -> Unit:
    return desk.ask(coil_records(bike.id)).spring.sag.parts.unit("rear")


def at_hand(desk, bike):
    return desk.ask(coil_records(bike.id)).at_hand[shock_of(desk, bike).id]


def test_a_spring_reckoned_from_the_wire_joins_those_at_hand_and_says_so(desk, bike):
    shock = shock_of(desk, bike)
    deed = keep_spring(shock.id, 81.2, stroke_mm=62.0, label="grey one", how="wire")
    spring = check_there_and_back(desk, "Add spring", deed, bike_id=bike.id)
    assert at_hand(desk, bike) == (spring,)
    assert how_known(spring) == "reckoned from the wire"


def test_springs_stand_softest_first_and_go_one_by_one(desk, bike):
    shock = shock_of(desk, bike)
    stiff, soft = (desk.do("Add", keep_spring(shock.id, rate), bike_id=bike.id) for rate in (96.3, 78.8))
    assert at_hand(desk, bike) == (soft, stiff)
    check_there_and_back(desk, "Remove", remove_spring(stiff.id), bike_id=bike.id)
    assert at_hand(desk, bike) == (soft,)


def test_a_progressive_spring_keeps_its_pairs(desk, bike):
    rows = ((0.0, 0.0), (20.0, 1000.0), (60.0, 4200.0))
    deed = keep_spring(shock_of(desk, bike).id, 70.0, rows=rows, how="pressed")
    assert curve_rows(desk.do("Add", deed, bike_id=bike.id)) == rows


def test_fitting_is_one_step_with_rate_preload_and_usable_stroke(desk, bike):
    shock = shock_of(desk, bike)
    desk.do("Fact", edit(Unit, shock.id, "spring_stroke_mm", 60.0), bike_id=bike.id)
    deed = fit_spring(bike.id, shock.id, 92.0, preload_mm=1.5, stroke_mm=65.0, how="pressed")
    check_there_and_back(desk, "Fit 525 lbf/in", deed, bike_id=bike.id)
    parts = desk.ask(coil_records(bike.id)).spring.sag.parts
    assert parts.value(Item.SPRING_RATE, shock.id) == 92.0
    assert parts.value(Item.PRELOAD, shock.id) == 1.5
    assert HOWS[parts.line(Item.SPRING_RATE, shock.id).how] == "measured by pressing it"
    assert parts.unit("rear").spring_stroke_mm == 65.0


def test_a_spring_that_would_bind_is_not_fitted(desk, bike):
    deed = fit_spring(bike.id, shock_of(desk, bike).id, 96.3, preload_mm=1.0, stroke_mm=57.0)
    with pytest.raises(InputError, match=r"at least 58\.5 mm.*Coil bind"):
        desk.do("Fit", deed, bike_id=bike.id)
    assert desk.ask(coil_records(bike.id)).spring.sag.parts.value(Item.SPRING_RATE, shock_of(desk, bike).id) is None


def test_more_preload_than_the_maker_allows_is_not_fitted(desk, bike):
    shock = shock_of(desk, bike)
    desk.do("Fact", edit(Unit, shock.id, "preload_limit_mm", 2.0), bike_id=bike.id)
    with pytest.raises(InputError, match="0 to 2 mm, the maker's limit"):
        desk.do("Fit", fit_spring(bike.id, shock.id, 96.3, preload_mm=2.5), bike_id=bike.id)


@pytest.mark.parametrize(
    ("about", "named"),
    [
        ({"rate_n_per_mm": 0}, "Spring rate"),
        ({"rate_n_per_mm": float("nan")}, "Spring rate"),
        ({"stroke_mm": 3.0}, "Usable stroke"),
        ({"label": "x" * 61}, "Name"),
        ({"how": "guessed"}, "how"),
    ],
)
def test_what_cannot_be_a_spring_is_refused_by_name(desk, bike, about, named):
    with pytest.raises(InputError, match=named):
        keep_spring("unit", **{"rate_n_per_mm": 80.0, **about})
