"""Stops of the tour at the check-in: one begun, one written, one filed with a stop, and what waits because of it."""

from __future__ import annotations

from functools import partial
from typing import Any

from workbench.app import Workbench
from workbench.model.bike import Station


def _sheet(workbench: Workbench, name: str) -> Any:
    from workbench.tour.stops import bike

    return bike(workbench, name, Station.CHECKIN)


def known(workbench: Workbench, name: str = "Larch 150", *, low: bool = False) -> None:
    """What a filed check-in left open, and service by hours."""
    _sheet(workbench, name)
    if low:
        from workbench.tour.stops import further_down

        further_down(workbench, name, Station.CHECKIN, "wear_lowers_front_state")


def writing(workbench: Workbench, depth: str) -> None:
    """A check-in half written, with a length that is short."""
    view_model = _sheet(workbench, "Wren 24")
    view_model.begin(depth)
    view_model.set_words("bothers", "Too heavy to push over roots")
    view_model.set_entry("frame", severity="fine")
    view_model.set_entry("headset", severity="attend", reason="Knocks")


def stopped(workbench: Workbench) -> None:
    """A bike that is not to be ridden."""
    view_model = _sheet(workbench, "Fell 130")
    view_model.begin("quick")
    view_model.set_entry("crown", severity="stop", reason="Creaks")
    view_model.set_entry("wheels", severity="stop", reason="Spoke broken")
    view_model.rest_is_fine()
    view_model.file()


def waiting(workbench: Workbench) -> None:
    """Sag waits while the bike is not to be ridden."""
    stopped(workbench)
    workbench.view_model.open_station(Station.SAG)


CHECKIN_STOPS = (
    ("sample", "checkin-new", False, partial(known, name="Wren 24")),
    ("sample", "checkin-quick", False, partial(writing, depth="quick")),
    ("sample", "checkin-quick-bench", True, partial(writing, depth="quick")),
    ("sample", "checkin-full", False, partial(writing, depth="full")),
    ("sample", "checkin", False, known),
    ("sample", "checkin-service", False, partial(known, low=True)),
    ("sample", "checkin-stopped", False, stopped),
    ("sample", "sag-stopped", False, waiting),
)
