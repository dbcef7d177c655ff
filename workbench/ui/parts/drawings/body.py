"""Drawings with people: the rider over the bike with a helper, and the check before the first ride."""

from __future__ import annotations

from workbench.ui.parts.drawings.ink import Ink
from workbench.ui.parts.drawings.values import DrawingValues


def _bike(ink: Ink, left: float, ground: float, *, size: float = 1.0) -> None:
    """A bike seen from its right side, rear wheel at the left end."""

    def at(x: float, y: float) -> tuple[float, float]:
        return left + x * size, ground + y * size

    wheel = 31 * size
    for hub in (at(31, -31), at(149, -31)):
        ink.ring(hub, wheel)
        ink.ring(hub, 3 * size)
    crank, seat, head_top, head_low = at(76, -30), at(64, -84), at(120, -92), at(125, -76)
    ink.line(at(31, -31), crank, head_low, head_top, seat, crank)
    ink.line(at(31, -31), (seat[0] + 4 * size, seat[1] + 20 * size))
    ink.line(seat, at(61, -96))
    ink.line(at(50, -98), at(73, -96), weight=3)
    ink.line(head_low, at(149, -31), weight=2.5)
    ink.line(head_top, at(117, -104), at(109, -107), weight=2.5)
    ink.ring(crank, 7 * size, fill="card")
    ink.line(at(61, -30), at(91, -30), weight=2)
    ink.line(at(57, -30), at(65, -30), weight=3)
    ink.line(at(87, -30), at(95, -30), weight=3)


def rider(ink: Ink, values: DrawingValues) -> None:
    """The rider in the attack position, cranks level; the helper in front holds the bars, brakes free."""
    ground = 252.0
    ink.ground(ground)
    _bike(ink, 10, ground)
    foot_back, foot_front, hand = (71.0, 220.0), (101.0, 220.0), (120.0, 144.0)
    hip, neck = (64.0, 132.0), (106.0, 98.0)
    ink.line(foot_front, (102, 172), hip, token="accent", weight=2.5)
    ink.line(foot_back, (84, 178), hip, token="accent", weight=2.5)
    ink.line(hip, neck, token="accent", weight=2.5)
    ink.line(neck, (98, 128), hand, token="accent", weight=2.5)
    ink.ring((117, 84), 13, token="accent", fill="card", weight=2.5)
    ink.curve((105, 80), ((107, 66), (128, 66), (130, 80)), token="accent", weight=2.5)
    _helper(ink, ground)
    ink.words((112, 64), "rider in full kit", token="accent", bold=True, side="above")
    ink.words((232, 84), "helper", side="above")
    ink.words((140, 264), values.note or "cranks level, brakes free", side="below")


def _helper(ink: Ink, ground: float) -> None:
    """A person standing in front of the bike with a hand on each bar."""
    hip, neck = (236.0, 184.0), (228.0, 122.0)
    ink.line((226, ground), (230, 218), hip)
    ink.line((248, ground), (244, 218), hip)
    ink.line(hip, neck)
    ink.line(neck, (196, 140), (126, 146))
    ink.ring((226, 106), 12, fill="card")


def rollout(ink: Ink, values: DrawingValues) -> None:
    """Three things before riding: push three times, squeeze the brakes, roll a gentle hundred metres."""
    for number, (y, text) in enumerate(
        ((62, "three pushes on the bars"), (152, "both brakes"), (242, values.note or "100 m, gently")), 1
    ):
        ink.ring((24, y), 12, token="accent", weight=2.5)
        ink.words((24, y + 0.5), str(number), side="middle", token="accent", bold=True)
        ink.words((150, y + 24), text, side="below", token="ink")
    for x in (96, 126, 156):
        ink.arrow((x, 26), (x, 58), token="accent", weight=2.5)
    ink.line((72, 66), (180, 66), weight=2.5)
    ink.line((72, 72), (82, 66))
    ink.line((180, 66), (190, 72))
    ink.ring((126, 148), 26)
    ink.ring((126, 148), 4)
    ink.ring((126, 148), 19, token="line", weight=1)
    ink.shape((140, 118), (160, 124), (152, 146), (136, 138), token="accent")
    ink.ground(262, 60, 262)
    for x in (92, 130):
        ink.ring((x, 246), 15)
    ink.line((92, 246), (106, 232), (122, 230), (130, 246))
    ink.line((122, 230), (120, 222))
    ink.arrow((164, 240), (252, 240), token="accent", weight=2.5)
