"""Where labels along an axis go so that none lies over another: side by side while there is room, else stacked."""

from __future__ import annotations

from collections.abc import Sequence


def place_labels(
    centres: Sequence[float], widths: Sequence[float], *, span: float, gap: float = 8.0
) -> list[tuple[float, int]]:
    """Give each label its left edge and its row, row 0 nearest the axis.

    A label is centred over its point where it can be, and pushed inside ``span`` where it cannot. Points nearer the
    left are placed first; a label that would touch another goes one row further out.
    """
    ends: list[float] = []  # the right end of the last label of each row
    placed: dict[int, tuple[float, int]] = {}
    for index in sorted(range(len(centres)), key=lambda place: (centres[place], place)):
        width = min(widths[index], span)
        left = min(max(centres[index] - width / 2, 0.0), span - width)
        row = next((row for row, end in enumerate(ends) if end + gap <= left), len(ends))
        if row == len(ends):
            ends.append(0.0)
        ends[row] = left + width
        placed[index] = (left, row)
    return [placed[index] for index in range(len(centres))]


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
