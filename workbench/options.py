"""What was asked for on the command line."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Options:
    """The arguments, read and checked."""

    library: str
    is_demo: bool
    now: Callable[[], str]
    has_fixed_now: bool
    tour: Path | None
    size: tuple[int, int]
    theme: str
    scale: int
    pseudo_long: bool
    export: Path | None
    check: bool
    looks_only: bool = False  # open a copy to read
    begins_anew: bool = False  # make an empty library although backups of an earlier one lie beside it
