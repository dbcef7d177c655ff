"""The sheet of people in a garage of few and of many."""

from __future__ import annotations

from tests.fixtures import a_bike
from tests.viewmodels.sheets import shown
from workbench.actions.people import add_person
from workbench.viewmodels.people import MOST, PeopleViewModel


def add_many(desk, count):
    """People of numbered names, in one deed."""
    desk.do("Add", lambda gate: [add_person(f"Rider {number:03}")(gate) for number in range(count)])


def test_a_garage_of_few_is_listed_whole_with_nothing_to_find(desk):
    a_bike(desk)
    add_many(desk, MOST - 1)
    state = shown(PeopleViewModel, desk)[0].state
    assert (len(state.rows), state.can_find, state.said) == (MOST, False, "")
    assert (state.rows[0].name, state.rows[0].bikes, state.rows[0].mass) == ("M. Anders", "Larch 150", "84.5\u2009kg")


def test_in_a_garage_of_many_anybody_is_found_by_part_of_the_name(desk):
    add_many(desk, MOST + 20)
    sheet, _ = shown(PeopleViewModel, desk)
    assert [one.name for one in sheet.state.rows] == [f"Rider {number:03}" for number in range(MOST)]
    assert sheet.state.said == f"The first {MOST} of {MOST + 20} people. Type part of a name to find the others."
    sheet.find("RIDER")
    assert sheet.state.said.endswith("Type more of the name to find the others.")
    sheet.find(" 031  RIDER ")
    assert [one.name for one in sheet.state.rows] == ["Rider 031"]
    assert (sheet.state.can_find, sheet.state.said) == (True, "")
    sheet.find("nobody")
    assert (sheet.state.rows, sheet.state.said) == ((), "Nobody is called “nobody”.")


def test_whoever_is_picked_stays_open_whatever_is_looked_for(desk):
    bike = a_bike(desk)
    sheet, heard = shown(PeopleViewModel, desk)
    sheet.pick(sheet.state.rows[0].person_id)
    add_many(desk, MOST)
    sheet.find("rider")
    assert "M. Anders" not in [one.name for one in sheet.state.rows]
    assert (sheet.state.name, sheet.state.bikes) == ("M. Anders", ((bike.id, bike.name),))
    sheet.set_fact("mass_kg", 90.0)
    sheet.put_away()
    assert sheet.state.is_away
    sheet.put_away()
    assert not sheet.state.is_away
    assert heard.labels == ["Put away M. Anders", "Bring back M. Anders"]
    assert next(row.value for row in sheet.state.facts if row.name == "mass_kg") == 90.0


def test_somebody_new_is_open_at_once_though_the_list_ends_before_them(desk):
    add_many(desk, MOST)
    sheet, _ = shown(PeopleViewModel, desk)
    assert sheet.add("Zoe Lind")
    assert sheet.state.name == "Zoe Lind"
    assert sheet.state.facts[0].value == "Zoe Lind"
