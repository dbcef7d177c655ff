"""Keeping sag: one deed, everything in it, undone and redone whole."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from workbench.actions.sag import discard_sag, keep_sag, note_as_found, open_fully, sag_records
from workbench.model.errors import NotEnoughData
from workbench.model.put_back import put_back_steps
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item, OnBike

BAND = Band(0.18, 0.22, "common_practice")
AT = "2031-05-14T09:10:00+00:00"


def a_round(*readings_mm, kpa=550.0, **other):
    return SagRound(readings_mm, "standing", "helper", AT, pressure_kpa=kpa, temperature_c=20.0, **other)


def everything(desk, bike):
    records = desk.ask(sag_records(bike.id))
    return records.measurements, records.readings, records.targets, records.parts.now


def keep(desk, bike, *rounds, draft_id=None):
    records = desk.ask(sag_records(bike.id))
    fork = records.parts.unit("front")
    deed = keep_sag(bike.id, records.rider.id, fork.id, rounds, BAND, draft_id=draft_id)
    return desk.do("Keep front sag", deed, bike_id=bike.id, station="sag")


def test_all_rounds_are_written_and_the_last_one_is_the_kept_one(desk):
    bike = a_bike(desk)
    keep(desk, bike, a_round(36.0, 37.0), a_round(30.0, 31.0, 30.5, kpa=600.0))
    records = desk.ask(sag_records(bike.id))
    assert [(one.sag_mm, one.spread_mm, one.is_kept, one.pressure_kpa) for one in records.measurements] == [
        (36.5, 1.0, False, 550.0),
        (30.5, 1.0, True, 600.0),
    ]
    last = records.measurements[-1]
    assert [one.sag_mm for one in records.readings if one.measurement_id == last.id] == [30.0, 31.0, 30.5]
    assert last.rider_mass_kg == 84.5
    assert last.generation_id == records.parts.generation(last.unit_id).id
    line = records.parts.line(Item.PRESSURE, last.unit_id)
    assert (line.value, line.how, line.temperature_c) == (600.0, "as_pumped", 20.0)
    assert [(one.low, one.high, one.origin) for one in records.targets] == [(0.18, 0.22, "common_practice")]


def test_keeping_undone_and_redone_gives_equal_records_and_opens_the_entry_again(desk):
    bike = a_bike(desk)
    before = everything(desk, bike)
    draft = desk.keep_draft("sag", "{}", bike_id=bike.id, subject="fork")
    keep(desk, bike, a_round(30.0, 31.0), draft_id=draft.id)
    after = everything(desk, bike)
    assert desk.open_draft("sag", bike_id=bike.id, subject="fork") is None
    desk.undo()
    assert everything(desk, bike) == before
    assert desk.open_draft("sag", bike_id=bike.id, subject="fork").id == draft.id
    desk.redo()
    assert everything(desk, bike) == after


def test_a_measuring_without_a_reading_is_refused_and_leaves_nothing(desk):
    bike = a_bike(desk)
    before = everything(desk, bike)
    with pytest.raises(NotEnoughData, match="no reading"):
        keep(desk, bike, a_round())
    assert everything(desk, bike) == before


def test_a_unit_of_unknown_travel_cannot_be_kept(desk):
    bike = a_bike(desk, fork_travel_mm=None)
    with pytest.raises(NotEnoughData, match="travel"):
        keep(desk, bike, a_round(30.0, 31.0))
    assert desk.ask(sag_records(bike.id)).measurements == ()


def test_keeping_again_replaces_the_target_but_not_the_earlier_measurements(desk):
    bike = a_bike(desk)
    keep(desk, bike, a_round(30.0, 31.0))
    keep(desk, bike, a_round(31.0, 31.0))
    records = desk.ask(sag_records(bike.id))
    assert len(records.measurements) == 2
    assert len(records.targets) == 1


def test_an_entry_put_aside_leaves_on_record_what_was_pumped(desk):
    bike = a_bike(desk)
    fork = desk.ask(sag_records(bike.id)).parts.unit("front")
    draft = desk.keep_draft("sag", "{}", bike_id=bike.id, subject=fork.id)
    deed = discard_sag(draft.id, bike.id, fork.id, a_round(kpa=580.0))
    desk.do("Discard front sag entry", deed, bike_id=bike.id, station="sag")
    assert desk.ask(sag_records(bike.id)).parts.value(Item.PRESSURE, fork.id) == 580.0
    assert desk.open_draft("sag", bike_id=bike.id, subject=fork.id) is None
    desk.undo()
    assert desk.ask(sag_records(bike.id)).parts.value(Item.PRESSURE, fork.id) is None
    assert desk.open_draft("sag", bike_id=bike.id, subject=fork.id).id == draft.id


def test_an_adjuster_recorded_then_opened_knows_its_way_back(desk):
    bike = a_bike(desk)
    rebound = desk.ask(sag_records(bike.id)).parts.adjusters[1]
    assert rebound.id not in desk.ask(sag_records(bike.id)).recorded
    desk.do("Note rebound", note_as_found(bike.id, rebound.id, 6), bike_id=bike.id, station="sag")
    desk.do("Open rebound", open_fully(bike.id, (rebound.id,)), bike_id=bike.id, station="sag")
    records = desk.ask(sag_records(bike.id))
    assert rebound.id in records.recorded
    assert records.parts.line(Item.ADJUSTER, rebound.id).how == "opened"
    log = desk.ask(lambda reader: reader.find(OnBike, bike_id=bike.id))
    (step,) = put_back_steps(records.parts, log, None)
    assert step.text == "fully closed, then open 6 clicks"
