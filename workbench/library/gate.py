"""The write gate: the only way records change, noting each row before and after for the journal."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby
from typing import Any

from sqlalchemy import select, update

from workbench.library.images import Image, Shape
from workbench.library.own_tables import draft
from workbench.library.pen import Pen
from workbench.library.reader import SLICE, Reader
from workbench.library.schema import Ref, target_name
from workbench.model.errors import LibraryError

__all__ = ["Gate", "Note", "Reader"]

RowKey = tuple[str, str]


@dataclass(frozen=True, slots=True)
class DeedHead:
    """What is known of a deed when it begins."""

    deed_id: str
    now: str
    person_id: str | None
    stamp: int
    new_id: Callable[[], str]


@dataclass(slots=True)
class Note:
    """One touched row: as the deed first met it and as it left it; None where there was no row."""

    before: Image | None
    after: Image | None


@dataclass(slots=True)
class Notes:
    """All a deed has touched."""

    rows: dict[RowKey, Note] = field(default_factory=dict)
    drafts: list[str] = field(default_factory=list)

    def note(self, table: str, row_id: str, before: Image | None, after: Image | None) -> None:
        """Keeps the first before-image and the last after-image."""
        known = self.rows.setdefault((table, row_id), Note(before, after))
        known.after = after

    def changed(self) -> dict[RowKey, Note]:
        """The rows that differ from what they were."""
        return {key: note for key, note in self.rows.items() if note.before != note.after}


class Gate(Reader):
    """What a deed gets: reads and writes of records in one transaction."""

    def __init__(self, pen: Pen, shapes: Mapping[str, Shape], head: DeedHead) -> None:
        super().__init__(pen.connection, shapes)
        self._pen = pen
        self._head = head
        self.notes = Notes()

    @property
    def deed_id(self) -> str:
        """The id of this deed, for records that name the deed they come from."""
        return self._head.deed_id

    @property
    def now(self) -> str:
        """When this deed happens: one instant for all its records."""
        return self._head.now

    @property
    def person_id(self) -> str | None:
        """Who is at the bench."""
        return self._head.person_id

    def new_id(self) -> str:
        """An id no record has yet."""
        return self._head.new_id()

    def put(self, *records: Any) -> None:
        """Inserts the records, or replaces the ones with the same id."""
        for record_type, group in groupby(records, key=type):
            shape = self._shape(record_type)
            rows = [shape.row(record) for record in group]
            for start in range(0, len(rows), SLICE):
                self._put_slice(shape, rows[start : start + SLICE])

    def delete(self, record_type: type, row_id: str) -> None:
        """Deletes the record and all it owns; refuses while something else still refers to any of them."""
        shape = self._shape(record_type)
        doomed = self._with_owned(shape, row_id)
        self._refuse_if_used(shape, doomed)
        for key, image in reversed(doomed.items()):
            self._pen.write("records", self._shapes[key[0]].deletion_among, {"ids": [key[1]]})
            self.notes.note(*key, image, None)

    def remove_draft(self, draft_id: str) -> None:
        """Closes the draft this deed's records were made from; undoing the deed opens it again."""
        is_open = (draft.c.id == draft_id) & draft.c.closed_by.is_(None)
        if not self._pen.write("drafts", update(draft).where(is_open).values(closed_by=self.deed_id)):
            raise LibraryError("This entry has already been kept or discarded. Look for it in the list of records.")
        self.notes.drafts.append(draft_id)

    def _put_slice(self, shape: Shape, rows: list[Image]) -> None:
        wanted = {row["id"]: row for row in rows}
        if len(wanted) < len(rows):
            raise ValueError(f"two records of {shape.table.name} with one id in one put")
        present = self.images(shape, list(wanted))
        changed = {row_id: row for row_id, row in wanted.items() if present.get(row_id) != row}
        old = [row_id for row_id in changed if row_id in present]
        # Out with the old rows before the new ones come in: two records may swap a value that must be unique.
        if old:
            self._pen.write("records", shape.deletion_among, {"ids": old})
        new = [{**row, "version": self._head.stamp} for row in changed.values()]
        self._pen.insert("records", shape.insertion, new)
        for row_id, row in changed.items():
            self.notes.note(shape.table.name, row_id, present.get(row_id), row)

    def _with_owned(self, shape: Shape, row_id: str) -> dict[RowKey, Image]:
        """The row and everything it owns, owners first."""
        found = {(shape.table.name, key): image for key, image in self.images(shape, [row_id]).items()}
        if not found:
            raise LibraryError(f"This {_noun(shape)} is no longer in the library, so there is nothing to delete.")
        waiting = list(found)
        while waiting:
            table, owner_id = waiting.pop(0)
            for child, name, ref in self._references_to(table):
                if not ref.owner:
                    continue
                for values in self._connection.execute(
                    select(*child.columns).where(child.table.c[name] == owner_id).order_by(child.table.c.id)
                ):
                    image = child.image(values)
                    key = (child.table.name, image["id"])
                    if key not in found:
                        found[key] = image
                        waiting.append(key)
        return found

    def _refuse_if_used(self, shape: Shape, doomed: Mapping[RowKey, Image]) -> None:
        users: dict[RowKey, Shape] = {}
        for table, row_id in doomed:
            for other, name, ref in self._references_to(table):
                if not ref.owner:
                    query = select(other.table.c.id).where(other.table.c[name] == row_id)
                    users |= {(other.table.name, user): other for user in self._connection.execute(query).scalars()}
        users = {key: other for key, other in users.items() if key not in doomed}
        if users:
            counts = {_noun(other): 0 for other in users.values()}
            for other in users.values():
                counts[_noun(other)] += 1
            told = ", ".join(f"{noun} ({count})" for noun, count in sorted(counts.items()))
            raise LibraryError(
                f"This {_noun(shape)} is still used by: {told}. Nothing was deleted; remove or change those first."
            )

    def _references_to(self, table: str) -> Iterator[tuple[Shape, str, Ref]]:
        for other in self._shapes.values():
            for name, ref in other.spec.refs.items():
                if target_name(other.table.metadata, ref) == table:
                    yield other, name, ref


def _noun(shape: Shape) -> str:
    return shape.table.name.replace("_", " ")
