"""Check-ins filed, carried forward, closed, declined and overruled; and what stops a rider."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_counted_bike, a_session, check_there_and_back
from workbench.actions.checkin import (
    Found,
    checkin_records,
    close_item,
    decline_item,
    file_checkin,
    overrule_item,
    picture_item,
)
from workbench.actions.garage_parts import more_parts, remove_photo
from workbench.actions.job import job_records, skip_station
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag
from workbench.model.bike import Station, StationState
from workbench.model.checkin import declined_sentence
from workbench.model.errors import InputError, LibraryError
from workbench.model.job import job_marks
from workbench.model.pictures import Picture
from workbench.model.sag_rules import SagRound, first_band


def marks(desk, bike):
    return {one.station: one for one in job_marks(desk.ask(job_records(bike.id, now=desk.now())))}


def still_open(desk, bike):
    return desk.ask(checkin_records(bike.id, desk.now())).open_items


def filed(desk, bike, *found):
    return desk.do("File", file_checkin(bike.id, "quick", found), bike_id=bike.id, station="checkin")


def test_a_check_in_is_filed_whole_and_taken_back_whole(desk):
    bike = a_counted_bike(desk)
    desk.keep_draft("checkin", "{}", bike_id=bike.id)
    draft = desk.open_draft("checkin", bike_id=bike.id)
    deed = file_checkin(
        bike.id,
        "quick",
        (Found("headset", "attend", "Knocks", "since spring"), Found("frame", "fine")),
        bothers="Knocks when braking",
        last_done="Nothing for two years",
        draft_id=draft.id,
    )
    check_there_and_back(desk, "File", deed, bike_id=bike.id)
    records = desk.ask(checkin_records(bike.id, desk.now()))
    assert (records.checkins[-1].bothers, records.checkins[-1].last_done) == (
        "Knocks when braking",
        "Nothing for two years",
    )
    assert [(one.title, one.item.reason, one.item.note) for one in records.open_items] == [
        ("Headset", "Knocks", "since spring")
    ]
    assert desk.open_draft("checkin", bike_id=bike.id) is None
    assert records.counted == 4


def test_what_was_found_is_carried_forward_until_it_is_closed_or_looked_at_again(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("headset", "attend", "Knocks"), Found("tyres", "advise", "Worn"))
    filed(desk, bike, Found("frame", "fine"), Found("headset", "not_looked_at"))
    assert [one.title for one in still_open(desk, bike)] == ["Headset", "Tyres"], "not looked at closes nothing"
    filed(desk, bike, Found("headset", "fine"))
    assert [one.title for one in still_open(desk, bike)] == ["Tyres"]
    check_there_and_back(desk, "Close", close_item(still_open(desk, bike)[0].item.id), bike_id=bike.id)
    assert not still_open(desk, bike)


def test_the_gravest_comes_first(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("tyres", "advise"), Found("headset", "attend"), Found("wheels", "stop"))
    assert [one.item.severity for one in still_open(desk, bike)] == ["stop", "attend", "advise"]


def test_do_not_ride_blocks_sag_and_ride_even_where_they_were_skipped_until_it_is_closed(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    desk.do("Skip", skip_station(bike.id, Station.SAG, "No time"), bike_id=bike.id)
    filed(desk, bike, Found("frame", "stop", "Crack"))
    for station in (Station.SAG, Station.RIDE):
        assert marks(desk, bike)[station].state == StationState.BLOCKED
        assert marks(desk, bike)[station].why == "do not ride: frame and swingarm"
    assert marks(desk, bike)[Station.CHECKIN].why == "do not ride: frame and swingarm"
    with pytest.raises(LibraryError, match="not to be ridden: frame and swingarm"):
        a_session(desk, bike)
    parts = desk.ask(bike_parts(bike.id))
    one = SagRound((30.0, 30.5), "standing", "helper", desk.now(), 520.0)
    keep = keep_sag(bike.id, parts.riders[0].id, parts.units[0].id, (one,), first_band(parts.bike, parts.units[0]))
    with pytest.raises(LibraryError, match="not to be ridden"):
        desk.do("Keep sag", keep, bike_id=bike.id)
    desk.do("Seen to", close_item(still_open(desk, bike)[0].item.id), bike_id=bike.id)
    assert marks(desk, bike)[Station.CHECKIN].state == StationState.DONE
    assert marks(desk, bike)[Station.RIDE].state != StationState.BLOCKED
    assert a_session(desk, bike).bike_id == bike.id


def test_a_named_person_overrules_with_a_reason_and_the_bike_can_be_ridden(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    filed(desk, bike, Found("wheels", "stop", "Spoke broken"))
    item = still_open(desk, bike)[0].item
    for by, reason, field in (("", "It holds", "by"), ("A. Weber", " ", "reason")):
        with pytest.raises(InputError) as refused:
            overrule_item(item.id, by, reason)
        assert refused.value.field == field
    check_there_and_back(desk, "Overrule", overrule_item(item.id, "A. Weber", "Trued, holds"), bike_id=bike.id)
    (kept,) = still_open(desk, bike)
    assert (kept.item.overruled_by, kept.item.override_reason, kept.stops) == ("A. Weber", "Trued, holds", False)
    assert a_session(desk, bike).bike_id == bike.id
    with pytest.raises(LibraryError, match="Nobody overrules"):
        desk.do("Again", overrule_item(item.id, "A. Weber", "Again"), bike_id=bike.id)


def test_what_can_throw_a_rider_is_overruled_by_nobody(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("crown", "stop", "Creaks"))
    with pytest.raises(LibraryError, match="mend it and look again"):
        desk.do("Overrule", overrule_item(still_open(desk, bike)[0].item.id, "A. Weber", "It holds"), bike_id=bike.id)
    assert still_open(desk, bike)[0].stops


def test_a_declined_item_stays_open_and_the_job_line_says_so(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("pivots", "attend", "Play"), Found("headset", "attend", "Knocks", is_declined=True))
    assert marks(desk, bike)[Station.CHECKIN].why == "1 to attend, 1 declined"
    pivots = next(one for one in still_open(desk, bike) if one.item.code == "pivots")
    check_there_and_back(desk, "Decline", decline_item(pivots.item.id), bike_id=bike.id)
    assert marks(desk, bike)[Station.CHECKIN].why == "2 declined"


def test_what_stops_the_bike_still_does_when_its_repair_is_declined_and_the_card_says_so(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("frame", "stop", "Crack", is_declined=True), Found("pivots", "attend", is_declined=True))
    frame, pivots = still_open(desk, bike)
    assert frame.stops
    assert declined_sentence(frame).endswith("the repair was declined. Do not ride it like this.")
    assert declined_sentence(pivots).endswith("stop riding if it gets worse.")


def test_nothing_is_done_twice_to_a_closed_item(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("pivots", "attend"))
    item = still_open(desk, bike)[0].item
    desk.do("Close", close_item(item.id), bike_id=bike.id)
    for deed in (close_item(item.id), decline_item(item.id), overrule_item(item.id, "A", "B")):
        with pytest.raises(LibraryError, match="closed already"):
            desk.do("Again", deed, bike_id=bike.id)


def test_a_picture_hangs_on_the_find_and_on_the_bike_and_goes_with_one_undo(desk):
    bike = a_counted_bike(desk)
    crack = Picture("c" * 64, "crack.jpg")
    deed = file_checkin(bike.id, "quick", (Found("frame", "attend", "Marks", picture=crack), Found("wheels", "fine")))
    check_there_and_back(desk, "File", deed, bike_id=bike.id)
    records = desk.ask(checkin_records(bike.id))
    (found,) = records.open_items
    assert records.photo(found.item) == crack
    assert [one.sha256 for one in desk.ask(more_parts(bike.id)).photos] == [crack.sha256]


def test_an_open_find_gets_a_picture_later_another_one_and_none(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("frame", "attend"))
    item_id = still_open(desk, bike)[0].item.id
    for one in (Picture("a" * 64, "first.jpg"), Picture("b" * 64, "second.jpg")):
        check_there_and_back(desk, "Picture", picture_item(item_id, one), bike_id=bike.id)
        records = desk.ask(checkin_records(bike.id))
        assert records.photo(records.open_items[0].item) == one
    check_there_and_back(desk, "No picture", picture_item(item_id, None), bike_id=bike.id)
    assert still_open(desk, bike)[0].item.photo_id is None
    assert len(desk.ask(more_parts(bike.id)).photos) == 2


def test_a_closed_find_gets_no_picture_any_more(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("frame", "attend"))
    item_id = still_open(desk, bike)[0].item.id
    desk.do("Seen to", close_item(item_id))
    with pytest.raises(LibraryError, match="closed already"):
        desk.do("Picture", picture_item(item_id, Picture("a" * 64, "late.jpg")))


def test_a_picture_taken_off_the_bike_leaves_the_find_without_one(desk):
    bike = a_counted_bike(desk)
    filed(desk, bike, Found("frame", "attend", picture=Picture("a" * 64, "mark.jpg")))
    (photo,) = desk.ask(more_parts(bike.id)).photos
    check_there_and_back(desk, "Remove", remove_photo(photo.id), bike_id=bike.id)
    records = desk.ask(checkin_records(bike.id))
    assert records.photo(records.open_items[0].item) is None
