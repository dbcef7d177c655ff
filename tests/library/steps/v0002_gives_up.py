"""A step that fails half-way, after the old table is gone."""

from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    op.execute("CREATE TABLE part_new (id TEXT NOT NULL PRIMARY KEY) STRICT")
    op.execute("INSERT INTO part_new (id) SELECT id FROM part")
    op.execute("DROP TABLE part")
    op.execute("INSERT INTO nowhere (id) VALUES ('x')")
