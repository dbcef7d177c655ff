"""Lap times from a recorded track: when it crossed the gates, between two points, to the fraction of a second."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from xml.parsers import expat

from workbench.model.errors import ExchangeError, InputError

Gate = tuple[tuple[float, float], tuple[float, float]]

NAMESPACES = ("", "http://www.topografix.com/GPX/1/0", "http://www.topografix.com/GPX/1/1")
EARTH_M = 6_371_008.8  # mean radius; only shares of a gate and of a step are taken, so it cancels
SHORTEST_GATE_M = 0.5
LONGEST_GATE_M = 1000.0
MOST_CHARACTERS = 60_000_000
LONGEST_TIME = 60  # characters; what follows is no time
FIRST_YEAR, LAST_YEAR = 1971, 9000  # every system can say such times, in every zone
_PLAIN_XML = "Write the track anew as plain GPX."


@dataclass(frozen=True, slots=True)
class TrackPoint:
    """Where the recorder was, and when."""

    latitude_deg: float
    longitude_deg: float
    at_s: float


@dataclass(frozen=True, slots=True)
class Crossing:
    """A gate was crossed, to one side (1) or the other (-1) as seen from its first point."""

    at_s: float
    side: int


@dataclass(frozen=True, slots=True)
class Lap:
    """One lap: when it began [s], on the scale of the track's points, and how long it took [s]."""

    begun_s: float
    lap_s: float


def lap_times_s(gpx_text: str, *, start: Gate, finish: Gate) -> list[float]:
    """Times from the start gate to the finish gate, lap by lap.

    Parameters
    ----------
    gpx_text : str
        A track with times, GPX 1.0 or 1.1. Points without a time are passed over.
    start, finish : ((latitude, longitude), (latitude, longitude))
        The two ends of each gate [degrees]. The same gate twice means laps of a loop.

    Returns
    -------
    list of float
        [s], in the order ridden; empty if no lap was completed.

    Raises
    ------
    InputError
        If the text is no GPX, has a document type or entities of its own, holds no two points with times, runs back in
        time or has times before 1971 or after 9000, or a gate is no line of 0.5 to 1000 m.

    Notes
    -----
    Around each gate the earth is taken as flat (equirectangular). Between two points the speed is taken as steady; a
    step that changes sides within the ends of the gate crossed it at the share of the step at which the line is met. A
    lap begins at the last crossing of the start before a crossing of the finish, so pushing back up past the start
    does no harm. On a loop, only crossings in the direction of the first one count. Pauses between track segments are
    never crossed. Own derivation.

    References
    ----------
    Topografix, GPX 1.1 schema documentation, elements trk, trkseg and trkpt.

    Examples
    --------
    >>> at = '<trkpt lat="{}" lon="7.0"><time>2031-05-14T09:00:{}Z</time></trkpt>'.format
    >>> track = f"<gpx><trk><trkseg>{at(46.00, '00')}{at(46.01, '10')}{at(46.02, '20')}</trkseg></trk></gpx>"
    >>> gates = {"start": ((46.005, 6.999), (46.005, 7.001)), "finish": ((46.018, 6.999), (46.018, 7.001))}
    >>> [round(lap, 3) for lap in lap_times_s(track, **gates)]
    [13.0]
    """
    return [one.lap_s for one in laps_between(read_track(gpx_text), start=start, finish=finish)]


def laps_between(segments: list[list[TrackPoint]], *, start: Gate, finish: Gate) -> tuple[Lap, ...]:
    """Give the laps of a track that was read already, as `lap_times_s` finds them, each with when it began."""
    _check_gate("start", start)
    _check_gate("finish", finish)
    starts = list(_crossings(segments, start))
    if start in (finish, finish[::-1]):
        loop = [one.at_s for one in starts if one.side == starts[0].side]
        return tuple(Lap(earlier, later - earlier) for earlier, later in pairwise(loop))
    events = sorted([(one.at_s, 1) for one in starts] + [(one.at_s, 0) for one in _crossings(segments, finish)])
    laps: list[Lap] = []
    begun: float | None = None
    for at_s, is_start in events:
        if is_start:
            begun = at_s
        elif begun is not None:
            laps.append(Lap(begun, at_s - begun))
            begun = None
    return tuple(laps)


def times_crossed(segments: list[list[TrackPoint]], gate: Gate) -> int:
    """Say how often a track crosses a gate, whichever way."""
    _check_gate("gate", gate)
    return len(list(_crossings(segments, gate)))


def read_track(gpx_text: str) -> list[list[TrackPoint]]:
    """Read the timed points of all tracks, a list a segment, in the order recorded."""
    if not isinstance(gpx_text, str) or len(gpx_text) > MOST_CHARACTERS:
        raise InputError("Track", "text", f"a GPX text of at most {MOST_CHARACTERS // 1_000_000} million characters")
    reader = _Reader()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.buffer_text = True
    parser.StartDoctypeDeclHandler = _refuse_own_types
    parser.StartElementHandler, parser.EndElementHandler = reader.begin, reader.end
    parser.CharacterDataHandler = reader.text
    try:
        parser.Parse(gpx_text, True)
    except (expat.ExpatError, UnicodeEncodeError) as error:
        raise InputError("Track", f"{error}", "well-formed GPX", "The file may be cut off.") from None
    segments = sorted((one for one in reader.segments if one), key=lambda segment: segment[0].at_s)
    points = [point for segment in segments for point in segment]
    if len(points) < 2:
        raise InputError("Track", f"{len(points)} points with times", "two or more", "Record with times switched on.")
    for earlier, later in pairwise(points):
        if later.at_s < earlier.at_s:
            raise InputError("Track", "times that run back", "times in the order ridden", _PLAIN_XML)
    return segments


def text_of(content: bytes) -> str:
    """Give the text of a track's file. Names that are no good text are of no use here, so they do no harm."""
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return content.decode("utf-16", errors="replace")
    if b"\0" in content[:4096]:
        raise ExchangeError("It is no text. Choose the GPX file of the recorder, or let its program write one.")
    return content.decode("utf-8-sig", errors="replace")


def _refuse_own_types(*_declared: object) -> None:
    """No document types: entities that unfold each other could fill the memory, others could read files."""
    raise InputError("Track", "a document type", "GPX without one", _PLAIN_XML)


@dataclass(slots=True)
class _Reader:
    """Collects track points while the text is read; nothing is kept of what surrounds them."""

    segments: list[list[TrackPoint]] = field(default_factory=list)
    _path: list[str] = field(default_factory=list)
    _place: tuple[float, float] | None = None
    _time: str = ""

    def begin(self, name: str, attributes: dict[str, str]) -> None:
        namespace, _, local = name.rpartition(" ")
        if not self._path and (local != "gpx" or namespace not in NAMESPACES):
            raise InputError("Track", local, "a gpx document, version 1.0 or 1.1")
        self._path.append(local if namespace in NAMESPACES else "")
        if self._is_at("trk", "trkseg"):
            self.segments.append([])
        elif self._is_at("trk", "trkseg", "trkpt"):
            self._place, self._time = _place_of(attributes), ""

    def text(self, text: str) -> None:
        if self._is_at("trk", "trkseg", "trkpt", "time") and len(self._time) < LONGEST_TIME:
            self._time += text

    def end(self, _name: str) -> None:
        if self._is_at("trk", "trkseg", "trkpt") and self._place is not None and self._time.strip():
            self.segments[-1].append(TrackPoint(*self._place, _seconds(self._time.strip())))
        self._path.pop()

    def _is_at(self, *names: str) -> bool:
        return len(self._path) == len(names) + 1 and self._path[1:] == list(names)


def _place_of(attributes: dict[str, str]) -> tuple[float, float]:
    try:
        latitude, longitude = float(attributes["lat"]), float(attributes["lon"])
    except (KeyError, ValueError):
        raise InputError("Track", "a point without a place", "lat and lon in degrees") from None
    _check_place("Track", latitude, longitude)
    return latitude, longitude


def _check_place(name: str, latitude: float, longitude: float) -> None:
    if not (-90.0 < latitude < 90.0 and -180.0 <= longitude <= 180.0):
        raise InputError(name, (latitude, longitude), "latitude -90 to 90 and longitude -180 to 180 degrees")


def _seconds(text: str) -> float:
    """Seconds on a scale of its own; a time without a zone is UTC, as GPX has it."""
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        raise InputError("Track", text, "times like 2031-05-14T09:00:00Z") from None
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise InputError("Track", text, f"a year from {FIRST_YEAR} to {LAST_YEAR}", "The recorder's clock was not set.")
    zoned = moment if moment.tzinfo else moment.replace(tzinfo=UTC)
    return (zoned - datetime(1970, 1, 1, tzinfo=UTC)) / timedelta(seconds=1)


def _check_gate(name: str, gate: Gate) -> None:
    try:
        (first_lat, first_lon), (second_lat, second_lon) = gate
        for latitude, longitude in ((first_lat, first_lon), (second_lat, second_lon)):
            _check_place(name, float(latitude), float(longitude))
    except (TypeError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        raise InputError(name, str(gate), "((latitude, longitude), (latitude, longitude))") from None
    length_m = math.hypot(*plane_at(*gate)(second_lat, second_lon))
    if not SHORTEST_GATE_M <= length_m <= LONGEST_GATE_M:
        raise InputError(name, f"{length_m:.1f} m long", f"{SHORTEST_GATE_M} to {LONGEST_GATE_M:.0f} m")


def plane_at(first: tuple[float, float], second: tuple[float, float]) -> Callable[[float, float], tuple[float, float]]:
    """Give the map to metres east and north of the first of two places near each other; across the date line too."""
    (first_lat, first_lon), (second_lat, _) = first, second
    shrink = math.cos(math.radians(0.5 * (first_lat + second_lat)))

    def to_plane(latitude: float, longitude: float) -> tuple[float, float]:
        east = (longitude - first_lon + 180.0) % 360.0 - 180.0
        return EARTH_M * math.radians(east) * shrink, EARTH_M * math.radians(latitude - first_lat)

    return to_plane


def _crossings(segments: list[list[TrackPoint]], gate: Gate) -> Iterator[Crossing]:
    to_plane = plane_at(*gate)
    gate_x, gate_y = to_plane(*gate[1])
    long_squared = gate_x**2 + gate_y**2
    for segment in segments:
        for one, other in pairwise(segment):
            (ax, ay), (bx, by) = (to_plane(point.latitude_deg, point.longitude_deg) for point in (one, other))
            before, after = gate_x * ay - gate_y * ax, gate_x * by - gate_y * bx
            if (before < 0) == (after < 0):  # a point on the line belongs to one side, so it is met once
                continue
            share = before / (before - after)
            x, y = ax + share * (bx - ax), ay + share * (by - ay)
            if 0.0 <= (gate_x * x + gate_y * y) / long_squared <= 1.0:
                yield Crossing(one.at_s + share * (other.at_s - one.at_s), 1 if after >= 0 else -1)
