"""Several bikes put down half-way: the list says where each was left, and a click goes on there."""

from __future__ import annotations

from tests.fixtures import a_bike, a_counted_bike
from workbench.actions.parts import bike_parts
from workbench.model.bike import Station
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.window import WindowViewModel


def test_the_list_says_where_each_bike_was_left_and_opens_it_there(desk):
    counted, measured = a_bike(desk, name="Larch"), a_counted_bike(desk, name="Cinder")
    bench = Bench(desk)
    window = WindowViewModel(desk, bench)
    window.show()
    bench.put_bike(counted.id)
    adjusters = AdjustersViewModel(desk, bench)
    adjusters.show()
    rebound = desk.ask(bike_parts(counted.id)).adjusters[1]
    adjusters.count(rebound.id)
    adjusters.clicked()
    assert window.due(counted.id) == "mid-count, fork low-speed rebound"
    bench.put_bike(measured.id)
    sag = SagViewModel(desk, bench)
    sag.show()
    rear = desk.ask(bike_parts(measured.id)).unit("rear")
    sag.start(rear.end)
    assert window.due(measured.id) == "mid-sag, rear"
    window.open_bike(counted.id)
    assert (bench.bike_id, bench.station) == (counted.id, Station.ADJUSTERS)
    assert (adjusters.state.count.adjuster_id, adjusters.state.count.count) == (rebound.id, 1)
    window.open_bike(measured.id)
    assert (bench.bike_id, bench.station) == (measured.id, Station.SAG)


def test_the_entry_edited_last_is_named_and_the_others_are_counted(desk):
    bike = a_bike(desk)
    window = WindowViewModel(desk, Bench(desk))
    desk.keep_draft("run", "{}", bike_id=bike.id)
    desk.keep_draft("checkin", "{}", bike_id=bike.id)
    assert window.due(bike.id) == "mid-check-in, and 1 more"
    desk.keep_draft("run", '{"liking": 3}', bike_id=bike.id)
    assert window.due(bike.id) == "run half entered, and 1 more"
    for draft in desk.drafts(bike.id):
        desk.discard_draft(draft.id)
    assert "half" not in window.due(bike.id)
