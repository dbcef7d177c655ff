"""The tour: a picture and a list of controls of every screen, measured as a stranger's tool would measure it."""

from __future__ import annotations

import json
import shutil
import subprocess

import pytest

from workbench.model.job import STATIONS
from workbench.tour import say_what_matters
from workbench.tour.stops import STOPS

LOWEST = 44  # px, for mouse and finger alike
COUNTING = ("_tool_less", "_tool_more")  # Backspace and Space do the same while counting
ELIDED = {"head_bike", "head_rider"}  # names of any length: the whole stands in the tool tip


def offenders(screens, is_wrong):
    return [
        f"{name}: {one['kind']} {one['object_name']!r} {one['text'][:50]!r} {one['rect']}"
        for name, listing in screens.items()
        for one in listing["controls"]
        if is_wrong(one)
    ]


def test_the_tour_stops_at_every_station(tour):
    screens, _ = tour
    assert len(screens) == len(STOPS)
    for station in STATIONS:
        assert any(name.startswith(station) for name in screens), station
    json.dumps(screens)


def test_every_control_has_a_name_for_scripts_and_one_for_screen_readers(tour):
    screens, _ = tour
    assert not offenders(
        screens, lambda one: one["kind"] != "words" and not (one["object_name"] and one["accessible_name"].strip())
    )


def test_no_two_controls_of_a_screen_share_a_name(tour):
    screens, _ = tour
    for name, listing in screens.items():
        names = [one["object_name"] for one in listing["controls"] if one["kind"] == "control"]
        assert len(names) == len(set(names)), f"{name}: {sorted(one for one in names if names.count(one) > 1)}"


def test_every_control_is_large_enough_to_hit(tour):
    screens, _ = tour
    assert not offenders(screens, lambda one: one["kind"] == "control" and one["rect"][3] < LOWEST)


def test_no_word_is_cut(tour):
    screens, _ = tour
    assert not offenders(screens, lambda one: one["cut"] and one["object_name"] not in ELIDED)


def test_everything_that_can_be_worked_is_reached_by_keys(tour):
    screens, _ = tour

    def is_out_of_reach(one):
        counts = one["object_name"].endswith(COUNTING)
        return one["kind"] != "words" and one["enabled"] and not one["by_keys"] and not counts

    assert not offenders(screens, is_out_of_reach)


def test_every_screen_has_a_place_where_the_keyboard_is_or_can_go(tour):
    screens, _ = tour
    for name, listing in screens.items():
        assert any(one["kind"] != "words" and one["enabled"] for one in listing["controls"]), name


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")
def test_the_card_of_the_finished_bike_is_real_text(tour):
    _, card = tour
    said = subprocess.run(["pdftotext", "-layout", str(card), "-"], capture_output=True, text=True, check=True).stdout
    for words in ("Larch 150", "M. Anders", "from closed", "psi", "Static sag", "Take care", "qualified mechanic"):
        assert words in said


def test_the_tour_passes_on_what_qt_complains_about(capsys):
    say_what_matters(None, None, "QPainter::begin: Paint device returned engine == 0")
    assert "QPainter::begin" in capsys.readouterr().err


def test_the_tour_keeps_quiet_about_what_holds_of_every_window_without_a_screen(capsys):
    say_what_matters(None, None, "This plugin does not support propagateSizeHints()")
    assert capsys.readouterr().err == ""
