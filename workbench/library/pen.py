"""The only hand that writes: every statement is counted by its purpose, so that nothing can bypass the count."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Literal

from sqlalchemy import Connection, Delete, Insert, Update

Purpose = Literal["records", "journal", "drafts", "settings"]
PURPOSES: tuple[Purpose, ...] = ("records", "journal", "drafts", "settings")


@dataclass(slots=True)
class Tally:
    """How many rows were written since the library was opened, by purpose."""

    rows: dict[Purpose, int] = field(default_factory=lambda: dict.fromkeys(PURPOSES, 0))

    def total(self) -> int:
        """All rows written."""
        return sum(self.rows.values())


class Pen:
    """Writes inside one transaction."""

    def __init__(self, connection: Connection, tally: Tally) -> None:
        self.connection = connection
        self._tally = tally
        self.abandoned = False

    def insert(self, purpose: Purpose, statement: Insert, rows: Sequence[dict[str, Any]]) -> None:
        """Inserts the rows in one go."""
        if rows:
            self.connection.execute(statement, list(rows))
            self._tally.rows[purpose] += len(rows)

    def write(
        self, purpose: Purpose, statement: Update | Delete, values: Mapping[str, Any] = MappingProxyType({})
    ) -> int:
        """Updates or deletes; gives the number of rows."""
        count = self.connection.execute(statement, values).rowcount
        self._tally.rows[purpose] += count
        return count

    def abandon(self) -> None:
        """Rolls back at the end of the transaction although nothing went wrong."""
        self.abandoned = True
