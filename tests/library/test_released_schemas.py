"""Files of every released schema are opened, brought up and checked, with all they hold."""

from __future__ import annotations

import re
import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from tests.library.help import INSTANT, prints
from workbench.actions.desk import Desk
from workbench.library.dump import check
from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.library.upgrade import HEAD
from workbench.model.unit import Unit

FILES = Path(__file__).parent / "files"
RELEASED = ("0001", "0002")  # a line that stands is never taken away: files of that schema exist
OWN_TABLES = ("deed", "deed_row", "deed_draft", "draft", "setting")


def released(number: str, folder: Path) -> Path:
    """The library as that release wrote it, from its dump."""
    path = folder / f"{number}.trailbench"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript((FILES / f"schema_{number}.sql").read_text(encoding="utf-8"))
    return path


def rows_of(path: Path) -> dict[str, list[dict[str, object]]]:
    """All rows of all tables, by name, in order of their keys."""
    with closing(sqlite3.connect(path)) as connection:
        connection.row_factory = sqlite3.Row
        tables = [row[0] for row in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {name: [dict(row) for row in connection.execute(f"SELECT * FROM {name} ORDER BY 1")] for name in tables}


def opened_now(path: Path, **options: object) -> Library:
    return open_library(path, schema, now=lambda: INSTANT, **options)


@pytest.mark.parametrize("number", RELEASED)
def test_the_pinned_file_has_a_row_in_every_table_of_its_schema(number, tmp_path):
    rows = rows_of(released(number, tmp_path))
    assert rows["alembic_version"] == [{"version_num": number}]
    assert [name for name, found in rows.items() if not found] == []


@pytest.mark.parametrize("number", RELEASED)
def test_a_released_file_is_brought_up_with_every_record_as_it_was(number, tmp_path):
    path = released(number, tmp_path)
    before = rows_of(path)
    library = opened_now(path)
    try:
        assert check(library) == []
        for name, shape in library.shapes.items():
            old = before.get(name, [])
            new = {row.id: row for row in Desk(library).ask(lambda r, s=shape: r.find(s.spec.record_type))}
            assert len(new) == len(old)
            for row in old:
                stored = shape.row(new[row["id"]])
                assert {key: stored.get(key, "gone") for key in row if key != "version"} == {
                    key: value for key, value in row.items() if key != "version"
                }
    finally:
        library.close()
    after = rows_of(path)
    assert after["alembic_version"] == [{"version_num": HEAD}]
    assert {name: after[name] for name in OWN_TABLES} == {name: before[name] for name in OWN_TABLES}


@pytest.mark.parametrize("number", RELEASED)
def test_a_released_file_gets_the_tables_a_new_one_has(number, tmp_path):
    tables = []
    for path in (released(number, tmp_path), tmp_path / "new"):
        library = opened_now(path)
        rows = library.raw.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name").fetchall()
        tables.append([(table, re.sub(r'[\s"]+', "", sql)) for table, sql in rows])
        library.close()
    assert tables[0] == tables[1]


@pytest.mark.parametrize("number", RELEASED)
def test_a_released_file_can_be_looked_at_and_stays_byte_for_byte(number, tmp_path):
    path = released(number, tmp_path)
    before = prints(tmp_path)
    library = opened_now(path, read_only=True)
    assert check(library) == []
    library.close()
    assert prints(tmp_path) == before


@pytest.mark.parametrize("number", RELEASED)
def test_work_goes_on_and_is_undone_in_a_released_file(number, tmp_path):
    library = opened_now(released(number, tmp_path))
    desk = Desk(library)
    unit = desk.ask(lambda reader: reader.find(Unit, kind="shock"))[0]
    desk.do("Shock: name", lambda gate: gate.put(replace(unit, name="Tern 205")))
    assert desk.undo().label == "Shock: name"
    assert desk.ask(lambda reader: reader.need(Unit, unit.id)) == unit
    assert desk.undo() is None
    assert check(library) == []
    library.close()
