"""The hint of the station that lies open: shown, put away, gone once the station is left done, shown again."""

from __future__ import annotations

from workbench.actions.desk import Desk
from workbench.model.bike import StationState
from workbench.model.job import Mark
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.hints import Hints
from workbench.viewmodels.window_state import WindowState


class HintDeeds(ViewModel[WindowState]):
    """What the window can do about hints."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._hints = Hints(desk)
        bench.changed.connect(self._leave)
        super().__init__(desk, bench)

    def hint_of(self, marks: tuple[Mark, ...]) -> str:
        """Give the hint of the open station; empty for none."""
        station = self._bench.station
        blocked = any(mark.station == station and mark.state == StationState.BLOCKED for mark in marks)
        return self._hints.hint(station, is_blocked=blocked)

    def _leave(self) -> None:
        """A station left done needs its hint no more."""
        left = self._state
        if left is None or not left.hint or left.station == self._bench.station:
            return
        if any(mark.station == left.station and mark.state == StationState.DONE for mark in left.marks):
            self._hints.put_away(left.station)

    def put_hint_away(self) -> None:
        """Show the hint of the open station no more."""
        self._hints.put_away(self._bench.station)
        self.refresh()

    def show_hints_again(self) -> None:
        """Show the hint of every station again."""
        self._hints.show_again()
        self.refresh()
