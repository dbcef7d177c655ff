"""The library's own tables beside the records: journal, drafts, settings and the schema number."""

from __future__ import annotations

from sqlalchemy import CheckConstraint, Column, ForeignKey, Index, Integer, Table, Text, func

from workbench.library.schema import new_metadata

own = new_metadata()

deed = Table(
    "deed",
    own,
    Column("number", Integer, primary_key=True),
    Column("id", Text, nullable=False, unique=True),
    Column("at", Text, nullable=False),
    Column("person_id", Text),
    Column("label", Text, nullable=False),
    Column("bike_id", Text),
    Column("station", Text, nullable=False),
    Column("state", Text, nullable=False),
    Column("stamp", Integer, nullable=False),
    Column("schema_number", Text, nullable=False),
    Column("start_id", Text, nullable=False),
    Column("undone_at", Text),
    CheckConstraint("state IN ('done', 'undone', 'dead')", name="state"),
    Index(None, "state", "number"),
    Index(None, "stamp"),
    Index(None, "bike_id"),
    Index(None, "person_id"),
    sqlite_strict=True,
)

deed_row = Table(
    "deed_row",
    own,
    Column("deed_id", Text, ForeignKey("deed.id", deferrable=True, initially="DEFERRED"), primary_key=True),
    Column("table_name", Text, primary_key=True),
    Column("row_id", Text, primary_key=True),
    Column("before", Text),
    Column("after", Text),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

draft = Table(
    "draft",
    own,
    Column("id", Text, primary_key=True),
    Column("kind", Text, nullable=False),
    Column("bike_id", Text),
    Column("subject", Text),
    Column("body", Text, nullable=False),
    Column("started_at", Text, nullable=False),
    Column("updated_at", Text, nullable=False),
    Column("closed_by", Text),
    sqlite_strict=True,
)

one_open_draft = Index(
    "uq_draft_open",
    draft.c.kind,
    func.coalesce(draft.c.bike_id, ""),
    func.coalesce(draft.c.subject, ""),
    unique=True,
    sqlite_where=draft.c.closed_by.is_(None),
)

deed_draft = Table(
    "deed_draft",
    own,
    Column("deed_id", Text, ForeignKey("deed.id", deferrable=True, initially="DEFERRED"), primary_key=True),
    Column("draft_id", Text, ForeignKey("draft.id", deferrable=True, initially="DEFERRED"), primary_key=True),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

setting = Table(
    "setting",
    own,
    Column("key", Text, primary_key=True),
    Column("value", Text, nullable=False),
    sqlite_strict=True,
)

schema_number = Table("alembic_version", own, Column("version_num", Text, primary_key=True), sqlite_strict=True)
