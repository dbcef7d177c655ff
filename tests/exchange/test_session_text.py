"""A session as text lines: each line is understood, left alone, or said to be unclear, and never a failure."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fixtures import a_baseline, a_counted_bike, make_desk
from workbench.actions.parts import bike_parts
from workbench.actions.setups import setup_values
from workbench.exchange.session_text import LEFT_ALONE, NOT_UNDERSTOOD, UNDERSTOOD, read_session
from workbench.exchange.session_words import things_of
from workbench.model.reading import Units
from workbench.model.setting import Item
from workbench.viewmodels.ride_run import DIRECTION_WORDS

NOW = "2031-06-01T09:00:00+00:00"


class Bench:
    """A counted bike with a baseline, and how its text is read."""

    def __init__(self, layout: str = "air_air") -> None:
        with TemporaryDirectory() as folder, make_desk(Path(folder)) as desk:
            bike = a_counted_bike(desk, layout=layout)
            self.parts_before = desk.ask(bike_parts(bike.id))
            setup = a_baseline(desk, bike)
            self.start = desk.ask(setup_values(setup.id))
            self.parts = desk.ask(bike_parts(bike.id))
        self.things = things_of(self.parts)

    def read(self, text: str):
        return read_session(text, self.things, self.start, Units(), DIRECTION_WORDS, now=NOW)

    def key(self, end: str, kind: str):
        unit = self.parts.unit(end)
        return (Item.ADJUSTER, next(one.id for one in self.parts.adjusters_of(unit.id) if one.kind == kind))


@pytest.fixture(scope="module")
def bench():
    return Bench()


@pytest.fixture(scope="module")
def hardtail():
    return Bench("hardtail")


def one_run(bench, text):
    told = bench.read(f"1 {text}")
    assert told.not_understood == (), told.lines[-1].said
    return told.runs[0]


def unclear(bench, text):
    line = bench.read(text).lines[-1]
    assert line.state == NOT_UNDERSTOOD, line
    return line.said


SESSION = """\
course: Quarry loop
date: 14 May 2031
surface: damp
temperature: 18 C
note: first dry day, dust
# a line of my own

1 warm-up, like 5
2 fork rebound 2 out, like 6, better, lap 1:32.4
run 3: shock pressure 165 psi; 7; note arms tired, rain, going home
"""


def test_a_whole_session_is_understood(bench):
    told = bench.read(SESSION)
    assert [line.state for line in told.lines] == [UNDERSTOOD] * 5 + [LEFT_ALONE] * 2 + [UNDERSTOOD] * 3
    assert (told.course, told.date, told.surface) == ("Quarry loop", "2031-05-14T00:00:00+00:00", "damp")
    assert (told.temperature_c, told.note) == (18.0, "first dry day, dust")
    first, second, third = told.runs
    assert first.is_warmup
    rebound = bench.key("front", "rebound")
    assert second.changes == {rebound: bench.start[rebound] + 2}
    assert (second.liking, second.compared, second.lap_s) == (6, 1, pytest.approx(92.4))
    assert list(third.changes.values()) == [pytest.approx(1137.6, abs=0.1)]
    assert (third.liking, third.note) == (7, "arms tired, rain, going home")


def test_what_was_understood_is_said_back(bench):
    said = bench.read("1 fork rebound 2 out, like 6, worse").lines[0].said
    assert said == "run 1: Fork: low-speed rebound 8 clicks from closed, before 6, liking 6, worse than the one before"


@pytest.mark.parametrize(
    ("text", "place"),
    [("at 5", 5), ("5", 5), ("5 clicks", 5), ("to 5 from closed", 5), ("5 from open", -5), ("closed", 0),
     ("fully open", -0.0), ("by 1 in", None)],
)  # fmt: skip
def test_a_place_can_be_said_in_several_ways(bench, text, place):
    key = bench.key("front", "rebound")
    steps = bench.parts.range_of(key[1]).steps
    wanted = {None: bench.start[key] - 1, -5: steps - 5}.get(place, steps if text == "fully open" else place)
    assert one_run(bench, f"fork rebound {text}, like 5").changes == {key: wanted}


CALLS = ("fork rebound", "front rebound", "rebound fork", "fork reb", "FORK  Low-Speed Rebound", "fork lsr")


@pytest.mark.parametrize("call", CALLS)
def test_an_adjuster_can_be_called_in_several_ways(bench, call):
    assert list(one_run(bench, f"{call} at 5, like 5").changes) == [bench.key("front", "rebound")]


def test_on_a_hardtail_the_end_need_not_be_said(hardtail):
    assert list(one_run(hardtail, "rebound at 5, like 5").changes) == [hardtail.key("front", "rebound")]


def test_moves_add_up_from_run_to_run(bench):
    key = bench.key("front", "rebound")
    told = bench.read("1 fork rebound 2 out, 5\n2 fork rebound 1 in, 6")
    assert [run.changes[key] - bench.start[key] for run in told.runs] == [2, 1]


def test_a_line_that_is_not_understood_moves_nothing(bench):
    key = bench.key("front", "rebound")
    told = bench.read("1 fork rebound 2 out, nonsense\n1 fork rebound 1 out, 6")
    assert [line.state for line in told.lines] == [NOT_UNDERSTOOD, UNDERSTOOD]
    assert told.runs[0].changes[key] == bench.start[key] + 1


def test_feelings_measures_and_reasons(bench):
    run = one_run(bench, "fork rebound too slow, travel front 132, travel rear 48 mm, hard contacts rear 2, like 4")
    assert (run.direction, run.direction_of) == (-1, bench.key("front", "rebound")[1])
    assert (run.travel_front_mm, run.travel_rear_mm, run.bottom_outs_rear) == (132.0, 48.0, 2)
    assert one_run(bench, "like 3, set aside Fell or stopped").set_aside == "Fell or stopped"


def test_a_decimal_comma_is_no_end_of_a_piece(bench):
    assert one_run(bench, "lap 61,3,like 5").lap_s == pytest.approx(61.3)
    assert list(one_run(bench, "fork pressure 5,6 bar, 5").changes.values()) == [pytest.approx(560)]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("arms tired", "begin with the number of the run"),
        ("2 like 5", "here comes run 1"),
        ("1 like 5\n1 like 6", "here comes run 2"),
        ("1", "nothing is said of this run"),
        ("1 like 12", "a liking goes from 1 to 9"),
        ("1 like much", "a liking goes from 1 to 9"),
        ("1 0", "a liking goes from 1 to 9"),
        ("1 rebound 2 out", "write fork or shock before it"),
        ("1 seat 2 up", "is no part of this bike"),
        ("1 fork rebound 40 out", "it goes from 0 (closed) to"),
        ("1 fork rebound 40 in", "would stand at -34"),
        ("1 fork rebound quickly", "2 out, or at 8"),
        ("1 fork reb-2", "is no part of this bike"),
        ("1 fork pressure lots", "allowed is"),
        ("1 lap 2", "from 5 s to 2 h"),
        ("1 travel 40", "travel front 132"),
        ("1 hard contacts rear 99", "from 0 to 50"),
        ("surface: lava", "one of dry"),
        ("temperature: 900", "from -40"),
        ("date: 05/06/2031", "write the day as"),
        ("date: 2031-06-02", "still to come"),
        ("date: 1066-10-14", "too long ago"),
        ("course:", "nothing stands after course:"),
        ("course: " + "x" * 201, "up to 200 characters"),
    ],
)
def test_what_is_not_understood_says_why(bench, text, said):
    assert said in unclear(bench, text)


def test_an_adjuster_that_is_not_counted_cannot_be_set(bench):
    parts = bench.parts_before
    bare = things_of(
        type(parts)(**{name: getattr(parts, name) for name in parts.__slots__ if name != "ranges"}, ranges=())
    )
    told = read_session("1 fork rebound at 5", bare, {}, Units(), DIRECTION_WORDS, now=NOW)
    assert "not counted yet" in told.lines[0].said


def test_where_something_stood_must_be_known_for_a_move(bench):
    told = read_session("1 fork rebound 2 out", bench.things, {}, Units(), DIRECTION_WORDS, now=NOW)
    assert "write at 8" in told.lines[0].said


def test_a_doubt_about_a_value_is_said_at_its_line(bench):
    told = read_session(
        "1 fork pressure 900 psi", bench.things, bench.start, Units(), DIRECTION_WORDS, now=NOW,
        doubt=lambda *_: "Above the highest pressure the maker allows.",
    )  # fmt: skip
    assert told.lines[0].said == "Fork: air pressure: Above the highest pressure the maker allows"


WORDS = st.sampled_from(
    (
        *("1", "2", "3", "run", "fork", "shock", "front", "rear", "rebound", "reb", "compression", "lsc", "pressure"),
        *("tyre", "spacers", "like", "6", "12", "better", "worse", "same", "lap", "61.3", "1:32", "travel", "hard"),
        *("contacts", "note", "set", "aside", "warm-up", "in", "out", "at", "closed", "open", "from", "clicks", "psi"),
        *("course:", "date:", "surface:", "dry", ",", ";", "#", "-2", "+1", "NaN", "1e999", "\u202e", "9" * 20),
    )
)


@given(st.lists(st.lists(WORDS, max_size=9).map(" ".join) | st.text(max_size=30), max_size=6).map("\n".join))
@settings(max_examples=300)
def test_any_text_is_read_line_by_line_and_never_a_failure(text):
    told = BENCH.read(text)
    assert [line.number for line in told.lines] == list(range(1, len(told.lines) + 1))
    assert [run.number for run in told.runs] == list(range(1, len(told.runs) + 1))
    steps = {thing.subject_id: thing.steps for thing in BENCH.things if thing.adjuster is not None}
    for run in told.runs:
        assert all(0 <= value <= steps[key[1]] for key, value in run.changes.items() if key[1] in steps)


BENCH = Bench()
