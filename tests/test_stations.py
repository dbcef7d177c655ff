"""Every station of the job has its page, and it opens."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.model.job import STATION_WORDS, STATIONS
from workbench.stations import page_makers
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.window import NEW_BIKE


def test_every_station_of_the_job_has_a_page(tmp_path):
    with make_desk(tmp_path) as desk:
        assert {*STATIONS, NEW_BIKE} <= set(page_makers(desk, Bench(desk)))
    assert all(STATION_WORDS[station] for station in STATIONS)


@pytest.mark.parametrize("layout", ["hardtail", "air_coil", "rigid_rigid", "rigid_air", "mix_rigid", "coil_coil"])
def test_every_page_opens_over_a_bike_of_which_nothing_but_a_name_is_known(qtbot, tmp_path, layout):
    with make_desk(tmp_path) as desk:
        bare = {"mass_kg": None, "fork_travel_mm": None, "shock_stroke_mm": None, "rear_travel_mm": None}
        bike = a_bike(desk, layout=layout, rider="", **bare)
        bench = Bench(desk)
        bench.put_bike(bike.id)
        for station, make in page_makers(desk, bench).items():
            page = make()
            qtbot.addWidget(page)
            page.show()
            page.start()
            assert page.view_model.station in STATIONS, station
