"""Copies of the library as finished files, whole or not at all."""

from __future__ import annotations

import os
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from pathlib import Path
from urllib.parse import quote

from workbench.library.troubles import plain_words
from workbench.model.errors import LibraryDamaged, LibraryUnreachable


def copy_library(
    source: sqlite3.Connection, target: Path, *, damage: Callable[[Path], str] = lambda path: damage_of(path)
) -> Path:
    """Copies an open library to the target; the copy is opened anew and checked before it gets its name."""
    unfinished = copy_unchecked(source, target)
    try:
        return finish_copy(unfinished, target, damage(unfinished))
    finally:
        remove_unfinished(unfinished)


def copy_unchecked(source: sqlite3.Connection, target: Path) -> Path:
    """Copies an open library beside the target, under a name that is no backup's; if that fails, nothing is left."""
    unfinished = target.with_name(target.name + ".part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        unfinished.unlink(missing_ok=True)
        with plain_words(target):
            _copy(source, unfinished)
    except BaseException as error:
        remove_unfinished(unfinished)
        if isinstance(error, OSError):
            raise _not_written(target, error) from error
        raise
    return unfinished


def finish_copy(unfinished: Path, target: Path, found: str) -> Path:
    """Gives a copy its name after it was checked, unless something was found wrong in it; then it is let go."""
    try:
        if found:
            raise LibraryDamaged(f"The copy would be damaged ({found}), so none was made. Restore an earlier backup.")
        _name(unfinished, target)
    except OSError as error:
        raise _not_written(target, error) from error
    finally:
        remove_unfinished(unfinished)
    return target


def copy_file(source: Path, target: Path) -> Path:
    """Copies a file that nobody has open to the target, whole or not at all."""
    unfinished = target.with_name(target.name + ".part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(source, unfinished)
        _name(unfinished, target)
    except OSError as error:
        raise _not_written(target, error) from error
    finally:
        remove_unfinished(unfinished)
    return target


def damage_of(path: Path, *, with_references: bool = False) -> str:
    """What is wrong inside a finished library file that nobody has open; empty when it is sound."""
    try:
        with closing(open_finished(path)) as connection:
            found = [str(row[0]) for row in connection.execute("PRAGMA integrity_check(5)")]
            if found != ["ok"]:
                return found[0]
            if with_references and connection.execute("PRAGMA foreign_key_check").fetchone() is not None:
                return "it contradicts itself"
    except sqlite3.Error as error:
        return str(error)
    return ""


def open_finished(path: Path) -> sqlite3.Connection:
    """A finished library file, to read only and without any trace beside it."""
    address = f"file:{quote(str(path))}?mode=ro&immutable=1"
    connection = sqlite3.connect(address, uri=True, timeout=0, isolation_level=None)
    connection.execute("PRAGMA trusted_schema = OFF")
    return connection


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


def _name(unfinished: Path, target: Path) -> None:
    _flush(unfinished)
    os.replace(unfinished, target)
    flush_folder(target.parent)


def _not_written(target: Path, error: OSError) -> LibraryUnreachable:
    text = f"The copy {target} could not be written ({error.strerror}). Free some space or choose another folder."
    return LibraryUnreachable(text)


def _flush(path: Path) -> None:
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def flush_folder(folder: Path) -> None:
    """Makes the names in a folder last."""
    if os.name != "posix":  # only there can a folder be opened and flushed
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def remove_unfinished(unfinished: Path) -> None:
    """Lets a copy go that has no name of its own yet, with what lies beside it."""
    for tail in ("", "-journal", "-wal"):
        with suppress(OSError):  # the reason why it could not be written has been told already
            unfinished.with_name(unfinished.name + tail).unlink(missing_ok=True)
