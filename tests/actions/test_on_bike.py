"""The log of what is on the bike: the latest line of each item holds, the order never lies."""

from __future__ import annotations

from datetime import UTC, datetime

from tests.fixtures import a_bike, check_there_and_back, make_desk
from workbench.actions.on_bike import now_on, set_item
from workbench.actions.parts import bike_parts
from workbench.model.setting import Item, OnBike


def test_the_latest_line_holds_and_undo_brings_the_one_before_back(desk):
    bike = a_bike(desk)
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    for kpa in (500.0, 520.0):
        deed = set_item(bike.id, Item.PRESSURE, fork.id, kpa, "as_pumped", temperature_c=19.0)
        line = check_there_and_back(desk, "Set", deed, bike_id=bike.id)
        assert line.value == kpa
    now = desk.ask(lambda reader: now_on(reader, bike.id))
    assert now[Item.PRESSURE, fork.id].value == 520.0
    desk.undo()
    assert desk.ask(bike_parts(bike.id)).value(Item.PRESSURE, fork.id) == 500.0


def test_lines_written_within_one_instant_keep_their_order(tmp_path):
    still = datetime(2031, 5, 14, tzinfo=UTC).isoformat()
    with make_desk(tmp_path, now=lambda: still) as desk:
        bike = a_bike(desk)
        fork = desk.ask(bike_parts(bike.id)).unit("front")
        for kpa in (510.0, 490.0, 505.0):
            desk.do("Set", set_item(bike.id, Item.PRESSURE, fork.id, kpa, "set_to"), bike_id=bike.id)
        assert desk.ask(bike_parts(bike.id)).value(Item.PRESSURE, fork.id) == 505.0
        log = desk.ask(lambda reader: reader.find(OnBike, bike_id=bike.id, order_by=("sequence",)))
        assert [line.sequence for line in log] == [1, 2, 3]


def test_a_line_names_the_deed_and_the_person_it_comes_from(desk):
    bike = a_bike(desk)
    desk.person_id = desk.ask(bike_parts(bike.id)).riders[0].id
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    line = desk.do("Set", set_item(bike.id, Item.PRESSURE, fork.id, None, "unknown"), bike_id=bike.id)
    assert line.person_id == desk.person_id
    assert line.deed_id
    assert desk.ask(bike_parts(bike.id)).line(Item.PRESSURE, fork.id).value is None
