"""A bundle: bikes with all that belongs to them as one JSON file, to take along and to bring in.

The format is our own and has a version. Records keep their ids and stand in a fixed order, so that the same content
gives the same file. With each record go short marks of how it looked before: they tell, at the other end, which of two
versions is the older one.
"""

from __future__ import annotations

import base64
import binascii
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any

from workbench.exchange.strict_json import read_json
from workbench.model.errors import ExchangeError

FORMAT = "trailbench bundle"
WHOLE_EXPORT = "trailbench library export"
VERSION = 1
LONGEST_TEXT = 20_000
LARGEST_PHOTO = 32_000_000
MOST_ROWS = 2_000_000
REQUIRED = object()  # the default of a field that has none

Row = dict[str, Any]
Earlier = Mapping[str, Mapping[str, tuple[str, ...]]]
_ID = re.compile(r"[0-9A-Za-z_-]{1,64}")
_MARK = re.compile(r"[0-9a-f]{16}")
_HASH = re.compile(r"[0-9a-f]{64}")
_HEAD = ("format", "version", "schema", "made_at", "title", "records", "earlier", "photos")


@dataclass(frozen=True, slots=True)
class FieldKind:
    """What one field may hold."""

    name: str
    kind: type
    is_nullable: bool
    words: tuple[str, ...] = ()
    default: Any = REQUIRED


@dataclass(frozen=True, slots=True)
class TableKind:
    """One kind of record: its fields, what they point at, what must be unique, and the field that merely counts."""

    name: str
    fields: tuple[FieldKind, ...]
    refs: Mapping[str, str] = field(default_factory=dict)
    unique: tuple[tuple[str, ...], ...] = ()
    number: str = ""  # counts up within its owner, so two garages may have given the same


Layout = Mapping[str, TableKind]


@dataclass(frozen=True, slots=True)
class Bundle:
    """What a bundle holds. ``earlier`` are the marks of earlier versions, by table and id."""

    schema: str
    made_at: str
    title: str
    records: Mapping[str, tuple[Row, ...]]
    earlier: Earlier = field(default_factory=dict)
    photos: Mapping[str, bytes] = field(default_factory=dict)

    def count(self) -> int:
        """How many records there are."""
        return sum(len(rows) for rows in self.records.values())


def mark_of(row: Mapping[str, Any], table: TableKind) -> str:
    """A short mark of a record's content. Fields at their default are left out, so that a new field changes none."""
    told = {one.name: row[one.name] for one in table.fields if one.name in row and row[one.name] != one.default}
    plain = json.dumps(told, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return sha256(plain.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def write_bundle(bundle: Bundle, layout: Layout) -> str:
    """The text of a bundle: tables by name, records by id, fields in their order, one record a line."""
    records = {name: _in_order(rows, layout[name]) for name, rows in sorted(bundle.records.items()) if rows}
    lines = ["{"]
    for name, value in (
        ("format", FORMAT),
        ("version", VERSION),
        ("schema", bundle.schema),
        ("made_at", bundle.made_at),
        ("title", bundle.title),
    ):
        lines.append(f" {_plain(name)}: {_plain(value)},")
    lines.append(' "records": {')
    lines.append(",\n".join(_table_text(name, rows) for name, rows in records.items()))
    lines.append(" },")
    earlier = {name: dict(sorted(marks.items())) for name, marks in sorted(bundle.earlier.items()) if marks}
    lines.append(f' "earlier": {_plain(earlier)},')
    photos = {name: base64.b64encode(content).decode() for name, content in sorted(bundle.photos.items())}
    lines.append(f' "photos": {_plain(photos)}')
    return "\n".join([*lines, "}"]) + "\n"


def read_bundle(content: bytes, layout: Layout, *, schema: str, what: str = "The file") -> Bundle:
    """Read a bundle; anything that is none, or is not wholly as it should be, is refused with a sentence."""
    found = read_json(content, what)
    _check_head(found, what, schema)
    records = _read_records(found["records"], layout, what)
    return Bundle(
        schema=found["schema"],
        made_at=_text(found["made_at"], what),
        title=_text(found["title"], what),
        records=records,
        earlier=_read_earlier(found["earlier"], records, what),
        photos=_read_photos(found["photos"], what),
    )


def _in_order(rows: tuple[Row, ...], table: TableKind) -> list[Row]:
    by_id = sorted(rows, key=lambda row: str(row["id"]))
    return [{one.name: row[one.name] for one in table.fields} for row in by_id]


def _table_text(name: str, rows: list[Row]) -> str:
    return f"  {_plain(name)}: [\n" + ",\n".join(f"   {_plain(row)}" for row in rows) + "\n  ]"


def _plain(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def _check_head(found: Any, what: str, schema: str) -> None:
    if isinstance(found, dict) and found.get("format") == WHOLE_EXPORT:
        raise ExchangeError(f"{what} is an export for scripts. To bring bikes in, use a file made on this sheet.")
    if not isinstance(found, dict) or found.get("format") != FORMAT:
        raise ExchangeError(f"{what} is no bundle of Trailbench. Nothing was taken from it; choose another.")
    version, number = found.get("version"), found.get("schema")
    if type(version) is not int or not isinstance(number, str) or not re.fullmatch(r"\d{4}", number):
        raise _broken(what, "its head cannot be read")
    if version > VERSION or number > schema:
        raise ExchangeError(f"{what} was made by a later Trailbench. Nothing was taken from it; use the later version.")
    if version < 1 or set(found) != set(_HEAD):
        raise _broken(what, "its head is not complete")


def _read_records(found: Any, layout: Layout, what: str) -> dict[str, tuple[Row, ...]]:
    if not isinstance(found, dict):
        raise _broken(what, "it holds no records")
    if unknown := sorted(set(found) - set(layout)):
        raise _broken(what, f"“{unknown[0][:40]}” is no kind of record")
    records: dict[str, tuple[Row, ...]] = {}
    for name, rows in sorted(found.items()):
        if not isinstance(rows, list) or len(rows) > MOST_ROWS:
            raise _broken(what, f"its list of {_noun(name)} cannot be read")
        records[name] = tuple(_read_row(row, layout[name], what) for row in rows)
        if len({row["id"] for row in records[name]}) < len(rows):
            raise _broken(what, f"one {_noun(name)} stands in it twice")
    return records


def _read_row(found: Any, table: TableKind, what: str) -> Row:
    if not isinstance(found, dict):
        raise _broken(what, f"one {_noun(table.name)} cannot be read")
    if unknown := sorted(set(found) - {one.name for one in table.fields}):
        raise _broken(what, f"a {_noun(table.name)} has no “{unknown[0][:40]}”")
    row = {}
    for one in table.fields:
        if one.name not in found and one.default is REQUIRED:
            raise _broken(what, f"a {_noun(table.name)} is without its {one.name}")
        row[one.name] = _read_value(found[one.name], one, table, what) if one.name in found else one.default
    keys = [row["id"], *(row[name] for name in table.refs if row[name] is not None)]
    if not all(isinstance(key, str) and _ID.fullmatch(key) for key in keys):
        raise _broken(what, f"a {_noun(table.name)} has an unusable key")
    return row


def _read_value(value: Any, one: FieldKind, table: TableKind, what: str) -> Any:
    if value is None and one.is_nullable:
        return None
    if one.kind is float and type(value) in (int, float):
        return float(value) + 0.0
    if one.kind is str and isinstance(value, str) and _is_storable(value) and (not one.words or value in one.words):
        return value
    if one.kind in (int, bool) and type(value) is one.kind:
        return value
    raise _broken(what, f"{one.name} of a {_noun(table.name)} holds {_shown(value)}")


def _is_storable(text: str) -> bool:
    is_clean = "\x00" not in text and not any("\ud800" <= letter <= "\udfff" for letter in text)
    return is_clean and len(text) <= LONGEST_TEXT


def _read_earlier(found: Any, records: Mapping[str, tuple[Row, ...]], what: str) -> Earlier:
    earlier: dict[str, dict[str, tuple[str, ...]]] = {}
    if not isinstance(found, dict) or not set(found) <= set(records):
        raise _broken(what, "its marks cannot be read")
    for name, marks in found.items():
        if not isinstance(marks, dict) or not all(_are_marks(listed) for listed in marks.values()):
            raise _broken(what, "its marks cannot be read")
        known = {row["id"] for row in records[name]}
        if not set(marks) <= known:
            raise _broken(what, "it has marks of records that are not in it")
        earlier[name] = {key: tuple(listed) for key, listed in marks.items()}
    return earlier


def _are_marks(listed: Any) -> bool:
    return isinstance(listed, list) and all(isinstance(one, str) and _MARK.fullmatch(one) for one in listed)


def _read_photos(found: Any, what: str) -> dict[str, bytes]:
    if not isinstance(found, dict):
        raise _broken(what, "its photos cannot be read")
    photos = {}
    for name, text in found.items():
        if not _HASH.fullmatch(name) or not isinstance(text, str) or len(text) > LARGEST_PHOTO * 4 // 3 + 4:
            raise _broken(what, "a photo in it cannot be read")
        try:
            photos[name] = base64.b64decode(text, validate=True)
        except (binascii.Error, ValueError):
            raise _broken(what, "a photo in it cannot be read") from None
        if sha256(photos[name]).hexdigest() != name:
            raise _broken(what, "a photo in it is damaged")
    return photos


def _text(value: Any, what: str) -> str:
    if not isinstance(value, str) or not _is_storable(value):
        raise _broken(what, "its head cannot be read")
    return value


def _broken(what: str, why: str) -> ExchangeError:
    return ExchangeError(f"{what} is not as it was exported: {why}. Nothing was taken from it.")


def _noun(table: str) -> str:
    return "log line" if table == "on_bike" else table.replace("_", " ")


def _shown(value: Any) -> str:
    if isinstance(value, dict | list):
        return "several values"
    text = json.dumps(value, ensure_ascii=True)
    return text if len(text) <= 40 else f"{text[:37]}..."
