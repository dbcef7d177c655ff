"""Why a position is proposed, in words for the rider."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

_DIRECTION = {-2: "far too closed", -1: "too closed", 0: "just right", 1: "too open", 2: "far too open"}


class Ridden(Protocol):
    """What the words need of the last run."""

    @property
    def position(self) -> int: ...
    @property
    def direction(self) -> int | None: ...
    @property
    def warmup(self) -> bool: ...
    @property
    def confounded(self) -> bool: ...


def clicks(steps: int) -> str:
    """Say a number of clicks."""
    return "1 click" if steps == 1 else f"{steps} clicks"


@dataclass(frozen=True, slots=True)
class Steps:
    """How positions are said: say "6 clicks", short "6" among others, tick "6" below a picture with its axis.

    Positions with names are said by them everywhere.
    """

    say: Callable[[int], str] = clicks
    short: Callable[[int], str] = str
    tick: Callable[[int], str] = str
    axis: str = "from closed"
    is_named: bool = False


CLICKS = Steps()


def place(position: int, range_clicks: int, steps: Steps = CLICKS) -> str:
    """Name a position from closed."""
    if steps.is_named:
        return steps.say(position)
    from_closed = f"{steps.say(position)} from closed"
    if position == 0:
        return f"fully closed ({from_closed})"
    return f"fully open ({from_closed})" if position == range_clicks else from_closed


def reason(
    position: int,
    range_clicks: int,
    ridden: Sequence[int],
    last: Ridden | None,
    *,
    settled_at: int | None,
    exhausted: str | None,
    on_the_way: bool,
    at_range_end: bool,
    steps: Steps = CLICKS,
) -> str:
    """One plain sentence, or two, on why this position comes next."""
    here = place(position, range_clicks, steps)
    if exhausted:
        return _exhausted(here, exhausted, at_range_end=at_range_end)
    if settled_at is not None:
        stay = place(settled_at, range_clicks, steps)
        text = f"Stay at {stay}: one more run is not expected to change the choice by anything you would feel."
        return text if position == settled_at else f"{text} If you ride on, {here} would tell most."
    if last is None:
        return f"Start at {here}, in the middle, so that both ways are open."
    if not ridden:
        return f"Ride {here} and rate it: the runs so far say nothing about the position."
    if on_the_way:
        return f"Go to {here}: a short range is tried one step at a time."
    if position in ridden:
        return f"Ride {here} again: a second answer there makes the choice surer than a new position would."
    way = f"further {'open' if position > last.position else 'closed'}"
    move = way if steps.is_named else f"{steps.say(abs(position - last.position))} {way}"
    said = None if last.warmup or last.confounded else last.direction
    if said and (said < 0) == (position > last.position):
        return f"Go to {here}, {move}: you called {steps.short(last.position)} {_DIRECTION[said]}."
    if len(set(ridden)) == 1:
        return f"Go to {here}, {move}: a first step large enough to feel."
    if min(ridden) < position < max(ridden):
        return f"Go to {here}, {move}: it lies between positions you rode, where your answers leave most to find out."
    return f"Go to {here}, {move}: your answers do not tell yet whether you like it more there."


def _exhausted(here: str, exhausted: str, *, at_range_end: bool) -> str:
    if at_range_end:
        return (
            f"The range is used up: at {here} you would still go further {exhausted}. "
            "More clicks cannot give that; it takes another spring or a mechanic's retune."
        )
    return (
        f"The band you allow is used up: at {here} you would still go further {exhausted}. "
        "Widen the band if the rider agrees."
    )
