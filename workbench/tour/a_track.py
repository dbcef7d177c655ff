"""An invented track for the tour: down a winding course and back up again, as a recorder would write it."""

from __future__ import annotations

import math

PUSH_S, STEP_S = 150, 2
BEGIN_S = 9 * 3600


def track_text(laps: int) -> str:
    """Write a GPX track of so many runs down the same course, each a little different in time."""
    points, at_s = [], 0.0
    for lap in range(laps):
        ride_s = 98.0 + (0, -1.5, 2.0, -3.1, -2.2, 1.2, -4.0, -2.7)[lap % 8]
        for begun, lasts, down in ((at_s, ride_s, True), (at_s + ride_s, PUSH_S, False)):
            for step in range(int(lasts // STEP_S)):
                share = step * STEP_S / lasts
                points.append((begun + step * STEP_S, share if down else 1.0 - share, 0.0 if down else 35.0))
        at_s += ride_s + PUSH_S
    inner = "".join(_point(*one) for one in points)
    return f'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>{inner}</trkseg></trk></gpx>'


def _point(at_s: float, share: float, aside_m: float) -> str:
    east_m = 700.0 * share + aside_m * math.sin(math.pi * share)
    north_m = 130.0 * math.sin(5.0 * share) + 45.0 * math.sin(14.0 * share)
    latitude, longitude = 46.0 + north_m / 111_200.0, 7.0 + east_m / 77_250.0
    whole = BEGIN_S + at_s
    clock = f"{int(whole // 3600):02d}:{int(whole // 60) % 60:02d}:{whole % 60:06.3f}"
    return f'<trkpt lat="{latitude:.7f}" lon="{longitude:.7f}"><time>2026-05-19T{clock}Z</time></trkpt>'
