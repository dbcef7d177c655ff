"""Opening the file: what it is comes first, pragmas only after that, so a refused file stays as it was."""

from __future__ import annotations

import os
import shutil
import sqlite3
import stat
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from urllib.parse import quote

try:
    import fcntl
except ImportError:
    fcntl = None  # type: ignore[assignment]

from workbench.library.troubles import already_open, plain_words
from workbench.model.errors import (
    LibraryDamaged,
    LibraryLocked,
    LibraryNewer,
    LibraryUnreachable,
    NotALibrary,
)

APPLICATION_ID = 0x5472426E  # "TrBn"
MAGIC = b"SQLite format 3\x00"
PRAGMAS = (
    "busy_timeout = 0",
    "journal_mode = WAL",
    "synchronous = FULL",
    "foreign_keys = ON",
    "trusted_schema = OFF",
    "cell_size_check = ON",
    "mmap_size = 0",
)
SIDE_FILES = ("-wal", "-journal")
LOCKED_FROM, LOCKED_LENGTH = 0x40000002, 510  # the bytes SQLite locks for sharing; part of its file format


def path_of(location: str | Path) -> Path:
    """The file a path or a sqlite:/// address names."""
    text = str(location)
    if text.startswith("sqlite:///"):
        text = text.removeprefix("sqlite:///")
    elif "://" in text:
        raise LibraryUnreachable(f"{text} is an address Trailbench cannot use. Give the path of a file.")
    if not text or "\x00" in text:
        raise LibraryUnreachable("The path of the library is empty or not a path. Give the path of a file.")
    return Path(os.path.realpath(os.path.expanduser(text)))  # SQLite puts its side files beside the real file


def is_new(path: Path) -> bool:
    """Whether there is no library yet at the path; refuses anything that is something else."""
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            what = "a folder" if stat.S_ISDIR(found.st_mode) else "no ordinary file"
            raise NotALibrary(f"{path} is {what}, not a Trailbench library. Give the path of a library file.")
        with path.open("rb") as file:
            header = file.read(100)
    except FileNotFoundError:
        return True
    except OSError as error:
        raise LibraryUnreachable(
            f"{path} cannot be read ({error.strerror}). Check the path and your rights."
        ) from error
    if not header:
        return True
    if header[:16] != MAGIC or int.from_bytes(header[68:72], "big") != APPLICATION_ID:
        raise NotALibrary(f"{path} is not a Trailbench library. It was left as it is; choose another file.")
    return False


def schema_number_of(path: Path) -> str | None:
    """The schema number a library file carries, read without changing the file; None if creation was cut short."""
    if _size(path, "-journal"):
        return _schema_number_of_copy(path)
    if not _size(path, "-wal"):
        return _read_schema_number(path, "mode=ro&immutable=1")
    had_shm = _beside(path, "-shm").exists()
    try:
        return _read_schema_number(path, "mode=ro")
    except LibraryUnreachable:  # no room or no right to make the index of the side file here
        return _schema_number_of_copy(path)
    finally:
        if not had_shm:
            with suppress(OSError):
                _beside(path, "-shm").unlink(missing_ok=True)


def _schema_number_of_copy(path: Path) -> str | None:
    with TemporaryDirectory(prefix="trailbench-") as folder:
        return _read_schema_number(copy_aside(path, Path(folder)), "mode=rw")


def refuse_newer(path: Path, number: str, head: str) -> None:
    """Refuses a file whose schema number is beyond the known one."""
    if number > head:
        raise LibraryNewer(
            f"{path} was written by a later Trailbench (schema {number}; this one knows {head}). "
            "It was left as it is; use the later version."
        )


def refuse_locked(path: Path) -> None:
    """Refuses a file another process holds, without any trace in the file or its folder.

    Only where files are locked as POSIX does; elsewhere SQLite itself finds out when the file is opened.
    """
    if fcntl is None:
        return
    try:
        with path.open("rb") as file:
            fcntl.lockf(file, fcntl.LOCK_SH | fcntl.LOCK_NB, LOCKED_LENGTH, LOCKED_FROM)
    except BlockingIOError as error:
        raise LibraryLocked(already_open(path)) from error
    except OSError as error:
        raise LibraryUnreachable(f"{path} cannot be read ({error.strerror}). Check your rights.") from error


def refuse_unwritable(path: Path) -> None:
    """Refuses a file or folder that cannot be written, making the folder if need be."""
    folder = path.parent
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise LibraryUnreachable(f"The folder {folder} cannot be made ({error.strerror}). Choose another.") from error
    if not os.access(folder, os.W_OK | os.X_OK):
        raise LibraryUnreachable(f"The folder {folder} is read-only, so nothing can be kept there. Choose another.")
    if path.exists() and not os.access(path, os.W_OK):
        raise LibraryUnreachable(f"{path} is read-only, so nothing can be kept there. Allow writing or use a copy.")


def copy_aside(path: Path, folder: Path) -> Path:
    """A copy of the file and what lies beside it, as it is."""
    try:
        for tail in ("", *SIDE_FILES):
            source = _beside(path, tail)
            if source.exists():
                shutil.copyfile(source, _beside(folder / path.name, tail))
    except OSError as error:
        raise LibraryUnreachable(
            f"{path} cannot be copied ({error.strerror}). Free some space and try again."
        ) from error
    return folder / path.name


def connect(path: Path) -> sqlite3.Connection:
    """The connection, holding the file alone; it begins transactions only when told to."""
    with plain_words(path):
        connection = sqlite3.connect(_uri(path, "mode=rwc"), uri=True, timeout=0, isolation_level=None)
        try:
            connection.create_function("fold", 1, str.casefold, deterministic=True)
            connection.execute("PRAGMA locking_mode = EXCLUSIVE").fetchall()  # first, so that no index file is needed
            # An empty file stays empty here: its first page must carry our mark, so it is written with the tables.
            started = _has_content(connection)
            for pragma in PRAGMAS:
                if started or not pragma.startswith("journal_mode"):
                    connection.execute(f"PRAGMA {pragma}").fetchall()
            if started:
                connection.execute("BEGIN IMMEDIATE")
                connection.execute("COMMIT")
        except BaseException:
            connection.close()
            raise
    return connection


def _has_content(connection: sqlite3.Connection) -> bool:
    return bool(connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0])


def _read_schema_number(path: Path, mode: str) -> str | None:
    with plain_words(path):
        connection = sqlite3.connect(_uri(path, mode), uri=True, timeout=0, isolation_level=None)
        try:
            if not _has_content(connection):
                return None
            tables = connection.execute("SELECT count(*) FROM sqlite_master WHERE name = 'alembic_version'").fetchone()
            found = connection.execute("SELECT version_num FROM alembic_version").fetchall() if tables[0] else []
        finally:
            connection.close()
    if len(found) != 1:
        raise LibraryDamaged(f"{path} does not say which schema it has. It is damaged; restore a backup.")
    return str(found[0][0])


def _uri(path: Path, mode: str) -> str:
    return f"file:{quote(str(path))}?{mode}"


def _beside(path: Path, tail: str) -> Path:
    return path.with_name(path.name + tail)


def _size(path: Path, tail: str) -> int:
    beside = _beside(path, tail)
    return beside.stat().st_size if beside.exists() else 0
