"""Counting adjusters: in which order, what a count allows, and what a count once made forbids."""

from __future__ import annotations

from collections.abc import Collection

from workbench.model.adjuster import Adjuster, chart_from_closed, steps_text
from workbench.model.bike import Station
from workbench.model.errors import InputError
from workbench.model.parts import BikeParts

MOST_STEPS = 200
SKIP_REASONS = (
    "No steps to feel",
    "Knob missing or stuck",
    "Not made to be set",
    "Not today",
)


def skip_key(adjuster_id: str) -> str:
    """Give the name under which one adjuster is passed over, beside the stations."""
    return f"{Station.ADJUSTERS}:{adjuster_id}"


def counting_sequence(parts: BikeParts) -> tuple[Adjuster, ...]:
    """Give the adjusters in the order they are counted: one that another depends on comes before it."""
    found: list[Adjuster] = []

    def take(adjuster: Adjuster, above: tuple[str, ...] = ()) -> None:
        if adjuster in found or adjuster.id in above:  # two that name each other are taken as they stand
            return
        other = parts.adjuster(adjuster.depends_on) if adjuster.depends_on else None
        if other is not None:
            take(other, (*above, adjuster.id))
        found.append(adjuster)

    for adjuster in parts.adjusters:
        take(adjuster)
    return tuple(found)


def other_place(adjuster: Adjuster, other: Adjuster) -> str:
    """Say where another adjuster stands while this one is counted."""
    if adjuster.depends_position is None:
        return "fully open"
    if adjuster.depends_position == 0 and other.counting != "positions":
        return "fully closed"
    place = steps_text(other, adjuster.depends_position)
    return f"at {place}" if other.counting == "positions" else f"{place} from closed"


def uncounted(parts: BikeParts, skipped: Collection[str] = ()) -> tuple[Adjuster, ...]:
    """List the adjusters still to be counted in counting order; ``skipped`` holds adjuster ids."""
    return tuple(one for one in counting_sequence(parts) if parts.range_of(one.id) is None and one.id not in skipped)


def next_to_count(parts: BikeParts, skipped: Collection[str] = (), *, after: str = "") -> Adjuster | None:
    """Give the next adjuster to count: the first one left after the given one, else the first one left."""
    left = [one for one in uncounted(parts, skipped) if one.id != after]
    order = [one.id for one in counting_sequence(parts)]
    place = order.index(after) if after in order else -1
    later = [one for one in left if order.index(one.id) > place]
    return next(iter(later or left), None)


def advice_within(adjuster: Adjuster, steps: int) -> int | None:
    """Give the maker's advice from closed if there is any and the counted range holds it."""
    if adjuster.chart_steps is None or adjuster.chart_steps > steps:
        return None
    return chart_from_closed(adjuster, steps)


def position_names(adjuster: Adjuster) -> tuple[str, ...]:
    """Give the names of the positions, closed first."""
    return tuple(name.strip() for name in adjuster.position_names.split("|") if name.strip())


def check_steps(steps: int) -> int:
    """Give a count back if a knob can have that many steps."""
    if not 0 <= steps <= MOST_STEPS:
        raise InputError("count", steps, f"0 to {MOST_STEPS}")
    return steps


def range_problem(adjuster: Adjuster, as_found: int | None, counted_out: int) -> str:
    """Say why a count outwards cannot be the range; empty if it can.

    One step less than was counted inwards is the half detent at the open end; two are a miscount.
    """
    if counted_out == 0:
        return "Nothing is counted yet. Count while turning it out; if it cannot be counted, pass it over."
    if as_found is not None and as_found - counted_out >= 2:
        inwards, outwards = steps_text(adjuster, as_found), steps_text(adjuster, counted_out)
        return f"{inwards} in, but only {outwards} out: close it fully once more and count again while turning it out."
    return ""


def settled_range(adjuster: Adjuster, as_found: int | None, counted_out: int) -> tuple[int, str]:
    """Give the range from a count outwards, and a note if it read one step less than the count inwards."""
    check_steps(counted_out)
    if trouble := range_problem(adjuster, as_found, counted_out):
        raise InputError("Range", counted_out, f"{max(as_found or 0, 1)} or more", trouble)
    if as_found is None or as_found <= counted_out:
        return counted_out, ""
    inwards, outwards = steps_text(adjuster, as_found), steps_text(adjuster, counted_out)
    return as_found, f"{inwards} in, {outwards} out: one detent less at the open end is normal."


def check_counting_fact(adjuster: Adjuster, name: str, value: str, *, is_counted: bool) -> None:
    """Refuse a change of counting that would give records already kept another meaning."""
    if not is_counted:
        return
    advice = "Remove this adjuster and add it anew: what was counted keeps its meaning."
    if name == "counting" and value != adjuster.counting:
        raise InputError("Counted in", value, f"{adjuster.counting}, as it was counted", advice)
    if name == "position_names":
        before = position_names(adjuster)
        after = tuple(word for word in value.split("|") if word.strip())
        if adjuster.counting == "positions" and len(before) != len(after):
            raise InputError("Positions", value, f"{len(before)} names, as many as were counted", advice)
