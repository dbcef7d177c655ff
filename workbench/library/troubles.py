"""What the database reports, in plain words."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DBAPIError

from workbench.model.errors import LibraryDamaged, LibraryError, LibraryLocked, LibraryUnreachable

_ALREADY_OPEN = "{} is already open in another Trailbench. Close it there and try again."
_SENTENCES: dict[int, tuple[type[LibraryError], str]] = {
    sqlite3.SQLITE_BUSY: (LibraryLocked, _ALREADY_OPEN),
    sqlite3.SQLITE_LOCKED: (LibraryLocked, _ALREADY_OPEN),
    sqlite3.SQLITE_READONLY: (
        LibraryUnreachable,
        "{} is read-only, so nothing can be kept there. Copy it to a folder you may write to.",
    ),
    sqlite3.SQLITE_PERM: (
        LibraryUnreachable,
        "{} may not be used by you. Check the rights of the file and its folder.",
    ),
    sqlite3.SQLITE_IOERR: (
        LibraryUnreachable,
        "{} could not be read or written. Nothing was changed; check the disk and its free space, then try again.",
    ),
    sqlite3.SQLITE_FULL: (
        LibraryUnreachable,
        "The disk holding {} is full. Nothing was changed; free some space, then try again.",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        LibraryUnreachable,
        "{} cannot be opened. Check that the folder exists and that you may write to it.",
    ),
    sqlite3.SQLITE_CORRUPT: (LibraryDamaged, "{} is damaged. Nothing was changed; restore a backup."),
    sqlite3.SQLITE_NOTADB: (LibraryDamaged, "{} is damaged. Nothing was changed; restore a backup."),
    sqlite3.SQLITE_CONSTRAINT: (
        LibraryError,
        "The step does not fit what {} already holds, so nothing was changed.",
    ),
}


def already_open(path: Path) -> str:
    """What is said when another process holds the file."""
    return _ALREADY_OPEN.format(path)


def in_plain_words(error: BaseException | None, path: Path) -> LibraryError | None:
    """The library error for a database error; None if it is no trouble of the file but a mistake of ours."""
    code = getattr(error, "sqlite_errorcode", None)
    found = _SENTENCES.get(code & 0xFF) if isinstance(code, int) else None
    if found is None:
        return None
    kind, sentence = found
    return kind(sentence.format(path))


@contextmanager
def plain_words(path: Path) -> Iterator[None]:
    """Turns trouble with the file into a LibraryError; everything else passes."""
    try:
        yield
    except DBAPIError as error:
        told = in_plain_words(error.orig, path)
        if told is None:
            raise
        raise told from error
    except sqlite3.Error as error:
        told = in_plain_words(error, path)
        if told is None:
            raise
        raise told from error
