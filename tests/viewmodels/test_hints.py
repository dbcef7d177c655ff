"""Hints for the first time at a station: shown, put away, gone by themselves, shown again."""

from __future__ import annotations

from tests.fixtures import a_baseline, a_bike, a_counted_bike, make_desk
from workbench.model.job import STATIONS
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.hints import HINTS, Hints
from workbench.viewmodels.window import HISTORY, WindowViewModel


def opened(desk):
    """The window in sight, and its bench."""
    bench = Bench(desk)
    model = WindowViewModel(desk, bench)
    model.show()
    return model, bench


def test_every_station_has_a_hint_that_names_one_thing_to_do_first():
    assert list(HINTS) == list(STATIONS)
    assert all(hint.count("First: ") == 1 for hint in HINTS.values())


def test_somebody_new_reads_the_hint_of_the_open_station_and_of_no_other_sheet(desk):
    bike = a_bike(desk)
    model, bench = opened(desk)
    assert model.state.hint == ""
    bench.put_bike(bike.id, station="sag")
    assert model.state.hint == HINTS["sag"]
    bench.go_to(HISTORY)
    assert model.state.hint == ""


def test_a_hint_put_away_stays_away_after_the_next_start_and_the_others_stay(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        model, bench = opened(desk)
        bench.put_bike(bike.id, station="sag")
        model.put_hint_away()
        assert model.state.hint == ""
        assert model.state.undo_text == "Add Larch 150"  # it is no deed
    with make_desk(tmp_path) as desk:
        assert Hints(desk).hint("sag") == ""
        assert Hints(desk).hint("baseline") == HINTS["baseline"]


def test_a_hint_goes_with_the_first_record_of_its_station_on_any_bike(desk):
    bike = a_bike(desk)
    model, bench = opened(desk)
    bench.put_bike(bike.id, station="adjusters")
    assert model.state.hint == HINTS["adjusters"]
    a_counted_bike(desk, name="Fell 130")
    assert model.state.hint == ""
    bench.go_to("baseline")
    assert model.state.hint == HINTS["baseline"]
    a_baseline(desk, bike)
    assert model.state.hint == ""


def test_a_station_left_done_needs_its_hint_no_more(desk):
    bike = a_bike(desk)
    model, bench = opened(desk)
    bench.put_bike(bike.id, station="garage")
    bench.go_to("sag")
    bench.go_to("garage")
    assert model.state.hint == ""


def test_a_station_left_undone_shows_its_hint_again(desk):
    bike = a_bike(desk, mass_kg=None)
    model, bench = opened(desk)
    bench.put_bike(bike.id, station="garage")
    bench.go_to("sag")
    bench.go_to("garage")
    assert model.state.hint == HINTS["garage"]


def test_a_blocked_station_says_what_it_is_for_and_leaves_the_first_thing_to_its_sheet(desk):
    bike = a_bike(desk)
    model, bench = opened(desk)
    bench.put_bike(bike.id, station="ride")
    assert model.state.hint == "Here the same stretch is ridden again and again with one thing changed at a time."
    a_baseline(desk, bike)
    assert model.state.hint == HINTS["ride"]


def test_all_hints_are_shown_again_also_where_everything_was_done(desk):
    bike = a_counted_bike(desk)
    model, bench = opened(desk)
    bench.put_bike(bike.id, station="sag")
    model.put_hint_away()
    model.show_hints_again()
    assert model.state.hint == HINTS["sag"]
    bench.go_to("adjusters")
    assert model.state.hint == HINTS["adjusters"]
    model.put_hint_away()
    assert (model.state.hint, Hints(desk).hint("sag")) == ("", HINTS["sag"])


def test_reading_hints_writes_nothing(desk):
    a_counted_bike(desk)
    hints = Hints(desk)
    assert [station for station in STATIONS if hints.hint(station)] == [
        "garage",
        "checkin",
        "sag",
        "baseline",
        "ride",
        "review",
        "card",
    ]
    assert [desk.setting(f"hints/{station}", "") for station in STATIONS] == [""] * len(STATIONS)


def test_a_new_library_under_the_same_window_has_its_own_hints(desk):
    a_bike(desk)
    hints = Hints(desk)
    hints.put_away("sag")
    desk.set_setting("hints/sag", None)
    hints.forget()
    assert hints.hint("sag") == HINTS["sag"]
