"""Whether the library is sound: the file itself, its references, and the journal against the records."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from sqlalchemy import Connection, Table, inspect, select

from workbench.library.gate import RowKey
from workbench.library.own_tables import deed, deed_row, draft, own
from workbench.model.errors import LibraryDamaged

if TYPE_CHECKING:
    from workbench.library.library import Library

NAMED = 5


def check(library: Library) -> list[str]:
    """All problems found, one sentence each; an empty list means sound."""
    with library.reading() as connection:
        broken = _file(connection) or _columns(library, connection)
        if broken:
            return broken  # what stands in a broken file proves nothing
        return [
            *_references(connection),
            *_records(library, connection),
            *_journal(library, connection),
            *_drafts(connection),
        ]


def _file(connection: Connection) -> list[str]:
    found = connection.exec_driver_sql("PRAGMA quick_check").scalars().all()
    return [] if found == ["ok"] else [f"The file is damaged: {line}." for line in found[:NAMED]]


def _references(connection: Connection) -> list[str]:
    found = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    return [f"A row of {row[0]} refers to a row of {row[2]} that does not exist." for row in found]


def _columns(library: Library, connection: Connection) -> list[str]:
    """The tables of the file against those the records need."""
    stored = inspect(connection)
    problems = []
    for table in (*own.tables.values(), *library.schema.tables.values()):
        if not stored.has_table(table.name):
            problems.append(f"The table {table.name} is missing.")
            continue
        there = {column["name"]: column["nullable"] for column in stored.get_columns(table.name)}
        if there != _wanted(table):
            problems.append(f"The table {table.name} has other columns than it should.")
    return problems


def _wanted(table: Table) -> dict[str, bool]:
    return {column.name: bool(column.nullable) for column in table.columns}


def _records(library: Library, connection: Connection) -> list[str]:
    """Every stored row must still make a record."""
    problems = []
    for name, shape in library.shapes.items():
        for row in connection.execute(select(*shape.columns)):
            try:
                shape.row(shape.record(row))
            except (LibraryDamaged, ValueError, TypeError) as error:
                problems.append(f"The {name} {row.id} makes no record: {error}")
    return problems


def _journal(library: Library, connection: Connection) -> list[str]:
    """The deeds in force, one after the other, must lead to exactly the present rows."""
    problems: list[str] = []
    images: dict[RowKey, tuple[str | None, str]] = {}
    query = (
        select(deed.c.label, deed.c.schema_number, deed_row)
        .join(deed_row, deed_row.c.deed_id == deed.c.id)
        .where(deed.c.state == "done")
        .order_by(deed.c.number)
    )
    for row in connection.execute(query):
        key = (row.table_name, row.row_id)
        known, number = images.get(key, (None, row.schema_number))
        if number == row.schema_number and known != row.before:
            problems.append(f"The step “{row.label}” does not follow on the one before it, at {key[0]} {key[1]}.")
        images[key] = (row.after, row.schema_number)
    return problems + _against_rows(library, connection, images)


def _against_rows(library: Library, connection: Connection, images: dict[RowKey, tuple[str | None, str]]) -> list[str]:
    problems = []
    for name, shape in library.shapes.items():
        expected = {key[1]: image for key, image in images.items() if key[0] == name and image[0] is not None}
        for row in connection.execute(select(*shape.columns)):
            image, number = expected.pop(row.id, (None, ""))
            if image is None:
                problems.append(f"The {name} {row.id} was made by no step.")
            elif number == library.schema_number and shape.decode(image) != shape.image(row):
                problems.append(f"The {name} {row.id} is not as its last step left it.")
        problems += [f"The {name} {row_id} is missing, though no step deleted it." for row_id in expected]
    return problems


def _drafts(connection: Connection) -> list[str]:
    deeds = set(connection.execute(select(deed.c.id)).scalars())
    problems = []
    for row in connection.execute(select(draft)):
        if row.closed_by not in (None, "discarded") and row.closed_by not in deeds:
            problems.append(f"The draft {row.id} was closed by a step that does not exist.")
        try:
            json.loads(row.body)
        except ValueError:
            problems.append(f"The draft {row.id} cannot be read.")
    return problems
