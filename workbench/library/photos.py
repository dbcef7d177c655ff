"""Photos: files named by their SHA-256 beside the library. They are only ever added."""

from __future__ import annotations

import os
from hashlib import sha256
from pathlib import Path

from workbench.model.errors import LibraryUnreachable

FOLDER = "photos"


def photo(library: Path, name: str) -> bytes | None:
    """The content of a photo; None if its file is not there or is another one by now."""
    try:
        content = (library.parent / FOLDER / name).read_bytes()
    except OSError:
        return None
    return content if sha256(content).hexdigest() == name else None


def add_photo(library: Path, content: bytes) -> str:
    """Keeps a photo, whole or not at all, and gives its name."""
    name = sha256(content).hexdigest()
    target = library.parent / FOLDER / name
    if photo(library, name) is not None:
        return name
    part = target.with_name(f"{name}.part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with part.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, target)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise LibraryUnreachable(f"The photo could not be kept ({error.strerror}). Free some space.") from error
    return name
