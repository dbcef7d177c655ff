"""Tracks as recorders write them, and what is refused."""

from __future__ import annotations

import pytest

from workbench.exchange.gpx import lap_times_s, read_track
from workbench.model.errors import InputError

START = ((46.0010, 6.999), (46.0010, 7.001))
FINISH = ((46.0090, 6.999), (46.0090, 7.001))
HEADS = (
    '<gpx version="1.0" xmlns="http://www.topografix.com/GPX/1/0">',
    '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">',
    '<g:gpx version="1.1" xmlns:g="http://www.topografix.com/GPX/1/1">',
    "<gpx>",
)


def point(latitude, at_s, longitude=7.0, p=""):
    time = f"2031-05-14T09:{at_s // 60:02.0f}:{at_s % 60:06.3f}Z"
    return f'<{p}trkpt lat="{latitude}" lon="{longitude}"><{p}ele>5</{p}ele><{p}time>{time}</{p}time></{p}trkpt>'


def track(*segments, head=HEADS[1]):
    p = "g:" if head.startswith("<g:") else ""
    inner = "".join(f"<{p}trkseg>{''.join(point(*at, p=p) for at in segment)}</{p}trkseg>" for segment in segments)
    return f"<?xml version='1.0' encoding='UTF-8'?>{head}<{p}trk>{inner}</{p}trk></{p}gpx>"


def laps(text, start=START, finish=FINISH):
    return lap_times_s(text, start=start, finish=finish)


DOWN = [(46.0, 0), (46.005, 50), (46.010, 100)]


@pytest.mark.parametrize("head", HEADS)
def test_both_versions_are_read_with_and_without_a_prefix(head):
    assert laps(track(DOWN, head=head)) == pytest.approx([80.0], abs=1e-6)


def test_pushing_back_up_past_both_gates_makes_no_lap():
    again = [*DOWN, (46.0, 400), (46.010, 480)]
    assert laps(track(again)) == pytest.approx([80.0, 64.0], abs=1e-6)


def test_turning_round_after_the_start_begins_the_lap_anew():
    back = [(46.0, 0), (46.002, 10), (46.0, 20), (46.010, 120)]
    assert laps(track(back)) == pytest.approx([80.0], abs=1e-6)


def test_a_track_that_never_crosses_gives_no_lap():
    assert laps(track([(46.0, 0), (46.0005, 100)])) == []
    assert laps(track([(46.0, 0, 7.002), (46.010, 100, 7.002)])) == [], "beside the gate is not through it"


def test_a_loop_counts_each_return_in_the_same_direction():
    there_and_back = [(46.0, 0), (46.002, 20), (46.0, 40), (46.002, 61), (46.0, 80)]
    assert laps(track(there_and_back), finish=START) == pytest.approx([40.5], abs=1e-6)
    assert laps(track(there_and_back), finish=START[::-1]) == pytest.approx([40.5], abs=1e-6)


def test_a_point_exactly_on_the_gate_is_one_crossing():
    on_it = [(46.0, 0), (46.0010, 10), (46.0090, 90), (46.010, 100)]
    assert laps(track(on_it)) == pytest.approx([80.0], abs=1e-6)


def test_a_pause_of_the_recorder_is_never_crossed():
    assert laps(track([(46.0, 0), (46.0005, 5)], [(46.005, 50), (46.010, 100)])) == []


def test_segments_count_in_the_order_ridden_not_as_filed():
    assert laps(track([(46.006, 60), (46.010, 100)], [(46.0, 0), (46.005, 50)])) == pytest.approx([80.0], abs=1e-6)


def test_points_without_a_time_are_passed_over():
    text = track(DOWN).replace("</trkseg>", '<trkpt lat="46.02" lon="7.0"/></trkseg>')
    assert laps(text) == pytest.approx([80.0], abs=1e-6)


def test_times_may_carry_a_zone_or_none():
    zoned = track(DOWN).replace("Z<", "<")
    assert laps(zoned) == pytest.approx([80.0], abs=1e-6)
    late = track(DOWN).replace("09:00:50.000Z", "11:00:50.000+02:00")
    assert laps(late) == pytest.approx([80.0], abs=1e-6)


def test_a_gate_across_the_date_line_is_as_long_as_it_is():
    gate = ((46.0010, 179.999), (46.0010, -179.999))
    far = ((46.0090, 179.999), (46.0090, -179.999))
    assert laps(track([(46.0, 0, 180.0), (46.010, 100, -179.9999)]), gate, far) == pytest.approx([80.0], abs=1e-6)


def test_elements_of_another_namespace_are_no_points():
    extra = '<x:trkpt xmlns:x="urn:other" lat="0" lon="0"><x:time>never</x:time></x:trkpt></trkseg>'
    assert laps(track(DOWN).replace("</trkseg>", extra)) == pytest.approx([80.0], abs=1e-6)


BOMB = (
    '<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">'
    + "".join(f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True))
    + "]><gpx><trk><name>&i;</name></trk></gpx>"
)
OUTSIDE = '<!DOCTYPE gpx [<!ENTITY f SYSTEM "file:///etc/hostname">]><gpx><trk><name>&f;</name></trk></gpx>'


@pytest.mark.parametrize("text", [BOMB, OUTSIDE])
def test_a_document_with_entities_of_its_own_is_refused_before_they_unfold(text):
    with pytest.raises(InputError, match="document type"):
        laps(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "well-formed"),
        ("no track", "well-formed"),
        (track(DOWN)[:200], "cut off"),
        ("\ud800", "well-formed"),
        ("<kml/>", "gpx document"),
        ('<gpx xmlns="urn:other"/>', "gpx document"),
        ("<gpx/>", "two or more"),
        (track([(46.0, 0)]), "two or more"),
        (track(DOWN).replace('lat="46.0" ', ""), "without a place"),
        (track(DOWN).replace('lat="46.0"', 'lat="nan"'), "latitude"),
        (track(DOWN).replace('lat="46.0"', 'lat="91"'), "latitude"),
        (track(DOWN).replace("2031-05-14T09:00:50.000Z", "soon"), "times like"),
        (track([(46.0, 50), (46.010, 0)]), "run back"),
        ("<gpx>" + "<a>" * 100_000, "well-formed"),
    ],
)
def test_what_cannot_be_a_track_is_refused_by_name(text, says):
    with pytest.raises(InputError, match=says) as caught:
        laps(text)
    assert caught.value.field == "Track"


@pytest.mark.parametrize(
    "gate", [None, (), ((46, 7),), ((46, 7), (46, 7)), ((46, 7), (47, 7)), ((96, 7), (46, 7)), ((46, "x"), (46, 7))]
)
def test_a_gate_that_is_no_short_line_is_refused_by_name(gate):
    with pytest.raises(InputError) as caught:
        laps(track(DOWN), finish=gate)
    assert caught.value.field == "finish"


def test_a_track_too_large_to_be_one_is_refused_unread(monkeypatch):
    monkeypatch.setattr("workbench.exchange.gpx.MOST_CHARACTERS", 100)
    with pytest.raises(InputError, match="million characters"):
        read_track(track(DOWN))
