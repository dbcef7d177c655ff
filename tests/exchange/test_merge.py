"""Which of two versions is older: told by the marks of earlier versions on both sides."""

from __future__ import annotations

from tests.exchange.test_bundle import LAYOUT, bike
from workbench.exchange.bundle import Bundle, FieldKind, TableKind, mark_of
from workbench.exchange.merge import Here, Kind, compare, taken, undecided

COUNTED = {
    "run": TableKind("run", (FieldKind("id", str, False), FieldKind("number", int, False)), number="number"),
}


def marks(*rows):
    return frozenset(mark_of(row, LAYOUT["bike"]) for row in rows)


def kind_of(theirs, ours=None, *, was_there=(), was_here=()):
    bundle = Bundle("0002", "", "", {"bike": (theirs,)}, {"bike": {"b": tuple(marks(*was_there))}})
    here = Here({"bike": {"b": ours} if ours else {}}, seen={"bike": {"b": marks(*was_here)}})
    (found,) = compare(bundle, here, LAYOUT)
    return found.kind


OLD, MINE, YOURS = bike(name="old"), bike(name="mine"), bike(name="yours")


def test_a_record_that_was_never_here_is_new_and_one_that_was_is_removed():
    assert kind_of(YOURS) == Kind.NEW
    assert kind_of(YOURS, was_here=[YOURS]) == Kind.REMOVED


def test_equal_records_are_the_same_whatever_their_past():
    assert kind_of(OLD, OLD, was_here=[MINE, OLD], was_there=[YOURS]) == Kind.SAME


def test_the_side_that_knows_the_other_version_as_an_earlier_one_is_the_newer():
    assert kind_of(OLD, MINE, was_here=[OLD, MINE]) == Kind.HERE
    assert kind_of(YOURS, OLD, was_here=[OLD], was_there=[OLD]) == Kind.THERE


def test_where_neither_or_both_know_the_other_somebody_has_to_say():
    assert kind_of(YOURS, MINE, was_here=[OLD, MINE], was_there=[OLD]) == Kind.BOTH
    assert kind_of(OLD, MINE, was_here=[OLD, MINE], was_there=[MINE]) == Kind.BOTH


def test_a_number_given_differently_here_is_no_difference():
    bundle = Bundle("0002", "", "", {"run": ({"id": "r", "number": 3},)})
    here = Here({"run": {"r": {"id": "r", "number": 5}}})
    (found,) = compare(bundle, here, COUNTED)
    assert (found.kind, found.theirs["number"]) == (Kind.SAME, 5)


def test_a_fellow_with_the_same_unique_fields_is_the_record_itself():
    bundle = Bundle("0002", "", "", {"bike": (YOURS,)})
    here = Here({}, {"bike": {"b": bike("other", "yours")}})
    (found,) = compare(bundle, here, LAYOUT)
    assert (found.kind, found.theirs["id"]) == (Kind.SAME, "other")


def test_hidden_characters_from_outside_are_dropped_unless_they_are_here_too():
    sly = bike(name="Lar\u202ech")
    assert kind_of(sly, sly) == Kind.SAME
    assert kind_of(sly, bike(name="Larch")) == Kind.SAME
    bundle = Bundle("0002", "", "", {"bike": (sly,)})
    assert compare(bundle, Here({}), LAYOUT)[0].theirs["name"] == "Larch"


def differences(*rows, notes=(), here=(), seen=()):
    records = {"bike": rows, "note": tuple(notes)}
    known = Here(
        {"bike": {one["id"]: one for one in here}},
        seen={"bike": {one["id"]: marks(one) for one in seen}},
    )
    return compare(Bundle("0002", "", "", records), known, LAYOUT)


def test_new_ones_are_taken_and_those_changed_on_both_sides_wait_for_a_word():
    found = differences(bike("a"), YOURS, here=[MINE])
    assert [one.row_id for one in undecided(found, {})] == ["b"]
    assert undecided(found, {("bike", "b"): False}) == ()
    for word, ids in ((False, ["a"]), (True, ["a", "b"])):
        chosen = taken(found, {("bike", "b"): word}, LAYOUT, lambda *_: False)
        assert [one.row_id for one in chosen] == ids


def test_what_belongs_to_something_left_out_is_left_out_with_it():
    note = {"id": "n", "bike_id": "b"}
    found = differences(YOURS, notes=[note], seen=[YOURS])
    assert taken(found, {}, LAYOUT, lambda *_: False) == ()
    assert len(taken(found, {("bike", "b"): True}, LAYOUT, lambda *_: False)) == 2
    assert [one.table for one in taken(found, {}, LAYOUT, lambda *_: True)] == ["note"]
