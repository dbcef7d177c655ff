from __future__ import annotations

import json

import pytest

from tests.library.garden import Bike, Part, Reading
from tests.library.help import open_garden, opened
from workbench.actions.desk import Desk
from workbench.library.dump import check, export_json
from workbench.model.errors import UndoRefused


@pytest.fixture
def library(tmp_path):
    with opened(tmp_path / "a") as library:
        yield library


@pytest.fixture
def desk(library):
    return Desk(library)


def name(desk: Desk, text: str) -> None:
    desk.do(f"Name {text}", lambda gate: gate.put(Bike("b", text)), bike_id="b", station="garage")


def version(library) -> int:
    return library.raw.execute("SELECT version FROM bike WHERE id = 'b'").fetchone()[0]


def test_nothing_to_undo_in_a_new_library(desk):
    assert (desk.undo(), desk.redo(), desk.undo_step(), desk.redo_label()) == (None, None, None, None)


def test_undo_and_redo_walk_the_deeds_by_label(desk):
    name(desk, "one")
    name(desk, "two")
    assert (desk.undo_label(), desk.redo_label()) == ("Name two", None)
    assert desk.undo().label == "Name two"
    assert (desk.undo_label(), desk.redo_label()) == ("Name one", "Name two")
    assert desk.redo().station == "garage"
    assert desk.ask(lambda reader: reader.need(Bike, "b")).name == "two"


def test_a_new_deed_ends_redo_but_the_undone_step_stays_in_the_journal(desk, library):
    name(desk, "one")
    name(desk, "two")
    desk.undo()
    name(desk, "three")
    assert desk.redo() is None
    states = [(step["label"], step["state"]) for step in json.loads(export_json(library))["journal"]]
    assert states == [("Name one", "done"), ("Name two", "dead"), ("Name three", "done")]
    assert check(library) == []


def test_a_deed_that_changes_nothing_is_no_step_and_keeps_redo(desk):
    name(desk, "one")
    name(desk, "two")
    desk.undo()
    name(desk, "one")
    assert (desk.undo_label(), desk.redo_label()) == ("Name one", "Name two")


def test_versions_only_rise(desk, library):
    name(desk, "one")
    seen = [version(library)]
    for move in (lambda: name(desk, "two"), desk.undo, desk.redo, desk.undo, lambda: name(desk, "three")):
        move()
        seen.append(version(library))
    assert seen == sorted(set(seen))
    last = seen[-1]
    desk.do("Delete", lambda gate: gate.delete(Bike, "b"))
    desk.undo()
    assert version(library) > last
    images = library.raw.execute("SELECT before, after FROM deed_row").fetchall()
    assert not any("version" in (text or "") for row in images for text in row)


def test_a_row_touched_twice_keeps_its_first_before_and_last_after_image(desk, library):
    name(desk, "one")

    def deed(gate):
        gate.put(Bike("b", "two"))
        gate.put(Bike("b", "three"))

    desk.do("Twice", deed)
    rows = json.loads(export_json(library))["journal"][1]["rows"]
    assert [(row["before"]["name"], row["after"]["name"]) for row in rows] == [("one", "three")]
    desk.undo()
    assert desk.ask(lambda reader: reader.need(Bike, "b")).name == "one"


def test_undo_and_redo_survive_a_restart_and_say_so(tmp_path):
    for text in ("one", "two"):
        with opened(tmp_path / "b") as library:
            name(Desk(library), text)
            assert Desk(library).undo_step().from_earlier_start is False
    with opened(tmp_path / "b") as library:
        step = Desk(library).undo_step()
        assert (step.label, step.bike_id, step.at, step.from_earlier_start) == (
            "Name two",
            "b",
            "2031-05-14T09:00:00+00:00",
            True,
        )
        Desk(library).undo()
    with opened(tmp_path / "b") as library:
        desk = Desk(library)
        assert (desk.undo_label(), desk.redo_label()) == ("Name one", "Name two")
        desk.redo()
        assert desk.ask(lambda reader: reader.need(Bike, "b")).name == "two"
        assert check(library) == []


@pytest.mark.parametrize("tampering", ["UPDATE bike SET name = 'else'", "DELETE FROM bike"])
def test_a_row_that_is_not_as_the_step_left_it_refuses_undo_and_nothing_changes(desk, library, tampering):
    name(desk, "one")
    name(desk, "two")
    library.raw.execute(tampering)
    before = export_json(library)
    with pytest.raises(UndoRefused, match=r"“Name two”.*a bike it touched"):
        desk.undo()
    assert export_json(library) == before
    assert check(library)


def test_a_row_that_came_in_meanwhile_refuses_redo(desk, library):
    name(desk, "one")
    desk.undo()
    library.raw.execute("INSERT INTO bike (id, name, archived, version) VALUES ('b', 'else', 0, 9)")
    with pytest.raises(UndoRefused):
        desk.redo()


def test_the_menu_reaches_back_a_hundred_steps_and_the_journal_further(desk, library):
    for number in range(103):
        name(desk, f"{number}")
    for _ in range(100):
        assert desk.undo() is not None
    assert desk.undo() is None
    assert desk.ask(lambda reader: reader.need(Bike, "b")).name == "2"
    assert len(json.loads(export_json(library))["journal"]) == 103
    for _ in range(100):
        assert desk.redo() is not None
    assert desk.redo() is None
    assert desk.ask(lambda reader: reader.need(Bike, "b")).name == "102"


def test_who_when_and_where_are_in_the_journal(desk, library):
    desk.person_id = "iva"
    name(desk, "one")
    desk.person_id = None
    name(desk, "two")
    steps = json.loads(export_json(library))["journal"]
    assert [(step["person_id"], step["at"], step["bike_id"], step["station"]) for step in steps] == [
        ("iva", "2031-05-14T09:00:00+00:00", "b", "garage"),
        (None, "2031-05-14T09:00:00+00:00", "b", "garage"),
    ]


def test_an_export_is_the_same_text_for_the_same_content(tmp_path, desk, library):
    desk.do("Add", lambda gate: gate.put(Bike("b", "Ä"), Part("p", "b", "rear", 1, b"\x00\x01")))
    desk.keep_draft("sag", "{}", bike_id="b")
    desk.set_setting("theme", "dark")
    first = export_json(library)
    library.close()
    with opened(library.path) as again:
        assert export_json(again) == first
    content = json.loads(first)
    assert list(content["records"]) == ["bike", "part", "reading", "ride"]
    assert content["records"]["part"][0]["photo"] == "AAE="
    assert content["settings"] == {"theme": "dark"}
    assert content["drafts"][0]["body"] == "{}"


@pytest.mark.parametrize(
    ("tampering", "found"),
    [
        ("DELETE FROM deed_row", "was made by no step"),
        ("DELETE FROM reading", "is missing, though no step deleted it"),
        ("UPDATE reading SET sag_mm = 1", "is not as its last step left it"),
        ("DELETE FROM bike", "refers to a row of bike that does not exist"),
        ("UPDATE deed_row SET before = '{}'", "does not follow on the one before it"),
        ("DROP INDEX ix_bike_twin_id; DROP TABLE ride", "table ride is missing"),
        ("ALTER TABLE bike ADD COLUMN more TEXT", "table bike has other columns"),
        ("UPDATE draft SET body = '{'", "cannot be read"),
        ("UPDATE draft SET closed_by = 'nobody'", "closed by a step that does not exist"),
    ],
)
def test_the_check_finds_tampering(tmp_path, tampering, found):
    library = open_garden(tmp_path / "c")
    desk = Desk(library)
    desk.do("Add", lambda gate: gate.put(Bike("b", "n"), Part("p", "b", "rear"), Reading("r", "p", 14.5)))
    desk.keep_draft("sag", "{}", bike_id="b")
    assert check(library) == []
    library.raw.execute("PRAGMA foreign_keys = OFF")
    for statement in tampering.split("; "):
        library.raw.execute(statement)
    assert any(found in problem for problem in check(library))
    library.close()
