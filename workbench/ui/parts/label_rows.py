"""Where labels along an axis go so that none lies over another: side by side while there is room, else stacked."""

from __future__ import annotations

from collections.abc import Sequence

OVERLAP = 6.0  # how far a label reaches over its point when it is moved aside


def place_labels(
    centres: Sequence[float], widths: Sequence[float], *, span: float, gap: float = 8.0
) -> list[tuple[float, int]]:
    """Give each label its left edge and its row, row 0 nearest the axis.

    A label is centred over its point where there is room; with a near neighbour it stands to one side of the point;
    where that does not help either, it goes one row further out. It never leaves ``span``.
    """
    order = sorted(range(len(centres)), key=lambda index: (centres[index], index))
    ends: list[float] = []  # the right end of the last label of each row
    placed: dict[int, tuple[float, int]] = {}
    for place, index in enumerate(order):
        after = order[place + 1] if place + 1 < len(order) else None
        width = min(widths[index], span)
        to_next = span if after is None else centres[after] - centres[index]
        near = after is not None and to_next < (width + widths[after]) / 2 + gap
        left, row = _free_place(_places(centres[index], width, span, near=near), ends, gap)
        if row == len(ends):
            ends.append(0.0)
        ends[row] = left + width
        placed[index] = (left, row)
    return [placed[index] for index in range(len(centres))]


def _places(centre: float, width: float, span: float, *, near: bool) -> list[float]:
    """Give the left edges to try, the best first."""
    before, middle, behind = centre - width + OVERLAP, centre - width / 2, centre - OVERLAP
    tried = (before, middle, behind) if near else (middle, behind)
    return [min(max(left, 0.0), span - width) for left in tried]


def _free_place(lefts: Sequence[float], ends: Sequence[float], gap: float) -> tuple[float, int]:
    for row, end in enumerate(ends):
        for left in lefts:
            if end + gap <= left:
                return left, row
    return lefts[0], len(ends)


def nice_step(span: float, room: float, *, least_px: float = 36.0) -> float:
    """Give a step of 1, 2, 5, 10, ... whose labels are at least ``least_px`` apart over ``room`` pixels."""
    if span <= 0 or room <= 0:
        return 1.0
    wanted = span * least_px / room
    power = 1.0
    while power * 10 <= wanted:
        power *= 10
    while power > wanted and power > 1e-6:
        power /= 10
    return next((power * factor for factor in (1, 2, 5, 10) if power * factor >= wanted), power * 10)
