"""Drawings of what springs: fork leg, shock, coil with its collar, air valve with the pump."""

from __future__ import annotations

from math import cos, pi, sin

from workbench.ui.parts.drawings.ink import Ink
from workbench.ui.parts.drawings.values import DrawingValues


def stanchion(ink: Ink, values: DrawingValues) -> None:
    """A fork leg: the tube from above runs into the lower leg; the indicator stays where the sag pushed it."""
    left, width = 142.0, 34.0
    reach = 110 * min(max(values.share, 0.08), 0.95)
    seal, indicator = 178.0, 178.0 - reach
    ink.box(left - 22, 12, width + 44, 20)
    ink.box(left, 32, width, seal - 32)
    ink.line((left + 7, 44), (left + 7, seal - 14), token="line", weight=1)
    ink.shape((left - 9, seal), (left + width + 9, seal), (left + width + 6, seal + 14), (left - 6, seal + 14))
    ink.shape(
        (left - 6, seal + 14),
        (left + width + 6, seal + 14),
        (left + width + 3, 268),
        (left + width - 4, 282),
        (left + 4, 282),
        (left - 3, 268),
    )
    ink.ring((left + width / 2, 270), 6)
    _measure(ink, left, width, seal, indicator, values)


def shock(ink: Ink, values: DrawingValues) -> None:
    """A shock: body above, shaft below, the indicator on the shaft."""
    left, width, seal = 125.0, 20.0, 150.0
    indicator = seal + 90 * min(max(values.share, 0.08), 0.95)
    ink.ring((135, 24), 13)
    ink.ring((135, 24), 5)
    ink.box(108, 37, 54, seal - 49)
    ink.box(104, seal - 12, 62, 12)
    ink.box(left, seal, width, 112)
    ink.ring((135, 275), 13)
    ink.ring((135, 275), 5)
    _measure(ink, left, width, seal, indicator, values)


def _measure(ink: Ink, left: float, width: float, seal: float, indicator: float, values: DrawingValues) -> None:
    """Draw the indicator and the distance from it to the seal."""
    ink.box(left - 4, indicator - 3, width + 8, 6, token="accent", fill="accent")
    at = left - 34
    for y in (seal, indicator):
        ink.line((at - 6, y), (left - 12, y), token="accent", weight=1, dashed=True)
    low, high = max(seal, indicator), min(seal, indicator)
    ink.distance((at, high + 1), (at, low - 1), values.distance or "?")
    seal_side = seal + (6 if indicator < seal else -6)
    ink.words((left + width + 22, seal_side), "seal")
    ink.words((left + width + 22, indicator), "indicator")


def collar(ink: Ink, values: DrawingValues) -> None:
    """A coil on its shock: the collar turned down until the spring has no slack, then the preload."""
    ink.ring((135, 22), 12)
    ink.ring((135, 22), 5)
    ink.box(117, 34, 36, 70)
    for y in range(40, 70, 5):
        ink.line((117, y), (153, y), token="line", weight=1)
    ink.box(98, 74, 74, 14, token="accent")
    for x in (106, 118, 130, 142, 154, 164):
        ink.line((x, 76), (x, 86), token="accent", weight=1)
    ink.box(127, 104, 16, 138)
    pitch, turns = 26.0, 5
    for turn in range(turns):
        start = 96.0 + turn * pitch
        ink.line((101, start), (169, start + pitch / 2), weight=5.5)
        ink.line((101, start), (169, start + pitch / 2), token="card", weight=2.6)
        if turn < turns - 1:
            ink.line((169, start + pitch / 2), (101, start + pitch), token="line", weight=1)
    ink.line((98, 90), (172, 90), weight=1)
    ink.box(98, 224, 74, 10)
    ink.ring((135, 258), 12)
    ink.ring((135, 258), 5)
    ink.arrow((190, 60), (190, 90), token="accent")
    ink.words((194, 72), "collar", token="accent", bold=True)
    ink.words((176, 100), values.note or "no slack here")
    ink.words((178, 160), "spring")


def valve(ink: Ink, values: DrawingValues) -> None:
    """An air valve and a pump screwed straight onto it."""
    ink.box(30, 226, 140, 40)
    ink.line((30, 238), (170, 238), token="line", weight=1)
    ink.box(90, 196, 20, 30)
    for y in (202, 208, 214, 220):
        ink.line((90, y), (110, y), token="line", weight=1)
    ink.box(84, 156, 32, 40, token="accent")
    for x in (90, 97, 104, 110):
        ink.line((x, 162), (x, 190), token="accent", weight=1)
    ink.curve((100, 156), ((100, 100), (150, 120), (150, 74)))
    ink.curve((107, 156), ((107, 106), (157, 124), (157, 74)))
    ink.ring((153, 52), 26, fill="card")
    for step in range(7):
        angle = 150 + step * 40
        _gauge_tick(ink, (153, 52), 20, 25, angle)
    ink.line((153, 52), (142, 37), weight=2)
    ink.ring((153, 52), 2.5, fill="ink")
    ink.box(178, 44, 16, 16)
    ink.box(194, 38, 70, 28)
    ink.words((120, 176), "pump head", token="accent", bold=True)
    ink.words((114, 210), "valve")
    ink.words((140, 272), values.note or "cycle slowly after every change", side="below")


def _gauge_tick(ink: Ink, centre: tuple[float, float], inner: float, outer: float, degrees: float) -> None:
    turn = degrees * pi / 180
    ends = [(centre[0] + r * cos(turn), centre[1] + r * sin(turn)) for r in (inner, outer)]
    ink.line(*ends, weight=1)
