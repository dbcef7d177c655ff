"""Lap times from a track: what is found, which run it goes to, and that nothing is written unseen."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.actions.test_bundle import a_blind_test
from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, everything
from tests.viewmodels.sheets import shown
from workbench.actions.ride import end_session, ride_records, start_session
from workbench.exchange.gpx import lap_times_s
from workbench.model.blind import setups_of
from workbench.model.ride import Run
from workbench.viewmodels.lap_gates import read_ends
from workbench.viewmodels.lap_rows import NONE
from workbench.viewmodels.lap_track import LapTrackViewModel

UP_S = 60
LAPS = (92, 90, 95)


def track(laps=LAPS, *, day="2031-05-14", lengths=1.0):
    """Down a straight course and up again beside it, a point a second; the gates lie 100 and 900 m down."""
    points, at_s = [], 9 * 3600
    for lap_s in laps:
        points += [(at_s + s, 1000.0 * s / lap_s, 0.0) for s in range(lap_s)]
        points += [(at_s + lap_s + s, 1000.0 * (1 - s / UP_S), 40.0) for s in range(UP_S)]
        at_s += lap_s + UP_S
    inner = "".join(
        f'<trkpt lat="{46 + lengths * north / 111_195:.7f}" lon="{7 + aside / 77_250:.7f}">'
        f"<time>{day}T{at // 3600:02d}:{at // 60 % 60:02d}:{at % 60:02d}Z</time></trkpt>"
        for at, north, aside in points
    )
    return f"<gpx><trk><trkseg>{inner}</trkseg></trk></gpx>"


@pytest.fixture
def ridden(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    runs = [a_run(desk, session, liking=5, **said) for said in ({"is_warmup": True}, {}, {"lap_s": 80.0})]
    return bike, session, runs


@pytest.fixture
def sheet(desk, ridden):
    return shown(LapTrackViewModel, desk, ridden[0].id)


def opened(model, folder, text=None, name="ride.gpx"):
    path = folder / name
    path.write_bytes(text if isinstance(text, bytes) else (text or track()).encode())
    return model.open_file(path)


def gated(model, folder, text=None):
    assert opened(model, folder, text)
    assert model.set_at("start", "0:09.2")
    assert model.set_at("finish", "1:22.8")
    return model.state


def lap_times(desk, bike):
    return [run.lap_s for run in desk.ask(ride_records(bike.id)).sessions[-1].runs]


def test_it_says_what_comes_first(desk):
    assert shown(LapTrackViewModel, desk)[0].state.blocked == "Pick a bike first."
    assert "no runs yet" in shown(LapTrackViewModel, desk, a_counted_bike(desk).id)[0].state.blocked


def test_every_lap_stands_beside_the_run_it_goes_to_and_nothing_is_written_yet(desk, ridden, sheet, tmp_path):
    model, _ = sheet
    before = everything(desk)
    state = gated(model, tmp_path)
    assert [row.lap_s for row in state.rows] == pytest.approx([0.8 * lap for lap in LAPS], abs=0.6)
    assert [row.run_id for row in state.rows] == [run.id for run in ridden[2]]
    assert [row.said for row in state.rows] == ["", "", "takes the place of 1:20.0"]
    assert state.summary == "3 laps found, 3 runs in this session."
    assert state.verb == "Write 3 lap times"
    assert everything(desk) == before


def test_the_laps_are_those_of_the_public_function_between_the_same_gates(sheet, tmp_path):
    state = gated(sheet[0], tmp_path)
    gates = {name: read_ends(state.gates.of(name).ends) for name in ("start", "finish")}
    assert [row.lap_s for row in state.rows] == pytest.approx(lap_times_s(track(), **gates), abs=0.05)


def test_one_deed_writes_them_and_undo_takes_all_of_it_back(desk, ridden, sheet, tmp_path):
    model, heard = sheet
    rows = gated(model, tmp_path).rows
    before = everything(desk)
    assert model.write()
    assert heard.labels == ["Write 3 lap times from ride.gpx"]
    assert lap_times(desk, ridden[0]) == [row.lap_s for row in rows]
    desk.undo()
    assert everything(desk) == before


def test_the_same_track_a_second_time_has_nothing_new(desk, sheet, tmp_path):
    model, heard = sheet
    gated(model, tmp_path)
    assert model.write()
    assert {row.said for row in model.state.rows} == {"has it already"}
    before = everything(desk)
    assert not model.write()
    assert "Nothing new" in heard.problems[-1].text
    assert everything(desk) == before


def test_a_lap_said_to_be_no_run_lets_the_others_follow_in_order(ridden, sheet, tmp_path):
    model, runs = sheet[0], ridden[2]
    gated(model, tmp_path)
    model.choose(0, NONE)
    assert [row.run_id for row in model.state.rows] == [NONE, runs[0].id, runs[1].id]
    model.choose(1, runs[2].id)
    assert [row.run_id for row in model.state.rows] == [NONE, runs[2].id, NONE]
    assert model.state.summary.startswith(
        "3 laps found, 3 runs in this session. Runs 1 and 2 get no time. Laps 1 and 3"
    )


@pytest.mark.parametrize(
    ("laps", "said"),
    [((92, 90), "Run 3 gets no time."), ((92, 90, 95, 91), "Lap 4 goes to no run.")],
)
def test_fewer_laps_than_runs_or_more_are_said(sheet, tmp_path, laps, said):
    state = gated(sheet[0], tmp_path, track(laps))
    assert said in state.summary
    assert "by their order alone" in state.summary


def test_a_click_on_the_plan_sets_the_start_and_then_the_finish(sheet, tmp_path):
    model, _ = sheet
    opened(model, tmp_path)
    assert "Say where the start is" in model.state.summary
    assert model.pick_spot(2.0, -395.0)
    assert (model.state.setting, model.state.gates.start.at) == ("finish", "0:10.0"), "the first pass there"
    assert "Say where the finish is" in model.state.summary
    assert model.pick_spot(-1.0, 400.0)
    assert len(model.state.rows) == len(LAPS)
    assert [words for words, _ in model.state.plan.gates] == ["start", "finish"]


def test_a_gate_is_square_to_the_track_and_as_wide_as_said(sheet, tmp_path):
    model, _ = sheet
    gated(model, tmp_path)
    ((x0, y0), (x1, y1)) = model.state.plan.gates[0][1]
    assert x1 - x0 == pytest.approx(20.0, abs=0.3)
    assert y1 - y0 == pytest.approx(0.0, abs=0.3)


def test_the_ends_of_a_gate_can_be_typed(sheet, tmp_path):
    model, heard = sheet
    opened(model, tmp_path)
    assert model.set_ends("start", "46.000899, 6.9998; 46.000899, 7.0002")
    assert model.set_ends("finish", "46.008094 6.9998 46.008094 7.0002")
    assert len(model.state.rows) == len(LAPS)
    for wrong in ("46.0, 7.0", "46,0; 7,0; 46,0; x", "north gate"):
        assert not model.set_ends("start", wrong)
        assert heard.field == "start_ends"
        assert "46.00512" in heard.problems[-1].text


def test_on_a_loop_the_finish_is_the_start(sheet, tmp_path):
    model, _ = sheet
    opened(model, tmp_path)
    model.set_at("start", "0:30")
    model.set_loop(True)
    assert [row.lap_s for row in model.state.rows] == pytest.approx([151, 152], abs=2)
    assert [words for words, _ in model.state.plan.gates] == ["start and finish"]


def test_the_gates_hold_for_their_course_with_the_next_track(sheet, tmp_path):
    model, _ = sheet
    ends = gated(model, tmp_path).gates.start.ends
    assert "until this window closes" in model.state.gates_said
    model.close_file()
    assert not model.state.file_text
    assert opened(model, tmp_path, track((91, 93)), name="second.gpx")
    assert (model.state.gates.start.ends, model.state.gates.start.at) == (ends, "")
    assert len(model.state.rows) == 2


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "well-formed GPX"),
        (b"\xff\xd8\xff\xe0\x00\x10JFIF", "It is no text"),
        (b"<kml/>", "gpx document"),
        (track().replace("time>", "cmt>").encode(), "Record with times switched on"),
        (track()[:300].encode(), "cut off"),
        (b'<!DOCTYPE gpx [<!ENTITY a "b">]><gpx/>', "document type"),
    ],
)
def test_a_file_that_is_no_track_says_why_and_the_one_before_stays(sheet, tmp_path, content, said):
    model, heard = sheet
    gated(model, tmp_path)
    before = model.state
    assert not opened(model, tmp_path, content, name="other.gpx")
    assert heard.field == "file"
    assert heard.problems[-1].text.startswith("other.gpx gives no track. ")
    assert said in heard.problems[-1].text
    assert model.state == before


def test_a_file_that_is_not_there_is_refused(sheet, tmp_path):
    model, heard = sheet
    assert not model.open_file(tmp_path / "gone.gpx")
    assert "cannot be read" in heard.problems[-1].text


def test_a_track_in_another_encoding_is_read(sheet, tmp_path):
    assert opened(sheet[0], tmp_path, track().encode("utf-16"))
    assert opened(sheet[0], tmp_path, b"\xef\xbb\xbf" + track().encode())
    assert opened(sheet[0], tmp_path, track().replace("<trk>", "<trk><name>Stra\xdfe</name>").encode("latin-1"))


@pytest.mark.parametrize(("at", "said"), [("soon", "2:41.3"), ("9:59:00", "within the track")])
def test_a_time_that_is_not_on_the_track_is_said_at_its_field(sheet, tmp_path, at, said):
    model, heard = sheet
    opened(model, tmp_path)
    assert not model.set_at("finish", at)
    assert heard.field == "finish_at"
    assert said in heard.problems[-1].text


def test_where_the_track_stands_still_no_gate_is_laid(sheet, tmp_path):
    model, heard = sheet
    opened(model, tmp_path, track(lengths=0.001).replace("7.0005178", "7.0000000"))
    assert not model.set_at("start", "0:10")
    assert "stands still" in heard.problems[-1].text


def test_gates_that_make_no_lap_say_how_often_each_is_crossed(sheet, tmp_path):
    model, heard = sheet
    opened(model, tmp_path)
    model.set_ends("start", "46.000899, 7.1; 46.000899, 7.1002")
    model.set_at("finish", "1:22.8")
    assert "the start is crossed never, the finish 3 times" in model.state.summary
    assert not model.write()
    assert "No lap" in heard.problems[-1].text


def test_a_track_of_another_day_is_pointed_out(sheet, tmp_path):
    assert not gated(sheet[0], tmp_path).caution
    caution = gated(sheet[0], tmp_path, track(day="2031-05-12")).caution
    assert caution == "The track is of 12 May 2031, the session of 14 May 2031. Is it the right one?"


def test_what_cannot_be_the_time_of_a_run_goes_to_none(sheet, tmp_path):
    model, _ = sheet
    opened(model, tmp_path)
    model.set_at("start", "0:50")
    model.set_at("finish", "0:53")
    rows = model.state.rows
    assert {row.run_id for row in rows} == {NONE}
    assert "5 s to 2 h" in rows[0].said


def test_a_blind_test_is_timed_before_the_reveal_without_a_word_of_its_setups(desk, tmp_path):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    a_session(desk, bike)
    plan = a_blind_test(desk, bike, runs=3)
    model, _ = shown(LapTrackViewModel, desk, bike.id)
    state = gated(model, tmp_path)
    assert state.sessions[0][1].endswith("3 blind runs")
    assert [words for _, words in state.rows[0].choices] == ["run 1", "run 2", "run 3", "no run"]
    told = repr(state)
    assert not [one for one in (*setups_of(plan).values(), plan.order, "liking") if one in told]
    before = everything(desk)[Run]
    assert model.write()
    after = everything(desk)[Run]
    assert [replace(run, lap_s=None) for run in after] == list(before), "nothing but the times was written"
    assert all(run.lap_s for run in after)


@pytest.mark.parametrize("moment", ["0001-01-01T00:00:{:02d}+10:00", "9999-12-31T23:59:{:02d}-10:00"])
def test_a_clock_that_was_never_set_is_said_and_not_stumbled_over(sheet, tmp_path, moment):
    model, heard = sheet
    points = "".join(
        f'<trkpt lat="{46 + at / 1000}" lon="7.0"><time>{moment.format(at)}</time></trkpt>' for at in range(20)
    )
    assert not opened(model, tmp_path, f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>")
    assert "a year from 1971 to 9000" in str(heard.problems[-1])


def test_what_was_said_of_a_lap_holds_for_the_runs_of_that_session_alone(desk, ridden, sheet, tmp_path):
    bike, session, runs = ridden
    model, _ = sheet
    gated(model, tmp_path)
    model.choose(0, NONE)
    assert [row.run_id for row in model.state.rows] == [NONE, runs[0].id, runs[1].id]
    desk.do("End", end_session(session.id), bike_id=bike.id)
    later = desk.do("Start", start_session(replace(session, ended_at=None)), bike_id=bike.id)
    run = a_run(desk, later, liking=5)
    assert model.state.session == later.id
    assert [row.run_id for row in model.state.rows] == [run.id, NONE, NONE]
