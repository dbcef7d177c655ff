"""Several runs put right at once: which, and what was found out about them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from workbench.model.parts import BikeParts
from workbench.model.ride import LEVERS
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride_run import SET_ASIDE_REASONS, lever_choices
from workbench.viewmodels.shown import how_many

if TYPE_CHECKING:
    from workbench.viewmodels.ride_session import RunRow

COUNT = "count"
_LEVER, _REASON = "lever:", "reason:"


@dataclass(frozen=True, slots=True)
class Mark:
    """What is to be written to which runs, and how the deed is called."""

    run_ids: tuple[str, ...]
    reason: str
    lever: str
    label: str


def mark_choices(parts: BikeParts) -> tuple[tuple[str, str], ...]:
    """List what may be found out about runs afterwards; counting them again comes last."""
    levers = tuple((f"{_LEVER}{key}", words) for key, words in lever_choices(parts))
    reasons = tuple((f"{_REASON}{reason}", reason) for reason in SET_ASIDE_REASONS[1:])
    return (*levers, *reasons, (COUNT, "Nothing was wrong: count them"))


def read_mark(rows: Sequence[RunRow], first: str, last: str, what: str) -> Mark | Problem:
    """Read which runs are meant; what cannot be is said at its field."""
    numbers = {row.number: row for row in rows}
    for name, number in (("mark_first", first), ("mark_last", last)):
        if number not in numbers:
            return Problem(f"There is no run {number or 'without a number'} in this session.", name)
    low, high = sorted((int(first), int(last)))
    runs = tuple(row.run_id for row in sorted(rows, key=lambda row: int(row.number)) if low <= int(row.number) <= high)
    lever = what.removeprefix(_LEVER) if what.startswith(_LEVER) else ""
    if lever in LEVERS:
        return Mark(runs, f"{LEVERS[lever]} by mistake", lever, f"{LEVERS[lever]} for {how_many(len(runs), 'run')}")
    if what == COUNT:
        return Mark(runs, "", "", f"Count {how_many(len(runs), 'run')}")
    reason = what.removeprefix(_REASON)
    return Mark(runs, reason, "", f"Set {how_many(len(runs), 'run')} aside")
