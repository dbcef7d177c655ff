"""The put-back list, read from a library and taken step by step."""

from __future__ import annotations

from tests.fixtures import a_bike, make_desk
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.put_back import put_back
from workbench.actions.setups import keep_setup, take_step


def log(desk, bike, adjuster, value, how):
    desk.do("Log", set_item(bike.id, "adjuster", adjuster.id, value, how), bike_id=bike.id, station="adjusters")


def test_each_step_taken_shortens_the_list_and_undo_brings_it_back(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        compression, rebound = desk.ask(bike_parts(bike.id)).adjusters[:2]
        for adjuster, found in ((compression, 3.0), (rebound, 6.0)):
            log(desk, bike, adjuster, found, "counted")
            log(desk, bike, adjuster, 13.0, "opened")
        steps = desk.ask(put_back(bike.id))
        assert [(step.subject_id, step.value) for step in steps] == [(compression.id, 3.0), (rebound.id, 6.0)]
        desk.do("Put back", take_step(bike.id, steps[0]), bike_id=bike.id, station="adjusters")
        assert [step.subject_id for step in desk.ask(put_back(bike.id))] == [rebound.id]
        desk.undo()
        assert desk.ask(put_back(bike.id)) == steps
        desk.redo()
        assert [step.subject_id for step in desk.ask(put_back(bike.id))] == [rebound.id]


def test_the_newest_setup_of_the_rider_says_where_things_go(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        parts = desk.ask(bike_parts(bike.id))
        rebound, rider = parts.adjusters[1], parts.riders[0]
        log(desk, bike, rebound, 6.0, "counted")
        for value in (8.0, 9.0):
            wanted = {("adjuster", rebound.id): value}
            desk.do(
                "Keep setup", keep_setup(bike.id, rider.id, wanted, "baseline"), bike_id=bike.id, station="baseline"
            )
        log(desk, bike, rebound, 13.0, "opened")
        assert desk.ask(put_back(bike.id, rider.id))[0].value == 9.0
        assert desk.ask(put_back(bike.id))[0].value == 9.0
        assert desk.ask(put_back(bike.id, "somebody else"))[0].value == 6.0
