"""Backups of an open library: made and checked, thinned out as they age, restored and taken back again."""

from __future__ import annotations

import sqlite3
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from workbench.library import backup_files
from workbench.library.backup import (
    copy_file,
    copy_library,
    copy_unchecked,
    damage_of,
    finish_copy,
    open_finished,
    remove_unfinished,
)
from workbench.library.backup_files import Backup
from workbench.library.rotation import worn_out
from workbench.library.troubles import plain_words
from workbench.model.errors import LibraryDamaged, LibraryError, LibraryUnreachable

if TYPE_CHECKING:
    from workbench.library.library import Library

LEAST_APART = timedelta(minutes=30)
RESTORES_KEPT = 5
LARGE_BYTES = 20_000_000  # read through in about a tenth of a second
Mark = tuple[int, str]

_STAMP = "SELECT coalesce(max(stamp), 0) FROM deed"
_DRAFTS = "SELECT coalesce(max(updated_at), '') FROM draft"


@dataclass(frozen=True, slots=True)
class Unchecked:
    """A copy of the library that is to become a backup: its name, where it lies, how far the work had come."""

    target: Path
    copy: Path
    mark: Mark

    def damage(self) -> str:
        """What is wrong in it, every page read; nothing but the copy is touched, so any thread may ask."""
        return damage_of(self.copy, with_references=True)

    def let_go(self) -> None:
        """Removes what has not become a backup."""
        remove_unfinished(self.copy)


class Backups:
    """The backups of one open library."""

    def __init__(self, library: Library) -> None:
        self._library = library
        self._folder = backup_files.folder_of(library.path)
        self._head = library.schema_number
        self._last_mark: Mark | None = None  # what the newest backup holds, once that is known

    @property
    def folder(self) -> str:
        """Where they lie, for showing."""
        return str(self._folder)

    def all(self) -> tuple[Backup, ...]:
        """All backups, the newest first."""
        return backup_files.backups_of(self._library.path, self._head)

    def is_due(self, *, is_closing: bool = False) -> bool:
        """Whether something was kept since the newest backup, and that one is old enough or work ends now."""
        if self._library.read_only:
            return False
        moments = backup_files.moments_of(self._library.path)
        newest = max(moments, key=lambda name: (moments[name][0], name), default=None)
        if newest is None:
            return self._mark() > (0, "")
        age = datetime.fromisoformat(self._library.now()).astimezone(UTC) - moments[newest][0]
        if not is_closing and timedelta(0) <= age < LEAST_APART:
            return False
        if self._last_mark is None:
            self._last_mark = _mark_of(self._folder / newest)
        return self._mark() != self._last_mark

    @property
    def is_large(self) -> bool:
        """Whether a check takes so long that it is not waited for."""
        with suppress(OSError):  # why the file cannot be reached is said by the copying
            return self._library.path.stat().st_size > LARGE_BYTES
        return False

    def make(self, kind: str = backup_files.BY_HAND) -> Backup:
        """Makes a backup of everything kept so far. Older ones are thinned out only once it is found sound."""
        begun = self.begin(kind)
        try:
            return self.keep(begun, begun.damage())
        finally:
            begun.let_go()

    def begin(self, kind: str) -> Unchecked:
        """Copies everything kept so far. It is a backup once it was read from end to end and kept."""
        target = backup_files.name_for(self._library.path, self._library.now(), kind)
        mark = self._mark()
        return Unchecked(target, copy_unchecked(self._library.raw, target), mark)

    def keep(self, begun: Unchecked, found: str) -> Backup:
        """Makes a copy a backup in which nothing wrong was found."""
        finish_copy(begun.copy, begun.target, found)
        self._last_mark = begun.mark
        self._thin_out()
        return backup_files.look_at(begun.target, self._head)

    def check(self, name: str) -> Backup:
        """Reads every page of a backup."""
        return backup_files.check_whole(self._folder / name, self._head)

    def save_copy(self, name: str, target: Path) -> None:
        """Copies a backup elsewhere, whole or not at all; the copy is checked as well."""
        source = self._folder / name
        if target.exists() and target.samefile(self._library.path):
            raise LibraryError(f"{target} is the library itself. Choose another name.")
        copy_file(source, target)
        if found := damage_of(target):
            raise LibraryDamaged(f"{target} was written but reads damaged ({found}). Choose another disk.")

    def restore(self, name: str) -> Backup:
        """Makes the library what a backup holds, and gives the backup made of it just before.

        The chosen backup is checked first; the library changes in one step, or stays as it was.
        """
        if self._library.read_only:
            raise LibraryUnreachable(f"{self._library.path} was opened for reading only, so nothing can be restored.")
        chosen = self._folder / name
        backup_files.refuse_unusable(chosen, self._head)
        aside = self._put_aside()
        with TemporaryDirectory(prefix="trailbench-") as folder:
            self._take_over(self._brought_up(chosen, Path(folder)))
        self._last_mark = None
        return aside

    def _put_aside(self) -> Backup:
        """A backup of the library as it is; one that is damaged is kept as it was found."""
        try:
            return self.make(backup_files.BEFORE_RESTORE)
        except LibraryDamaged:
            target = backup_files.name_for(self._library.path, self._library.now(), backup_files.DAMAGED)
            copy_library(self._library.raw, target, damage=lambda _: "")
            return backup_files.look_at(target, self._head)

    def _brought_up(self, chosen: Path, folder: Path) -> Path:
        """The backup at the present schema: an older one is brought up to it in a copy."""
        from workbench.library.library import open_library

        with closing(open_finished(chosen)) as file:
            number = str(file.execute("SELECT version_num FROM alembic_version").fetchone()[0])
        if number == self._head:
            return chosen
        copy = copy_file(chosen, folder / chosen.name)
        open_library(copy, self._library.schema, now=self._library.now, migrations=self._library.migrations).close()
        return copy

    def _take_over(self, source: Path) -> None:
        with plain_words(self._library.path), closing(open_finished(source)) as file:
            file.backup(self._library.raw)
            found = [row[0] for row in self._library.raw.execute("PRAGMA quick_check(1)")]
        if found != ["ok"]:
            raise LibraryDamaged(f"After the restore {self._library.path} reads damaged. Check the disk.")

    def _thin_out(self) -> None:
        """Lets worn-out backups go. Only sound ones count, so a damaged one never takes the place of a good one."""
        moments = backup_files.moments_of(self._library.path)
        turning = {name: at for name, (at, kind) in moments.items() if kind in _TURNING}
        sound = {name: at for name, at in turning.items() if not backup_files.look_at(self._folder / name).trouble}
        before = {name: at for name, (at, kind) in moments.items() if kind == backup_files.BEFORE_RESTORE}
        spare = sorted(before, key=lambda name: (before[name], name), reverse=True)[RESTORES_KEPT:]
        for name in (*worn_out(sound), *spare):
            with suppress(OSError):  # one too many does no harm
                (self._folder / name).unlink()

    def _mark(self) -> Mark:
        with plain_words(self._library.path):
            return _read_mark(self._library.raw)


_TURNING = (backup_files.BY_ITSELF, backup_files.BEFORE_IMPORT)


def _mark_of(path: Path) -> Mark:
    """How far the work had come in a backup; unlike any other if that cannot be read."""
    try:
        with closing(open_finished(path)) as file:
            return _read_mark(file)
    except sqlite3.Error:
        return (-1, "")


def _read_mark(connection: sqlite3.Connection) -> Mark:
    return int(connection.execute(_STAMP).fetchone()[0]), str(connection.execute(_DRAFTS).fetchone()[0])
