"""Drafts: what has been entered but not yet kept, saved at every entry and outside the journal."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

from sqlalchemy import ColumnElement, Connection, Row, and_, bindparam, func, insert, select, update

from workbench.library.images import storable_text
from workbench.library.own_tables import deed_draft, draft
from workbench.library.pen import Pen
from workbench.model.errors import LibraryError

if TYPE_CHECKING:
    from workbench.library.library import Library

DISCARDED = "discarded"
LONGEST_BODY = 2_000_000

BIKES_OF_DEED = (
    select(draft.c.bike_id)
    .join(deed_draft, deed_draft.c.draft_id == draft.c.id)
    .where(deed_draft.c.deed_id == bindparam("deed_id"), draft.c.bike_id.is_not(None))
)
OPEN = select(draft).where(draft.c.closed_by.is_(None)).order_by(draft.c.updated_at.desc(), draft.c.id)
OPEN_ONE = select(draft).where(
    draft.c.kind == bindparam("kind"),
    func.coalesce(draft.c.bike_id, "") == bindparam("of_bike"),
    func.coalesce(draft.c.subject, "") == bindparam("about"),
    draft.c.closed_by.is_(None),
)
OPEN_OF_BIKE = OPEN.where(draft.c.bike_id == bindparam("bike_id"))  # built once: every bike in sight asks for it


@dataclass(frozen=True, slots=True)
class Draft:
    """An entry in the making; `closed_by` is the deed that kept it, or "discarded"."""

    id: str
    kind: str
    bike_id: str | None
    subject: str | None
    body: str
    started_at: str
    updated_at: str
    closed_by: str | None


def keep(library: Library, kind: str, body: str, *, bike_id: str | None, subject: str | None) -> tuple[Draft, bool]:
    """Saves the body in the open draft of this kind, bike and subject, or begins one; tells whether it was new."""
    storable_text("draft", body, LONGEST_BODY)
    with library.writing() as pen:
        known = _open(pen.connection, kind, bike_id, subject)
        if known is not None and known.body == body:
            pen.abandon()
            return known, False
        now = library.now()
        if known is not None:
            pen.write("drafts", update(draft).where(draft.c.id == known.id).values(body=body, updated_at=now))
            return need(pen.connection, known.id), True
        fresh = Draft(library.new_id(), kind, bike_id, subject, body, now, now, None)
        pen.insert("drafts", insert(draft), [asdict(fresh)])
        return fresh, True


def open_draft(connection: Connection, kind: str, bike_id: str | None, subject: str | None) -> Draft | None:
    """The open draft of this kind, bike and subject."""
    return _open(connection, kind, bike_id, subject)


def open_drafts(connection: Connection, bike_id: str | None) -> tuple[Draft, ...]:
    """All open drafts, of one bike if it is given, newest first."""
    found = connection.execute(OPEN) if bike_id is None else connection.execute(OPEN_OF_BIKE, {"bike_id": bike_id})
    return tuple(_draft(row) for row in found)


def discard(library: Library, draft_id: str) -> Draft:
    """Puts an open draft aside; it can be taken back."""
    with library.writing() as pen:
        is_open = and_(draft.c.id == draft_id, draft.c.closed_by.is_(None))
        if not pen.write("drafts", update(draft).where(is_open).values(closed_by=DISCARDED)):
            raise LibraryError("This entry has already been kept or discarded.")
        return need(pen.connection, draft_id)


def take_back(library: Library, draft_id: str) -> Draft:
    """Opens a discarded draft again, unless another of the same kind, bike and subject has been begun."""
    with library.writing() as pen:
        known = need(pen.connection, draft_id)
        if known.closed_by != DISCARDED:
            raise LibraryError("This entry was not discarded, so there is nothing to take back.")
        if _open(pen.connection, known.kind, known.bike_id, known.subject) is not None:
            raise LibraryError("Another entry of this kind has been begun since. Keep or discard that one first.")
        pen.write("drafts", update(draft).where(draft.c.id == draft_id).values(closed_by=None))
        return need(pen.connection, draft_id)


def reopen(pen: Pen, deed_id: str) -> bool:
    """Opens the drafts an undone deed had closed, where no newer one took their place."""
    count = 0
    for known in _of_deed(pen.connection, deed_id, draft.c.closed_by == deed_id):
        if _open(pen.connection, known.kind, known.bike_id, known.subject) is None:
            count += pen.write("drafts", update(draft).where(draft.c.id == known.id).values(closed_by=None))
    return count > 0


def close_again(pen: Pen, deed_id: str) -> bool:
    """Closes the drafts of a redone deed that are open."""
    count = 0
    for known in _of_deed(pen.connection, deed_id, draft.c.closed_by.is_(None)):
        count += pen.write("drafts", update(draft).where(draft.c.id == known.id).values(closed_by=deed_id))
    return count > 0


def bikes_of_deed(connection: Connection, deed_id: str) -> frozenset[str]:
    """The bikes whose drafts a deed has closed."""
    return frozenset(connection.execute(BIKES_OF_DEED, {"deed_id": deed_id}).scalars())


def need(connection: Connection, draft_id: str) -> Draft:
    """The draft with this id, open or closed."""
    row = connection.execute(select(draft).where(draft.c.id == draft_id)).one_or_none()
    if row is None:
        raise LibraryError("This entry is no longer in the library. Begin it again.")
    return _draft(row)


def _open(connection: Connection, kind: str, bike_id: str | None, subject: str | None) -> Draft | None:
    asked = {"kind": kind, "of_bike": bike_id or "", "about": subject or ""}
    row = connection.execute(OPEN_ONE, asked).one_or_none()
    return None if row is None else _draft(row)


def _of_deed(connection: Connection, deed_id: str, condition: ColumnElement[bool]) -> list[Draft]:
    ids = select(deed_draft.c.draft_id).where(deed_draft.c.deed_id == deed_id)
    query = select(draft).where(draft.c.id.in_(ids), condition).order_by(draft.c.id)
    return [_draft(row) for row in connection.execute(query)]


def _draft(row: Row[Any]) -> Draft:
    return Draft(**row._mapping)
