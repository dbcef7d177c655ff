"""What the carry-over sheet shows of one spring or tyre."""

from __future__ import annotations

from dataclasses import dataclass

NOTABLE_SHIFT = 0.02  # of the damping: less than any click is known to make


@dataclass(frozen=True, slots=True)
class CarryWay:
    """One way to answer to other spacers: where the rider sits, and what the end of the travel holds in a hit."""

    title: str
    pressure: str
    sag: str
    end_force: str
    is_advised: bool = False
    care: str = ""


@dataclass(frozen=True, slots=True)
class CarryRow:
    """What to do about one spring or tyre."""

    title: str
    now: str
    set_here: str
    shows_there: str
    if_left: str
    reasons: str
    care: str = ""
    ways: tuple[CarryWay, ...] = ()
    is_coil: bool = False  # a spring to fit, not a pressure to set
    spacers: str = ""  # how many go in, where that is another number than now
    why: tuple[str, ...] = ()  # in a few words: what the linked change keeps and gains, what another rider asks for
