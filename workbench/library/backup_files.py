"""The folder of backups beside a library: what lies there, what it holds, and putting one in the place of a file."""

from __future__ import annotations

import re
import shutil
import sqlite3
from contextlib import closing
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from workbench.library.backup import copy_file, damage_of, flush_folder, free_name, open_finished
from workbench.library.opening import APPLICATION_ID, SIDE_FILES, is_new, refuse_locked
from workbench.library.upgrade import HEAD
from workbench.model.errors import LibraryDamaged, LibraryError, LibraryUnreachable

FOLDER = "backups"
BY_ITSELF, BY_HAND, BEFORE_IMPORT = "by itself", "by hand", "before bringing in"
BEFORE_RESTORE, DAMAGED = "before a restore", "as it was found"
BEFORE_UPDATE = "before update"
_KINDS = (BY_ITSELF, BY_HAND, BEFORE_IMPORT, BEFORE_RESTORE, DAMAGED)
_NAME = re.compile(r" (\d{4}-\d\d-\d\d) (\d{6}) (" + "|".join(_KINDS) + r")(?: \(\d+\))?")
_UPDATE = re.compile(r" (before update) from \d+(?: \(\d+\))?")


@dataclass(frozen=True, slots=True)
class Backup:
    """One copy of the library: when it was made and why, what is in it, and what is wrong with it, if anything is."""

    name: str
    at: str
    kind: str
    size_bytes: int
    bikes: int
    trouble: str = ""
    is_newer: bool = False  # written by a later version: nothing this one could restore


def folder_of(library: Path) -> Path:
    """Where the backups of a library lie."""
    return library.parent / FOLDER


def backups_of(library: Path, head: str = HEAD) -> tuple[Backup, ...]:
    """The backups of a library, the newest first; each is opened and looked at, none is checked as a whole."""
    found = [look_at(path, head) for path in _files(library)]
    return tuple(sorted(found, key=lambda one: (one.at, one.name), reverse=True))


def moments_of(library: Path) -> dict[str, tuple[datetime, str]]:
    """When and why each backup was made, by name, without opening any."""
    found = {}
    for path in _files(library):
        at, kind = _told(path)
        found[path.name] = (at, kind)
    return found


def look_at(path: Path, head: str = HEAD) -> Backup:
    """One backup: its head and its count of bikes are read."""
    at, kind = _told(path)
    size = path.stat().st_size if path.exists() else 0
    made = Backup(path.name, at.isoformat(timespec="seconds"), kind, size, 0)
    try:
        with closing(open_finished(path)) as file:
            mark = file.execute("PRAGMA application_id").fetchone()[0]
            if mark != APPLICATION_ID:
                return replace(made, trouble="it is no library of Trailbench")
            number = str(file.execute("SELECT version_num FROM alembic_version").fetchone()[0])
            bikes = int(file.execute("SELECT count(*) FROM bike").fetchone()[0])
    except (sqlite3.Error, TypeError) as error:
        return replace(made, trouble=str(error))
    return replace(made, bikes=bikes, is_newer=number > head)


def check_whole(path: Path, head: str = HEAD) -> Backup:
    """One backup after every page of it was read."""
    found = look_at(path, head)
    return found if found.trouble else replace(found, trouble=damage_of(path, with_references=True))


def refuse_unusable(path: Path, head: str = HEAD) -> Backup:
    """The backup, checked as a whole; refused when it cannot be restored."""
    if not path.is_file():
        raise LibraryUnreachable(f"There is no backup at {path} any more. Nothing was changed; choose another.")
    found = check_whole(path, head)
    if found.trouble:
        raise LibraryDamaged(
            f"{path} cannot be restored because it is damaged ({found.trouble}). Nothing was changed; choose another."
        )
    if found.is_newer:
        raise LibraryError(f"{path} was written by a later Trailbench. Nothing was changed; use the later version.")
    return found


def name_for(library: Path, now: str, kind: str) -> Path:
    """The file the next backup of this kind goes to."""
    moment = datetime.fromisoformat(now).astimezone(UTC)
    return free_name(folder_of(library), f"{library.stem} {moment:%Y-%m-%d %H%M%S} {kind}", library.suffix)


def put_in_place(library: Path, name: str, *, now: str) -> Path:
    """Puts a backup in the place of a library that is not open; what lay there is kept as found, and its place given.

    The file changes its content in one step: whenever the power fails, the old or the new one is there.
    """
    chosen = folder_of(library) / name
    refuse_unusable(chosen)
    aside = name_for(library, now, DAMAGED)
    try:
        if library.exists() and not _is_foreign(library):
            refuse_locked(library)
        for tail in ("", *SIDE_FILES):
            beside = library.with_name(library.name + tail)
            if beside.exists():
                shutil.copyfile(beside, aside.with_name(aside.name + tail))
        flush_folder(aside.parent)
        for tail in SIDE_FILES:  # what was not yet written back belongs to the file as it was found
            library.with_name(library.name + tail).unlink(missing_ok=True)
    except OSError as error:
        text = f"{library} could not be put aside ({error.strerror}). Nothing was changed; free some space."
        raise LibraryUnreachable(text) from error
    copy_file(chosen, library)
    return aside


def _is_foreign(library: Path) -> bool:
    try:
        is_new(library)
    except LibraryError:
        return True
    return False


def _files(library: Path) -> list[Path]:
    folder = folder_of(library)
    try:
        names = sorted(path for path in folder.iterdir() if path.suffix == library.suffix and path.is_file())
    except OSError:
        return []
    return [path for path in names if _matched(path, library.stem)]


def _matched(path: Path, stem: str) -> bool:
    rest = path.stem.removeprefix(stem)
    return rest != path.stem and (_NAME.fullmatch(rest) or _UPDATE.fullmatch(rest)) is not None


def _told(path: Path) -> tuple[datetime, str]:
    found = _NAME.search(path.stem)
    if found is not None:
        try:
            moment = datetime.strptime(f"{found[1]} {found[2]}", "%Y-%m-%d %H%M%S").replace(tzinfo=UTC)
        except ValueError:
            moment = datetime.fromtimestamp(path.stat().st_mtime, UTC)
        return moment, found[3]
    return datetime.fromtimestamp(path.stat().st_mtime, UTC), BEFORE_UPDATE
