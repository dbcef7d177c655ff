"""The mounting a shock is in, its length, and the pressure of a negative chamber with a valve of its own.

With them how the rate of a coil spring is known, and the pairs of a progressive one; and of a check-in what bothers
the rider, what was measured, who overruled what, and what was closed how. The journal is found by bike and person.
"""

import re

from alembic import op

revision = "0002"
down_revision = "0001"

# Table, the column it stands behind, the new column. A table is built anew, so that it is as a new file has it.
ADDED = (
    ("unit", "exposed_nominal_mm", "eye_to_eye_mm REAL"),
    ("unit", "eye_to_eye_mm", "mounting TEXT"),
    ("sag_measurement", "second_kpa", "negative_kpa REAL"),
    ("spring", "label", "how TEXT"),
    ("spring", "how", "curve TEXT"),
    ("check_in", "person_id", "bothers TEXT"),
    ("check_in", "bothers", "last_done TEXT"),
    ("check_item", "override_reason", "reason TEXT"),
    ("check_item", "reason", "measured_mm REAL"),
    ("check_item", "measured_mm", "overruled_by TEXT"),
    ("check_item", "overruled_by", "overruled_at TEXT"),
    ("check_item", "overruled_at", "closed_at TEXT"),
    ("check_item", "closed_at", "closed_how TEXT"),
    ("bike", "created_at", "template_at TEXT"),
    ("unit", "second_maximum_kpa", "fill_order TEXT"),
    ("adjuster", "depends_on", "depends_how TEXT"),
    ("adjuster", "depends_how", "depends_position INTEGER"),
    ("range_count", "person_id", "push_felt TEXT"),
)


def upgrade() -> None:
    """Build each table anew with its further columns and move the rows over; the new columns start empty."""
    for table in dict.fromkeys(name for name, _, _ in ADDED):
        _build_anew(table, [(behind, column) for name, behind, column in ADDED if name == table])
    for column in ("bike_id", "person_id"):
        op.get_bind().exec_driver_sql(f"CREATE INDEX ix_deed_{column} ON deed ({column})")


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
