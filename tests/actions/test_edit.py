"""One fact changed: checked against its declaration, taken back and done again."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, check_there_and_back, everything
from workbench.actions.edit import edit
from workbench.actions.parts import bike_parts
from workbench.model.bike import Bike
from workbench.model.errors import InputError, LibraryError
from workbench.model.unit import Unit


@pytest.fixture
def fork(desk):
    return desk.ask(bike_parts(a_bike(desk).id)).unit("front")


def test_a_fact_is_set_and_taken_back(desk, fork):
    check_there_and_back(desk, "Fork: travel", edit(Unit, fork.id, "travel_mm", 160))
    assert desk.ask(lambda reader: reader.get(Unit, fork.id)).travel_mm == 160.0


def test_a_lower_limit_above_the_upper_one_is_refused_at_the_field_being_changed(desk, fork):
    desk.do("Most", edit(Unit, fork.id, "maximum_kpa", 900.0))
    before = everything(desk)
    with pytest.raises(InputError, match="not above the highest pressure allowed") as refused:
        desk.do("Least", edit(Unit, fork.id, "minimum_kpa", 950.0))
    assert refused.value.field == "Lowest pressure allowed"
    assert everything(desk) == before
    desk.do("Least", edit(Unit, fork.id, "minimum_kpa", 900.0))
    with pytest.raises(InputError, match="not below the lowest pressure allowed"):
        desk.do("Most", edit(Unit, fork.id, "maximum_kpa", 800.0))


def test_limits_that_cross_do_not_block_other_facts(desk, fork):
    desk.do("Most", edit(Unit, fork.id, "maximum_kpa", 900.0))
    desk.do("Cross", lambda gate: gate.put(_crossed(gate.need(Unit, fork.id))))
    desk.do("Name", edit(Unit, fork.id, "name", "Fork A"))
    assert desk.ask(lambda reader: reader.get(Unit, fork.id)).name == "Fork A"


def _crossed(unit):
    from dataclasses import replace

    return replace(unit, minimum_kpa=1000.0)


def test_a_record_that_is_gone_is_said(desk):
    with pytest.raises(LibraryError, match="no longer in the library"):
        desk.do("Name", edit(Bike, "gone", "name", "Larch"))


def test_a_field_nobody_declared_cannot_be_edited(fork):
    with pytest.raises(KeyError):
        edit(Unit, fork.id, "bike_id", "elsewhere")
