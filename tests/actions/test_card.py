"""The card of a setup, read from a library."""

from __future__ import annotations

from tests.fixtures import a_baseline, a_counted_bike, check_there_and_back
from workbench.actions.card import card_of, cards_of, hand_over
from workbench.actions.checkin import Found, checkin_records, file_checkin, overrule_item
from workbench.actions.garage import start_generation
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag
from workbench.actions.wear import set_last_service, tell_hours
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item

TODAY = "2031-05-14T12:00:00+00:00"


def lines(desk, setup):
    card = desk.ask(card_of(setup.id, TODAY, None))
    return {(section.title, line.label): line for section in card.sections for line in section.lines}


def test_as_found_is_what_was_found_whatever_was_set_later(desk):
    bike = a_counted_bike(desk)
    rebound = desk.ask(bike_parts(bike.id)).adjusters[1]
    setup = a_baseline(desk, bike)
    desk.do("Later", set_item(bike.id, Item.ADJUSTER, rebound.id, 2.0, "set_to"), bike_id=bike.id)
    line = lines(desk, setup)["Fork", "Low-speed rebound"]
    assert (line.found, line.left) == ("6 clicks from closed", "6 clicks from closed")
    assert line.remark == "11 clicks from open"


def test_the_sag_on_the_card_is_the_one_measured_on_the_present_hardware(desk):
    bike = a_counted_bike(desk)
    parts = desk.ask(bike_parts(bike.id))
    fork, rider = parts.units[0], parts.riders[0]
    rounds = (SagRound((30.0, 30.5), "standing", "helper", TODAY, pressure_kpa=520.0),)
    keep = keep_sag(bike.id, rider.id, fork.id, rounds, Band(0.18, 0.22, "common_practice"))
    desk.do("Sag", keep, bike_id=bike.id)
    setup = a_baseline(desk, bike)
    assert lines(desk, setup)["Fork", "Static sag"].left.endswith("= 20\u2009%")
    desk.do("Oil", start_generation(fork.id, "oil"), bike_id=bike.id)
    assert ("Fork", "Static sag") not in lines(desk, setup)


def test_handing_over_is_noted_and_can_be_taken_back(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    issue = check_there_and_back(desk, "Hand over", hand_over(setup.id), bike_id=bike.id)
    assert desk.ask(cards_of(bike.id)) == (issue,)
    assert (issue.setup_id, issue.rider_id) == (setup.id, setup.rider_id)


def test_the_card_hands_over_what_is_open_declined_overruled_and_due(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    bare = desk.ask(card_of(setup.id, TODAY, None))
    assert not {"To attend to", "Service"} & {section.title for section in bare.sections}
    desk.do("Last", set_last_service(bike.id, "lowers", "front", 10.0), bike_id=bike.id)
    desk.do("Hours", tell_hours(bike.id, 61.0), bike_id=bike.id)
    found = (
        Found("frame", "stop", "Crack"),
        Found("wheels", "stop", "Spoke broken"),
        Found("headset", "attend", "Knocks", "since spring"),
        Found("service/lowers/front", "attend", "Is due", is_declined=True),
    )
    desk.do("File", file_checkin(bike.id, "full", found), bike_id=bike.id)
    wheels = next(one for one in desk.ask(checkin_records(bike.id)).open_items if one.item.code == "wheels")
    desk.do("Overrule", overrule_item(wheels.item.id, "A. Weber", "Pushed home only"), bike_id=bike.id)
    card = desk.ask(card_of(setup.id, desk.now(), None))
    by = lines(desk, setup)
    assert by["To attend to", "Frame and swingarm"].left == "not to be ridden"
    assert by["To attend to", "Wheels and axles"].left == "overruled by A. Weber"
    assert by["To attend to", "Headset"].remark == "Knocks, since spring"
    assert by["To attend to", "Service: Fork lower legs"].left == "declined"
    assert by["Service", "Fork lower legs"].found == "51 of 50\u2009h"
    assert by["Service", "Fork lower legs"].left == "due now"
    assert card.cautions[0] == "Do not ride this bike: frame and swingarm (crack)."
    assert card.cautions[1].endswith("A. Weber lets it be ridden nevertheless: Pushed home only")
    assert card.cautions[2].startswith("Service: Fork lower legs, is due: recommended and declined.")


def test_as_found_goes_by_what_stood_on_the_bike_when_this_visit_began(desk):
    bike = a_counted_bike(desk)
    rebound, fork = desk.ask(bike_parts(bike.id)).adjusters[1], desk.ask(bike_parts(bike.id)).units[0]
    setup = a_baseline(desk, bike)
    first = desk.ask(card_of(setup.id, desk.now(), None))
    assert first.note == "As found: the first record of each item."
    desk.do("Turn", set_item(bike.id, Item.ADJUSTER, rebound.id, 9.0, "set_to"), bike_id=bike.id)
    desk.do("Pump", set_item(bike.id, Item.PRESSURE, fork.id, 600.0, "set_to"), bike_id=bike.id)
    desk.do("File", file_checkin(bike.id, "quick", (Found("headset", "fine"),)), bike_id=bike.id)
    desk.do("Count", set_item(bike.id, Item.ADJUSTER, rebound.id, 8.0, "counted"), bike_id=bike.id)
    desk.do("Back", set_item(bike.id, Item.ADJUSTER, rebound.id, 6.0, "set_to"), bike_id=bike.id)
    desk.do("Let out", set_item(bike.id, Item.PRESSURE, fork.id, 520.0, "set_to"), bike_id=bike.id)
    by = lines(desk, setup)
    assert by["Fork", "Low-speed rebound"].found == "8 clicks from closed", "counted in this visit"
    assert by["Fork", "Low-speed rebound"].is_changed
    assert by["Fork", "Air pressure"].found == "87\u2009psi", "set in this visit, so what stood before it is as found"
    again = desk.ask(card_of(setup.id, desk.now(), None))
    assert again.note.startswith("As found: what stood on the bike when it was checked in, ")
