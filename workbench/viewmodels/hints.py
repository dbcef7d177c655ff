"""Hints for the first time at a station: what it is for, the one thing to do first, and when the hint goes."""

from __future__ import annotations

from workbench.actions.desk import Desk
from workbench.actions.job import was_done_once
from workbench.model.bike import Station

HINTS: dict[str, str] = {
    Station.GARAGE: "Here stands what the bike is: its riders, fork and shock, tyres. First: the rider's mass, ready"
    " to ride, and the travel of each unit.",
    Station.CHECKIN: "Here the bike is looked over before anybody works on it or rides it. First: start the quick"
    " intake; whatever is not fine gets its own answer, one key says the rest is.",
    Station.ADJUSTERS: "Here each knob is counted: where it stood when the bike came, and how far it goes. First: press"
    " the button that names one. Where it stood is on record before it is opened.",
    Station.SAG: "Here it is measured how far the rider's weight presses each end. First: full kit on, somebody to"
    " steady the bike, then start with the end that is due.",
    Station.BASELINE: "Here setup no. 1 is written down: what every later change is compared with. First: look through"
    " the values proposed and keep them, then set the bike to them.",
    Station.RIDE: "Here the same stretch is ridden again and again with one thing changed at a time. First: name the"
    " course and check that the bike stands as the setup says.",
    Station.REVIEW: "Here it is said which change helped and how sure that is. First: read the line of the latest"
    " change. “Cannot tell” is an honest answer after few runs.",
    Station.CARD: "Here is all that is on the bike, to take along and to restore from. First: look it over, then print"
    " it or keep it as PDF.",
}  # one a station: what it is for, then the one thing to do first

FIRST = "First: "
AGAIN, GONE = "again", "gone"


class Hints:
    """Which hints are still wanted in this library.

    A hint goes when it is put away, or once its station has been done: records of such work are there, or its sheet
    was left with the mark *done*. Hints asked for again stay until they are put away or their station is left done.
    """

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._chosen: dict[str, str] = {}  # holds for this start also where nothing can be kept

    def hint(self, station: str, *, is_blocked: bool = False) -> str:
        """Give the hint to show at a station; empty for none. A blocked one says itself what comes first."""
        if station not in HINTS:
            return ""
        choice = self._choice(station)
        if not choice and self._desk.ask(was_done_once(station)):
            self._chosen[station] = choice = GONE
        if choice == GONE:
            return ""
        return HINTS[station].partition(f" {FIRST}")[0] if is_blocked else HINTS[station]

    def put_away(self, station: str) -> None:
        """Show the hint of a station no more."""
        self._choose(station, GONE)

    def show_again(self) -> None:
        """Show every hint again."""
        for station in HINTS:
            self._choose(station, AGAIN)

    def forget(self) -> None:
        """Read the choices anew: the library holds something else."""
        self._chosen.clear()

    def _choice(self, station: str) -> str:
        if station not in self._chosen:
            if not (kept := self._desk.setting(f"hints/{station}", "")):
                return ""
            self._chosen[station] = kept
        return self._chosen[station]

    def _choose(self, station: str, choice: str) -> None:
        self._chosen[station] = choice
        self._desk.set_setting(f"hints/{station}", choice)
