"""The state of every station, judged from records."""

from __future__ import annotations

from dataclasses import replace

from tests.model.bikes import FORK, RANGES, SHOCK, a_log, parts_of
from workbench.model.bike import Station, StationState
from workbench.model.counting import skip_key
from workbench.model.job import JobRecords, job_marks, next_due, put_back_due
from workbench.model.person import Person
from workbench.model.sag import SagMeasurement
from workbench.model.setting import Setup


def a_sag(parts, unit):
    generation = parts.generation(unit.id)
    return SagMeasurement(
        id=unit.id,
        bike_id="bike",
        rider_id="rider",
        unit_id=unit.id,
        measured_at="",
        posture="standing",
        travel_mm=150.0,
        sag_mm=30.0,
        spread_mm=0.0,
        target=0.2,
        target_low=0.18,
        target_high=0.22,
        target_origin="own",
        generation_id=generation.id if generation else None,
    )


def mark(records, station):
    return next(one for one in job_marks(records) if one.station == station)


def test_the_first_station_due_is_the_one_to_do_now_and_only_that():
    marks = job_marks(JobRecords(parts_of(ranges={})))
    states = [one.state for one in marks]
    assert states.count(StationState.NOW) == 1
    assert states[:2] == [StationState.DONE, StationState.NOW]
    assert next_due(marks) == "adjusters: 0 of 3 counted"


def test_what_the_garage_still_lacks_is_said_in_order():
    assert mark(JobRecords(parts_of(rider=None)), Station.GARAGE).why == "choose a rider"
    assert mark(JobRecords(parts_of(rider=Person("p", "A"))), Station.GARAGE).why == "rider's mass missing"
    bare = (replace(FORK, travel_mm=None), SHOCK)
    assert mark(JobRecords(parts_of(units=bare)), Station.GARAGE).why == "fork travel missing"
    bare = (FORK, replace(SHOCK, travel_mm=None))
    assert mark(JobRecords(parts_of(units=bare)), Station.GARAGE).why == "shock stroke missing"


def test_an_adjuster_passed_over_is_not_waited_for():
    parts = parts_of(ranges={key: RANGES[key] for key in ("fc", "fr")})
    assert mark(JobRecords(parts), Station.ADJUSTERS).why == "2 of 3 counted"
    assert mark(JobRecords(parts, skips={skip_key("sr"): "worn"}), Station.ADJUSTERS).state == StationState.DONE


def test_a_skip_counts_only_while_the_station_is_not_done():
    records = JobRecords(parts_of(), skips={Station.BASELINE: "No time", Station.ADJUSTERS: "No time"})
    assert mark(records, Station.BASELINE).state == StationState.SKIPPED
    assert mark(records, Station.ADJUSTERS).state == StationState.DONE
    kept = replace(records, setups=(Setup("s", "bike", "rider", 1, "baseline", ""),))
    assert mark(kept, Station.BASELINE).state == StationState.DONE


def test_an_entry_under_way_calls_back_to_a_station_that_was_done():
    records = JobRecords(parts_of(), drafts=(Station.ADJUSTERS, Station.RIDE))
    assert mark(records, Station.ADJUSTERS).state == StationState.NOW
    assert mark(records, Station.RIDE).state == StationState.BLOCKED, "an entry does not lift a block"


def test_knobs_left_open_are_due_to_go_back():
    log = a_log(
        ("adjuster", "fr", 6.0, "counted"), ("adjuster", "fr", 17.0, "opened"), ("adjuster", "fc", 3.0, "set_to")
    )
    assert put_back_due(parts_of(log=log)) == ("fr",)


def test_knobs_left_open_keep_sag_due_after_it_is_measured():
    opened, back = (parts_of(log=a_log(("adjuster", "fr", *how))) for how in ((17.0, "opened"), (6.0, "set_to")))
    assert mark(JobRecords(opened), Station.SAG).why == "front due", "open is what sag is measured with"
    measured = tuple(a_sag(opened, unit) for unit in opened.units)
    assert mark(JobRecords(opened, sag=measured), Station.SAG).why == "clicks to put back"
    assert mark(JobRecords(back, sag=measured), Station.SAG).state == StationState.DONE


def test_when_all_is_done_nothing_is_due():
    marks = tuple(replace(one, state=StationState.DONE) for one in job_marks(JobRecords(parts_of())))
    assert next_due(marks) == "done"
