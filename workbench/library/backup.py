"""Copies of the library as finished files, whole or not at all."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from workbench.library.troubles import plain_words
from workbench.model.errors import LibraryDamaged, LibraryUnreachable


def copy_library(source: sqlite3.Connection, target: Path) -> Path:
    """Copies an open library to the target, checked and flushed before it gets its name."""
    unfinished = target.with_name(target.name + ".part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        unfinished.unlink(missing_ok=True)
        with plain_words(target):
            _copy(source, unfinished)
        _flush(unfinished)
        os.replace(unfinished, target)
        _flush_folder(target.parent)
    except OSError as error:
        text = f"The copy {target} could not be written ({error.strerror}). Free some space or choose another folder."
        raise LibraryUnreachable(text) from error
    finally:
        _remove(unfinished)
    return target


def free_name(folder: Path, stem: str, suffix: str) -> Path:
    """A file name in the folder that is not taken yet."""
    number = 1
    while True:
        path = folder / (f"{stem}{suffix}" if number == 1 else f"{stem} ({number}){suffix}")
        if not path.exists():
            return path
        number += 1


def _copy(source: sqlite3.Connection, unfinished: Path) -> None:
    with closing(sqlite3.connect(unfinished, isolation_level=None)) as copy:
        source.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE").fetchall()  # the copy inherits WAL, which would need a second file
        found = [row[0] for row in copy.execute("PRAGMA quick_check")]
    if found != ["ok"]:
        raise LibraryDamaged(f"The copy would be damaged ({found[0]}), so none was made. Restore an earlier backup.")


def _flush(path: Path) -> None:
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def _flush_folder(folder: Path) -> None:
    if os.name != "posix":  # only there can a folder be opened and flushed
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _remove(unfinished: Path) -> None:
    for tail in ("", "-journal", "-wal"):
        with suppress(OSError):  # the reason why it could not be written has been told already
            unfinished.with_name(unfinished.name + tail).unlink(missing_ok=True)
