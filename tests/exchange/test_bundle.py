"""The bundle: what is written is read back as it was; what is none, or not wholly right, is refused in a sentence."""

from __future__ import annotations

import json
from hashlib import sha256

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.exchange.bundle import (
    Bundle,
    FieldKind,
    TableKind,
    mark_of,
    read_bundle,
    write_bundle,
)
from workbench.model.errors import ExchangeError

SCHEMA = "0002"
LAYOUT = {
    "bike": TableKind(
        "bike",
        (
            FieldKind("id", str, False),
            FieldKind("name", str, False),
            FieldKind("end", str, False, ("front", "rear"), "front"),
            FieldKind("is_ebike", bool, False, (), False),
            FieldKind("travel_mm", float, True, (), None),
            FieldKind("clicks", int, True, (), None),
        ),
    ),
    "note": TableKind("note", (FieldKind("id", str, False), FieldKind("bike_id", str, False)), {"bike_id": "bike"}),
}
PICTURE = b"\x89PNG and so on"
HOSTILE = (
    "<img src=x onerror=alert(1)>",
    "<s>struck</s> & &amp;",
    '=HYPERLINK("x")',
    "+1",
    "-2 clicks",
    "@cmd",
    "'quoted'",
    "../../etc/passwd",
    "\\\\host\\share",
    "C:\\bike",
    "\u05d0\u05d5\u05e4\u05e0\u05d9\u05d9\u05dd \u062f\u0631\u0627\u062c\u0629",
    "\U0001f6b2\U0001f468\u200d\U0001f469\u200d\U0001f467",
    "NaN",
    "1e999",
    "null",
    "a\nb\tc",
    '"}],"',
    "\u2028\u2029",
    "W" * 5000,
)


def bike(key="b", name="Larch", **more):
    return {"id": key, "name": name, "end": "front", "is_ebike": False, "travel_mm": None, "clicks": None} | more


def bundle(*bikes, **more):
    held = {"bike": bikes or (bike(),)} | more.pop("records", {})
    return Bundle(SCHEMA, "2031-05-14T09:00:00+00:00", "Larch", held, **more)


def text_of(one):
    return write_bundle(one, LAYOUT)


def read(text):
    content = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    return read_bundle(content, LAYOUT, schema=SCHEMA)


def changed(change):
    """The text of a sound bundle after a change of what it holds."""
    held = json.loads(text_of(bundle()))
    change(held)
    return json.dumps(held)


@pytest.mark.parametrize("name", HOSTILE)
def test_every_string_comes_back_as_it_was(name):
    assert read(text_of(bundle(bike(name=name)))).records["bike"] == (bike(name=name),)


@given(
    st.lists(
        st.builds(
            bike,
            st.from_regex(r"[0-9a-f]{8}", fullmatch=True),
            st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\x00"), max_size=40),
            end=st.sampled_from(["front", "rear"]),
            is_ebike=st.booleans(),
            travel_mm=st.none() | st.floats(allow_nan=False, allow_infinity=False).map(lambda value: value + 0.0),
            clicks=st.none() | st.integers(-(10**17), 10**17),
        ),
        max_size=8,
        unique_by=lambda row: row["id"],
    )
)
def test_what_is_written_is_read_back_and_written_the_same(bikes):
    first = text_of(Bundle(SCHEMA, "now", "all", {"bike": tuple(bikes)}))
    again = read(first)
    assert sorted(again.records.get("bike", ()), key=lambda row: row["id"]) == sorted(bikes, key=lambda row: row["id"])
    assert text_of(again) == first


def test_the_order_does_not_depend_on_where_things_came_from():
    one, two = bike("a"), bike("b")
    marks = {"bike": {"b": ("0" * 16,), "a": ("1" * 16,)}}
    there = bundle(one, two, earlier=marks)
    here = bundle(two, dict(reversed(one.items())), earlier={"bike": dict(reversed(marks["bike"].items()))})
    assert text_of(there) == text_of(here)


def test_photos_go_along_and_a_damaged_one_is_refused():
    name = sha256(PICTURE).hexdigest()
    text = text_of(bundle(photos={name: PICTURE}))
    assert read(text).photos == {name: PICTURE}
    with pytest.raises(ExchangeError, match="a photo in it is damaged"):
        read(text.replace(name, "0" * 64))


def test_a_field_this_file_does_not_know_yet_starts_as_a_new_one_would():
    text = changed(lambda held: held["records"]["bike"][0].pop("clicks"))
    assert read(text).records["bike"] == (bike(),)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no JSON any more"),
        ("{", "no JSON any more"),
        ("[]", "no bundle of Trailbench"),
        ("7", "no bundle of Trailbench"),
        ('{"format": "recipe"}', "no bundle of Trailbench"),
        ('{"format": "trailbench library export"}', "export for scripts"),
        ("[" * 200_000, "no JSON any more"),
        ("NaN", "NaN is no number"),
        ('{"a": 1e999}', "no finite number"),
        ("9" * 5000, "a number of 5000 digits"),
        ('{"a": 1, "a": 2}', "twice in one place"),
        (b"\xff\xfe\x00{", "no text file"),
        (b"SQLite format 3\x00\x81", "no text file"),
    ],
)
def test_what_is_no_bundle_is_refused_in_a_sentence(text, said):
    with pytest.raises(ExchangeError) as refused:
        read(text)
    assert said in str(refused.value)
    assert str(refused.value).endswith((".",))


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda held: held.update(version=2), "later Trailbench"),
        (lambda held: held.update(schema="0003"), "later Trailbench"),
        (lambda held: held.update(version=True), "head cannot be read"),
        (lambda held: held.update(version=0), "head is not complete"),
        (lambda held: held.pop("photos"), "head is not complete"),
        (lambda held: held.update(title=7), "head cannot be read"),
        (lambda held: held.update(records=[]), "holds no records"),
        (lambda held: held["records"].update(recipe=[]), "“recipe” is no kind of record"),
        (lambda held: held["records"].update(bike={}), "list of bike cannot be read"),
        (lambda held: held["records"]["bike"].append(7), "one bike cannot be read"),
        (lambda held: held["records"]["bike"].append(bike()), "stands in it twice"),
        (lambda held: held["records"]["bike"][0].update(wings=2), "a bike has no “wings”"),
        (lambda held: held["records"]["bike"][0].pop("name"), "without its name"),
        (lambda held: held["records"]["bike"][0].update(name=None), "name of a bike holds null"),
        (lambda held: held["records"]["bike"][0].update(name=["a"]), "holds several values"),
        (lambda held: held["records"]["bike"][0].update(end="middle"), 'end of a bike holds "middle"'),
        (lambda held: held["records"]["bike"][0].update(is_ebike=1), "is_ebike of a bike holds 1"),
        (lambda held: held["records"]["bike"][0].update(clicks=True), "clicks of a bike holds true"),
        (lambda held: held["records"]["bike"][0].update(clicks=1.5), "clicks of a bike holds 1.5"),
        (lambda held: held["records"]["bike"][0].update(travel_mm="12,5"), "travel_mm of a bike"),
        (lambda held: held["records"]["bike"][0].update(name="a\x00b"), "name of a bike"),
        (lambda held: held["records"]["bike"][0].update(name="x" * 20_001), "name of a bike"),
        (lambda held: held["records"]["bike"][0].update(id=""), "unusable key"),
        (lambda held: held["records"]["bike"][0].update(id="../b"), "unusable key"),
        (lambda held: held.update(earlier={"bike": {"c": []}}), "marks of records that are not in it"),
        (lambda held: held.update(earlier={"bike": {"b": ["x"]}}), "marks cannot be read"),
        (lambda held: held.update(earlier={"wheel": {}}), "marks cannot be read"),
        (lambda held: held.update(photos={"x": ""}), "a photo in it cannot be read"),
        (lambda held: held.update(photos={"0" * 64: "%%%"}), "a photo in it cannot be read"),
    ],
)
def test_what_is_not_wholly_right_is_refused_as_a_whole(change, said):
    with pytest.raises(ExchangeError) as refused:
        read(changed(change))
    assert said in str(refused.value)
    assert "Nothing was taken" in str(refused.value)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
    max_leaves=6,
)
PLACES = st.sampled_from(
    [
        ("version",),
        ("schema",),
        ("title",),
        ("records",),
        ("records", "bike"),
        ("records", "bike", 0),
        *(("records", "bike", 0, name) for name in bike()),
        ("earlier",),
        ("earlier", "bike"),
        ("photos",),
    ]
)


@given(PLACES, JSON)
@settings(max_examples=400)
def test_any_value_in_any_place_is_read_or_refused_and_never_a_failure(place, value):
    held = json.loads(text_of(bundle()))
    at = held
    for step in place[:-1]:
        at = at.setdefault(step, {}) if isinstance(at, dict) else at[step]
    at[place[-1]] = value
    try:
        found = read(json.dumps(held))
    except ExchangeError:
        return
    assert read(text_of(found)).records == {name: rows for name, rows in found.records.items() if rows}


SOUND = text_of(bundle(bike("a", "Larch \u00e9"), bike("b", is_ebike=True, travel_mm=150.5))).encode()


@given(st.lists(st.tuples(st.integers(0, len(SOUND) - 1), st.binary(max_size=3), st.integers(0, 4)), max_size=4))
@settings(max_examples=500)
def test_any_change_of_bytes_is_read_or_refused_and_never_a_failure(cuts):
    content = SOUND
    for at, put, gone in cuts:
        content = content[:at] + put + content[at + gone :]
    try:
        found = read(content)
    except ExchangeError:
        return
    assert all(set(row) == set(bike()) for row in found.records.get("bike", ()))


@given(st.binary(max_size=200))
def test_any_bytes_at_all_are_refused_in_a_sentence(content):
    with pytest.raises(ExchangeError):
        read(content)


def test_a_mark_tells_contents_apart_and_does_not_mind_new_fields_at_their_default():
    table = LAYOUT["bike"]
    plain = mark_of(bike(), table)
    assert plain == mark_of({"name": "Larch", "id": "b"}, table)
    others = [bike(name="Fell"), bike(is_ebike=True), bike(clicks=0), bike(travel_mm=0.0), bike("c")]
    assert len({plain, *(mark_of(one, table) for one in others)}) == len(others) + 1
