"""The garage list keeps what it read, and never shows what was."""

from __future__ import annotations

from tests.fixtures import a_bike
from workbench.actions.edit import edit
from workbench.actions.garage import archive_bike, bring_back_bike, garage_rows
from workbench.actions.people import add_rider, people
from workbench.model.bike import Bike
from workbench.model.person import Person
from workbench.viewmodels.garage_list import GarageList


def check_fresh(desk, listed):
    """What the list shows is what the library holds."""
    assert listed.rows(archived=False) == desk.ask(garage_rows())
    assert listed.rows(archived=True) == desk.ask(garage_rows(archived=True))
    assert listed.rows(archived=False) == desk.ask(garage_rows())


def test_after_every_kind_of_deed_undo_and_redo_the_list_shows_what_there_is(desk):
    listed = GarageList(desk)
    larch, tarn = a_bike(desk), a_bike(desk, name="Tarn", rider="J. Okoye")
    check_fresh(desk, listed)
    anders, okoye = desk.ask(people())
    deeds = (
        (edit(Bike, larch.id, "name", "Zephyr"), larch.id),
        (edit(Person, okoye.id, "name", "A. Okoye"), larch.id),  # rides another bike than the one it is filed under
        (add_rider(tarn.id, anders.id), tarn.id),
        (archive_bike(larch.id), larch.id),
        (bring_back_bike(larch.id), larch.id),
    )
    for deed, bike_id in deeds:
        desk.do("Deed", deed, bike_id=bike_id)
        assert listed.rows(archived=False) == desk.ask(garage_rows())
        desk.undo()
        assert listed.rows(archived=False) == desk.ask(garage_rows())
        desk.redo()
        check_fresh(desk, listed)


def test_a_deed_on_one_bike_reads_no_other_bike_again(desk):
    listed = GarageList(desk)
    larch, tarn = a_bike(desk), a_bike(desk, name="Tarn")
    before = {row.bike.id: row for row in listed.rows(archived=False)}
    desk.do("Tag", edit(Bike, larch.id, "tags", "creaks"), bike_id=larch.id)
    after = {row.bike.id: row for row in listed.rows(archived=False)}
    assert after[larch.id].bike.tags == "creaks"
    assert after[tarn.id] is before[tarn.id]


def test_a_search_is_answered_again_only_when_something_changed(desk):
    listed = GarageList(desk)
    larch = a_bike(desk)
    found = listed.found("lar", archived=False)
    assert listed.found("lar", archived=False) is found
    desk.do("Name", edit(Bike, larch.id, "name", "Fell"), bike_id=larch.id)
    assert listed.found("lar", archived=False) == ()


def test_after_a_backup_was_restored_the_list_shows_what_it_holds(desk):
    listed = GarageList(desk)
    a_bike(desk)
    backup = desk.backups.make("by hand")
    a_bike(desk, name="Tarn")
    assert len(listed.rows(archived=False)) == 2
    desk.restore_backup(backup.name)
    check_fresh(desk, listed)
    assert len(listed.rows(archived=False)) == 1
