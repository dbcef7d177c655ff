"""What goes back where after measuring."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.bike import Bike
from workbench.model.parts import BikeParts
from workbench.model.put_back import line_before_measuring, put_back_steps
from workbench.model.setting import OnBike, latest
from workbench.model.unit import Unit

REBOUND = Adjuster("rebound", "fork", "rebound", "low", counting_order=1)
KEY = ("adjuster", "rebound")


def log_of(*lines: tuple[float | None, str]) -> tuple[OnBike, ...]:
    return tuple(
        OnBike(f"line {number}", "bike", "", number, "adjuster", "rebound", value, how)
        for number, (value, how) in enumerate(lines, 1)
    )


def parts_of(log: tuple[OnBike, ...], steps: int | None = 13, adjuster: Adjuster = REBOUND) -> BikeParts:
    ranges = () if steps is None else (RangeCount("count", "rebound", None, steps, None, ""),)
    return BikeParts(
        bike=Bike("bike", "Larch 150"),
        riders=(),
        units=(Unit("fork", "bike", "front", "fork"),),
        generations=(),
        adjusters=(adjuster,),
        tyres=(),
        ranges=ranges,
        now=tuple(latest(log).values()),
    )


def steps_after(*lines, setup=None, steps=13, adjuster=REBOUND):
    log = log_of(*lines)
    return put_back_steps(parts_of(log, steps, adjuster), log, setup)


def test_an_adjuster_left_open_goes_back_to_where_it_was_found():
    (step,) = steps_after((6, "counted"), (0, "closed"), (13, "opened"))
    assert (step.value, step.before, step.text) == (6, 13, "fully closed, then open 6 clicks")
    assert step.relative == "7 clicks in from where it stands"
    assert step.range_id == "count"


def test_an_adjuster_left_closed_half_way_through_counting_goes_back_too():
    (step,) = steps_after((6, "counted"), (0, "closed"), steps=None)
    assert (step.value, step.before) == (6, 0)
    assert step.range_id is None


def test_nothing_goes_back_when_nothing_was_opened_or_it_is_back_already():
    assert steps_after((6, "counted")) == ()
    assert steps_after((6, "counted"), (0, "closed"), (13, "opened"), (6, "set_to")) == ()
    assert steps_after() == ()


def test_opening_twice_does_not_forget_the_place():
    (step,) = steps_after((6, "counted"), (13, "opened"), (0, "closed"), (14, "opened"), steps=14)
    assert step.value == 6


def test_a_place_set_since_the_count_is_the_one_to_go_back_to():
    (step,) = steps_after((6, "counted"), (13, "opened"), (8, "set_to"), (13, "opened"))
    assert step.value == 8


def test_a_setup_says_where_things_belong():
    (step,) = steps_after((6, "counted"), (13, "opened"), setup={KEY: 9.0})
    assert step.value == 9
    (step,) = steps_after((6, "counted"), (13, "opened"), setup={KEY: None})
    assert step.value == 6


def test_an_unknown_place_is_the_makers_advice_else_the_middle_and_says_so():
    (step,) = steps_after((None, "unknown"), (0, "closed"), (13, "opened"))
    assert (step.value, step.relative) == (6, "as found is not known: the middle of its range")
    advised = Adjuster("rebound", "fork", "rebound", chart_from="open", chart_steps=4)
    (step,) = steps_after((None, "unknown"), (13, "opened"), adjuster=advised)
    assert (step.value, step.relative) == (9, "as found is not known: the maker's advice")
    assert steps_after((None, "opened"), steps=None) == ()


def test_advice_beyond_the_counted_range_is_not_taken():
    for counted_from in ("closed", "open"):
        advised = Adjuster("rebound", "fork", "rebound", chart_steps=20, chart_from=counted_from)
        (step,) = steps_after((None, "unknown"), (13, "opened"), adjuster=advised)
        assert step.value == 6


HOWS = st.sampled_from(["counted", "set_to", "stated", "opened", "closed"])


@given(st.lists(st.tuples(st.integers(0, 13), HOWS), min_size=1, max_size=12))
def test_the_place_never_comes_from_a_measuring_line(lines):
    log = log_of(*lines)
    before = line_before_measuring(log, "rebound")
    due = lines[-1][1] in ("opened", "closed")
    steps = put_back_steps(parts_of(log), log, None)
    assert bool(steps) == due
    kept = [value for value, how in lines if how not in ("opened", "closed")]
    assert (before.value if before else None) == (kept[-1] if kept else None)
    if due and kept:
        assert steps[0].value == kept[-1]
