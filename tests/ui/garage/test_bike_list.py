"""The list of bikes reads what is due a little at a time, and in the end says the same of every bike in sight."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from workbench.ui.garage.bike_list import MOST_IN_SIGHT, BikeList
from workbench.viewmodels.window import ListRow

ROWS = tuple(ListRow(str(number), f"Bike {number}", "M. Anders") for number in range(1000))


class Due:
    """What is due, and on which bikes it was asked."""

    def __init__(self):
        self.read = {}

    def __call__(self, bike_id):
        self.read[bike_id] = f"due on {bike_id}"
        return self.read[bike_id]


@pytest.fixture
def due():
    return Due()


@pytest.fixture
def bikes(qtbot, due):
    view = BikeList(due, due.read.get)
    view.resize(260, 600)
    qtbot.addWidget(view)
    view.show_rows(ROWS, None)
    view.show()
    return view


def in_sight(view):
    """The bikes whose rows are seen."""
    last = view.indexAt(view.viewport().rect().bottomLeft()).row()
    return {ROWS[place].bike_id for place in range(view.indexAt(view.viewport().rect().topLeft()).row(), last + 1)}


def said(view, bike_id):
    """What the list paints as due, nothing read for it."""
    return view.model()._as_read(bike_id)


def test_the_first_painting_reads_nothing_and_soon_every_bike_in_sight_is_told(qtbot, bikes, due):
    bikes.viewport().grab()
    assert due.read == {}
    qtbot.waitUntil(lambda: in_sight(bikes) <= set(due.read))
    assert set(due.read) == in_sight(bikes)
    assert all(said(bikes, one) == f"due on {one}" for one in in_sight(bikes))


def test_after_scrolling_one_is_read_while_painting_and_the_others_after_it(qtbot, bikes, due):
    bikes.viewport().grab()
    qtbot.waitUntil(lambda: in_sight(bikes) <= set(due.read))
    qtbot.waitUntil(lambda: bikes.model()._may_read)
    due.read.clear()
    bikes.scrollTo(bikes.model().index(500), BikeList.ScrollHint.PositionAtTop)
    bikes.viewport().grab()
    assert len(due.read) == 1
    qtbot.waitUntil(lambda: in_sight(bikes) <= set(due.read))


def test_what_was_scrolled_past_long_ago_is_not_read(qtbot, bikes, due):
    for place in range(0, len(ROWS), 5):
        bikes.scrollTo(bikes.model().index(place), BikeList.ScrollHint.PositionAtTop)
        bikes.viewport().grab()
    qtbot.waitUntil(lambda: in_sight(bikes) <= set(due.read))
    qtbot.waitUntil(lambda: not bikes.model()._awaited)
    assert len(due.read) < 3 * MOST_IN_SIGHT < len(ROWS)


def test_looking_for_a_row_by_its_letters_reads_nothing(bikes, due):
    found = bikes.model().match(bikes.model().index(0), int(Qt.ItemDataRole.DisplayRole), "Bike 77", 1)
    assert [one.row() for one in found] == [77]
    assert due.read == {}


def test_a_screen_reader_hears_what_is_due(bikes):
    text = bikes.model().data(bikes.model().index(3), Qt.ItemDataRole.AccessibleTextRole)
    assert text == "Bike 3, M. Anders, due on 3"
