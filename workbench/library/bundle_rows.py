"""Rows for taking along and bringing in: all that belongs to some bikes, and every version a row ever had."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from sqlalchemy import UniqueConstraint, select

from workbench.library.images import Image, Shape
from workbench.library.own_tables import deed_row
from workbench.library.reader import SLICE, Reader
from workbench.library.schema import target_name

Rows = dict[str, dict[str, Image]]


def shapes_in(reader: Reader) -> Mapping[str, Shape]:
    """The kinds of records there are, by the name of their table."""
    return reader._shapes


def refs_of(shape: Shape) -> dict[str, str]:
    """Which fields hold the id of a row elsewhere, and of which table."""
    return {name: target_name(shape.table.metadata, ref) for name, ref in shape.spec.refs.items()}


def unique_of(shape: Shape) -> tuple[tuple[str, ...], ...]:
    """The groups of fields that no two rows may share, besides the id."""
    groups = (one for one in shape.table.constraints if isinstance(one, UniqueConstraint))
    return tuple(sorted(tuple(column.name for column in one.columns) for one in groups))


def all_rows(reader: Reader) -> Rows:
    """Every record of the library."""
    return {name: _images(reader, shape) for name, shape in shapes_in(reader).items()}


def rows_of_bikes(reader: Reader, bike_ids: Sequence[str]) -> Rows:
    """All that belongs to some bikes, and what it points at: people, courses, pumps."""
    found: Rows = {"bike": reader.images(shapes_in(reader)["bike"], bike_ids)}
    waiting = {name: shape for name, shape in shapes_in(reader).items() if shape.spec.bike and name != "bike"}
    while waiting:
        ready = {name: refs_of(shape)[shape.spec.bike[0]] for name, shape in waiting.items()}
        ready = {name: target for name, target in ready.items() if target in found}
        if not ready:
            break
        for name, target in ready.items():
            shape = waiting.pop(name)
            found[name] = _images(reader, shape, shape.spec.bike[0], found[target])
    _follow_references(reader, found)
    return found


def _follow_references(reader: Reader, found: Rows) -> None:
    """Adds what the rows point at, until nothing is missing."""
    while True:
        missing: dict[str, set[str]] = {}
        for name, rows in found.items():
            for field, target in refs_of(shapes_in(reader)[name]).items():
                wanted = {row[field] for row in rows.values() if row[field] is not None}
                missing.setdefault(target, set()).update(wanted - found.get(target, {}).keys())
        if not any(missing.values()):
            return
        before = sum(map(len, found.values()))
        for target, ids in missing.items():
            if ids:
                more = reader.images(shapes_in(reader)[target], sorted(ids))
                found[target] = found.get(target, {}) | more
        if sum(map(len, found.values())) == before:
            return


def rows_with(reader: Reader, table: str, ids: Sequence[str]) -> dict[str, Image]:
    """The rows of a table among some ids."""
    return reader.images(shapes_in(reader)[table], ids)


def fellows_of(reader: Reader, table: str, group: tuple[str, ...], rows: Iterable[Image]) -> dict[str, Image]:
    """For each row the one here that has the same values in a group of unique fields, by the id of the row given."""
    wanted = {tuple(row[name] for name in group): row["id"] for row in rows}
    shape = shapes_in(reader)[table]
    found = {}
    for image in _images(reader, shape, group[0], {key[0] for key in wanted}).values():
        row_id = wanted.get(tuple(image[name] for name in group))
        if row_id is not None and row_id != image["id"]:
            found[row_id] = image
    return found


def versions_of(reader: Reader, is_wanted: Callable[[str, str], bool]) -> Iterator[tuple[str, Image]]:
    """Every version the wanted rows ever had, with their table, in no order; versions of older schemas are left out."""
    query = select(deed_row.c.table_name, deed_row.c.row_id, deed_row.c.before, deed_row.c.after)
    for table, row_id, *texts in reader._connection.execute(query):
        shape = shapes_in(reader).get(table)
        if shape is None or not is_wanted(table, row_id):
            continue
        for text in texts:
            try:
                image = shape.decode(text)
            except (KeyError, ValueError):
                continue
            if image is not None:
                yield table, image


def _images(reader: Reader, shape: Shape, field: str = "", among: Iterable[Any] | None = None) -> dict[str, Image]:
    query = select(*shape.columns)
    if among is None:
        return {image["id"]: image for image in map(shape.image, reader._connection.execute(query))}
    values = sorted(among)
    found: dict[str, Image] = {}
    for start in range(0, len(values), SLICE):
        some = query.where(shape.table.c[field].in_(values[start : start + SLICE]))
        found |= {image["id"]: image for image in map(shape.image, reader._connection.execute(some))}
    return found
