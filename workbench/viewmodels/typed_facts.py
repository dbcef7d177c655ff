"""Text in a fact's field that could not be read: kept as typed, shown again, forgotten once it is put right."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace

from workbench.actions.desk import Desk
from workbench.viewmodels.fact_rows import FactRow

DRAFT = "typed"


def typed_key(record_id: str, name: str) -> str:
    """Give the key under which a field's text is kept."""
    return f"{record_id}/{name}"


def with_typed(rows: tuple[FactRow, ...], typed: Mapping[str, str]) -> tuple[FactRow, ...]:
    """Give the rows with the texts that were left in them."""
    return tuple(replace(row, typed=typed.get(typed_key(row.record_id, row.name), "")) for row in rows)


def typed_texts(desk: Desk, bike_id: str) -> dict[str, str]:
    """Give the texts kept of a bike's facts, by key."""
    kept = (draft for draft in desk.drafts(bike_id) if draft.kind == DRAFT)
    return {draft.subject or "": str(json.loads(draft.body)) for draft in kept}


def keep_typed(desk: Desk, bike_id: str, key: str, text: str) -> None:
    """Keep a text that could not be read; an empty one is forgotten."""
    if text:
        desk.keep_draft(DRAFT, json.dumps(text), bike_id=bike_id, subject=key)
    elif (kept := desk.open_draft(DRAFT, bike_id=bike_id, subject=key)) is not None:
        desk.discard_draft(kept.id)
