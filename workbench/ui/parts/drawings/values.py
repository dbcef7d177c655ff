"""What a drawing may say."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class DrawingValues:
    """Words and values for a drawing; empty ones are left out.

    ``distance`` is the measured value with its unit. ``closes`` is "clockwise" or "anticlockwise", and ``opens``
    that the knob is being opened: its arrow goes the other way. ``share`` says how far along its travel an indicator
    stands, from 0 to 1. ``note`` is a word beside the thing to look at.
    """

    distance: str = ""
    closes: str = "clockwise"
    opens: bool = False
    share: float = 0.3
    note: str = ""
