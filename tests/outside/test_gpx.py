"""Lap times against tracks whose crossings have a closed form.

Source of the form of the file: Topografix, "GPX 1.1 Schema Documentation" (trk, trkseg, trkpt with lat, lon and time in
UTC) and the GPX 1.0 developer's manual, public standards; their namespaces are http://www.topografix.com/GPX/1/1 and
/1/0. Source of the times: uniform motion, worked out by hand beside each test. The library that places the points is
not the one under test: positions on a sphere come from the spherical destination formula (Sinnott 1984, "Virtues of the
Haversine", Sky and Telescope 68, 159; standard spherical trigonometry).
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from math import asin, atan2, cos, degrees, pi, radians, sin

import pytest

from workbench.exchange.gpx import lap_times_s

BEGUN = datetime(2031, 5, 14, 9, 0, tzinfo=UTC)
RADIUS_M = 6_371_000.0
CENTRE = (46.5, 7.25)


def gone(bearing, metres, centre=CENTRE):
    """Where somebody is who went so many metres from the centre along a great circle."""
    arc, latitude, way = metres / RADIUS_M, radians(centre[0]), radians(bearing)
    there = asin(sin(latitude) * cos(arc) + cos(latitude) * sin(arc) * cos(way))
    east = atan2(sin(way) * sin(arc) * cos(latitude), cos(arc) - sin(latitude) * sin(there))
    return degrees(there), centre[1] + degrees(east)


def gpx(places, version="1/1"):
    points = "".join(
        f'<trkpt lat="{lat:.9f}" lon="{lon:.9f}"><time>{(BEGUN + timedelta(seconds=at)).isoformat()}</time></trkpt>'
        for at, (lat, lon) in places
    )
    space = f"http://www.topografix.com/GPX/{version}"
    return f'<gpx version="{version.replace("/", ".")}" xmlns="{space}"><trk><trkseg>{points}</trkseg></trk></gpx>'


@pytest.mark.parametrize("version", ["1/0", "1/1"])
@pytest.mark.parametrize("bearing", [0, 37, 90, 200, 315])
def test_a_straight_ride_at_a_steady_speed_takes_distance_over_speed(version, bearing):
    """400 m at 8 m/s from gate to gate take 50 s, whatever the direction and however coarse the record."""
    ride = gpx([(at, gone(bearing, 8.0 * at)) for at in range(0, 90, 3)], version)

    def gate(metres):
        middle = gone(bearing, metres)
        return gone(bearing + 90, 15, middle), gone(bearing - 90, 15, middle)

    (lap,) = lap_times_s(ride, start=gate(101.0), finish=gate(501.0))
    assert lap == pytest.approx(50.0, abs=0.002)


def test_a_circle_at_a_steady_speed_comes_round_once_a_period():
    """A circle of 200 m radius in 47.3 s, recorded every second: each crossing of a radial gate is a period apart."""
    period = 47.3
    ride = gpx([(at, gone(degrees(2 * pi * at / period), 200.0)) for at in range(240)])
    gate = (gone(123.0, 185.0), gone(123.0, 215.0))
    laps = lap_times_s(ride, start=gate, finish=gate)
    assert len(laps) == 4
    assert laps == pytest.approx([period] * 4, abs=0.01)


def test_part_of_a_circle_takes_its_share_of_the_period():
    """From bearing 20 to bearing 290 is three quarters of the way round: 0.75 of 80 s."""
    ride = gpx([(at, gone(360 * at / 80.0, 150.0)) for at in range(200)])
    start, finish = ((gone(way, 140.0), gone(way, 160.0)) for way in (20.0, 290.0))
    assert lap_times_s(ride, start=start, finish=finish) == pytest.approx([60.0, 60.0], abs=0.01)


def test_a_steady_acceleration_is_met_to_the_coarseness_of_the_record():
    """Distance a t^2 / 2 with a = 2 m/s^2: 100 m at 10 s, 225 m at 15 s. Between two points a second apart a straight
    line is at most a / (8 v) s off, under 0.03 s here."""
    ride = gpx([(at, gone(0, at**2)) for at in range(25)])
    start, finish = ((gone(90, 12, gone(0, m)), gone(270, 12, gone(0, m))) for m in (110.25, 240.25))
    (lap,) = lap_times_s(ride, start=start, finish=finish)
    assert lap == pytest.approx(15.5 - 10.5, abs=0.03)
