"""A step that loses the rows others refer to."""

from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    op.execute("DELETE FROM part")
