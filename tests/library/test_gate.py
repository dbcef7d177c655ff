from __future__ import annotations

import math

import pytest

from tests.library.garden import Bike, Part, Reading, Ride
from tests.library.help import opened
from workbench.actions.desk import Desk
from workbench.library.dump import check
from workbench.model.errors import InputError, LibraryDamaged, LibraryError


@pytest.fixture
def library(tmp_path):
    with opened(tmp_path / "a") as library:
        yield library


@pytest.fixture
def desk(library):
    desk = Desk(library)
    records = (
        Bike("b", "Tarn", mass_kg=14.0),
        Part("f", "b", "front", 3),
        Part("r", "b", "rear", 5),
        Reading("x", "r", 14.5, "first"),
        Reading("y", "r", 15.5),
    )
    desk.do("Add bike", lambda gate: gate.put(*records))
    return desk


def put(desk: Desk, *records) -> None:
    desk.do("Put", lambda gate: gate.put(*records))


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf, 10**400])
def test_a_number_that_is_not_finite_is_refused_and_nothing_is_kept(desk, number):
    with pytest.raises(InputError, match="sag_mm"):
        put(desk, Bike("c", "also lost"), Reading("z", "r", number))
    assert desk.ask(lambda reader: (reader.count(Bike), reader.count(Reading))) == (1, 2)


def test_long_names_are_kept_and_endless_ones_refused(desk):
    put(desk, Bike("c", "n" * 20_000))
    with pytest.raises(InputError, match="20001"):
        put(desk, Bike("d", "n" * 20_001))


@pytest.mark.parametrize("name", ["a\x00b", "\ud800"])
def test_text_no_file_can_hold_is_refused(desk, name):
    with pytest.raises(InputError):
        put(desk, Bike("c", name))


@pytest.mark.parametrize(
    "name", ["", "💥", "\u202eabc", "<img src=x>", "'; DROP TABLE bike; --", "%s %(x)s :name ?", "a\r\nb"]
)
def test_any_other_text_comes_back_as_typed(desk, name):
    put(desk, Bike("c", name))
    assert desk.ask(lambda reader: reader.need(Bike, "c")).name == name
    assert [bike.id for bike in desk.ask(lambda reader: reader.find(Bike, name=name))] == ["c"]


@pytest.mark.parametrize(
    "record",
    [
        Bike("c", 7),
        Bike("c", None),
        Bike("c", "n", archived=1),
        Bike("c", "n", mass_kg="12"),
        Bike("c", "n", mass_kg=True),
        Part("c", "b", "post", True),
        Part("c", "b", "post", 1.0),
        Part("c", "b", "post", 1, "photo"),
    ],
)
def test_wrong_types_are_a_programmers_mistake(desk, record):
    with pytest.raises(TypeError):
        put(desk, record)


def test_a_word_outside_the_list_and_a_huge_count_are_refused(desk):
    with pytest.raises(InputError, match="front"):
        put(desk, Part("c", "b", "left"))
    with pytest.raises(InputError):
        put(desk, Part("c", "b", "post", 2**63))


@pytest.mark.parametrize("mass", [5e-324, 1.7976931348623157e308, 0.1 + 0.2, 2**53 + 1.0, 0])
def test_numbers_come_back_to_the_last_bit(desk, mass):
    put(desk, Bike("c", "n", mass_kg=mass))
    assert desk.ask(lambda reader: reader.need(Bike, "c")).mass_kg == mass
    desk.undo()
    desk.redo()
    assert desk.ask(lambda reader: reader.need(Bike, "c")).mass_kg == mass


def test_find_takes_equal_values_lists_nothing_order_and_limit(desk):
    put(desk, Bike("c", "Fell"), Bike("a", "Fell"))
    ask = desk.ask
    assert [b.id for b in ask(lambda r: r.find(Bike))] == ["a", "b", "c"]
    assert [b.id for b in ask(lambda r: r.find(Bike, mass_kg=None))] == ["a", "c"]
    assert [b.id for b in ask(lambda r: r.find(Bike, name="Fell", order_by="-id"))] == ["c", "a"]
    assert [b.id for b in ask(lambda r: r.find(Bike, order_by=("-name", "id"), limit=2))] == ["b", "a"]
    assert [b.id for b in ask(lambda r: r.find(Bike, id=("a", "b", "nix")))] == ["a", "b"]
    assert ask(lambda r: r.find(Bike, id=())) == ()
    assert [b.id for b in ask(lambda r: r.find(Bike, id=("b",)))] == ["b"]
    assert ask(lambda r: r.find(Bike, mass_kg=(None,))) == ()  # none is asked for by None itself
    assert ask(lambda r: r.count(Bike, name=["Fell", "Tarn"])) == 3
    with pytest.raises(TypeError, match="nix"):
        ask(lambda r: r.find(Bike, nix=1))


def test_a_missing_record_is_none_or_a_sentence(desk):
    assert desk.ask(lambda reader: reader.get(Bike, "nix")) is None
    with pytest.raises(LibraryError, match="no longer in the library"):
        desk.ask(lambda reader: reader.need(Bike, "nix"))


def test_a_deed_reads_what_it_has_written(desk):
    def deed(gate):
        gate.put(Bike("c", "n"))
        return gate.need(Bike, "c"), gate.count(Bike)

    assert desk.do("Add bike", deed) == (Bike("c", "n"), 2)


def test_an_owner_takes_its_rows_along(desk):
    desk.do("Delete bike", lambda gate: gate.delete(Bike, "b"))
    assert desk.ask(lambda reader: [reader.count(kind) for kind in (Bike, Part, Reading)]) == [0, 0, 0]


def test_a_row_in_use_is_not_deleted_and_the_users_are_named(desk, library):
    put(desk, Ride("1", "b", "r"), Ride("2", "b", "r"))
    with pytest.raises(LibraryError, match=r"This part is still used by: ride \(2\)\."):
        desk.do("Delete part", lambda gate: gate.delete(Part, "r"))
    with pytest.raises(LibraryError, match="still used by"):
        desk.do("Delete bike", lambda gate: gate.delete(Bike, "b"))
    assert desk.ask(lambda reader: reader.count(Reading)) == 2
    assert check(library) == []


def test_a_cycle_within_what_is_deleted_does_not_hold_it(desk):
    put(desk, Bike("b", "Tarn", main_part_id="r", twin_id="b"))
    desk.do("Delete bike", lambda gate: gate.delete(Bike, "b"))
    assert desk.ask(lambda reader: reader.count(Part)) == 0


def test_deleting_what_is_not_there_is_said(desk):
    with pytest.raises(LibraryError, match="nothing to delete"):
        desk.do("Delete bike", lambda gate: gate.delete(Bike, "nix"))


def test_two_records_with_one_id_in_one_put_are_a_programmers_mistake(desk):
    with pytest.raises(ValueError, match="one id"):
        put(desk, Bike("c", "n"), Bike("c", "m"))


def test_a_taken_place_is_refused_with_a_sentence(desk):
    with pytest.raises(LibraryError, match="nothing was changed"):
        put(desk, Part("z", "b", "front"))


def test_many_records_go_in_one_deed_and_come_back_out_with_undo(desk):
    bikes = [Bike(f"n{number:05}", "many") for number in range(3_000)]
    put(desk, *bikes)
    assert desk.ask(lambda reader: reader.count(Bike)) == 3_001
    desk.undo()
    assert desk.ask(lambda reader: reader.count(Bike)) == 1
    desk.redo()
    assert desk.ask(lambda reader: reader.find(Bike, name="many")) == tuple(bikes)


def test_a_stored_row_that_makes_no_record_is_damage_not_a_traceback(desk, library):
    library.raw.execute("UPDATE part SET position = -4 WHERE id = 'r'")
    with pytest.raises(LibraryDamaged, match="part"):
        desk.ask(lambda reader: reader.need(Part, "r"))
    assert any("makes no record" in problem for problem in check(library))


def test_a_gate_is_dead_after_its_deed(desk):
    from sqlalchemy.exc import InvalidRequestError

    kept = desk.do("Add bike", lambda gate: (gate.put(Bike("c", "n")), gate)[1])
    with pytest.raises(InvalidRequestError):
        kept.put(Bike("d", "n"))
