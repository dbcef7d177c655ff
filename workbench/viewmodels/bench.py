"""What lies on the bench: which bike, whose setup, who stands there, and the units they read."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from workbench.actions.desk import Desk
from workbench.actions.people import person
from workbench.model.person import Person
from workbench.viewmodels.shown import Units, units_of


class Bench(QObject):
    """The choices every sheet shares; remembered from one start to the next."""

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._bike_id: str | None = desk.setting("bench/bike", "") or None
        self._rider_id: str | None = desk.setting("bench/rider", "") or None
        self._station: str = desk.setting("bench/station", "") or "garage"
        self._moves = 0

    @property
    def moves(self) -> int:
        """How often the choices were changed, so that a sheet knows whether it has read those that hold now."""
        return self._moves

    def read_again(self) -> None:
        """Take bike and rider as the library now has them; the open sheet stays."""
        self._bike_id = self._desk.setting("bench/bike", "") or None
        self._rider_id = self._desk.setting("bench/rider", "") or None
        self._tell()

    @property
    def bike_id(self) -> str | None:
        """The bike on the bench."""
        return self._bike_id

    @property
    def rider_id(self) -> str | None:
        """The rider whose setup is worked on; None means the bike's main rider."""
        return self._rider_id

    @property
    def station(self) -> str:
        """The station whose sheet lies open."""
        return self._station

    @property
    def person(self) -> Person | None:
        """Who stands at the bench."""
        return self._desk.ask(person(self._desk.person_id)) if self._desk.person_id else None

    @property
    def units(self) -> Units:
        """The units of the person at the bench."""
        return units_of(self.person)

    def put_bike(self, bike_id: str | None, *, rider_id: str | None = None, station: str | None = None) -> None:
        """Put a bike on the bench, and open a station's sheet for it if one is named."""
        station = station or self._station
        if (bike_id, rider_id, station) == (self._bike_id, self._rider_id, self._station):
            return
        self._bike_id, self._rider_id, self._station = bike_id, rider_id, station
        self._remember({"bench/bike": bike_id or "", "bench/rider": rider_id or "", "bench/station": station})

    def go_to(self, station: str) -> None:
        """Open a station's sheet."""
        if station == self._station:
            return
        self._station = station
        self._remember({"bench/station": station})

    def _remember(self, settings: dict[str, str]) -> None:
        """Keep the choice for the next start; it holds for this one even where it cannot be kept."""
        try:
            self._desk.remember(settings)
        finally:
            self._tell()

    def _tell(self) -> None:
        self._moves += 1
        self.changed.emit()

    def seat(self, person_id: str) -> None:
        """Say who stands at the bench now."""
        self._desk.person_id = person_id
        self._tell()
