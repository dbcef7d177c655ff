"""The journal: each deed with the rows it touched, so that it can be undone, redone and looked up."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, TypeVar

from sqlalchemy import Connection, Row, bindparam, func, insert, select, update

from workbench.library import drafts
from workbench.library.belonging import bikes_of
from workbench.library.gate import DeedHead, Gate, Note, RowKey
from workbench.library.own_tables import deed, deed_draft, deed_row
from workbench.library.pen import Pen
from workbench.library.reader import SLICE, Reader
from workbench.model.errors import UndoRefused

if TYPE_CHECKING:
    from workbench.library.library import Library

T = TypeVar("T")
DEEPEST_UNDO = 100

LATEST_STAMP = select(func.max(deed.c.stamp))
UNDONE_COUNT = select(func.count()).where(deed.c.state == "undone")
UNDONE_ARE_DEAD = update(deed).where(deed.c.state == "undone").values(state="dead")
LAST_DONE = select(deed).where(deed.c.state == "done").order_by(deed.c.number.desc()).limit(1)
FIRST_UNDONE = select(deed).where(deed.c.state == "undone").order_by(deed.c.number).limit(1)
ROWS_OF_DEED = select(deed_row).where(deed_row.c.deed_id == bindparam("deed_id"))


@dataclass(frozen=True, slots=True)
class Step:
    """One deed as the Edit menu shows it."""

    id: str
    label: str
    bike_id: str | None
    station: str
    at: str
    person_id: str | None
    from_earlier_start: bool


@dataclass(frozen=True, slots=True)
class Touched:
    """What a deed, an undo or a draft has changed, for those who show it."""

    tables: frozenset[str] = frozenset()
    bikes: frozenset[str] = frozenset()
    drafts: bool = False


def perform(
    library: Library, label: str, work: Callable[[Gate], T], *, bike_id: str | None, station: str
) -> tuple[T, Touched]:
    """Does the work as one deed: all of it is kept, or nothing."""
    with library.writing() as pen:
        person_id, stamp = library.person_id(pen.connection), _next_stamp(pen)
        head = DeedHead(library.new_id(), library.now(), person_id, stamp, library.new_id)
        gate = Gate(pen, library.shapes, head)
        result = work(gate)
        rows = gate.notes.changed()
        if not rows and not gate.notes.drafts:
            pen.abandon()
            return result, Touched()
        _write_deed(library, pen, head, label, bike_id, station)
        _write_rows(library, pen, head.deed_id, rows, gate.notes.drafts)
        return result, _touched(library, pen, head.deed_id, bike_id, rows, bool(gate.notes.drafts))


def undo_step(library: Library) -> Step | None:
    """The deed that undo would take back."""
    with library.reading() as connection:
        row = _last_done(library, connection)
        return None if row is None else _step(library, row)


def redo_step(library: Library) -> Step | None:
    """The deed that redo would do again."""
    with library.reading() as connection:
        row = _first_undone(library, connection)
        return None if row is None else _step(library, row)


def undo(library: Library) -> tuple[Step, Touched] | None:
    """Takes the last deed back; None if there is none to take back."""
    with library.writing() as pen:
        row = _last_done(library, pen.connection)
        return None if row is None else _take_back(library, pen, row)


def undo_after(library: Library, number: int) -> tuple[tuple[Step, ...], Touched]:
    """Takes back every deed after the one of this number: all of them, or none if one of them refuses."""
    steps: list[Step] = []
    touched = Touched()
    with library.writing() as pen:
        while (last := pen.connection.execute(LAST_DONE).one_or_none()) is not None and last.number > number:
            row = _last_done(library, pen.connection)
            if row is None:
                raise UndoRefused(
                    f"“{last.label}” cannot be undone: it is from before an update, or undo reaches no further back. "
                    "Nothing was changed."
                )
            step, more = _take_back(library, pen, row)
            steps.append(step)
            touched = Touched(touched.tables | more.tables, touched.bikes | more.bikes, touched.drafts or more.drafts)
    return tuple(steps), touched


def _take_back(library: Library, pen: Pen, row: Row[Any]) -> tuple[Step, Touched]:
    notes = _read_rows(library, pen.connection, row.id)
    _restore(library, pen, {key: Note(note.after, note.before) for key, note in notes.items()}, row.label)
    change = {"state": "undone", "stamp": _next_stamp(pen), "undone_at": library.now()}
    pen.write("journal", update(deed).where(deed.c.id == row.id).values(**change))
    reopened = drafts.reopen(pen, row.id)
    return _step(library, row), _touched(library, pen, row.id, row.bike_id, notes, reopened)


def redo(library: Library) -> tuple[Step, Touched] | None:
    """Does the last undone deed again; None if there is none."""
    with library.writing() as pen:
        row = _first_undone(library, pen.connection)
        if row is None:
            return None
        notes = _read_rows(library, pen.connection, row.id)
        _restore(library, pen, notes, row.label)
        change = {"state": "done", "stamp": _next_stamp(pen), "undone_at": None}
        pen.write("journal", update(deed).where(deed.c.id == row.id).values(**change))
        closed = drafts.close_again(pen, row.id)
        return _step(library, row), _touched(library, pen, row.id, row.bike_id, notes, closed)


def _next_stamp(pen: Pen) -> int:
    """A number no earlier step has: row versions rise with it and never fall."""
    latest: int | None = pen.connection.execute(LATEST_STAMP).scalar_one()
    return (latest or 0) + 1


def _write_deed(library: Library, pen: Pen, head: DeedHead, label: str, bike_id: str | None, station: str) -> None:
    pen.write("journal", UNDONE_ARE_DEAD)
    row = {
        "id": head.deed_id,
        "at": head.now,
        "person_id": head.person_id,
        "label": label,
        "bike_id": bike_id,
        "station": station,
        "state": "done",
        "stamp": head.stamp,
        "schema_number": library.schema_number,
        "start_id": library.start_id,
    }
    pen.insert("journal", insert(deed), [row])


def _write_rows(library: Library, pen: Pen, deed_id: str, rows: dict[RowKey, Note], closed: Iterable[str]) -> None:
    images = []
    for (table, row_id), note in rows.items():
        shape = library.shapes[table]
        before, after = shape.encode(note.before), shape.encode(note.after)
        key = {"deed_id": deed_id, "table_name": table, "row_id": row_id}
        images.append({**key, "before": before, "after": after})
    pen.insert("journal", insert(deed_row), images)
    pen.insert("journal", insert(deed_draft), [{"deed_id": deed_id, "draft_id": draft_id} for draft_id in closed])


def _last_done(library: Library, connection: Connection) -> Row[Any] | None:
    """The newest deed in force; none if it is older than the present schema or the menu is at its end."""
    if connection.execute(UNDONE_COUNT).scalar_one() >= DEEPEST_UNDO:
        return None
    return _of_this_schema(library, connection.execute(LAST_DONE).one_or_none())


def _first_undone(library: Library, connection: Connection) -> Row[Any] | None:
    return _of_this_schema(library, connection.execute(FIRST_UNDONE).one_or_none())


def _of_this_schema(library: Library, row: Row[Any] | None) -> Row[Any] | None:
    return row if row is not None and row.schema_number == library.schema_number else None


def _step(library: Library, row: Row[Any]) -> Step:
    earlier = row.start_id != library.start_id
    return Step(row.id, row.label, row.bike_id, row.station, row.at, row.person_id, earlier)


def _read_rows(library: Library, connection: Connection, deed_id: str) -> dict[RowKey, Note]:
    notes = {}
    for row in connection.execute(ROWS_OF_DEED, {"deed_id": deed_id}):
        shape = library.shapes[row.table_name]
        notes[row.table_name, row.row_id] = Note(shape.decode(row.before), shape.decode(row.after))
    return notes


def _restore(library: Library, pen: Pen, notes: dict[RowKey, Note], label: str) -> None:
    """Deletes all touched rows, then inserts the wanted ones, if every row is as expected (`before`)."""
    stamp, reader = _next_stamp(pen), Reader(pen.connection, library.shapes)
    by_table: dict[str, dict[str, Note]] = {}
    for (table, row_id), note in notes.items():
        by_table.setdefault(table, {})[row_id] = note
    present = {table: reader.images(library.shapes[table], list(rows)) for table, rows in by_table.items()}
    for table, rows in by_table.items():
        if any(present[table].get(row_id) != note.before for row_id, note in rows.items()):
            raise UndoRefused(
                f"“{label}” cannot be undone or redone: a {table.replace('_', ' ')} it touched has changed since. "
                "Nothing was changed; correct the record by hand."
            )
    finals = {table: library.shapes[table].spec.final for table in by_table}
    if any(_unseals(finals[table], note) for (table, _), note in notes.items()):
        raise UndoRefused(f"“{label}” cannot be undone: what it has shown has been seen. Nothing was changed.")
    for table, found in present.items():
        _delete(library, pen, table, list(found))
    for table, rows in by_table.items():
        wanted = [{**note.after, "version": stamp} for note in rows.values() if note.after is not None]
        pen.insert("records", library.shapes[table].insertion, wanted)


def _unseals(final: tuple[str, ...], note: Note) -> bool:
    """Tell whether going from one image to the other takes back a field that is set once and for all."""
    if note.before is None or note.after is None:
        return False
    return any(note.before[name] is not None and note.after[name] is None for name in final)


def _delete(library: Library, pen: Pen, table_name: str, row_ids: list[str]) -> None:
    for start in range(0, len(row_ids), SLICE):
        pen.write("records", library.shapes[table_name].deletion_among, {"ids": row_ids[start : start + SLICE]})


def _touched(
    library: Library, pen: Pen, deed_id: str, bike_id: str | None, rows: dict[RowKey, Note], draft_moved: bool
) -> Touched:
    reader = Reader(pen.connection, library.shapes)
    bikes = bikes_of(reader, library.shapes, rows) | drafts.bikes_of_deed(pen.connection, deed_id)
    if bike_id is not None:
        bikes |= {bike_id}
    return Touched(frozenset(table for table, _ in rows), bikes, draft_moved)
