"""What does not leave the library before a blind test is revealed: the order, and what was ridden by it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from typing import Any

PLAN, OWNER = "blind_plan", "session"
SAID = "Blind tests not revealed yet are left out, with their sessions and runs; the fingerprint seals each order."
Rows = Iterable[tuple[str, Mapping[str, Any]]]
Refs = Mapping[str, Mapping[str, str]]  # by table: which field points at which table


def concealed_ids(rows: Collection[tuple[str, Mapping[str, Any]]], refs: Refs) -> dict[str, frozenset[str]]:
    """Give, by table, the ids of all that belongs to blind tests not revealed.

    ``rows`` are rows with their tables, earlier versions among them. A test that was undone was never revealed either,
    and could be done again. What points at a row left out is left out with it.
    """
    plans = [row for table, row in rows if table == PLAN]
    revealed = {row["session_id"] for row in plans if row.get("revealed_at") is not None}
    found: dict[str, set[str]] = {OWNER: {row["session_id"] for row in plans} - revealed}
    while found[OWNER]:
        before = sum(map(len, found.values()))
        for table, row in rows:
            pointed = refs.get(table, {}).items()
            if any(row.get(field) in found.get(target, ()) for field, target in pointed):
                found.setdefault(table, set()).add(row["id"])
        if sum(map(len, found.values())) == before:
            break
    return {table: frozenset(ids) for table, ids in found.items() if ids}


def seals(rows: Rows, concealed: Mapping[str, Collection[str]]) -> list[dict[str, Any]]:
    """Give what may be told of each test left out: its session, when its order was fixed, and the fingerprint."""
    kept = ("session_id", "fixed_at", "digest")
    told = [{name: row[name] for name in kept} for table, row in rows if table == PLAN and row["id"] in concealed[PLAN]]
    return sorted(told, key=lambda seal: str(seal["session_id"]))
