"""A library that cannot be opened: what is said, and the ways out."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from workbench.actions.trouble import Backup
from workbench.model.errors import (
    LibraryDamaged,
    LibraryError,
    LibraryLocked,
    LibraryNewer,
    LibraryUnreachable,
    NotALibrary,
)
from workbench.viewmodels.backups import BackupRow, resolve_row


class Way(StrEnum):
    """A way out."""

    RETRY = "retry"
    RESTORE = "restore"
    LOOK = "look"
    OTHER = "other"
    NEW = "new"
    BEGIN = "begin"
    QUIT = "quit"


WORDS = {
    Way.RETRY: "Try again",
    Way.RESTORE: "Restore the backup picked",
    Way.LOOK: "Look at it, keep nothing",
    Way.OTHER: "Open another library ...",
    Way.NEW: "Begin a new library elsewhere ...",
    Way.BEGIN: "Begin an empty library here",
    Way.QUIT: "Quit",
}
TITLES: tuple[tuple[type[LibraryError], str], ...] = (
    (LibraryLocked, "The library is open already"),
    (LibraryNewer, "The library is from a later version"),
    (NotALibrary, "This is not a Trailbench library"),
    (LibraryDamaged, "The library is damaged"),
    (LibraryUnreachable, "The library cannot be opened"),
)
WAYS: tuple[tuple[type[LibraryError], tuple[Way, ...]], ...] = (
    (LibraryLocked, (Way.RETRY, Way.OTHER)),
    (LibraryNewer, (Way.OTHER, Way.NEW)),
    (NotALibrary, (Way.OTHER, Way.NEW)),
    (LibraryDamaged, (Way.OTHER, Way.NEW)),
    (LibraryUnreachable, (Way.RETRY, Way.LOOK, Way.OTHER)),
)


class LibraryGone(LibraryUnreachable):
    """No library where one was, but backups of it."""


@dataclass(frozen=True, slots=True)
class TroubleState:
    """The page that is shown instead of the window. The first way is the one to take."""

    title: str
    text: str
    ways: tuple[tuple[Way, str], ...]
    backups: tuple[BackupRow, ...] = ()
    picked: str = ""


def gone(path: str) -> LibraryGone:
    """Say that a library is gone while backups of it are there."""
    return LibraryGone(
        f"There is no library at {path}, but backups of it lie beside it. Restore one, or begin an empty one."
    )


def resolve(error: LibraryError, backups: tuple[Backup, ...], *, is_file: bool) -> TroubleState:
    """Lay out what can be done about a library that was refused."""
    title = next((words for kind, words in TITLES if isinstance(error, kind)), "The library cannot be opened")
    ways = next((ways for kind, ways in WAYS if isinstance(error, kind)), (Way.RETRY, Way.OTHER))
    if not is_file:
        ways = tuple(way for way in ways if way != Way.LOOK)
    rows: tuple[BackupRow, ...] = ()
    if isinstance(error, LibraryGone):
        title, ways = "The library is not where it was", (Way.BEGIN, Way.OTHER)
    if isinstance(error, LibraryDamaged | LibraryGone):
        rows = tuple(resolve_row(one, None) for one in backups)
    usable = [row.key for row in rows if row.is_usable]
    if usable:
        ways = (Way.RESTORE, *ways)
    text = str(error)
    if isinstance(error, LibraryDamaged) and not usable:
        text += " No usable backup lies beside it."
    return TroubleState(
        title, text, tuple((way, WORDS[way]) for way in (*ways, Way.QUIT)), rows, usable[0] if usable else ""
    )
