"""The journal as a list: found by bike, person and words, page by page, and undone back to a place as a whole."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, everything
from workbench.actions.desk import Search
from workbench.actions.edit import edit
from workbench.actions.people import add_person
from workbench.library.dump import check
from workbench.model.bike import Bike
from workbench.model.errors import UndoRefused


def labels(desk, **search):
    return [one.label for one in desk.history.page(Search(**search))]


def test_the_newest_deed_comes_first(desk):
    for name in ("Ada", "Bo", "Cy"):
        desk.do(f"Add {name}", add_person(name))
    assert labels(desk) == ["Add Cy", "Add Bo", "Add Ada"]


def test_deeds_are_found_by_bike_by_person_and_by_words_in_any_order(desk):
    first, second = a_bike(desk, name="Larch"), a_bike(desk, name="Fell", rider="Bo")
    ada = desk.do("Add Ada", add_person("Ada", works_here=True))
    desk.person_id = ada.id
    desk.do("Set tags of Larch", edit(Bike, first.id, "tags", "shop"), bike_id=first.id, station="garage")
    desk.do("Set note of Fell", edit(Bike, second.id, "note", "x"), bike_id=second.id, station="garage")
    assert labels(desk, bike_id=first.id) == ["Set tags of Larch"]
    assert labels(desk, person_id=ada.id) == ["Set note of Fell", "Set tags of Larch"]
    assert labels(desk, text="LARCH set") == ["Set tags of Larch"]
    assert labels(desk, text="larch fell") == []
    assert desk.history.who_and_what() == ((ada.id,), tuple(sorted((first.id, second.id))))


NAMED = ("Add Élan", "Add elan", "Add STRASSE", "Add Straße", "Add Ørsted", "Add Жук", "Add 100 % Å_b", "Add plain")
LOOKED_FOR = ("ÉLAN", "élan", "elan", "strasse", "STRAẞE", "ørsted", "ØRS add", "жУк", "å_B", "%", "_", "add", "PLAIN")


@pytest.mark.parametrize("text", LOOKED_FOR)
def test_capitals_and_small_letters_are_alike_in_every_script(desk, text):
    for label in NAMED:
        desk.do(label, add_person("Ada"))
    expected = [one for one in reversed(NAMED) if all(word in one.casefold() for word in text.casefold().split())]
    assert labels(desk, text=text) == expected
    assert expected


@pytest.mark.parametrize("text", ["100%", "a_b", "back\\slash", "'; DROP TABLE deed; --"])
def test_what_is_looked_for_is_taken_as_it_stands(desk, text):
    desk.do("Add 1000 things", add_person("Ada"))
    desk.do(f"Rename to {text}", add_person("Bo"))
    assert labels(desk, text=text) == [f"Rename to {text}"]


def test_pages_go_on_where_the_last_one_ended_and_miss_nothing(desk):
    for number in range(12):
        desk.do(f"Add {number}", add_person(f"P{number}"))
    found, below = [], None
    while page := desk.history.page(Search(), below=below, most=5):
        found += [one.label for one in page]
        below = page[-1].number
    assert found == [f"Add {number}" for number in range(11, -1, -1)]


def test_undone_deeds_stay_in_the_list_and_are_told_apart(desk):
    desk.do("Add Ada", add_person("Ada"))
    desk.do("Add Bo", add_person("Bo"))
    desk.undo()
    assert [(one.label, one.is_done) for one in desk.history.page(Search())] == [("Add Bo", False), ("Add Ada", True)]


def test_a_deed_tells_what_it_changed(desk):
    bike = a_bike(desk)
    desk.do("Tag", edit(Bike, bike.id, "tags", "shop"), bike_id=bike.id)
    (change,) = desk.history.changes(desk.history.page(Search())[0].id)
    assert (change.table, change.row_id) == ("bike", bike.id)
    assert (change.before["tags"], change.after["tags"]) == ("", "shop")


def test_everything_after_a_deed_is_undone_at_once_and_can_be_redone(desk):
    desk.do("Add Ada", add_person("Ada"))
    before = everything(desk)
    for name in ("Bo", "Cy", "Di"):
        desk.do(f"Add {name}", add_person(name))
    after = everything(desk)
    here = desk.history.page(Search())[-1]
    assert desk.history.later_than(here.number) == 3
    assert [step.label for step in desk.undo_after(here.number)] == ["Add Di", "Add Cy", "Add Bo"]
    assert everything(desk) == before
    for _ in range(3):
        desk.redo()
    assert everything(desk) == after
    assert check(desk._library) == []


def test_if_one_of_the_steps_refuses_none_is_undone(desk, monkeypatch):
    bike = a_bike(desk)
    here = desk.history.page(Search())[0].number
    desk.do("Tag", edit(Bike, bike.id, "tags", "shop"))
    desk.do("Note", add_person("Bo"))
    with desk._library.raw:
        desk._library.raw.execute("UPDATE bike SET tags = 'written past the gate'")
    before = everything(desk)
    with pytest.raises(UndoRefused, match="has changed since"):
        desk.undo_after(here)
    assert everything(desk) == before
    assert all(one.is_done for one in desk.history.page(Search()))


def test_steps_from_before_an_update_are_not_undone(desk):
    desk.do("Add Ada", add_person("Ada"))
    desk.do("Add Bo", add_person("Bo"))
    with desk._library.raw:
        desk._library.raw.execute("UPDATE deed SET schema_number = '0000' WHERE label = 'Add Ada'")
    before = everything(desk)
    with pytest.raises(UndoRefused, match="from before an update"):
        desk.undo_after(0)
    assert everything(desk) == before
    assert [one.is_of_this_schema for one in desk.history.page(Search())] == [True, False]
