"""The sheet of templates without a window."""

from __future__ import annotations

from tests.fixtures import a_bike, everything
from tests.viewmodels.sheets import shown
from workbench.actions.duplicate import duplicate_bike
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.new_bike import NewBikeViewModel
from workbench.viewmodels.templates import EMPTY, TemplatesViewModel


def kept(desk, name, **about):
    bike = a_bike(desk, name=f"Bike of {name}", **about)
    return desk.do("Keep", duplicate_bike(bike.id, name, with_riders=False, as_template=True))


def test_without_any_it_says_how_one_is_kept(desk):
    view_model, _ = shown(TemplatesViewModel, desk)
    assert (view_model.state.rows, view_model.state.empty) == ((), EMPTY)


def test_templates_stand_by_name_with_their_parts_and_the_first_one_picked(desk):
    second = kept(desk, "Shop 150")
    first = kept(desk, "Hire 120", layout="hardtail", fork_travel_mm=120.0)
    view_model, _ = shown(TemplatesViewModel, desk)
    rows = view_model.state.rows
    assert [row.bike_id for row in rows] == [first.id, second.id]
    assert [row.parts for row in rows] == [
        "Hardtail: air fork; fork 120\u2009mm",
        "Full suspension: air fork, air shock; fork 150\u2009mm, shock 60\u2009mm",
    ]
    assert (view_model.state.picked, rows[0].since) == (first.id, "14 May 2031")


def test_one_is_kept_from_a_bikes_sheet_while_the_list_lies_open(desk):
    bike = a_bike(desk)
    view_model, _ = shown(TemplatesViewModel, desk, bike.id)
    garage, _ = shown(GarageViewModel, desk, bike.id)
    garage.duplicate(as_template=True)
    assert [row.name for row in view_model.state.rows] == ["Larch 150 (template)"]


def test_another_name_is_one_deed_and_an_empty_one_is_refused(desk):
    kept(desk, "Shop 150")
    view_model, heard = shown(TemplatesViewModel, desk)
    assert view_model.rename("Hire 150")
    assert (view_model.state.name, heard.labels) == ("Hire 150", ["Template Shop 150: name"])
    assert not view_model.rename("")
    assert heard.field == "name"
    assert view_model.rename("Hire 150")
    desk.undo()
    assert view_model.state.name == "Shop 150"


def test_the_one_picked_is_deleted_and_undo_brings_it_back(desk):
    kept(desk, "Hire 120")
    second = kept(desk, "Shop 150")
    view_model, _ = shown(TemplatesViewModel, desk)
    before = everything(desk)
    view_model.pick(second.id)
    view_model.delete()
    assert [row.name for row in view_model.state.rows] == ["Hire 120"]
    assert view_model.state.name == "Hire 120"
    desk.undo()
    assert everything(desk) == before


def test_a_bike_is_started_from_the_one_picked_and_what_was_typed_before_stays(desk):
    template = kept(desk, "Shop 150")
    new, _ = shown(NewBikeViewModel, desk)
    new.set_field("rider", "J. Okoye")
    view_model, _ = shown(TemplatesViewModel, desk)
    view_model.begin()
    assert (new.state.draft.template, new.state.draft.rider) == (template.id, "J. Okoye")
