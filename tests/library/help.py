"""What the library's tests share: opening the garden, fingerprints of a folder, and a user without rights."""

from __future__ import annotations

import hashlib
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import mkdtemp

from tests.library.garden import garden
from workbench.library.library import Library, open_library

ROOT = Path(__file__).parents[2]
NOBODY = 65534
INSTANT = "2031-05-14T09:00:00+00:00"


def open_garden(path: Path | str, **options) -> Library:
    """The library of the small schema."""
    return open_library(path, garden, now=lambda: INSTANT, **options)


@contextmanager
def opened(path: Path | str, **options) -> Iterator[Library]:
    """The library, closed at the end."""
    library = open_garden(path, **options)
    try:
        yield library
    finally:
        library.close()


def prints(folder: Path) -> dict[str, str]:
    """A fingerprint of every file in the folder."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def crashed_copy(library: Library, folder: Path) -> Path:
    """The files as a power cut would leave them now."""
    folder.mkdir()
    for path in library.path.parent.glob(library.path.name + "*"):
        shutil.copyfile(path, folder / path.name)
    return folder / library.path.name


@contextmanager
def open_folder() -> Iterator[Path]:
    """A folder that a user without rights can reach, too."""
    folder = Path(mkdtemp())
    folder.chmod(0o755)
    try:
        yield folder
    finally:
        shutil.rmtree(folder)


@contextmanager
def without_rights() -> Iterator[None]:
    """Root passes every check, so it works as nobody in here."""
    if os.getuid() != 0:
        yield
        return
    os.setresuid(NOBODY, NOBODY, 0)
    try:
        yield
    finally:
        os.setresuid(0, 0, 0)
