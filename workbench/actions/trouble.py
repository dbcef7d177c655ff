"""What can be done about a library that cannot be opened."""

from __future__ import annotations

from pathlib import Path

from workbench.library.backup_files import Backup, backups_of, put_in_place
from workbench.library.opening import path_of

__all__ = ["Backup", "backups_beside", "is_gone", "put_backup_in_place"]


def backups_beside(location: str | Path) -> tuple[Backup, ...]:
    """The backups that lie beside a library, the newest first."""
    return backups_of(path_of(location))


def is_gone(location: str | Path) -> bool:
    """Whether there is no library at a place although backups of one lie beside it."""
    path = path_of(location)
    return not path.exists() and bool(backups_of(path))


def put_backup_in_place(location: str | Path, name: str, *, now: str) -> Path:
    """Puts a backup in the place of a library that cannot be opened; gives where that was put aside."""
    return put_in_place(path_of(location), name, now=now)
