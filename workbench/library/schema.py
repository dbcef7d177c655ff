"""How a record type becomes a table: columns, references and owners are read off the frozen dataclass."""

from __future__ import annotations

import dataclasses
import types
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from hashlib import sha256
from typing import Any, Literal, Union, cast, get_args, get_origin, get_type_hints

from sqlalchemy import (
    REAL,
    CheckConstraint,
    Column,
    Double,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
    column,
)
from sqlalchemy.types import TypeEngine

NAMING = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
}

COLUMN_TYPES: dict[type, TypeEngine[Any]] = {
    str: Text(),
    int: Integer(),
    bool: Integer(),
    float: Double().with_variant(REAL(), "sqlite"),
    bytes: LargeBinary(),
}


@dataclass(frozen=True, slots=True)
class Ref:
    """A field that holds the id of a row elsewhere; an owner takes the row along when it is deleted."""

    target: type | str
    owner: bool = False


@dataclass(frozen=True, slots=True)
class FieldSpec:
    """What one field may hold: the plain type, whether None is allowed, and the closed list of words, if any."""

    name: str
    kind: type
    nullable: bool
    words: tuple[str, ...] = ()
    enum: type[StrEnum] | None = None


@dataclass(frozen=True, slots=True)
class TableSpec:
    """Everything the gate needs to know about one record table."""

    record_type: type
    fields: tuple[FieldSpec, ...]
    refs: Mapping[str, Ref]
    bike: tuple[str, ...]
    final: tuple[str, ...] = ()


def new_metadata() -> MetaData:
    """An empty schema whose constraints get predictable names."""
    return MetaData(naming_convention=NAMING)


def record_table(
    metadata: MetaData,
    name: str,
    record_type: type,
    *,
    refs: Mapping[str, Ref] | None = None,
    checks: Mapping[str, Sequence[str]] | None = None,
    unique: Sequence[str | Sequence[str]] = (),
    indexes: Sequence[str | Sequence[str]] = (),
    bike: str | Sequence[str] = (),
    final: Sequence[str] = (),
) -> Table:
    """The table of a record type; `bike` names the field (or path of references) that leads to its bike.

    Once a `final` field is set, undo does not take it back.
    """
    refs, checks = dict(refs or {}), dict(checks or {})
    specs = tuple(_with_words(spec, checks.get(spec.name)) for spec in field_specs(record_type))
    path = (bike,) if isinstance(bike, str) else tuple(bike)
    _must_be_fields(name, specs, [*refs, *checks, *path[:1], *final])
    columns = [_column(metadata, spec, refs.get(spec.name)) for spec in specs]
    keys = [*refs, *(index for index in indexes if index not in refs)]
    return Table(
        name,
        metadata,
        *columns,
        Column("version", Integer, nullable=False),
        *_checks(specs),
        *(UniqueConstraint(*_names(fields)) for fields in unique),
        *(Index(None, *_names(fields)) for fields in keys),
        sqlite_strict=True,
        info={
            "record": record_type,
            "refs": refs,
            "bike": path,
            "spec": TableSpec(record_type, specs, refs, path, tuple(final)),
        },
    )


def field_specs(record_type: type) -> tuple[FieldSpec, ...]:
    """The fields of a frozen dataclass with `id: str`, as columns can hold them."""
    if not dataclasses.is_dataclass(record_type):
        raise TypeError(f"{record_type.__name__} is not a dataclass")
    hints = get_type_hints(record_type)
    specs = tuple(_field_spec(field.name, hints[field.name]) for field in dataclasses.fields(record_type))
    if not any(spec.name == "id" and spec.kind is str and not spec.nullable for spec in specs):
        raise TypeError(f"{record_type.__name__} needs a field `id: str`")
    if any(spec.name == "version" for spec in specs):
        raise TypeError(f"{record_type.__name__}.version would clash with the column of the same name")
    return specs


def spec_of(table: Table) -> TableSpec:
    """What `record_table` noted about this table."""
    return cast(TableSpec, table.info["spec"])


def records_of(metadata: MetaData) -> dict[type, Table]:
    """All record types of a schema with their tables."""
    return {table.info["record"]: table for table in metadata.tables.values() if "record" in table.info}


def _field_spec(name: str, hint: Any) -> FieldSpec:
    options = get_args(hint) if get_origin(hint) in (Union, types.UnionType) else (hint,)
    present = [option for option in options if option is not type(None)]
    nullable = len(present) < len(options)
    if len(present) == 1:
        kind = present[0]
        if get_origin(kind) is Literal and all(isinstance(word, str) for word in get_args(kind)):
            return FieldSpec(name, str, nullable, get_args(kind))
        if isinstance(kind, type) and issubclass(kind, StrEnum):
            return FieldSpec(name, str, nullable, tuple(member.value for member in kind), kind)
        if kind in COLUMN_TYPES:
            return FieldSpec(name, kind, nullable)
    raise TypeError(f"field {name}: {hint} cannot be a column")


def _with_words(spec: FieldSpec, words: Sequence[str] | None) -> FieldSpec:
    return spec if words is None else dataclasses.replace(spec, words=tuple(words))


def _column(metadata: MetaData, spec: FieldSpec, ref: Ref | None) -> Column[Any]:
    keys = [] if ref is None else [_foreign_key(metadata, ref)]
    return Column(spec.name, COLUMN_TYPES[spec.kind], *keys, nullable=spec.nullable, primary_key=spec.name == "id")


def _foreign_key(metadata: MetaData, ref: Ref) -> ForeignKey:
    return ForeignKey(f"{target_name(metadata, ref)}.id", deferrable=True, initially="DEFERRED")


def target_name(metadata: MetaData, ref: Ref) -> str:
    """The name of the table a reference points to."""
    if isinstance(ref.target, str):
        return ref.target
    table = records_of(metadata).get(ref.target)
    if table is None:
        raise TypeError(f"{ref.target.__name__} has no table yet; refer to it by the table's name")
    return table.name


def _checks(specs: Sequence[FieldSpec]) -> list[CheckConstraint]:
    flags = [CheckConstraint(column(spec.name).in_([0, 1]), name=spec.name) for spec in specs if spec.kind is bool]
    words = [CheckConstraint(column(spec.name).in_(spec.words), name=spec.name) for spec in specs if spec.words]
    return flags + words


def _names(fields: str | Sequence[str]) -> tuple[str, ...]:
    return (fields,) if isinstance(fields, str) else tuple(fields)


def _must_be_fields(table: str, specs: Sequence[FieldSpec], names: Sequence[str]) -> None:
    unknown = sorted(set(names) - {spec.name for spec in specs})
    if unknown:
        raise TypeError(f"table {table}: no such field: {', '.join(unknown)}")


def fingerprint(metadata: MetaData) -> str:
    """A short mark of all tables and columns: it changes when the schema does."""
    lines = [
        f"{table.name}.{column.name} {column.type} {column.nullable}"
        for table in sorted(metadata.tables.values(), key=lambda one: one.name)
        for column in table.columns
    ]
    return sha256("\n".join(lines).encode()).hexdigest()[:12]
