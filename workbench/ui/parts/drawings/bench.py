"""Drawings of the bench and the trail: a knob, the brake levers, a course."""

from __future__ import annotations

from math import cos, pi, sin

from workbench.ui.parts.drawings.ink import Ink
from workbench.ui.parts.drawings.values import DrawingValues


def knob(ink: Ink, values: DrawingValues) -> None:
    """A plain knob on its face, with an arrow the way to turn it now."""
    centre = (140.0, 140.0)
    rim = []
    for step in range(72):
        radius = 58 if step % 4 < 2 else 54
        rim.append(_around(centre, radius, step * 5))
    ink.shape(*rim)
    ink.ring(centre, 40)
    ink.line((140, 140), (140, 106), weight=2.5)
    ink.ring(centre, 4, fill="ink")
    clockwise = (values.closes != "anticlockwise") != values.opens
    start, sweep = (-150.0, 120.0) if clockwise else (-30.0, -120.0)
    end = ink.arc(centre, 84, start, sweep, token="accent")
    turn = (start + sweep) * pi / 180
    along = (-sin(turn), cos(turn)) if clockwise else (sin(turn), -cos(turn))
    ink.head(end, along, token="accent", weight=2.5, size=13)
    way = "clockwise" if clockwise else "anticlockwise"
    ink.words(
        (140, 228),
        f"{'opens' if values.opens else 'closes'} {way}",
        side="below",
        token="accent",
        size="text",
        bold=True,
    )
    ink.words((140, 254), values.note or "stop at first firm contact", side="below")


def _around(centre: tuple[float, float], radius: float, degrees: float) -> tuple[float, float]:
    turn = degrees * pi / 180
    return centre[0] + radius * cos(turn), centre[1] + radius * sin(turn)


def brakes(ink: Ink, values: DrawingValues) -> None:
    """The bar seen from above: two fingers hold one lever, the other lever stands open."""
    for weight, token in ((11.0, "ink"), (8.0, "card")):
        ink.curve(
            (14, 150),
            ((70, 146), (84, 136), (140, 136)),
            ((196, 136), (210, 146), (266, 150)),
            weight=weight,
            token=token,
        )
    ink.box(126, 126, 28, 20)
    for grip in (14, 200):
        ink.box(grip, 139, 66, 20)
        for x in range(grip + 8, grip + 64, 8):
            ink.line((x, 142), (x, 156), token="line", weight=1)
    for clamp in (84, 178):
        ink.box(clamp, 126, 18, 22)
    ink.curve((92, 126), ((84, 116), (60, 120), (22, 126)), weight=2.5)
    for finger in (40.0, 55.0):
        for weight, token in ((13.0, "ink"), (10.0, "card")):
            ink.line((finger, 117), (finger, 147), weight=weight, token=token)
    ink.curve((188, 126), ((196, 104), (220, 90), (262, 78)), token="accent", weight=2.5)
    ink.curve((188, 126), ((196, 116), (220, 120), (258, 126)), token="line", weight=1)
    ink.arrow((250, 120), (250, 90), token="accent")
    ink.words((48, 164), "held", side="below")
    ink.words((232, 164), "open", side="below", token="accent", size="text", bold=True)
    ink.words((140, 206), values.note or "Never hold both: wheels must roll", side="below")


def course(ink: Ink, values: DrawingValues) -> None:
    """The side view of a course: start, rough, the one heavy hit, finish."""
    ink.curve((14, 90), ((34, 92), (46, 96), (60, 110)))
    bumps = [(60.0, 110.0)]
    for step in range(1, 13):
        bumps.append((60 + step * 5, 110 + step * 3.4 + (4 if step % 2 else -2)))
    ink.line(*bumps)
    ink.curve((120, 148.8), ((130, 154), (138, 152), (146, 146)))
    ink.line((146, 146), (150, 146), (150, 186))
    ink.curve((150, 186), ((162, 192), (176, 192), (190, 196)), ((215, 204), (240, 210), (266, 212)))
    ink.line((14, 90), (14, 58))
    ink.shape((14, 58), (34, 64), (14, 70))
    ink.line((266, 212), (266, 180))
    ink.shape((266, 180), (246, 186), (266, 192))
    ink.arrow((160, 120), (160, 180), token="accent", weight=2.5)
    ink.words((166, 132), values.note or "the heavy hit", token="accent", size="text", bold=True)
    ink.words((88, 148), "rough", side="below")
    ink.words((14, 52), "start", side="right")
    ink.words((262, 172), "finish", side="left")
    ink.line((14, 236), (266, 236), token="line", weight=1)
    ink.head((266, 236), (1, 0), token="line")
    ink.words((140, 238), "1 to 3 minutes, the same line every time", side="below")
