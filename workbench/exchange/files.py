"""Files on the disk: read with a limit, written as a whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path
from tempfile import NamedTemporaryFile

from workbench.model.errors import ExchangeError


def read_whole(source: Path, *, most_bytes: int) -> bytes:
    """The content of a file, unless it is larger than anything of ours."""
    try:
        with source.open("rb") as file:
            content = file.read(most_bytes + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is no path"
        raise ExchangeError(f"{source} cannot be read ({reason}). Check the path and your rights.") from error
    if len(content) > most_bytes:
        raise ExchangeError(f"{source} is larger than {most_bytes // 1_000_000} MB and was not read.")
    return content


def write_whole(target: Path, text: str) -> None:
    """Write a text file as a whole or not at all."""
    part: Path | None = None
    try:
        with NamedTemporaryFile("w", encoding="utf-8", dir=target.parent, delete=False) as file:
            part = Path(file.name)
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, target)
    except OSError as error:
        if part is not None:
            part.unlink(missing_ok=True)
        raise ExchangeError(f"{target} cannot be written ({error.strerror}). Choose another place.") from error
