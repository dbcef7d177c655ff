"""Ride the finished sample bike: sessions of runs that follow the tool's own proposals."""

from __future__ import annotations

from typing import Any

from workbench.actions.card import hand_over
from workbench.actions.desk import Desk
from workbench.actions.ride import (
    RideRecords,
    add_course,
    change_settings,
    end_session,
    keep_run,
    ride_records,
    start_session,
)
from workbench.actions.ride_evidence import knob_runs
from workbench.demo.rider import SimulatedRider
from workbench.demo.shop import DemoClock
from workbench.evidence.plan import propose_for
from workbench.model.bike import Bike
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.ride import Course, Run, Session
from workbench.model.setting import Item

RETURN = 4  # runs at the end: back to where the adjuster stood, then to where it is liked most


class Riding:
    """The sample rider on the sample course."""

    def __init__(self, desk: Desk, clock: DemoClock, scenario: dict[str, Any], bike: Bike, rider: Person) -> None:
        self._desk, self._clock, self._scenario = desk, clock, scenario
        self._bike, self._rider = bike, rider
        told = next(one for one in scenario["bikes"] if one["name"] == bike.name)
        self._body = SimulatedRider(scenario["seed"], told["likes"])

    def ride_all(self) -> None:
        """All sessions, then the card."""
        told = self._scenario["course"]
        deed = add_course(told["name"], has_heavy_hit=told["has_heavy_hit"], typical_s=told["typical_s"])
        course = self._do("Add a course", deed)
        day = 0
        for session in self._scenario["sessions"]:
            self._clock.leap(days=session["day"] - day)
            day = session["day"]
            self._session(course, session)
        records = self._records()
        if records.current is not None:
            self._desk.do("Hand over the card", hand_over(records.current.id), bike_id=self._bike.id, station="card")

    def _session(self, course: Course, told: dict[str, Any]) -> None:
        records = self._records()
        assert records.current is not None
        start = Session(
            id="",
            bike_id=self._bike.id,
            rider_id=self._rider.id,
            course_id=course.id,
            started_at="",
            surface=told["surface"],
            temperature_c=told["temperature_c"],
            start_setup_id=records.current.id,
            verified_at=self._desk.now(),
            planned_runs=told["runs"],
        )
        session: Session = self._do("Start session", start_session(start))
        knob = adjuster_named(records.parts, told["works_on"])
        began = round(records.parts.value(Item.ADJUSTER, knob) or 0.0)
        for number in range(1, told["runs"] + 1):
            self._clock.leap(minutes=6)
            self._run(session, told["works_on"], knob, number)
            left = told["runs"] - number
            if left > RETURN:
                self._move(session, knob, number)
            elif left == RETURN:
                self._set(session, knob, began)
            elif left == RETURN // 2:
                self._settle(session, knob)
        self._settle(session, knob)
        self._do("End session", end_session(session.id))

    def _run(self, session: Session, tested: str, knob: str, number: int) -> None:
        records = self._records()
        parts, current = records.parts, records.current
        assert current is not None
        names = {name: adjuster_named(parts, name) for name in self._body.names}
        positions = {name: parts.value(Item.ADJUSTER, key) or 0.0 for name, key in names.items()}
        ranges = {name: count.steps for name, key in names.items() if (count := parts.range_of(key)) is not None}
        said = self._body.ride(positions, ranges, tested, number)
        travel = {unit.end: unit.travel_mm or 0.0 for unit in parts.units}
        run = Run(
            id="",
            session_id=session.id,
            number=0,
            setup_id=current.id,
            ridden_at="",
            typed_at="",
            is_warmup=number == 1,
            liking=said.liking,
            direction=said.direction,
            direction_of=knob,
            travel_front_mm=round(min(said.travel_front, 1.0) * travel["front"], 0),
            travel_rear_mm=round(min(said.travel_rear, 1.0) * travel["rear"], 0),
            bottom_outs_front=0,
            bottom_outs_rear=0,
            lap_s=said.lap_s,
        )
        self._do(f"Keep run {number}, liking {said.liking}", keep_run(run, ratings=said.scores))

    def _move(self, session: Session, knob: str, number: int) -> None:
        """Follow the proposal, but ride every second run again as it stands: replicates are what the verdicts need."""
        if number % 2 == 1 and number > 1:
            return
        runs = next(one for one in knob_runs(self._records()) if one.key == knob)
        proposal = propose_for(runs)
        if proposal.position != runs.current:
            self._set(session, knob, proposal.position)

    def _settle(self, session: Session, knob: str) -> None:
        """Leave the adjuster where the runs say it is liked most."""
        from workbench.evidence.search import ClickSearch

        runs = next(one for one in knob_runs(self._records()) if one.key == knob)
        position = round(ClickSearch(runs.range_clicks).estimate(runs.trials).position)
        if position != runs.current:
            self._set(session, knob, position)

    def _set(self, session: Session, knob: str, position: int) -> None:
        wanted: dict[tuple[str, str], float | None] = {(Item.ADJUSTER.value, knob): float(position)}
        deed = change_settings(self._bike.id, self._rider.id, wanted, session_id=session.id)
        self._do(f"Set to {position} from closed", deed)

    def _records(self) -> RideRecords:
        return self._desk.ask(ride_records(self._bike.id))

    def _do(self, label: str, deed: Any) -> Any:
        return self._desk.do(label, deed, bike_id=self._bike.id, station="ride")


def adjuster_named(parts: BikeParts, name: str) -> str:
    """Give the key of an adjuster by end and kind, as "rear rebound"."""
    end, _, kind = name.partition(" ")
    return next(one.id for one in parts.adjusters if one.kind == kind and parts.unit_of(one).end == end)
