"""Gates across a recorded track, and the track as a plan to pick them on."""

from __future__ import annotations

import math
from bisect import bisect_left

from workbench.exchange.gpx import EARTH_M, Gate, TrackPoint, plane_at
from workbench.model.errors import InputError

GATE_M = 20.0  # wide: a receiver under trees is often 5 m off to either side (common practice, no source)
ALONG_M = 8.0  # the direction ridden is taken over so much track on both sides, not from one step
AS_NEAR_M = 3.0  # passes so much further away than the nearest count as the same place

Segments = list[list[TrackPoint]]
Spot = tuple[float, float]  # metres east and north of the middle of the track


class Plan:
    """A track laid flat around its middle: where it went, in metres east and north.

    Flat to about a part in a thousand on tracks of some kilometres, which is far less than a receiver is off.
    """

    def __init__(self, segments: Segments) -> None:
        points = [point for segment in segments for point in segment]
        latitudes, first = [point.latitude_deg for point in points], points[0]
        self._middle = (0.5 * (min(latitudes) + max(latitudes)), first.longitude_deg)
        self._to_plane = plane_at(self._middle, self._middle)
        self.lines: tuple[tuple[Spot, ...], ...] = tuple(
            tuple(self.spot(point.latitude_deg, point.longitude_deg) for point in segment) for segment in segments
        )
        self._spots = [spot for line in self.lines for spot in line]
        self._times = [point.at_s for point in points]

    def spot(self, latitude_deg: float, longitude_deg: float) -> Spot:
        """Give a place on the plan."""
        return self._to_plane(latitude_deg, longitude_deg)

    def place(self, spot: Spot) -> tuple[float, float]:
        """Give latitude and longitude [degrees] of a spot on the plan."""
        east, north = spot
        latitude, longitude = self._middle
        shrink = math.cos(math.radians(latitude))
        turned = longitude + math.degrees(east / (EARTH_M * shrink))
        return latitude + math.degrees(north / EARTH_M), (turned + 180.0) % 360.0 - 180.0

    def nearest_s(self, spot: Spot) -> float:
        """Give when the track was nearest to a spot, the first time of several, on the scale of its points [s]."""
        away = [math.dist(one, spot) for one in self._spots]
        as_near = min(away) + AS_NEAR_M
        return next(at_s for at_s, far in zip(self._times, away, strict=True) if far <= as_near)

    def gate_at(self, at_s: float, *, width_m: float = GATE_M) -> Gate:
        """Give the line across the track where it was at a time: square to the way ridden, the track in its middle.

        Raises InputError where the track stands still or the time is outside it.
        """
        if not self._times[0] <= at_s <= self._times[-1]:
            raise InputError("Time", f"{at_s - self._times[0]:.0f} s", "a time within the track")
        segment, place, (x, y) = self._at(at_s)
        behind, ahead = _reach(segment, place, -1), _reach(segment, place, 1)
        east, north = ahead[0] - behind[0], ahead[1] - behind[1]
        length = math.hypot(east, north)
        if length < ALONG_M:
            raise InputError(
                "Gate", "a place where the track stands still", "one where it moves on", "Pick a little further along."
            )
        half = 0.5 * width_m
        across = (-north / length * half, east / length * half)
        return self.place((x + across[0], y + across[1])), self.place((x - across[0], y - across[1]))

    def _at(self, at_s: float) -> tuple[tuple[Spot, ...], int, Spot]:
        """Give the segment, the first point in it that is not before the time, and the spot at the time itself."""
        after = bisect_left(self._times, at_s)
        place = after
        for line in self.lines:
            if place < len(line):
                break
            place -= len(line)
        if place == 0:  # where a segment begins there is nothing before it
            return line, 0, line[0]
        begun, ended = self._times[after - 1], self._times[after]
        share = (at_s - begun) / (ended - begun) if ended > begun else 1.0
        (x0, y0), (x1, y1) = line[place - 1], line[place]
        return line, place, (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def _reach(line: tuple[Spot, ...], place: int, step: int) -> Spot:
    """Give the first spot before or behind a place that is far enough away to tell a direction, else the last one."""
    at = place
    while 0 <= at + step < len(line):
        at += step
        if math.dist(line[at], line[place]) >= ALONG_M:
            break
    return line[at]
