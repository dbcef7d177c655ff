"""Service by hours: what falls due, what a service begins, and sag again once a unit is ridden in."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, check_there_and_back, make_desk
from workbench.actions.checkin import Found, checkin_records, file_checkin
from workbench.actions.job import job_records
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag
from workbench.actions.wear import record_service, set_interval, set_last_service, tell_hours
from workbench.model.bike import Station, StationState
from workbench.model.errors import InputError
from workbench.model.job import job_marks
from workbench.model.sag_rules import SagRound, first_band


def look(desk, bike):
    return desk.ask(checkin_records(bike.id, desk.now()))


def wear(desk, bike, part, end="front"):
    return next(one for one in look(desk, bike).wear if (one.part.part, one.part.end) == (part, end))


def mark(desk, bike, station):
    return next(one for one in job_marks(desk.ask(job_records(bike.id, now=desk.now()))) if one.station == station)


def tell(desk, bike, hours, source="stated"):
    desk.do("Hours", tell_hours(bike.id, hours, source), bike_id=bike.id)


def measure(desk, bike):
    parts = desk.ask(bike_parts(bike.id))
    for unit in parts.units:
        one = SagRound((30.0, 30.5) if unit.kind == "fork" else (17.0, 17.5), "standing", "helper", desk.now(), 520.0)
        deed = keep_sag(bike.id, parts.riders[0].id, unit.id, (one,), first_band(parts.bike, unit))
        desk.do("Sag", deed, bike_id=bike.id)


def test_nothing_is_due_while_nobody_said_when_it_was_serviced(desk):
    bike = a_counted_bike(desk)
    tell(desk, bike, 400.0)
    assert {one.state for one in look(desk, bike).wear} == {"unknown"}
    assert {one.kept.origin for one in look(desk, bike).wear} == {"common_practice"}


def test_a_part_falls_due_by_hours_and_the_job_line_says_so_until_it_is_on_the_hand_over_list(desk):
    bike = a_counted_bike(desk)
    desk.do("Last", set_last_service(bike.id, "lowers", "front", 100.0), bike_id=bike.id)
    for hours, state in ((139.0, "fine"), (140.0, "soon"), (150.0, "due")):
        tell(desk, bike, hours)
        assert wear(desk, bike, "lowers").state == state
    assert mark(desk, bike, Station.CHECKIN).why == "service due: fork lower legs"
    assert mark(desk, bike, Station.CHECKIN).state == StationState.NOW
    found = Found(wear(desk, bike, "lowers").code, "attend", is_declined=True)
    desk.do("File", file_checkin(bike.id, "quick", (found,)), bike_id=bike.id)
    assert (mark(desk, bike, Station.CHECKIN).state, mark(desk, bike, Station.CHECKIN).why) == (
        StationState.DONE,
        "1 declined",
    )


def test_the_makers_interval_takes_the_place_of_common_practice(desk):
    bike = a_counted_bike(desk)
    desk.do("Last", set_last_service(bike.id, "lowers", "front", 0.0), bike_id=bike.id)
    tell(desk, bike, 30.0)
    assert wear(desk, bike, "lowers").state == "fine"
    check_there_and_back(
        desk, "Interval", set_interval(bike.id, "lowers", "front", hours=25.0, months=None), bike_id=bike.id
    )
    assert (wear(desk, bike, "lowers").state, wear(desk, bike, "lowers").kept.origin) == ("due", "maker")
    assert wear(desk, bike, "lowers").kept.last_hours == 0.0, "the interval alone changed"


def test_a_year_makes_a_damper_due_however_little_it_was_ridden(tmp_path):
    moment = datetime(2031, 5, 14, 9, 0, tzinfo=UTC)

    def now():
        return moment.isoformat()

    with make_desk(tmp_path, now=now) as desk:
        bike = a_counted_bike(desk)
        desk.do("Service", record_service(bike.id, "damper", "front"), bike_id=bike.id)
        moment += timedelta(days=340)
        assert wear(desk, bike, "damper").state == "soon"
        moment += timedelta(days=30)
        assert wear(desk, bike, "damper").state == "due"


def test_runs_ridden_here_add_to_the_hours_told(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5, lap_s=1800.0)
    tell(desk, bike, 100.0, "log")
    a_run(desk, session, liking=5, lap_s=3600.0)
    a_run(desk, session, liking=5)  # no time known: it adds nothing
    hours = look(desk, bike).hours
    assert (hours.hours, hours.ridden_h, hours.runs) == (101.0, 1.0, 2)
    assert hours.told.source == "log"


def test_an_oil_change_begins_new_hardware_so_counts_and_sag_fall_due_and_the_item_is_closed(desk):
    bike = a_counted_bike(desk)
    measure(desk, bike)
    found = Found("service/damper/front", "attend")
    desk.do("File", file_checkin(bike.id, "quick", (found,)), bike_id=bike.id)
    check_there_and_back(desk, "Oil", record_service(bike.id, "damper", "front"), bike_id=bike.id)
    parts = desk.ask(bike_parts(bike.id))
    assert [(parts.generation(unit.id).number, parts.generation(unit.id).reason) for unit in parts.units] == [
        (2, "oil"),
        (1, "new"),
    ]
    assert mark(desk, bike, Station.ADJUSTERS).why == "2 of 4 counted"
    assert mark(desk, bike, Station.SAG).why == "front due"
    assert not look(desk, bike).open_items


def test_what_is_serviced_without_opening_a_unit_begins_no_new_hardware(desk):
    bike = a_counted_bike(desk)
    desk.do("Pivots", record_service(bike.id, "pivots", "rear"), bike_id=bike.id)
    assert {one.number for one in desk.ask(bike_parts(bike.id)).generations} == {1}


def test_sag_is_due_again_once_a_serviced_unit_is_ridden_in_and_not_after_it_was_measured(desk):
    bike = a_counted_bike(desk)
    tell(desk, bike, 100.0)
    desk.do("Lowers", record_service(bike.id, "lowers", "front"), bike_id=bike.id)
    measure(desk, bike)
    assert desk.ask(job_records(bike.id)).sag_again == ()
    tell(desk, bike, 107.0)
    assert desk.ask(job_records(bike.id)).sag_again == ()
    tell(desk, bike, 108.0)
    assert desk.ask(job_records(bike.id)).sag_again == ("front",)
    measure(desk, bike)
    assert desk.ask(job_records(bike.id)).sag_again == ()


def test_a_bike_that_came_new_is_ridden_in_at_both_ends_and_a_used_one_is_not(desk):
    used, new = (a_counted_bike(desk, name=name) for name in ("Used", "New"))
    for bike, first in ((used, 200.0), (new, 0.0)):
        tell(desk, bike, first)
        measure(desk, bike)
        tell(desk, bike, first + 9.0)
    assert desk.ask(job_records(used.id)).sag_again == ()
    assert desk.ask(job_records(new.id)).sag_again == ("front", "rear")


@pytest.mark.parametrize(
    ("deed", "field"),
    [
        (lambda: tell_hours("b", -1.0), "hours"),
        (lambda: tell_hours("b", float("nan")), "hours"),
        (lambda: tell_hours("b", 5.0, "guess"), "source"),
        (lambda: set_interval("b", "lowers", "front", hours=0.0, months=None), "hours"),
        (lambda: set_interval("b", "lowers", "front", hours=None, months=0), "months"),
        (lambda: set_last_service("b", "lowers", "front", -2.0), "hours"),
    ],
)
def test_hours_that_cannot_be_are_refused_at_their_field(deed, field):
    with pytest.raises(InputError) as refused:
        deed()
    assert refused.value.field == field


def test_parts_a_bike_does_not_have_are_not_listed(desk):
    hardtail = a_counted_bike(desk, name="Hard", layout="hardtail")
    coil = a_counted_bike(desk, name="Coil", layout="air_coil")
    assert {(one.part.part, one.part.end) for one in look(desk, hardtail).wear} == {
        ("lowers", "front"),
        ("air", "front"),
        ("damper", "front"),
        ("headset", "frame"),
    }
    assert ("air", "rear") not in {(one.part.part, one.part.end) for one in look(desk, coil).wear}
