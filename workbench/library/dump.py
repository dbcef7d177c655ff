"""Everything the library holds as one JSON text in stable order."""

from __future__ import annotations

import base64
import json
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, Table, select

from workbench.library.own_tables import deed, deed_draft, deed_row, draft, setting
from workbench.library.soundness import check

if TYPE_CHECKING:
    from workbench.library.library import Library

__all__ = ["check", "export_json"]

FORMAT = "trailbench library export"


def export_json(library: Library) -> str:
    """All records, the journal, drafts and settings: the same content always gives the same text."""
    with library.reading() as connection:
        content = {
            "format": FORMAT,
            "schema": library.schema_number,
            "records": _records(library, connection),
            "journal": _journal(connection),
            "drafts": _rows(connection, draft),
            "settings": {row["key"]: row["value"] for row in _rows(connection, setting)},
        }
    return json.dumps(content, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


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
