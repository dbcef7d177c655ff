"""Which backups have served their time: the newest stay, then one a day, one a week, one a month."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime

NEWEST = 10
DAYS = 12
WEEKS = 10
MONTHS = 9


def worn_out(moments: Mapping[str, datetime]) -> frozenset[str]:
    """The names that may go: neither among the newest, nor the last of one of the days, weeks or months kept."""
    newest_first = sorted(moments, key=lambda name: (moments[name], name), reverse=True)
    kept = set(newest_first[:NEWEST])
    kept |= _last_of_each(newest_first, moments, DAYS, lambda moment: (moment.year, moment.month, moment.day))
    kept |= _last_of_each(newest_first, moments, WEEKS, lambda moment: moment.isocalendar()[:2])
    kept |= _last_of_each(newest_first, moments, MONTHS, lambda moment: (moment.year, moment.month))
    return frozenset(moments) - kept


def _last_of_each(
    newest_first: list[str],
    moments: Mapping[str, datetime],
    most: int,
    stretch_of: Callable[[datetime], tuple[int, ...]],
) -> set[str]:
    last: dict[tuple[int, ...], str] = {}
    for name in newest_first:
        last.setdefault(stretch_of(moments[name]), name)
    return set(list(last.values())[:most])
