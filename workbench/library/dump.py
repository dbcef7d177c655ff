"""Everything the library holds as one JSON text in stable order."""

from __future__ import annotations

import base64
import json
from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, Table, select

from workbench.library.bundle_rows import refs_of
from workbench.library.concealed import SAID, concealed_ids, seals
from workbench.library.own_tables import deed, deed_draft, deed_row, draft, setting
from workbench.library.soundness import check

if TYPE_CHECKING:
    from workbench.library.library import Library

__all__ = ["check", "export_json"]

FORMAT = "trailbench library export"


def export_json(library: Library) -> str:
    """All records, the journal, drafts and settings: the same content always gives the same text.

    Of a blind test not revealed yet there is its fingerprint; its order and its runs are left out. That something was
    done in it stays in the journal, and what was typed before a run was kept in the drafts: neither knows the order.
    """
    with library.reading() as connection:
        records, journal = _records(library, connection), _journal(connection)
        left_out = concealed_ids([*_rows_in(records), *_images_in(journal)], _refs(library))
        content = {
            "format": FORMAT,
            "schema": library.schema_number,
            "concealed": {"said": SAID, "tests": seals(_rows_in(records), left_out)} if left_out else None,
            "records": {table: _without(rows, left_out.get(table, ())) for table, rows in records.items()},
            "journal": [step | {"rows": _told(step["rows"], left_out)} for step in journal],
            "drafts": _rows(connection, draft),
            "settings": {row["key"]: row["value"] for row in _rows(connection, setting)},
        }
    return json.dumps(content, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def _refs(library: Library) -> dict[str, dict[str, str]]:
    return {name: refs_of(shape) for name, shape in library.shapes.items()}


def _rows_in(records: dict[str, list[dict[str, Any]]]) -> list[tuple[str, dict[str, Any]]]:
    return [(table, row) for table, rows in records.items() for row in rows]


def _images_in(journal: list[dict[str, Any]]) -> list[tuple[str, dict[str, Any]]]:
    rows = [row for step in journal for row in step["rows"]]
    return [(row["table"], row[side]) for row in rows for side in ("before", "after") if row[side] is not None]


def _without(rows: list[dict[str, Any]], ids: Collection[str]) -> list[dict[str, Any]]:
    return [row for row in rows if row["id"] not in ids]


def _told(rows: list[dict[str, Any]], left_out: Mapping[str, Collection[str]]) -> list[dict[str, Any]]:
    return [row for row in rows if row["id"] not in left_out.get(row["table"], ())]


def _records(library: Library, connection: Connection) -> dict[str, list[dict[str, Any]]]:
    found = {}
    for name, shape in sorted(library.shapes.items()):
        query = select(*shape.columns).order_by(shape.table.c.id)
        found[name] = [_plain(shape.image(row)) for row in connection.execute(query)]
    return found


def _journal(connection: Connection) -> list[dict[str, Any]]:
    rows: dict[str, list[dict[str, Any]]] = {}
    for row in _rows(connection, deed_row):
        images = {side: json.loads(row[side]) if row[side] is not None else None for side in ("before", "after")}
        key = {"table": row["table_name"], "id": row["row_id"]}
        rows.setdefault(row["deed_id"], []).append(key | images)
    closed: dict[str, list[str]] = {}
    for row in _rows(connection, deed_draft):
        closed.setdefault(row["deed_id"], []).append(row["draft_id"])
    return [
        step | {"rows": rows.get(step["id"], []), "drafts": closed.get(step["id"], [])}
        for step in _rows(connection, deed)
    ]


def _rows(connection: Connection, table: Table) -> list[dict[str, Any]]:
    query = select(table).order_by(*table.primary_key.columns)
    return [dict(row._mapping) for row in connection.execute(query)]


def _plain(image: dict[str, Any]) -> dict[str, Any]:
    return {
        name: base64.b64encode(value).decode() if isinstance(value, bytes) else value for name, value in image.items()
    }
