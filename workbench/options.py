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
