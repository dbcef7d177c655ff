"""A change of what lies on the bench is read once by whoever is in sight, and missed by nobody."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike
from workbench.actions.edit import edit
from workbench.model.bike import Bike
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench


class Sheet(ViewModel[str]):
    """Shows the name of the bike, and counts how often it is read."""

    count = 0

    def read(self):
        self.count += 1
        if not self.bike_id:
            return ""
        return self._desk.ask(lambda reader: reader.need(Bike, self.bike_id)).name


@pytest.fixture
def larch(desk):
    return a_bike(desk)


@pytest.fixture
def tarn(desk):
    return a_bike(desk, name="Tarn", rider="J. Okoye")


def test_another_bike_is_read_once(desk, larch, tarn):
    bench = Bench(desk)
    bench.put_bike(larch.id)
    sheet = Sheet(desk, bench)
    sheet.show()
    sheet.count = 0
    bench.put_bike(tarn.id, station="sag")
    assert (sheet.state, sheet.count) == ("Tarn", 1)


def test_a_sheet_that_comes_into_sight_by_the_change_is_read_once(desk, larch, tarn):
    bench = Bench(desk)
    bench.put_bike(larch.id)
    first = Sheet(desk, bench)
    second = Sheet(desk, bench)
    first.show()
    bench.changed.disconnect()
    bench.changed.connect(lambda: (first.hide(), second.show()))  # as the window does, which hears before the sheets
    for one in (first, second):
        bench.changed.connect(one._bench_changed)
    first.count = 0
    bench.put_bike(tarn.id)
    assert (second.state, second.count, first.count) == ("Tarn", 1, 0)
    assert (first.state, first.count) == ("Tarn", 1)


def test_what_was_changed_out_of_sight_is_read_when_shown(desk, larch, tarn):
    bench = Bench(desk)
    bench.put_bike(larch.id)
    sheet = Sheet(desk, bench)
    assert sheet.state == "Larch 150"
    bench.put_bike(tarn.id)
    desk.do("Name", edit(Bike, tarn.id, "name", "Fell"), bike_id=tarn.id)
    sheet.show()
    assert sheet.state == "Fell"
    bench.put_bike(larch.id)
    assert sheet.state == "Larch 150"


def test_a_choice_made_while_the_word_goes_round_is_not_missed(desk, larch, tarn):
    bench = Bench(desk)
    bench.put_bike(larch.id)
    early = Sheet(desk, bench)
    early.show()
    bench.changed.connect(lambda: bench.put_bike(tarn.id))  # somebody moves on at once
    late = Sheet(desk, bench)
    late.show()
    bench.go_to("sag")
    assert (early.state, late.state) == ("Tarn", "Tarn")
