"""Between a record and what is stored: checked rows, records again, and JSON images for the journal."""

from __future__ import annotations

import base64
import json
import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from sqlalchemy import ColumnElement, Integer, Select, Table, bindparam, delete, insert, select

from workbench.library.schema import FieldSpec, TableSpec, spec_of
from workbench.model.errors import InputError, LibraryDamaged

LONGEST_TEXT = 20_000
LARGEST_WHOLE = 2**63 - 1

Image = dict[str, Any]
Equal = tuple[tuple[str, str], ...]  # field, and "none", "among" or "equal"


class Shape:
    """One record type with its table: turns records into rows and images, and back."""

    def __init__(self, table: Table) -> None:
        self.table = table
        self.spec: TableSpec = spec_of(table)
        self.names = tuple(spec.name for spec in self.spec.fields)
        self.columns = tuple(table.c[name] for name in self.names)
        # Built once: building a statement costs more than running it.
        among = table.c.id.in_(bindparam("ids", expanding=True))
        self.rows_among = select(*self.columns).where(among)
        self.row_of = select(*self.columns).where(table.c.id == bindparam("is_id"))
        self.deletion_among = delete(table).where(among)
        self.insertion = insert(table)
        self._findings: dict[tuple[Equal, tuple[str, ...], bool], Select[Any]] = {}
        converted = ((place, spec) for place, spec in enumerate(self.spec.fields) if spec.kind is bool or spec.enum)
        self._converted = tuple((place, spec.enum) for place, spec in converted)

    def finding(self, equal: Equal, order_by: tuple[str, ...], *, has_limit: bool) -> Select[Any]:
        """The statement that finds records by equal fields, "-field" sorts downwards; values come as ``is_<field>``."""
        key = (equal, order_by, has_limit)
        if key not in self._findings:
            query = select(*self.columns).where(*(self._condition(name, kind) for name, kind in equal))
            for name in order_by:
                column = self.table.c[name.removeprefix("-")]
                query = query.order_by(column.desc() if name.startswith("-") else column)
            query = query.order_by(self.table.c.id)
            self._findings[key] = query.limit(bindparam("most", type_=Integer)) if has_limit else query
        return self._findings[key]

    def _condition(self, name: str, kind: str) -> ColumnElement[bool]:
        if name not in self.names:
            raise TypeError(f"{self.table.name} has no field {name}")
        column = self.table.c[name]
        if kind == "none":
            return column.is_(None)
        if kind == "among":
            return column.in_(bindparam(f"is_{name}", expanding=True))
        return column == bindparam(f"is_{name}")

    def row(self, record: Any) -> Image:
        """The record's values, checked and normalised for storing."""
        return {spec.name: storable(spec, getattr(record, spec.name)) for spec in self.spec.fields}

    def record(self, values: Sequence[Any]) -> Any:
        """The record made of stored values in field order."""
        fields = list(values)
        try:
            for place, enum in self._converted:
                if fields[place] is not None:
                    fields[place] = enum(fields[place]) if enum else bool(fields[place])
            return self.spec.record_type(*fields)
        except ValueError as error:
            text = f"A stored {self.table.name.replace('_', ' ')} contradicts itself ({error}). Restore a backup."
            raise LibraryDamaged(text) from error

    def image(self, values: Sequence[Any]) -> Image:
        """The stored values in field order as an image."""
        return dict(zip(self.names, values, strict=True))

    def encode(self, image: Image | None) -> str | None:
        """The image as JSON text; None (no such row) stays None."""
        if image is None:
            return None
        plain = {name: base64.b64encode(v).decode() if isinstance(v, bytes) else v for name, v in image.items()}
        return json.dumps(plain, ensure_ascii=False, allow_nan=False, separators=(",", ":"))

    def decode(self, text: str | None) -> Image | None:
        """The image a JSON text holds."""
        if text is None:
            return None
        image: Image = json.loads(text)
        for spec in self.spec.fields:
            if spec.kind is bytes and image[spec.name] is not None:
                image[spec.name] = base64.b64decode(image[spec.name])
        return image


def shapes_of(tables: Iterable[Table]) -> Mapping[str, Shape]:
    """Shapes by table name, for all record tables among these."""
    return {table.name: Shape(table) for table in tables if "record" in table.info}


def storable(spec: FieldSpec, value: Any) -> Any:
    """The value as it is stored, or an error if the field cannot hold it."""
    if value is None:
        if not spec.nullable:
            raise TypeError(f"{spec.name} must not be None")
        return None
    if spec.kind is float:
        return _storable_float(spec.name, value)
    fits = type(value) is bool if spec.kind is bool else isinstance(value, spec.kind) and type(value) is not bool
    if not fits:
        raise TypeError(f"{spec.name} takes {spec.kind.__name__}, not {type(value).__name__}")
    if spec.kind is str:
        return _storable_word(spec, storable_text(spec.name, value, LONGEST_TEXT))
    if spec.kind is bytes:
        return value
    if abs(value) > LARGEST_WHOLE:
        raise InputError(spec.name, value, "a whole number of at most 18 digits")
    return int(value)


def storable_text(name: str, value: str, longest: int) -> str:
    """The text, unless it is over-long or holds something that is no character."""
    if len(value) > longest:
        raise InputError(name, value, f"at most {longest} characters", f"This text has {len(value)}.")
    if "\x00" in value or any("\ud800" <= character <= "\udfff" for character in value):
        raise InputError(name, value, "text of ordinary characters", "Type it again instead of pasting it.")
    return str(value)


def _storable_float(name: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise TypeError(f"{name} takes float, not {type(value).__name__}")
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise InputError(name, value, "a finite number")
    return number + 0.0  # SQLite keeps no negative zero


def _storable_word(spec: FieldSpec, text: str) -> str:
    if spec.words and text not in spec.words:
        raise InputError(spec.name, text, "one of: " + ", ".join(spec.words))
    return text
