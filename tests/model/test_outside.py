from __future__ import annotations

import pytest

from workbench.model.bike import Bike
from workbench.model.errors import InputError
from workbench.model.outside import check_record
from workbench.model.ride import Run
from workbench.model.unit import Unit

MOMENT = "2031-05-14T09:00:00+00:00"
RUN = {"id": "r", "session_id": "s", "number": 1, "setup_id": "t", "ridden_at": MOMENT, "typed_at": ""}


def test_a_record_as_it_is_entered_is_fine():
    check_record(Bike("b", "Larch 150", created_at="2031-05-14T09:00:00+00:00"))
    check_record(Unit("u", "b", "front", "fork", travel_mm=150.0, minimum_kpa=300.0, maximum_kpa=900.0))


@pytest.mark.parametrize(
    "record",
    [
        Bike("b", " "),
        Bike("b", "x" * 201),
        Bike("b", "Larch", created_at="soon"),
        Bike("b", "Larch", created_at="0001-01-01T00:00:00"),
        Unit("u", "b", "front", "fork", minimum_kpa=900.0, maximum_kpa=300.0),
        Unit("u", "b", "rear", "shock", spring="air_coil"),
        Unit("u", "b", "front", "fork", maker_table="a lot"),
        Run(**{**RUN, "typed_at": "2031-05-14T09:00:00+00:00"}, lap_s=1e12),
        Run(**{**RUN, "typed_at": ""}),
    ],
)
def test_what_nobody_could_have_entered_is_refused_at_its_field(record):
    with pytest.raises(InputError):
        check_record(record)
