"""Keys for new records."""

from __future__ import annotations

import uuid


def new_id() -> str:
    """Give a key that no other library will give."""
    return str(uuid.uuid4())
