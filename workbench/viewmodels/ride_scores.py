"""Further attributes of a run, end by end: looked at beside what the session is judged by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from workbench.model.parts import BikeParts
from workbench.model.responses import ATTRIBUTES, HIGHEST_SCORE, LOWEST_SCORE
from workbench.model.ride import ENDS

Scores = tuple[tuple[str, int], ...]  # "grip/front" -> 7, in the order of the sheet
VALUES = tuple(range(LOWEST_SCORE, HIGHEST_SCORE + 1))


@dataclass(frozen=True, slots=True)
class ScoreCell:
    """One attribute at one end, and its score if it has one."""

    key: str
    title: str
    score: int | None = None


@dataclass(frozen=True, slots=True)
class ScoreRow:
    """One end with its attributes."""

    end: str
    title: str
    cells: tuple[ScoreCell, ...] = ()


def resolve_scores(scores: Scores, parts: BikeParts) -> tuple[ScoreRow, ...]:
    """Lay the attributes out, a row an end that the bike has."""
    given = dict(scores)
    return tuple(
        ScoreRow(
            end,
            end.capitalize(),
            tuple(
                ScoreCell(f"{name}/{end}", f"{title}, {end}", given.get(f"{name}/{end}"))
                for name, title in ATTRIBUTES.items()
            ),
        )
        for end in ENDS
        if parts.unit(end) is not None
    )


def with_score(scores: Scores, key: str, score: int | None) -> Scores:
    """Give the scores with one of them set, or taken back."""
    return in_order((*((one, value) for one, value in scores if one != key), (key, score)))


def in_order(pairs: Iterable[tuple[str, int | None]]) -> Scores:
    """Give the scores that can be meant, in the order of the sheet; what a kept draft has beside them is left out."""
    given = {str(key): score for key, score in pairs}
    keys = (f"{name}/{end}" for end in ENDS for name in ATTRIBUTES)
    return tuple((key, score) for key in keys if (score := given.get(key)) in VALUES and score is not None)


def ratings_of(scores: Scores) -> tuple[tuple[str, int, str], ...]:
    """Give the ratings as they are kept: attribute, score, end."""
    return tuple((key.partition("/")[0], score, key.partition("/")[2]) for key, score in scores)
