"""Reading: records by id or by equal values. No row object leaves this module."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, TypeVar, cast

from sqlalchemy import ColumnElement, Connection, func, select

from workbench.library.images import Image, Shape
from workbench.model.errors import LibraryError

T = TypeVar("T")
SLICE = 500


class Reader:
    """Reads records inside one transaction."""

    def __init__(self, connection: Connection, shapes: Mapping[str, Shape]) -> None:
        self._connection = connection
        self._shapes = shapes
        self._by_type = {shape.spec.record_type: shape for shape in shapes.values()}

    def get(self, record_type: type[T], row_id: str) -> T | None:
        """The record with this id, or None."""
        shape = self._shape(record_type)
        row = self._connection.execute(shape.row_of, {"is_id": row_id}).one_or_none()
        return None if row is None else cast(T, shape.record(row))

    def need(self, record_type: type[T], row_id: str) -> T:
        """The record with this id; a LibraryError if there is none."""
        record = self.get(record_type, row_id)
        if record is None:
            name = self._shape(record_type).table.name.replace("_", " ")
            raise LibraryError(f"This {name} is no longer in the library. Go back to the garage and open it again.")
        return record

    def find(
        self, record_type: type[T], *, order_by: str | Sequence[str] = (), limit: int | None = None, **equal: Any
    ) -> tuple[T, ...]:
        """All records whose fields equal the given values.

        None finds empty fields, a tuple or list any of its values; "-field" in `order_by` sorts downwards.
        """
        shape = self._shape(record_type)
        orders = (order_by,) if isinstance(order_by, str) else tuple(order_by)
        asked = {name: _plain(value) for name, value in equal.items()}
        kinds = tuple((name, _kind(value)) for name, value in asked.items())
        query = shape.finding(kinds, orders, has_limit=limit is not None)
        values = {f"is_{name}": value for name, value in asked.items() if value is not None}
        if [] in values.values():  # any of nothing: there is nothing to ask
            return ()
        if limit is not None:
            values["most"] = limit
        return tuple(cast(T, shape.record(row)) for row in self._connection.execute(query, values).all())

    def values(self, record_type: type, names: Sequence[str], **equal: Any) -> list[tuple[Any, ...]]:
        """Some fields, as stored, of all records whose fields equal the given values: for lists of thousands."""
        shape = self._shape(record_type)
        query = select(*(shape.table.c[name] for name in names)).where(*self._conditions(shape, equal))
        return [tuple(row) for row in self._connection.execute(query).all()]

    def count(self, record_type: type, **equal: Any) -> int:
        """How many records have fields equal to the given values."""
        shape = self._shape(record_type)
        query = select(func.count()).select_from(shape.table).where(*self._conditions(shape, equal))
        return self._connection.execute(query).scalar_one()

    def images(self, shape: Shape, row_ids: Sequence[str]) -> dict[str, Image]:
        """The present rows among these ids, as images."""
        found: dict[str, Image] = {}
        for start in range(0, len(row_ids), SLICE):
            some = list(row_ids[start : start + SLICE])
            for row in self._connection.execute(shape.rows_among, {"ids": some}):
                image = shape.image(row)
                found[image["id"]] = image
        return found

    def _shape(self, record_type: type) -> Shape:
        try:
            return self._by_type[record_type]
        except KeyError:
            raise TypeError(f"{record_type!r} has no table") from None

    def _conditions(self, shape: Shape, equal: Mapping[str, Any]) -> list[ColumnElement[bool]]:
        return [_condition(shape, name, value) for name, value in equal.items()]


def _plain(value: Any) -> Any:
    """Any of several values as a list; any of one is that one, which is asked for more quickly."""
    if not isinstance(value, tuple | list | set | frozenset):
        return value
    some = list(value)
    return some[0] if len(some) == 1 and some[0] is not None else some


def _kind(value: Any) -> str:
    if value is None:
        return "none"
    return "among" if isinstance(value, list) else "equal"


def _condition(shape: Shape, name: str, value: Any) -> ColumnElement[bool]:
    if name not in shape.names:
        raise TypeError(f"{shape.table.name} has no field {name}")
    column = shape.table.c[name]
    if value is None:
        return column.is_(None)
    if isinstance(value, tuple | list | set | frozenset):
        return column.in_(list(value))
    return cast("ColumnElement[bool]", column == value)
