"""Everything that can go wrong in a way worth telling the user.

The text of each error is a sentence for the person at the bench: what happened, what it means, what to try.
Numbers ride along as attributes.
"""

from __future__ import annotations


class WorkbenchError(Exception):
    """Root of all errors whose text may be shown as it stands."""


class InputError(WorkbenchError, ValueError):
    """A value that cannot be used: names the field, the value and the allowed range."""

    def __init__(self, field: str, value: object, allowed: str, hint: str = "") -> None:
        self.field = field
        self.value = value
        self.allowed = allowed
        shown = repr(value) if isinstance(value, str) else f"{value}"
        if len(shown) > 60:
            shown = shown[:57] + "..."
        text = f"{field}: {shown} cannot be used; allowed is {allowed}."
        super().__init__(f"{text} {hint}".rstrip())


class NotEnoughData(WorkbenchError):
    """There is too little to answer from; the text says what is missing."""


class NoAnswer(WorkbenchError):
    """The numbers are there, but they allow no answer; the text says why."""


class ExchangeError(WorkbenchError):
    """A file from outside cannot be read or written."""


class LibraryError(WorkbenchError):
    """The library file cannot be used as asked."""

    exit_code = 6


class LibraryLocked(LibraryError):
    """Another Trailbench holds the library."""

    exit_code = 3


class LibraryNewer(LibraryError):
    """The library was written by a later version."""

    exit_code = 4


class NotALibrary(LibraryError):
    """The file is something else."""

    exit_code = 5


class LibraryUnreachable(LibraryError):
    """The file or its folder cannot be read or written."""

    exit_code = 6


class LibraryDamaged(LibraryError):
    """The file is a library, but its content contradicts itself."""

    exit_code = 7


class UndoRefused(LibraryError):
    """A row is no longer as the step left it, so the step is not undone."""
