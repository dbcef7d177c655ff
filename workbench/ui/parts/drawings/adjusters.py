"""Drawings of what an adjuster acts on: oil past a damper's piston, and the room an air spring has."""

from __future__ import annotations

from workbench.ui.parts.drawings.ink import STRONG, Ink
from workbench.ui.parts.drawings.values import DrawingValues

_LEFT, _RIGHT, _TOP, _BOTTOM = 96.0, 174.0, 24.0, 214.0
_MIDDLE = (_LEFT + _RIGHT) / 2


def compression(ink: Ink, values: DrawingValues) -> None:
    """A damper pressed together: the piston goes into the oil, and oil has to get past it."""
    _damper(ink, piston=132.0)
    ink.arrow((_MIDDLE, 280), (_MIDDLE, 244), weight=STRONG)
    ink.arrow((_RIGHT - 14, 104), (_RIGHT - 14, 168), token="accent", weight=STRONG)
    _name_parts(ink, 132.0, values.note or "a hit presses it in")


def rebound(ink: Ink, values: DrawingValues) -> None:
    """A damper the spring pushes out again: the piston comes back, and oil has to get past it the other way."""
    _damper(ink, piston=108.0)
    ink.arrow((_MIDDLE, 244), (_MIDDLE, 280), weight=STRONG)
    ink.arrow((_RIGHT - 14, 144), (_RIGHT - 14, 80), token="accent", weight=STRONG)
    _name_parts(ink, 108.0, values.note or "the spring pushes it out")


def spacers(ink: Ink, values: DrawingValues) -> None:
    """Two air chambers at full travel: with spacers less air is left, so it is squeezed more."""
    for left, count in ((44.0, 0), (164.0, 3)):
        ink.box(left, 40, 72, 190)
        for place in range(count):
            ink.box(left + 8, 46 + place * 24, 56, 20, fill="line")
        ink.box(left, 140, 72, 14, fill="ink")
        ink.box(left + 28, 154, 16, 110)
        ink.arrow((left + 36, 292), (left + 36, 268), weight=STRONG)
    ink.words((80, 34), "no spacer", side="above")
    ink.words((200, 34), "spacers", side="above", token="accent", bold=True)
    ink.words((80, 92), "air", side="middle")
    ink.words((200, 128), values.note or "less air", side="middle")


def _damper(ink: Ink, *, piston: float) -> None:
    """The tube with its oil, the piston with a narrow way through, and the shaft below."""
    ink.box(_LEFT, _TOP, _RIGHT - _LEFT, _BOTTOM - _TOP)
    for y in range(int(_TOP) + 14, int(_BOTTOM), 18):
        ink.line((_LEFT + 6, y), (_LEFT + 20, y), token="line", weight=1)
    ink.box(_LEFT, piston, 52, 16, fill="ink")
    ink.box(_RIGHT - 4, piston, 4, 16, fill="ink")
    ink.box(_MIDDLE - 8, piston + 16, 16, 240 - piston - 16)
    ink.box(_LEFT - 6, _BOTTOM, _RIGHT - _LEFT + 12, 12)


def _name_parts(ink: Ink, piston: float, what: str) -> None:
    ink.words((_RIGHT + 4, piston - 34), "oil", token="accent", bold=True)
    ink.words((_RIGHT + 4, piston + 8), "the knob narrows or widens this way")
    ink.words((_MIDDLE + 14, 262), what)
