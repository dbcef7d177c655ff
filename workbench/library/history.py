"""The journal as a list to look through: pages of deeds, the newest first, and what each of them changed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from sqlalchemy import ColumnElement, LargeBinary, Row, and_, cast, func, or_, select

from workbench.library.own_tables import deed, deed_row
from workbench.library.reader import SLICE

if TYPE_CHECKING:
    from workbench.library.images import Image
    from workbench.library.library import Library

DONE = "done"
PAGE = 50


@dataclass(frozen=True, slots=True)
class Deed:
    """One deed as it stands in the journal. ``number`` rises from the first deed to the last."""

    number: int
    id: str
    at: str
    person_id: str | None
    label: str
    bike_id: str | None
    station: str
    is_done: bool  # still in force, not undone
    is_of_this_schema: bool  # what was done before an update can be read but not undone


@dataclass(frozen=True, slots=True)
class Search:
    """What to look for; an empty field finds everything. ``bike_id`` and ``person_id`` of None are not asked for."""

    bike_id: str | None = None
    person_id: str | None = None
    text: str = ""


@dataclass(frozen=True, slots=True)
class RowChange:
    """One row a deed touched: as it was before and after, None where there was none."""

    table: str
    row_id: str
    before: dict[str, Any] | None
    after: dict[str, Any] | None


class History:
    """The journal of one open library, to read."""

    def __init__(self, library: Library) -> None:
        self._library = library

    def page(self, search: Search, *, below: int | None = None, most: int = PAGE) -> tuple[Deed, ...]:
        """At most so many deeds, the newest first; ``below`` a number goes on where an earlier page ended."""
        query = select(deed).where(*_conditions(search)).order_by(deed.c.number.desc()).limit(most)
        if below is not None:
            query = query.where(deed.c.number < below)
        with self._library.reading() as connection:
            return tuple(self._deed(row) for row in connection.execute(query))

    def changes(self, deed_id: str, *, most: int = SLICE) -> tuple[RowChange, ...]:
        """What a deed changed, at most so many rows."""
        query = select(deed_row).where(deed_row.c.deed_id == deed_id).limit(most)
        with self._library.reading() as connection:
            return tuple(
                RowChange(row.table_name, row.row_id, self._image(row, "before"), self._image(row, "after"))
                for row in connection.execute(query)
            )

    def later_than(self, number: int) -> int:
        """How many deeds in force came after one."""
        query = select(func.count()).where(deed.c.state == DONE, deed.c.number > number)
        with self._library.reading() as connection:
            return connection.execute(query).scalar_one()

    def who_and_what(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The people and the bikes that occur in the journal, by id."""
        with self._library.reading() as connection:
            people, bikes = (
                connection.execute(select(column).where(column.is_not(None)).distinct()).scalars().all()
                for column in (deed.c.person_id, deed.c.bike_id)
            )
        return tuple(sorted(people)), tuple(sorted(bikes))

    def _deed(self, row: Row[Any]) -> Deed:
        return Deed(
            row.number,
            row.id,
            row.at,
            row.person_id,
            row.label,
            row.bike_id,
            row.station,
            row.state == DONE,
            row.schema_number == self._library.schema_number,
        )

    def _image(self, row: Row[Any], side: str) -> Image | None:
        shape = self._library.shapes.get(row.table_name)
        text = getattr(row, side)
        if shape is None or text is None:
            return None
        try:
            return shape.decode(text)
        except (KeyError, ValueError):  # written under an earlier schema
            return None


def _conditions(search: Search) -> list[ColumnElement[bool]]:
    found: list[ColumnElement[bool]] = []
    if search.bike_id is not None:
        found.append(deed.c.bike_id == search.bike_id)
    if search.person_id is not None:
        found.append(deed.c.person_id == search.person_id)
    found += [_holds(word) for word in search.text.split()]
    return found


def _holds(word: str) -> ColumnElement[bool]:
    """Whether a label holds the word, capitals and small letters alike in every script.

    SQLite knows the capitals of plain letters only, and quickly; the others are left to Python, which is asked about
    labels with such letters alone.
    """
    label, wanted = deed.c.label, word.casefold()
    has_such = func.length(label) != func.length(cast(label, LargeBinary))  # characters, and bytes
    folded = and_(has_such, func.instr(func.fold(label), wanted) > 0)
    return or_(label.contains(wanted, autoescape=True), folded) if wanted.isascii() else folded
