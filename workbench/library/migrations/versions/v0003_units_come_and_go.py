"""When a fork or a shock was taken off its bike, and the tyre pressures read on a run."""

import re

from alembic import op

revision = "0003"
down_revision = "0002"

# Table, the column it stands behind, the new column. A table is built anew, so that it is as a new file has it.
ADDED = (
    ("unit", "note", "removed_at TEXT"),
    ("run", "bottom_outs_rear", "tyre_front_kpa REAL"),
    ("run", "tyre_front_kpa", "tyre_rear_kpa REAL"),
)


def upgrade() -> None:
    """Build each table anew with its further columns and move the rows over; the new columns start empty."""
    for table in dict.fromkeys(name for name, _, _ in ADDED):
        _build_anew(table, [(behind, column) for name, behind, column in ADDED if name == table])


def _build_anew(table: str, added: list[tuple[str, str]]) -> None:
    connection = op.get_bind()
    stored = "SELECT sql FROM sqlite_master WHERE tbl_name = ? AND type = ? AND sql IS NOT NULL"
    statement = connection.exec_driver_sql(stored, (table, "table")).scalar_one()
    indexes = connection.exec_driver_sql(stored, (table, "index")).scalars().all()
    for behind, column in added:
        statement, found = re.subn(rf"(?<=[\s,(])({behind} [A-Z ]+,)", rf"\1 {column},", statement, count=1)
        if found != 1:
            raise ValueError(f"the table {table} has no column {behind}")
    statement, found = re.subn(rf'^CREATE TABLE "?{table}"? \(', f"CREATE TABLE {table}_new (", statement)
    if found != 1:
        raise ValueError(f"the table {table} was not made by this program")
    names = [row[1] for row in connection.exec_driver_sql(f"PRAGMA table_info({table})")]
    columns = ", ".join(f'"{name}"' for name in names)
    for line in (
        statement,
        f"INSERT INTO {table}_new ({columns}) SELECT {columns} FROM {table}",
        f"DROP TABLE {table}",
        f"ALTER TABLE {table}_new RENAME TO {table}",
        *indexes,
    ):
        connection.exec_driver_sql(line)
