"""Adjusters: closed is 0, open is the end of the counted range."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.errors import InputError

KINDS = {
    "rebound": "Rebound",
    "compression": "Compression",
    "lever": "Lever",
    "end_stroke": "End-stroke",
}
SPEEDS = {"": "Single", "low": "Low-speed", "high": "High-speed", "unknown": "Not known"}
COUNTINGS = {"clicks": "Clicks", "turns": "Turns", "positions": "Named positions"}
DEPENDS = {"gates": "Gates this one", "drags": "Is dragged along"}
PUSH_TESTS = {"differs": "Differs", "same": "No difference"}
CLOSED_TURNS = {"clockwise": "Clockwise", "anticlockwise": "Anticlockwise", "unknown": "Not known"}


@dataclass(frozen=True, slots=True)
class Adjuster:
    """A knob or lever of a unit.

    Positions are whole steps from closed: clicks, quarter turns, or the index of a named position.
    """

    id: str
    unit_id: str
    kind: str
    speed: str = ""
    name: str = ""
    counting: str = "clicks"
    position_names: str = ""  # for named positions, closed first, parted by "|"
    closed_turn: str = "unknown"
    counting_order: int = 0
    depends_on: str | None = None  # another adjuster that stands in one place while this one is counted
    depends_how: str | None = None  # one of DEPENDS; None: it gates
    depends_position: int | None = None  # where the other one stands meanwhile, from closed; None: fully open
    chart_from: str = "closed"
    chart_steps: int | None = None  # the maker's advice, as printed
    note: str = ""
    archived_at: str | None = None


@dataclass(frozen=True, slots=True)
class RangeCount:
    """One counting of an adjuster's range; later countings never rewrite it."""

    id: str
    adjuster_id: str
    generation_id: str | None
    steps: int  # closed = 0, so there are steps + 1 positions
    as_found: int | None
    counted_at: str
    person_id: str | None = None
    push_felt: str | None = None  # one of PUSH_TESTS: the bike pushed down with it closed against open
    note: str = ""


def adjuster_title(adjuster: Adjuster) -> str:
    """Give the name to show: its own, or what it adjusts."""
    if adjuster.name:
        return adjuster.name
    kind = KINDS.get(adjuster.kind, adjuster.kind)
    if adjuster.speed in ("low", "high"):
        return f"{SPEEDS[adjuster.speed]} {kind.lower()}"
    return kind


def adjuster_words(adjuster: Adjuster) -> str:
    """Give the name for use within a sentence: its own as it was typed, or what it adjusts in small letters."""
    return adjuster.name or adjuster_title(adjuster).lower()


def check_position(position: int, steps: int) -> int:
    """Give the position back if it lies within the counted range."""
    if not 0 <= position <= steps:
        raise InputError("position", position, f"0 (closed) to {steps} (open)")
    return position


def from_open(position: int, steps: int) -> int:
    """Turn a position from closed into one from open."""
    return steps - check_position(position, steps)


def chart_from_closed(adjuster: Adjuster, steps: int | None) -> int | None:
    """Give the maker's advice as steps from closed; None until the range is known if it counts from open."""
    if adjuster.chart_steps is None:
        return None
    if adjuster.chart_from == "closed":
        return adjuster.chart_steps
    if steps is None:
        return None
    return from_open(adjuster.chart_steps, steps)


def recount_note(before: int, after: int) -> str:
    """Say what a second counting means; an end detent may read one more or less."""
    difference = abs(after - before)
    if difference == 0:
        return ""
    if difference == 1:
        return f"Counted {before} before: one detent more or less at the open end is normal."
    return f"Counted {before} before, now {after}. Count once more; if it stays, have the adjuster looked at."


def steps_text(adjuster: Adjuster, steps: int) -> str:
    """Say a number of steps in the adjuster's own counting."""
    if adjuster.counting == "turns":
        whole, quarters = divmod(abs(steps), 4)
        part = {0: "", 1: "1/4", 2: "1/2", 3: "3/4"}[quarters]
        number = " ".join(piece for piece in (str(whole) if whole or not part else "", part) if piece)
        sign = "-" if steps < 0 else ""
        return f"{sign}{number} turn" if 0 < abs(steps) <= 4 else f"{sign}{number} turns"
    if adjuster.counting == "positions":
        names = [name.strip() for name in adjuster.position_names.split("|") if name.strip()]
        return names[steps] if 0 <= steps < len(names) else f"position {steps}"
    return f"{steps} click" if abs(steps) == 1 else f"{steps} clicks"


def restore_text(adjuster: Adjuster, position: int) -> str:
    """Say how to set a position from anywhere, without trusting where the knob stands now."""
    if adjuster.counting == "positions":
        return f"set to {steps_text(adjuster, position)}"
    if position == 0:
        return "fully closed"
    return f"fully closed, then open {steps_text(adjuster, position)}"
