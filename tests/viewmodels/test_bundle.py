from __future__ import annotations

import json

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session, everything, make_desk
from workbench.actions.edit import edit
from workbench.model.bike import Bike, Photo
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.bundle import MOST_SHOWN, BundleViewModel


class Sheet:
    """The sheet over one of two libraries."""

    def __init__(self, desk, folder):
        self.desk, self.folder = desk, folder
        self.bench = Bench(desk)
        self.model = BundleViewModel(desk, self.bench)
        self.problems, self.kept = [], []
        self.model.refused.connect(lambda problem: self.problems.append(problem.text))
        self.model.kept.connect(self.kept.append)
        self.model.show()

    @property
    def state(self):
        return self.model.state

    def write(self, bike=None):
        if bike is not None:
            self.bench.put_bike(bike.id)
        target = self.folder / self.model.file_name(whole=bike is None)
        assert self.model.take_along(target, whole=bike is None), self.problems
        return target


@pytest.fixture
def here(tmp_path):
    with make_desk(tmp_path / "here") as desk:
        yield Sheet(desk, tmp_path / "here")


@pytest.fixture
def there(tmp_path):
    with make_desk(tmp_path / "there") as desk:
        yield Sheet(desk, tmp_path / "there")


def ridden(sheet):
    bike = a_counted_bike(sheet.desk)
    a_baseline(sheet.desk, bike)
    session = a_session(sheet.desk, bike)
    a_run(sheet.desk, session, liking=6)
    return bike


def test_what_would_come_in_is_shown_before_anything_is_taken(there, here):
    target = there.write(ridden(there))
    assert target.name == "larch-150.bundle.json"
    assert here.model.open_file(target)
    assert here.state.file_text.startswith("larch-150.bundle.json: Larch 150, taken along 14 May 2031")
    (group,) = here.state.groups
    assert group[0] == "New"
    assert group[1].startswith("1 bike, 1 person, 1 session, 1 run, 1 setup, ")
    assert here.state.verb.startswith("Bring in ")
    assert not any(everything(here.desk).values())


def test_it_comes_in_as_one_step_after_a_backup_and_once_only(there, here):
    bike = ridden(there)
    target = there.write(bike)
    here.model.open_file(target)
    assert here.model.bring_in()
    assert everything(here.desk)[Bike] == (bike,)
    assert here.kept == ["Bring in Larch 150"]
    assert here.desk.undo_label() == "Bring in Larch 150"
    assert here.state.said.startswith("Brought in ")
    assert here.state.file_text == ""
    assert [one.kind for one in here.desk.backups.all()] == ["before bringing in"]
    here.model.open_file(target)
    assert here.state.said == "Nothing new: everything in this file is here already."
    assert here.state.verb == ""
    assert not here.model.bring_in()
    here.desk.undo()
    assert not any(everything(here.desk).values())


def test_taking_nothing_leaves_everything_as_it_was(there, here):
    here.model.open_file(there.write(ridden(there)))
    here.model.close_file()
    assert here.state.said == "Nothing was taken."
    assert here.state.groups == ()
    assert not any(everything(here.desk).values())


def both_changed(there, here):
    bike = a_bike(there.desk)
    here.model.open_file(there.write(bike))
    here.model.bring_in()
    for sheet, word in ((here, "here"), (there, "there")):
        sheet.desk.do("Tag", edit(Bike, bike.id, "tags", word), bike_id=bike.id)
    here.model.open_file(there.write(bike))
    return bike


def test_a_record_changed_on_both_sides_is_shown_with_both_versions_and_waits(there, here):
    bike = both_changed(there, here)
    (row,) = here.state.choices
    assert (row.kind, row.text, row.chosen) == (
        "changed on both sides",
        "Bike “Larch 150”: tags “here” → “there”",
        "",
    )
    assert here.state.left_to_say == "1 record left to choose."
    assert not here.model.bring_in()
    assert "which version stays" in here.problems[-1]
    here.model.choose("bike", bike.id, "file")
    assert here.state.verb == "Bring in 1 record"
    assert here.model.bring_in()
    assert everything(here.desk)[Bike][0].tags == "there"


def test_one_word_settles_all_of_them(there, here):
    both_changed(there, here)
    here.model.choose_all("here")
    assert here.state.choices[0].chosen == "here"
    assert here.state.verb == ""
    here.model.choose_all("file")
    assert here.state.verb == "Bring in 1 record"


def test_the_newer_version_is_proposed_and_can_be_declined(there, here):
    bike = a_bike(there.desk)
    here.model.open_file(there.write(bike))
    here.model.bring_in()
    there.desk.do("Tag", edit(Bike, bike.id, "tags", "there"), bike_id=bike.id)
    here.model.open_file(there.write(bike))
    assert [(row.kind, row.chosen) for row in here.state.choices] == [("changed there", "file")]
    assert dict(here.state.groups)["Changed in the file"] == "1 bike"
    here.model.choose("bike", bike.id, "here")
    assert here.state.verb == ""


def test_what_happens_here_meanwhile_is_seen_in_the_differences(there, here):
    bike = a_bike(there.desk)
    here.model.open_file(there.write(bike))
    here.model.bring_in()
    here.model.open_file(there.write(bike))
    here.desk.do("Tag", edit(Bike, bike.id, "tags", "meanwhile"), bike_id=bike.id)
    assert dict(here.state.groups)["Changed here"] == "1 bike"


def test_many_differences_are_not_all_listed_but_all_settled(there, here):
    for number in range(MOST_SHOWN + 3):
        a_bike(there.desk, name=f"Bike {number}", rider="")
    here.model.open_file(there.write())
    here.model.bring_in()
    for bike in everything(there.desk)[Bike]:
        for sheet, word in ((here, "here"), (there, "there")):
            sheet.desk.do("Tag", edit(Bike, bike.id, "tags", word))
    here.model.open_file(there.write())
    assert len(here.state.choices) == MOST_SHOWN
    assert here.state.more == "and 3 more of these"
    here.model.choose_all("file")
    assert here.model.bring_in()
    assert {bike.tags for bike in everything(here.desk)[Bike]} == {"there"}


def test_photos_travel_with_their_bike(there, here):
    bike = a_bike(there.desk)
    name = there.desk.add_photo(b"a picture")
    for key, sha in (("p", name), ("q", "0" * 64)):
        photo = Photo(key, bike.id, sha, "side view")
        there.desk.do("Photo", lambda gate, photo=photo: gate.put(photo), bike_id=bike.id)
    target = there.write(bike)
    assert "1 photo could not be found and stayed behind." in there.state.said
    here.model.open_file(target)
    assert here.model.bring_in()
    assert here.desk.photo(name) == b"a picture"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b'{"format": "recipe"}', "no bundle of Trailbench"),
        (b"\xff\x01", "no text file"),
        (b"", "no JSON any more"),
    ],
)
def test_a_foreign_file_is_refused_with_its_name_and_nothing_is_open(here, content, said):
    path = here.folder / "thing.json"
    path.write_bytes(content)
    assert not here.model.open_file(path)
    assert here.problems[-1].startswith("thing.json ")
    assert said in here.problems[-1]
    assert here.state.file_text == ""


def test_a_file_of_a_later_version_is_refused(there, here):
    target = there.write(a_bike(there.desk))
    held = json.loads(target.read_text(encoding="utf-8"))
    target.write_text(json.dumps(held | {"version": 2}), encoding="utf-8")
    assert not here.model.open_file(target)
    assert "later Trailbench" in here.problems[-1]


def test_a_file_that_is_not_there_or_a_place_that_cannot_be_written_is_said(here):
    assert not here.model.open_file(here.folder / "gone.json")
    assert "cannot be read" in here.problems[-1]
    assert not here.model.take_along(here.folder / "no such folder" / "x.json", whole=True)
    assert "cannot be written" in here.problems[-1]


def test_without_room_for_a_backup_nothing_comes_in(there, here):
    here.model.open_file(there.write(ridden(there)))
    (here.folder / "backups").write_text("in the way")
    assert not here.model.bring_in()
    assert "could not be written" in here.problems[-1]
    assert here.state.verb
    assert not any(everything(here.desk).values())


@pytest.mark.parametrize(("name", "file"), [("../../etc", "etc"), ("a/b\\c", "a-b-c"), ("***", "bike")])
def test_a_name_makes_a_harmless_file_name(there, name, file):
    there.bench.put_bike(a_bike(there.desk, name=name).id)
    assert there.model.file_name(whole=False) == f"{file}.bundle.json"
