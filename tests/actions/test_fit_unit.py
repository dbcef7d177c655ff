"""Another fork or shock on a bike that exists: what hung there keeps its own, and is never compared."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, check_there_and_back
from workbench.actions.adjusters import keep_as_found, keep_range
from workbench.actions.card import card_of
from workbench.actions.fit_unit import fit_unit, refit_unit
from workbench.actions.garage import start_generation
from workbench.actions.job import job_records
from workbench.actions.on_bike import set_item
from workbench.actions.parts import bike_parts
from workbench.actions.ride import change_settings, end_session, ride_records
from workbench.actions.ride_evidence import knob_runs, spring_runs
from workbench.actions.sag import keep_sag, sag_records
from workbench.actions.setups import setup_on_bike, steps_to_setup
from workbench.actions.wear import record_service
from workbench.model.bike import Station, StationState
from workbench.model.errors import InputError, LibraryError
from workbench.model.job import job_marks, sag_left
from workbench.model.sag import SagMeasurement
from workbench.model.sag_rules import SagRound, first_band
from workbench.model.setting import Item, changes_between, free_changes
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import not_restored


def parts_of(desk, bike):
    return desk.ask(bike_parts(bike.id))


def fitted(desk, bike, end, kind, **about):
    return check_there_and_back(desk, "Fit", fit_unit(bike.id, end, kind, **about), bike_id=bike.id)


def counted(desk, bike, end, *, found=3, steps=12):
    parts = parts_of(desk, bike)
    for adjuster in parts.adjusters_of(parts.unit(end).id):
        desk.do("As found", keep_as_found(bike.id, adjuster.id, found), bike_id=bike.id)
        desk.do("Range", keep_range(bike.id, adjuster.id, steps), bike_id=bike.id)


def marks(desk, bike):
    return {one.station: one for one in job_marks(desk.ask(job_records(bike.id, now=desk.now())))}


def sag_on(desk, bike, end):
    parts = parts_of(desk, bike)
    unit, rider = parts.unit(end), parts.riders[0]
    one = SagRound((30.0, 30.5), "standing", "helper", desk.now(), pressure_kpa=520.0)
    desk.do("Sag", keep_sag(bike.id, rider.id, unit.id, (one,), first_band(parts.bike, unit)), bike_id=bike.id)


def test_a_shock_is_swapped_for_a_coil_one_in_one_deed_that_is_undone_whole(desk):
    bike = a_counted_bike(desk)
    old = parts_of(desk, bike).unit("rear")
    new = fitted(desk, bike, "rear", "coil", travel_mm=65.0, name="Marl coil")
    parts = parts_of(desk, bike)
    assert (parts.bike.layout, parts.unit("rear")) == ("air_coil", new)
    assert (new.spring, new.travel_mm, new.name) == ("coil", 65.0, "Marl coil")
    assert [unit.id for unit in parts.former] == [old.id]
    generation = parts.generation(new.id)
    assert (generation.number, generation.reason) == (2, "exchange")


def test_counts_and_sag_fall_due_on_the_new_unit_alone(desk):
    bike = a_counted_bike(desk)
    sag_on(desk, bike, "front")
    assert marks(desk, bike)[Station.ADJUSTERS].state == StationState.DONE
    fitted(desk, bike, "front", "air", travel_mm=160.0)
    parts = parts_of(desk, bike)
    new = parts.unit("front")
    assert [parts.range_of(one.id) for one in parts.adjusters_of(new.id)] == [None, None]
    assert all(parts.range_of(one.id) for one in parts.adjusters_of(parts.unit("rear").id))
    sag = desk.ask(lambda reader: reader.find(SagMeasurement, bike_id=bike.id))
    assert sag_left(parts, sag) == ("front", "rear")
    assert marks(desk, bike)[Station.ADJUSTERS].why == "2 of 4 counted"
    assert desk.ask(sag_records(bike.id)).parts.units == parts.units


def test_the_baseline_is_due_again_until_a_setup_holds_the_new_unit(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    fitted(desk, bike, "rear", "air", travel_mm=60.0)
    assert marks(desk, bike)[Station.BASELINE].why == "no setup with this shock yet"
    counted(desk, bike, "rear")
    a_baseline(desk, bike)
    assert marks(desk, bike)[Station.BASELINE].state == StationState.DONE


def test_the_baseline_stays_due_through_a_service_of_the_new_unit(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    new = fitted(desk, bike, "rear", "air", travel_mm=60.0)
    desk.do("Oil", start_generation(new.id, "oil"), bike_id=bike.id)
    assert marks(desk, bike)[Station.BASELINE].why == "no setup with this shock yet"


def test_a_setup_of_another_fork_is_no_baseline_of_the_one_hung_back(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    first = parts_of(desk, bike).unit("front")
    winter = fitted(desk, bike, "front", "coil", travel_mm=120.0)  # rides in no setup yet
    desk.do("Back", refit_unit(first.id), bike_id=bike.id)
    a_baseline(desk, bike)
    assert marks(desk, bike)[Station.BASELINE].state == StationState.DONE
    desk.do("Back", refit_unit(winter.id), bike_id=bike.id)
    assert marks(desk, bike)[Station.BASELINE].why == "no setup with this fork yet"


def test_no_setup_of_the_old_unit_stands_and_none_of_it_is_restored(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    assert desk.ask(setup_on_bike(bike.id)).id == setup.id
    fitted(desk, bike, "front", "air", travel_mm=150.0)
    counted(desk, bike, "front")
    assert desk.ask(setup_on_bike(bike.id)) is None
    rear = parts_of(desk, bike).unit("rear")
    desk.do("Drop", set_item(bike.id, Item.PRESSURE, rear.id, 1000.0, "set_to"), bike_id=bike.id)
    assert [step.title for step in desk.ask(steps_to_setup(setup.id))] == ["Shock: air pressure"]
    assert not_restored(desk.ask(ride_records(bike.id)).values[setup.id])


def test_not_even_a_bare_unit_set_to_the_same_numbers_passes_for_the_old_one(desk):
    bike = a_bike(desk)
    for unit in parts_of(desk, bike).units:
        desk.do("Found", set_item(bike.id, Item.PRESSURE, unit.id, 500.0, "set_to"), bike_id=bike.id)
    a_baseline(desk, bike)
    new = fitted(desk, bike, "front", "air", travel_mm=150.0)
    desk.do("Set", set_item(bike.id, Item.PRESSURE, new.id, 500.0, "set_to"), bike_id=bike.id)
    assert desk.ask(setup_on_bike(bike.id)) is None


def test_two_setups_across_the_exchange_are_no_one_change_and_it_is_said_once(desk):
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike)
    fitted(desk, bike, "front", "air", travel_mm=150.0)
    counted(desk, bike, "front")
    second = a_baseline(desk, bike)
    values = desk.ask(ride_records(bike.id)).values
    assert free_changes(changes_between(values[first.id], values[second.id])) > 1
    said = changes_text(parts_of(desk, bike), values[first.id], values[second.id], Units())
    assert said.count("Another fork: not compared") == 1
    assert "Fork: low-speed rebound" in said


def test_two_setups_of_the_old_unit_are_compared_as_they_were_then(desk):
    bike = a_counted_bike(desk)
    first = a_baseline(desk, bike)
    parts = parts_of(desk, bike)
    rebound = parts.adjusters_of(parts.unit("front").id)[1]
    wanted = {(Item.ADJUSTER.value, rebound.id): 9.0}
    second = desk.do("Set", change_settings(bike.id, first.rider_id, wanted), bike_id=bike.id)
    before = changes_text(parts, *(desk.ask(ride_records(bike.id)).values[one.id] for one in (first, second)), Units())
    assert before == "Fork: low-speed rebound 3 clicks out"
    fitted(desk, bike, "front", "air", travel_mm=150.0)
    values = desk.ask(ride_records(bike.id)).values
    after = changes_text(parts_of(desk, bike), values[first.id], values[second.id], Units())
    assert after == f"Earlier {before.lower()}"


def test_runs_on_the_old_unit_are_no_trials_and_no_travel_used_of_the_new_one(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    for _ in range(3):
        a_run(desk, session, liking=6, travel_front_mm=140.0)
    desk.do("End", end_session(session.id), bike_id=bike.id)
    fitted(desk, bike, "front", "air", travel_mm=150.0)
    counted(desk, bike, "front")
    a_baseline(desk, bike)
    records = desk.ask(ride_records(bike.id))
    assert len(records.sessions[0].runs) == 3
    assert all(one.trials == () for one in knob_runs(records))
    front = next(one for one in spring_runs(records) if one.end == "front")
    assert front.travel_used == ()


def test_a_card_of_the_old_setup_prints_and_shows_nothing_of_it_on_the_new_unit(desk):
    bike = a_counted_bike(desk)
    setup = a_baseline(desk, bike)
    fitted(desk, bike, "front", "air", travel_mm=150.0, name="Tern 150")
    card = desk.ask(card_of(setup.id, desk.now(), None))
    fork = next(one for one in card.sections if one.title.startswith("Fork"))
    assert {line.left for line in fork.lines} == {"not known", "not recorded"}


def test_a_rigid_front_gets_its_first_fork(desk):
    bike = a_bike(desk, layout="rigid_rigid", shock_stroke_mm=None)
    new = fitted(desk, bike, "front", "coil", travel_mm=120.0)
    parts = parts_of(desk, bike)
    assert (parts.bike.layout, parts.units, parts.former) == ("coil_rigid", (new,), ())
    assert parts.generation(new.id).number == 1


def test_a_shock_is_taken_off_and_with_it_what_asked_for_it(desk):
    bike = a_counted_bike(desk)
    assert fitted(desk, bike, "rear", "rigid") is None
    parts = parts_of(desk, bike)
    assert (parts.bike.layout, [unit.end for unit in parts.units]) == ("hardtail", ["front"])
    assert parts.bike.rear_travel_mm is None
    assert marks(desk, bike)[Station.ADJUSTERS].state == StationState.DONE


def test_there_is_nothing_to_take_off_a_rigid_end(desk):
    bike = a_bike(desk, layout="hardtail")
    with pytest.raises(LibraryError, match="no shock to take off"):
        desk.do("Off", fit_unit(bike.id, "rear", "rigid"), bike_id=bike.id)


def test_a_unit_is_not_exchanged_between_two_runs(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    a_session(desk, bike)
    with pytest.raises(LibraryError, match="session is open"):
        desk.do("Fit", fit_unit(bike.id, "front", "air"), bike_id=bike.id)


@pytest.mark.parametrize(("kind", "travel_mm"), [("steam", 150.0), ("air", 5.0), ("air", float("nan"))])
def test_what_cannot_be_is_refused_before_anything_is_done(desk, kind, travel_mm):
    bike = a_bike(desk)
    with pytest.raises(InputError):
        fit_unit(bike.id, "front", kind, travel_mm=travel_mm)


def test_entries_under_way_about_the_old_unit_are_closed_and_come_back_with_undo(desk):
    bike = a_counted_bike(desk)
    draft = desk.keep_draft("count", "{}", bike_id=bike.id, subject=parts_of(desk, bike).adjusters[0].id)
    desk.do("Fit", fit_unit(bike.id, "front", "air", draft_ids=(draft.id,)), bike_id=bike.id)
    assert desk.drafts(bike.id) == ()
    desk.undo()
    assert [one.id for one in desk.drafts(bike.id)] == [draft.id]


def test_service_of_the_old_unit_is_not_the_service_of_the_new_one(desk):
    bike = a_counted_bike(desk)
    desk.do("Serviced", record_service(bike.id, "lowers", "front"), bike_id=bike.id)
    fitted(desk, bike, "front", "air", travel_mm=150.0)
    kept = desk.do("Serviced", record_service(bike.id, "lowers", "front"), bike_id=bike.id)
    assert kept.unit_id == parts_of(desk, bike).unit("front").id


def test_an_earlier_unit_comes_back_with_its_counts_sag_and_setups(desk):
    bike = a_counted_bike(desk)
    sag_on(desk, bike, "front")
    setup = a_baseline(desk, bike)
    before = parts_of(desk, bike)
    old = before.unit("front")
    winter = fitted(desk, bike, "front", "coil", travel_mm=120.0)
    counted(desk, bike, "front")
    check_there_and_back(desk, "Back", refit_unit(old.id), bike_id=bike.id)
    parts = parts_of(desk, bike)
    assert (parts.bike.layout, parts.unit("front"), parts.former[0].id) == ("air_air", old, winter.id)
    assert [parts.range_of(one.id) for one in parts.adjusters] == [before.range_of(one.id) for one in before.adjusters]
    assert desk.ask(setup_on_bike(bike.id)).id == setup.id
    sag = desk.ask(lambda reader: reader.find(SagMeasurement, bike_id=bike.id))
    assert sag_left(parts, sag) == ("rear",)


def test_a_unit_that_hangs_on_the_bike_does_not_come_back(desk):
    bike = a_bike(desk)
    fork = parts_of(desk, bike).unit("front")
    with pytest.raises(LibraryError, match="hangs on the bike already"):
        desk.do("Back", refit_unit(fork.id), bike_id=bike.id)


def test_a_shock_comes_back_onto_a_rear_made_rigid(desk):
    bike = a_counted_bike(desk)
    shock = parts_of(desk, bike).unit("rear")
    fitted(desk, bike, "rear", "rigid")
    check_there_and_back(desk, "Back", refit_unit(shock.id), bike_id=bike.id)
    assert parts_of(desk, bike).bike.layout == "air_air"
