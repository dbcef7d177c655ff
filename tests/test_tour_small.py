"""A few screens at 640 by 400, which is 1280 by 800 at 200 %: nothing is cut that cannot be scrolled to."""

from __future__ import annotations

import pytest

from tests.conftest import HOME_NAMES
from workbench.tour import walk
from workbench.tour.stops import STOPS

SIZE = (640, 400)
SMALL = {"new-bike", "adjusters-closed", "sag-measure", "spring", "ride-attributes", "checkin-service", "card"}


@pytest.fixture(scope="module")
def small_tour(tmp_path_factory, qapp):
    """What is seen on the screens named, in a small window."""
    from workbench.__main__ import read_arguments

    folder = tmp_path_factory.mktemp("small")
    with pytest.MonkeyPatch.context() as patch:
        for name, inside in HOME_NAMES.items():
            patch.setenv(name, str(folder / inside))
        patch.setattr(walk, "STOPS", tuple(stop for stop in STOPS if stop[1] in SMALL))
        arguments = ["--tour", str(folder), "--size", f"{SIZE[0]}x{SIZE[1]}"]
        with walk.Walk(read_arguments(arguments)) as stops:
            screens = {screen.name: (screen.picture.size(), screen.listing) for screen in stops.screens()}
    assert set(screens) == SMALL
    return screens


def controls(screens):
    return [(name, one) for name, (_, listing) in screens.items() for one in listing["controls"]]


def test_the_window_keeps_to_the_screen(small_tour):
    for name, (size, _) in small_tour.items():
        assert (size.width(), size.height()) == SIZE, name


def test_nothing_that_stands_still_is_clipped_on_a_small_screen(small_tour):
    assert not [
        (name, one["object_name"])
        for name, one in controls(small_tour)
        if not one["scrolls"] and one["seen"] != one["rect"]
    ]


def test_nothing_is_out_of_reach_sideways_on_a_small_screen(small_tour):
    assert not [
        (name, one["object_name"], one["rect"])
        for name, one in controls(small_tour)
        if one["scrolls"] and (one["seen"][0], one["seen"][2]) != (one["rect"][0], one["rect"][2])
    ]
