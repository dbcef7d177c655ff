from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from tests.library.garden import Bike, Part, Reading, Ride
from tests.library.help import opened
from workbench.actions.desk import Desk, Touched
from workbench.library.dump import check
from workbench.model.errors import LibraryUnreachable

resource = pytest.importorskip("resource", reason="this system has no limits on files")


@pytest.fixture
def library(tmp_path):
    with opened(tmp_path / "a") as library:
        yield library


@pytest.fixture
def desk(library):
    desk = Desk(library)
    bikes = (Bike("b", "Tarn"), Bike("c", "Fell"), Part("p", "b", "rear"), Reading("r", "p", 14.5))
    desk.do("Add bikes", lambda gate: gate.put(*bikes))
    return desk


@pytest.fixture
def heard(desk):
    heard: list[Touched] = []
    desk.listen(heard.append)
    return heard


def test_listeners_hear_which_tables_and_bikes_were_touched(desk, heard):
    desk.do("Read", lambda gate: gate.put(Reading("s", "p", 15.0)))
    assert heard == [Touched(frozenset({"reading"}), frozenset({"b"}))]


def test_undo_and_redo_are_heard_like_the_deed(desk, heard):
    desk.do("Read", lambda gate: gate.put(Reading("s", "p", 15.0)))
    desk.undo()
    desk.redo()
    assert heard == [heard[0]] * 3


def test_a_row_that_moves_touches_the_old_and_the_new_bike(desk, heard):
    desk.do("Move", lambda gate: gate.put(Part("p", "c", "rear")))
    assert heard[-1].bikes == {"b", "c"}


def test_deleted_rows_still_lead_to_their_bike(desk, heard):
    desk.do("Delete", lambda gate: gate.delete(Bike, "b"))
    assert heard[-1] == Touched(frozenset({"bike", "part", "reading"}), frozenset({"b"}))


def test_a_deed_named_for_a_bike_and_a_draft_of_a_bike_touch_it(desk, heard):
    draft = desk.keep_draft("sag", "{}", bike_id="c")
    assert heard == [Touched(bikes=frozenset({"c"}), drafts=True)]
    assert desk.keep_draft("sag", "{}", bike_id="c") == draft
    assert len(heard) == 1
    desk.do("Keep", lambda gate: gate.remove_draft(draft.id), bike_id="b")
    assert heard[-1] == Touched(frozenset(), frozenset({"b", "c"}), True)
    desk.undo()
    assert heard[-1] == Touched(frozenset(), frozenset({"b", "c"}), True)


def test_nothing_is_heard_of_a_deed_that_failed_or_changed_nothing(desk, heard):
    def give_up(gate) -> None:
        gate.put(Bike("b", "else"))
        raise KeyError("no")

    with pytest.raises(KeyError):
        desk.do("Give up", give_up)
    desk.do("Same", lambda gate: gate.put(Bike("b", "Tarn")))
    desk.set_setting("theme", "dark")
    desk.set_setting("theme", "dark")
    assert heard == [Touched(tables=frozenset({"setting"}))]


def test_a_listener_may_ask_and_do(desk):
    names = []

    def rename_once(touched: Touched) -> None:
        names.append(desk.ask(lambda reader: reader.need(Bike, "b")).name)
        if names[-1] == "one":
            desk.do("two", lambda gate: gate.put(Bike("b", "two")))

    desk.listen(rename_once)
    desk.do("one", lambda gate: gate.put(Bike("b", "one")))
    assert names == ["one", "two"]


def test_a_deed_inside_a_deed_is_a_programmers_mistake_and_nothing_is_kept(desk):
    def outer(gate) -> None:
        gate.put(Bike("b", "outer"))
        desk.do("inner", lambda inner: inner.put(Bike("c", "inner")))

    with pytest.raises(RuntimeError):
        desk.do("outer", outer)
    assert desk.ask(lambda reader: [bike.name for bike in reader.find(Bike)]) == ["Tarn", "Fell"]
    with pytest.raises(RuntimeError):
        desk.do("ask", lambda gate: desk.ask(lambda reader: reader.find(Bike)))


def test_settings_remembered_together_are_kept_and_told_to_nobody(desk):
    heard = []
    desk.listen(heard.append)
    desk.set_setting("a", "1")
    heard.clear()
    desk.remember({"a": None, "b": "2", "c": "3"})
    assert [desk.setting(key, "-") for key in "abc"] == ["-", "2", "3"]
    assert heard == []


def test_settings_outlive_the_program_and_are_no_steps(desk, library):
    assert desk.setting("theme", "light") == "light"
    desk.set_setting("theme", "dark")
    desk.person_id = "iva"
    assert desk.undo_label() == "Add bikes"
    library.close()
    with opened(library.path) as again:
        other = Desk(again)
        assert (other.setting("theme", "light"), other.person_id) == ("dark", "iva")
        other.set_setting("theme", None)
        assert other.setting("theme", "light") == "light"


@contextmanager
def no_file_grows_beyond(size: int) -> Iterator[None]:
    """Every write past this size fails, as on a failing disk."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def grow(desk: Desk, number: int) -> None:
    desk.do("Grow", lambda gate: gate.put(*(Ride(f"{number}-{n}", "b", rider="x" * 5_000) for n in range(20))))


def grow_without_end(desk: Desk) -> None:
    for number in range(200):
        grow(desk, number)


def test_a_failing_disk_keeps_nothing_half_and_the_desk_goes_on(desk, library):
    with no_file_grows_beyond(1_500_000), pytest.raises(LibraryUnreachable, match=r"could not be read or written"):
        grow_without_end(desk)
    kept = desk.ask(lambda reader: reader.count(Ride)) // 20
    assert desk.ask(lambda reader: reader.count(Ride)) == kept * 20
    assert kept > 2
    assert check(library) == []
    grow(desk, kept)
    assert desk.undo().label == "Grow"
    assert desk.ask(lambda reader: reader.count(Ride)) == kept * 20
    library.close()
    with opened(library.path) as again:
        assert check(again) == []
        assert Desk(again).ask(lambda reader: reader.count(Ride)) == kept * 20


def test_a_full_disk_keeps_nothing_half_and_the_desk_goes_on(desk, library):
    pages = library.raw.execute("PRAGMA page_count").fetchone()[0]
    library.raw.execute(f"PRAGMA max_page_count = {pages + 200}").fetchall()
    with pytest.raises(LibraryUnreachable, match="is full"):
        grow_without_end(desk)
    kept = desk.ask(lambda reader: reader.count(Ride)) // 20
    with pytest.raises(LibraryUnreachable, match="is full"):
        desk.keep_draft("sag", "x" * 1_900_000, bike_id="b")
    library.raw.execute("PRAGMA max_page_count = 1000000").fetchall()
    assert desk.drafts() == ()
    assert desk.ask(lambda reader: reader.count(Ride)) == kept * 20
    assert check(library) == []
    grow(desk, kept)
    assert check(library) == []
