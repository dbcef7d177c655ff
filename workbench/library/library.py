"""The library: one file, one connection, reading and writing transactions."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import uuid4

from sqlalchemy import Connection, Engine, MetaData, QueuePool, create_engine, event, insert

from workbench.library import opening, settings
from workbench.library.images import shapes_of
from workbench.library.own_tables import own, schema_number
from workbench.library.pen import Pen, Tally
from workbench.library.reader import Reader
from workbench.library.troubles import plain_words
from workbench.library.upgrade import SHIPPED, Migrations, upgrade
from workbench.model.errors import LibraryLocked, LibraryUnreachable

_open_here: set[tuple[int, int]] = set()


def open_library(
    location: str | Path,
    schema: MetaData,
    *,
    now: Callable[[], str],
    new_id: Callable[[], str] = lambda: str(uuid4()),
    create: bool = True,
    read_only: bool = False,
    migrations: Migrations = SHIPPED,
) -> Library:
    """Opens the library at a path or sqlite:/// address, making a new one if there is none.

    With `read_only` a copy in a temporary folder is opened and the file itself is not touched.
    """
    path = opening.path_of(location)
    if _identity(path) in _open_here:  # asked first: closing a file we have open would drop our own lock on it
        raise LibraryLocked(f"{path} is already open in this Trailbench. Close it here and try again.")
    number = None if opening.is_new(path) else opening.schema_number_of(path)
    if number is not None:
        opening.refuse_newer(path, number, migrations.head)
    if number is None and (read_only or not create):
        raise LibraryUnreachable(f"There is no library at {path}. Check the path.")
    if not read_only:
        opening.refuse_unwritable(path)
        return Library(path, path, schema, now=now, new_id=new_id, migrations=migrations)
    opening.refuse_locked(path)
    folder = TemporaryDirectory(prefix="trailbench-")
    try:
        copy = opening.copy_aside(path, Path(folder.name))
        return Library(path, copy, schema, now=now, new_id=new_id, migrations=migrations, copy_folder=folder)
    except BaseException:
        folder.cleanup()
        raise


class Library:
    """An open library. Actions use it through the desk."""

    def __init__(
        self,
        path: Path,
        file: Path,
        schema: MetaData,
        *,
        now: Callable[[], str],
        new_id: Callable[[], str],
        migrations: Migrations,
        copy_folder: TemporaryDirectory[str] | None = None,
    ) -> None:
        self.path = path
        self.now = now
        self.new_id = new_id
        self.schema = schema
        self.schema_number = migrations.head
        self.migrations = migrations
        self.start_id = str(uuid4())
        self.shapes = shapes_of(schema.tables.values())
        self.tally = Tally()
        self.backup_before_upgrade: Path | None = None
        self._copy_folder = copy_folder
        self.raw = opening.connect(file)
        self._engine = _engine(self.raw)
        try:
            self._make_ready(file, migrations)
        except BaseException:
            self._engine.dispose()
            self.raw.close()
            raise
        self._identity = _identity(file)
        _open_here.add(self._identity)

    @property
    def read_only(self) -> bool:
        """Whether this is a copy on which nothing can be kept."""
        return self._copy_folder is not None

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A transaction that reads."""
        with plain_words(self.path), self._engine.connect() as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Pen]:
        """A transaction that writes: kept as a whole at its end, or not at all."""
        if self.read_only:
            raise LibraryUnreachable(f"{self.path} was opened for reading only, so nothing can be kept there.")
        with (
            plain_words(self.path),
            self._engine.connect().execution_options(writes=True) as connection,
            connection.begin() as transaction,
        ):
            pen = Pen(connection, self.tally)
            yield pen
            if pen.abandoned:
                transaction.rollback()

    @contextmanager
    def reader(self) -> Iterator[Reader]:
        """Reads records in one transaction."""
        with self.reading() as connection:
            yield Reader(connection, self.shapes)

    def person_id(self, connection: Connection) -> str | None:
        """Who is at the bench."""
        return settings.value(connection, settings.PERSON)

    def close(self) -> None:
        """Gives the file free. Closing twice does no harm."""
        self._engine.dispose()
        self.raw.close()
        _open_here.discard(self._identity)
        if self._copy_folder is not None:
            self._copy_folder.cleanup()

    def _make_ready(self, file: Path, migrations: Migrations) -> None:
        with plain_words(self.path):
            if not self.raw.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
                self._create(migrations)
                return
            number = self.raw.execute("SELECT version_num FROM alembic_version").fetchone()[0]
        if number < migrations.head:
            self.backup_before_upgrade = upgrade(self._engine, self.raw, file, number, migrations)

    def _create(self, migrations: Migrations) -> None:
        with self._engine.connect().execution_options(writes=True) as connection, connection.begin():
            connection.exec_driver_sql(f"PRAGMA application_id = {opening.APPLICATION_ID}")
            own.create_all(connection, checkfirst=False)
            self.schema.create_all(connection, checkfirst=False)
            connection.execute(insert(schema_number).values(version_num=migrations.head))
        self.raw.execute("PRAGMA journal_mode = WAL").fetchall()


def _engine(raw: sqlite3.Connection) -> Engine:
    engine = create_engine(
        "sqlite://", creator=lambda: raw, poolclass=QueuePool, pool_size=1, max_overflow=0, pool_timeout=0
    )

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        writes = connection.get_execution_options().get("writes", False)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

    return engine


def _identity(path: Path) -> tuple[int, int]:
    with suppress(OSError):
        found = os.stat(path)
        return found.st_dev, found.st_ino
    return (-1, -1)
