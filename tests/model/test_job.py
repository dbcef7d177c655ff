"""The state of every station, judged from records."""

from __future__ import annotations

from dataclasses import replace

from tests.model.bikes import FORK, RANGES, SHOCK, a_log, parts_of
from workbench.model.bike import Station, StationState
from workbench.model.checkin import OpenItem
from workbench.model.counting import skip_key
from workbench.model.job import JobRecords, Mark, job_marks, next_due, put_back_due
from workbench.model.person import Person
from workbench.model.sag import SagMeasurement
from workbench.model.service import CheckItem
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
    assert states[:3] == [StationState.DONE, StationState.NOW, StationState.DUE]
    assert next_due(marks) == "check-in: not looked over yet"
    looked_over = JobRecords(parts_of(ranges={}), was_checked=True)
    assert next_due(job_marks(looked_over)) == "adjusters: 0 of 3 counted"


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


def an_item(code, severity, **more):
    return OpenItem(CheckItem("i", "c", code, severity, **more), "2031-05-14T09:00:00+00:00")


def test_do_not_ride_blocks_sag_and_ride_whatever_was_skipped_or_begun_and_sends_to_check_in():
    stop = an_item("frame", "stop", reason="Crack")
    records = JobRecords(parts_of(), was_checked=True, open_items=(stop,), skips={Station.SAG: "x", Station.RIDE: "y"})
    for station in (Station.SAG, Station.RIDE):
        assert mark(records, station) == Mark(station, StationState.BLOCKED, "do not ride: frame and swingarm")
        assert mark(replace(records, drafts=(station,)), station).state == StationState.BLOCKED
    assert mark(records, Station.CHECKIN).state == StationState.NOW
    assert next_due(job_marks(records)) == "check-in: do not ride: frame and swingarm"
    two = replace(records, open_items=(stop, an_item("wheels", "stop")))
    assert mark(two, Station.RIDE).why == "do not ride: frame and swingarm and 1 more"


def test_what_was_overruled_or_only_advised_blocks_nothing():
    overruled = an_item("wheels", "stop", overruled_by="A. Weber", overruled_at="2031-05-14T09:00:00+00:00")
    records = JobRecords(parts_of(), was_checked=True, open_items=(overruled, an_item("tyres", "advise")))
    assert mark(records, Station.CHECKIN).state == StationState.DONE
    assert mark(records, Station.SAG).state == StationState.NOW


def test_check_in_is_done_with_what_is_left_in_words():
    items = (an_item("headset", "attend"), an_item("pivots", "attend", is_declined=True))
    assert mark(JobRecords(parts_of(), was_checked=True, open_items=items), Station.CHECKIN) == Mark(
        Station.CHECKIN, StationState.DONE, "1 to attend, 1 declined"
    )
    assert mark(JobRecords(parts_of(), was_checked=True), Station.CHECKIN).why == ""


def test_a_service_that_falls_due_calls_back_to_check_in():
    records = JobRecords(parts_of(), was_checked=True, services=("Fork lower legs", "Shock air can"))
    assert mark(records, Station.CHECKIN).why == "service due: fork lower legs and 1 more"
    assert mark(records, Station.CHECKIN).state == StationState.NOW
    skipped = replace(records, skips={Station.CHECKIN: "Customer declines"})
    assert mark(skipped, Station.CHECKIN).state == StationState.SKIPPED


def test_check_in_waits_for_nobody_once_other_work_was_begun():
    begun = JobRecords(parts_of(log=a_log(("adjuster", "fr", 6.0, "counted"))))
    assert mark(begun, Station.CHECKIN) == Mark(Station.CHECKIN, StationState.SKIPPED, "no check-in, work went on")


def test_sag_is_due_again_when_a_unit_is_ridden_in():
    parts = parts_of()
    measured = tuple(a_sag(parts, unit) for unit in parts.units)
    records = JobRecords(parts, sag=measured, sag_again=("front",))
    assert mark(records, Station.SAG).why == "front again, it is ridden in"
    assert mark(replace(records, sag=measured[:1]), Station.SAG).why == "rear due", (
        "what was never measured comes first"
    )


def test_a_rider_two_kilos_heavier_makes_sag_due_again():
    parts = parts_of(rider=Person("rider", "M. Anders", mass_kg=86.5))
    sag = tuple(replace(a_sag(parts, unit), rider_mass_kg=84.5) for unit in parts.units)
    marks = {mark.station: mark for mark in job_marks(JobRecords(parts, sag=sag))}
    assert marks[Station.SAG].why == "front again, rider 2.0 kg heavier"
    sag = tuple(replace(one, rider_mass_kg=85.5) for one in sag)
    marks = {mark.station: mark for mark in job_marks(JobRecords(parts, sag=sag))}
    assert marks[Station.SAG].why == ""
