"""Probabilities said so that they can be counted: 1 of 8 such tests."""

from __future__ import annotations

RARE = 1.0 / 20.0  # what chance alone does less often than this is hard to put down to it
HINT = 1.0 / 8.0
_WHOLE = 1e-9


def out_of(p: float) -> str:
    """Say a probability as so many of so many."""
    if p >= 1.0 - _WHOLE:
        return "every one"
    times = 1.0 / max(p, 1e-12)
    if abs(times - round(times)) < _WHOLE * times:
        return f"1 of {round(times)}"
    if p >= 0.3:
        return f"about {min(19, round(20 * p))} of 20"
    return f"about 1 of {round(times)}"


def meaning(p: float) -> str:
    """Say what to make of something chance alone does with this probability."""
    if p <= RARE:
        return "That is hard to put down to chance."
    if p <= HINT:
        return "That is a hint; it settles nothing by itself."
    return "Chance alone does that easily, so it settles nothing."
