"""Bringing an older library up to the present schema: a backup first, then all steps in one transaction."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection, Engine

from workbench.library.backup import copy_library, free_name
from workbench.library.troubles import in_plain_words, plain_words
from workbench.model.errors import LibraryDamaged

HEAD = "0003"


@dataclass(frozen=True, slots=True)
class Migrations:
    """Where the steps lie and which schema number they lead to."""

    head: str
    folder: Path


SHIPPED = Migrations(HEAD, Path(__file__).parent / "migrations")


def upgrade(engine: Engine, raw: sqlite3.Connection, path: Path, number: str, migrations: Migrations) -> Path:
    """Runs the missing steps on the open connection and gives the backup made before; undoes all if one fails."""
    backup = free_name(path.parent / "backups", f"{path.stem} before update from {number}", path.suffix)
    copy_library(raw, backup)
    raw.execute("PRAGMA foreign_keys = OFF")  # has no effect inside a transaction, so it comes before
    try:
        with plain_words(path), engine.connect().execution_options(writes=True) as connection, connection.begin():
            _steps(connection, migrations, path, backup)
            _check(connection, path, backup)
    finally:
        raw.execute("PRAGMA foreign_keys = ON")
    return backup


def _steps(connection: Connection, migrations: Migrations, path: Path, backup: Path) -> None:
    try:
        _run(connection, migrations)
    except Exception as error:
        if in_plain_words(getattr(error, "orig", None), path) is not None:
            raise
        raise LibraryDamaged(
            f"{path} could not be brought up to date ({error}). It was left as it was; a copy lies at {backup}."
        ) from error


def _run(connection: Connection, migrations: Migrations) -> None:
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(migrations.folder).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, migrations.head)


def _check(connection: Connection, path: Path, backup: Path) -> None:
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    unsound = connection.exec_driver_sql("PRAGMA integrity_check").scalar_one()
    if broken or unsound != "ok":
        raise LibraryDamaged(
            f"{path} could not be brought up to date because it contradicts itself. It was left as it was; "
            f"a copy lies at {backup}."
        )
