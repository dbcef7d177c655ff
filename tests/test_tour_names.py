"""What a screen reader says on every screen of the tour, also of what is scrolled out of sight."""

from __future__ import annotations

import re
from collections import defaultdict

SAID_TWICE = {"Close"}  # of a paper and of the notice behind it


def told(tour):
    screens, _ = tour
    return [(name, one) for name, screen in screens.items() for one in screen["names"]]


def test_every_control_and_every_picture_is_named(tour):
    assert not [(name, one) for name, one in told(tour) if not re.search(r"\w", one["said"])]


def test_no_name_is_one_for_scripts(tour):
    assert not [(name, one) for name, one in told(tour) if "_" in one["said"] or one["said"] == one["object_name"]]


def test_no_name_stops_half_way(tour):
    assert not [(name, one) for name, one in told(tour) if one["said"].rstrip().endswith((",", ":"))]


def test_a_line_with_a_unit_says_it(tour):
    assert not [(name, one) for name, one in told(tour) if one["unit"] and one["unit"] not in one["said"]]
    assert any(one["unit"] for _, one in told(tour))


def test_no_two_controls_of_a_screen_are_called_the_same(tour):
    screens, _ = tour
    for name, screen in screens.items():
        called = defaultdict(set)
        for one in screen["names"]:
            called[one["said"]].add(one["object_name"])
        assert not {said: names for said, names in called.items() if len(names) > 1 and said not in SAID_TWICE}, name


def test_a_picture_says_in_words_what_it_shows(tour):
    shown = [one["said"] for _, one in told(tour) if one["object_name"].endswith("_plot")]
    assert shown
    assert all(len(said.split()) >= 4 for said in shown), shown
