"""A picture taken in from its file: checked and kept beside the library, before anything points at it."""

from __future__ import annotations

from pathlib import Path

from workbench.actions.desk import Desk
from workbench.model.errors import ExchangeError
from workbench.model.pictures import LARGEST_BYTES, Picture, check_picture


def take_in(desk: Desk, path: Path) -> Picture:
    """Keep a picture's file; a WorkbenchError says why it cannot be."""
    try:
        with path.open("rb") as file:
            content = check_picture(path.name, file.read(LARGEST_BYTES + 1))
    except OSError as error:
        raise ExchangeError(f"{path.name} could not be read ({error.strerror}). Nothing was added.") from error
    return Picture(desk.add_photo(content), path.name)
