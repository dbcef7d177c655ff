"""What stands in the library before a story begins, made by the program's own deeds on the day before."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

from tests.fixtures import Clock, a_baseline, a_counted_bike
from tests.journeys.hand import Hand
from workbench.actions.desk import Desk
from workbench.actions.parts import bike_parts
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike
from workbench.model.parts import BikeParts

PSI = 6.894757293168  # kPa
THE_DAY_BEFORE = datetime(2031, 5, 13, 9, 0, tzinfo=UTC)


@contextmanager
def opening(hand: Hand) -> Iterator[Desk]:
    """A desk over the library the hand is going to open."""
    library = open_library(hand.library, schema, now=Clock(THE_DAY_BEFORE))
    try:
        yield Desk(library)
    finally:
        library.close()


def put_on_bench(desk: Desk, bike: Bike, station: str) -> BikeParts:
    """Have the program begin with a bike at a station."""
    desk.set_setting("bench/bike", bike.id)
    desk.set_setting("bench/station", station)
    return desk.ask(bike_parts(bike.id))


def a_bike_at(hand: Hand, station: str) -> BikeParts:
    """A bike, counted and with setup no. 1 set, at a station."""
    with opening(hand) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        return put_on_bench(desk, bike, station)
