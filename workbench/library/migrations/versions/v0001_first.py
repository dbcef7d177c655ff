"""The first schema. New files are created as they should be and stamped, so there is nothing to step up from."""

revision = "0001"
down_revision = None


def upgrade() -> None:
    """No file is older than this."""
    raise NotImplementedError("no library is older than schema 0001")
