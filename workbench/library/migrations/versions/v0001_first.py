"""The first schema. New files are created as they should be and stamped, so there is nothing to step up from."""

revision = "0001"
down_revision = None


def upgrade() -> None:
    """No file is older than this."""
    raise NotImplementedError("no library is older than schema 0001")


def downgrade() -> None:
    """There is no way back; a backup is taken before each upgrade."""
    raise NotImplementedError("restore the backup instead")
