from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from enum import StrEnum

import pytest
from sqlalchemy import create_engine

from tests.library.garden import garden
from tests.library.help import opened
from workbench.actions.desk import Desk
from workbench.library.schema import Ref, new_metadata, record_table, records_of


class Feel(StrEnum):
    CALM = "calm"
    NERVOUS = "nervous"


@dataclass(frozen=True, slots=True)
class Note:
    id: str
    feel: Feel
    second: Feel | None = None
    on: bool | None = None


def test_columns_follow_the_fields_and_a_version_is_added(tmp_path):
    with opened(tmp_path / "a") as library:
        found = library.raw.execute("SELECT name, type, \"notnull\", pk FROM pragma_table_info('part')").fetchall()
        assert found == [
            ("id", "TEXT", 1, 1),
            ("bike_id", "TEXT", 1, 0),
            ("place", "TEXT", 1, 0),
            ("position", "INTEGER", 1, 0),
            ("photo", "BLOB", 0, 0),
            ("version", "INTEGER", 1, 0),
        ]
        assert library.raw.execute("SELECT type FROM pragma_table_info('reading') WHERE name='sag_mm'").fetchone() == (
            "REAL",
        )


def test_all_tables_are_strict(tmp_path):
    with opened(tmp_path / "a") as library:
        found = library.raw.execute("SELECT name, strict FROM pragma_table_list WHERE schema = 'main'").fetchall()
        assert {name for name, strict in found if not strict} == {"sqlite_schema"}


def test_references_wait_for_the_end_and_never_delete_by_themselves(tmp_path):
    with opened(tmp_path / "a") as library:
        tables = [row[0] for row in library.raw.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        texts = [row[0] for row in library.raw.execute("SELECT sql FROM sqlite_master WHERE type = 'table'")]
        for table, text in zip(tables, texts, strict=True):
            keys = library.raw.execute(f"PRAGMA foreign_key_list({table})").fetchall()
            assert text.count("DEFERRABLE INITIALLY DEFERRED") == len(keys)
            assert {key[6] for key in keys} <= {"NO ACTION"}


@pytest.mark.parametrize(
    "values",
    [
        ("i", "b", "left", 0, None, 1),
        ("i", "b", "rear", "many", None, 1),
        ("i", None, "rear", 0, None, 1),
        ("i", "b", "rear", 0, "text", 1),
    ],
)
def test_the_file_itself_refuses_what_no_record_can_be(tmp_path, values):
    with opened(tmp_path / "a") as library, pytest.raises(sqlite3.IntegrityError):
        library.raw.execute("INSERT INTO part VALUES (?, ?, ?, ?, ?, ?)", values)


def test_words_and_flags_come_back_as_they_went(tmp_path):
    notes = new_metadata()
    record_table(notes, "note", Note)
    first = [Note("a", Feel.CALM, None, True), Note("b", Feel.NERVOUS, Feel.CALM, None), Note("c", Feel.CALM, on=False)]
    from workbench.library.library import open_library

    library = open_library(tmp_path / "a", notes, now=lambda: "now")
    desk = Desk(library)
    desk.do("Note", lambda gate: gate.put(*first))
    found = desk.ask(lambda reader: reader.find(Note))
    assert list(found) == first
    assert type(found[1].second) is Feel
    assert found[0].on is True
    library.close()


def test_a_record_type_without_id_or_with_odd_fields_is_refused():
    @dataclass(frozen=True)
    class NoId:
        name: str

    @dataclass(frozen=True)
    class Listy:
        id: str
        names: list[str]

    @dataclass(frozen=True)
    class Clash:
        id: str
        version: int

    for kind in (NoId, Listy, Clash):
        with pytest.raises(TypeError):
            record_table(new_metadata(), "x", kind)


def test_unknown_field_names_are_refused():
    for options in ({"refs": {"nix": Ref("note")}}, {"checks": {"nix": ("a",)}}, {"bike": "nix"}):
        with pytest.raises(TypeError, match="nix"):
            record_table(new_metadata(), "note", Note, **options)


def test_every_reference_has_an_index(tmp_path):
    with opened(tmp_path / "a") as library:
        for kind, table in records_of(garden).items():
            first = {
                library.raw.execute(f"SELECT name FROM pragma_index_info('{row[1]}')").fetchone()[0]
                for row in library.raw.execute(f"PRAGMA index_list({table.name})").fetchall()
            }
            assert set(table.info["refs"]) <= first, kind


def test_one_schema_can_be_made_without_any_library():
    engine = create_engine("sqlite://")
    garden.create_all(engine)
    engine.dispose()
