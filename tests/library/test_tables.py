from __future__ import annotations

import pytest

from tests.library.help import INSTANT
from workbench.library.dump import check
from workbench.library.library import open_library
from workbench.library.own_tables import own
from workbench.library.schema import fingerprint, spec_of, target_name
from workbench.library.tables import schema
from workbench.library.upgrade import HEAD

NAMES = sorted(schema.tables)


def owners(name: str) -> set[str]:
    """The tables whose rows take this table's rows along, over all generations."""
    found: set[str] = set()
    waiting = [name]
    while waiting:
        for ref in spec_of(schema.tables[waiting.pop()]).refs.values():
            owner = target_name(schema, ref)
            if ref.owner and owner not in found:
                found.add(owner)
                waiting.append(owner)
    return found


def end_of(name: str, path: tuple[str, ...]) -> str:
    """The table a path of references leads to."""
    for field in path:
        name = target_name(schema, spec_of(schema.tables[name]).refs[field])
    return name


@pytest.mark.parametrize("name", NAMES)
def test_what_a_bike_owns_says_where_its_bike_is(name):
    path = spec_of(schema.tables[name]).bike
    if name == "bike":
        assert path == ("id",)
    elif path:
        end = end_of(name, path)
        assert end == "bike" or spec_of(schema.tables[end]).bike, "the path leads to no bike"
    else:
        assert "bike" not in owners(name), "deeds on this table would not be heard by the bike's pages"


@pytest.mark.parametrize("name", NAMES)
def test_every_reference_leads_to_a_table_of_records(name):
    for ref in spec_of(schema.tables[name]).refs.values():
        assert target_name(schema, ref) in schema.tables


def test_no_table_takes_a_name_of_the_librarys_own():
    assert not set(schema.tables) & set(own.tables)


def test_a_new_library_is_sound(tmp_path):
    library = open_library(tmp_path / "a", schema, now=lambda: INSTANT)
    assert check(library) == []
    library.close()


def test_a_changed_table_needs_a_new_schema_number():
    # Add a line for a new number; a line that stands is never edited, since files of that schema exist.
    known = {"0001": "e58ece60ea75", "0002": "68162ca403fb", "0003": "74ff45801c86"}
    assert known[HEAD] == fingerprint(schema)
