"""The picture of very many runs: bands as one item, and no more words than there is room for."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QWidget

from workbench.ui.plots.bands import Stretches
from workbench.ui.plots.timeline import MOST_NUMBERS, TimelinePlot, thinned
from workbench.viewmodels.review_data import Period, RunPoint, Timeline


def a_timeline(runs):
    """So many runs on two setups in turn, one a period, ten a session."""
    return Timeline(
        tuple(RunPoint(str(n), f"s{n % 2}", n + 1.0, 5.0, "baseline", f"run {n + 1}, liking 5") for n in range(runs)),
        tuple(Period(n + 1.0, n + 1.0, f"s{n % 2}", f"no. {n % 2}", n == 3) for n in range(runs)),
        tuple((n + 1.0, f"session {n}") for n in range(0, runs, 10)),
        "runs",
    )


@pytest.fixture
def page(qtbot):
    page = QWidget()
    page.resize(900, 240)
    qtbot.addWidget(page)
    return page


@pytest.fixture
def plot(page):
    plot = TimelinePlot(page)
    plot.resize(900, 236)
    page.show()
    return plot


def numbers(plot):
    return [text for _, text in plot.getAxis("bottom")._tickLevels[0]]


@pytest.mark.parametrize(("count", "kept"), [(0, []), (4, [0, 1, 2, 3]), (5, [0, 2, 4]), (12, [0, 3, 6, 9])])
def test_of_too_many_things_the_same_share_is_left_out_all_along(count, kept):
    assert list(thinned(range(count), 4)) == kept


def test_every_run_is_numbered_while_there_is_room(plot):
    plot.show_timeline(a_timeline(MOST_NUMBERS), frozenset())
    assert numbers(plot) == [str(n + 1) for n in range(MOST_NUMBERS)]


def test_of_very_many_runs_some_are_numbered_and_all_are_shown(plot):
    plot.show_timeline(a_timeline(400), frozenset())
    assert numbers(plot)[:3] == ["1", "8", "15"]
    assert len(plot._marks.data) == 400


def test_the_bands_of_many_periods_are_one_item_and_shaded_in_turn(plot):
    plot.show_timeline(a_timeline(12), frozenset())
    bands = [one for one in plot.getPlotItem().items if isinstance(one, Stretches)]
    assert len(bands) == 1
    picture = plot.grab().toImage()

    def shade(place):
        at = plot.getViewBox().mapViewToDevice(type(plot.getViewBox().viewRect().center())(place, 1.5))
        return picture.pixelColor(round(at.x()), round(at.y())).lightness()

    assert shade(1.0) == shade(3.0) > shade(2.0) == shade(6.0)
    box = bands[0].mapRectToView(bands[0].boundingRect())
    assert box.contains(plot.getViewBox().viewRect().adjusted(0.2, 0.0, -0.2, 0.0))


def test_bands_reach_over_the_height_in_sight_after_it_has_changed(plot):
    plot.show_timeline(a_timeline(12), frozenset())
    plot.setYRange(-5.0, 30.0, padding=0)
    (bands,) = [one for one in plot.getPlotItem().items if isinstance(one, Stretches)]
    seen = plot.getViewBox().viewRect()
    assert (bands.boundingRect().top(), bands.boundingRect().bottom()) == (seen.top(), seen.bottom())
