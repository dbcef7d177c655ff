"""Pumps and what two attachments tell, there and back."""

from __future__ import annotations

import pytest

from tests.fixtures import a_counted_bike, everything
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.pumps import add_pump, find_pumps, hose_shares, note_attachments, pressure_log
from workbench.model.errors import InputError
from workbench.model.setting import Item


@pytest.fixture
def bike(desk):
    return a_counted_bike(desk)


def shares(desk, bike, unit, pump):
    return hose_shares(desk.ask(lambda reader: pressure_log(reader, bike.id)), unit.id, pump.id)


def test_two_attachments_of_one_pump_are_learned_from_and_undone(desk, bike):
    pump = desk.do("Add pump", add_pump("Long hose"))
    shock = desk.ask(bike_parts(bike.id)).units[1]
    before = everything(desk)
    desk.do("Twice", note_attachments(bike.id, shock.id, pump.id, 1241.0, 1191.0), bike_id=bike.id)
    after = everything(desk)
    assert shares(desk, bike, shock, pump) == (pytest.approx(1241 / 1191 - 1),)
    line = desk.ask(bike_parts(bike.id)).line(Item.PRESSURE, shock.id)
    assert (line.value, line.how, line.pump_id) == (1191.0, "as_attached", pump.id)
    desk.undo()
    assert everything(desk) == before
    desk.redo()
    assert everything(desk) == after


def test_another_pump_or_air_added_in_between_teaches_nothing(desk, bike):
    one, other = (desk.do("Add pump", add_pump(name)) for name in ("One", "Other"))
    shock = desk.ask(bike_parts(bike.id)).units[1]

    def log(kpa, how, pump):
        desk.do("Set", set_item(bike.id, Item.PRESSURE, shock.id, kpa, how, pump_id=pump.id), bike_id=bike.id)

    log(1241.0, "as_pumped", one)
    log(1191.0, "as_attached", other)
    log(1300.0, "as_pumped", one)
    assert shares(desk, bike, shock, one) == shares(desk, bike, shock, other) == ()


def test_a_pump_without_a_name_is_refused(desk):
    with pytest.raises(InputError):
        add_pump("  ")
    assert desk.ask(find_pumps) == ()
